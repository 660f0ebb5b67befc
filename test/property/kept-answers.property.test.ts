import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Store } from '../../src/garden/store/store.js';
import { keyring } from '../../src/http/auth/keys.js';
import { openStore } from '../../src/storage/open-store.js';
import { dateAfter, patientPool, quillmere, startApp } from '../api/helper.js';

const OWNERS = ['ann', 'ben'] as const;
type Owner = (typeof OWNERS)[number];
const KEYS = new Map(OWNERS.map((owner) => [`key-of-${owner}-0123456789`, owner]));
const keyOf = (owner: Owner): string => [...KEYS].find(([, one]) => one === owner)![0];

const START = '2027-05-01';
const HOUR_MS = 3_600_000;
/** 3 June, at noon of the place. */
const NOON = Date.parse('2027-06-03T14:00:00Z');

const folder = await mkdtemp(join(tmpdir(), 'kept-answers-'));
let store: Store;
let cached: FastifyInstance;
let nowMs = NOON;

// One pool for all: what its threads remember goes by the temperatures themselves.
const pool = patientPool();
const work = { ...pool, close: async () => undefined };
const appOver = (over: Store): Promise<FastifyInstance> =>
  startApp({ store: over, work, clock: () => new Date(nowMs), findOwner: keyring(KEYS) });

const ask = async (
  app: FastifyInstance,
  owner: Owner,
  method: 'GET' | 'PUT' | 'POST' | 'DELETE',
  url: string,
  more: object = {},
) =>
  app.inject({
    method,
    url,
    headers: { authorization: `Bearer ${keyOf(owner)}`, ...(more as { headers?: object }).headers },
    ...('payload' in more ? { payload: more.payload as object } : {}),
  });

const change = async (
  owner: Owner,
  method: 'PUT' | 'POST' | 'DELETE',
  url: string,
  payload?: object,
): Promise<void> => {
  const { statusCode, body } = await ask(cached, owner, method, url, payload ? { payload } : {});
  // What is not there cannot be deleted, and a count has its bounds.
  if (statusCode >= 300 && ![404, 409, 422].includes(statusCode)) throw new Error(`${method} ${url}: ${body}`);
};

const place = (zone: string) => ({ name: 'Quillmere', ...quillmere, timeZone: zone });
const airOf = (first: number, days: number, min: number) => ({
  medium: 'air',
  daily: Array.from({ length: days }, (_, i) => ({
    date: dateAfter(START, first + i),
    min: min + (i % 5),
    max: min + 9 + (i % 7),
  })),
});
const readingsOf = (day: number, value: number) => ({
  medium: 'soil',
  probeDepthCm: 5,
  readings: Array.from({ length: 24 }, (_, hour) => ({
    at: `${dateAfter(START, day)}T${String(hour).padStart(2, '0')}:00:00-02:00`,
    value: value + Math.sin(hour / 4),
  })),
});
const months = (usual: number) =>
  Object.fromEntries(
    ['meanMinC', 'meanMaxC'].map((end, i) => [
      end,
      Array.from({ length: 12 }, (_, month) => usual + 8 * i - 6 * Math.cos((month / 6) * Math.PI)),
    ]),
  );

const planOf = (perWeek: number) => ({
  bed: 'north',
  crop: 'lettuce',
  harvest: { from: '2027-08-20', to: '2027-09-10', perWeek },
});

async function keepGarden(owner: Owner): Promise<void> {
  await change(owner, 'PUT', '/v1/places/quillmere', place('Etc/GMT+2'));
  await change(owner, 'PUT', '/v1/places/quillmere/normals', months(9));
  await change(owner, 'POST', '/v1/places/quillmere/air', airOf(0, 33, owner === 'ann' ? 6 : 10));
  await change(owner, 'PUT', '/v1/beds/north', { place: 'quillmere', name: `North bed of ${owner}` });
  await change(owner, 'PUT', '/v1/lots/old', { crop: 'lettuce', germinationPercent: 80 });
  await change(owner, 'PUT', '/v1/sowings/row', {
    bed: 'north',
    crop: 'lettuce',
    date: '2027-05-10',
    seeds: 200,
    lot: 'old',
  });
  await change(owner, 'PUT', '/v1/sowings/other', { bed: 'north', crop: 'lettuce', date: '2027-05-20', seeds: 100 });
  await change(owner, 'PUT', '/v1/plans/salad', planOf(6));
}

