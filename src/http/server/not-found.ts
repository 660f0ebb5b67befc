import type { FastifyReply, FastifyRequest } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import type { Route } from '../openapi/route.js';

/**
 * Answers OPTIONS. For an unknown address or method it throws the error; `Allow` names the available methods (RFC 9110,
 * sections 9.3.7 and 15.5.6).
 */
export function answerUnrouted(request: FastifyRequest, reply: FastifyReply, routes: readonly Route[]): FastifyReply {
  const path = request.url.split('?', 1)[0]!;
  const isOptions = request.method === 'OPTIONS';
  const methods =
    path === '*'
      ? [...new Set(routes.map(({ method }) => method))]
      : [...routes, ...PAGES.filter((page) => request.server.hasRoute(page))]
          .filter(({ url }) => matches(url, path))
          .map(({ method }) => method);
  if (methods.length === 0) {
    throw new RequestError('not-found', requestRefusal('not-found.address', { path: path.slice(0, 200) }));
  }
  const allowed = methods.flatMap((method) => (method === 'GET' ? ['GET', 'HEAD'] : [method]));
  reply.header('allow', [...allowed, ...(isOptions ? ['OPTIONS'] : [])].join(', '));
  if (isOptions) return reply.code(204).send();
  throw new RequestError(
    'method-not-allowed',
    requestRefusal('method-not-allowed', {
      path: path.slice(0, 200),
      methods: methods.join(', '),
      method: request.method,
    }),
  );
}

/** Pages that may be served beside the routes. */
const PAGES = [
  ...['/', '/page.js', '/page.css', '/openapi.json', '/docs', '/docs/guide', '/docs/running'].map((url) => ({
    method: 'GET' as const,
    url,
  })),
  { method: 'POST' as const, url: '/' },
];

function matches(url: string, path: string): boolean {
  const [wanted, given] = [url.split('/'), path.split('/')];
  return (
    wanted.length === given.length &&
    wanted.every((part, i) => part === given[i] || (part.startsWith(':') && given[i] !== ''))
  );
}
