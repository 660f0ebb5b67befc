import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { languages, type Reader, readerOf } from '../../words/reader.js';
import type { QueryParameter } from '../openapi/route.js';
import { read } from '../question/read.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** Whom the words of its answer are for. */
    reader: Reader;
  }
}

const readerShape = {
  lang: z.enum(languages).optional(),
  textUnit: z.enum(['C', 'F']).default('C'),
};

/** What any query may say of whom its words are for. */
export const readerParameters: readonly QueryParameter[] = [
  {
    name: 'lang',
    schema: z.enum(languages),
    description: 'The language of the texts; wins over Accept-Language.',
  },
  {
    name: 'textUnit',
    schema: readerShape.textUnit,
    description: 'F: texts have °F and inches. Numbers stay in °C and cm.',
  },
];

/**
 * Whom the words of an answer are for. What the query says of it is taken out of the query.
 *
 * @throws {RequestError} `not-understood` where the query names a language or a unit that is not had.
 */
export function takeReader(request: FastifyRequest): Reader {
  const { lang, textUnit, ...query } = (request.query ?? {}) as Record<string, unknown>;
  const asked = read(z.object(readerShape), { lang, textUnit }, ([name]) => ({ parameter: String(name) }));
  request.query = query;
  return readerOf(request.headers['accept-language'], asked.lang, asked.textUnit);
}

/** Whom a refusal is worded for that comes before the query is read: what it says of the reader counts where it can. */
export function readerSoFar({ headers, query }: FastifyRequest): Reader {
  const { lang, textUnit } = (query ?? {}) as Record<string, unknown>;
  const language = languages.find((one) => one === lang);
  return readerOf(headers['accept-language'], language, textUnit === 'F' ? 'F' : 'C');
}

/** Sets the tag of an answer apart that is worded for another reader. */
export const readerKey = ({ locale, textUnit }: Reader): string => `${locale}~${textUnit}`;
