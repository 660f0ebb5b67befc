/** Result of a request for tokens. */
export interface Allowance {
  /** Whole tokens, as many as were wanted or as there were. */
  readonly granted: number;
  /** Tokens left; a part of one that is growing again counts as a fraction. */
  readonly remaining: number;
  /** When all are there again, if no more are taken [ms]. */
  readonly fullAtMs: number;
}

/**
 * Takes up to `wanted` tokens out of a bucket, which is full where it was never used.
 *
 * @param caller   A digest of who asks, never a key or an address itself.
 * @param policy   Which of the caller's buckets.
 * @param capacity The most tokens that the bucket holds.
 * @param perMs    Tokens that come back in a millisecond.
 */
export type TakeAllowance = (
  caller: string,
  policy: string,
  wanted: number,
  capacity: number,
  perMs: number,
  nowMs: number,
) => Promise<Allowance>;
