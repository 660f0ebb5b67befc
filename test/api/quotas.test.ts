import { afterAll, describe, expect, test } from 'vitest';
import { DEFAULT_QUOTAS, type Quotas } from '../../src/garden/store/quotas.js';
import {
  exampleBed,
  exampleBedReadings,
  exampleLot,
  examplePastAir,
  examplePlan,
  exampleSowing,
  exampleSubscription,
} from '../../src/http/question/examples.js';
import { openStore } from '../../src/storage/open-store.js';
import { askerOf, keepQuillmere, post, quillmere, startApp } from './helper.js';

const place = { name: 'Quillmere Allotment Society', ...quillmere };

/** A service that keeps as much as is told. */
async function startWith(limits: Partial<Quotas>) {
  const quotas = { ...DEFAULT_QUOTAS, ...limits };
  const store = await openStore('sqlite::memory:', { quotas });
  const app = await startApp({ store, quotas });
  closing.push(async () => {
    await app.close();
    await store.close();
  });
  return { app, ask: askerOf(app) };
}
const closing: (() => Promise<void>)[] = [];
afterAll(async () => {
  for (const close of closing) await close();
});

// `keepQuillmere` keeps two places and one of each other kind: three more are let in.
const full = await startWith({ places: 5, beds: 4, lots: 4, sowings: 4, plans: 4, subscriptions: 4, thermometers: 3 });
await keepQuillmere(full.app);

const usedOf = async (ask: ReturnType<typeof askerOf>): Promise<Record<string, { used: number; limit: number }>> =>
  (await ask('GET', '/v1/usage')).json().quotas;

describe('a full quota', () => {
  const { ask } = full;
  test.each([
    ['places', 5, (id: string) => [`/v1/places/${id}`, place]],
    ['beds', 4, (id: string) => [`/v1/beds/${id}`, exampleBed]],
    ['lots', 4, (id: string) => [`/v1/lots/${id}`, exampleLot]],
    ['sowings', 4, (id: string) => [`/v1/sowings/${id}`, exampleSowing]],
    ['plans', 4, (id: string) => [`/v1/plans/${id}`, { ...examplePlan, crop: 'onion' }]],
    ['subscriptions', 4, (id: string) => [`/v1/subscriptions/${id}`, exampleSubscription]],
  ] as const)(
    'of %s lets no more in, however many come at once, and leaves the rest alone',
    async (quota, limit, of) => {
      const ids = Array.from({ length: 8 }, (_, i) => `more-${i}`);
      const answers = await Promise.all(
        ids.map((id) => {
          const [url, body] = of(id);
          return ask('PUT', url as string, body as object);
        }),
      );
      expect(answers.filter(({ statusCode }) => statusCode === 201)).toHaveLength(3);
      const refused = answers.filter(({ statusCode }) => statusCode !== 201).map((answer) => answer.json());
      for (const problem of refused) {
        expect(problem).toMatchObject({ status: 409, code: 'quota-full', quota, limit, used: limit });
      }
      expect((await usedOf(ask))[quota]).toEqual({ used: limit, limit });
      // What is there can be put again, and makes room when it goes.
      const [there, body] = of(ids[answers.findIndex(({ statusCode }) => statusCode === 201)]!);
      expect((await ask('PUT', there as string, body as object)).statusCode).toBe(200);
      expect((await ask('DELETE', there as string)).statusCode).toBe(204);
      expect((await ask('PUT', of('last')[0] as string, body as object)).statusCode).toBe(201);
      expect((await ask('DELETE', of('last')[0] as string)).statusCode).toBe(204);
      for (const id of ids) await ask('DELETE', of(id)[0] as string);
    },
  );

  test('of thermometers is that of one bed', async () => {
    await ask('PUT', '/v1/beds/south', exampleBed);
    const readings = [
      { at: '2027-05-01T12:00:00-02:00', value: 12 },
      { at: '2027-05-01T13:00:00-02:00', value: 13 },
    ];
    const posted = (bed: string, probeDepthCm: number) =>
      ask('POST', `/v1/beds/${bed}/readings`, { medium: 'soil', probeDepthCm, readings });
    const answers = await Promise.all([21, 22, 23, 24].map((depth) => posted('north', depth)));
    expect(answers.map(({ statusCode }) => statusCode).toSorted()).toEqual([200, 200, 409, 409]);
    expect(answers.find(({ statusCode }) => statusCode === 409)!.json()).toMatchObject({
      quota: 'thermometers',
      limit: 3,
      used: 3,
    });
    expect((await posted('south', 5)).statusCode).toBe(200);
    expect((await usedOf(ask)).thermometers).toEqual({ used: 3, limit: 3 });
  });

  test('of megabytes lets neither readings nor air in, and is told as the others', async () => {
    const { app, ask } = await startWith({ megabytes: 0 });
    await ask('PUT', '/v1/places/quillmere', place);
    await ask('PUT', '/v1/beds/north', exampleBed);
    const full = { status: 409, code: 'quota-full', quota: 'megabytes', limit: 0, used: 1 };
    expect((await post(app, '/v1/beds/north/readings', exampleBedReadings)).json()).toMatchObject(full);
    expect((await post(app, '/v1/places/quillmere/air', examplePastAir)).json()).toMatchObject(full);
    expect((await ask('GET', '/v1/beds/north/thermometers')).json().thermometers).toEqual([]);
    expect((await ask('DELETE', '/v1/places/quillmere?with=beds')).statusCode).toBe(204);
  });
});

