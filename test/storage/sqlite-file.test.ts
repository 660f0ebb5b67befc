import { execFile } from 'node:child_process';
import { chmod, copyFile, mkdtemp, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import type { Store } from '../../src/garden/store/store.js';
import { openStore } from '../../src/storage/open-store.js';
import { BATCH, batch } from './batches.js';
import { damaged, eventually, garden, smallFolder, unavailable } from './in-trouble.js';
import { probe } from './make.js';

const run = promisify(execFile);

/** A garden in a file in a folder of its own. */
async function gardenFile(): Promise<{ folder: string; file: string; store: Store }> {
  const folder = await mkdtemp(join(tmpdir(), 'file-'));
  const file = join(folder, 'data.db');
  return { folder, file, store: await garden(`sqlite:${file}`) };
}

describe('an SQLite file', () => {
  test('that is removed or replaced while it is open is missed at once, and nothing is written to what is gone', async () => {
    for (const [what, trouble] of [
      ['data.db is gone', (file: string) => rm(file)],
      ['data.db-wal is gone', (file: string) => rm(`${file}-wal`)],
      [
        'data.db was replaced',
        async (file: string) => {
          await copyFile(file, `${file}.copy`);
          await rename(`${file}.copy`, file);
        },
      ],
    ] as const) {
      const { folder, file, store } = await gardenFile();
      await store.ready();
      await trouble(file);
      const missed = { ...damaged, message: expect.stringContaining(what) };
      await expect(store.putReadings('mine', 'north', probe, batch(0))).rejects.toMatchObject(missed);
      await expect(store.deleteBed('mine', 'north')).rejects.toMatchObject(missed);
      await expect(store.place('mine', 'quillmere')).rejects.toMatchObject(missed);
      await expect(store.ready()).rejects.toMatchObject(missed);
      await store.close();
      await rm(folder, { recursive: true });
    }
  });

  test('that comes back as it was is used again', async () => {
    const { folder, file, store } = await gardenFile();
    await rename(file, `${file}.away`);
    await expect(store.ready()).rejects.toMatchObject(damaged);
    await rename(`${file}.away`, file);
    await eventually(() => store.ready());
    expect(await store.putReadings('mine', 'north', probe, batch(0))).toMatchObject({ added: BATCH });
    await store.close();
    await rm(folder, { recursive: true });
  });

  test('whose pages are damaged says so, where they are read and where they are written', async () => {
    const { folder, file, store } = await gardenFile();
    await store.close();
    const bytes = await readFile(file);
    await writeFile(file, Buffer.concat([bytes.subarray(0, 4096), Buffer.alloc(bytes.length - 4096, 7)]));
    await expect(openStore(`sqlite:${file}`)).rejects.toMatchObject(damaged);
    await rm(folder, { recursive: true });
  });

  test('on a disk that may only be read says so', async (context) => {
    const folder = await smallFolder(8);
    if (!folder) return context.skip('a disk can be mounted by root alone');
    try {
      const made = await gardenFile();
      await made.store.close();
      await copyFile(made.file, join(folder, 'data.db'));
      await rm(made.folder, { recursive: true });
      await run('mount', ['-o', 'remount,ro', folder]);
      const refused = { ...unavailable, message: expect.stringMatching(/may not be written.*read-only/) };
      await expect(openStore(`sqlite:${folder}/data.db`)).rejects.toMatchObject(refused);
    } finally {
      await run('umount', ['-l', folder]);
      await rm(folder, { recursive: true });
    }
  });

  test('is nobody else’s to read, as its log is, under any umask; a laxer one is tightened', async () => {
    const before = process.umask(0);
    try {
      const { folder, file, store } = await gardenFile();
      const modes = async () =>
        Promise.all(['', '-wal', '-shm', '-reserve'].map(async (end) => (await stat(file + end)).mode & 0o777));
      expect(await modes()).toEqual(Array(4).fill(0o600));
      await store.close();
      for (const end of ['', '-wal', '-shm']) await chmod(file + end, 0o644);
      const again = await openStore(`sqlite:${file}`);
      expect(await modes()).toEqual(Array(4).fill(0o600));
      await again.close();
      await rm(folder, { recursive: true });
    } finally {
      process.umask(before);
    }
  });

  test('alone holds everything once the store is closed, and soon after each commit', async () => {
    const { folder, file, store } = await gardenFile();
    await store.putReadings('mine', 'north', probe, batch(0));
    const elsewhere = join(folder, 'copy.db');
    const keptIn = async (batches: number) => {
      await copyFile(file, elsewhere);
      await copyFile(`${file}.key`, `${elsewhere}.key`);
      const copied = await openStore(`sqlite:${elsewhere}`);
      const { atMs } = await copied.readings('mine', 'north', probe);
      await copied.close();
      await rm(elsewhere);
      expect(atMs).toHaveLength(batches * BATCH);
    };
    await eventually(() => keptIn(1));
    await store.putReadings('mine', 'north', probe, batch(1));
    await store.close();
    await keptIn(2);
    await rm(folder, { recursive: true });
  });

  test('has a short log in a storm of commits', async () => {
    const { folder, file, store } = await gardenFile();
    let longest = 0;
    for (let n = 0; n < 300; n++) {
      await store.putReadings('mine', 'north', probe, batch(n));
      longest = Math.max(longest, (await stat(`${file}-wal`)).size);
    }
    expect(longest).toBeLessThan(2 * 1024 * 1024);
    await store.close();
    await rm(folder, { recursive: true });
  });
});