/** Something that changes what is kept, or the hour. */
const changes: fc.Arbitrary<(owner: Owner) => Promise<unknown>> = fc.oneof(
  fc.record({ first: fc.nat(40), days: fc.integer({ min: 1, max: 5 }), min: fc.integer({ min: -2, max: 18 }) }).map(
    ({ first, days, min }) =>
      (owner: Owner) =>
        change(owner, 'POST', '/v1/places/quillmere/air', airOf(first, days, min)),
  ),
  fc
    .nat(33)
    .map(
      (day) => (owner: Owner) =>
        change(
          owner,
          'DELETE',
          `/v1/places/quillmere/air?from=${dateAfter(START, day)}&to=${dateAfter(START, day + 1)}`,
        ),
    ),
  fc.record({ day: fc.nat(36), value: fc.integer({ min: 5, max: 25 }) }).map(
    ({ day, value }) =>
      (owner: Owner) =>
        change(owner, 'POST', '/v1/beds/north/readings', readingsOf(day, value)),
  ),
  fc
    .nat(33)
    .map((day) => (owner: Owner) => change(owner, 'DELETE', `/v1/beds/north/readings?from=${dateAfter(START, day)}`)),
  fc.record({ day: fc.integer({ min: 12, max: 33 }), seedlings: fc.nat(150) }).map(
    ({ day, seedlings }) =>
      (owner: Owner) =>
        change(owner, 'PUT', `/v1/sowings/row/counts/${dateAfter(START, day)}`, { seedlings }),
  ),
  fc
    .integer({ min: 12, max: 33 })
    .map(
      (day) => (owner: Owner) =>
        change(owner, 'PUT', `/v1/sowings/other/counts/${dateAfter(START, day + 9)}`, { seedlings: 20 }),
    ),
  fc
    .integer({ min: 40, max: 99 })
    .map(
      (germinationPercent) => (owner: Owner) =>
        change(owner, 'PUT', '/v1/lots/old', { crop: 'lettuce', germinationPercent }),
    ),
  fc
    .constantFrom('bare', 'mulch', 'fleece')
    .map(
      (cover) => (owner: Owner) =>
        change(owner, 'PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed', cover }),
    ),
  fc
    .constantFrom('Etc/GMT+2', 'Etc/GMT-9', 'Europe/London')
    .map((zone) => (owner: Owner) => change(owner, 'PUT', '/v1/places/quillmere', place(zone))),
  fc
    .integer({ min: 4, max: 14 })
    .map((usual) => (owner: Owner) => change(owner, 'PUT', '/v1/places/quillmere/normals', months(usual))),
  fc
    .integer({ min: 0, max: 15 })
    .map(
      (min) => (owner: Owner) =>
        change(owner, 'PUT', '/v1/places/quillmere/coming-days', { ...airOf(34, 6, min), origin: 'forecast' }),
    ),
  fc.integer({ min: 50, max: 300 }).map(
    (seeds) => (owner: Owner) =>
      change(owner, 'PUT', '/v1/sowings/row', {
        bed: 'north',
        crop: 'lettuce',
        date: '2027-05-09',
        seeds,
        lot: 'old',
      }),
  ),
  fc.constant((owner: Owner) => change(owner, 'DELETE', '/v1/sowings/other')),
  fc
    .integer({ min: 1, max: 20 })
    .map((perWeek) => (owner: Owner) => change(owner, 'PUT', '/v1/plans/salad', planOf(perWeek))),
  fc.constant((owner: Owner) => change(owner, 'DELETE', '/v1/plans/salad')),
  fc.integer({ min: 1, max: 30 }).map((hours) => async () => {
    nowMs += hours * HOUR_MS;
  }),
  fc
    .constantFrom('It answered 404.', 'It answered nothing.')
    .map((error) => (owner: Owner) => sourceFails(owner, error)),
);

