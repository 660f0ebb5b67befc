import type { ChartAnswer } from '../../germination/curve/chart.js';
import { defaultCountDays, MAX_COUNT_DAYS, MIN_COUNT_DAYS } from '../../germination/run/count-day.js';
import type { SeedRecord } from './record/seed-temperature.js';

/**
 * When to count where the grower does not say: days from sowing.
 *
 * @param chart      What the crop's chart says at a temperature [°C].
 * @param timeFactor How many times longer than the chart this grower's seed takes.
 * @param record     What is known, and supposed, of the temperature.
 * @param waitH      How long the seed lies dry before it is wetted [h].
 * @param reachDays  How far after wetting the record may be asked [d].
 */
export function countDaysFor(
  chart: (meanC: number) => ChartAnswer,
  timeFactor: number,
  record: SeedRecord,
  waitH: number,
  reachDays: number,
): number {
  const reach = Math.min(MAX_COUNT_DAYS, reachDays);
  let hourlyC: Float64Array = new Float64Array();
  let sum = 0;
  let summedH = 0;
  // Asked for more and more days in turn: few are needed but for the coldest soils.
  const meanOfFirstDays = (days: number): number | null => {
    if (days > reach) return null;
    if (hourlyC.length < 24 * days) {
      const wanted = days === MIN_COUNT_DAYS ? days : Math.min(reach, 2 * days);
      hourlyC = record.upTo(24 * wanted).hourlyC.subarray(record.imbibitionH);
    }
    for (; summedH < 24 * days; summedH++) sum += hourlyC[summedH]!;
    return sum / summedH;
  };
  const days = defaultCountDays((meanC) => chart(meanC).days, meanOfFirstDays, timeFactor) ?? MIN_COUNT_DAYS;
  return Math.min(MAX_COUNT_DAYS, Math.ceil(waitH / 24) + days);
}
