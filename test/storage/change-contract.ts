import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { DEFAULT_QUOTAS } from '../../src/garden/store/quotas.js';
import { NO_REVISION } from '../../src/garden/store/resource.js';
import type { Session } from '../../src/garden/store/session-store.js';
import type { Store } from '../../src/garden/store/store.js';
import { openStore } from '../../src/storage/open-store.js';
import { airFrom, count, date, hours, lot, northBed, plan, probe, quillmere, sowing } from './make.js';

const DAY_MS = 86_400_000;
const nowMs = Date.parse('2027-05-01T06:00Z');
const subscription = { url: 'https://shed.example/alerts', events: ['frost'], beds: null, crops: null } as const;

/** What must hold of changes that rest on a revision, of quotas and of sessions, in two stores over one database. */
export function changeContract(stores: () => { readonly url: string; readonly store: Store; readonly other: Store }) {
  async function newGarden() {
    const { store, other, url } = stores();
    const owner = randomUUID();
    await store.putPlace(owner, 'quillmere', quillmere);
    await store.putBed(owner, 'north', northBed);
    await store.putBed(owner, 'spare', northBed);
    await store.putPlace(owner, 'spare', quillmere);
    await store.putSowing(owner, 'carrots', sowing);
    await store.putCount(owner, 'carrots', count('2027-05-20', 31));
    await store.putLot(owner, 'packet', lot);
    await store.putPlan(owner, 'autumn', plan);
    await store.putSubscription(owner, 'shed', subscription, nowMs);
    await store.putAir(owner, 'quillmere', airFrom('2027-05-01', [20, 21]));
    await store.putReadings(owner, 'north', probe, hours('2027-05-01T00:00Z', 30));
    return { store, other, owner, url };
  }
  type Garden = Awaited<ReturnType<typeof newGarden>>;
  /** Of each kind of thing its revision, and a way to delete it at one. */
  const deletions: Record<
    string,
    (garden: Garden) => [() => Promise<number>, (one: Store, at: number) => Promise<unknown>]
  > = {
    place: ({ store, owner }) => [
      async () => (await store.place(owner, 'spare'))!.fieldsRevision,
      (one, ifRevision) => one.deletePlace(owner, 'spare', { ifRevision }),
    ],
    bed: ({ store, owner }) => [
      async () => (await store.bed(owner, 'spare'))!.fieldsRevision,
      (one, ifRevision) => one.deleteBed(owner, 'spare', { ifRevision }),
    ],
    lot: ({ store, owner }) => [
      async () => (await store.lot(owner, 'packet'))!.revision,
      (one, ifRevision) => one.deleteLot(owner, 'packet', ifRevision),
    ],
    sowing: ({ store, owner }) => [
      async () => (await store.sowing(owner, 'carrots'))!.sowing.revision,
      (one, ifRevision) => one.deleteSowing(owner, 'carrots', ifRevision),
    ],
    count: ({ store, owner }) => [
      async () => (await store.sowing(owner, 'carrots'))!.counts[0]!.revision,
      (one, ifRevision) => one.deleteCount(owner, 'carrots', date('2027-05-20'), ifRevision),
    ],
    plan: ({ store, owner }) => [
      async () => (await store.plan(owner, 'autumn'))!.revision,
      (one, ifRevision) => one.deletePlan(owner, 'autumn', ifRevision),
    ],
    subscription: ({ store, owner }) => [
      async () => (await store.subscription(owner, 'shed'))!.revision,
      (one, ifRevision) => one.deleteSubscription(owner, 'shed', ifRevision),
    ],
  };

  describe('a change that rests on a revision', () => {
    test.each(Object.entries(deletions))('deletes a %s at it alone, and once', async (_, of) => {
      const garden = await newGarden();
      const [revision, remove] = of(garden);
      const now = await revision();
      for (const stale of [now - 1, now + 1, 0, NO_REVISION]) expect(await remove(garden.store, stale)).toBe('stale');
      expect(await revision()).toBe(now);
      const both = await Promise.all([remove(garden.store, now), remove(garden.other, now)]);
      expect(both.toSorted()).toEqual(['absent', 'deleted']);
    });

    test('creates where nothing is, once of two at the same time', async () => {
      const { store, other, owner } = await newGarden();
      const puts = [store, other, store].map((one, i) => one.putBed(owner, 'new', { ...northBed, name: `${i}` }, null));
      const outcomes = (await Promise.all(puts)).map(({ outcome }) => outcome);
      expect(outcomes.toSorted()).toEqual(['created', 'stale', 'stale']);
      const counts = [31, 32].map((n, i) =>
        [store, other][i]!.putCount(owner, 'carrots', count('2027-05-21', n), null),
      );
      expect((await Promise.all(counts)).map((done) => done?.outcome).toSorted()).toEqual(['created', 'stale']);
    });

    test('of air, normals, coming days and readings rests on all that lies there', async () => {
      const { store, other, owner } = await newGarden();
      const place = async () => (await other.place(owner, 'quillmere'))!.revision;
      const stale = await place();
      await store.putAir(owner, 'quillmere', airFrom('2027-05-02', [9]));
      const normals = { meanMaxC: Array(12).fill(20), meanMinC: Array(12).fill(10) };
      const coming = { atMs: 1, days: airFrom('2027-05-05', [9]) };
      const air = airFrom('2027-05-03', [9]);
      const changes = (at: number): Promise<unknown>[] => [
        other.putAir(owner, 'quillmere', air, at),
        other.deleteAir(owner, 'quillmere', {}, at),
        other.putNormals(owner, 'quillmere', normals, at),
        other.putComingDays(owner, 'quillmere', coming, at),
      ];
      expect(await Promise.all(changes(stale))).toEqual(Array(4).fill('stale'));
      expect(await store.air(owner, 'quillmere')).toHaveLength(2);
      const done = await Promise.all(changes(await place()));
      expect(done.filter((one) => one === 'stale')).toHaveLength(3);

      const bed = (await store.bed(owner, 'north'))!.revision;
      const both = await Promise.all([
        store.putReadings(owner, 'north', probe, hours('2027-06-01T00:00Z', 3), bed),
        other.deleteReadings(owner, 'north', {}, undefined, bed),
      ]);
      expect(both.filter((one) => one === 'stale')).toHaveLength(1);
    });

    test('of a bed or place does not mind what lies in it', async () => {
      const { store, other, owner } = await newGarden();
      const before = (await store.bed(owner, 'north'))!;
      await other.putReadings(owner, 'north', probe, hours('2027-06-01T00:00Z', 3));
      const after = (await store.bed(owner, 'north'))!;
      expect(after.revision).toBeGreaterThan(before.revision);
      expect(after.fieldsRevision).toBe(before.fieldsRevision);
      expect(await other.putBed(owner, 'north', { ...northBed, name: 'N' }, before.fieldsRevision)).toMatchObject({
        outcome: 'replaced',
      });
    });
  });

  test('a quota is not passed by those who create at once, on several instances', async () => {
    const { url } = stores();
    const owner = randomUUID();
    const quotas = { ...DEFAULT_QUOTAS, beds: 5 };
    const full = await Promise.all([1, 2].map(() => openStore(url, { quotas })));
    await full[0]!.putPlace(owner, 'quillmere', quillmere);
    const puts = Array.from({ length: 12 }, (_, i) => full[i % 2]!.putBed(owner, `bed-${i}`, northBed));
    const ended = await Promise.allSettled(puts);
    expect(ended.filter(({ status }) => status === 'fulfilled')).toHaveLength(5);
    for (const one of ended) {
      if (one.status === 'rejected') expect(one.reason).toMatchObject({ quota: 'beds', limit: 5, used: 5 });
    }
    expect(await full[0]!.usage(owner)).toMatchObject({ places: 1, beds: 5, thermometers: 0, megabytes: 0 });
    for (const store of full) await store.close();
  });

  test('bytes are counted as readings and air come and go', async () => {
    const { store, other, owner } = await newGarden();
    const used = async () => Math.round((await other.usage(owner)).megabytes * 1e6);
    expect(await used()).toBe(16 * 30 + 34 * 2);
    expect((await other.usage(owner)).thermometers).toBe(1);
    await store.deleteReadings(owner, 'north', { toMs: Date.parse('2027-05-01T10:00Z') });
    expect(await used()).toBe(16 * 20 + 34 * 2);
    await store.deleteBed(owner, 'north', { withSowings: true });
    expect(await used()).toBe(34 * 2);
    await store.deletePlace(owner, 'quillmere', { withBeds: true });
    expect(await used()).toBe(0);
  });

  test('sessions are found by digest until they expire or are ended, on any instance; beyond the most the oldest go', async () => {
    const { store, other } = stores();
    const owner = randomUUID();
    const session = (id: string, startMs: number): Session => ({
      owner,
      id,
      keyProof: 'proof',
      createdAtMs: startMs,
      usedAtMs: startMs,
      expiresAtMs: startMs + DAY_MS,
      label: 'Firefox on Linux',
    });
    const found = (id: string, atMs = nowMs + 10) => other.session(`${owner} ${id}`, atMs);
    for (const [i, id] of ['a', 'b', 'c'].entries())
      await store.beginSession(session(id, nowMs + i), `${owner} ${id}`, 2);
    expect(await found('a')).toBeUndefined();
    expect(await found('b')).toEqual(session('b', nowMs + 1));
    expect((await other.sessions(owner, nowMs + 10)).map(({ id }) => id)).toEqual(['c', 'b']);
    await other.useSession(owner, 'c', nowMs + 9);
    expect(await found('c')).toMatchObject({ usedAtMs: nowMs + 9 });
    expect(await found('c', nowMs + 2 + DAY_MS)).toBeUndefined();
    expect(await store.endSession(randomUUID(), 'b')).toBe('absent');
    expect(await store.endSession(owner, 'b')).toBe('deleted');
    expect(await store.endSession(owner, 'b')).toBe('absent');
    expect(await found('b')).toBeUndefined();
  });
}
