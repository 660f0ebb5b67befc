import type { Medium } from '../../basics/series.js';
import type { Lure } from '../readings-facts.js';
import { readsAsNumber } from '../text/cell-kinds.js';
import { readNumber } from '../text/number-cell.js';
import type { Table } from '../text/table.js';
import { type StampForm, stampFormOf } from '../time/stamp-form.js';
import {
  depthSaid,
  lureSaid,
  mediumSaid,
  missingMarks,
  saysMissing,
  saysTemperature,
  statisticSaid,
  type UnitSaid,
  unitSaid,
} from './temperature-words.js';

/** A column of a file, as far as its name and its first cells tell. */
export interface Column {
  /** From 0. */
  readonly index: number;
  readonly name: string;
  readonly kind: 'stamp' | 'clock' | 'number' | 'unit' | 'text' | 'empty';
  readonly form: StampForm | null;
  readonly cells: readonly string[];
  readonly distinct: number;
}

/** Meaning of a name, a label and their units for the numbers under them. */
export interface Meaning {
  readonly unit: UnitSaid;
  readonly medium: Medium | null;
  readonly depthCm: number | null;
  readonly statistic: 'min' | 'max' | 'mean' | null;
  /** Other quantity than a temperature at a seed; null if nothing says so. */
  readonly lure: Lure | null;
  readonly saysTemperature: boolean;
}

const MOSTLY = 0.8;
const UNIT_CELL = /^(?:Â?°?\s?[CFK]|deg ?[CFK]|celsius|fahrenheit|kelvin|%|hpa|mm|lx|v|w|kwh|ppm)$/i;

/** The columns of a table. */
export function columnsOf(table: Table): Column[] {
  return table.names.map((name, index) => {
    const cells = table.sample.map((row) => row[index] ?? '');
    const said = cells.filter((cell) => !saysMissing(cell));
    const form = said.length > 0 ? (stampFormOf(said) ?? null) : null;
    const share = (test: (cell: string) => boolean): number => said.filter(test).length / said.length;
    const isClock = form?.kind === 'clock' && (said.some((cell) => /\D/.test(cell.trim())) || saysTime(name));
    const kind =
      said.length === 0
        ? 'empty'
        : form && form.kind !== 'clock'
          ? 'stamp'
          : isClock
            ? 'clock'
            : share((cell) => UNIT_CELL.test(cell.trim())) >= MOSTLY
              ? 'unit'
              : share(readsAsNumber) >= MOSTLY
                ? 'number'
                : 'text';
    return { index, name, kind, form, cells, distinct: new Set(said).size };
  });
}

const saysTime = (name: string): boolean =>
  !/uptime|elapsed|millis|seconds/i.test(name) &&
  /time|zeit|hour|heure|hora|\bora\b|tijd|\btid|aika|godz|hod|hhmm|^h$|_hr/i.test(name);

/** Legend of a column in the lines above a table: `TS5 = soil temperature at 5 cm`. */
export function legendOf(name: string, preamble: readonly string[]): string {
  if (name.trim() === '') return '';
  for (const line of preamble) {
    const said = /^[\s#*"']*([^:=]+?)\s*[:=]\s*(.+)$/.exec(line);
    if (!said) continue;
    const called = said[1]!.trim().split(/\s+/).at(-1)!;
    if (called.toLowerCase() === name.trim().toLowerCase()) return said[2]!.trim();
  }
  return '';
}

/** Meaning of a name with the units under or beside it. */
export function meaningOf(name: string, units: string): Meaning {
  const ofName = unitSaid(name);
  const ofUnits = unitSaid(units);
  const isTorn =
    ofName.isTorn || ofUnits.isTorn || (ofName.unit !== null && ofUnits.unit !== null && ofName.unit !== ofUnits.unit);
  const unit = isTorn ? null : (ofName.unit ?? ofUnits.unit);
  const temperature = saysTemperature(name) || unit !== null || isTorn;
  return {
    unit: { unit, isTorn, scale: Math.min(ofName.scale, ofUnits.scale) },
    medium: mediumSaid(name),
    depthCm: depthSaid(name),
    statistic: statisticSaid(name),
    lure:
      lureSaid(name) ?? (/^\s*(?:%|hpa|mbar|mm|v|volts?|w\/m.*|m\/s|lx)\s*$/i.test(units) ? 'another quantity' : null),
    saysTemperature: temperature,
  };
}

/** The numbers among cells: between what they lie [the file's own unit], whether they never move, or only count. */
export function rangeOf(cells: readonly string[]): { min: number; max: number; isFlat: boolean; isCounter: boolean } {
  let [min, max] = [Infinity, -Infinity];
  let [previous, isCounter] = [NaN, true];
  for (const cell of cells) {
    const value = saysMissing(cell) ? NaN : readNumber(cell);
    if (Number.isNaN(value) || missingMarks.has(value)) continue;
    min = Math.min(min, value);
    max = Math.max(max, value);
    isCounter &&= Number.isInteger(value) && (Number.isNaN(previous) || value === previous + 1);
    previous = value;
  }
  return { min, max, isFlat: min === max, isCounter: isCounter && max > min + 1 };
}
