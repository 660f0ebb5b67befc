import { promisify } from 'node:util';
import type { FastifyBaseLogger, FastifyInstance, FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import type { RequestError } from '../basics/errors.js';
import type { TakeAllowance } from '../garden/store/allowance.js';
import { DEFAULT_QUOTAS, type Quotas } from '../garden/store/quotas.js';
import { seriesCacheOf } from '../garden/store/series-cache.js';
import type { Store } from '../garden/store/store.js';
import type { Localities } from '../localities/open-localities.js';
import { type WorkerPool, workerPool } from '../worker/worker-pool.js';
import { identifyCallers } from './auth/identify-callers.js';
import type { FindOwner } from './auth/keys.js';
import { countAnswers } from './metrics/count-answers.js';
import { metrics } from './metrics/metrics.js';
import { requestMetrics } from './metrics/request-metrics.js';
import { type Seen, watch } from './metrics/seen.js';
import { answerCache } from './negotiation/answer-cache.js';
import { packAnswer } from './negotiation/pack-answer.js';
import { model } from './openapi/model.js';
import { openApiPlugin } from './openapi/open-api-plugin.js';
import { sendProblem } from './problems/send-problem.js';
import type { Service } from './question/endpoint.js';
import { allRoutes } from './routes/all-routes.js';
import type { PlaceSources } from './routes/places/places.js';
import type { RefreshPlace } from './routes/places/refresh-air.js';
import { routePlugin } from './routes/route-plugin.js';
import type { ConnectionLimits } from './server/bounded-server.js';
import { addCommonHeaders } from './server/common-headers.js';
import { newFastify } from './server/new-fastify.js';
import { answerUnrouted } from './server/not-found.js';

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
  /** What places may have for sources, and how they are asked now; left out: any public one, which nobody asks. */
  readonly sources?: (PlaceSources & { readonly refreshPlace: RefreshPlace }) | undefined;
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

/** Counting stops here, so that a scrape costs the same however many messages wait. */
const MAX_MESSAGES_COUNTED = 10_000;

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
  sources = { allowed: 'any', hasContact: false, allowPrivate: false, refreshPlace: async () => false },
  work = workerPool({ modelVersion: model.version }),
  log,
  hosts,
  isProxy = () => false,
  publicUrl = '',
  connections = {},
  seen = {},
  page = redirectToDocs,
}: AppOptions): Promise<FastifyInstance> {
  const shownMetrics = metrics();
  const requests = requestMetrics(shownMetrics);
  const refuse = (request: FastifyRequest, reply: FastifyReply, error: RequestError): void => {
    requests.refused(error.code);
    sendProblem(request, reply, error);
  };
  const app = newFastify({ log, isProxy, connections, refuse });
  app.addHook('onClose', () => work.close());
  const service = { clock, store, work, localities, answers: answerCache() };
  app.addHook('onClose', watch(shownMetrics, seenOf(app, service, seen), version));
  const routes = allRoutes(service, {
    quotas,
    findOwner,
    metrics: shownMetrics,
    publicUrl,
    allowPrivateWebhooks,
    sources,
  });

  addCommonHeaders(app);
  identifyCallers(app, { store, routes, findOwner, hosts, clock, perMinute, workPerMinute, take, waitS: work.waitS });
  app.addHook('onSend', packAnswer);
  countAnswers(app, routes, requests);
  app.setNotFoundHandler((request, reply) => answerUnrouted(request, reply, routes));

  await app.register(routePlugin(routes, findOwner));
  await app.register(page);
  await app.register(openApiPlugin(routes, version));
  return app;
}

/** The counters of other rooms, and those that the service reads of itself. */
const seenOf = (app: FastifyInstance, { store, answers }: Service, seen: Seen): Seen => ({
  messagesWaiting: () => store.messagesWaiting(MAX_MESSAGES_COUNTED),
  openConnections: () => promisify(app.server.getConnections.bind(app.server))(),
  isWriteFailing: () =>
    store.ready().then(
      () => false,
      () => true,
    ),
  ...seen,
  caches: { answers: answers.stats, series: seriesCacheOf(store).stats, ...seen.caches },
});

const redirectToDocs: FastifyPluginAsync = async (app) => {
  app.get('/', async (_, reply) => reply.redirect('/docs'));
};
