import { execFile } from 'node:child_process';
import { chown, mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import pg from 'pg';
import { describe, expect, test } from 'vitest';
import type { SubscriptionFields } from '../../src/garden/store/alert-store.js';
import { buildApp } from '../../src/http/app.js';
import { keyring } from '../../src/http/auth/keys.js';
import { examplePlace } from '../../src/http/question/examples.js';
import { openDatabase, openStore } from '../../src/storage/open-store.js';
import { localities } from '../api/helper.js';
import { BATCH, batch } from './batches.js';
import { emptyPostgres, postgresServer } from './databases.js';
import { freePort } from './free-port.js';
import { damaged, eventually, full, garden, smallFolder, unavailable, writeUntilRefused } from './in-trouble.js';
import { airFrom, count, date, lot, northBed, plan, probe, quillmere, sowing } from './make.js';
import { ownPostgres } from './own-postgres.js';

const run = promisify(execFile);
/** A server takes some seconds to recover, so it is killed less often than the service. */
const CRASHES = Math.ceil(Number(process.env.KILLS ?? 5) / 20);
const LONGEST_MS = 400;
const subscription: SubscriptionFields = {
  url: 'https://shed.example/alerts',
  events: ['frost'],
  beds: null,
  crops: null,
};

describe('SQLite', () => {
  test('on a full disk says so, keeps what it acknowledged, and goes on when there is room', async (context) => {
    const folder = await smallFolder(8);
    if (!folder) return context.skip('a small disk can be mounted by root alone');
    try {
      await writeFile(join(folder, 'ballast'), new Uint8Array(1_500_000));
      const store = await garden(`sqlite:${folder}/data.db`);
      await store.ready();
      const { kept, error } = await writeUntilRefused(store);
      expect(error).toMatchObject(full);
      expect(kept).toBeGreaterThan(5);
      expect((await store.readings('mine', 'north', probe)).atMs).toHaveLength(kept * BATCH);
      await expect(store.putReadings('mine', 'north', probe, batch(kept))).rejects.toMatchObject(full);
      await expect(store.ready()).rejects.toMatchObject(full);
      await rm(join(folder, 'ballast'));
      await eventually(() => store.ready());
      expect(await store.putReadings('mine', 'north', probe, batch(kept))).toMatchObject({ added: BATCH });
      await store.close();
      const again = await openStore(`sqlite:${folder}/data.db`);
      expect((await again.readings('mine', 'north', probe)).atMs).toHaveLength((kept + 1) * BATCH);
      await again.close();
    } finally {
      await run('umount', ['-l', folder]);
      await rm(folder, { recursive: true });
    }
  });

  test('that a long upload fills keeps nothing of it, and goes on with what has room', async (context) => {
    const folder = await smallFolder(7);
    if (!folder) return context.skip('a small disk can be mounted by root alone');
    const store = await garden(`sqlite:${folder}/data.db`);
    const app = await buildApp({
      version: '0',
      store,
      localities,
      clock: () => new Date('2027-06-01T12:00:00Z'),
      findOwner: keyring(new Map([['plain-key', 'mine']])),
    });
    const headers = { authorization: 'Bearer plain-key' };
    try {
      const firstMs = Date.parse('2026-01-01T02:00:00Z');
      const rows = Array.from(
        { length: 300 * 1440 },
        (_, minute) => `${new Date(firstMs + minute * 60_000).toISOString()},${((minute * 7919) % 4001) / 100}`,
      );
      const upload = await app.inject({
        method: 'POST',
        url: '/v1/beds/north/readings?unit=C&medium=soil',
        headers: { ...headers, 'content-type': 'text/csv' },
        payload: `time,soil\n${rows.join('\n')}\n`,
      });
      expect([upload.statusCode, upload.json().code]).toEqual([503, 'storage-full']);
      const { thermometers } = (await app.inject({ url: '/v1/beds/north/thermometers', headers })).json();
      expect(thermometers).toEqual([]);
      expect((await store.usage('mine')).megabytes).toBe(0);
      await eventually(() => store.ready());
      expect(await store.putReadings('mine', 'north', probe, batch(0))).toMatchObject({ added: BATCH });
    } finally {
      await app.close();
      await store.close();
      await run('umount', ['-l', folder]);
      await rm(folder, { recursive: true });
    }
  });

  test('on a full disk still deletes, one thing after another', async (context) => {
    const folder = await smallFolder(12);
    if (!folder) return context.skip('a small disk can be mounted by root alone');
    try {
      await writeFile(join(folder, 'ballast'), new Uint8Array(3_000_000));
      const store = await garden(`sqlite:${folder}/data.db`);
      for (let i = 0; i < 20; i++) await store.putBed('mine', `bed-${i}`, northBed);
      await store.putLot('mine', 'packet', lot);
      await store.putSowing('mine', 'carrots', { ...sowing, lot: 'packet' });
      await store.putCount('mine', 'carrots', count('2027-05-20', 31));
      await store.putPlan('mine', 'autumn', plan);
      await store.putSubscription('mine', 'shed', subscription, 0);
      await store.putAir('mine', 'quillmere', airFrom('2020-01-01', Array(2000).fill(20)));
      await writeUntilRefused(store);
      // Somebody else takes what is left, to the last byte.
      await run('sh', ['-c', `cat /dev/zero > ${folder}/other`]).catch(() => {});
      // There may be room in the log for some more.
      const putMore = async () => {
        for (let n = 0; n < 1000; n++) await store.putBed('mine', `more-${n}`, northBed);
      };
      await expect(putMore()).rejects.toMatchObject(full);
      const app = await buildApp({ version: '0', store, localities, clock: () => new Date() });
      const answer = await app.inject({ method: 'PUT', url: '/v1/places/second', payload: examplePlace });
      expect([answer.statusCode, answer.json().code]).toEqual([503, 'storage-full']);
      expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0);
      await app.close();
      await expect(store.ready()).rejects.toMatchObject(full);

      expect(await store.deleteAir('mine', 'quillmere', { from: date('2021-01-01') })).toBeGreaterThan(1000);
      expect(await store.deleteReadings('mine', 'north', { toMs: batch(5).atMs[0]! })).toBeGreaterThan(400);
      expect(await store.deleteCount('mine', 'carrots', date('2027-05-20'))).toBe('deleted');
      expect(await store.deleteSowing('mine', 'carrots')).toBe('deleted');
      expect(await store.deleteLot('mine', 'packet')).toBe('deleted');
      expect(await store.deletePlan('mine', 'autumn')).toBe('deleted');
      expect(await store.deleteSubscription('mine', 'shed')).toBe('deleted');
      for (let i = 0; i < 20; i++) expect(await store.deleteBed('mine', `bed-${i}`)).toBe('deleted');
      expect(await store.deletePlace('mine', 'quillmere', { withBeds: true })).toBe('deleted');

      await rm(join(folder, 'ballast'));
      await eventually(() => store.ready());
      await store.close();
      const again = await garden(`sqlite:${folder}/data.db`);
      expect(await again.usage('mine')).toMatchObject({ places: 1, beds: 1, sowings: 0, megabytes: 0 });
      await again.close();
    } finally {
      await run('umount', ['-l', folder]);
      await rm(folder, { recursive: true });
    }
  });

  test('lets owners take turns: one with many writes waiting does not hold up another', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'turns-'));
    const store = await garden(`sqlite:${folder}/data.db`);
    let done = 0;
    const many = Array.from({ length: 200 }, (_, i) =>
      store.putBed('mine', `bed-${i}`, northBed).then(() => {
        done++;
      }),
    );
    await store.putPlace('theirs', 'quillmere', quillmere);
    // Behind the one under way, and perhaps the next.
    expect(done).toBeLessThanOrEqual(3);
    await Promise.all(many);
    await store.close();
    await rm(folder, { recursive: true });
  });

  test('held by another writer is waited for', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'held-'));
    const url = `sqlite:${folder}/data.db`;
    const store = await garden(url);
    const { default: Libsql } = await import('libsql');
    const other = new Libsql(`${folder}/data.db`);
    other.exec('BEGIN IMMEDIATE');
    const put = store.putReadings('mine', 'north', probe, batch(0));
    await setTimeout(300);
    expect((await store.readings('mine', 'north', probe)).atMs).toHaveLength(0);
    other.exec('COMMIT');
    expect(await put).toMatchObject({ added: BATCH });
    other.close();
    await store.close();
    await rm(folder, { recursive: true });
  });

  test('in a file that is something else says so', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'other-'));
    await writeFile(join(folder, 'data.db'), 'Sow in March, under glass.\n'.repeat(500));
    await expect(openStore(`sqlite:${folder}/data.db`)).rejects.toMatchObject(damaged);
    await rm(folder, { recursive: true });
  });
});

