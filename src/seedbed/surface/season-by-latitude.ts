/** Towards the equator the seasons fade: below this latitude the swing is scaled down in proportion (our assumption) [°]. */
const FULL_SEASONS_FROM_DEG = 30;

/** How far a yearly wave swings to either side of its mean [K], and the day of the year it peaks, 1 January being 1. */
export interface SeasonalCourse {
  readonly amplitudeK: number;
  readonly peakDay: number;
}

/**
 * The yearly wave of a place whose own year is not known.
 *
 * @param latitudeDeg  Latitude, north positive [°].
 * @param amplitudeK   Swing where the seasons are full, from 30° on [K].
 * @param peakDayNorth Day of the year it peaks north of the equator.
 * @param peakDaySouth And south of it.
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
