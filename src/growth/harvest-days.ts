/**
 * The first day on which so many heat units have come together since another.
 *
 * @param sums    As `heatSums` gives them. Shape (n + 1).
 * @param fromDay The day from which on they count: that of the emergence. Whole, 0 or more.
 * @param units   What is needed [°C·d].
 * @returns Index of the day; NaN where it does not come in the days known, or one on the way is not known.
 *
 * Cost: O(log n).
 * @example harvestDay([0, 10, 10, 29.6], 0, 12) // => 2
 */
export function harvestDay(sums: Float64Array, fromDay: number, units: number): number {
  const last = sums.length - 1;
  if (fromDay > last) return NaN;
  const goal = sums[fromDay]! + units - 1e-9;
  // Sums that are not known compare as false, so the halving ends before them or after the last.
  let below = fromDay;
  let reached = last + 1;
  while (reached - below > 1) {
    const middle = (below + reached) >> 1;
    if (sums[middle]! < goal) below = middle;
    else reached = middle;
  }
  return reached <= last && sums[reached]! >= goal ? reached - 1 : NaN;
}
