import { neverStop, type ShouldStop } from '../../basics/stop.js';
import type { BedKind, BedMake } from '../../seedbed/bed.js';
import { annualHarmonic } from '../../seedbed/conduction/annual-start.js';
import { type ProfileStart, soilFromAir } from '../../seedbed/conduction/soil-from-air.js';
import type { Ground } from '../../seedbed/surface/ground.js';
import { type Surface, solAirC, surfaceOf } from '../../seedbed/surface/surface.js';
import type { AirAboveBed } from './air-above-bed.js';

/** A bed's soil as its air alone makes it, on the air's clock. */
export interface ModelledBed {
  readonly air: AirAboveBed;
  readonly surface: Surface;
  readonly kind: BedKind;
  /** Hourly means at each depth asked [°C]. */
  readonly hourlyC: readonly Float64Array[];
  /** The seed's response to sunnier weather than usual, by the hour; worked out when asked. */
  sun(): Float64Array;
  /** The share of the ground that snow is taken to cover, by the hour. */
  readonly snowCover: Float64Array;
}

/** Soil before the air's record begins, if a probe measured it. */
export type KnownStart = (ground: Ground) => Float64Array;

/**
 * Works out a bed's soil from the air above it.
 *
 * @param air      The air.
 * @param latitude Of the place [°].
 * @param bed      What the bed is; not indoors.
 * @param depthsCm Depths wanted [cm], the seed's last.
 * @param options  `wetFromH`: dry soil is kept moist from this hour on. `knownStart`: the profile at the first hour.
 * @param shouldStop Asked once a year of hours.
 */
export function modelledBed(
  air: AirAboveBed,
  latitude: number,
  bed: BedMake,
  depthsCm: readonly number[],
  options: { readonly wetFromH?: number; readonly knownStart?: KnownStart } = {},
  shouldStop: ShouldStop = neverStop,
): ModelledBed {
  const surface = surfaceOf(bed, air.climate);
  const start: ProfileStart = options.knownStart
    ? { profileOf: options.knownStart }
    : { wave: seasonAbove(air, surface, latitude), day: air.daysOfYear[0]! - 1 };
  const later =
    bed.moisture === 'dry' && options.wetFromH !== undefined
      ? { fromH: options.wetFromH, surface: surfaceOf({ ...bed, moisture: 'moist' }, air.climate) }
      : undefined;
  const { hourlyC, sun, snowCover } = soilFromAir(air.record, surface, bed.kind, depthsCm, start, later, shouldStop);
  let told: Float64Array | null = null;
  return { air, surface, kind: bed.kind, hourlyC, sun: () => (told ??= sun()), snowCover };
}

/** The year's wave of the sol-air temperature above a bed. */
function seasonAbove({ record, daysOfYear, daysKnown }: AirAboveBed, surface: Surface, latitude: number) {
  const daily = record.days.map(({ minC, maxC, extraterrestrialMJ }, day) =>
    daysKnown[day] === 0 ? NaN : solAirC(surface, (minC + maxC) / 2, Math.max(0.5, maxC - minC), extraterrestrialMJ),
  );
  return annualHarmonic(daysOfYear, daily, latitude);
}
