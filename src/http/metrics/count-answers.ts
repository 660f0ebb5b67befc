import type { FastifyInstance } from 'fastify';
import type { Route } from '../openapi/route.js';
import type { RequestCounts } from './request-metrics.js';

/** Counts every answer under its route's pattern, never under an address that a caller made up. */
export function countAnswers(app: FastifyInstance, routes: readonly Route[], requests: RequestCounts): void {
  const documentedUrls = new Map<string | undefined, string>(routes.map(({ url }) => [url, shownUrl(url)]));
  app.addHook('onResponse', async ({ method, routeOptions }, { statusCode, elapsedTime }) => {
    const route = documentedUrls.get(routeOptions.url) ?? shownUrl(routeOptions.url);
    requests.answered({ route, method, status: statusCode, seconds: elapsedTime / 1000 });
  });
}

/** A route's pattern in the syntax of the OpenAPI document. */
const shownUrl = (url: string | undefined): string => url?.replaceAll(/:(\w+)/g, '{$1}') ?? 'none';
