import type { TemperatureUnit } from '../basics/units.js';

const NAMES: readonly (readonly [TemperatureUnit, RegExp])[] = [
  ['C', /^(?:c|cel|°\s*c|℃|deg_?\s?c|degrees?_?\s?c(?:elsius)?|celsius)$/i],
  ['F', /^(?:f|\[degf\]|°\s*f|℉|deg_?\s?f|degrees?_?\s?f(?:ahrenheit)?|fahrenheit)$/i],
  ['K', /^(?:k|kelvins?)$/i],
];

/**
 * The temperature unit of a name, a symbol or the end of a definition's address: `degC`, `°C`, `Cel` (UCUM),
 * `wmoUnit:degC`, `http://qudt.org/vocab/unit/DEG_C`.
 *
 * @returns undefined for anything else.
 */
export function unitNamed(text: string): TemperatureUnit | undefined {
  const name = text.trim().replace(/^.*[/#:]/, '');
  return NAMES.find(([, pattern]) => pattern.test(name))?.[0];
}
