import type { FastifyInstance } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import { readerSoFar } from '../negotiation/reader.js';
import { callersIdOf } from './callers-id.js';

const SAFETY_HEADERS = {
  'x-content-type-options': 'nosniff',
  // Not `no-referrer`: a form would then hide from us too that it comes from one of our pages.
  'referrer-policy': 'same-origin',
  'x-frame-options': 'DENY',
};

/**
 * Gives every answer its headers of safety and its request id, and every request a reader; refuses all while the service
 * stops. The hook comes before all others, so that their refusals have the headers too.
 */
export function addCommonHeaders(app: FastifyInstance): void {
  let isStopping = false;
  app.addHook('preClose', async () => {
    isStopping = true;
  });
  app.decorateRequest('reader');
  app.decorateRequest('isModelInFull', false);
  app.addHook('onRequest', async (request, reply) => {
    const callersId = callersIdOf(request);
    reply.headers({ ...SAFETY_HEADERS, 'request-id': request.id });
    if (callersId !== undefined) reply.header('x-request-id', callersId);
    request.reader = readerSoFar(request);
    if (isStopping) throw new RequestError('stopping', requestRefusal('stopping'));
  });
}
