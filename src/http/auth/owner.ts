import type { FastifyRequest } from 'fastify';
import type { KeyHolder } from './keys.js';

/**
 * Owner of everything in a service without keys. API_KEYS may use this name too: data stored before there were keys
 * then belongs to that owner.
 */
export const OPEN_OWNER = 'gardener';

/** Credentials that open a garden: a key, or a session's token. */
export type Shown = { readonly key: string } | { readonly session: string };

declare module 'fastify' {
  interface FastifyRequest {
    owner: string;
    /** The caller's credentials and their owner; null before the first hook. */
    caller: {
      readonly shown: Shown | undefined;
      readonly holder: KeyHolder | undefined;
      readonly isStranger: boolean;
    } | null;
    /** The session of the request; null: it has none, or a key. */
    sessionId: string | null;
  }
}

/** The owner whose data a request reads and changes. */
export const ownerOf = (request: FastifyRequest): string => request.owner;
