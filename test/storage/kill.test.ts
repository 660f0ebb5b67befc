import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout } from 'node:timers/promises';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { zoneNamed } from '../../src/basics/calendar.js';
import type { Store } from '../../src/garden/store/store.js';
import { daysOf } from '../../src/readings/daily/days.js';
import { longestJoinedMs } from '../../src/readings/time/step.js';
import type { Database } from '../../src/storage/database.js';
import { openDatabase, openStore } from '../../src/storage/open-store.js';
import { BATCH, batch, valueAt } from './batches.js';
import { type EmptyDatabase, emptyPostgres, emptySqlite, postgresServer } from './databases.js';
import { northBed, probe, quillmere } from './make.js';
import { airDay, type Line, type Start } from './writer.js';

const KILLS = Number(process.env.KILLS ?? 5);
/** A kill comes after some of so many lines, however slow the machine is, and then at any moment [ms]. */
const MAX_LINES = 25;
const LONGEST_MS = 50;
const OWNER = 'mine';
const source = { preset: null, format: 'station-day-file', url: 'https://weather.example/{from}', everyHours: 6 };
const shed = { url: 'https://shed.example/alerts', events: ['frost'], beds: null, crops: null } as const;

// Bundled once: a writer then starts in a tenth of the time, and most of a test is starting them.
let folder: string;
let program: string;
beforeAll(async () => {
  const cache = new URL('../../node_modules/.cache/', import.meta.url).pathname;
  await mkdir(cache, { recursive: true });
  folder = await mkdtemp(join(cache, 'writer-'));
  program = join(folder, 'writer.mjs');
  const entry = new URL('writer.ts', import.meta.url).pathname;
  await build({
    entryPoints: [entry],
    outfile: program,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
  });
});
afterAll(() => rm(folder, { recursive: true }));

/** Starts a writer, kills it some time after some line, and gives all its lines. */
async function writeAndKill(start: Start): Promise<Line[]> {
  const writer = spawn(process.execPath, [program, JSON.stringify(start)], { stdio: ['ignore', 'pipe', 'inherit'] });
  const closed = once(writer, 'close');
  const said: Line[] = [];
  const enough = Math.ceil(Math.random() * MAX_LINES);
  for await (const line of createInterface({ input: writer.stdout })) {
    // The last may have been cut off by the kill.
    if (line.endsWith(']')) said.push(JSON.parse(line) as Line);
    if (said.length === enough) void setTimeout(Math.random() * LONGEST_MS).then(() => writer.kill('SIGKILL'));
  }
  const [, signal] = await closed;
  expect(signal).toBe('SIGKILL');
  return said;
}

/** How many are kept of what is kept one after another: all that were acknowledged, and at most one more. */
function expectKept(kept: number, before: number, said: readonly Line[], what: 'batch' | 'told' | 'day'): void {
  const acknowledged = said.findLast(([kind]) => kind === what)?.[1] as number | undefined;
  const sure = acknowledged === undefined ? before : acknowledged + 1;
  expect([sure, sure + 1], what).toContain(kept);
}

/** What receivers have got so far. */
interface Received {
  readonly idOf: Map<string, string>;
  readonly delivered: Set<string>;
}

/** Takes in what a writer sent: a message comes again only until it is kept that it was delivered, and as the same. */
function receive({ idOf, delivered }: Received, said: readonly Line[]): void {
  for (const line of said) {
    if (line[0] === 'sent') {
      const [, id, body] = line;
      expect(delivered, `${body} is told again`).not.toContain(id);
      expect(idOf.get(body) ?? id, `${body} is told twice under another id`).toBe(id);
      idOf.set(body, id);
    } else if (line[0] === 'delivered') delivered.add(line[1]);
  }
}

/** Every message told waits or was received; none is lost, and none waits that is known to have been delivered. */
async function expectMessages(raw: Database, told: number, { idOf, delivered }: Received): Promise<void> {
  const rows = await raw.all<{ id: string; body: string }>('select id, body from messages where owner = $1', [OWNER]);
  const waiting = new Map(rows.map(({ id, body }) => [body, id]));
  expect(waiting.size).toBe(rows.length);
  for (let n = 0; n < told; n++) {
    const body = `message ${n}`;
    const id = waiting.get(body);
    expect(id ?? idOf.get(body), `${body} is lost`).toBeDefined();
    if (id === undefined) continue;
    expect(idOf.get(body) ?? id).toBe(id);
    expect(delivered).not.toContain(id);
  }
  expect(idOf.size + rows.length).toBeGreaterThanOrEqual(told);
}

