import type { FastifyReply, FastifyRequest } from 'fastify';
import { digestOf } from '../basics/digest.js';
import type { Coding } from './coding.js';
import { model } from './model.js';

/** A weak tag of an answer's content and the model's version; when it was issued is no part of it. */
export const tagOf = (content: object): string => `W/"${digestOf(model.version + JSON.stringify(content), TAG_CHARS)}"`;

/** 162 bits: no two answers of anybody's ever have the same. */
export const TAG_CHARS = 27;

/** The tag of an answer as it is coded: a strong one ends in its coding (RFC 9110, 8.8.3.3), a weak one stays. */
export const codedTag = (tag: string, coding: Coding | undefined): string =>
  coding && tag.startsWith('"') && !tag.endsWith(`-${coding}"`) ? `${tag.slice(0, -1)}-${coding}"` : tag;

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
