import { createHash } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { model } from './model.js';

/**
 * Sends an answer under a weak tag of its content and the model's version; 304 where the caller has it already.
 * When it was issued is no part of the tag. Tags are compared weakly (RFC 9110, 8.8.3.2).
 */
export async function sendWithETag(
  request: FastifyRequest,
  reply: FastifyReply,
  content: object,
  answer: () => object | Promise<object>,
): Promise<FastifyReply> {
  const digest = createHash('sha256').update(model.version).update(JSON.stringify(content)).digest('base64url');
  const tag = `W/"${digest.slice(0, 27)}"`;
  reply.header('etag', tag).header('vary', 'Accept');
  const known = request.headers['if-none-match']?.split(',').map((one) => one.trim().replace(/^W\//, ''));
  return known?.some((one) => `W/${one}` === tag || one === '*') ? reply.code(304).send() : reply.send(await answer());
}
