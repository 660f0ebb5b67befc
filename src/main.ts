import { randomInt } from 'node:crypto';
import { readFileSync } from 'node:fs';
import v8 from 'node:v8';
import { runInNewContext } from 'node:vm';
import closeWithGrace from 'close-with-grace';
import type { FastifyInstance } from 'fastify';
import { climateFromTable } from './climate-table.js';
import { type Config, hostsOf, readConfig, settings } from './config.js';
import { now as demoNow } from './demo/season.js';
import { showDemo } from './demo.js';
import { knownNow } from './garden/sowing/known-now.js';
import type { Store } from './garden/store/store.js';
import { buildApp } from './http/app.js';
import { sharedAllowances } from './http/auth/allowances.js';
import { keyring } from './http/auth/keys.js';
import type { WorkStats } from './http/metrics/seen.js';
import { readyAnswer } from './http/negotiation/ready-answer.js';
import { model } from './http/openapi/model.js';
import { serviceLog } from './http/server/service-log.js';
import { openLocalities } from './localities/open-localities.js';
import { keepDelivering } from './outbox/keep-delivering.js';
import { keepPolling } from './outbox/keep-polling.js';
import { servePage } from './page/server/serve.js';
import { keepRefreshing } from './sources/keep-refreshing.js';
import { sqlitePath } from './storage/database-url.js';
import { openStore } from './storage/open-store.js';
import { diskUse } from './storage/sqlite/disk-use.js';
import { plainReader } from './words/reader.js';
import { sayer } from './words/say.js';
import { type PastSoilStore, pastSoilCache } from './worker/past-soil-cache.js';
import type { PoolStats } from './worker/pool-stats.js';
import { workPortOf } from './worker/work-port-of.js';
import { workerPool } from './worker/worker-pool.js';

type Log = ReturnType<typeof serviceLog>;

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
  version: string;
};
const isDemo = process.argv[2] === 'demo';

const read = readConfig(process.env);
if ('faults' in read) {
  process.stderr.write(`The service cannot start as it is configured:\n${read.faults}\n`);
  process.exit(1);
}
await start(read.config);

