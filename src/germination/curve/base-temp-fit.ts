import { fitLine } from '../../basics/numerics/fit-line.js';
import type { CropRow } from '../crop.js';

/** The thermal-time line of a crop: 1/days = (T - baseTempC) / thermalTimeCd. */
export interface BaseTempFit {
  readonly baseTempC: number;
  readonly thermalTimeCd: number;
  readonly rSquared: number;
  readonly n: number;
}

/**
 * The base temperature and thermal time that the cool side of a crop's rows implies.
 *
 * Used only to say where, below the coldest timed cell, nothing comes up any more: forecasts interpolate the cells.
 *
 * @param rows Rows in rising temperature.
 * @returns Base temperature [°C], thermal time [°C·d], r squared and cells used; null with fewer than two cells or no rise.
 *
 * Formula: least squares of 1/days on T over timed cells from 5 °C up to the first temperature of the highest rate.
 * Validity: the line fails near the base (onion came up at 0 °C, below its fitted base of 2.4).
 * Source: Brewster (2008). Onions and Other Vegetable Alliums, 2nd ed., Eqns 4.6-4.7 (the form);
 * values against fixtures/golden/thermal-time-fit.json.
 * @example baseTempFit of onion's rows // => { baseTempC: 2.43, thermalTimeCd: 89.5, rSquared: 0.997, n: 5 }
 */
export function baseTempFit(rows: readonly CropRow[]): BaseTempFit | null {
  const timed = rows.filter((row) => row.days !== null && row.temperatureC >= 5);
  const highestRate = Math.max(...timed.map((row) => 1 / row.days!));
  const peak = timed.findIndex((row) => 1 / row.days! === highestRate);
  const coolSide = timed.slice(0, peak + 1);
  if (coolSide.length < 2) return null;
  const { slope, intercept, rSquared } = fitLine(
    coolSide.map((row) => row.temperatureC),
    coolSide.map((row) => 1 / row.days!),
  );
  return { baseTempC: -intercept / slope, thermalTimeCd: 1 / slope, rSquared, n: coolSide.length };
}
