import { createHmac, timingSafeEqual } from 'node:crypto';
import { sha256 } from '../../basics/digest.js';

/** What a caller shows: a key, or the token of a session with the proof that is kept of it. */
export type ShownKey = { readonly key: string } | { readonly token: string; readonly proof: string };

/** Who has a key. */
export interface KeyHolder {
  readonly owner: string;
  /** Stands for the key in this process, and does not tell it. */
  readonly keyDigest: string;
  /**
   * Proves that a session's token was given for this key. Without the token, of which nobody keeps more than a digest, no
   * guess at the key can be tried against it.
   */
  proofFor(token: string): string;
}

/** Finds whose key, or whose session's key, it is; undefined where it is nobody's. */
export type FindOwner = (shown: ShownKey) => KeyHolder | undefined;

/**
 * Keys are compared by digests, in constant time, every one of them each time, so that how long it takes tells nothing of
 * the keys.
 *
 * @param keys Owners by key.
 */
export function keyring(keys: ReadonlyMap<string, string>): FindOwner {
  const known = [...keys].map(([key, owner]) => {
    const keyDigest = sha256(key);
    const proofFor = (token: string): string => createHmac('sha256', keyDigest).update(token).digest('base64url');
    return { keyDigest, holder: { owner, keyDigest: keyDigest.toString('base64url'), proofFor } };
  });
  return (shown) => {
    const shownDigest = sha256('key' in shown ? shown.key : shown.proof);
    const isOf = ({ keyDigest, holder }: (typeof known)[number]): boolean =>
      timingSafeEqual(shownDigest, 'key' in shown ? keyDigest : sha256(holder.proofFor(shown.token)));
    return known.reduce<KeyHolder | undefined>((found, one) => (isOf(one) ? one.holder : found), undefined);
  };
}
