import { randomUUID } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { promisify } from 'node:util';
import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import Fastify, {
  type FastifyInstance,
  type FastifyPluginAsync,
  type FastifyReply,
  type FastifyRequest,
  type FastifyServerOptions,
} from 'fastify';
import { type ErrorCode, RequestError } from '../basics/errors.js';
import { StorageError } from '../garden/storage-error.js';
import type { Store } from '../garden/store.js';
import { accepted } from './accepted.js';
import { isFile } from './file-request.js';
import { addFormBody } from './form-body.js';
import type { FindOwner, Shown } from './keys.js';
import { type LongWork, longWork } from './long-work.js';
import { metrics } from './metrics.js';
import { openApiDocument } from './openapi.js';
import { refuseForeign } from './own-origin.js';
import { OPEN_OWNER } from './owner.js';
import { SVG } from './picture.js';
import { problemOf } from './problems.js';
import { type Allowance, rateLimit } from './rate-limit.js';
import { requestMetrics } from './request-metrics.js';
import type { Operation, Route } from './route.js';
import { bedReadingsRoutes } from './routes/bed-readings.js';
import { bedRoutes } from './routes/beds.js';
import { calendarRoutes, growingIn } from './routes/calendar.js';
import { countRoutes } from './routes/counts.js';
import { cropRoutes } from './routes/crops.js';
import { forecastRoutes } from './routes/forecasts.js';
import { lotRoutes } from './routes/lots.js';
import { placeAirRoutes } from './routes/place-air.js';
import { placeRoutes } from './routes/places.js';
import { planRoutes } from './routes/plans.js';
import { readingsRoutes } from './routes/readings.js';
import { seedsNeededRoutes } from './routes/seeds-needed.js';
import { serviceRoutes } from './routes/service.js';
import { soilTemperatureRoutes } from './routes/soil-temperatures.js';
import { sowingWindowRoutes } from './routes/sowing-windows.js';
import { sowingRoutes } from './routes/sowings.js';
import { subscriptionRoutes } from './routes/subscriptions.js';
import { type Seen, watch } from './seen.js';
import { sessionRoutes } from './session.js';
import { sessionIn } from './session-cookie.js';

export interface AppOptions {
  readonly version: string;
  readonly clock: () => Date;
  /** Where places, beds and readings are kept; whoever opened it closes it, after the app. */
  readonly store: Store;
  /** Left out: nobody needs a key. */
  readonly findOwner?: FindOwner | undefined;
  /** Requests a minute that each key, or each address without one, may send; 0 or left out: any number. */
  readonly rateLimit?: number | undefined;
  /** Where that is worked out which takes seconds; closed with the app. Left out: it has its own. */
  readonly work?: LongWork | undefined;
  /** Subscriptions may name private addresses, and such without encryption. */
  readonly allowPrivateWebhooks?: boolean | undefined;
  readonly logger?: FastifyServerOptions['logger'];
  /** What others count, for the metrics; what is left out is not in them. */
  readonly seen?: Seen | undefined;
  /** What stands at `/`; left out: the way to the documentation. */
  readonly page?: FastifyPluginAsync | undefined;
}

const JSON_LIMIT_BYTES = 4 * 1024 * 1024;
const LONGEST_PATH_PARAMETER = 200;
/** Counting goes on no further, so that a scrape costs the same however much waits. */
const MAX_MESSAGES_COUNTED = 10_000;
/** How long to wait for a database that is away [s]. */
const RETRY_AFTER_S = 5;

const SAFETY_HEADERS = {
  'x-content-type-options': 'nosniff',
  // Not `no-referrer`: a form would then hide from us too that it comes from a page of ours.
  'referrer-policy': 'same-origin',
  'x-frame-options': 'DENY',
};

