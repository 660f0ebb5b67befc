import { hash } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { model } from './model.js';

/** A weak tag of an answer's content and the model's version; when it was issued is no part of it. */
export function tagOf(content: object): string {
  const digest = hash('sha256', model.version + JSON.stringify(content), 'base64url');
  return `W/"${digest.slice(0, 27)}"`;
}

/** Does a header that lists tags, or says `*`, name this one? Compared weakly (RFC 9110, 8.8.3.2). */
export const matchesTag = (header: string, tag: string): boolean =>
  header.split(',').some((one) => one.trim() === '*' || `W/${one.trim().replace(/^W\//, '')}` === tag);

/** Sends an answer under the tag of its content; 304 where the caller has it already. */
export async function sendWithETag(
  request: FastifyRequest,
  reply: FastifyReply,
  content: object,
  answer: () => object | string | Promise<object | string>,
): Promise<FastifyReply> {
  const tag = tagOf(content);
  const known = request.headers['if-none-match'];
  const isKnown = known !== undefined && matchesTag(known, tag);
  // Who has this very tag had the answer. Any other must be worked out first: a refusal has no tag, and is never unchanged.
  const made = isKnown && known.trim() !== '*' ? undefined : await answer();
  reply.header('etag', tag).header('vary', 'Accept, Accept-Encoding');
  return isKnown ? reply.code(304).send() : reply.send(made);
}
