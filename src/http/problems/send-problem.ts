import type { FastifyReply, FastifyRequest } from 'fastify';
import type { RequestError } from '../../basics/errors.js';
import { sayer } from '../../words/say.js';
import { VARY } from '../negotiation/etag.js';
import { readerSoFar } from '../negotiation/reader.js';
import { problemOf } from './problems.js';

export const PROBLEM = 'application/problem+json';

/** Refuses a request, in the form of RFC 9457 and its reader's words. */
export function sendProblem(request: FastifyRequest, reply: FastifyReply, error: RequestError): void {
  // A request that cannot be read has no reader yet.
  const reader = request.reader ?? readerSoFar(request);
  const problem = problemOf(error, `urn:uuid:${request.id}`, sayer(reader));
  if (problem.status === 401) {
    reply.header('www-authenticate', request.caller?.shown ? 'Bearer error="invalid_token"' : 'Bearer');
  }
  if (problem.retryAfterS !== undefined) reply.header('retry-after', problem.retryAfterS);
  reply.headers({ 'cache-control': 'no-store', 'content-language': reader.language, vary: VARY });
  reply.code(problem.status).type(PROBLEM).send(problem);
}
