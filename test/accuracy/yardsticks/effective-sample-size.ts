/**
 * How many independent values a run of values tells as much as, where each leans on the one before it.
 *
 * @param n    How many there are.
 * @param lag1 Correlation of each with the next, -1 to 1.
 * @returns Independent values [1].
 * @throws never.
 *
 * Formula: n (1 - ρ)/(1 + ρ)
 * Source: Wilks (2011). Statistical Methods in the Atmospheric Sciences, ch. 5, after Bartlett.
 * @example effectiveSampleSize(30, 0.88) // => 1.915
 */
export const effectiveSampleSize = (n: number, lag1: number): number => (n * (1 - lag1)) / (1 + lag1);
