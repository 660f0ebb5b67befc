import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { languages, type Reader, readerOf } from '../../words/reader.js';
import type { QueryParameter } from '../openapi/route.js';
import { read } from '../question/read.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** Whom the words of its answer are for. */
    reader: Reader;
    /** Does it ask for the sources of the model? */
    isModelInFull: boolean;
  }
}

const readerShape = {
  lang: z.enum(languages).optional(),
  textUnit: z.enum(['C', 'F']).default('C'),
  model: z.enum(['short', 'full']).default('short'),
};

/** What any query may say of how its answer is written. */
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
  {
    name: 'model',
    schema: readerShape.model,
    description: 'full: with the sources that the model rests on.',
  },
];

/**
 * Notes for whom the answer's words are, and whether the model is wanted in full. What the query says of it is taken out of the
 * query.
 *
 * @throws {RequestError} `not-understood` where the query names a language or a unit that is not had.
 */
export function takeReader(request: FastifyRequest): void {
  const { lang, textUnit, model, ...query } = (request.query ?? {}) as Record<string, unknown>;
  const asked = read(z.object(readerShape), { lang, textUnit, model }, ([name]) => ({ parameter: String(name) }));
  request.query = query;
  request.reader = readerOf(request.headers['accept-language'], asked.lang, asked.textUnit);
  request.isModelInFull = asked.model === 'full';
}

/** Whom a refusal is worded for that comes before the query is read: what it says of the reader counts where it can. */
export function readerSoFar({ headers, query }: FastifyRequest): Reader {
  const { lang, textUnit } = (query ?? {}) as Record<string, unknown>;
  const language = languages.find((one) => one === lang);
  return readerOf(headers['accept-language'], language, textUnit === 'F' ? 'F' : 'C');
}

/** Sets the tag of an answer apart that is worded for another reader. */
export const readerKey = ({ locale, textUnit }: Reader): string => `${locale}~${textUnit}`;
