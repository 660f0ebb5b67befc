import { DAY_MS, dateAt, dayOfYear, HOUR_MS } from '../../basics/calendar.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { annualHarmonic, annualProfile } from '../../seedbed/conduction/annual-start.js';
import { dampingDepthCm } from '../../seedbed/conduction/damping.js';
import { downwardPropagation } from '../../seedbed/probe/downward-propagation.js';
import { MIN_INVERSION_HOURS, upwardInversionC } from '../../seedbed/probe/upward-inversion.js';
import { DEEP_CM, diffusivityOf, type Ground, gradedDepthsCm, nodeAt } from '../../seedbed/surface/ground.js';
import { BRIDGED_H, fillGap, missingHours } from './fill-gaps.js';
import { isCoarse, type KnownHours, type Site } from './known-hours.js';

/** Way of a probe's readings to the seed: unchanged, by downward propagation, by upward inversion; or none. */
export type Moved = 'not-moved' | 'down' | 'up' | 'too-far' | 'too-short';

/** A soil series on the record's clock, where the probe is and where the seed is. */
export interface ProbeAtSeed {
  readonly depthCm: number;
  /** Hourly means at the probe [°C]; NaN where it says nothing. */
  readonly atProbe: KnownHours;
  /** The same at the seed; NaN throughout where they cannot be moved. */
  readonly atSeedC: Float64Array;
  readonly moved: Moved;
  /** True where its readings are too far apart to tell a day’s mean. */
  readonly isCoarse: boolean;
}

/** The record's clock. */
export interface Clock {
  readonly startMs: number;
  readonly nHours: number;
}

/** Depths this close are one: a probe's own length is more [cm]. */
export const SAME_DEPTH_CM = 0.2;

/** The soil series whose readings are the seed's own; one that names no depth is taken to lie beside the seed. */
export const atSeed = (series: readonly ReadSeries[], seedDepthCm: number): readonly ReadSeries[] =>
  series.filter(
    (one) => one.medium === 'soil' && Math.abs((one.probeDepthCm ?? seedDepthCm) - seedDepthCm) <= SAME_DEPTH_CM,
  );

/** A depth to a tenth of a millimetre: nodes closer than that are one. */
export const tellableDepthCm = (depthCm: number): number => Math.round(depthCm * 100) / 100;

/**
 * Brings a probe's readings to the depth of the seed.
 *
 * @param series      One soil series.
 * @param site        The place.
 * @param clock       The record's hours.
 * @param seedDepthCm How deep the seed lies [cm].
 * @param soil        What the bed's soil is made of, and how deep it is where that is not all the way down [cm].
 * @param atProbe     The series on those hours.
 */
export function probeAtSeed(
  series: ReadSeries,
  site: Site,
  { startMs, nHours }: Clock,
  seedDepthCm: number,
  soil: Omit<Ground, 'depthsCm'> & { readonly bottomCm: number },
  atProbe: KnownHours,
): ProbeAtSeed {
  const depthCm = tellableDepthCm(series.probeDepthCm ?? seedDepthCm);
  const upCm = depthCm - seedDepthCm;
  const probe = { depthCm, atProbe, isCoarse: isCoarse(series) };
  if (Math.abs(upCm) <= SAME_DEPTH_CM) return { ...probe, atSeedC: atProbe.hourlyC, moved: 'not-moved' };
  const none = new Float64Array(nHours).fill(NaN);
  const isOutside = depthCm > soil.bottomCm && depthCm > seedDepthCm;
  if (isOutside || upCm > dampingDepthCm(diffusivityOf(soil), 24)) return { ...probe, atSeedC: none, moved: 'too-far' };

  const atSeedC = none;
  let moved: Moved = 'too-short';
  for (const { fromH, toH } of stretchesOf(atProbe.hourlyC)) {
    const known = atProbe.hourlyC.slice(fromH, toH);
    for (const gap of missingHours(known)) fillGap(known, gap);
    if (upCm > 0 && known.length < MIN_INVERSION_HOURS) continue;
    moved = upCm > 0 ? 'up' : 'down';
    const there =
      upCm > 0
        ? upwardInversionC(known, depthCm, seedDepthCm, diffusivityOf(soil))
        : deeperC(known, -upCm, soil, site, startMs + fromH * HOUR_MS);
    for (let hour = fromH; hour < toH; hour++) {
      if (!Number.isNaN(atProbe.hourlyC[hour])) atSeedC[hour] = there[hour - fromH]!;
    }
  }
  return { ...probe, atSeedC, moved };
}

