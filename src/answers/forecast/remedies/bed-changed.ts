import { HOUR_MS } from '../../../basics/calendar.js';
import type { BedMake } from '../../../seedbed/bed.js';
import { soilFromAir } from '../../../seedbed/conduction/soil-from-air.js';
import { surfaceOf } from '../../../seedbed/surface/surface.js';
import type { AirRecord } from '../../../seedbed/surface/surface-forcing.js';
import { climatologicalAir, climatologicalStart } from '../../ahead/climatological-air.js';
import type { Bedding } from '../../question.js';
import { tellableDepthCm } from '../../soil/probe-at-seed.js';
import type { SoilRecord } from '../../soil/soil-record.js';

/** Both beds are followed from so long before the first hour asked, so that they differ as they would [h]. */
const RUN_IN_H = 10 * 24;
/** A hot spell's days are sunny: without air temperatures each is taken to swing so far in the air [K] (our judgement). */
const SUNNY_RANGE_K = 13;

/**
 * How much warmer the seed would lie if its bed were changed: all beds are run under the same air.
 *
 * @param soil    What is known of the bed as it is.
 * @param bedding The place, the bed as it is, and the depth.
 * @param changes What may be done to it: shade, water, a cover.
 * @param fromH   First hour asked, on the record's clock.
 * @param nHours  How many.
 * @returns For each change, changed bed less bed as it is [K] in each hour; beyond the last known air the last day comes again.
 */
export function bedChangedK(
  soil: SoilRecord,
  { site, bed, depthCm: asked }: Bedding,
  changes: readonly Partial<BedMake>[],
  fromH: number,
  nHours: number,
): Float64Array[] {
  const depthCm = tellableDepthCm(asked);
  const known = soil.model && soil.modelFromH + soil.model.air.record.hourlyC.length > fromH + 24 ? soil.model : null;
  const firstH = known ? Math.max(soil.modelFromH, fromH - RUN_IN_H) : fromH - RUN_IN_H;
  const air = known
    ? airFrom(known.air.record, firstH - soil.modelFromH)
    : climatologicalAir(
        site,
        { startMs: soil.startMs + firstH * HOUR_MS, nHours: fromH + nHours - firstH },
        SUNNY_RANGE_K,
      );
  const start = known ? { wave: { ...climatologicalStart.wave, meanC: air.hourlyC[0]! }, day: 0 } : climatologicalStart;
  const climate = known?.air.climate ?? null;
  const [asItIs, ...changed] = [bed, ...changes.map((change) => ({ ...bed, ...change }))].map(
    (one) => soilFromAir(air, surfaceOf(one, climate), one.kind, [depthCm], start).hourlyC[0]!,
  );
  const last = asItIs!.length - 1;
  return changed.map((after) =>
    Float64Array.from({ length: nHours }, (_, i) => {
      const hour = fromH + i - firstH;
      const at = hour <= last ? Math.max(0, hour) : last - 23 + ((hour - last - 1) % 24);
      return after[at]! - asItIs![at]!;
    }),
  );
}

/** The air from an hour on. */
function airFrom({ hourlyC, days }: AirRecord, hour: number): AirRecord {
  return {
    hourlyC: hourlyC.subarray(hour),
    days: days
      .filter((day) => day.endH > hour)
      .map((day) => ({
        ...day,
        startH: day.startH - hour,
        endH: day.endH - hour,
        sunriseH: day.sunriseH - hour,
        sunsetH: day.sunsetH - hour,
      })),
  };
}
