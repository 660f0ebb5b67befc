/** The temperatures between which an insect grows [°C]; no ceiling where none is published. */
export interface DegreeDayLimits {
  readonly baseC: number;
  readonly ceilingC: number | null;
}

/**
 * Degree days of a day for an insect.
 *
 * @param minC   The day's minimum of the air [°C].
 * @param maxC   Its maximum [°C].
 * @param limits Both are cut at the ceiling before their middle is taken.
 * @returns Degree days [°C·d], 0 or more; NaN where an extreme is not known.
 * @throws ScienceError never.
 *
 * Formula: max(0, (min(Tmin, ceiling) + min(Tmax, ceiling))/2 - base)
 * Source: Baskerville, Emin (1969). Ecology 50: 514-517, on the average method; the horizontal cut-off is that of the published sums.
 * @example degreeDays(20, 35, { baseC: 3.9, ceilingC: 28.9 }) // => 20.55
 */
export function degreeDays(minC: number, maxC: number, { baseC, ceilingC }: DegreeDayLimits): number {
  const most = ceilingC ?? Infinity;
  return Math.max(0, (Math.min(minC, most) + Math.min(maxC, most)) / 2 - baseC);
}
