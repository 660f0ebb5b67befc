import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { zoneNamed } from '../../src/basics/calendar.js';
import { daysOf } from '../../src/readings/days.js';
import { longestJoinedMs } from '../../src/readings/step.js';
import { openDatabase, openStore } from '../../src/storage/open-store.js';
import { BATCH, batch, valueAt } from './batches.js';
import { type EmptyDatabase, emptyPostgres, emptySqlite, postgresServer } from './databases.js';
import { northBed, probe, quillmere } from './make.js';

const KILLS = Number(process.env.KILLS ?? 5);
const LONGEST_MS = 400;

/** Starts a writer, kills it some time after its first acknowledgement, and gives the last batch that it said was kept. */
async function writeAndKill(url: string, from: number, afterMs: number): Promise<number> {
  const writer = spawn(
    process.execPath,
    ['--import', 'tsx', new URL('writer.ts', import.meta.url).pathname, url, 'mine', String(from)],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const closed = once(writer, 'close');
  let acknowledged = from - 1;
  const lines = createInterface({ input: writer.stdout });
  const first = once(lines, 'line');
  lines.on('line', (line) => {
    acknowledged = Number(line);
  });
  await Promise.race([first, closed]);
  await setTimeout(afterMs);
  writer.kill('SIGKILL');
  const [, signal] = await closed;
  expect(signal).toBe('SIGKILL');
  return acknowledged;
}

function killed(kind: string, emptyDatabase: () => Promise<EmptyDatabase>): void {
  // Beside one another: most of the time goes by in starting the next process.
  test.concurrent(`${KILLS} times at any moment, a service over ${kind} loses nothing acknowledged and keeps no half`, async () => {
    const { url, remove } = await emptyDatabase();
    const setUp = await openStore(url);
    await setUp.putPlace('mine', 'quillmere', quillmere);
    await setUp.putBed('mine', 'north', northBed);
    await setUp.close();
    let next = 0;
    for (let kill = 0; kill < KILLS; kill++) {
      const acknowledged = await writeAndKill(url, next, Math.random() * LONGEST_MS);
      const store = await openStore(url);
      // A server may still be busy with what the killed one asked last; whoever writes next waits for it.
      await store.putBed('mine', 'north', { ...northBed, shadePercent: kill });
      const { atMs, valueC, basis } = await store.readings('mine', 'north', probe);
      expect(atMs.length % BATCH).toBe(0);
      const kept = atMs.length / BATCH;
      expect(kept).toBeGreaterThan(acknowledged);
      expect(kept).toBeLessThanOrEqual(acknowledged + 2);
      const startMs = batch(0).atMs[0]!;
      expect(atMs.every((at, i) => at === startMs + i * 60_000)).toBe(true);
      expect(valueC.every((value, i) => value === valueAt(i))).toBe(true);
      const { days } = daysOf({ atMs, valueC, basis }, zoneNamed(quillmere.timeZone), longestJoinedMs(60_000));
      expect(await store.readingDays('mine', 'north', probe)).toEqual(days);
      await store.close();
      next = kept;
    }
    if (url.startsWith('sqlite:')) {
      const raw = await openDatabase(url);
      expect(await raw.all('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }]);
      expect(await raw.all('PRAGMA foreign_key_check')).toEqual([]);
      await raw.close();
    }
    await remove();
  });
}

describe('killed without warning', () => {
  killed('SQLite', emptySqlite);
  if (postgresServer) killed('PostgreSQL', () => emptyPostgres(postgresServer!));
  else console.log('skipped: PostgreSQL is killed where TEST_DATABASE_URL says on which server');
});
