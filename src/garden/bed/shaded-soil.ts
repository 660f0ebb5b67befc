import { type FindPast, MIN_YEARS, type PastSoil, yearsTold } from '../../answers/ahead/past-soil.js';
import type { Bedding } from '../../answers/question.js';
import { HOUR_MS } from '../../basics/calendar.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { ReadSeries } from '../../readings/read-series.js';

/** Half of the sun that the bed has now. */
const half = (shadePercent: number): number => 100 - (100 - shadePercent) / 2;

/**
 * A bed's past soil had it been shaded by half: what the same air makes of both beds, laid over what is known of the one.
 *
 * @param past The bed's soil as it was.
 * @returns null where the air of past years is not known.
 */
export function shadedSoil(
  past: PastSoil,
  series: readonly ReadSeries[],
  bedding: Bedding,
  phaseMs: number,
  findPast: FindPast,
  shouldStop?: ShouldStop,
): PastSoil | null {
  const air = series.filter(({ medium }) => medium === 'air');
  if (yearsTold(air) < MIN_YEARS) return null;
  const { bed } = bedding;
  const asItIs = findPast(air, bedding, phaseMs, shouldStop);
  const shaded = findPast(
    air,
    { ...bedding, bed: { ...bed, shadePercent: half(bed.shadePercent) } },
    phaseMs,
    shouldStop,
  );
  const offset = Math.round((asItIs.startMs - past.startMs) / HOUR_MS);
  return {
    ...past,
    hourlyC: past.hourlyC.map((tempC, hour) => {
      const coolerK = shaded.hourlyC[hour - offset]! - asItIs.hourlyC[hour - offset]!;
      return Number.isNaN(coolerK) ? tempC : tempC + coolerK;
    }),
  };
}
