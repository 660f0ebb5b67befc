import type { ReadSeries } from '../../readings/read-series.js';
import { diffusivityFromTwoProbes } from '../../seedbed/probe/diffusivity-from-two-probes.js';
import { isCoarse, knownHours, type Site } from './known-hours.js';
import { type Clock, SAME_DEPTH_CM } from './probe-at-seed.js';

/** Minimum and maximum consecutive hours for the diurnal wave; longer runs are better, up to two weeks. */
const MIN_H = 72;
const MAX_H = 336;

/**
 * How fast warmth spreads in the bed, where probes at two depths read by the hour and tell the same story.
 *
 * @param soil  Soil series, the nearest to the depth asked last.
 * @returns Diffusivity [m²/s]; null where there are no two such probes, or they do not agree with conduction.
 */
export function measuredDiffusivityM2s(
  soil: readonly ReadSeries[],
  site: Site,
  { startMs, nHours }: Clock,
  depthCm: number,
): number | null {
  if (soil.length < 2) return null;
  const byTheHour = soil.filter((one) => one.readings && one.origin === 'measured' && !isCoarse(one));
  const near = byTheHour.at(-1);
  const depthOf = (one: ReadSeries): number => one.probeDepthCm ?? depthCm;
  const other = near && byTheHour.findLast((one) => Math.abs(depthOf(one) - depthOf(near)) > SAME_DEPTH_CM);
  if (!near || !other) return null;
  const [upper, lower] = depthOf(near) < depthOf(other) ? [near, other] : [other, near];
  const [above, below] = [upper, lower].map((one) => knownHours(one, site, startMs, nHours).hourlyC);
  // The last stretch that both know.
  let toH = nHours;
  while (toH > 0 && Number.isNaN(above![toH - 1]! + below![toH - 1]!)) toH--;
  let fromH = toH;
  while (fromH > 0 && toH - fromH < MAX_H && !Number.isNaN(above![fromH - 1]! + below![fromH - 1]!)) fromH--;
  if (toH - fromH < MIN_H) return null;
  const apartCm = depthOf(lower) - depthOf(upper);
  return diffusivityFromTwoProbes(above!.subarray(fromH, toH), below!.subarray(fromH, toH), apartCm).diffusivityM2s;
}
