import type { FastifyRequest } from 'fastify';
import { sayer } from '../../words/say.js';
import { modelInFull } from '../openapi/model.js';
import { worded } from './worded.js';

/** An answer with the words of its reader in it, and the model as it is asked for. */
export function completed(
  content: unknown,
  { reader, isModelInFull }: Pick<FastifyRequest, 'reader' | 'isModelInFull'>,
): unknown {
  const said = worded(content, sayer(reader));
  const isSigned = isModelInFull && typeof said === 'object' && said !== null && 'model' in said;
  return isSigned ? { ...said, model: modelInFull } : said;
}
