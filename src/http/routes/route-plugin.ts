import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import { requireSameOrigin } from '../../contract/request/same-origin.js';
import type { FindOwner } from '../auth/keys.js';
import { noOwner } from '../auth/shown-by.js';
import { completed } from '../negotiation/completed.js';
import { VARY } from '../negotiation/etag.js';
import { takeReader } from '../negotiation/reader.js';
import { requireAccepted } from '../negotiation/require-accepted.js';
import type { Route } from '../openapi/route.js';
import { PROBLEM } from '../problems/send-problem.js';
import { isFile } from '../question/file-request.js';
import { addFormBody } from '../server/form-body.js';

/** Fastify plugin of the routes: each checks key, origin, media types and body first, and words its answer last. */
export const routePlugin =
  (routes: readonly Route[], findOwner: FindOwner | undefined): FastifyPluginAsync =>
  async (app) => {
    for (const { method, url, handler, open, operation } of routes) {
      const onRequest = async (request: FastifyRequest, reply: FastifyReply): Promise<void> => {
        reply.header('cache-control', 'private, no-cache');
        takeReader(request);
        reply.header('content-language', request.reader.language);
        if (open) return;
        const { shown, holder } = request.caller!;
        if (findOwner) request.owner = holder?.owner ?? noOwner(shown);
        // A browser sends its cookie with any site's request, and calls a service without keys for any open page.
        if (method !== 'GET' && (!shown || 'session' in shown)) requireSameOrigin(request);
        requireAccepted(request, operation.answer);
        if (operation.json && !operation.csv && isFile(request)) {
          throw new RequestError('unsupported-media-type', requestRefusal('unsupported-media-type.file'));
        }
      };
      const route = { method, url, handler, onRequest, preSerialization };
      if (operation.form) {
        await app.register(async (scope) => {
          addFormBody(scope);
          scope.route(route);
        });
      } else {
        app.route(route);
      }
    }
  };

async function preSerialization(request: FastifyRequest, reply: FastifyReply, content: unknown): Promise<unknown> {
  // A problem is worded already.
  if (String(reply.getHeader('content-type')).startsWith(PROBLEM)) return content;
  if (!reply.hasHeader('vary')) reply.header('vary', VARY);
  return completed(content, request);
}
