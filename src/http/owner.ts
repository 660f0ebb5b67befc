import type { FastifyRequest } from 'fastify';

/**
 * Whose things all are where the service was started without keys. It is a name that API_KEYS may use as well: what was
 * kept before there were keys is then that owner's.
 */
export const OPEN_OWNER = 'gardener';

declare module 'fastify' {
  interface FastifyRequest {
    owner: string;
    /** The session that the request has; null: it has none, or a key. */
    sessionId: string | null;
  }
}

/** Whose things a request sees and changes: the owner of its key. */
export const ownerOf = (request: FastifyRequest): string => request.owner;
