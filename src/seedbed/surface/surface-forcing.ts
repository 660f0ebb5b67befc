import { snowCover, snowIndex, throughSnow, underSnowC } from './snow.js';
import { type Surface, solAirC, sunninessOf } from './surface.js';

/** A day of air on the clock of hours since a record's start. */
export interface AirDayAbove {
  readonly startH: number;
  readonly endH: number;
  readonly sunriseH: number;
  readonly sunsetH: number;
  readonly minC: number;
  readonly maxC: number;
  /** Radiation above the atmosphere [MJ m⁻² d⁻¹]. */
  readonly extraterrestrialMJ: number;
}

/** The air above a bed, by the hour and by the day. */
export interface AirRecord {
  /** Hourly means [°C], none missing. Shape (n). */
  readonly hourlyC: Float64Array;
  /** Consecutive days that cover every hour. */
  readonly days: readonly AirDayAbove[];
}

/** Hourly forcing of the soil's surface. All of shape (n). */
export interface SurfaceForcing {
  /** The sol-air temperature [°C]. */
  readonly solAirC: Float64Array;
  /** h, through the snow of the hour [W m⁻² K⁻¹]. */
  readonly conductance: Float64Array;
  /** The sunshine term in `solAirC` [K]. */
  readonly sunK: Float64Array;
  /** Assumed snow-covered share of the ground, 0 to 1. */
  readonly snowCover: Float64Array;
  /** The day's sunshine above its climatological mean on ground without snow: (1 - c)(Q - 1). */
  readonly sunnier: Float64Array;
}

/** Minimum of the air's diurnal range [K]. */
const MIN_RANGE_K = 0.5;

/**
 * Hourly forcing of the soil's surface by the weather.
 *
 * @param air     The air.
 * @param surface Energy exchange of weather and soil.
 * @returns Sol-air temperature, conductance and the sun's part.
 *
 * Formula: F = air + constant + perRange (d - 13) + S(t); S follows the sun as a half-sine from rise to set, its mean
 * that of the day; under a share c of snow F = (1 - c) F + c min(Tm, 0) and h is less. For a surface whose constants
 * use the middle of the day's extremes, the air is shifted so that this is its mean.
 * Validity: daily means so forced agree with daily steps within 0.14 K; the diurnal range under grass is not validated.
 * Source: as `surfaceOf`, `snowIndex`.
 */
export function surfaceForcing({ hourlyC, days }: AirRecord, surface: Surface): SurfaceForcing {
  const n = hourlyC.length;
  const forcing = {
    solAirC: new Float64Array(n),
    conductance: new Float64Array(n),
    sunK: new Float64Array(n),
    snowCover: new Float64Array(n),
    sunnier: new Float64Array(n),
  };
  let snow = 0;
  let shiftK = 0;
  for (const day of days) {
    const first = Math.max(0, Math.ceil(day.startH - 0.5));
    const end = Math.min(n, Math.ceil(day.endH - 0.5));
    const meanC = (day.minC + day.maxC) / 2;
    const rangeK = Math.max(MIN_RANGE_K, day.maxC - day.minC);
    snow = snowIndex(snow, meanC);
    if (first >= end) continue;
    const isWhole = day.startH > -0.5 && day.endH < n + 0.5;
    if (surface.isOfExtremes && isWhole) shiftK = meanC - meanOf(hourlyC, first, end);
    const sunK = surface.sunK(rangeK, day.extraterrestrialMJ);
    const dullK = solAirC(surface, 0, rangeK, day.extraterrestrialMJ) - sunK;
    const covered = snowCover(snow);
    const conductance = throughSnow(surface.conductance, snow);
    const sunnier = (1 - covered) * (sunninessOf(rangeK, day.extraterrestrialMJ) - 1);
    for (let hour = first; hour < end; hour++) {
      const shining = sunK * sunOfHour(day, hour);
      const bare = hourlyC[hour]! + shiftK + dullK + shining;
      forcing.sunK[hour] = (1 - covered) * shining;
      forcing.solAirC[hour] = underSnowC(bare, meanC, covered);
      forcing.conductance[hour] = conductance;
      forcing.sunnier[hour] = sunnier;
      forcing.snowCover[hour] = covered;
    }
  }
  return forcing;
}

/** Mean radiation in an hour over that of the day: a half-sine from rise to set. */
function sunOfHour({ startH, endH, sunriseH, sunsetH }: AirDayAbove, hour: number): number {
  const from = Math.max(hour, sunriseH);
  const to = Math.min(hour + 1, sunsetH);
  if (from >= to) return 0;
  const turn = Math.PI / (sunsetH - sunriseH);
  return ((endH - startH) / 2) * (Math.cos(turn * (from - sunriseH)) - Math.cos(turn * (to - sunriseH)));
}

function meanOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum / (to - from);
}