/** Stretches of hours in which no more than three in a row are missing. */
function stretchesOf(hourlyC: Float64Array): { fromH: number; toH: number }[] {
  const stretches: { fromH: number; toH: number }[] = [];
  let fromH = -1;
  let lastH = -1;
  for (let hour = 0; hour < hourlyC.length; hour++) {
    if (Number.isNaN(hourlyC[hour])) continue;
    if (fromH >= 0 && hour - lastH - 1 > BRIDGED_H) {
      stretches.push({ fromH, toH: lastH + 1 });
      fromH = hour;
    } else if (fromH < 0) fromH = hour;
    lastH = hour;
  }
  if (fromH >= 0) stretches.push({ fromH, toH: lastH + 1 });
  return stretches;
}

function deeperC(
  knownC: Float64Array,
  downCm: number,
  soil: Omit<Ground, 'depthsCm'>,
  site: Site,
  startMs: number,
): Float64Array {
  const ground = { ...soil, depthsCm: gradedDepthsCm([downCm], DEEP_CM) };
  return downwardPropagation(ground, knownC, nodeAt(ground, downCm), ...seasonOf(knownC, site, startMs)).hourlyC;
}

/** The year's wave at a probe as its own days tell it, and the day on which they begin. */
function seasonOf(
  knownC: Float64Array,
  site: Site,
  startMs: number,
): [wave: ReturnType<typeof annualHarmonic>, day: number] {
  const nDays = Math.max(1, Math.floor(knownC.length / 24));
  const means = Float64Array.from({ length: nDays }, (_, day) => {
    const hours = knownC.subarray(24 * day, 24 * day + 24);
    return hours.reduce((sum, tempC) => sum + tempC, 0) / hours.length;
  });
  const daysOfYear = Float64Array.from(means, (_, day) => dayOfYear(dateAt(startMs + day * DAY_MS, site.zone)));
  // Without a latitude no season is supposed: the ground below is as warm as the probe has been.
  return [annualHarmonic(daysOfYear, means, site.latitude ?? 0), daysOfYear[0]! - 1];
}

/** The last stretch of a day or more that a probe reads before an hour; undefined where it ends over a day before it. */
export function lastWholeStretch(hourlyC: Float64Array, endH: number): { fromH: number; toH: number } | undefined {
  if (endH < 24) return undefined;
  const last = stretchesOf(hourlyC.subarray(0, endH)).findLast(({ fromH, toH }) => toH - fromH >= 24);
  return last && last.toH >= endH - 24 ? last : undefined;
}

/**
 * The bed's profile at an instant, from what a probe read before it: the ground below by conduction, above the probe its
 * last day's mean.
 *
 * @param ground The bed's nodes.
 * @param probe  A probe in it.
 * @param endH   The hour of the record's clock at which the profile is wanted; the probe reads up to within a day of it.
 */
export function profileFromProbe(
  ground: Ground,
  { depthCm, atProbe }: ProbeAtSeed,
  endH: number,
  site: Site,
  startMs: number,
): Float64Array {
  const { fromH, toH } = lastWholeStretch(atProbe.hourlyC, endH)!;
  const known = atProbe.hourlyC.slice(fromH, toH);
  for (const gap of missingHours(known)) fillGap(known, gap);
  const first = ground.depthsCm.findIndex((depth) => depth >= depthCm);
  const below = { ...ground, depthsCm: ground.depthsCm.subarray(first).map((depth) => depth - depthCm) };
  const [wave, day] = seasonOf(known, site, startMs + fromH * HOUR_MS);
  const lastDay = known.subarray(-24);
  const lastC = lastDay.reduce((sum, tempC) => sum + tempC, 0) / lastDay.length;
  if (below.depthsCm.length < 2) return annualProfile(ground, wave, day, Infinity);
  const { profileC } = downwardPropagation(below, known, 0, wave, day);
  return Float64Array.from(ground.depthsCm, (_, i) => (i < first ? lastC : profileC[i - first]!));
}
