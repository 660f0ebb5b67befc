import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Store } from '../../src/garden/store/store.js';
import { count, date, hours, lot, northBed, plan, probe, quillmere, sowing } from './make.js';

const ownCrop = {
  name: 'Quillmere "Early" \\ leek – ½',
  rows: [
    { temperatureC: 10, tested: true, days: 14.5, percent: 70 },
    { temperatureC: 20, days: null, percent: 0 },
  ],
};
/** What must hold of lots, sowings, counts, plans and calendars, in two stores over one database. */
export function seasonContract(stores: () => { readonly store: Store; readonly other: Store }): void {
  /** A new owner with two beds, and how their revisions have changed since last asked. */
  async function newGarden() {
    const { store, other } = stores();
    const owner = randomUUID();
    await store.putPlace(owner, 'quillmere', quillmere);
    for (const bed of ['north', 'south']) await store.putBed(owner, bed, northBed);
    const revisions = async () => ({
      north: (await other.bed(owner, 'north'))?.revision,
      south: (await other.bed(owner, 'south'))?.revision,
      sowing: (await other.sowing(owner, 'carrots'))?.sowing.revision,
    });
    let last = await revisions();
    /** Which of them have risen; every one that has differs from all others before it. */
    const risen = async () => {
      const now = await revisions();
      const names = (['north', 'south', 'sowing'] as const).filter((name) => now[name] !== last[name]);
      for (const name of names) expect(now[name]).toBeGreaterThan(last[name] ?? 0);
      last = now;
      return names;
    };
    return { store, other, owner, risen };
  }

  describe('lots, sowings and plans', () => {
    test('come back as they were put, rows of the caller’s own too', async () => {
      const { store, other, owner } = await newGarden();
      for (const crop of ['carrot', ownCrop]) {
        const { revision: _, ...kept } = (await keptBy(store.putLot(owner, 'packet', { ...lot, crop })))!;
        expect(kept).toEqual({ ...lot, crop, id: 'packet' });
        expect(await other.lot(owner, 'packet')).toMatchObject(kept);
        const sown = await keptBy(store.putSowing(owner, 'carrots', { ...sowing, crop, lot: 'packet' }));
        expect(await other.sowing(owner, 'carrots')).toEqual({ sowing: sown, counts: [] });
        expect(sown).toMatchObject({ ...sowing, crop, lot: 'packet', id: 'carrots' });
        const planned = await keptBy(store.putPlan(owner, 'autumn', { ...plan, crop }));
        expect(await other.plan(owner, 'autumn')).toEqual(planned);
      }
    });

    test('put again unchanged, in whatever order of fields, change nothing', async () => {
      const { store, owner, risen } = await newGarden();
      const backwards = <T extends object>(fields: T): T => Object.fromEntries(Object.entries(fields).reverse()) as T;
      const puts = [
        (turn: <T extends object>(fields: T) => T) => store.putLot(owner, 'packet', turn(lot)),
        (turn: <T extends object>(fields: T) => T) => store.putSowing(owner, 'carrots', turn(sowing)),
        (turn: <T extends object>(fields: T) => T) => store.putPlan(owner, 'autumn', turn(plan)),
      ];
      for (const put of puts) {
        const first = await put((fields) => fields);
        expect(first.outcome).toBe('created');
        await risen();
        for (const turn of [<T>(fields: T) => fields, backwards]) {
          expect(await put(turn)).toEqual({ ...first, outcome: 'unchanged' });
        }
        expect(await risen()).toEqual([]);
      }
    });

    test('are put only at the revision that was asked for, by one of two', async () => {
      const { store, other, owner } = await newGarden();
      expect(await store.putSowing(owner, 'carrots', sowing, 1)).toEqual({ outcome: 'stale' });
      const { revision } = (await keptBy(store.putSowing(owner, 'carrots', sowing)))!;
      const both = await Promise.all(
        [store, other].map((one, i) => one.putSowing(owner, 'carrots', { ...sowing, seeds: 100 + i }, revision)),
      );
      expect(both.map(({ outcome }) => outcome).sort()).toEqual(['replaced', 'stale']);
      expect(await store.putLot(owner, 'packet', lot, 7)).toEqual({ outcome: 'stale' });
      expect(await store.putPlan(owner, 'autumn', plan, 7)).toEqual({ outcome: 'stale' });
    });

    test('need the bed and the lot that they name', async () => {
      const { store, owner, risen } = await newGarden();
      expect(await store.putSowing(owner, 'carrots', { ...sowing, bed: 'west' })).toEqual({ outcome: 'no-bed' });
      expect(await store.putSowing(owner, 'carrots', { ...sowing, lot: 'packet' })).toEqual({ outcome: 'no-lot' });
      expect(await store.putPlan(owner, 'autumn', { ...plan, bed: 'west' })).toEqual({ outcome: 'no-bed' });
      expect(await store.sowing(owner, 'carrots')).toBeUndefined();
      expect(await store.plan(owner, 'autumn')).toBeUndefined();
      expect(await risen()).toEqual([]);
    });

    test('are listed by id, a page at a time, of all beds or of one', async () => {
      const { store, owner } = await newGarden();
      for (const id of ['c', 'a-1', 'b', '9']) {
        await store.putLot(owner, id, lot);
        const bed = id === 'b' ? 'south' : 'north';
        await store.putSowing(owner, id, { ...sowing, bed });
        await store.putPlan(owner, id, { ...plan, bed });
      }
      for (const list of [store.lots, store.sowings, store.plans]) {
        const ids = async (page: Parameters<typeof list>[1]) => (await list(owner, page)).map(({ id }) => id);
        expect(await ids({ limit: 3 })).toEqual(['9', 'a-1', 'b']);
        expect(await ids({ after: 'b', limit: 3 })).toEqual(['c']);
      }
      for (const list of [store.sowings, store.plans]) {
        const ids = async (bed: string) => (await list(owner, { limit: 9, bed })).map(({ id }) => id);
        expect(await ids('north')).toEqual(['9', 'a-1', 'c']);
        expect(await ids('south')).toEqual(['b']);
        expect(await ids('west')).toEqual([]);
      }
    });

    test('raise the revision of the bed that they lie in, of the one that they leave, and of those that a lot was sown in', async () => {
      const { store, owner, risen } = await newGarden();
      await store.putLot(owner, 'packet', lot);
      expect(await risen()).toEqual([]);
      await store.putSowing(owner, 'carrots', sowing);
      expect(await risen()).toEqual(['north', 'sowing']);
      await store.putSowing(owner, 'carrots', { ...sowing, bed: 'south', lot: 'packet' });
      expect(await risen()).toEqual(['north', 'south', 'sowing']);
      await store.putPlan(owner, 'autumn', plan);
      expect(await risen()).toEqual(['north']);
      await store.putPlan(owner, 'autumn', { ...plan, bed: 'south' });
      expect(await risen()).toEqual(['north', 'south']);
      expect(await store.deletePlan(owner, 'autumn')).toBe('deleted');
      expect(await risen()).toEqual(['south']);
      const { revision } = (await store.lot(owner, 'packet'))!;
      await store.putLot(owner, 'packet', { ...lot, storeC: 5 });
      expect((await store.lot(owner, 'packet'))!.revision).toBeGreaterThan(revision);
      expect(await risen()).toEqual(['south']);
      await store.putLot(owner, 'packet', { ...lot, storeC: 5 });
      expect(await risen()).toEqual([]);
      const bed = (await store.bed(owner, 'south'))!;
      expect(await store.deleteSowing(owner, 'carrots')).toBe('deleted');
      expect((await store.bed(owner, 'south'))!.revision).toBeGreaterThan(bed.revision);
    });

    test('are deleted once; a lot that was sown stays', async () => {
      const { store, owner } = await newGarden();
      await store.putLot(owner, 'packet', lot);
      await store.putSowing(owner, 'carrots', { ...sowing, lot: 'packet' });
      await store.putCount(owner, 'carrots', count('2027-05-20', 31));
      expect(await store.deleteLot(owner, 'packet')).toBe('has-sowings');
      expect(await store.lot(owner, 'packet')).toMatchObject(lot);
      expect(await store.deleteSowing(owner, 'carrots')).toBe('deleted');
      expect(await store.deleteSowing(owner, 'carrots')).toBe('absent');
      expect(await store.deleteLot(owner, 'packet')).toBe('deleted');
      expect(await store.deleteLot(owner, 'packet')).toBe('absent');
      expect(await store.deletePlan(owner, 'autumn')).toBe('absent');
      await store.putSowing(owner, 'carrots', sowing);
      expect((await store.sowing(owner, 'carrots'))!.counts).toEqual([]);
    });

    test('go with their bed, where they are let go; else the bed stays with all that it has', async () => {
      const { store, owner } = await newGarden();
      await store.putLot(owner, 'packet', lot);
      await store.putSowing(owner, 'carrots', { ...sowing, lot: 'packet' });
      await store.putCount(owner, 'carrots', count('2027-05-20', 31));
      await store.putPlan(owner, 'autumn', plan);
      await store.putReadings(owner, 'north', probe, hours('2027-05-01T00:00Z', 3));
      await store.calendarRevisions(owner, 'north', [{ uid: 'a', digest: '1' }], 5);
      expect(await store.deleteBed(owner, 'north')).toBe('has-sowings');
      expect(await store.series(owner, 'north')).toHaveLength(1);
      expect(await store.deleteBed(owner, 'north', { withSowings: true })).toBe('deleted');
      expect(await store.sowing(owner, 'carrots')).toBeUndefined();
      expect(await store.plan(owner, 'autumn')).toBeUndefined();
      expect(await store.lot(owner, 'packet')).toBeDefined();
      // Made anew, nothing of the old one is there.
      await store.putBed(owner, 'north', northBed);
      await store.putSowing(owner, 'carrots', sowing);
      expect((await store.sowing(owner, 'carrots'))!.counts).toEqual([]);
      const [event] = (await store.calendarRevisions(owner, 'north', [{ uid: 'a', digest: '2' }], 9))!;
      expect(event).toEqual({ uid: 'a', sequence: 0, changedAtMs: 9 });
    });

    test('a bed with nothing but plans is deleted with them; a place takes the sowings of its beds along', async () => {
      const { store, owner } = await newGarden();
      await store.putPlan(owner, 'autumn', plan);
      expect(await store.deleteBed(owner, 'north')).toBe('deleted');
      expect(await store.plan(owner, 'autumn')).toBeUndefined();
      await store.putSowing(owner, 'carrots', { ...sowing, bed: 'south' });
      await store.putCount(owner, 'carrots', count('2027-05-20', 31));
      await store.putPlan(owner, 'autumn', { ...plan, bed: 'south' });
      expect(await store.deletePlace(owner, 'quillmere')).toBe('has-beds');
      expect(await store.deletePlace(owner, 'quillmere', { withBeds: true })).toBe('deleted');
      expect(await store.sowings(owner, { limit: 9 })).toEqual([]);
      expect(await store.plans(owner, { limit: 9 })).toEqual([]);
    });
  });

  describe('the counts of a sowing', () => {
    test('come back by date as they were put, each in place of an earlier one of its date', async () => {
      const { store, other, owner, risen } = await newGarden();
      await store.putSowing(owner, 'carrots', sowing);
      await risen();
      const counts = [
        count('2027-05-18', 0),
        count('2027-05-19', 4.5, { ofSeeds: 50, thinned: 0 }),
        count('2027-05-25', 90, { thinned: true }),
        count('2027-06-01', 31, { thinned: 12 }),
      ];
      for (const one of counts.toReversed()) {
        expect(await store.putCount(owner, 'carrots', one)).toMatchObject({ outcome: 'created' });
        expect(await risen()).toEqual(['north', 'sowing']);
        expect(await other.putCount(owner, 'carrots', one)).toMatchObject({ outcome: 'unchanged' });
        expect(await risen()).toEqual([]);
      }
      expect((await other.sowing(owner, 'carrots'))!.counts).toMatchObject(counts);
      expect(await store.putCount(owner, 'carrots', count('2027-05-18', 1))).toMatchObject({ outcome: 'replaced' });
      expect(await risen()).toEqual(['north', 'sowing']);
      expect(await store.deleteCount(owner, 'carrots', date('2027-05-25'))).toBe('deleted');
      expect(await risen()).toEqual(['north', 'sowing']);
      expect(await store.deleteCount(owner, 'carrots', date('2027-05-25'))).toBe('absent');
      expect(await risen()).toEqual([]);
      const left = (await other.sowing(owner, 'carrots'))!.counts;
      expect(left.map(({ date: on, seedlings }) => [on, seedlings])).toEqual([
        ['2027-05-18', 1],
        ['2027-05-19', 4.5],
        ['2027-06-01', 31],
      ]);
    });

    test('stay when the sowing is put again, and cannot be kept where there is none', async () => {
      const { store, owner } = await newGarden();
      expect(await store.putCount(owner, 'carrots', count('2027-05-18', 1))).toBeUndefined();
      expect(await store.deleteCount(owner, 'carrots', date('2027-05-18'))).toBeUndefined();
      await store.putSowing(owner, 'carrots', sowing);
      await store.putCount(owner, 'carrots', count('2027-05-18', 1));
      await store.putSowing(owner, 'carrots', { ...sowing, bed: 'south', seeds: 300 });
      expect((await store.sowing(owner, 'carrots'))!.counts).toMatchObject([count('2027-05-18', 1)]);
    });

    test('of two who write at once are all there; of one date, one of the two', async () => {
      const { store, other, owner } = await newGarden();
      await store.putSowing(owner, 'carrots', sowing);
      const days = Array.from({ length: 20 }, (_, i) => `2027-05-${10 + i}`);
      const outcomes = await Promise.all(
        days.flatMap((day, i) => [
          store.putCount(owner, 'carrots', count(day, i)),
          other.putCount(owner, 'carrots', count(day, 100 + i)),
        ]),
      );
      expect(outcomes.filter((done) => done?.outcome === 'created')).toHaveLength(20);
      expect(outcomes.filter((done) => done?.outcome === 'replaced')).toHaveLength(20);
      const { counts } = (await store.sowing(owner, 'carrots'))!;
      expect(counts.map(({ date: on }) => on)).toEqual(days);
      for (const [i, { seedlings }] of counts.entries()) expect([i, 100 + i]).toContain(seedlings);
    });

    test('come with the last sowings of a bed, the earliest of these first', async () => {
      const { store, owner } = await newGarden();
      for (const [id, day] of [
        ['z-first', '2027-03-01'],
        ['late', '2027-07-01'],
        ['early', '2027-04-01'],
        ['b-same', '2027-05-03'],
        ['a-same', '2027-05-03'],
      ] as const) {
        await store.putSowing(owner, id, { ...sowing, date: date(day) });
        for (const on of ['2027-08-02', '2027-08-01']) await store.putCount(owner, id, count(on, id.length));
      }
      await store.putSowing(owner, 'elsewhere', { ...sowing, bed: 'south', date: date('2027-06-01') });
      const last = await store.sowingsOf(owner, 'north', 4);
      expect(last.map((one) => one.sowing.id)).toEqual(['early', 'a-same', 'b-same', 'late']);
      for (const { sowing: sown, counts } of last) {
        expect(counts).toMatchObject(['2027-08-01', '2027-08-02'].map((on) => count(on, sown.id.length)));
        expect(await store.sowing(owner, sown.id)).toEqual({ sowing: sown, counts });
      }
      expect(await store.sowingsOf(owner, 'south', 4)).toMatchObject([{ sowing: { id: 'elsewhere' }, counts: [] }]);
      expect(await store.sowingsOf(owner, 'west', 4)).toEqual([]);
    });
  });

  describe('the calendar of a bed', () => {
    test('is opened by a token that is made with the bed, of 256 bits, and by no other', async () => {
      const { store, other, owner } = await newGarden();
      const [north, south] = await Promise.all(['north', 'south'].map((bed) => store.bed(owner, bed)));
      expect(north!.calendarToken).toMatch(/^[\w-]{43}$/);
      expect(south!.calendarToken).not.toBe(north!.calendarToken);
      expect(await other.bedOfCalendar('north', north!.calendarToken!)).toEqual({ owner });
      expect(await other.bedOfCalendar('north', south!.calendarToken!)).toBeUndefined();
      expect(await other.bedOfCalendar('north', '')).toBeUndefined();
      await store.putBed(owner, 'north', { ...northBed, cover: 'mulch' });
      expect((await store.bed(owner, 'north'))!.calendarToken).toBe(north!.calendarToken);
    });

    test('renewed, is opened by the new token alone; its bed is no longer as it was', async () => {
      const { store, other, owner, risen } = await newGarden();
      const { calendarToken: old } = (await store.bed(owner, 'north'))!;
      const token = (await store.renewCalendarToken(owner, 'north'))!;
      expect(await risen()).toEqual(['north']);
      expect((await other.bed(owner, 'north'))!.calendarToken).toBe(token);
      expect(await other.bedOfCalendar('north', old!)).toBeUndefined();
      expect(await other.bedOfCalendar('north', token)).toEqual({ owner });
      expect(await store.renewCalendarToken(owner, 'west')).toBeUndefined();
    });

    test('counts the changes of each event, and says when it changed last', async () => {
      const { store, other, owner, risen } = await newGarden();
      const say = (one: Store, atMs: number, digests: Record<string, string>) =>
        one.calendarRevisions(
          owner,
          'north',
          Object.entries(digests).map(([uid, digest]) => ({ uid, digest })),
          atMs,
        );
      const as = (uid: string, sequence: number, changedAtMs: number) => ({ uid, sequence, changedAtMs });
      expect(await say(store, 10, { sow: 'a', due: 'b' })).toEqual([as('sow', 0, 10), as('due', 0, 10)]);
      expect(await say(other, 20, { sow: 'a', due: 'b' })).toEqual([as('sow', 0, 10), as('due', 0, 10)]);
      expect(await say(store, 30, { due: 'c', sow: 'a' })).toEqual([as('due', 1, 30), as('sow', 0, 10)]);
      // One that is gone for a while goes on where it left off.
      expect(await say(store, 40, { sow: 'a' })).toEqual([as('sow', 0, 10)]);
      expect(await say(other, 50, { due: 'd', late: 'e' })).toEqual([as('due', 2, 50), as('late', 0, 50)]);
      expect(await say(store, 60, {})).toEqual([]);
      // After years nobody has it any more: it is forgotten, lest they pile up.
      const yearMs = 365 * 86_400_000;
      expect(await say(store, 2 * yearMs, { due: 'f' })).toEqual([as('due', 3, 2 * yearMs)]);
      expect(await say(store, 4 * yearMs, { new: 'a' })).toEqual([as('new', 0, 4 * yearMs)]);
      const back = await say(store, 4.5 * yearMs, { sow: 'a', due: 'g' });
      expect(back).toEqual([as('sow', 0, 4.5 * yearMs), as('due', 4, 4.5 * yearMs)]);
      expect(await risen()).toEqual([]);
      expect(await store.calendarRevisions(owner, 'west', [{ uid: 'a', digest: '1' }], 5)).toBeUndefined();
      expect(await store.calendarRevisions(owner, 'west', [], 5)).toBeUndefined();
    });

    test('of thousands of events is counted once by many who ask at once', async () => {
      const { store, other, owner } = await newGarden();
      const entries = Array.from({ length: 1500 }, (_, i) => ({ uid: `event-${i}`, digest: 'a' }));
      await store.calendarRevisions(owner, 'north', entries, 1);
      const changed = entries.map(({ uid }) => ({ uid, digest: 'b' }));
      const all = await Promise.all(
        [store, other, store, other].map((one, i) => one.calendarRevisions(owner, 'north', changed, 10 + i)),
      );
      for (const said of all) {
        expect(said).toEqual(all[0]);
        expect(said).toHaveLength(1500);
        expect(said!.every(({ sequence }) => sequence === 1)).toBe(true);
      }
    });

    test('that says what it last said is only read: it waits for nobody who is writing', async () => {
      const { store, other, owner } = await newGarden();
      const entries = [{ uid: 'sow', digest: 'a' }];
      await store.calendarRevisions(owner, 'north', entries, 1);
      // Were a revision taken, the next one would be two higher.
      const { revision } = (await keptBy(store.putLot(owner, 'one', lot)))!;
      for (let i = 0; i < 5; i++) await other.calendarRevisions(owner, 'north', entries, 100 + i);
      expect((await keptBy(store.putLot(owner, 'two', lot)))!.revision).toBe(revision + 1);
    });
  });
}

/** What is kept after a put; undefined where it was refused. */
const keptBy = async <T>(put: Promise<{ outcome: string } | { outcome: string; kept: T }>): Promise<T | undefined> => {
  const done = await put;
  return 'kept' in done ? done.kept : undefined;
};
