import { addDays, dayOfYear, type PlainDate } from '../basics/calendar.js';
import { probit } from '../basics/numerics/probit.js';

/** A day's air in the form of a weather record [°C]. */
export interface DemoAirDay {
  readonly date: PlainDate;
  readonly min: number;
  readonly max: number;
}

// An invented temperate, maritime climate: mild winters, warm summers that lag the sun by five weeks, frosts into spring.
const YEAR_MEAN_C = 10.4;
const SEASON_C = 7.8;
const WARMEST_DAY = 208;
/** Mean diurnal range, and its seasonal amplitude [K]. */
const RANGE_K = 9;
const RANGE_SEASON_K = 2.6;
/** Standard deviation of a daily mean's anomaly [K], and its lag-1 autocorrelation. */
const ANOMALY_SD_K = 3;
const ANOMALY_LAG1 = 0.7;
/** Standard deviation of the diurnal range, as a share of it. */
const RANGE_SD = 0.28;
const MIN_RANGE_K = 2;

/**
 * Invents the air of a place that does not exist, day by day.
 *
 * @param from   First date.
 * @param nDays  Number of days.
 * @param random Returns the next number from 0 to 1.
 * @returns Minimum and maximum of each date, to a tenth. Shape (nDays).
 *
 * Formula: mean = season + a, a' = 0.7 a + √(1 - 0.7²) · 3 z; range = season (1 + 0.28 z'), at least 2 K; z, z' normal.
 * Source: a first-order autoregression about the season, as in Richardson (1981), Water Resour. Res. 17: 182-190, from
 * memory; the constants are ours.
 */
export function inventedAir(from: PlainDate, nDays: number, random: () => number): DemoAirDay[] {
  const normal = (): number => probit(random());
  let anomalyK = ANOMALY_SD_K * normal();
  return Array.from({ length: nDays }, (_, day) => {
    const date = addDays(from, day);
    const season = Math.cos((2 * Math.PI * (dayOfYear(date) - WARMEST_DAY)) / 365.25);
    if (day > 0)
      anomalyK = ANOMALY_LAG1 * anomalyK + Math.sqrt(1 - ANOMALY_LAG1 * ANOMALY_LAG1) * ANOMALY_SD_K * normal();
    const meanC = YEAR_MEAN_C + SEASON_C * season + anomalyK;
    const rangeK = Math.max(MIN_RANGE_K, (RANGE_K + RANGE_SEASON_K * season) * (1 + RANGE_SD * normal()));
    return { date, min: tenths(meanC - rangeK / 2), max: tenths(meanC + rangeK / 2) };
  });
}

const tenths = (tempC: number): number => Math.round(tempC * 10) / 10;
