/**
 * The first day on which so many heat units have come together since each day of a record.
 *
 * @param sums  As `heatSums` gives them. Shape (n + 1).
 * @param units What is needed [°C·d].
 * @returns Shape (n + 1), for units that count from each day on: index of the day; NaN where it does not come in the days known,
 * or one on the way is not known.
 *
 * Cost: O(n), as a later start is never ripe sooner.
 * @example harvestDays of the sums 0, 10, 10 and 29.6 with 12 needed, from the first on // => 2
 */
export function harvestDays(sums: Float64Array, units: number): Float64Array {
  const last = sums.length - 1;
  const days = new Float64Array(sums.length).fill(NaN);
  let reached = 0;
  for (let from = 0; from <= last; from++) {
    const goal = sums[from]! + units - 1e-9;
    reached = Math.max(reached, from + 1);
    // A sum that is not known ends the search too, as it compares as false.
    while (reached <= last && sums[reached]! < goal) reached++;
    if (reached <= last && sums[reached]! >= goal) days[from] = reached - 1;
  }
  return days;
}
