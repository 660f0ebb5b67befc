import type { Crop, CropRow } from '../../../src/germination/crop.js';
import { crops } from '../../../src/germination/crops.js';
import { bestPercent, germinationCurve } from '../../../src/germination/curve/curve.js';
import { cohortRun, type Seed, unknownProgress } from '../../../src/germination/run/cohorts.js';
import { outcomeAt } from '../../../src/germination/run/outcome.js';
import type { SpellSowing } from '../../../src/germination/run/spells.js';

export function cropCalled(id: string): Crop {
  const crop = crops.get(id);
  if (!crop) throw new Error(`no crop is called ${id}`);
  return crop;
}

/** Seed of a handbook crop; what is named replaces the crop's own. */
export function seedOf(crop: Crop, own: Partial<Seed> & { hotLimitShiftC?: number } = {}): Seed {
  const { hotLimitShiftC = 0, ...rest } = own;
  return {
    curve: germinationCurve(crop.rows, crop.soil?.maximumC ?? null, hotLimitShiftC),
    hotThresholdC: crop.hotThresholdC + hotLimitShiftC,
    chillingSensitive: crop.chillingSensitive,
    sigmaLog10: crop.sigmaLog10,
    timeFactor: 1,
    ...rest,
  };
}

/** A grower's own rows: temperature, days to half, percent (100 where left out). */
export const rowsOf = (rows: readonly (readonly [tempC: number, days: number, percent?: number])[]): CropRow[] =>
  rows.map(([temperatureC, days, percent = 100]) => ({ temperatureC, tested: true, days, percent }));

/** Some hours at a mean, or swinging around it as a day does: coldest two hours after the part starts, warmest at its fourteenth. */
export interface Part {
  readonly hours: number;
  readonly meanC: number;
  readonly swingC?: number;
}

/** Hourly means of parts that follow one another, each read at the middle of its hours. */
export function hourly(...parts: readonly Part[]): Float64Array {
  return Float64Array.from(
    parts.flatMap(({ hours, meanC, swingC = 0 }) =>
      Array.from({ length: hours }, (_, h) => meanC + swingC * Math.sin((2 * Math.PI * (h + 0.5 - 8)) / 24)),
    ),
  );
}

export const days = (n: number, meanC: number, swingC = 0): Part => ({ hours: 24 * n, meanC, swingC });

/** Hours enough, at a constant temperature, for every cohort that can come to be up, at a tempo in days to half. */
export const constantFor = (daysToHalf: number, tempC: number): Float64Array =>
  hourly(days(Math.ceil(4 * daysToHalf), tempC));

/** A sowing of a handbook crop, wetted at an hour of the day, run to its outcome. Every day has 24 hours. */
export function sow(
  crop: Crop,
  hourlyC: Float64Array,
  countDays: number,
  own: Parameters<typeof seedOf>[1] = {},
  wetAt = 0,
) {
  const seed = seedOf(crop, own);
  const hourly = unknownProgress(hourlyC.length);
  const run = cohortRun(seed, hourlyC, hourly);
  const viablePercent = bestPercent(crop.rows);
  const countH = 24 * countDays;
  const dayOfHour = Int32Array.from(hourlyC, (_, hour) => Math.floor((hour + wetAt) / 24));
  const sowing: SpellSowing = { seed, hourlyC, hourly, dayOfHour, countH, viablePercent };
  return { sowing, run, outcome: outcomeAt(run, countH, viablePercent) };
}
