/** A forecast's day makes the soil err by so much on the first day, and by so much more with each [K]. */
const FIRST_DAY_SD_K = 0.3;
const PER_DAY_SD_K = 0.22;

/**
 * How far a forecast of the air makes the soil err.
 *
 * @param leadDays Days after the last measured one, 0 on the first.
 * @returns Standard deviation of the soil's daily mean [K].
 *
 * Source: our own study: forecasts that err by 1.2 K at first and 0.4 K more each day, carried into soil at 5 cm.
 * @example comingUncertaintyK(9) // => 2.28
 */
export const comingUncertaintyK = (leadDays: number): number => FIRST_DAY_SD_K + PER_DAY_SD_K * leadDays;