/** The service, ready to listen or to be asked in a test. */
export async function buildApp({
  version,
  clock,
  store,
  findOwner,
  rateLimit: perMinute = 0,
  allowPrivateWebhooks = false,
  work = longWork(),
  logger = false,
  seen = {},
  page = async (pages) => {
    pages.get('/', async (_, reply) => reply.redirect('/docs'));
  },
}: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({
    logger,
    bodyLimit: JSON_LIMIT_BYTES,
    genReqId: () => randomUUID(),
    requestIdHeader: false,
    routerOptions: { maxParamLength: LONGEST_PATH_PARAMETER },
    frameworkErrors: (error, request, reply) => refuse(request, reply, asRequestError(error)),
  });
  app.removeAllContentTypeParsers();
  app.addContentTypeParser(
    'application/json',
    { parseAs: 'string' },
    async ({ method }: FastifyRequest, body: string) =>
      // Many a client says that nothing is JSON.
      method === 'DELETE' && body === '' ? undefined : parseJson(body),
  );
  // A file is read as it arrives, by the route that asked for it.
  app.addContentTypeParser('text/csv', async (_: FastifyRequest, file: IncomingMessage) => file);

  app.addHook('onClose', () => work.close());
  const service = { clock, store, work };
  const shownMetrics = metrics();
  const requests = requestMetrics(shownMetrics);
  const unwatch = watch(
    shownMetrics,
    {
      messagesWaiting: () => store.messagesWaiting(MAX_MESSAGES_COUNTED),
      openConnections: () => promisify(app.server.getConnections.bind(app.server))(),
      ...seen,
    },
    version,
  );
  const refuse = (request: FastifyRequest, reply: FastifyReply, error: RequestError): void => {
    requests.refused(error.code);
    sendProblem(request, reply, error);
  };
  app.addHook('onClose', unwatch);
  const routes = [
    ...cropRoutes(clock),
    ...forecastRoutes(service),
    ...soilTemperatureRoutes(service),
    ...sowingWindowRoutes(service),
    ...readingsRoutes(clock),
    ...placeRoutes(store, clock),
    ...placeAirRoutes(store, clock),
    ...bedRoutes(store, clock),
    ...bedReadingsRoutes(store, clock),
    ...calendarRoutes(store, clock, growingIn(service)),
    ...lotRoutes(store, clock),
    ...planRoutes(service),
    ...seedsNeededRoutes(store, clock),
    ...sowingRoutes(service),
    ...countRoutes(store, clock),
    ...subscriptionRoutes(store, clock, allowPrivateWebhooks),
    ...sessionRoutes(findOwner),
    ...serviceRoutes(store, shownMetrics),
  ];
  const document = openApiDocument(routes, version);

  app.decorateRequest('owner', OPEN_OWNER);
  app.addHook('onRequest', async (_, reply) => {
    reply.headers(SAFETY_HEADERS);
  });
  app.addHook('onResponse', async ({ method, routeOptions }, { statusCode, elapsedTime }) => {
    const route = routeOptions.url?.replaceAll(/:(\w+)/g, '{$1}') ?? 'none';
    requests.answered({ route, method, status: statusCode, seconds: elapsedTime / 1000 });
  });
  app.setErrorHandler((error, request, reply) => {
    const known = asRequestError(error);
    if (known.code === 'internal' || known.code === 'storage-unavailable') {
      request.log.error({ err: error }, 'request failed');
    }
    refuse(request, reply, known);
  });
  app.setNotFoundHandler((request, reply) => refuse(request, reply, notFound(request, reply, routes)));

  const limit = perMinute > 0 ? rateLimit(perMinute) : undefined;
  for (const { method, url, handler, open, operation } of routes) {
    const onRequest = async (request: FastifyRequest, reply: FastifyReply): Promise<void> => {
      if (open === true) return;
      const shown = open ? undefined : shownBy(request);
      const holder = shown && findOwner?.(shown);
      if (limit)
        countRequest(reply, perMinute, limit(holder ? `key ${holder.session}` : request.ip, clock().getTime()));
      if (open) return;
      if (findOwner) request.owner = holder?.owner ?? noOwner();
      // A browser sends its cookie along whoever asks for it, and asks a service without keys for any page it has open.
      if (method !== 'GET' && (!shown || 'session' in shown)) refuseForeign(request);
      if (holder && shown && 'session' in shown) reply.header('cache-control', 'private, no-cache');
      requireAccepted(request, operation.answer);
      if (operation.json && !operation.csv && isFile(request)) {
        throw new RequestError(
          'unsupported-media-type',
          'This route takes no file: set Content-Type to application/json.',
        );
      }
    };
    const route = { method, url, handler, onRequest };
    if (operation.form) {
      await app.register(async (scope) => {
        addFormBody(scope);
        scope.route(route);
      });
    } else {
      app.route(route);
    }
  }
  app.get('/openapi.json', async () => document);
  await app.register(page);
  await app.register(swagger, { mode: 'static', specification: { document: document as never } });
  await app.register(swaggerUi, {
    routePrefix: '/docs',
    uiConfig: { docExpansion: 'list', defaultModelsExpandDepth: 0 },
    theme: { css: [{ filename: 'quiet.css', content: '.swagger-ui .topbar { display: none }' }] },
  });
  return app;
}

