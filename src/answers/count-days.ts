import type { ChartAnswer } from '../germination/chart.js';
import { defaultCountDays, LONGEST_COUNT_DAYS, SHORTEST_COUNT_DAYS } from '../germination/count-day.js';
import type { SeedRecord } from './seed-temperature.js';

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
  const among = (days: number): number | null => {
    const sums = runningSums(record.upTo(24 * days).hourlyC.subarray(record.wetH));
    return defaultCountDays(
      (meanC) => chart(meanC).days,
      (n) => (n <= days ? sums[24 * n]! / (24 * n) : null),
      timeFactor,
    );
  };
  const reach = Math.min(LONGEST_COUNT_DAYS, reachDays);
  const days = among(Math.min(SHORTEST_COUNT_DAYS, reach)) ?? among(reach) ?? SHORTEST_COUNT_DAYS;
  return Math.min(LONGEST_COUNT_DAYS, Math.ceil(waitH / 24) + days);
}

function runningSums(values: Float64Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) sums[i + 1] = sums[i]! + values[i]!;
  return sums;
}
