import { keyOf } from './fold.js';

/** Names that neither English nor German has as the usual one. */
const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = {
  AE: ['UAE'],
  AT: ['Oesterreich'],
  CD: ['DR Congo', 'Democratic Republic of the Congo'],
  CG: ['Congo', 'Republic of the Congo'],
  CH: ['Suisse', 'Svizzera'],
  CI: ['Ivory Coast'],
  CN: ["People's Republic of China"],
  CV: ['Cabo Verde'],
  CZ: ['Czech Republic', 'Česko', 'Tschechische Republik'],
  DK: ['Danmark'],
  ES: ['España'],
  FI: ['Suomi'],
  FM: ['Federated States of Micronesia'],
  GB: ['UK', 'Great Britain', 'Britain', 'Grossbritannien'],
  GR: ['Hellas'],
  HK: ['Hong Kong'],
  IE: ['Republic of Ireland', 'Éire'],
  IT: ['Italia'],
  JP: ['Nippon', '日本'],
  KP: ['DPRK'],
  KR: ['Korea', 'Republic of Korea'],
  LA: ['Lao'],
  MK: ['Macedonia'],
  MM: ['Myanmar', 'Burma'],
  MO: ['Macao', 'Macau'],
  MX: ['México'],
  NL: ['Holland', 'Nederland'],
  NO: ['Norge'],
  PL: ['Polska'],
  PS: ['Palestine'],
  RU: ['Russian Federation', 'Россия'],
  SE: ['Sverige'],
  SZ: ['Swaziland'],
  TL: ['East Timor'],
  TR: ['Turkey'],
  US: ['USA', 'United States of America', 'America'],
  VA: ['Vatican'],
  VN: ['Viet Nam'],
};

const inEnglish = new Intl.DisplayNames('en', { type: 'region' });
const inGerman = new Intl.DisplayNames('de', { type: 'region' });
const known = new Map<string, readonly string[]>();

/** Keys by which a country can be meant: its code, its English and German names, and some others. */
export function countryKeys(country: string): readonly string[] {
  const before = known.get(country);
  if (before) return before;
  const names = [country, inEnglish.of(country)!, inGerman.of(country)!, ...(OTHER_NAMES[country] ?? [])];
  const keys = [...new Set(names.map(keyOf))];
  known.set(country, keys);
  return keys;
}
