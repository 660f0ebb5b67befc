import { randomUUID } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { promisify } from 'node:util';
import Fastify, {
  type FastifyBaseLogger,
  type FastifyInstance,
  type FastifyPluginAsync,
  type FastifyReply,
  type FastifyRequest,
} from 'fastify';
import { RequestError } from '../basics/errors.js';
import { requestRefusal } from '../contract/refusal-facts.js';
import { requireSameOrigin } from '../contract/same-origin.js';
import type { TakeAllowance } from '../garden/store/allowance.js';
import { DEFAULT_QUOTAS, type Quotas } from '../garden/store/quotas.js';
import { seriesCacheOf } from '../garden/store/series-cache.js';
import type { Store } from '../garden/store/store.js';
import type { Localities } from '../localities/open-localities.js';
import { type WorkerPool, workerPool } from '../worker/worker-pool.js';
import { refuseMisconduct } from './auth/conduct.js';
import type { FindOwner } from './auth/keys.js';
import { requestLimits } from './auth/limits.js';
import { openSession } from './auth/open-session.js';
import { OPEN_OWNER } from './auth/owner.js';
import { sessionRoutes } from './auth/session.js';
import { noOwner, shownBy } from './auth/shown-by.js';
import { metrics } from './metrics/metrics.js';
import { requestMetrics } from './metrics/request-metrics.js';
import { type Seen, watch } from './metrics/seen.js';
import { answerCache } from './negotiation/answer-cache.js';
import { completed } from './negotiation/completed.js';
import { VARY } from './negotiation/etag.js';
import { packAnswer } from './negotiation/pack-answer.js';
import { readerSoFar, takeReader } from './negotiation/reader.js';
import { readyAnswer, type SendReady } from './negotiation/ready-answer.js';
import { requireAccepted } from './negotiation/require-accepted.js';
import { asJson } from './negotiation/written.js';
import { docs } from './openapi/docs.js';
import { model } from './openapi/model.js';
import { openApiDocument } from './openapi/openapi.js';
import { asRequestError } from './problems/request-error.js';
import { PROBLEM, sendProblem } from './problems/send-problem.js';
import { isFile } from './question/file-request.js';
import { bedRoutes } from './routes/beds/beds.js';
import { calendarRoutes, growingIn } from './routes/calendar/calendar.js';
import { cropRoutes } from './routes/crops/crops.js';
import { forecastRoutes } from './routes/forecasts/forecasts.js';
import { localityRoutes } from './routes/localities/localities.js';
import { lotRoutes } from './routes/lots/lots.js';
import { seedsNeededRoutes } from './routes/lots/seeds-needed.js';
import { frostDatesRoutes } from './routes/places/frost-dates.js';
import { placeAirRoutes } from './routes/places/place-air.js';
import { placeComingDaysRoutes } from './routes/places/place-coming-days.js';
import { placeNormalsRoutes } from './routes/places/place-normals.js';
import { placeRoutes } from './routes/places/places.js';
import { planRoutes } from './routes/plans/plans.js';
import { bedReadingsRoutes } from './routes/readings/bed-readings.js';
import { readingsRoutes } from './routes/readings/readings.js';
import { messageRoutes } from './routes/service/messages.js';
import { serviceRoutes } from './routes/service/service.js';
import { sessionsRoutes } from './routes/service/sessions.js';
import { usageRoutes } from './routes/service/usage.js';
import { soilTemperatureRoutes } from './routes/soil/soil-temperatures.js';
import { countRoutes } from './routes/sowings/counts.js';
import { sowingRoutes } from './routes/sowings/sowings.js';
import { subscriptionRoutes } from './routes/subscriptions/subscriptions.js';
import { thisWeekRoutes } from './routes/week/this-week.js';
import { sowingWindowRoutes } from './routes/windows/sowing-windows.js';
import { boundedServer, type ConnectionLimits, DEFAULT_CONNECTION_LIMITS } from './server/bounded-server.js';
import { callersIdOf } from './server/callers-id.js';
import { sendClientError } from './server/client-error.js';
import { addFormBody } from './server/form-body.js';
import { settleForwarded } from './server/forwarded.js';
import { parseJson } from './server/json-body.js';
import { answerUnrouted } from './server/not-found.js';
import { requestLog } from './server/request-log.js';

