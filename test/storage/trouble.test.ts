import { execFile } from 'node:child_process';
import { chown, mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import pg from 'pg';
import { describe, expect, test } from 'vitest';
import type { Store } from '../../src/garden/store.js';
import { openStore } from '../../src/storage/open-store.js';
import { BATCH, batch } from './batches.js';
import { emptyPostgres, postgresServer } from './databases.js';
import { freePort } from './free-port.js';
import { northBed, probe, quillmere } from './make.js';
import { ownPostgres } from './own-postgres.js';

const run = promisify(execFile);
/** A server takes some seconds to recover, so it is killed less often than the service. */
const CRASHES = Math.ceil(Number(process.env.KILLS ?? 5) / 5);
const LONGEST_MS = 400;
const unavailable = { name: 'StorageError', code: 'storage-unavailable' };

async function garden(url: string): Promise<Store> {
  const store = await openStore(url);
  await store.putPlace('mine', 'quillmere', quillmere);
  await store.putBed('mine', 'north', northBed);
  return store;
}

/** Batches kept, from one on, until one is refused: how many are kept then, and how the next one failed. */
async function writeUntilRefused(store: Store, from = 0): Promise<{ kept: number; error: unknown }> {
  for (let n = from; n < from + 10_000; n++) {
    try {
      await store.putReadings('mine', 'north', probe, batch(n));
    } catch (error) {
      return { kept: n, error };
    }
  }
  throw new Error('nothing was refused');
}

/** Waits until work succeeds. */
async function eventually(work: () => Promise<unknown>): Promise<void> {
  for (let tries = 0; ; tries++) {
    try {
      await work();
      return;
    } catch (error) {
      if (tries === 100) throw error;
      await setTimeout(100);
    }
  }
}

/** A folder that holds two megabytes, where one may mount it. */
async function smallFolder(): Promise<string | undefined> {
  const folder = await mkdtemp(join(tmpdir(), 'small-'));
  const mounted = await run('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', folder]).then(
    () => true,
    () => false,
  );
  if (mounted) return folder;
  await rm(folder, { recursive: true });
  return undefined;
}

describe('SQLite', () => {
  test('on a full disk says so, keeps what it acknowledged, and goes on when there is room', async (context) => {
    const folder = await smallFolder();
    if (!folder) return context.skip('a small disk can be mounted by root alone');
    try {
      await writeFile(join(folder, 'ballast'), new Uint8Array(600_000));
      const store = await garden(`sqlite:${folder}/data.db`);
      const { kept, error } = await writeUntilRefused(store);
      expect(error).toMatchObject(unavailable);
      expect(kept).toBeGreaterThan(5);
      expect((await store.readings('mine', 'north', probe)).atMs).toHaveLength(kept * BATCH);
      await expect(store.putReadings('mine', 'north', probe, batch(kept))).rejects.toMatchObject(unavailable);
      await rm(join(folder, 'ballast'));
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
    await expect(openStore(`sqlite:${folder}/data.db`)).rejects.toMatchObject(unavailable);
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
    const folder = await smallFolder();
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
      expect(error).toMatchObject({ ...unavailable, cause: { code: '53100' } });
      expect(kept).toBeGreaterThan(5);
      expect((await store.readings('mine', 'north', probe)).atMs).toHaveLength(kept * BATCH);
      await rm(join(folder, 'ballast'));
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
