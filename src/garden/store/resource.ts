/** Fields of every resource: the owner's id for it, and a revision that rises with any change to it or its series. */
export interface Resource {
  readonly id: string;
  /** A whole number; never given twice to one owner, not even after something was deleted and made again. */
  readonly revision: number;
}

/**
 * The revision that a change rests on, where it rests on one: it happens only if that is still the thing's. null: nothing
 * may be there. One that a thing never has, such as `NO_REVISION`, lets the change find every other fault, and never happen.
 */
export type IfRevision = number | null | undefined;

/** Revisions begin with 1. */
export const NO_REVISION = -1;

/** Whether a change may go on, given the revision that is kept; undefined: nothing is. */
export const isAtRevision = (kept: number | undefined, ifRevision: IfRevision): boolean =>
  ifRevision === undefined || (kept ?? null) === ifRevision;

/** Result of a put. `stale`: the resource is no longer at the requested revision; `no-…`: a resource that it names is missing. */
export type Put<T> =
  | { readonly outcome: 'created' | 'replaced' | 'unchanged'; readonly kept: T }
  | { readonly outcome: 'stale' | 'no-place' | 'no-bed' | 'no-lot' };

/** Up to `limit` of a list, in the order of ids, from the first id beyond `after` on. */
export interface ResourcePage {
  readonly after?: string | undefined;
  readonly limit: number;
}
