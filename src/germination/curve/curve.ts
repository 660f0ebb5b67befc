import { interpolate } from '../../basics/numerics/interpolate.js';
import { isotonic } from '../../basics/numerics/isotonic.js';
import type { CropRow } from '../crop.js';
import { baseTempFit } from './base-temp-fit.js';

/** Knots of a broken line over temperature [°C]. */
interface Line {
  readonly tempsC: readonly number[];
  readonly values: readonly number[];
}

/** A quantity over temperature: up to its warmest best cell, and from there on. */
export interface Curve {
  readonly rising: Line;
  readonly falling: Line;
  /** The warmest cell with the highest value [°C]. */
  readonly peakC: number;
  /** Outside these the line is ours, not the table's [°C]; infinite where the table ends in "none came". */
  readonly testedFromC: number;
  readonly testedToC: number;
}

/** What a crop's seed does at a constant temperature. */
export interface GerminationCurve {
  /** 1/days to half emergence [1/d]. */
  readonly rate: Curve;
  /** Share of the best cell's seedlings that come at all, 0 to 1. */
  readonly share: Curve;
  /** The best cell's percent. */
  readonly bestPercent: number;
}

/** Where the line ends when the table does not say: this far beyond the last cell [K]. Our assumption: one step of the handbook's. */
export const STEP_BEYOND_K = 5;

/**
 * A crop's two response curves, from its rows.
 *
 * Rate: 1/days, straight between timed cells, 0 where none came. Share: percent over the best, first smoothed to a
 * single peak, because dips such as celery's at 15 °C are noise of one lot. Beyond the table a straight line runs from
 * the end cell to 0: at the fitted base temperature but not below 0 °C, and at the published maximum.
 *
 * @param rows Rows in rising temperature, at least one with days and one with a percent above 0.
 * @param maximumC Published highest soil temperature [°C], or null where none is known: then 5 K beyond the last cell.
 * @param hotLimitShiftC Moves each curve above its warmest best cell [K], -8 to 8: seed lots differ in the heat they bear.
 *
 * Source: cells and limits from the crop; pooling as in basics/isotonic. The straight ends are our assumption.
 * @example rateAt(germinationCurve(onionRows, 35), 12.5) // => 0.10989
 */
export function germinationCurve(
  rows: readonly CropRow[],
  maximumC: number | null,
  hotLimitShiftC = 0,
): GerminationCurve {
  const ofRows = curves.get(rows) ?? new Map<string, GerminationCurve>();
  curves.set(rows, ofRows);
  const key = `${maximumC} ${hotLimitShiftC}`;
  const known = ofRows.get(key);
  if (known) return known;
  const made = curveOfRows(rows, maximumC, hotLimitShiftC);
  if (ofRows.size >= MAX_CURVES_OF_ROWS) ofRows.clear();
  ofRows.set(key, made);
  return made;
}

/** A crop's rows are asked of again and again, most times with one limit; lots move it. */
const curves = new WeakMap<readonly CropRow[], Map<string, GerminationCurve>>();
const MAX_CURVES_OF_ROWS = 16;

function curveOfRows(rows: readonly CropRow[], maximumC: number | null, hotLimitShiftC: number): GerminationCurve {
  const rates = rateCells(rows);
  const shares = shareCells(rows);
  const fit = baseTempFit(rows);
  const zeroBelowC = fit ? Math.max(0, fit.baseTempC) : null;
  return {
    rate: curve(rates, zeroBelowC, maximumC, hotLimitShiftC),
    share: curve(shares, zeroBelowC, maximumC, hotLimitShiftC),
    bestPercent: bestPercent(rows),
  };
}

/** 1/days to half emergence at a constant temperature [1/d]. */
export const rateAt = (curves: GerminationCurve, tempC: number): number => valueAt(curves.rate, tempC);

/** Share of the best cell's seedlings that come at a constant temperature, 0 to 1. */
export const shareAt = (curves: GerminationCurve, tempC: number): number => valueAt(curves.share, tempC);

/** Timed cells: 1/days, or 0 where none came. */
function rateCells(rows: readonly CropRow[]): Line {
  const timed = rows.filter((row) => row.tested);
  return {
    tempsC: timed.map((row) => row.temperatureC),
    values: timed.map((row) => (row.days === null ? 0 : 1 / row.days)),
  };
}

/** Counted cells, in percent as printed. */
export function percentCells(rows: readonly CropRow[]): Line {
  const counted = rows.filter((row) => row.percent !== null);
  return { tempsC: counted.map((row) => row.temperatureC), values: counted.map((row) => row.percent!) };
}

/** Counted cells as shares of the best, rising to the warmest best cell and falling after it. */
export function shareCells(rows: readonly CropRow[]): Line {
  const { tempsC, values } = percentCells(rows);
  const best = Math.max(...values);
  const shares = values.map((value) => value / best);
  const peak = shares.lastIndexOf(1);
  const falling = isotonic(shares.slice(peak).reverse()).reverse();
  return { tempsC, values: [...isotonic(shares.slice(0, peak + 1)), ...falling.slice(1)] };
}

export const bestPercent = (rows: readonly CropRow[]): number => Math.max(...percentCells(rows).values);

/** The lower of the two limbs; where one of them is level at the peak, the other alone. */
function valueAt({ rising, falling, peakC }: Curve, tempC: number): number {
  const fallsFromC = falling.tempsC[0]!;
  if (tempC <= peakC && tempC <= fallsFromC) return interpolate(tempC, rising.tempsC, rising.values);
  const fallen = interpolate(tempC, falling.tempsC, falling.values);
  return tempC >= peakC ? fallen : Math.min(fallen, interpolate(tempC, rising.tempsC, rising.values));
}

function curve(cells: Line, zeroBelowC: number | null, zeroAboveC: number | null, shiftC: number): Curve {
  const coldestC = cells.tempsC[0]!;
  const warmestC = cells.tempsC.at(-1)!;
  const comesAtColdest = cells.values[0]! > 0;
  const comesAtWarmest = cells.values.at(-1)! > 0;
  const line = { tempsC: [...cells.tempsC], values: [...cells.values] };
  if (comesAtColdest) {
    line.tempsC.unshift(Math.min(zeroBelowC ?? coldestC - STEP_BEYOND_K, justBelow(coldestC)));
    line.values.unshift(0);
  }
  if (comesAtWarmest) {
    line.tempsC.push(Math.max(zeroAboveC ?? warmestC + STEP_BEYOND_K, justAbove(warmestC)));
    line.values.push(0);
  }
  const peak = line.values.lastIndexOf(Math.max(...line.values));
  return {
    rising: { tempsC: line.tempsC.slice(0, peak + 1), values: line.values.slice(0, peak + 1) },
    falling: { tempsC: line.tempsC.slice(peak).map((tempC) => tempC + shiftC), values: line.values.slice(peak) },
    peakC: line.tempsC[peak]!,
    testedFromC: comesAtColdest ? coldestC : -Infinity,
    testedToC: comesAtWarmest ? warmestC + shiftC : Infinity,
  };
}

const justBelow = (tempC: number): number => tempC - 1e-9;
const justAbove = (tempC: number): number => tempC + 1e-9;
