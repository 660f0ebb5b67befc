import { soilFromAir } from '../../seedbed/conduction/soil-from-air.js';
import { surfaceOf } from '../../seedbed/surface/surface.js';
import { CLIMATOLOGICAL_RANGE_K, climatologicalAir, climatologicalStart } from '../ahead/climatological-air.js';
import type { Bedding } from '../question.js';
import { type Clock, tellableDepthCm } from './probe-at-seed.js';
import { runningDay } from './running-day.js';

/**
 * How the soil at the seed swings about its daily mean under usual days: where only its mean is known.
 *
 * @returns Hourly differences from the mean of the day around [K], on the clock; null where no latitude is known.
 */
export function climatologicalDiurnalK({ site, bed, depthCm }: Bedding, clock: Clock): Float64Array | null {
  if (site.latitude === null || clock.nHours === 0) return null;
  const air = climatologicalAir(site, clock, CLIMATOLOGICAL_RANGE_K);
  const [soilC] = soilFromAir(
    air,
    surfaceOf(bed, null),
    bed.kind,
    [tellableDepthCm(depthCm)],
    climatologicalStart,
  ).hourlyC;
  const meanC = runningDay(soilC!);
  return soilC!.map((tempC, hour) => tempC - meanC[hour]!);
}
