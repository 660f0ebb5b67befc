import type { FastifyPluginAsync } from 'fastify';
import { readyAnswer, type SendReady } from '../negotiation/ready-answer.js';
import { asJson } from '../negotiation/written.js';
import { docs } from './docs.js';
import { openApiDocument } from './openapi.js';
import type { Route } from './route.js';

/** Fastify plugin of the OpenAPI document and its pages. The document is made when first asked for. */
export const openApiPlugin =
  (routes: readonly Route[], version: string): FastifyPluginAsync =>
  async (app) => {
    let made: Record<string, unknown> | undefined;
    let send: SendReady | undefined;
    const document = (): Record<string, unknown> => {
      made ??= openApiDocument(routes, version);
      return made;
    };
    app.get('/openapi.json', (request, reply) => {
      send ??= readyAnswer({ ...asJson(document()), headers: { 'cache-control': 'public, max-age=3600' } });
      return send(request, reply);
    });
    await app.register(docs(document));
  };
