/** Readings to be judged: the arrays may be longer than `count`. */
export interface Judged {
  /** Milliseconds since 1970-01-01T00:00Z, strictly rising. */
  readonly atMs: Float64Array;
  readonly valueC: Float64Array | Float32Array;
  readonly count: number;
}

/**
 * One test over the record, a piece at a time: judges readings from..to-1, and is asked for piece after piece without
 * a hole. It remembers what it needs of the pieces before, so where they are cut changes nothing.
 */
export type DoubtTest = (from: number, to: number) => void;
