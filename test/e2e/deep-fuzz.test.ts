/*
 * Asks a service of its own, with two gardens of fifteen years in it, twelve things at once: what a garden is asked in earnest,
 * and requests made from the OpenAPI document, right, damaged and broken off. FUZZ_SEED=<seed> asks the same again,
 * FUZZ_SECONDS=<seconds> for longer.
 */
import { setTimeout as wait } from 'node:timers/promises';
import fc from 'fast-check';
import { Agent, request } from 'undici';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { broken, type DocumentedOperation, operationsOf, strangeTexts, valuesOf } from '../api/openapi-arbitraries.js';
import { peakOf } from './raw-http.js';
import { addressOf, killAll, type Run, run } from './run-service.js';

const SEED = Number(process.env.FUZZ_SEED ?? Date.now() % 2 ** 31);
const FOR_MS = 1000 * Number(process.env.FUZZ_SECONDS ?? 90);
const AT_ONCE = 12;
const MAX_PEAK_MB = 500;
/** An answer that takes longer is none [ms]. */
const UNANSWERED_MS = 60_000;
const YEARS = 15;
const DAY_MS = 86_400_000;
const OWNERS = ['north-side', 'south-side'];

const keyOf = (owner: string): string => `plain-key-of-${owner}`;
const dateOn = (daysAgo: number): string => new Date(Date.now() - daysAgo * DAY_MS).toISOString().slice(0, 10);

interface Sent {
  readonly method: DocumentedOperation['method'];
  readonly path: string;
  readonly owner: string;
  readonly type?: string;
  readonly body?: string;
  /** Broken off after so long [ms]. */
  readonly abortMs: number | null;
}

let service: Run;
let address: string;
let document: Parameters<typeof operationsOf>[0];
// One connection for each request that is under way: requests behind one another on a connection wait.
const dispatcher = new Agent({ connections: AT_ONCE, headersTimeout: UNANSWERED_MS, bodyTimeout: UNANSWERED_MS });

const send = ({ method, path, owner, type, body }: Sent, signal?: AbortSignal) =>
  request(`${address}${path}`, {
    method,
    dispatcher,
    headers: { authorization: `Bearer ${keyOf(owner)}`, ...(type ? { 'content-type': type } : {}) },
    ...(body === undefined ? {} : { body }),
    ...(signal ? { signal } : {}),
  });

const CROPS = ['lettuce', 'carrot', 'onion', 'tomato', 'spinach', 'pea'];

