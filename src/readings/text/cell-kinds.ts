import { saysMissing } from '../columns/temperature-words.js';
import { readNumber } from './number-cell.js';

export const readsAsNumber = (cell: string): boolean => !Number.isNaN(readNumber(cell));

/** A physical unit, or the kind of mean, that stands alone in its cell. */
const UNIT_CELL =
  /^[[(]?\s*(?:(?:0[.,]1\s*)?(?:Â?[°º˚]\s*[CFK]?|deg(?:rees?)?[ ._]?[CFK]|[CFK]|℃|℉|celsius|fahrenheit|kelvin)|%|%\s?rh|hpa|mbar|kpa|mm|cm|m|km|m\/s|km\/h|mph|w\/m.?|wm-?2|mj.*|m?v|volts?|rn|s|sec|min|h|hr|m3\/m3|m\^?3.*|inhg|in|inch|avg|smp|max|tot|std|mean|sample|average|minimum|maximum|unitless)\s*[\])]?$/i;
/** Cells that stand over a column of stamps in a row of units. */
const STAMP_UNIT = /^[[(]?(?:ts|utc|gmt|lst|yyyy.*|dd.*|hh.*|date|time|datum|zeit|-+)[\])]?$/i;

/** True if a row under the names holds units or kinds of mean rather than names or readings. */
export function isUnitsRow(filled: readonly string[]): boolean {
  const others = filled.filter((cell) => !STAMP_UNIT.test(cell));
  const units = others.filter((cell) => UNIT_CELL.test(cell)).length;
  return units > 0 && units >= 0.6 * others.length;
}

/** A line of nothing, or of strokes that part the header from the rows. */
export const isRule = (cells: readonly string[]): boolean =>
  cells.every((cell) => saysMissing(cell) || /^[-=_+\s]*$/.test(cell));
