import type { FastifyReply, FastifyRequest } from 'fastify';
import type { RequestError } from '../../basics/errors.js';
import { problemOf } from './problems.js';

/** Refuses a request, in the form of RFC 9457. */
export function sendProblem(request: FastifyRequest, reply: FastifyReply, error: RequestError): void {
  const problem = problemOf(error, `urn:uuid:${request.id}`);
  if (problem.status === 401) {
    reply.header('www-authenticate', request.caller?.shown ? 'Bearer error="invalid_token"' : 'Bearer');
  }
  if (problem.retryAfterS !== undefined) reply.header('retry-after', problem.retryAfterS);
  reply.header('cache-control', 'no-store');
  reply.code(problem.status).type('application/problem+json').send(problem);
}