const toldOf = async (raw: Database): Promise<number> => {
  const [last] = await raw.all<{ mark: string }>("select mark from tellings where owner = $1 and subject = 'north'", [
    OWNER,
  ]);
  return last ? Number(last.mark) + 1 : 0;
};

/** The readings from a batch on are whole and in order, and their days are theirs. */
async function expectReadings(store: Store, first: number, batches: number): Promise<void> {
  const startMs = batch(first).atMs[0]!;
  const { atMs, valueC, basis } = await store.readings(OWNER, 'north', probe, { fromMs: startMs });
  expect(atMs).toHaveLength((batches - first) * BATCH);
  expect(atMs.every((at, i) => at === startMs + i * 60_000)).toBe(true);
  expect(valueC.every((value, i) => value === valueAt(first * BATCH + i))).toBe(true);
  if (first > 0) return;
  const { days } = daysOf({ atMs, valueC, basis }, zoneNamed(quillmere.timeZone), longestJoinedMs(60_000));
  expect(await store.readingDays(OWNER, 'north', probe)).toEqual(days);
}

function killed(kind: string, emptyDatabase: () => Promise<EmptyDatabase>): void {
  // Beside one another: most of the time goes by in starting the next process.
  test.concurrent(`${KILLS} times at any moment, a service over ${kind} loses nothing acknowledged, tells nothing twice and keeps no half`, {
    timeout: 120_000 + KILLS * 10_000,
  }, async () => {
    const { url, remove } = await emptyDatabase();
    const setUp = await openStore(url);
    await setUp.putPlace(OWNER, 'quillmere', { ...quillmere, sources: [source] });
    await setUp.putBed(OWNER, 'north', northBed);
    await setUp.putSubscription(OWNER, 'shed', shed, 0);
    await setUp.close();
    const received: Received = { idOf: new Map(), delivered: new Set() };
    let [batches, told, days] = [0, 0, 0];
    const raw = await openDatabase(url);
    const store = await openStore(url);
    for (let kill = 0; kill < KILLS; kill++) {
      const said = await writeAndKill({ url, owner: OWNER, batches, days });
      // A server may still be busy with what the killed one asked last; whoever writes next waits for it.
      await store.putBed(OWNER, 'north', { ...northBed, shadePercent: kill % 90 });

      const before = batches;
      batches = ((await store.series(OWNER, 'north'))[0]?.readings ?? 0) / BATCH;
      expectKept(batches, before, said, 'batch');
      await expectReadings(store, Math.max(0, before - 1), batches);

      const toldBefore = told;
      told = await toldOf(raw);
      expectKept(told, toldBefore, said, 'told');
      receive(received, said);
      await expectMessages(raw, told, received);

      const air = await store.air(OWNER, 'quillmere');
      expectKept(air.length, days, said, 'day');
      days = air.length;
      expect(air).toEqual(Array.from({ length: days }, (_, n) => airDay(n)));
    }
    await expectReadings(store, 0, batches);
    expect(Math.min(batches, told, days)).toBeGreaterThan(0);
    // What still waits is delivered, once each.
    for (let id = ''; ; ) {
      const delivery = await store.leaseDelivery(OWNER, 'shed', Date.now() + 1000, Date.now() + 1000);
      if (!delivery) break;
      expect(delivery.messageId).not.toBe(id);
      id = delivery.messageId;
      receive(received, [['sent', id, delivery.body]]);
      await store.endDelivery(OWNER, 'shed', delivery, { outcome: 'delivered', atMs: 0 });
    }
    expect(received.idOf.size).toBe(told);
    expect(new Set(received.idOf.values()).size).toBe(told);
    if (url.startsWith('sqlite:')) {
      expect(await raw.all('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }]);
      expect(await raw.all('PRAGMA foreign_key_check')).toEqual([]);
    }
    console.log(`${kind}: ${KILLS} kills; ${batches} batches, ${told} messages and ${days} days of air kept`);
    await store.close();
    await raw.close();
    await remove();
  });
}

describe('killed without warning', () => {
  killed('SQLite', emptySqlite);
  if (postgresServer) killed('PostgreSQL', () => emptyPostgres(postgresServer!));
  else console.log('skipped: PostgreSQL is killed where TEST_DATABASE_URL says on which server');
});
