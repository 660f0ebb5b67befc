/** Dry seed drinks for so long after it is wetted, and cold harms it only then [h]: after a day seed bears 2 to 4 °C (Iowa State
 * University Extension). */
export const DRINKING_HOURS = 24;
/** Membranes leak below 10 to 15 °C, most below this [°C]: Bramlage, Leopold & Parrish 1978. */
export const LEAKING_C = 7;
/** The share of the seed that is lost where the whole of that day is so cold. Our assumption: 18 fields of maize stood full after
 * cold sowings, and beans of late April at Corvallis. */
export const MAX_COLD_LOSS = 0.3;

/**
 * The share of the seed that cold takes while it drinks, of crops that chill harms.
 *
 * @param hourlyC Hourly mean temperature at the seed [°C]. Shape (n); NaN is not cold.
 * @param sownH   The hour of the wetting.
 * @returns 0 to 0.3.
 *
 * Formula: 0.3 x the share of the first 24 hours that are below 7 °C
 * Validity: untreated seed; of treated seed about a third as much is lost. Cold later on only delays.
 * @example coldLoss of seed wetted into 12 hours of 5 °C, and 20 °C after them // => 0.15
 */
export function coldLoss(hourlyC: ArrayLike<number>, sownH = 0): number {
  let cold = 0;
  const end = Math.min(hourlyC.length, sownH + DRINKING_HOURS);
  for (let hour = sownH; hour < end; hour++) if (hourlyC[hour]! < LEAKING_C) cold++;
  return (MAX_COLD_LOSS * cold) / DRINKING_HOURS;
}
