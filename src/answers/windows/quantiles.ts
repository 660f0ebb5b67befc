import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';

export interface Quantiles {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** @param sorted Rising. */
export function quantilesOf(sorted: Float64Array): Quantiles | null {
  if (sorted.length === 0) return null;
  return { p10: hazenQuantile(sorted, 0.1), p50: hazenQuantile(sorted, 0.5), p90: hazenQuantile(sorted, 0.9) };
}
