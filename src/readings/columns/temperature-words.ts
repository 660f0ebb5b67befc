import type { Medium } from '../../basics/series.js';
import type { TemperatureUnit } from '../../basics/units.js';
import type { Lure } from '../readings-facts.js';

/** Unit named in a text, and the tenth or whole degrees it counts in; `isTorn` if it names two. */
export interface UnitSaid {
  readonly unit: TemperatureUnit | null;
  readonly scale: number;
  readonly isTorn: boolean;
}

const DEGREE =
  '(?:&#176;\\s*|&deg;\\s*|\\u00c2?[\\u00b0\\u00ba\\u02da\\u00f8\\u00a1\\ufffd]\\s*|\\bdeg(?:rees?|s)?[._ ]?\\s*|\\bgrad(?:er|en|os)?\\s+|\\bdegr[e\\u00e9]s?\\s+)';
const unitPatterns: readonly [TemperatureUnit, RegExp][] = (['C', 'F', 'K'] as const).map((unit) => [
  unit,
  new RegExp(
    [
      `${DEGREE}${unit}(?![a-z])`,
      `[[(/]\\s*(?:0[.,]1\\s*)?${unit}\\s*[\\])]`,
      `[,;:/-]\\s*${unit}\\s*$`,
      `_(?:deg_?)?${unit}(?![a-z])`,
      `(?:temp(?:erature)?s?|tmp|soil|air|dew ?point|chill|\\bt(?:min|max|avg|mean))\\d*[_ ]?${unit}$`,
      `(?:cm|mm|in|inch|inches|\\dm)[ _]${unit}$`,
      { C: '\\u2103|celsius|centigrade', F: '\\u2109|fahrenheit', K: 'kelvin' }[unit],
      `^\\s*${unit}\\s*$`,
    ].join('|'),
    'i',
  ),
]);
const TENTHS =
  /(?:\b0[.,]1|\b1\/10|\btenths?(?:\s+of)?|\bzehntel|\bdixi[eè]mes?(?:\s+de)?|\btienden?|\bd[eé]cimas?(?:\s+de)?|\bdecimi(?:\s+di)?)\s*-?\s*(?:of\s+)?(?:an?\s+)?(?:\u00c2?[\u00b0\u00ba]|&#176;|&deg;|deg|grad|celsius|c\b)/i;

/**
 * Unit named in a header, a units row or a line above the table.
 *
 * @example unitSaid('Soil 5 cm [°F]') // => { unit: 'F', scale: 1, isTorn: false }
 */
export function unitSaid(text: string): UnitSaid {
  const units = unitPatterns.flatMap(([unit, pattern]) => (pattern.test(text) ? [unit] : []));
  const isTorn = units.length > 1;
  return { unit: isTorn ? null : (units[0] ?? null), scale: TENTHS.test(text) ? 0.1 : 1, isTorn };
}

const CM_PER: Record<string, number> = { mm: 0.1, cm: 1, m: 100, in: 2.54, inch: 2.54, inches: 2.54, '"': 2.54 };
const DEPTH =
  /(?<![\d.,])(\d{1,3}(?:[.,]\d+)?)(?:\s*|[_-])(cm|mm|inches|inch|in|m|")(?=$|[^a-z])|\bsoil_temp_(\d{1,3})(?=_|$)|\bV_TE(\d{3})\b/i;

/**
 * Depth of the thermometer in a column's name [cm], or null. Inches are converted.
 *
 * @example depthSaid('Soil temperature -2in') // => 5.08
 */
export function depthSaid(name: string): number | null {
  const match = DEPTH.exec(name);
  if (!match) return null;
  const [, amount, unit, named, coded] = match;
  const depth = amount ? Number(amount.replace(',', '.')) * CM_PER[unit!.toLowerCase()]! : Number(named ?? coded);
  return Math.round(depth * 100) / 100;
}

const SOIL =
  /soil|ground|seedbed|\bbed\b|boden|\berd|suelo|terren[oa]|bodem|\bjord|\bmark\b|\bmaa(?:n|per)|gleb|grunt|p[uů]d[ayn]|talaj|\bsolo\b|\bsol\b|buried|\bV_TE\d/i;
const AIR =
  /\bair|[_ ]air|luft|\baire\b|\baria\b|lucht|\bilma|powietrz|vzduch|leveg|\bar\b|outdoor|outside|au(?:ß|ss)en|ext[ée]rieur|esterno|exterior|buiten|\butomhus|\bute\b|screen|\b(?:1[.,][25]\d?|2(?:[.,]0+)?) ?m\b|dry.?bulb|ambient|shelter|\bt_?(?:min|max|avg|mean|m[ée]d)|\btmp[fc]?\b|\b(?:max|min|mean)(?:imum)? temp/i;

/** Medium of the thermometer in a column's name, or null. */
export function mediumSaid(name: string): Medium | null {
  const text = name.replaceAll('_', ' ');
  const isSoil = SOIL.test(text) || SOIL.test(name);
  const isAir = AIR.test(text) && !/\bsoil|boden/i.test(text);
  return isSoil === isAir ? null : isSoil ? 'soil' : 'air';
}

const TEMPERATURE =
  /temp|tmp|therm|celsius|fahrenheit|kelvin|[°º\u2103\u2109]|l[aä]mp[oö]tila|teplota|h[oő]m[eé]rs|w[aä]rme|grad\b|degc|degf|\bdeg [cf]\b|\bt_?(?:min|max|avg|mean)|\bV_TE\d|\bt(?:air|soil)|温度|온도/i;
/** True if a name mentions temperature. */
export const saysTemperature = (name: string): boolean => TEMPERATURE.test(name);

/** Columns that hold numbers like temperatures, and are none that a seed feels. */
const lures: readonly [Lure, RegExp][] = [
  [
    'humidity',
    /humid|feucht|humedad|umidit|vochtig|fuktig|kosteus|wilgotn|vlhkost|p[aá]ratart|\brh\b|rel\.? ?f|湿度|hygro/i,
  ],
  ['soil moisture', /moist|\bvwc|water content|wasserg|feuchte|\bswc\b|matric|tension|m3m3/i],
  ['battery', /batt|\bakku|\bvolt|\bvdc\b|\bv(?:bat|in)\b|spannung|[([]\s*m?v\s*[)\]]/i],
  ['dew point', /dew|taupunkt|ros[ée]e|roc[ií]o|rugiada|dauw|daggpunkt|kastepiste|rosy|rosn[eéy]/i],
  ['wind', /wind(?!ow)|viento|vento|\bvent\b|vind|tuuli|v[ií]tr|gust|b[oö]e/i],
  ['felt temperature', /chill|heat ?index|feels|apparent|gef[uü]hlt|ressenti|humidex|thw|thsw|sensaci/i],
  ['wet bulb', /wet.?bulb|feuchtkugel|wetb\b/i],
  [
    'the logger itself',
    /panel|logger ?temp|internal|\bbox\b|enclosure|\bcpu\b|device ?temp|ptemp|board|geh[aä]use|case temp|chip/i,
  ],
  [
    'indoor temperature',
    /indoor|inside|innen|int[ée]rieur|kitchen|living|\broom\b|binnen|sis[aä]|inomhus|interno|interior/i,
  ],
  ['pressure', /press|druck|hpa|\bbaro|mbar|luftdr|tlak|paine/i],
  ['position', /latitud|longitud|\blat\b|\blon\b|\blng\b|elevation|altitude|h[oö]he\b/i],
  ['degree-days', /degree.?days?|\bgdd|growing|\bdd\b|chill(?:ing)? ?(?:units|hours)|gradtag/i],
  [
    'rain or light',
    /rain|precip|regen|pluie|lluvia|pioggia|neder|sade\b|solar|radiat|\brad\b|ly\/day|\blux\b|\blight|\bpar\b|\buv\b|sunshine|niederschl|\beto\b|snow|evap/i,
  ],
  ['an alarm limit', /alarm|limit|threshold|setpoint|grenz|seuil/i],
  ['a quality mark', /\bqc\b|flag|quality|qual\b|kvalit|\bq_|\bqn\b|status|\bind\b|\berr/i],
  ['spread', /std|stdev|\bsd\b|sigma|variance/i],
  [
    'a counter',
    /^#$|\bindex\b|^record|^rn$|^no\.?$|^nr\.?$|\bid$|^count|serial|^seq|^row$|uptime|millis|^entry|^sample|\bdays? of\b|accumulat|number of/i,
  ],
  ['signal', /signal|rssi|lqi|\bsnr\b/i],
  ['gas', /co2|\bvoc|\bppm/i],
];

/** Quantity in a column's name that is no temperature at a seed, or null. */
export const lureSaid = (name: string): Lure | null => {
  const text = name.replaceAll('_', ' ');
  return lures.find(([, pattern]) => pattern.test(text) || pattern.test(name))?.[0] ?? null;
};

/** Which statistic of a stretch of time a name speaks of; null where it speaks of none. */
export function statisticSaid(name: string): 'min' | 'max' | 'mean' | null {
  const text = name.replaceAll('_', ' ');
  if (/\bmin|\btmin|\btn\b|low\b|m[ií]nim/i.test(text)) return 'min';
  if (/\bmax|\btmax|\btx\b|high\b|m[aá]xim/i.test(text)) return 'max';
  if (/\bavg|\bmean|average|mittel|moyen|media\b|\btavg|gemiddeld|medel|keskiarvo|[śs]redni|pr[uů]m[eě]r/i.test(text))
    return 'mean';
  return null;
}

const missing = new Set([
  '',
  '-',
  '--',
  '---',
  '----',
  '*',
  '**',
  '***',
  '****',
  '.',
  '..',
  '?',
  '/',
  '//',
  '///',
  'x',
  'm',
  'na',
  'n/a',
  'n.a.',
  'nan',
  '-nan',
  'nanq',
  '"nan"',
  'null',
  'nil',
  'none',
  'undef',
  'undefined',
  'unavailable',
  'unknown',
  'missing',
  'mis',
  'no data',
  'nodata',
  'no value',
  'error',
  'err',
  'fail',
  'failed',
  'fault',
  'offline',
  'disconnected',
  'open',
  'short',
  'overflow',
  'over',
  'inf',
  '-inf',
  'infinity',
  '#n/a',
  '#value!',
  '#div/0!',
  '#num!',
  'void',
  'false',
  'true',
  'invalid',
  'bad',
  'timeout',
  'fehler',
  'keine daten',
  'logged',
  'sensor error',
  '\\n',
]);
/** True if a cell says in words that there is no value. */
export const saysMissing = (cell: string): boolean => missing.has(cell.trim().toLowerCase());

/** Numbers that instruments and archives write for "no value"; none is a temperature of soil or air in °C. */
export const missingMarks: ReadonlySet<number> = new Set([
  -9999, -9999.9, -999, -999.9, -999.99, -99.9, -99.99, -99, -7999, -6999, 6999, -200, -127, -888, -888.8, 999, 999.9,
  9999, 9999.9, 99999, -99999, 32767, -32768, 65535, 850, -1000, 1000000, 9.969209968386869e36,
]);

/** The smallest of them, either side of zero: what lies nearer to it is none. */
export const MIN_MARK = Math.min(...[...missingMarks].map(Math.abs));