export interface AppOptions {
  readonly version: string;
  readonly clock: () => Date;
  /** Storage of places, beds and readings; the caller who opened it closes it, after the app. */
  readonly store: Store;
  /** Towns of the world. */
  readonly localities: () => Promise<Localities>;
  /** The owner's limits in the store, to report them. */
  readonly quotas?: Quotas | undefined;
  /** Left out: no key is needed. */
  readonly findOwner?: FindOwner | undefined;
  /** Requests per minute of each owner, or of each address without a key; 0 or left out: unlimited. */
  readonly rateLimit?: number | undefined;
  /** Answers from past years per minute for each of them; 0 or left out: unlimited. */
  readonly workLimit?: number | undefined;
  /** Takes from allowances shared by all instances; left out: each instance has its own. */
  readonly takeAllowance?: TakeAllowance | undefined;
  /** Worker pool for work that takes seconds; closed with the app. Left out: the app starts its own. */
  readonly work?: WorkerPool | undefined;
  /** Allows subscriptions to private addresses and without encryption. */
  readonly allowPrivateWebhooks?: boolean | undefined;
  /** Left out: nothing is logged. */
  readonly log?: FastifyBaseLogger | undefined;
  /** Hosts to serve besides this machine's own names; left out: any. */
  readonly hosts?: readonly string[] | undefined;
  /** True for the address of a trusted proxy; left out: none is. */
  readonly isProxy?: ((address: string) => boolean) | undefined;
  /** Prefix of links that leave the service, such as `https://garden.example`; left out: they begin with `/`. */
  readonly publicUrl?: string | undefined;
  readonly connections?: Partial<ConnectionLimits> | undefined;
  /** Counters of other rooms for the metrics; missing ones are left out. */
  readonly seen?: Seen | undefined;
  /** The page at `/`; left out: a redirect to the documentation. */
  readonly page?: FastifyPluginAsync | undefined;
}

const JSON_LIMIT_BYTES = 4 * 1024 * 1024;
const MAX_PATH_PARAMETER = 200;
/** Counting stops here, so that a scrape costs the same however many messages wait. */
const MAX_MESSAGES_COUNTED = 10_000;
const SAFETY_HEADERS = {
  'x-content-type-options': 'nosniff',
  // Not `no-referrer`: a form would then hide from us too that it comes from one of our pages.
  'referrer-policy': 'same-origin',
  'x-frame-options': 'DENY',
};

