/** Equatorward of this latitude the amplitude falls in proportion, because seasons fade (our assumption) [°]. */
const FULL_SEASONS_FROM_DEG = 30;

/** Amplitude of the annual harmonic [K], and the day of the year it peaks; 1 January is 1. */
export interface SeasonalCourse {
  readonly amplitudeK: number;
  readonly peakDay: number;
}

/**
 * The annual harmonic of a place without a year of data.
 *
 * @param latitudeDeg  Latitude, north positive [°].
 * @param amplitudeK   Amplitude of full seasons, from 30° on [K].
 * @param peakDayNorth Day of the year it peaks north of the equator.
 * @param peakDaySouth The same south of it.
 * @example seasonByLatitude(-15, 12, 197, 14) // => { amplitudeK: 6, peakDay: 14 }
 */
export function seasonByLatitude(
  latitudeDeg: number,
  amplitudeK: number,
  peakDayNorth: number,
  peakDaySouth: number,
): SeasonalCourse {
  return {
    amplitudeK: amplitudeK * Math.min(1, Math.abs(latitudeDeg) / FULL_SEASONS_FROM_DEG),
    peakDay: latitudeDeg >= 0 ? peakDayNorth : peakDaySouth,
  };
}