/** Fifteen years of air, two beds, one of them with a probe, and sowings, one of them counted. */
async function keepGarden(owner: string): Promise<void> {
  const keep = async (method: Sent['method'], path: string, value: unknown): Promise<void> => {
    const answer = await send({
      method,
      path,
      owner,
      type: 'application/json',
      body: JSON.stringify(value),
      abortMs: null,
    });
    const text = await answer.body.text();
    if (answer.statusCode >= 300) throw new Error(`${method} ${path} was refused: ${text}`);
  };
  const daily = Array.from({ length: YEARS * 365 }, (_, i) => {
    const day = YEARS * 365 - i;
    const date = dateOn(day);
    const season = Math.cos((2 * Math.PI * (Date.parse(date) / DAY_MS - 25)) / 365.25);
    const mean = 11 - 9 * season + 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 1.9);
    return { date, min: Math.round(10 * (mean - 4.5)) / 10, max: Math.round(10 * (mean + 4.5)) / 10 };
  });
  await keep('PUT', '/v1/places/quillmere', { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' });
  await keep('POST', '/v1/places/quillmere/air', { medium: 'air', daily });
  for (const [id, kind] of [
    ['north', 'raised-bed'],
    ['south', 'open-ground'],
  ] as const) {
    await keep('PUT', `/v1/beds/${id}`, { place: 'quillmere', name: id, kind, moisture: 'moist' });
    for (const [nth, crop] of CROPS.slice(0, 4).entries()) {
      await keep('PUT', `/v1/sowings/${id}-${crop}`, { bed: id, crop, date: dateOn(25 - 5 * nth), seeds: 200 });
    }
  }
  const readings = Array.from({ length: 24 * 30 }, (_, hour) => ({
    at: new Date(Date.now() - (24 * 30 - hour) * 3_600_000).toISOString(),
    value: Math.round(10 * (12 + 4 * Math.sin((2 * Math.PI * hour) / 24))) / 10,
  }));
  await keep('POST', '/v1/beds/north/readings', { medium: 'soil', probeDepthCm: 5, readings });
  await keep('PUT', `/v1/sowings/north-lettuce/counts/${dateOn(10)}`, { seedlings: 20 });
}

/** What is asked of a garden in earnest: by links, with a page, and by the dozen. */
const links: fc.Arbitrary<string> = fc
  .record({
    bed: fc.constantFrom('north', 'south'),
    crop: fc.constantFrom(...CROPS),
    day: fc.integer({ min: -60, max: 10 }),
    days: fc.integer({ min: 1, max: 365 }),
    which: fc.nat({ max: 9 }),
  })
  .map(({ bed, crop, day, days, which }) => {
    const date = dateOn(day);
    const paths = [
      `/v1/beds/${bed}/forecast?crop=${crop}&sowing=${date}`,
      `/v1/beds/${bed}/soil-temperatures?from=${dateOn(day + days)}&to=${date}`,
      `/v1/beds/${bed}/sowing-windows?crop=${crop}&from=${dateOn(0)}&to=${dateOn(-days)}`,
      `/v1/places/quillmere/sowing-windows?crop=${crop}`,
      `/v1/sowings/${bed}-${CROPS[days % 4]}`,
      '/v1/places/quillmere/frost-dates',
      `/v1/sowings?limit=${days}`,
      '/?view=growing&bed=north',
      `/?view=when&bed=${bed}&crop=${crop}`,
      `/?bed=${bed}&crop=${crop}&sowing=${date}`,
    ];
    return paths[which]!;
  });

const kept = {
  places: ['quillmere'],
  beds: ['north', 'south'],
  sowings: ['north-lettuce', 'south-carrot'],
};

/** Names in an address: what is kept is asked and told of, but changed and taken away only what the fuzz itself has kept. */
function pathsOf({ path, method, operationId }: DocumentedOperation): fc.Arbitrary<string> {
  const [, kind] = /^\/v1\/(\w+)/.exec(path) ?? [];
  const there = kept[kind as keyof typeof kept] ?? ['fuzz-1'];
  const changes = method === 'PUT' || method === 'PATCH' || method === 'DELETE' || /^(add|renew)/.test(operationId);
  const own = fc.constantFrom('fuzz-1', 'fuzz-2', 'fuzz-3');
  const id = fc.oneof(
    { weight: 8, arbitrary: changes ? own : fc.constantFrom(...there) },
    { weight: 1, arbitrary: own },
    {
      weight: 1,
      arbitrary: strangeTexts.map((text) => encodeURIComponent(Buffer.from(text).toString()).replace(/^\.+$/, 'dots')),
    },
  );
  return fc.array(id, { minLength: 2, maxLength: 2 }).map((ids) => {
    const [first, second] = ids;
    return path
      .replace(/\{\w+\}/, () => first!)
      .replace(/\{\w+\}/, () => (second!.length % 2 ? dateOn(second!.length) : second!));
  });
}

/** Nobody outside is asked or told anything, whatever is made up. */
const keptInside = (value: unknown): unknown =>
  value === null || typeof value !== 'object' || Array.isArray(value)
    ? value
    : Object.fromEntries(
        Object.entries(value).map(([name, one]) => [
          name,
          name === 'url' ? 'https://127.0.0.1/' : name === 'source' ? null : one,
        ]),
      );

function requestsTo(operation: DocumentedOperation): fc.Arbitrary<Omit<Sent, 'owner' | 'abortMs'>> {
  const { method, parameters, requestBody } = operation;
  const schema = requestBody?.content['application/json']?.schema;
  const known = parameters.filter(({ in: where }) => where === 'query');
  const queries = fc
    .subarray(known, { maxLength: Math.min(4, known.length) })
    .chain((chosen) =>
      fc.tuple(
        ...chosen.map(({ name, schema: one }) => fc.tuple(fc.constant(name), valuesOf(one, document).map(String))),
      ),
    )
    .map((pairs) => (pairs.length === 0 ? '' : `?${new URLSearchParams(pairs)}`));
  const path = fc.tuple(pathsOf(operation), queries).map((parts) => parts.join(''));
  if (!schema) return fc.record({ method: fc.constant(method), path });
  const shaped = valuesOf(schema, document);
  const example = requestBody.content['application/json']?.example;
  const bodies = fc
    .oneof(
      { weight: 3, arbitrary: fc.constant(example) },
      { weight: 3, arbitrary: broken(fc.constant(example)) },
      { weight: 3, arbitrary: shaped },
      { weight: 2, arbitrary: broken(shaped) },
    )
    .map((value) => JSON.stringify(keptInside(value)) ?? '');
  return fc.record({
    method: fc.constant(method),
    path,
    type: fc.oneof(
      { weight: 12, arbitrary: fc.constant('application/json') },
      { weight: 1, arbitrary: fc.constant('text/csv') },
    ),
    body: fc.oneof({ weight: 12, arbitrary: bodies }, { weight: 1, arbitrary: strangeTexts }),
  });
}

beforeAll(async () => {
  service = run([], {
    API_KEYS: OWNERS.map((owner) => `${owner}:${keyOf(owner)}`).join(','),
    RATE_LIMIT: '0',
    LOG_LEVEL: 'info',
  });
  address = await addressOf(service);
  document = (await (await request(`${address}/openapi.json`)).body.json()) as typeof document;
  await Promise.all(OWNERS.map(keepGarden));
}, 180_000);
afterAll(async () => {
  await dispatcher.destroy();
  killAll();
});

describe(`twelve at once, for ${FOR_MS / 1000} s, with the seed ${SEED}`, () => {
  const tally = { answered: 0, good: 0, busy: 0, aborted: 0, slowestMs: 0, slowest: '' };
  const faults: string[] = [];

  it('are each answered, by no fault of the service', { timeout: FOR_MS + 2 * UNANSWERED_MS }, async () => {
    console.log(`fuzz seed ${SEED}`);
    const made = operationsOf(document).map(requestsTo);
    const requests = fc.record({
      sent: fc.oneof(
        { weight: 2, arbitrary: links.map((path) => ({ method: 'GET' as const, path })) },
        { weight: 5, arbitrary: fc.oneof(...made) },
      ),
      owner: fc.constantFrom(...OWNERS),
      abortMs: fc.option(fc.integer({ min: 0, max: 400 }), { freq: 7 }),
    });
    const endMs = Date.now() + FOR_MS;
    let seed = SEED;
    let queue: Sent[] = [];
    const next = (): Sent => {
      if (queue.length === 0) {
        queue = fc
          .sample(requests, { numRuns: 200, seed: seed++ })
          .map(({ sent, owner, abortMs }) => ({ ...sent, owner, abortMs }));
      }
      return queue.pop()!;
    };
    const ask = async (): Promise<void> => {
      while (Date.now() < endMs && faults.length < 20) await tell(next());
    };
    await Promise.all(Array.from({ length: AT_ONCE }, ask));
    console.log(`fuzz: ${JSON.stringify(tally)}, peak ${Math.round(peakOf(service.child.pid!))} MB`);
    expect(faults).toEqual([]);
    expect(tally.answered).toBeGreaterThan(200);
    expect(tally.good / tally.answered).toBeGreaterThan(0.2);
  });

  async function tell(sent: Sent): Promise<void> {
    const shown = JSON.stringify(sent).slice(0, 1500);
    const abort = new AbortController();
    const aborting = sent.abortMs === null ? undefined : setTimeout(() => abort.abort(), sent.abortMs);
    const startMs = Date.now();
    try {
      const answer = await send(sent, abort.signal);
      const text = await answer.body.text();
      const { statusCode, headers } = answer;
      tally.answered++;
      if (statusCode < 400) tally.good++;
      if (statusCode === 503 && headers['retry-after'] !== undefined) {
        tally.busy++;
        // As it is told to, but not for as long: others go on meanwhile.
        await wait(500);
      } else if (statusCode >= 500) faults.push(`${statusCode} ${text.slice(0, 300)} to ${shown}`);
      const tookMs = Date.now() - startMs;
      if (tookMs > tally.slowestMs)
        Object.assign(tally, { slowestMs: tookMs, slowest: `${sent.method} ${sent.path}`.slice(0, 100) });
    } catch (error) {
      if (abort.signal.aborted) tally.aborted++;
      else faults.push(`${error} after ${Date.now() - startMs} ms to ${shown}`);
    } finally {
      clearTimeout(aborting);
    }
  }

  it('leave it alive and well, its memory within bounds', async () => {
    expect((await request(`${address}/readyz`)).statusCode).toBe(200);
    expect(service.child.exitCode).toBeNull();
    expect(peakOf(service.child.pid!)).toBeLessThan(MAX_PEAK_MB);
  });
});
