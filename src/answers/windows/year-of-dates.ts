/** The dates of one season as a past year would have had them. */
export interface YearOfDates {
  /** Hourly means at the seed from some hour on [°C]; NaN where nothing is known. Shape (nHours), the same in all years. */
  readonly hourlyC: Float64Array;
  /** The hour at which each date's sowing is made. Shape (nDates), never falling. */
  readonly sowH: Float64Array;
  /** Minima of the air, from the hour `minFromH` on, day by day [°C]; null: not known. */
  readonly minC: Float64Array | null;
  /** Means of the same days [°C]. */
  readonly meanC: Float64Array | null;
  readonly minFromH: number;
}
