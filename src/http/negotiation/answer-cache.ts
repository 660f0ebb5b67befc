import type { FastifyReply, FastifyRequest } from 'fastify';
import { RequestError, StoppedError } from '../../basics/errors.js';
import { type CacheStats, sharedCache } from '../../basics/shared-cache.js';
import type { Reader } from '../../words/reader.js';
import { type Coding, codingFor, isWorthPacking, pack } from './coding.js';
import { matchesTag, tagOf, VARY, wordedTag } from './etag.js';
import { SVG, wantsPicture } from './picture.js';
import type { Written } from './written.js';

/** An answer as bytes, plain or compressed. */
interface Cached {
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
}

/** Caches answers as bytes, so that nothing unchanged is worked out, serialized or compressed twice. */
export interface AnswerCache {
  /**
   * Sends the answer under the tag of everything that it depends on: 304 if the caller has it, otherwise from the cache
   * or worked out. Refusals are not cached.
   *
   * @param owner  The answer's owner: no other owner ever gets it.
   * @param inputs Read before the answer is worked out, so that after a change meanwhile the answer lies under a tag
   *               that nobody asks for any more.
   */
  send(
    to: { readonly request: FastifyRequest; readonly reply: FastifyReply; readonly owner: string },
    inputs: object,
    answer: () => Written | Promise<Written>,
  ): Promise<FastifyReply>;
  /** The answer's bytes as `send` caches them: JSON, by address and the tag of the inputs. */
  body(
    to: { readonly owner: string; readonly reader: Reader },
    url: string,
    inputs: object,
    answer: () => Written | Promise<Written>,
  ): Promise<Buffer>;
  stats(): CacheStats;
}

const MAX_BYTES = 48 * 1024 * 1024;

export function answerCache(maxBytes = MAX_BYTES): AnswerCache {
  const cache = sharedCache<Cached>(maxBytes, ({ body }) => body.length, isMakersOwn);
  const plainOf = (key: string, answer: () => Written | Promise<Written>): Promise<Cached> =>
    cache.get(key, async () => {
      const { type, body, headers } = await answer();
      return {
        headers: { ...headers, 'content-type': type },
        body: typeof body === 'string' ? Buffer.from(body) : body,
      };
    });
  return {
    async send({ request, reply, owner }, inputs, answer) {
      const tag = wordedTag(tagOf(inputs), request.reader);
      const known = request.headers['if-none-match'];
      const isKnown = known !== undefined && matchesTag(known, tag);
      // A caller with this very tag had the answer. Otherwise work it out first: a refusal never counts as unchanged.
      if (isKnown && known.trim() !== '*') return tagged(reply, tag).code(304).send();
      const key = keyOf(owner, request.url, wantsPicture(request) ? SVG : '', tag);
      const plain = (): Promise<Cached> => plainOf(key, answer);
      const coding = codingFor(request.headers['accept-encoding']);
      const { headers, body } = await (coding
        ? cache.get(`${key} ${coding}`, async () => packed(await plain(), coding))
        : plain());
      tagged(reply, tag);
      return isKnown ? reply.code(304).send() : reply.headers(headers).send(body);
    },
    body: async ({ owner, reader }, url, inputs, answer) =>
      (await plainOf(keyOf(owner, url, '', wordedTag(tagOf(inputs), reader)), answer)).body,
    stats: cache.stats,
  };
}

/** Everything that Vary names, and the address with its query as sent. */
const keyOf = (owner: string, url: string, form: string, tag: string): string =>
  JSON.stringify([owner, url, form, tag]);

/** True for errors of one caller, who left or is over a limit: they must not fail the others who wait. */
const isMakersOwn = (error: unknown): boolean =>
  error instanceof StoppedError || (error instanceof RequestError && error.later.violatedPolicies !== undefined);

const packed = async (plain: Cached, coding: Coding): Promise<Cached> =>
  isWorthPacking(plain.body)
    ? {
        headers: { ...plain.headers, 'content-encoding': coding },
        body: await pack(plain.body, coding, 'small'),
      }
    : plain;

const tagged = (reply: FastifyReply, tag: string): FastifyReply => reply.headers({ etag: tag, vary: VARY });
