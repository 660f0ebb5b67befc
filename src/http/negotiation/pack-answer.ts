import type { FastifyReply, FastifyRequest } from 'fastify';
import { codingFor, isWorthPacking, pack } from './coding.js';
import { codedTag } from './etag.js';

const TEXT = /^text\/|[/+](?:json|xml|javascript)\b/;

/**
 * Compresses outgoing text as its caller accepts, unless it is compressed already; a strong tag then names the coding
 * too. An answer with a secret stays plain, as its compressed length would reveal the secret.
 */
export async function packAnswer(request: FastifyRequest, reply: FastifyReply, payload: unknown): Promise<unknown> {
  if (!(typeof payload === 'string' || Buffer.isBuffer(payload)) || !isWorthPacking(payload)) return payload;
  if (reply.hasHeader('content-encoding') || !TEXT.test(String(reply.getHeader('content-type')))) return payload;
  if (showsSecret(reply)) return payload;
  varyByCoding(reply);
  const coding = codingFor(request.headers['accept-encoding']);
  if (!coding) return payload;
  const packed = await pack(Buffer.from(payload as string), coding, 'fast');
  const tag = reply.getHeader('etag');
  if (typeof tag === 'string') reply.header('etag', codedTag(tag, coding));
  reply.header('content-encoding', coding).removeHeader('content-length');
  return packed;
}

function varyByCoding(reply: FastifyReply): void {
  const vary = reply.getHeader('vary');
  if (vary === undefined) reply.header('vary', 'Accept-Encoding');
  else if (!/accept-encoding/i.test(String(vary))) reply.header('vary', `${vary}, Accept-Encoding`);
}

/** True for problems and secrets, which nobody may store. */
const showsSecret = (reply: FastifyReply): boolean =>
  reply.statusCode < 400 && reply.getHeader('cache-control') === 'no-store';
