import { randomUUID } from 'node:crypto';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Libsql from 'libsql';
import pg from 'pg';
import type { PlaceFields, Store } from '../../src/garden/store/store.js';
import type { Readings } from '../../src/readings/readings.js';

// What is measured is what ships: the built code.
const { openStore } = (await import(
  new URL('../../dist/storage/open-store.js', import.meta.url).href
)) as typeof import('../../src/storage/open-store.js');

const ROUNDS = 3;
const DAYS = 365;
const MINUTES = 1440;
const startMs = Date.parse('2026-01-01T02:00Z');
const probe = { medium: 'soil', probeDepthCm: 5 } as const;
const quillmere: PlaceFields = {
  name: 'Quillmere Allotment Society',
  latitude: 44,
  longitude: -30,
  elevationM: null,
  timeZone: 'Etc/GMT+2',
  annualRainMm: null,
  lastFrostAround: null,
  firstFrostAround: null,
  sources: [],
};

/** A day of one-minute readings. */
const days: Readings[] = Array.from({ length: DAYS }, (_, day) => ({
  atMs: Float64Array.from({ length: MINUTES }, (_, i) => startMs + (day * MINUTES + i) * 60_000),
  valueC: Float64Array.from({ length: MINUTES }, (_, i) => Math.round(150 + 50 * Math.sin(i / 229) + (day % 9)) / 10),
  basis: new Uint8Array(MINUTES),
}));

async function ms(work: () => unknown): Promise<number> {
  const started = performance.now();
  await work();
  return performance.now() - started;
}

/** The yardstick: one row a reading, inserted by a prepared statement, a transaction a day, as safe as ours. */
function rawSqlite(path: string): void {
  const raw = new Libsql(path);
  raw.exec('PRAGMA journal_mode = WAL');
  raw.exec('PRAGMA synchronous = FULL');
  raw.exec('create table readings (bed integer, at integer, value real, primary key (bed, at)) without rowid');
  const insert = raw.prepare('insert into readings values (?, ?, ?)');
  for (const { atMs, valueC } of days) {
    raw.exec('BEGIN IMMEDIATE');
    for (let i = 0; i < MINUTES; i++) insert.run([1, atMs[i]!, valueC[i]!]);
    raw.exec('COMMIT');
  }
  raw.close();
}

async function rawPostgres(url: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(
    'create table if not exists raw_readings (bed integer, at bigint, value float8, primary key (bed, at))',
  );
  await client.query('truncate raw_readings');
  const text = 'insert into raw_readings select 1, * from unnest($1::bigint[], $2::float8[])';
  for (const { atMs, valueC } of days) {
    await client.query('begin');
    await client.query({ name: 'day', text, values: [[...atMs], [...valueC]] });
    await client.query('commit');
  }
  await client.query('drop table raw_readings');
  await client.end();
}

/** A year put a day at a time; then read back as days and as readings [ms]. */
async function ours(store: Store): Promise<{ put: number; asDays: number; asReadings: number }> {
  const owner = randomUUID();
  await store.putPlace(owner, 'quillmere', quillmere);
  const bed = { place: 'quillmere', name: 'North bed', kind: 'open-ground', cover: 'bare', moisture: 'rain' } as const;
  await store.putBed(owner, 'north', { ...bed, shadePercent: 0, roomC: null });
  const put = await ms(async () => {
    for (const day of days) await store.putReadings(owner, 'north', probe, day);
  });
  const asDays = await ms(async () => {
    const kept = await store.readingDays(owner, 'north', probe);
    if (kept.length !== DAYS || !kept.every(({ complete }) => complete)) throw new Error('days are missing');
  });
  const asReadings = await ms(async () => {
    const { atMs } = await store.readings(owner, 'north', probe);
    if (atMs.length !== DAYS * MINUTES) throw new Error('readings are missing');
  });
  await store.deletePlace(owner, 'quillmere', { withBeds: true });
  return { put, asDays, asReadings };
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;
const MOST_TIMES_RAW = 2;
const MOST_MS_AS_DAYS = 10;
let within = true;

async function compare(kind: string, url: string, raw: () => unknown): Promise<void> {
  const store = await openStore(url);
  const rounds: ({ raw: number } & Awaited<ReturnType<typeof ours>>)[] = [];
  for (let round = 0; round < ROUNDS; round++) rounds.push({ raw: await ms(raw), ...(await ours(store)) });
  await store.close();
  const of = (name: keyof (typeof rounds)[number]): number => median(rounds.map((one) => one[name]));
  const isWithin = of('put') <= MOST_TIMES_RAW * of('raw') && of('asDays') <= MOST_MS_AS_DAYS;
  within &&= isWithin;
  process.stdout.write(
    `a year of one-minute readings in ${kind}, a day at a time: ${of('put').toFixed(0)} ms, raw inserts ${of('raw').toFixed(0)} ms ` +
      `(at most ${MOST_TIMES_RAW} times); read back as days ${of('asDays').toFixed(1)} ms (at most ${MOST_MS_AS_DAYS}), ` +
      `as readings ${of('asReadings').toFixed(0)} ms: ${isWithin ? 'within' : 'OVER'}\n`,
  );
}

const folder = await mkdtemp(join(tmpdir(), 'bench-'));
let nth = 0;
await compare('SQLite', `sqlite:${folder}/data.db`, () => rawSqlite(`${folder}/raw-${nth++}.db`));
const { size } = await stat(`${folder}/data.db`);
process.stdout.write(`the file of them has ${(size / 1e6).toFixed(1)} MB\n`);
await rm(folder, { recursive: true });
const server = process.env.TEST_DATABASE_URL;
if (server) await compare('PostgreSQL', server, () => rawPostgres(server));
else process.stdout.write('PostgreSQL: skipped, TEST_DATABASE_URL names none\n');
if (!within) process.exitCode = 1;
