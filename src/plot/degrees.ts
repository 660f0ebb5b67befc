import { scaleLinear } from 'd3-scale';
import type { LinearScale } from './shapes.js';

export type PlotUnit = 'C' | 'F';

/** A temperature in the reader's unit, from one in °C. */
export const inUnit = (tempC: number, unit: PlotUnit): number => (unit === 'F' ? (tempC * 9) / 5 + 32 : tempC);

/** A temperature in °C, from one in the reader's unit. */
export const fromUnit = (temp: number, unit: PlotUnit): number => (unit === 'F' ? ((temp - 32) * 5) / 9 : temp);

/** A temperature in words, to whole degrees, as `21 °C`. */
export const degrees = (tempC: number, unit: PlotUnit): string => `${Math.round(inUnit(tempC, unit))} °${unit}`;

/** A span of temperatures in words, to whole degrees, as `21` and `27 °C`. */
export const degreesSpan = (
  fromC: number,
  toC: number,
  unit: PlotUnit,
): { readonly from: string; readonly to: string } => ({
  from: `${Math.round(inUnit(fromC, unit))}`,
  to: degrees(toC, unit),
});

/** Scale of heights for temperatures in the reader's unit, wide enough for all of `tempsC`. */
export function degreeScale(tempsC: readonly number[], unit: PlotUnit, bottomY: number, topY: number): LinearScale {
  const known = tempsC.filter(Number.isFinite);
  const low = known.length === 0 ? 0 : known.reduce((least, one) => Math.min(least, one), Infinity);
  const high = known.length === 0 ? 30 : known.reduce((most, one) => Math.max(most, one), -Infinity);
  const spare = high - low < 2 ? 2 : 0;
  return scaleLinear()
    .domain([inUnit(low - spare, unit), inUnit(high + spare, unit)])
    .nice(5)
    .range([bottomY, topY]);
}
