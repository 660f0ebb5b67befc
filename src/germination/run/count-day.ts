/** Growers count after three weeks at the earliest, and wait twice the chart's days where that is longer: our default. */
export const MIN_COUNT_DAYS = 21;
export const MAX_COUNT_DAYS = 366;

/**
 * When to count: the smallest whole number of days, at least 21, that is twice what the chart says at the mean so far.
 *
 * @param chartDays Days the chart gives at a constant temperature [°C]; null where nothing comes up.
 * @param meanOfFirstDays Mean temperature of the first n days from wetting [°C]; null where it is not known.
 * @param timeFactor How many times longer than the chart this grower's seed takes.
 * @returns Whole days from wetting, 21 to 366; null where none of them will do, or not enough is known.
 */
export function defaultCountDays(
  chartDays: (tempC: number) => number | null,
  meanOfFirstDays: (days: number) => number | null,
  timeFactor: number,
): number | null {
  for (let days = MIN_COUNT_DAYS; days <= MAX_COUNT_DAYS; days++) {
    const meanC = meanOfFirstDays(days);
    if (meanC === null) return null;
    const needed = chartDays(meanC);
    if (needed !== null && days >= 2 * timeFactor * needed) return days;
  }
  return null;
}
