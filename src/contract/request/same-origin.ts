import type { FastifyRequest } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from './refusal-facts.js';

/**
 * True if a request comes from a page of this service, or from no page at all. Browsers send the origin of a request
 * that changes something; another program sends none, and holds no cookie that others could use.
 */
export function isSameOrigin({ headers, host }: Pick<FastifyRequest, 'headers' | 'host'>): boolean {
  const { origin } = headers;
  const site = headers['sec-fetch-site'];
  if (site === 'cross-site' || site === 'same-site') return false;
  if (origin === undefined) return true;
  // A page that hides its address has this origin, whether it is ours or not.
  if (origin === 'null') return site === 'same-origin';
  return isAt(origin, host);
}

/** True for this host and port. Only the proxy in front of the service would know whether it is http or https. */
function isAt(origin: string, host: string): boolean {
  const [scheme] = /^https?:\/\//i.exec(origin) ?? [];
  if (scheme === undefined) return false;
  const own = `${scheme}${host}`;
  return URL.canParse(origin) && URL.canParse(own) && new URL(origin).host === new URL(own).host;
}

/** @throws {RequestError} for a request from another site's page. */
export function requireSameOrigin(request: FastifyRequest): void {
  if (isSameOrigin(request)) return;
  throw new RequestError('foreign-origin', requestRefusal('foreign-origin'));
}

/** True if the caller lacks a key that the service requires; set for every request, even if its route needs no key. */
export const needsKey = ({ caller }: FastifyRequest): boolean => caller?.isStranger ?? false;