/** The service, ready to listen or to be asked in a test. */
export async function buildApp({
  version,
  clock,
  store,
  localities,
  quotas = DEFAULT_QUOTAS,
  findOwner,
  rateLimit: perMinute = 0,
  workLimit: workPerMinute = 0,
  takeAllowance: take,
  allowPrivateWebhooks = false,
  work = workerPool({ modelVersion: model.version }),
  log,
  hosts,
  isProxy = () => false,
  publicUrl = '',
  connections = {},
  seen = {},
  page = async (pages) => {
    pages.get('/', async (_, reply) => reply.redirect('/docs'));
  },
}: AppOptions): Promise<FastifyInstance> {
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

  let isStopping = false;
  app.addHook('preClose', async () => {
    isStopping = true;
  });
  app.addHook('onClose', () => work.close());
  const service = { clock, store, work, localities, answers: answerCache() };
  const shownMetrics = metrics();
  const requests = requestMetrics(shownMetrics);
  const unwatch = watch(
    shownMetrics,
    {
      messagesWaiting: () => store.messagesWaiting(MAX_MESSAGES_COUNTED),
      openConnections: () => promisify(app.server.getConnections.bind(app.server))(),
      isWriteFailing: () =>
        store.ready().then(
          () => false,
          () => true,
        ),
      ...seen,
      caches: { answers: service.answers.stats, series: seriesCacheOf(store).stats, ...seen.caches },
    },
    version,
  );
  const refuse = (request: FastifyRequest, reply: FastifyReply, error: RequestError): void => {
    requests.refused(error.code);
    sendProblem(request, reply, error);
  };
  app.addHook('onClose', unwatch);
  const routes = [
    ...cropRoutes(service),
    ...forecastRoutes(service),
    ...soilTemperatureRoutes(service),
    ...sowingWindowRoutes(service),
    ...thisWeekRoutes(service),
    ...readingsRoutes(clock),
    ...placeRoutes(store, clock),
    ...placeAirRoutes(store, clock),
    ...placeNormalsRoutes(store, clock),
    ...placeComingDaysRoutes(store, clock),
    ...frostDatesRoutes(service),
    ...bedRoutes(store, clock, publicUrl),
    ...bedReadingsRoutes(store, clock),
    ...calendarRoutes(service, growingIn(service)),
    ...localityRoutes(localities, clock),
    ...lotRoutes(store, clock),
    ...planRoutes(service),
    ...seedsNeededRoutes(store, clock),
    ...sowingRoutes(service),
    ...countRoutes(store, clock),
    ...subscriptionRoutes(store, clock, allowPrivateWebhooks),
    ...usageRoutes(store, quotas, clock),
    ...sessionsRoutes(store, clock),
    ...sessionRoutes(store, clock, findOwner),
    ...messageRoutes,
    ...serviceRoutes(store, shownMetrics),
  ];
  let described: Record<string, unknown> | undefined;
  let sendDocument: SendReady | undefined;
  const document = (): Record<string, unknown> => {
    described ??= openApiDocument(routes, version);
    return described;
  };

  app.decorateRequest('owner', OPEN_OWNER);
  app.decorateRequest('caller', null);
  app.decorateRequest('sessionId', null);
  app.decorateRequest('askedBy');
  app.decorateRequest('reader');
  app.decorateRequest('isModelInFull', false);
  const keyed = new Set(routes.filter(({ open }) => !open).map(({ url }) => url));
  const documentedUrls = new Map<string | undefined, string>(routes.map(({ url }) => [url, shownUrl(url)]));
  const isOpen = (url: string | undefined): boolean => url === undefined || !keyed.has(url);
  const countRequest = requestLimits({ clock, perMinute, workPerMinute, take, waitS: work.waitS, isOpen });
  // Runs for every request: routes, the page's files, the documentation, and addresses that do not exist.
  app.addHook('onRequest', async (request, reply) => {
    const callersId = callersIdOf(request);
    reply.headers({ ...SAFETY_HEADERS, 'request-id': request.id });
    if (callersId !== undefined) reply.header('x-request-id', callersId);
    request.reader = readerSoFar(request);
    if (isStopping) throw new RequestError('stopping', requestRefusal('stopping'));
    const shown = shownBy(request);
    const { url } = request.routeOptions;
    // Query the database only where a session opens something, so that other requests can neither flood it nor fail
    // while it is down.
    const session =
      findOwner && shown && 'session' in shown && (url === '/' || !isOpen(url))
        ? await openSession(store, findOwner, shown.session, clock(), request.log)
        : undefined;
    const holder = shown && 'key' in shown ? findOwner?.({ key: shown.key }) : session?.holder;
    request.sessionId = session?.id ?? null;
    request.caller = { shown, holder, isStranger: findOwner !== undefined && holder === undefined };
    await countRequest(request, reply);
    refuseMisconduct(request, reply, hosts, findOwner);
  });
  app.addHook('onSend', async ({ raw, headers }, reply) => {
    // Drop the rest of the body and close the connection, as the next request could not be told from it.
    if (raw.complete === false && ('content-length' in headers || 'transfer-encoding' in headers)) {
      reply.header('connection', 'close');
    }
  });
  app.addHook('onSend', packAnswer);
  app.addHook('onResponse', async ({ method, routeOptions }, { statusCode, elapsedTime }) => {
    const route = documentedUrls.get(routeOptions.url) ?? shownUrl(routeOptions.url);
    requests.answered({ route, method, status: statusCode, seconds: elapsedTime / 1000 });
  });
  app.setErrorHandler((error, request, reply) => {
    const known = asRequestError(error);
    if (known.code === 'internal' || known.code.startsWith('storage-')) {
      request.log.error({ err: error }, 'request failed');
    }
    refuse(request, reply, known);
  });
  app.setNotFoundHandler((request, reply) => answerUnrouted(request, reply, routes));

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
    const preSerialization = async (
      request: FastifyRequest,
      reply: FastifyReply,
      content: unknown,
    ): Promise<unknown> => {
      // A problem is worded already.
      if (String(reply.getHeader('content-type')).startsWith(PROBLEM)) return content;
      if (!reply.hasHeader('vary')) reply.header('vary', VARY);
      return completed(content, request);
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
  app.get('/openapi.json', (request, reply) => {
    sendDocument ??= readyAnswer({ ...asJson(document()), headers: { 'cache-control': 'public, max-age=3600' } });
    return sendDocument(request, reply);
  });
  await app.register(page);
  await app.register(docs(document));
  return app;
}

/** A route's pattern in the syntax of the OpenAPI document. */
const shownUrl = (url: string | undefined): string => url?.replaceAll(/:(\w+)/g, '{$1}') ?? 'none';