/** The place has a source, which fails. */
async function sourceFails(owner: Owner, error: string): Promise<void> {
  const { id: _, revision: __, ...fields } = (await store.place(owner, 'quillmere'))!;
  const source = { preset: null, format: 'station-day-file', url: 'https://weather.invalid/{from}', everyHours: 24 };
  await store.putPlace(owner, 'quillmere', { ...fields, sources: [source] });
  const lease = await store.leaseSource(owner, 'quillmere', 0, nowMs, nowMs + HOUR_MS);
  const end = { outcome: 'failed', nextAtMs: nowMs, notBeforeMs: null, error } as const;
  if (lease) await store.endLease(owner, 'quillmere', lease.lease, end);
}

const SVG = { accept: 'image/svg+xml' };
const questions: readonly (readonly [url: string, headers?: Record<string, string>])[] = [
  ['/v1/sowings/row'],
  ['/v1/sowings/row?precision=full'],
  ['/v1/sowings?with=judgement,toDo,forecast'],
  ['/v1/sowings?with=judgement&open=true'],
  ['/v1/beds/north/forecast?crop=lettuce&sowing=2027-05-20'],
  ['/v1/beds/north/forecast?crop=lettuce&sowing=2027-05-20', SVG],
  ['/v1/beds/north/soil-temperatures'],
  ['/v1/beds/north/sowing-windows?crop=lettuce&from=2027-06-01&to=2027-06-30'],
  ['/v1/places/quillmere'],
  ['/v1/beds/north'],
  ['/v1/plans/salad'],
];

/** Those, and the calendar at the address that the bed tells its owner. */
async function questionsOf(owner: Owner): Promise<typeof questions> {
  const { calendarUrl } = (await ask(cached, owner, 'GET', '/v1/beds/north')).json();
  return [...questions, [calendarUrl]];
}

/** An answer without what tells one request from another. */
const contentOf = ({ statusCode, headers, body }: Awaited<ReturnType<typeof ask>>) => ({
  statusCode,
  etag: headers.etag,
  type: headers['content-type'],
  body: body.replaceAll(/"issuedAt":"[^"]*"|"instance":"[^"]*"/g, ''),
});

beforeAll(async () => {
  store = await openStore(`sqlite:${join(folder, 'data.db')}`);
  cached = await appOver(store);
});
afterAll(async () => {
  await cached.close();
  await pool.close();
  await store.close();
  await rm(folder, { recursive: true });
});

describe('whatever changes, and whoever asks', () => {
  test('a cached answer is the one that would be worked out now', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.constantFrom(...OWNERS), changes), { minLength: 3, maxLength: 5 }),
        async (steps) => {
          nowMs = NOON;
          for (const owner of OWNERS) {
            await change(owner, 'DELETE', '/v1/places/quillmere?with=beds');
            await change(owner, 'DELETE', '/v1/beds/north?with=sowings');
            await change(owner, 'DELETE', '/v1/places/quillmere?with=beds');
            await keepGarden(owner);
            for (const [url, headers] of await questionsOf(owner)) {
              expect((await ask(cached, owner, 'GET', url, { headers })).statusCode, url).toBe(200);
            }
          }
          for (const [owner, step] of steps) {
            const asked = await questionsOf(owner);
            // Questions are under way while the change is made.
            await Promise.all([
              ...asked.map(([url, headers]) => ask(cached, owner, 'GET', url, { headers })),
              step(owner),
            ]);
            await compared();
          }
        },
      ),
      { numRuns: 2 },
    );
  }, 300_000);
});

async function compared(): Promise<void> {
  // A store of another identity has no series cached, and a new app no answers.
  const fresh = await appOver({ ...store });
  for (const owner of OWNERS) {
    for (const [url, headers] of await questionsOf(owner)) {
      const first = await ask(cached, owner, 'GET', url, { headers });
      const again = await ask(cached, owner, 'GET', url, { headers });
      const now = await ask(fresh, owner, 'GET', url, { headers });
      expect(contentOf(first), `${owner} ${url}`).toEqual(contentOf(now));
      expect(contentOf(again), `${owner} ${url}`).toEqual(contentOf(now));
      if (now.statusCode !== 200) continue;
      const known = { ...headers, 'if-none-match': String(now.headers.etag) };
      expect((await ask(cached, owner, 'GET', url, { headers: known })).statusCode).toBe(304);
    }
  }
  await fresh.close();
}
