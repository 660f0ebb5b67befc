import type { FastifyInstance, LightMyRequestResponse } from 'fastify';
import { climateFromTable } from '../../src/climate-table.js';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import type { SoilAnswer } from '../../src/contract/soil.js';
import type { Store } from '../../src/garden/store/store.js';
import { type AppOptions, buildApp } from '../../src/http/app.js';
import { model } from '../../src/http/openapi/model.js';
import {
  exampleBed,
  exampleBedReadings,
  exampleComingDays,
  exampleCount,
  exampleLot,
  exampleNormals,
  examplePlan,
  exampleSowing,
  exampleSubscription,
  exampleWindowQuestion,
} from '../../src/http/question/examples.js';
import { openLocalities } from '../../src/localities/open-localities.js';
import { openStore } from '../../src/storage/open-store.js';
import { DEADLINE_MS } from '../../src/worker/pool-limits.js';
import { type WorkerPool, workerPool } from '../../src/worker/worker-pool.js';

/** When the tests take it to be: noon at Quillmere. */
export const NOW = '2027-08-03T14:00:00.000Z';

/** Tests of answers say nothing of how soon they come: many run at once, each with a thread of its own. */
const PATIENT_MS = { forecast: 60_000, growing: 60_000, windows: 60_000, season: 60_000, plan: 60_000, soil: 60_000 };

/** The towns that the service ships. */
/** The climate of places, from the table. */
export const climateOf = climateFromTable();
export const localities = openLocalities(new URL('../../src/localities/localities.bin', import.meta.url));

/**
 * The service, ready to be asked; without keys, with a still clock, and with a store in memory that goes when it closes,
 * unless the options say otherwise.
 */
export async function startApp(options: Partial<AppOptions> = {}): Promise<FastifyInstance> {
  const store: Store = { ...(options.store ?? (await openStore('sqlite::memory:'))), climateOf };
  const work = options.work ?? workerPool({ modelVersion: model.version, deadlineMs: PATIENT_MS });
  const app = await buildApp({
    version: '0.0.0-test',
    clock: () => new Date(NOW),
    localities,
    ...options,
    work,
    store,
  });
  if (!options.store) app.addHook('onClose', () => store.close());
  return app;
}

/** Works answers out on one thread, however long that takes on a busy machine: a test waits for what it asked. */
export const patientPool = (): WorkerPool => {
  const kinds = Object.keys(DEADLINE_MS) as (keyof typeof DEADLINE_MS)[];
  const deadlineMs = Object.fromEntries(kinds.map((kind) => [kind, 120_000])) as Record<
    keyof typeof DEADLINE_MS,
    number
  >;
  return workerPool({ modelVersion: model.version, threads: 1, deadlineMs });
};

/** Asks an app by any method; text goes as a file. */
export const askerOf =
  (app: FastifyInstance) =>
  (
    method: 'GET' | 'PUT' | 'PATCH' | 'POST' | 'DELETE',
    url: string,
    payload?: string | object,
    headers: Record<string, string> = {},
  ): Promise<LightMyRequestResponse> =>
    app.inject({
      method,
      url,
      headers: typeof payload === 'string' ? { 'content-type': 'text/csv', ...headers } : headers,
      ...(payload === undefined ? {} : { payload }),
    });

/** Posts text as a logger's file, and anything else as JSON. */
export const post = (app: FastifyInstance, url: string, body: string | object): Promise<LightMyRequestResponse> =>
  typeof body === 'string'
    ? app.inject({ method: 'POST', url, headers: { 'content-type': 'text/csv' }, payload: body })
    : app.inject({ method: 'POST', url, payload: body });

/** The answer to a forecast's question; fails the test where it is refused. */
export async function forecastOf(app: FastifyInstance, body: string | object, query = ''): Promise<ForecastAnswer> {
  const response = await post(app, `/v1/forecasts${query === '' ? '' : `?${query}`}`, body);
  if (response.statusCode !== 200) throw new Error(`The question was refused: ${response.body}`);
  return response.json();
}

/** The answer to a question about the soil; fails the test where it is refused. */
export async function soilOf(app: FastifyInstance, body: string | object, query = ''): Promise<SoilAnswer> {
  const response = await post(app, `/v1/soil-temperatures${query === '' ? '' : `?${query}`}`, body);
  if (response.statusCode !== 200) throw new Error(`The question was refused: ${response.body}`);
  return response.json();
}

/** Of a milestone that does come, its days; fails the test where it does not. */
export function daysTo(milestone: ForecastAnswer['emergence']['half']): number {
  if ('why' in milestone) throw new Error(`It does not come: ${milestone.why}`);
  return milestone.days;
}

const DAY_MS = 86_400_000;

