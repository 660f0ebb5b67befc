import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';

// The built code is measured, as it ships. DIST names another build to set beside it.
const dist = process.env.DIST ?? new URL('../../dist/', import.meta.url).href;
const built = (file: string): string => new URL(file, dist).href;
const { buildApp } = (await import(built('http/app.js'))) as typeof import('../../src/http/app.js');
const { servePage } = (await import(built('page/serve.js'))) as typeof import('../../src/page/serve.js');
const { openStore } = (await import(
  built('storage/open-store.js')
)) as typeof import('../../src/storage/open-store.js');
const season = (await import(built('demo/season.js'))) as typeof import('../../src/demo/season.js');

/** Quillmere with fifteen years of air, two beds, one of them with a probe, and eight sowings, two of them counted. */
async function keepGarden(app: FastifyInstance): Promise<void> {
  const put = async (method: 'PUT' | 'POST', url: string, payload: object): Promise<void> => {
    const { statusCode, body } = await app.inject({ method, url, payload });
    if (statusCode >= 300) throw new Error(`${method} ${url}: ${body}`);
  };
  await put('PUT', '/v1/places/quillmere', season.place);
  await put('POST', '/v1/places/quillmere/air', { medium: 'air', unit: 'C', daily: season.pastAir() });
  const coming = { medium: 'air', unit: 'C', origin: 'forecast', daily: season.comingDays };
  await put('PUT', '/v1/places/quillmere/coming-days', coming);
  for (const [id, bed] of Object.entries(season.beds))
    await put('PUT', `/v1/beds/${id}`, { place: 'quillmere', ...bed });
  await put('POST', '/v1/beds/north/readings', {
    medium: 'soil',
    probeDepthCm: season.probeDepthCm,
    unit: 'C',
    readings: season.northReadings(),
  });
  const [bed] = Object.keys(season.beds);
  const crops = ['lettuce', 'carrot', 'onion', 'beet', 'radish', 'spinach', 'parsley', 'turnip'];
  for (const [i, crop] of crops.entries()) {
    await put('PUT', `/v1/sowings/row-${i}`, {
      bed,
      crop,
      date: `2027-07-${String(10 + i).padStart(2, '0')}`,
      seeds: 200,
    });
  }
  await put('PUT', '/v1/sowings/row-0/counts/2027-07-20', { seedlings: 90 });
  await put('PUT', '/v1/sowings/row-2/counts/2027-07-25', { seedlings: 40 });
}

/** CPU of the whole process, threads and all, for a request [ms]: the median of rounds of so many requests. */
async function cpuMs(ask: () => Promise<void>, times: number): Promise<number> {
  const rounds: number[] = [];
  for (let round = 0; round < 5; round++) {
    const before = process.cpuUsage();
    for (let i = 0; i < times; i++) await ask();
    const { user, system } = process.cpuUsage(before);
    rounds.push((user + system) / 1000 / times);
  }
  return rounds.sort((a, b) => a - b)[2]!;
}

const folder = await mkdtemp(join(tmpdir(), 'kept-'));
const store = await openStore(`sqlite:${join(folder, 'data.db')}`);
const app = await buildApp({
  version: 'bench',
  clock: () => new Date(season.now),
  store,
  page: servePage(new URL('page/files/', dist)),
});
await app.ready();
await keepGarden(app);

interface Line {
  readonly name: string;
  readonly url: string;
  readonly maxMs: number;
  readonly headers?: Readonly<Record<string, string>>;
  readonly isUnchanged?: true;
  readonly times?: number;
}

const tagOf = async (url: string): Promise<string> => String((await app.inject(url)).headers.etag);
const forecast = '/v1/beds/north/forecast?crop=lettuce&sowing=2027-08-03';
const windows = '/v1/beds/north/sowing-windows?crop=lettuce';
const lines: readonly Line[] = [
  { name: 'kept forecast, again', url: forecast, maxMs: 3 },
  { name: 'windows, again', url: windows, maxMs: 4 },
  { name: 'windows, again, packed', url: windows, headers: { 'accept-encoding': 'gzip, br' }, maxMs: 4 },
  { name: 'soil, again', url: '/v1/beds/north/soil-temperatures', maxMs: 3 },
  { name: 'sowing, unchanged', url: '/v1/sowings/row-0', maxMs: 3 },
  { name: 'sowing with If-None-Match', url: '/v1/sowings/row-0', maxMs: 2, isUnchanged: true },
  { name: 'page as it opens', url: '/', maxMs: 40, times: 20 },
  { name: 'page "What is growing", 8 sowings', url: '/?view=growing', maxMs: 200, times: 3 },
  { name: 'crops', url: '/v1/crops', maxMs: 0.2 },
  { name: 'openapi.json', url: '/openapi.json', maxMs: 1.5 },
];

let isOver = false;
for (const { name, url, maxMs, headers = {}, isUnchanged, times = 100 } of lines) {
  const sent = isUnchanged ? { ...headers, 'if-none-match': await tagOf(url) } : headers;
  let bytes = 0;
  const ask = async (): Promise<void> => {
    const answer = await app.inject({ url, headers: sent });
    if (answer.statusCode !== (isUnchanged ? 304 : 200)) throw new Error(`${url}: ${answer.body}`);
    bytes = answer.rawPayload.length;
  };
  await ask();
  const ms = await cpuMs(ask, process.env.DIST ? Math.min(times, 4) : times);
  isOver ||= ms > maxMs;
  process.stdout.write(
    `${name}: ${ms.toFixed(2)} ms of CPU, ${bytes} bytes (at most ${maxMs} ms): ${ms <= maxMs ? 'within' : 'OVER'}\n`,
  );
}
await app.close();
await store.close();
await rm(folder, { recursive: true });
if (isOver) process.exitCode = 1;
