import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import type { Store } from '../../src/garden/store/store.js';
import { openStore } from '../../src/storage/open-store.js';
import { batch } from './batches.js';
import { northBed, probe, quillmere } from './make.js';

const run = promisify(execFile);

export const unavailable = { name: 'StorageError', code: 'storage-unavailable' };
export const full = { name: 'StorageError', code: 'storage-full' };
export const damaged = { name: 'StorageError', code: 'storage-damaged' };

export async function garden(url: string): Promise<Store> {
  const store = await openStore(url);
  await store.putPlace('mine', 'quillmere', quillmere);
  await store.putBed('mine', 'north', northBed);
  return store;
}

/** Batches kept, from one on, until one is refused: how many are kept then, and how the next one failed. */
export async function writeUntilRefused(store: Store, from = 0): Promise<{ kept: number; error: unknown }> {
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
export async function eventually(work: () => Promise<unknown>): Promise<void> {
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

/** A folder on a disk of its own, of so many megabytes, where one may mount it. */
export async function smallFolder(megabytes: number): Promise<string | undefined> {
  const folder = await mkdtemp(join(tmpdir(), 'small-'));
  const mounted = await run('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', folder]).then(
    () => true,
    () => false,
  );
  if (mounted) return folder;
  await rm(folder, { recursive: true });
  return undefined;
}
