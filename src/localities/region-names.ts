import { keyOf } from './fold.js';
import type { Region } from './locality-index.js';

/**
 * Postal codes and native names of regions, by country and the source's name. The source has English names, and for
 * the United States, Switzerland and the United Kingdom codes that people use.
 */
const OTHER_NAMES: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  AT: {
    Carinthia: ['Kärnten'],
    'Lower Austria': ['Niederösterreich', 'NÖ'],
    Styria: ['Steiermark'],
    Tyrol: ['Tirol'],
    'Upper Austria': ['Oberösterreich', 'OÖ'],
    Vienna: ['Wien'],
  },
  AU: {
    'Australian Capital Territory': ['ACT'],
    'New South Wales': ['NSW'],
    'Northern Territory': ['NT'],
    Queensland: ['QLD'],
    'South Australia': ['SA'],
    Tasmania: ['TAS'],
    Victoria: ['VIC'],
    'Western Australia': ['WA'],
  },
  BE: { 'Brussels Capital': ['Bruxelles', 'Brüssel'], Flanders: ['Vlaanderen', 'Flandern'], Wallonia: ['Wallonie'] },
  BR: {
    Acre: ['AC'],
    Alagoas: ['AL'],
    Amapá: ['AP'],
    Amazonas: ['AM'],
    Bahia: ['BA'],
    Ceará: ['CE'],
    'Espírito Santo': ['ES'],
    'Federal District': ['DF', 'Distrito Federal'],
    Goiás: ['GO'],
    Maranhão: ['MA'],
    'Mato Grosso': ['MT'],
    'Mato Grosso do Sul': ['MS'],
    'Minas Gerais': ['MG'],
    Pará: ['PA'],
    Paraíba: ['PB'],
    Paraná: ['PR'],
    Pernambuco: ['PE'],
    Piauí: ['PI'],
    'Rio de Janeiro': ['RJ'],
    'Rio Grande do Norte': ['RN'],
    'Rio Grande do Sul': ['RS'],
    Rondônia: ['RO'],
    Roraima: ['RR'],
    'Santa Catarina': ['SC'],
    'São Paulo': ['SP'],
    Sergipe: ['SE'],
    Tocantins: ['TO'],
  },
  CA: {
    Alberta: ['AB'],
    'British Columbia': ['BC'],
    Manitoba: ['MB'],
    'New Brunswick': ['NB'],
    'Newfoundland and Labrador': ['NL', 'Newfoundland'],
    'Northwest Territories': ['NT'],
    'Nova Scotia': ['NS'],
    Nunavut: ['NU'],
    Ontario: ['ON'],
    'Prince Edward Island': ['PE', 'PEI'],
    Quebec: ['QC'],
    Saskatchewan: ['SK'],
    Yukon: ['YT'],
  },
  CH: {
    Fribourg: ['Freiburg'],
    Geneva: ['Genève', 'Genf'],
    Grisons: ['Graubünden'],
    Lucerne: ['Luzern'],
    'Saint Gallen': ['Sankt Gallen'],
    Ticino: ['Tessin'],
    Valais: ['Wallis'],
    Vaud: ['Waadt'],
  },
  DE: {
    'Baden-Wurttemberg': ['BW'],
    Bavaria: ['Bayern', 'BY'],
    Brandenburg: ['BB'],
    Bremen: ['HB'],
    Hamburg: ['HH'],
    Hesse: ['Hessen', 'HE'],
    'Lower Saxony': ['Niedersachsen', 'NI'],
    'Mecklenburg-Vorpommern': ['MV'],
    'North Rhine-Westphalia': ['Nordrhein-Westfalen', 'NRW', 'NW'],
    'Rheinland-Pfalz': ['RP', 'Rhineland-Palatinate'],
    Saarland: ['SL'],
    Saxony: ['Sachsen', 'SN'],
    'Saxony-Anhalt': ['Sachsen-Anhalt', 'ST'],
    'Schleswig-Holstein': ['SH'],
    'State of Berlin': ['BE'],
    Thuringia: ['Thüringen', 'TH'],
  },
  ES: {
    Andalusia: ['Andalucía', 'Andalusien'],
    'Balearic Islands': ['Islas Baleares', 'Illes Balears'],
    'Basque Country': ['País Vasco', 'Euskadi'],
    'Canary Islands': ['Canarias', 'Kanarische Inseln'],
    'Castille and León': ['Castilla y León'],
    'Castille-La Mancha': ['Castilla-La Mancha'],
    Catalonia: ['Cataluña', 'Catalunya', 'Katalonien'],
    Navarre: ['Navarra'],
  },
  FR: {
    Brittany: ['Bretagne'],
    Corsica: ['Corse', 'Korsika'],
    'New Aquitaine': ['Nouvelle-Aquitaine'],
    Normandy: ['Normandie'],
  },
  IT: {
    'Aosta Valley': ["Valle d'Aosta"],
    Apulia: ['Puglia', 'Apulien'],
    Basilicate: ['Basilicata'],
    Lombardy: ['Lombardia', 'Lombardei'],
    Piedmont: ['Piemonte', 'Piemont'],
    Sardinia: ['Sardegna', 'Sardinien'],
    Sicily: ['Sicilia', 'Sizilien'],
    'The Marches': ['Marche', 'Marken'],
    'Trentino-Alto Adige': ['Südtirol', 'Trentino', 'Alto Adige'],
    Tuscany: ['Toscana', 'Toskana'],
    Veneto: ['Venetien'],
  },
  NL: {
    Friesland: ['Fryslân'],
    'North Brabant': ['Noord-Brabant'],
    'North Holland': ['Noord-Holland'],
    'South Holland': ['Zuid-Holland'],
  },
  US: { 'Washington D.C.': ['District of Columbia'] },
};

/** Words that a region's name is often written without. */
const KIND_OF_REGION =
  /\b(autonomous|canton|city|county|department|district|governorate|municipality|oblast|of|prefecture|province|region|republic|state|the)\b/gi;

/** Keys by which a region can be meant: its name, with and without what kind of region it is, its code, and others. */
export function regionKeys({ country, code, name }: Pick<Region, 'country' | 'code' | 'name'>): readonly string[] {
  const others =
    name === null ? [] : [name, name.replaceAll(KIND_OF_REGION, ' '), ...(OTHER_NAMES[country]?.[name] ?? [])];
  return [...new Set([code, ...others].map(keyOf))].filter((key) => key !== '');
}
