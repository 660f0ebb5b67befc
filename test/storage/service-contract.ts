import { randomBytes, randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Store } from '../../src/garden/store/store.js';
import { MAX_PAST_SOIL_BYTES, MAX_PAST_SOIL_ROWS } from '../../src/storage/tables/past-soil.js';
import { airFrom, count, date, hours, lot, northBed, plan, probe, quillmere, sowing } from './make.js';

/** What must hold of that which the service keeps for its own use, in two stores over one database. */
export function serviceContract(stores: () => { readonly store: Store; readonly other: Store }): void {
  describe('past soil', () => {
    test('comes back byte by byte, of each owner and key, as it was last kept', async () => {
      const { store, other } = stores();
      const [mine, theirs] = [randomUUID(), randomUUID()];
      const [first, second, third] = [randomBytes(100_000), randomBytes(7), new Uint8Array()];
      expect(await store.pastSoil(mine, 'north')).toBeUndefined();
      await store.keepPastSoil(mine, 'north', first, 1);
      await store.keepPastSoil(mine, 'south', third, 2);
      await store.keepPastSoil(theirs, 'north', second, 3);
      const bytesOf = async (owner: string, key: string) => Buffer.from((await other.pastSoil(owner, key))!);
      expect(await bytesOf(mine, 'north')).toEqual(first);
      expect(await bytesOf(mine, 'south')).toHaveLength(0);
      expect(await bytesOf(theirs, 'north')).toEqual(second);
      await store.keepPastSoil(mine, 'north', second, 4);
      expect(await bytesOf(mine, 'north')).toEqual(second);
    });

    test('has so many bytes of room, and what was least lately kept gives way', async () => {
      const { store, other } = stores();
      const [owner, theirs] = [randomUUID(), randomUUID()];
      const quarter = new Uint8Array(MAX_PAST_SOIL_BYTES / 4);
      await store.keepPastSoil(theirs, 'a', quarter, 0);
      for (const [i, key] of ['a', 'b', 'c', 'd'].entries()) await store.keepPastSoil(owner, key, quarter, i);
      await store.keepPastSoil(owner, 'a', quarter, 4);
      const kept = async () => {
        const found = await Promise.all(['a', 'b', 'c', 'd', 'e'].map((key) => other.pastSoil(owner, key)));
        return found.map((piece) => piece !== undefined);
      };
      expect(await kept()).toEqual([true, true, true, true, false]);
      await store.keepPastSoil(owner, 'e', new Uint8Array(1), 5);
      expect(await kept()).toEqual([true, false, true, true, true]);
      await store.keepPastSoil(owner, 'c', new Uint8Array(MAX_PAST_SOIL_BYTES + 1), 6);
      expect(await kept()).toEqual([false, false, false, false, false]);
      expect(await store.pastSoil(theirs, 'a')).toBeDefined();
    });

    test('has so many rows', async () => {
      const { store, other } = stores();
      const owner = randomUUID();
      for (let i = 0; i <= MAX_PAST_SOIL_ROWS; i++) await store.keepPastSoil(owner, `key-${i}`, new Uint8Array(1), i);
      expect(await other.pastSoil(owner, 'key-0')).toBeUndefined();
      expect(await other.pastSoil(owner, 'key-1')).toBeDefined();
    });
  });

  describe('an allowance', () => {
    test('is full at first, is taken in whole tokens, and comes back with time', async () => {
      const { store, other } = stores();
      const caller = randomUUID();
      const take = (wanted: number, nowMs: number, one = store) =>
        one.takeAllowance(caller, 'requests', wanted, 10, 0.01, nowMs);
      expect(await take(4, 1000)).toEqual({ granted: 4, remaining: 6, fullAtMs: 1400 });
      expect(await take(20, 1000, other)).toEqual({ granted: 6, remaining: 0, fullAtMs: 2000 });
      expect(await take(1, 1050)).toEqual({ granted: 0, remaining: 0.5, fullAtMs: 2000 });
      expect(await take(1, 1100)).toEqual({ granted: 1, remaining: 0, fullAtMs: 2100 });
      expect(await take(0, 9000)).toEqual({ granted: 0, remaining: 10, fullAtMs: 9000 });
      expect(await take(1, 5000)).toMatchObject({ granted: 1, remaining: 9 });
      expect(await store.takeAllowance(caller, 'work', 2, 2, 0.01, 1000)).toMatchObject({ granted: 2 });
      expect(await store.takeAllowance(randomUUID(), 'requests', 10, 10, 0.01, 1000)).toMatchObject({ granted: 10 });
    });

    test('is one for all who take at once', async () => {
      const { store, other } = stores();
      const caller = randomUUID();
      const taken = await Promise.all(
        Array.from({ length: 30 }, (_, i) => (i % 2 ? store : other).takeAllowance(caller, 'requests', 4, 50, 0, 1000)),
      );
      expect(taken.reduce((sum, { granted }) => sum + granted, 0)).toBe(50);
    });

    test('that is full again is swept away now and then, and nothing changes by that', async () => {
      const { store } = stores();
      const caller = randomUUID();
      await store.takeAllowance(caller, 'requests', 5, 10, 1, 1000);
      await store.takeAllowance(randomUUID(), 'requests', 1, 10, 1, 1e15);
      expect(await store.takeAllowance(caller, 'requests', 10, 10, 1, 2000)).toMatchObject({ granted: 10 });
    });
  });

  test('usage counts what an owner keeps, and no other’s', async () => {
    const { store, other } = stores();
    const owner = randomUUID();
    const none = {
      places: 0,
      beds: 0,
      sowings: 0,
      lots: 0,
      plans: 0,
      subscriptions: 0,
      thermometers: 0,
      devices: 0,
      megabytes: 0,
    };
    expect(await other.usage(owner)).toEqual(none);
    await store.putPlace(owner, 'quillmere', quillmere);
    for (const bed of ['north', 'south']) await store.putBed(owner, bed, northBed);
    await store.putLot(owner, 'packet', lot);
    for (const id of ['a', 'b', 'c']) await store.putSowing(owner, id, { ...sowing, lot: 'packet' });
    await store.putCount(owner, 'a', count('2027-05-20', 31));
    await store.putPlan(owner, 'autumn', plan);
    await store.putSubscription(
      owner,
      'shed',
      { url: 'https://shed.example/', events: [], beds: null, crops: null },
      0,
    );
    const counts = { ...none, places: 1, beds: 2, sowings: 3, lots: 1, plans: 1, subscriptions: 1 };
    expect(await other.usage(owner)).toEqual(counts);
    await store.putReadings(owner, 'north', probe, hours('2027-05-01T00:00Z', 1000));
    expect(await other.usage(owner)).toEqual({ ...counts, thermometers: 1, megabytes: 0.016 });
    await store.putAir(owner, 'quillmere', airFrom('2026-01-01', Array(730).fill(20)));
    expect((await other.usage(owner)).megabytes).toBeCloseTo(0.016 + 730 * 34e-6, 9);
    await store.deleteAir(owner, 'quillmere', { from: date('2026-01-01') });
    expect((await other.usage(owner)).megabytes).toBeCloseTo(0.016, 9);
  });
}
