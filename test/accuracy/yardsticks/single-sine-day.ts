/**
 * The temperature at an hour of a day that swings as one sine between its minimum and maximum.
 *
 * @param hour  When [h].
 * @param minC  The day's minimum [°C].
 * @param maxC  The day's maximum [°C].
 * @param peakH When it is warmest [h]; air about 15.
 * @returns Temperature [°C].
 * @throws never.
 *
 * Formula: (Tx + Tn)/2 + (Tx - Tn)/2 cos(2π (t - tpeak)/24)
 * Source: de Wit (1978). Simulation of Assimilation, Respiration and Transpiration of Crops: the family of such curves
 * (from memory).
 * @example singleSineDayC(10, 14, 26, 15) // => 21.553
 */
export const singleSineDayC = (hour: number, minC: number, maxC: number, peakH: number): number =>
  (maxC + minC) / 2 + ((maxC - minC) / 2) * Math.cos((2 * Math.PI * (hour - peakH)) / 24);
