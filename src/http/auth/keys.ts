import { createHmac, timingSafeEqual } from 'node:crypto';
import { sha256 } from '../../basics/digest.js';

/** Credentials of a caller: a key, or a session's token with its stored proof. */
export type ShownKey = { readonly key: string } | { readonly token: string; readonly proof: string };

/** The owner of a key. */
export interface KeyHolder {
  readonly owner: string;
  /** Identifies the key within this process without revealing it. */
  readonly keyDigest: string;
  /**
   * Proves that a session's token was issued for this key. Guessing the key takes the token, and only its digest is
   * stored.
   */
  proofFor(token: string): string;
}

/** Finds the owner of a key or of a session's key; undefined if there is none. */
export type FindOwner = (shown: ShownKey) => KeyHolder | undefined;

/**
 * Compares keys by digest, in constant time, and always all of them, so that timing reveals nothing about the keys.
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
