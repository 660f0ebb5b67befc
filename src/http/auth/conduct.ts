import type { IncomingMessage } from 'node:http';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import { KEY_PARAMETERS } from '../server/logged-request.js';
import type { FindOwner } from './keys.js';

/** This machine's own names. A page whose own name points to this address gains nothing by it. */
const LOCAL_HOST = /^(?:localhost|127\.0\.0\.1|\[::1\])$/;

/**
 * Refuses requests that no route should see: an ambiguous or foreign host, a compressed body, a key in the address.
 *
 * @param hosts Hosts to serve besides this machine's own names; undefined: any.
 */
export function refuseMisconduct(
  request: FastifyRequest,
  reply: FastifyReply,
  hosts: readonly string[] | undefined,
  findOwner: FindOwner | undefined,
): void {
  const hostCount = hostFields(request.raw);
  if (hostCount > 1) {
    throw new RequestError('bad-request', requestRefusal('bad-request.two-hosts'));
  }
  if (hostCount === 0 && request.raw.httpVersion !== '1.0') {
    throw new RequestError('bad-request', requestRefusal('bad-request.no-host'));
  }
  if (hosts) refuseForeignHost(request.host, hosts);
  const coding = request.headers['content-encoding'];
  if (coding !== undefined && coding.trim().toLowerCase() !== 'identity') {
    reply.header('accept-encoding', 'identity');
    throw new RequestError('unsupported-coding', requestRefusal('unsupported-coding', { coding: coding.slice(0, 40) }));
  }
  if (findOwner && hasKeyInAddress(request.url, findOwner)) {
    throw new RequestError('key-in-address', requestRefusal('key-in-address'));
  }
}

/** Counts Host fields: of several, node reads the first and a proxy perhaps another. */
function hostFields({ rawHeaders = [] }: IncomingMessage): number {
  let count = 0;
  for (let i = 0; i < rawHeaders.length; i += 2) {
    if (rawHeaders[i]!.length === 4 && rawHeaders[i]!.toLowerCase() === 'host') count++;
  }
  return count;
}

function refuseForeignHost(host: string, hosts: readonly string[]): void {
  const name = host.toLowerCase().replace(/:\d*$/, '');
  // An HTTP/1.0 program may name no host; every browser does.
  if (name === '' || LOCAL_HOST.test(name) || hosts.includes(name)) return;
  throw new RequestError('misdirected', requestRefusal('misdirected', { host: host.slice(0, 100) }));
}

function hasKeyInAddress(url: string, findOwner: FindOwner): boolean {
  const start = url.indexOf('?');
  if (start < 0) return false;
  return [...new URLSearchParams(url.slice(start))].some(
    ([name, value]) => KEY_PARAMETERS.test(name) && findOwner({ key: value }) !== undefined,
  );
}
