import type { FastifyRequest } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import { sessionIn } from '../../contract/request/session-cookie.js';
import type { Shown } from './owner.js';

/** The request's key, whatever else it sends; otherwise its session. */
export function shownBy({ headers }: FastifyRequest): Shown | undefined {
  const key = /^Bearer (.+)$/i.exec(headers.authorization ?? '')?.[1];
  if (key !== undefined) return { key };
  const session = sessionIn(headers.cookie);
  return session === undefined ? undefined : { session };
}

/** @throws {RequestError} `unauthorized`, as the credentials open nothing. */
export function noOwner(shown: Shown | undefined): never {
  throw new RequestError('unauthorized', requestRefusal(shown ? 'unauthorized.session' : 'unauthorized'));
}
