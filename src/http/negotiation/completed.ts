import type { FastifyRequest } from 'fastify';
import { modelInFull } from '../openapi/model.js';
import { cachedSayer } from './cached-sayer.js';
import { worded } from './worded.js';

/** Adds the reader's words and the requested form of the model to an answer. */
export function completed(
  content: unknown,
  { reader, isModelInFull }: Pick<FastifyRequest, 'reader' | 'isModelInFull'>,
): unknown {
  const whole = worded(content, cachedSayer(reader));
  const isSigned = isModelInFull && typeof whole === 'object' && whole !== null && 'model' in whole;
  return isSigned ? { ...whole, model: modelInFull } : whole;
}
