import { createHash, createHmac, timingSafeEqual } from 'node:crypto';

/** What a caller shows: a key, or what its session carries instead. */
export type Shown = { readonly key: string } | { readonly session: string };

/** Who has a key. */
export interface KeyHolder {
  readonly owner: string;
  /** What a session of this key carries. It opens as much as the key, and the key cannot be told from it. */
  readonly session: string;
}

/** Finds whose key, or whose session, it is; undefined where it is nobody's. */
export type FindOwner = (shown: Shown) => KeyHolder | undefined;

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/** The same in every instance that has the key, so that none has to remember sessions. */
const sessionOf = (key: string): string => createHmac('sha256', digest(key)).update('session').digest('base64url');

/**
 * Keys are compared by what their sessions carry, in constant time, every one of them each time, so that how long it takes
 * tells nothing of the keys.
 *
 * @param keys Owners by key.
 */
export function keyring(keys: ReadonlyMap<string, string>): FindOwner {
  const known = [...keys].map(([key, owner]) => {
    const session = sessionOf(key);
    return { digest: digest(session), holder: { owner, session } };
  });
  return (shown) => {
    const sent = digest('key' in shown ? sessionOf(shown.key) : shown.session);
    return known.reduce<KeyHolder | undefined>(
      (found, one) => (timingSafeEqual(one.digest, sent) ? one.holder : found),
      undefined,
    );
  };
}