/** JSON, or where it breaks off. */
function parseJson(body: string): unknown {
  if (body.trim() === '') throw new RequestError('not-json', 'The body is empty. Send the question as JSON.');
  try {
    return JSON.parse(body);
  } catch (error) {
    const position = Number(/position (\d+)/.exec(String(error))?.[1] ?? body.length);
    const before = body.slice(0, position).split('\n');
    throw new RequestError(
      'not-json',
      `The body cannot be parsed as JSON: it breaks at line ${before.length}, character ${before.at(-1)!.length + 1}. Check quotes, commas and brackets there.`,
    );
  }
}

/** A key, whatever else is sent; where there is none, a session. */
function shownBy({ headers }: FastifyRequest): Shown | undefined {
  const key = /^Bearer (.+)$/i.exec(headers.authorization ?? '')?.[1];
  if (key !== undefined) return { key };
  const session = sessionIn(headers.cookie);
  return session === undefined ? undefined : { session };
}

function noOwner(): never {
  throw new RequestError('unauthorized', 'Send the header "Authorization: Bearer" followed by your key.');
}

/** Tells the caller how many requests are left; one too many goes no further. */
function countRequest(reply: FastifyReply, perMinute: number, allowance: Allowance): void {
  const { isAllowed, remaining, fullInS, nextInS } = allowance;
  reply.headers({ 'ratelimit-limit': perMinute, 'ratelimit-remaining': remaining, 'ratelimit-reset': fullInS });
  if (isAllowed) return;
  reply.header('retry-after', nextInS);
  throw new RequestError(
    'too-many-requests',
    `More than ${perMinute} requests a minute came. Go on in ${nextInS === 1 ? 'a second' : `${nextInS} seconds`}.`,
  );
}

function requireAccepted({ headers }: FastifyRequest, answer: Operation['answer']): void {
  if (answer === 'none') return;
  const mediaTypes = 'schema' in answer ? ['application/json', ...(answer.picture ? [SVG] : [])] : [answer.mediaType];
  if (accepted(headers.accept, mediaTypes)) return;
  throw new RequestError(
    'not-acceptable',
    `This route answers in ${mediaTypes.join(' or ')}, and the Accept header allows only ${headers.accept}.`,
  );
}

/** What fastify itself found wrong, and everything else, in our own words. */
function asRequestError(error: unknown): RequestError {
  if (error instanceof RequestError) return error;
  if (error instanceof StorageError) {
    return new RequestError(
      'storage-unavailable',
      'What is kept cannot be reached now. Try again in a few seconds: sending a request twice does no harm.',
    );
  }
  const { statusCode, code, message } = error as { statusCode?: number; code?: string; message?: string };
  const said = (ours: ErrorCode, detail: string): RequestError => new RequestError(ours, detail);
  if (statusCode === 413)
    return said(
      'too-large',
      'The body is larger than this route takes: 4 MB of JSON, 256 MB of CSV, 16 kB of a form. Send fewer days or hourly readings.',
    );
  if (statusCode === 415)
    return said('unsupported-media-type', 'Set Content-Type to application/json, or to text/csv for a logger’s file.');
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500) {
    const isAddress = code === 'FST_ERR_BAD_URL' || code?.includes('PARAM');
    return said(
      'bad-request',
      isAddress
        ? 'The address cannot be read: a part of it is too long, or a % in it is not followed by two hex digits.'
        : `The request cannot be read: ${message}.`,
    );
  }
  return said('internal', 'Something went wrong here; the instance below finds it in the log.');
}

function notFound(request: FastifyRequest, reply: FastifyReply, routes: readonly Route[]): RequestError {
  const path = request.url.split('?', 1)[0]!;
  const methods = [...routes, ...PAGES.filter((page) => request.server.hasRoute(page))]
    .filter(({ url }) => matches(url, path))
    .map(({ method }) => method);
  if (methods.length === 0) {
    return new RequestError(
      'not-found',
      `There is nothing at ${path.slice(0, 200)}; /docs lists the addresses there are.`,
    );
  }
  reply.header('allow', methods.flatMap((method) => (method === 'GET' ? ['GET', 'HEAD'] : [method])).join(', '));
  return new RequestError(
    'method-not-allowed',
    `${path.slice(0, 200)} takes ${methods.join(' and ')}, not ${request.method}.`,
  );
}

/** What may be served beside the routes. */
const PAGES = [
  ...['/', '/page.js', '/page.css', '/openapi.json', '/docs', '/docs/running'].map((url) => ({
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

function sendProblem(request: FastifyRequest, reply: FastifyReply, error: RequestError): void {
  const problem = problemOf(error, `urn:uuid:${request.id}`);
  if (problem.status === 401) reply.header('www-authenticate', 'Bearer');
  if (problem.status === 503) reply.header('retry-after', RETRY_AFTER_S);
  reply.code(problem.status).type('application/problem+json').send(problem);
}
