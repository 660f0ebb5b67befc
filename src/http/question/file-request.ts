import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RequestError } from '../../basics/errors.js';
import { precisionSchema } from '../../contract/common.js';
import type { FileHints } from '../../readings/text/rows-read.js';
import { dateOrders } from '../../readings/time/date-order.js';
import { type Rounding, roundingFor } from '../negotiation/rounding.js';
import { askedByQuery, fileParameters, type Parameters, parameterAt } from './csv-query.js';
import { read } from './read.js';

const hintsSchema = z.object({
  medium: z.enum(['soil', 'air']).optional(),
  probeDepthCm: z.number().min(0).max(100).optional(),
  unit: z.enum(['C', 'F', 'K']).optional(),
  column: z.string().max(200).optional(),
  timeColumn: z.string().max(200).optional(),
  dateOrder: z.enum(dateOrders).optional(),
  clock: z.enum(['local', 'standard', 'utc']).optional(),
  decimalMark: z.enum(['.', ',']).optional(),
});

/** True if the body is a file. */
export const isFile = ({ headers }: FastifyRequest): boolean => /^text\/csv\b/i.test(headers['content-type'] ?? '');

/** The requested precision of numbers, and the rest of the query. */
export function precisionOf(request: FastifyRequest): { rounding: Rounding; query: Record<string, unknown> } {
  const { precision, ...query } = request.query as Record<string, unknown>;
  return { rounding: roundingFor(read(precisionSchema, precision, () => ({ parameter: 'precision' }))), query };
}

/** Splits a file's query into the question and the description of the file. */
export function askedOfFile<Schema extends z.ZodType>(
  schema: Schema,
  parameters: Parameters,
  query: Record<string, unknown>,
): { asked: z.output<Schema>; hints: FileHints } {
  const all = { ...parameters, ...fileParameters };
  const whereOf = (path: readonly (string | number)[]) => parameterAt(path, all);
  const sent = askedByQuery(query, all);
  const ofFile = Object.fromEntries(Object.entries(sent).filter(([name]) => Object.hasOwn(fileParameters, name)));
  const rest = Object.fromEntries(Object.entries(sent).filter(([name]) => !Object.hasOwn(fileParameters, name)));
  const said = read(hintsSchema, ofFile, whereOf);
  return {
    asked: read(schema, rest, whereOf),
    hints: {
      medium: said.medium ?? null,
      probeDepthCm: said.probeDepthCm ?? null,
      unit: said.unit ?? null,
      column: said.column ?? null,
      timeColumn: said.timeColumn ?? null,
      dateOrder: said.dateOrder ?? null,
      clock: said.clock ?? null,
      decimalMark: said.decimalMark ?? null,
    },
  };
}

/** Answers a file's question; its faults name query parameters instead of fields of a body. */
export async function inParameters<Answer>(parameters: Parameters, answer: () => Promise<Answer>): Promise<Answer> {
  const all = { ...parameters, ...fileParameters };
  try {
    return await answer();
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    const faults = error.faults.map(({ path, ...fault }) => (path ? { ...parameterAt(path, all), ...fault } : fault));
    throw new RequestError(error.code, error.sentences, faults, error.later, error.members);
  }
}
