import { normalCdf } from '../../../src/basics/numerics/normal-cdf.js';

/**
 * The continuous ranked probability score of a normal distribution: 0 for certainty that came true, else above it.
 *
 * @param mean     Of the forecast, in any unit.
 * @param sd       Of the forecast, > 0, in the same.
 * @param observed What came, in the same.
 * @returns The score, in the same unit; the less the better.
 * @throws never.
 *
 * Formula: s (z (2Φ(z) - 1) + 2φ(z) - 1/sqrt(π)), z = (y - m)/s
 * Source: Gneiting, Raftery (2007). Strictly proper scoring rules, prediction, and estimation. J. Am. Stat. Assoc. 102:
 * 359-378.
 * @example crpsNormal(12, 2, 15) // => 1.98885
 */
export function crpsNormal(mean: number, sd: number, observed: number): number {
  const z = (observed - mean) / sd;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return sd * (z * (2 * normalCdf(z) - 1) + 2 * density - 1 / Math.sqrt(Math.PI));
}