describe('an upload that would go past the megabytes half-way', () => {
  test('of readings keeps nothing, and says so of a file of two months', async () => {
    const { app, ask } = await startWith({ megabytes: 1 });
    await ask('PUT', '/v1/places/quillmere', place);
    await ask('PUT', '/v1/beds/north', exampleBed);
    const before = (await ask('GET', '/v1/beds/north?as=kept')).headers.etag;
    const firstMs = Date.parse('2027-05-01T02:00:00Z');
    const rows = Array.from(
      { length: 62 * 1440 },
      (_, minute) => `${new Date(firstMs + minute * 60_000).toISOString()},${10 + (minute % 100) / 10}`,
    );
    const sent = await post(app, '/v1/beds/north/readings?unit=C&medium=soil', `time,soil\n${rows.join('\n')}\n`);
    expect(sent.json()).toMatchObject({ status: 409, quota: 'megabytes', limit: 1, used: 2 });
    expect((await ask('GET', '/v1/beds/north/thermometers')).json().thermometers).toEqual([]);
    expect((await ask('GET', '/v1/beds/north?as=kept')).headers.etag).toBe(before);
    expect((await usedOf(ask)).megabytes!.used).toBe(0);
  });

  test('of air keeps nothing', async () => {
    const { app, ask } = await startWith({ megabytes: 1 });
    await ask('PUT', '/v1/places/quillmere', place);
    // A day of air counts 34 bytes, so that a megabyte holds 29,411.
    const daily = Array.from({ length: 30_000 }, (_, day) => ({
      date: new Date(Date.UTC(1940, 0, 1 + day)).toISOString().slice(0, 10),
      min: 5,
      max: 15,
    }));
    const sent = await post(app, '/v1/places/quillmere/air', { medium: 'air', unit: 'C', daily });
    expect(sent.json()).toMatchObject({ status: 409, quota: 'megabytes', limit: 1, used: 2 });
    const kept = await ask('GET', '/v1/places/quillmere/air?limit=1');
    expect(kept.json().series.daily).toEqual([]);
  });
});

test('what is used and may be is told of every quota', async () => {
  const told = await usedOf(full.ask);
  expect(Object.keys(told)).toEqual(Object.keys(DEFAULT_QUOTAS));
  expect(told).toMatchObject({
    places: { used: 2, limit: 5 },
    lots: { used: 1, limit: 4 },
    thermometers: { used: 3, limit: 3 },
    devices: { used: 0, limit: 20 },
    megabytes: { used: expect.any(Number), limit: 1024 },
  });
});