async function start(config: Config): Promise<void> {
  // The demo's season lies in the future and begins at noon of its own day.
  const aheadMs = isDemo ? demoNow.getTime() - Date.now() : 0;
  const clock = () => new Date(Date.now() + aheadMs);
  const log = serviceLog(isDemo ? 'warn' : config.LOG_LEVEL);
  // The demo leaves no files behind.
  const databaseUrl = isDemo ? 'sqlite::memory:' : config.DATABASE_URL;
  const store: Store = { ...(await openedStore(config, databaseUrl, clock, log)), climateOf: climateFromTable() };
  const failing = (what: string) => (err: unknown) => log.warn({ err }, what);
  const work = workerPool({
    modelVersion: model.version,
    threads: config.WORKERS === 'auto' ? undefined : config.WORKERS,
    pasts: pastSoilCache({
      // A cache would hold an in-memory database twice, and nothing outlives the process.
      store: sqlitePath(databaseUrl) === ':memory:' ? undefined : pastSoilIn(store, clock),
      failed: failing('the database has no past soil now: it is worked out anew'),
    }),
  });
  // The workers warm up while this thread starts.
  const warmedUp = work.warmUp().catch(failing('the worker threads could not be warmed up'));
  const seen = {
    caches: { 'past-soil': () => work.stats().pastSoil },
    work: () => workStats(work.stats()),
    sources: { asked: 0, failed: 0, due: 0, longestOverdueS: 0 },
    deliveries: { delivered: 0, failed: 0, 'switched-off': 0, 'given-up': 0 },
    database: () => diskUse(databaseUrl),
  };
  const going = { version, store, clock, random: () => randomInt(2 ** 32) / 2 ** 32, log };
  const { SOURCES: allowed, ALLOW_PRIVATE_SOURCES: allowPrivate, SOURCES_CONTACT: contact } = config;
  const sources = keepRefreshing({ ...going, tally: seen.sources, allowPrivate, allowed, contact });
  const app = await buildApp({
    version,
    store,
    localities: openLocalities(new URL('./localities/localities.bin', import.meta.url)),
    quotas: config.QUOTAS,
    clock,
    work,
    findOwner: config.API_KEYS.size > 0 ? keyring(config.API_KEYS) : undefined,
    rateLimit: config.RATE_LIMIT,
    workLimit: config.WORK_LIMIT,
    takeAllowance: sharedAllowances(
      store.takeAllowance,
      failing('the database has no limits now: each instance has its own'),
    ),
    allowPrivateWebhooks: config.ALLOW_PRIVATE_WEBHOOKS,
    sources: { allowed, allowPrivate, hasContact: contact !== '', refreshPlace: sources.refreshPlace },
    hosts: hostsOf(config),
    isProxy: config.TRUST_PROXY,
    publicUrl: config.PUBLIC_URL,
    connections: { maxConnections: config.MAX_CONNECTIONS, maxPerAddress: config.MAX_CONNECTIONS_PER_ADDRESS },
    seen,
    page: servePage(new URL('../dist/page/files/', import.meta.url), readyAnswer, settings, { isDemo }),
    log,
  });
  await warmedUp;
  collectGarbage();
  const address = await listen(app, config);
  const deliveries = keepDelivering({ ...going, tally: seen.deliveries, allowPrivate: config.ALLOW_PRIVATE_WEBHOOKS });
  const polling = keepPolling({
    ...going,
    say: sayer(plainReader),
    look: (owner, subscription, beds, signal) => {
      const ask = workPortOf(work, { owner, caller: owner, signal, isBackground: true });
      return knownNow(store, owner, subscription, beds, clock(), ask);
    },
  });
  closeWithGrace({ delay: 10_000, logger: false }, async ({ err }) => {
    if (err) log.error({ err }, 'stopping after an error');
    await Promise.all([app.close(), sources.stop(), polling.stop(), deliveries.stop()]);
    await store.close();
    log.info('stopped');
  });
  log.info({ version, node: process.version, keys: config.API_KEYS.size }, 'started');
  if (config.ALLOW_OPEN && config.API_KEYS.size === 0) {
    log.warn('ALLOW_OPEN=1 and no API_KEYS: whoever can reach this address can use the service');
  }
  if (isDemo) await showDemo(address, [...config.API_KEYS.keys()][0], (text) => process.stdout.write(text));
}

/** Opens the store, or ends the process with the reason. */
function openedStore(config: Config, databaseUrl: string, clock: () => Date, log: Log): Promise<Store> {
  return openStore(databaseUrl, {
    quotas: config.QUOTAS,
    secretsKey: config.SECRETS_KEY || undefined,
    forgetSecrets: config.FORGET_SECRETS ? { atMs: clock().getTime() } : undefined,
    warn: (text) => log.warn(text),
  }).catch((error: Error) => {
    process.stderr.write(`The database named by DATABASE_URL cannot be opened: ${error.message}.\n`);
    process.exit(1);
  });
}

/** The persistent store of past soil. */
function pastSoilIn(store: Store, clock: () => Date): PastSoilStore {
  return {
    find: store.pastSoil,
    keep: (owner, key, packed) => store.keepPastSoil(owner, key, packed, clock().getTime()),
  };
}

/** The worker pool's counters in the form of the metrics. */
function workStats(stats: PoolStats): WorkStats {
  const { waitingPeople, waitingBackground, working, threads, waitedS, workedS, ...ended } = stats;
  const { done, refused, dropped, stopped, crashed, late } = ended;
  const waiting = { people: waitingPeople, background: waitingBackground };
  return {
    waiting,
    running: working,
    threads,
    ended: { done, refused, dropped, stopped, crashed, late },
    waitedS,
    workedS,
  };
}

/** Starts listening and returns the address, or ends the process with the reason. */
function listen(app: FastifyInstance, config: Config): Promise<string> {
  return app.listen({ host: config.HOST, port: config.PORT }).catch((error: NodeJS.ErrnoException) => {
    const taken = error.code === 'EADDRINUSE';
    process.stderr.write(taken ? `Port ${config.PORT} is in use; set PORT to a free one, or to 0.\n` : `${error}\n`);
    process.exit(1);
  });
}

/**
 * Frees the memory that only the start needed. V8 would do it during the first long question and add a fifth to its
 * cost.
 */
function collectGarbage(): void {
  v8.setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  v8.setFlagsFromString('--no-expose-gc');
  collect();
}
