import type { FastifyRequest } from 'fastify';
import type { KeyHolder } from './keys.js';

/**
 * Whose things all are where the service was started without keys. It is a name that API_KEYS may use as well: what was
 * kept before there were keys is then that owner's.
 */
export const OPEN_OWNER = 'gardener';

/** What a request shows to open a garden: a key, or the token of a session. */
export type Shown = { readonly key: string } | { readonly session: string };

declare module 'fastify' {
  interface FastifyRequest {
    owner: string;
    /** What the caller shows, and whose it is; null until the first hook has looked. */
    caller: {
      readonly shown: Shown | undefined;
      readonly holder: KeyHolder | undefined;
      readonly isStranger: boolean;
    } | null;
    /** The session that the request has; null: it has none, or a key. */
    sessionId: string | null;
  }
}

/** Whose things a request sees and changes: the owner of its key. */
export const ownerOf = (request: FastifyRequest): string => request.owner;
