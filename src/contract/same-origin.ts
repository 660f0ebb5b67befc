import type { FastifyRequest } from 'fastify';
import { RequestError } from '../basics/errors.js';
import { requestRefusal } from './refusal-facts.js';

/**
 * Does a request come from a page of this service, or from no page at all? Browsers say where a request to change something
 * comes from; a program that is no browser says nothing, and holds no cookie that others could use.
 */
export function isSameOrigin({ headers, host }: Pick<FastifyRequest, 'headers' | 'host'>): boolean {
  const { origin } = headers;
  const site = headers['sec-fetch-site'];
  if (site === 'cross-site' || site === 'same-site') return false;
  if (origin === undefined) return true;
  // A page that tells nobody where it is has this origin, be it ours or not.
  if (origin === 'null') return site === 'same-origin';
  return isAt(origin, host);
}

/** Is it this host, at this port? Which of http and https it is, only what stands before the service would know. */
function isAt(origin: string, host: string): boolean {
  const [scheme] = /^https?:\/\//i.exec(origin) ?? [];
  if (scheme === undefined) return false;
  const own = `${scheme}${host}`;
  return URL.canParse(origin) && URL.canParse(own) && new URL(origin).host === new URL(own).host;
}

/** @throws {RequestError} where a page of another site has sent it. */
export function requireSameOrigin(request: FastifyRequest): void {
  if (isSameOrigin(request)) return;
  throw new RequestError('foreign-origin', requestRefusal('foreign-origin'));
}

/** Is a key needed that the caller has not shown? Told of every request, whether its route asks for a key or not. */
export const needsKey = ({ caller }: FastifyRequest): boolean => caller?.isStranger ?? false;