/** The date some days after another. */
export const dateAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);

/** A soil series by the day: a minimum and a maximum for each date from `start` on. */
export const dailySeries = (
  minMax: readonly (readonly [min: number, max: number])[],
  { start = '2027-05-01' } = {},
) => ({
  medium: 'soil',
  daily: minMax.map(([min, max], day) => ({ date: dateAfter(start, day), min, max })),
});

/** A soil series by the hour, from the wall clock `start` on, at an offset that never changes. */
export const hourlySeries = (values: readonly number[], { start = '2027-05-01T00:00', offset = '-02:00' } = {}) => ({
  medium: 'soil',
  readings: values.map((value, hour) => ({
    at: `${new Date(Date.parse(`${start}Z`) + hour * (DAY_MS / 24)).toISOString().slice(0, 16)}${offset}`,
    value,
  })),
});

/** The invented Quillmere Allotment Society: out in the ocean, where no land is. */
export const quillmere = { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };

/** Thirty days that swing between 10 and 20 °C. */
export const mildMay = dailySeries(Array.from({ length: 30 }, () => [10, 20] as const));

/** Lettuce sown at Quillmere on 3 May 2027 into a mild May. What is named replaces that. */
export const lettuceQuestion = (overrides: Record<string, unknown> = {}) => ({
  crop: 'lettuce',
  where: { place: quillmere },
  sowing: { date: '2027-05-03' },
  temperatures: [mildMay],
  ...overrides,
});

/** Keeps what a garden may have: a place with its air, normals and coming days, a bed with readings, a place without beds, a lot, a sowing, a plan; of it what is wanted. */
export async function keepQuillmere(app: FastifyInstance, isWanted = (_url: string): boolean => true): Promise<void> {
  const place = { name: 'Quillmere Allotment Society', ...quillmere };
  const kept: readonly (readonly [method: 'PUT' | 'POST', url: string, body: object])[] = [
    ['PUT', '/v1/places/quillmere', place],
    ['PUT', '/v1/places/fallow', { ...place, name: 'Fallow' }],
    ['POST', '/v1/places/quillmere/air', examplePastYears],
    ['PUT', '/v1/places/quillmere/normals', exampleNormals],
    ['PUT', '/v1/places/quillmere/coming-days', exampleComingDays],
    ['PUT', '/v1/beds/north', exampleBed],
    ['POST', '/v1/beds/north/readings', exampleBedReadings],
    ['PUT', '/v1/lots/onion-2026', exampleLot],
    ['PUT', '/v1/sowings/north-lettuce', exampleSowing],
    ['PUT', '/v1/sowings/north-lettuce/counts/2027-08-03', exampleCount],
    ['PUT', '/v1/subscriptions/shed', exampleSubscription],
    // Nobody knows how long onions take, so this one is kept in no time.
    ['PUT', '/v1/plans/north-summer', { ...examplePlan, crop: 'onion' }],
  ];
  for (const [method, url, payload] of kept.filter(([, url]) => isWanted(url))) {
    const { statusCode, body } = await app.inject({ method, url, payload });
    if (statusCode >= 300) throw new Error(`${method} ${url} was refused: ${body}`);
  }
}

/** Of each kind of thing that can be kept, the id of one that `keepQuillmere` keeps. */
export const keptIds = {
  places: 'quillmere',
  beds: 'north',
  lots: 'onion-2026',
  sowings: 'north-lettuce',
  subscriptions: 'shed',
  plans: 'north-summer',
};

/** What the links to questions about Quillmere ask, by their operations. */
export const linkQueries: Readonly<Record<string, string>> = {
  deleteBed: '?with=sowings',
  thisWeek: '?bed=north&crop=lettuce,radish',
  forecastByLink: '?bed=north&crop=lettuce&sowing=2027-08-04',
  soilTemperaturesByLink: '?bed=north&from=2027-05-03&to=2027-05-03',
  sowingWindowsByLink: '?bed=north&crop=lettuce&from=2027-05-04&to=2027-06-30',
  frostDatesByLink: '?near=Ithaca,%20New%20York,%20US',
  // Not the token, which is nobody's to know beforehand.
  bedCalendar: '?token=quillmere',
  listLocalities: '?q=Ithaca',
  bedForecast: '?crop=lettuce&sowing=2027-08-04',
  bedSoilTemperatures: '?from=2027-05-03&to=2027-05-03',
  bedSowingWindows: '?crop=lettuce&from=2027-05-04&to=2027-06-30',
  placeSowingWindows: '?crop=lettuce&from=2027-05-04&to=2027-06-30',
};

/** Three invented years of air. */
const examplePastYears = exampleWindowQuestion.temperatures[0]!;
