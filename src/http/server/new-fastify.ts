import { randomUUID } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import Fastify, { type FastifyBaseLogger, type FastifyInstance, type FastifyReply, type FastifyRequest } from 'fastify';
import type { RequestError } from '../../basics/errors.js';
import { asRequestError } from '../problems/request-error.js';
import { boundedServer, type ConnectionLimits, DEFAULT_CONNECTION_LIMITS } from './bounded-server.js';
import { sendClientError } from './client-error.js';
import { settleForwarded } from './forwarded.js';
import { parseJson } from './json-body.js';
import { requestLog } from './request-log.js';

const JSON_LIMIT_BYTES = 4 * 1024 * 1024;
const MAX_PATH_PARAMETER = 200;

export interface ServerOptions {
  /** Left out: nothing is logged. */
  readonly log: FastifyBaseLogger | undefined;
  /** True for the address of a trusted proxy. */
  readonly isProxy: (address: string) => boolean;
  readonly connections: Partial<ConnectionLimits>;
  /** Sends the problem of a request that fails. */
  readonly refuse: (request: FastifyRequest, reply: FastifyReply, error: RequestError) => void;
}

/** Fastify over a bounded server, with our log, our bodies and our problems, and without routes. */
export function newFastify({ log, isProxy, connections, refuse }: ServerOptions): FastifyInstance {
  const app = Fastify({
    ...(log ? { loggerInstance: log } : { logger: false }),
    logController: requestLog(),
    bodyLimit: JSON_LIMIT_BYTES,
    genReqId: () => randomUUID(),
    requestIdHeader: false,
    trustProxy: isProxy,
    serverFactory: (handler) =>
      boundedServer(
        (request, response) => {
          settleForwarded(request.headers, isProxy(request.socket.remoteAddress ?? ''));
          handler(request, response);
        },
        { ...DEFAULT_CONNECTION_LIMITS, ...connections },
        isProxy,
      ),
    clientErrorHandler: sendClientError,
    // The service sends its own problem instead.
    return503OnClosing: false,
    routerOptions: { maxParamLength: MAX_PATH_PARAMETER },
    frameworkErrors: (error, request, reply) => refuse(request, reply, asRequestError(error)),
  });
  app.removeAllContentTypeParsers();
  app.addContentTypeParser(
    'application/json',
    { parseAs: 'buffer' },
    async ({ method }: FastifyRequest, body: Buffer) =>
      // Many clients declare an empty body as JSON.
      method === 'DELETE' && body.length === 0 ? undefined : parseJson(body),
  );
  // The route reads a file as it arrives.
  app.addContentTypeParser('text/csv', async (_: FastifyRequest, file: IncomingMessage) => file);
  app.setErrorHandler((error, request, reply) => {
    const known = asRequestError(error);
    if (known.code === 'internal' || known.code.startsWith('storage-')) {
      request.log.error({ err: error }, 'request failed');
    }
    refuse(request, reply, known);
  });
  app.addHook('onSend', async ({ raw, headers }, reply) => {
    // Drop the rest of the body and close the connection, as the next request could not be told from it.
    if (raw.complete === false && ('content-length' in headers || 'transfer-encoding' in headers)) {
      reply.header('connection', 'close');
    }
  });
  return app;
}
