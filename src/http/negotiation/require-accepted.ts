import type { FastifyRequest } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import type { Operation } from '../openapi/route.js';
import { negotiatedType } from './content-negotiation.js';
import { SVG } from './picture.js';

/** @throws {RequestError} `not-acceptable`, if the caller accepts no answer of the route. */
export function requireAccepted({ headers }: FastifyRequest, answer: Operation['answer']): void {
  if (answer === 'none') return;
  const mediaTypes =
    'schema' in answer
      ? ['application/json', ...(answer.picture ? [SVG] : [])]
      : [answer.mediaType, ...(answer.orJson ? ['application/json'] : [])];
  if (negotiatedType(headers.accept, mediaTypes)) return;
  throw new RequestError(
    'not-acceptable',
    requestRefusal('not-acceptable', { mediaTypes: mediaTypes.join(', '), accept: String(headers.accept) }),
  );
}
