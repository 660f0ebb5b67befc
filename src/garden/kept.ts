/** What every kept thing bears: its owner's own id, and a number that grows with any change to it or to its series. */
export interface Kept {
  readonly id: string;
  /** A whole number; never given twice to one owner, not even after something was deleted and made again. */
  readonly revision: number;
}

/** What came of a put. `stale`: it is no longer at the revision that was asked for; `no-…`: what it names is not there. */
export type Put<T> =
  | { readonly outcome: 'created' | 'replaced' | 'unchanged'; readonly kept: T }
  | { readonly outcome: 'stale' | 'no-place' | 'no-bed' | 'no-lot' };

/** Up to `limit` of a list, in the order of ids, from the first id beyond `after` on. */
export interface Page {
  readonly after?: string | undefined;
  readonly limit: number;
}
