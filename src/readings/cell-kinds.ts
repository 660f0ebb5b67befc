import { readNumber } from './number-cell.js';
import { saysMissing, unitSaid } from './temperature-words.js';

export const readsAsNumber = (cell: string): boolean => !Number.isNaN(readNumber(cell));

const NOT_A_NAME =
  /^[[(]?(?:%|%rh|hpa|mbar|kpa|mm|cm|m|km|m\/s|km\/h|mph|w\/m.?|wm-?2|mj.*|v|mv|volts?|ts|rn|s|sec|min|h|hr|utc|gmt|lst|m3\/m3|m\^?3.*|inhg|in|inch|avg|smp|max|tot|std|mean|sample|average|minimum|maximum|yyyy.*|dd.*|hh.*|date|time|text|number|unitless|-+|°|unit)[\])]?$/i;

/** Does a row under the names hold units or kinds of mean rather than names or readings? */
export function isUnitsRow(filled: readonly string[]): boolean {
  const areUnits = filled.filter((cell) => NOT_A_NAME.test(cell) || isBareUnit(cell)).length;
  const areTimes = filled.filter((cell) => /^(?:date|time|datum|zeit|min|max)$/i.test(cell)).length;
  return areUnits - areTimes > 0 && areUnits >= 0.6 * filled.length && areTimes < filled.length;
}

const isBareUnit = (cell: string): boolean =>
  cell.length <= 18 && unitSaid(cell).unit !== null && !/temp|soil|air|luft|boden/i.test(cell);

/** A line of nothing, or of strokes that part the header from the rows. */
export const isRule = (cells: readonly string[]): boolean =>
  cells.every((cell) => saysMissing(cell) || /^[-=_+\s]*$/.test(cell));
