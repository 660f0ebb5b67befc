import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { languages, type Reader, readerOf } from '../../words/reader.js';
import type { QueryParameter } from '../openapi/route.js';
import { read } from '../question/read.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** The reader for whom the answer is worded. */
    reader: Reader;
    /** True if the caller asks for the sources of the model. */
    isModelInFull: boolean;
  }
}

const readerShape = {
  lang: z.enum(languages).optional(),
  textUnit: z.enum(['C', 'F']).default('C'),
  model: z.enum(['short', 'full']).default('short'),
};

/** Query parameters that say how any answer is written. */
export const readerParameters: readonly QueryParameter[] = [
  {
    name: 'lang',
    schema: z.enum(languages),
    description: 'Language of the texts; overrides Accept-Language.',
  },
  {
    name: 'textUnit',
    schema: readerShape.textUnit,
    description: 'F: texts have °F and inches. Numbers stay in °C and cm.',
  },
  {
    name: 'model',
    schema: readerShape.model,
    description: "full: include the model's sources.",
  },
];

/**
 * Stores the answer's reader, and whether the model is wanted in full, and removes these parameters from the query.
 *
 * @throws {RequestError} `not-understood` for an unknown language or unit.
 */
export function takeReader(request: FastifyRequest): void {
  const { lang, textUnit, model, ...query } = (request.query ?? {}) as Record<string, unknown>;
  // `readerSoFar` has read the headers already.
  if (lang === undefined && textUnit === undefined && model === undefined) return;
  const asked = read(z.object(readerShape), { lang, textUnit, model }, ([name]) => ({ parameter: String(name) }));
  request.query = query;
  request.reader = readerOf(request.headers['accept-language'], asked.lang, asked.textUnit);
  request.isModelInFull = asked.model === 'full';
}

/** The reader of a refusal that comes before the query is read; valid parameters of the query count. */
export function readerSoFar({ headers, query }: FastifyRequest): Reader {
  const { lang, textUnit } = (query ?? {}) as Record<string, unknown>;
  const language = languages.find((one) => one === lang);
  return readerOf(headers['accept-language'], language, textUnit === 'F' ? 'F' : 'C');
}

/** Distinguishes the tags of answers worded for different readers. */
export const readerKey = ({ locale, textUnit }: Reader): string => `${locale}~${textUnit}`;
