import type { FastifyReply, FastifyRequest } from 'fastify';
import { digestOf } from '../../basics/digest.js';
import { plainReader, type Reader } from '../../words/reader.js';
import { model } from '../openapi/model.js';
import type { Coding } from './coding.js';
import { readerKey } from './reader.js';

/** A weak tag of an answer's content and the model's version; when it was issued is no part of it. */
export const tagOf = (content: object): string => `W/"${digestOf(model.version + JSON.stringify(content), TAG_CHARS)}"`;

/** 162 bits: no two answers of anybody's ever have the same. */
export const TAG_CHARS = 27;

/** The tag of an answer as it is coded: a strong one ends in its coding (RFC 9110, 8.8.3.3), a weak one stays. */
export const codedTag = (tag: string, coding: Coding | undefined): string =>
  coding && tag.startsWith('"') && !tag.endsWith(`-${coding}"`) ? `${tag.slice(0, -1)}-${coding}"` : tag;

/** The tag of an answer as it is worded: the plain reader's is the tag itself. */
export const wordedTag = (tag: string, reader: Reader): string =>
  readerKey(reader) === PLAIN ? tag : `${tag.slice(0, -1)}~${readerKey(reader)}"`;

/** Tags without their wording: the thing is the same whoever reads of it. */
export const unworded = (tags: string): string => tags.replaceAll(/~[A-Za-z-]+~[CF]"/g, '"');

const PLAIN = readerKey(plainReader);

/** Does a header that lists tags, or says `*`, name this one? Compared weakly (RFC 9110, 8.8.3.2). */
export const matchesTag = (header: string, tag: string): boolean =>
  header.split(',').some((one) => one.trim() === '*' || `W/${one.trim().replace(/^W\//, '')}` === tag);

/** What an answer with words in it depends on beside its address (RFC 9110, 12.5.5). */
export const VARY = 'Accept, Accept-Encoding, Accept-Language';

/** Sends an answer under the tag of its content; 304 where the caller has it already. */
export async function sendWithETag(
  request: FastifyRequest,
  reply: FastifyReply,
  content: object,
  answer: () => object | string | Promise<object | string>,
): Promise<FastifyReply> {
  const tag = wordedTag(tagOf(content), request.reader);
  const known = request.headers['if-none-match'];
  const isKnown = known !== undefined && matchesTag(known, tag);
  // Who has this very tag had the answer. Any other must be worked out first: a refusal has no tag, and is never unchanged.
  const made = isKnown && known.trim() !== '*' ? undefined : await answer();
  reply.header('etag', tag).header('vary', VARY);
  return isKnown ? reply.code(304).send() : reply.send(made);
}
