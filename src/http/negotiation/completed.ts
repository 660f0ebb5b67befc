import type { FastifyRequest } from 'fastify';
import { modelInFull } from '../openapi/model.js';
import { said } from './said.js';
import { worded } from './worded.js';

/** An answer with the words of its reader in it, and the model as it is asked for. */
export function completed(
  content: unknown,
  { reader, isModelInFull }: Pick<FastifyRequest, 'reader' | 'isModelInFull'>,
): unknown {
  const whole = worded(content, said(reader));
  const isSigned = isModelInFull && typeof whole === 'object' && whole !== null && 'model' in whole;
  return isSigned ? { ...whole, model: modelInFull } : whole;
}
