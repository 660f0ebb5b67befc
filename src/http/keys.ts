import { createHash, timingSafeEqual } from 'node:crypto';

/** Finds whose key it is; undefined where it is nobody's. */
export type FindOwner = (key: string) => string | undefined;

const digest = (key: string): Buffer => createHash('sha256').update(key).digest();

/**
 * Keys are compared by their digests and in constant time, every one of them each time, so that how long it takes
 * tells nothing of the keys.
 *
 * @param keys Owners by key.
 */
export function keyring(keys: ReadonlyMap<string, string>): FindOwner {
  const known = [...keys].map(([key, owner]) => ({ digest: digest(key), owner }));
  return (key) => {
    const sent = digest(key);
    return known.reduce<string | undefined>(
      (found, one) => (timingSafeEqual(one.digest, sent) ? one.owner : found),
      undefined,
    );
  };
}
