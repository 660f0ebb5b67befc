import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { guidePage } from '../guide/page.js';
import { runningPage } from '../running/page.js';
import type { Setting } from '../running/settings.js';

export type Handle = (request: FastifyRequest, reply: FastifyReply) => Promise<FastifyReply>;

/** Makes a handler for an answer that never changes. */
export type ReadyAnswer = (answer: {
  type: string;
  body: Buffer;
  headers?: Readonly<Record<string, string>>;
}) => Handle;

/** The pages under `/docs`, each rendered on its first request, so that the service starts sooner. */
export function serveDocuments(
  app: FastifyInstance,
  readyAnswer: ReadyAnswer,
  settings: () => readonly Setting[],
): void {
  let running: Handle | undefined;
  app.get('/docs/running', (request, reply) => {
    running ??= readyAnswer(runningPage(settings()));
    return running(request, reply);
  });
  let guide: Handle | undefined;
  app.get('/docs/guide', async (request, reply) => {
    if (!guide) {
      const { statusCode, headers, rawPayload } = await app.inject({ url: '/openapi.json', remoteAddress: request.ip });
      if (statusCode !== 200) return reply.code(statusCode).headers(headers).send(rawPayload);
      guide = readyAnswer(guidePage(JSON.parse(rawPayload.toString())));
    }
    return guide(request, reply);
  });
}
