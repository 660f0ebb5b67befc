import type { FastifyReply, FastifyRequest } from 'fastify';
import { digestOf } from '../../basics/digest.js';
import { type Coding, codingFor, isWorthPacking, pack } from './coding.js';
import { codedTag, matchesTag, TAG_CHARS } from './etag.js';
import type { Written } from './written.js';

/** Sends an answer that never changes while the process runs. */
export type SendReady = (request: FastifyRequest, reply: FastifyReply) => Promise<FastifyReply>;

/**
 * One body that never changes, made and compressed once, under a strong tag of its bytes. A compressed body's tag ends
 * in its coding (RFC 9110, 8.8.3.3).
 */
export function readyAnswer({ type, body, headers }: Written): SendReady {
  const plain = typeof body === 'string' ? Buffer.from(body) : body;
  const digest = digestOf(plain, TAG_CHARS);
  const packed = new Map<Coding, Promise<Buffer>>();
  const packedOnce = (coding: Coding): Promise<Buffer> => {
    const bytes = packed.get(coding) ?? pack(plain, coding, 'small');
    packed.set(coding, bytes);
    return bytes;
  };
  return async (request, reply) => {
    const coding = isWorthPacking(plain) ? codingFor(request.headers['accept-encoding']) : undefined;
    const tag = codedTag(`"${digest}"`, coding);
    reply.headers({ etag: tag, vary: 'Accept-Encoding', ...headers });
    const known = request.headers['if-none-match'];
    if (known !== undefined && matchesTag(known, `W/${tag}`)) return reply.code(304).send();
    if (coding) reply.header('content-encoding', coding);
    return reply.type(type).send(coding ? await packedOnce(coding) : plain);
  };
}
