import { rm } from 'node:fs/promises';
import { setTimeout as wait } from 'node:timers/promises';
import Libsql from 'libsql';
import { afterEach, describe, expect, test } from 'vitest';
import { openStore } from '../../src/storage/open-store.js';
import { emptySqlite } from '../storage/databases.js';
import { askerOf, startApp } from './helper.js';

const ending: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ending.splice(0).reverse()) await end();
});

/** A service over a file, and what its metrics say. */
async function start() {
  const database = await emptySqlite();
  ending.push(database.remove);
  const store = await openStore(database.url);
  ending.push(() => store.close());
  const app = await startApp({ store });
  ending.push(() => app.close());
  const lines = async (): Promise<string[]> => (await app.inject('/metrics')).body.split('\n');
  return { app, lines, path: database.url.replace('sqlite:', '') };
}

describe('the metrics of a service', () => {
  test('tell how its own caches do', async () => {
    const { app, lines } = await start();
    await app.inject('/v1/crops/lettuce');
    await app.inject('/v1/crops/lettuce');
    const ask = askerOf(app);
    await ask('PUT', '/v1/places/quillmere', {
      name: 'Quillmere',
      latitude: 44,
      longitude: -30,
      timeZone: 'Etc/GMT+2',
    });
    await ask('GET', '/v1/places/quillmere/sowing-windows?crop=lettuce');
    expect(await lines()).toEqual(
      expect.arrayContaining([
        'forecaster_cache_hits_total{cache="answers"} 1',
        'forecaster_cache_entries{cache="answers"} 1',
        'forecaster_cache_misses_total{cache="series"} 1',
      ]),
    );
  });

  test('come soon though the database is stuck, without what only it can tell', async () => {
    const { lines, path } = await start();
    const holder = new Libsql(path);
    holder.exec('BEGIN IMMEDIATE');
    // What was known of it a moment ago is not asked again.
    await wait(2500);
    const askedMs = performance.now();
    const told = await lines();
    const tookMs = performance.now() - askedMs;
    holder.exec('ROLLBACK');
    holder.close();
    expect(told.filter((line) => line.includes('writes_failing'))).toEqual([]);
    expect(told).toContain('forecaster_messages_waiting 0');
    expect(tookMs).toBeLessThan(5000);
    await expect.poll(lines, { timeout: 10_000 }).toContain('forecaster_database_writes_failing 0');
  });

  test('say when writes fail', async () => {
    const { lines, path } = await start();
    expect(await lines()).toContain('forecaster_database_writes_failing 0');
    await rm(path);
    await expect.poll(lines, { timeout: 10_000 }).toContain('forecaster_database_writes_failing 1');
  });
});