describe('PostgreSQL', () => {
  test(`that crashes at any moment (${CRASHES} times) has lost nothing acknowledged, and is found again`, async (context) => {
    const server = await ownPostgres(await freePort());
    if (!server) return context.skip('PostgreSQL is not installed');
    try {
      const store = await garden(server.url);
      let next = 0;
      for (let crash = 0; crash < CRASHES; crash++) {
        const writing = writeUntilRefused(store, next);
        await setTimeout(Math.random() * LONGEST_MS);
        await server.crash();
        const { kept, error } = await writing;
        expect(error).toMatchObject(unavailable);
        await expect(store.ready()).rejects.toMatchObject(unavailable);
        await expect(store.places('mine', { limit: 9 })).rejects.toMatchObject(unavailable);
        await eventually(() => server.start());
        await eventually(() => store.ready());
        const { atMs } = await store.readings('mine', 'north', probe);
        // The last may have been kept, its acknowledgement lost.
        expect([kept * BATCH, (kept + 1) * BATCH]).toContain(atMs.length);
        next = atMs.length / BATCH;
      }
      expect(next).toBeGreaterThan(0);
      await store.close();
    } finally {
      await server.remove();
    }
  });

  test('on a full disk says so, keeps what it acknowledged, and goes on when there is room', async (context) => {
    const folder = await smallFolder(2);
    if (!folder) return context.skip('a small disk can be mounted by root alone');
    const server = await ownPostgres(await freePort());
    try {
      if (!server) return context.skip('PostgreSQL is not installed');
      await chown(folder, (await stat(server.folder)).uid, -1);
      const admin = new pg.Client({ connectionString: server.url });
      await admin.connect();
      await admin.query(`create tablespace small location '${folder}'`);
      await admin.end();
      await writeFile(join(folder, 'ballast'), new Uint8Array(600_000));
      const store = await garden(`${server.url}?options=-c%20default_tablespace%3Dsmall`);
      const { kept, error } = await writeUntilRefused(store);
      expect(error).toMatchObject({ ...full, cause: { code: '53100' } });
      await expect(store.ready()).rejects.toMatchObject(full);
      expect(kept).toBeGreaterThan(5);
      expect((await store.readings('mine', 'north', probe)).atMs).toHaveLength(kept * BATCH);
      expect(await store.deleteBed('mine', 'north')).toBe('deleted');
      await rm(join(folder, 'ballast'));
      await eventually(() => store.ready());
      await store.putBed('mine', 'north', northBed);
      expect(await store.putReadings('mine', 'north', probe, batch(kept))).toMatchObject({ added: BATCH });
      await store.close();
    } finally {
      await server?.remove();
      await run('umount', ['-l', folder]);
      await rm(folder, { recursive: true });
    }
  });

  const onServer = test.skipIf(!postgresServer);

  onServer('that drops its connections is asked again over new ones', async () => {
    const { url, remove } = await emptyPostgres(postgresServer!);
    const named = new URL(url);
    named.searchParams.set('application_name', 'dropped');
    const store = await garden(named.href);
    const admin = new pg.Client({ connectionString: postgresServer });
    await admin.connect();
    await admin.query("select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'dropped'");
    await admin.end();
    await setTimeout(200);
    await store.ready();
    expect(await store.putReadings('mine', 'north', probe, batch(0))).toMatchObject({ added: BATCH });
    await store.close();
    await remove();
  });

  onServer(
    'ends a transaction whose service has gone silent, and a wait for a lock, so that others go on',
    async () => {
      const { url, remove } = await emptyPostgres(postgresServer!);
      const store = await garden(url);
      const raw = await openDatabase(url);
      const settings = await raw.all<{ name: string; setting: string }>(
        `select name, setting from pg_settings
       where name in ('statement_timeout', 'lock_timeout', 'idle_in_transaction_session_timeout') order by name`,
      );
      const ms = Object.fromEntries(settings.map(({ name, setting }) => [name, Number(setting)]));
      // A wait for a lock ends first, so that it is told apart, and all before the service gives the server up at 60 s.
      expect(ms.lock_timeout).toBeGreaterThan(0);
      expect(ms.statement_timeout).toBeGreaterThan(ms.lock_timeout!);
      expect(ms.statement_timeout).toBeLessThan(60_000);
      expect(ms.idle_in_transaction_session_timeout).toBeLessThan(60_000);
      expect(ms.idle_in_transaction_session_timeout).toBeGreaterThan(0);

      const silent = new pg.Client({ connectionString: url });
      await silent.connect();
      await silent.query("begin; update owners set revision = revision where owner = 'mine'");
      const startedMs = performance.now();
      await expect(store.putBed('mine', 'south', northBed)).rejects.toMatchObject(unavailable);
      expect(performance.now() - startedMs).toBeLessThan(60_000);
      // Other owners do not wait.
      expect(await store.putPlace('theirs', 'quillmere', quillmere)).toMatchObject({ outcome: 'created' });
      await silent.query('rollback');
      expect(await store.putBed('mine', 'south', northBed)).toMatchObject({ outcome: 'created' });
      await silent.end();
      await raw.close();
      await store.close();
      await remove();
    },
  );

  onServer('has connections left for others while all that one owner asks waits', async () => {
    const { url, remove } = await emptyPostgres(postgresServer!);
    const store = await garden(url);
    const blocker = new pg.Client({ connectionString: url });
    await blocker.connect();
    await blocker.query("begin; update owners set revision = revision where owner = 'mine'");
    const waiting = Array.from({ length: 40 }, (_, i) => store.putBed('mine', `bed-${i}`, northBed));
    await setTimeout(500);
    expect(await store.putPlace('theirs', 'quillmere', quillmere)).toMatchObject({ outcome: 'created' });
    expect(await store.places('theirs', { limit: 9 })).toHaveLength(1);
    await store.ready();
    await blocker.query('rollback');
    for (const put of await Promise.all(waiting)) expect(put).toMatchObject({ outcome: 'created' });
    await blocker.end();
    await store.close();
    await remove();
  });

  onServer('that may only be read says so', async () => {
    const { url, remove } = await emptyPostgres(postgresServer!);
    await (await garden(url)).close();
    const readOnly = new URL(url);
    const options = readOnly.searchParams.get('options');
    readOnly.searchParams.set('options', `${options} -c default_transaction_read_only=on`);
    await expect(openStore(readOnly.href)).rejects.toMatchObject(unavailable);
    await remove();
  });
});
