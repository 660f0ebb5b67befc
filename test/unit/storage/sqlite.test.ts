import { describe, expect, test } from 'vitest';
import { openStore } from '../../../src/storage/open-store.js';
import { storeContract } from '../../storage/contract.js';
import { emptySqlite } from '../../storage/databases.js';
import { hours, northBed, probe, quillmere } from '../../storage/make.js';

storeContract('SQLite', emptySqlite);

describe('a store in memory', () => {
  test('keeps what it is given until it is closed', async () => {
    const store = await openStore('sqlite::memory:');
    await store.putPlace('mine', 'quillmere', quillmere);
    await store.putBed('mine', 'north', northBed);
    const [, seen] = await Promise.all([
      store.putReadings('mine', 'north', probe, hours('2027-05-01T00:00Z', 100)),
      store.readings('mine', 'north', probe),
    ]);
    expect([0, 100]).toContain(seen.atMs.length);
    expect((await store.readings('mine', 'north', probe)).atMs).toHaveLength(100);
    await store.close();
    const next = await openStore('sqlite::memory:');
    expect(await next.place('mine', 'quillmere')).toBeUndefined();
    await next.close();
  });
});

describe('an address of a database', () => {
  test('that is neither kind is refused in words', async () => {
    for (const url of ['', 'data.db', 'sqlite:', 'mysql://localhost/x', 'postgres://:bad:port/']) {
      await expect(openStore(url), url).rejects.toThrow('begins with sqlite: or postgres://');
    }
  });

  test('where no file can be made cannot be used now', async () => {
    await expect(openStore('sqlite:/nowhere/at/all/data.db')).rejects.toMatchObject({ code: 'storage-unavailable' });
  });

  test('where nobody listens cannot be used now', async () => {
    const nobody = 'postgres://nobody@127.0.0.1:1/none';
    await expect(openStore(nobody)).rejects.toMatchObject({ code: 'storage-unavailable' });
  });
});
