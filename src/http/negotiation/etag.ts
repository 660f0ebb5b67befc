import type { FastifyReply, FastifyRequest } from 'fastify';
import { digestOf } from '../../basics/digest.js';
import { plainReader, type Reader } from '../../words/reader.js';
import { model } from '../openapi/model.js';
import type { Coding } from './coding.js';
import { readerKey } from './reader.js';

/** A weak tag of an answer's content and the model's version; the issue time does not count. */
export const tagOf = (content: object): string => `W/"${digestOf(model.version + JSON.stringify(content), TAG_CHARS)}"`;

/** 162 bits: no two answers ever share a tag. */
export const TAG_CHARS = 27;

/** The tag of an encoded answer: a strong tag ends in its coding (RFC 9110, 8.8.3.3), a weak tag stays. */
export const codedTag = (tag: string, coding: Coding | undefined): string =>
  coding && tag.startsWith('"') && !tag.endsWith(`-${coding}"`) ? `${tag.slice(0, -1)}-${coding}"` : tag;

/** The tag of a worded answer; the plain reader's is the tag itself. */
export const wordedTag = (tag: string, reader: Reader): string =>
  readerKey(reader) === PLAIN ? tag : `${tag.slice(0, -1)}~${readerKey(reader)}"`;

/** Tags without their reader: preconditions compare the resource, whatever language it was read in. */
export const unworded = (tags: string): string => tags.replaceAll(/~[A-Za-z-]+~[CF]"/g, '"');

const PLAIN = readerKey(plainReader);

/** True if a header that lists tags, or is `*`, matches this one. Compared weakly (RFC 9110, 8.8.3.2). */
export const matchesTag = (header: string, tag: string): boolean =>
  header.split(',').some((one) => one.trim() === '*' || `W/${one.trim().replace(/^W\//, '')}` === tag);

/** Headers that a worded answer depends on (RFC 9110, 12.5.5). */
export const VARY = 'Accept, Accept-Encoding, Accept-Language';

/** Sends an answer under the tag of its content; 304 if the caller has it already. */
export async function sendWithETag(
  request: FastifyRequest,
  reply: FastifyReply,
  content: object,
  answer: () => object | string | Promise<object | string>,
): Promise<FastifyReply> {
  const tag = wordedTag(tagOf(content), request.reader);
  const known = request.headers['if-none-match'];
  const isKnown = known !== undefined && matchesTag(known, tag);
  // A caller with this very tag had the answer. Otherwise work it out first: a refusal has no tag and is never
  // unchanged.
  const made = isKnown && known.trim() !== '*' ? undefined : await answer();
  reply.header('etag', tag).header('vary', VARY);
  return isKnown ? reply.code(304).send() : reply.send(made);
}
