import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { zoneNamed } from '../../src/basics/calendar.js';
import type { Store } from '../../src/garden/store/store.js';
import { daysOf } from '../../src/readings/daily/days.js';
import { longestJoinedMs, usualStepMs } from '../../src/readings/time/step.js';
import { migrate } from '../../src/storage/migrate.js';
import { migrations } from '../../src/storage/migrations/list.js';
import { openDatabase, openStore } from '../../src/storage/open-store.js';
import { storeOf } from '../../src/storage/store-of.js';
import { alertContract } from './alert-contract.js';
import { changeContract } from './change-contract.js';
import type { EmptyDatabase } from './databases.js';
import { airFrom, count, date, hours, lot, northBed, plan, probe, quillmere, readingsFrom, sowing } from './make.js';
import { seasonContract } from './season-contract.js';
import { serviceContract } from './service-contract.js';

/** What must hold of the store, whichever database is under it. */
export function storeContract(kind: string, emptyDatabase: () => Promise<EmptyDatabase>): void {
  describe(`a store in ${kind}`, () => {
    let database: EmptyDatabase;
    let store: Store;
    let other: Store;
    beforeAll(async () => {
      database = await emptyDatabase();
      [store, other] = await Promise.all([openStore(database.url), openStore(database.url)]);
    });
    afterAll(async () => {
      await Promise.all([store?.close(), other?.close()]);
      await database?.remove();
    });

    /** A new owner with a place and a bed. */
    async function newGarden(timeZone = quillmere.timeZone): Promise<string> {
      const owner = randomUUID();
      await store.putPlace(owner, 'quillmere', { ...quillmere, timeZone });
      await store.putBed(owner, 'north', northBed);
      return owner;
    }
    const revisions = async (owner: string) => ({
      place: (await store.place(owner, 'quillmere'))?.revision,
      bed: (await store.bed(owner, 'north'))?.revision,
    });

    describe('places and beds', () => {
      test('come back as they were put', async () => {
        const owner = randomUUID();
        const own = { preset: null, format: 'daily-csv', url: 'https://weather.example/quillmere', everyHours: 6 };
        const named = { preset: 'nasa-power', format: null, url: null, everyHours: 24 };
        const fields = { ...quillmere, annualRainMm: 812.5, sources: [own, named] };
        const put = await store.putPlace(owner, 'quillmere', fields);
        expect(put).toMatchObject({ outcome: 'created', kept: { ...fields, id: 'quillmere' } });
        expect(await other.place(owner, 'quillmere')).toEqual('kept' in put && put.kept);
        const bed = await store.putBed(owner, 'pots', { ...northBed, kind: 'pot', roomC: 18.5 });
        expect(await other.bed(owner, 'pots')).toEqual('kept' in bed && bed.kept);
      });

      test('put again unchanged keep their revision; changed, or made anew, they get one never used before', async () => {
        const owner = await newGarden();
        const seen = new Set([(await revisions(owner)).bed]);
        expect(await store.putBed(owner, 'north', northBed)).toMatchObject({ outcome: 'unchanged' });
        expect(seen).toContain((await revisions(owner)).bed);
        const changes = [
          () => store.putBed(owner, 'north', { ...northBed, cover: 'mulch' }),
          async () => [await store.deleteBed(owner, 'north'), await store.putBed(owner, 'north', northBed)],
          () => store.putReadings(owner, 'north', probe, hours('2027-05-01T00:00Z', 3)),
          () => store.deleteReadings(owner, 'north'),
        ];
        for (const change of changes) {
          await change();
          const { bed } = await revisions(owner);
          expect(seen).not.toContain(bed);
          seen.add(bed);
        }
      });

      test('are put only at the revision that was asked for', async () => {
        const owner = await newGarden();
        const { place } = await revisions(owner);
        const renamed = { ...quillmere, name: 'Quillmere' };
        expect(await store.putPlace(owner, 'quillmere', renamed, place! + 1)).toEqual({ outcome: 'stale' });
        expect(await store.putPlace(owner, 'nowhere', renamed, 1)).toEqual({ outcome: 'stale' });
        const both = await Promise.all(
          [store, other].map((one) => one.putPlace(owner, 'quillmere', { ...renamed, elevationM: 3 }, place)),
        );
        expect(both.map(({ outcome }) => outcome).sort()).toEqual(['replaced', 'stale']);
      });

      test('are listed by id, a page at a time', async () => {
        const owner = await newGarden();
        const ids = ['b-1', 'b', 'a-9', '10', 'b1', 'a9'];
        for (const id of ids) await store.putBed(owner, id, northBed);
        const inOrder = [...ids, 'north'].sort();
        const seen: string[] = [];
        for (let after: string | undefined; ; after = seen.at(-1)) {
          const page = await store.beds(owner, { after, limit: 3 });
          seen.push(...page.map(({ id }) => id));
          if (page.length < 3) break;
        }
        expect(seen).toEqual(inOrder);
        expect((await store.places(owner, { limit: 5 })).map(({ id }) => id)).toEqual(['quillmere']);
        expect(await store.places(owner, { after: 'quillmere', limit: 5 })).toEqual([]);
      });

      test('a bed needs a place that is there', async () => {
        const owner = await newGarden();
        expect(await store.putBed(owner, 'south', { ...northBed, place: 'nowhere' })).toEqual({ outcome: 'no-place' });
        expect(await store.bed(owner, 'south')).toBeUndefined();
      });

      test('a place with beds stays, unless they are to go too', async () => {
        const owner = await newGarden();
        await store.putReadings(owner, 'north', probe, hours('2027-05-01T00:00Z', 3));
        await store.putAir(owner, 'quillmere', airFrom('2027-05-01', [20]));
        expect(await store.deletePlace(owner, 'quillmere')).toBe('has-beds');
        expect(await store.series(owner, 'north')).toHaveLength(1);
        expect(await store.deletePlace(owner, 'quillmere', { withBeds: true })).toBe('deleted');
        expect(await store.deletePlace(owner, 'quillmere')).toBe('absent');
        await store.putPlace(owner, 'quillmere', quillmere);
        await store.putBed(owner, 'north', northBed);
        expect(await store.series(owner, 'north')).toEqual([]);
        expect(await store.air(owner, 'quillmere')).toEqual([]);
      });

      test('a deleted bed takes its readings with it', async () => {
        const owner = await newGarden();
        await store.putReadings(owner, 'north', probe, hours('2027-05-01T00:00Z', 3));
        expect(await store.deleteBed(owner, 'north')).toBe('deleted');
        expect(await store.deleteBed(owner, 'north')).toBe('absent');
        await store.putBed(owner, 'north', northBed);
        expect(await store.readings(owner, 'north', probe)).toEqual(readingsFrom('2027-05-01T00:00Z', 60, []));
      });
    });

    describe('the air of a place', () => {
      test('is kept by date: new days are added, the same change nothing, others replace', async () => {
        const owner = await newGarden();
        const days = airFrom('2026-12-30', [4.1, 5.2, 6.3, 7.4]);
        expect(await store.putAir(owner, 'quillmere', days)).toEqual({ added: 4, unchanged: 0, replaced: 0 });
        const before = await revisions(owner);
        expect(await store.putAir(owner, 'quillmere', days)).toEqual({ added: 0, unchanged: 4, replaced: 0 });
        expect(await revisions(owner)).toEqual(before);
        const meanOnly = { date: days[3]!.date, min: null, mean: 3.3, max: null };
        const again = [meanOnly, ...airFrom('2027-01-03', [9])];
        expect(await store.putAir(owner, 'quillmere', again)).toEqual({ added: 1, unchanged: 0, replaced: 1 });
        expect((await revisions(owner)).place).toBeGreaterThan(before.place!);
        expect(await other.air(owner, 'quillmere')).toEqual([...days.slice(0, 3), ...again]);
        const range = { from: date('2026-12-31'), to: date('2027-01-01') };
        expect(await store.air(owner, 'quillmere', range)).toEqual(days.slice(1, 3));
        expect(await store.deleteAir(owner, 'quillmere', range)).toBe(2);
        expect(await store.air(owner, 'quillmere')).toEqual([days[0], ...again]);
        expect(await store.deleteAir(owner, 'quillmere')).toBe(3);
      });

      test('of one date given twice the last counts', async () => {
        const owner = await newGarden();
        const twice = [...airFrom('2027-05-01', [20]), ...airFrom('2027-05-01', [21])];
        expect(await store.putAir(owner, 'quillmere', twice)).toEqual({ added: 1, unchanged: 0, replaced: 0 });
        expect(await store.air(owner, 'quillmere')).toEqual(twice.slice(1));
      });

      test('of thirty years comes back whole', async () => {
        const owner = await newGarden();
        const maxC = Array.from({ length: 10_957 }, (_, i) => Math.round(150 - 100 * Math.cos(i / 58)) / 10);
        const days = airFrom('1997-01-01', maxC);
        expect(await store.putAir(owner, 'quillmere', days)).toEqual({ added: 10_957, unchanged: 0, replaced: 0 });
        expect(await store.air(owner, 'quillmere')).toEqual(days);
      });

      test('normals and coming days are replaced whole', async () => {
        const owner = await newGarden();
        const normals = (of: number) => ({
          meanMaxC: Array.from({ length: 12 }, (_, i) => of + i),
          meanMinC: Array.from({ length: 12 }, (_, i) => of - i / 7),
        });
        expect(await store.normals(owner, 'quillmere')).toBeUndefined();
        for (const of of [8, 9]) {
          expect(await store.putNormals(owner, 'quillmere', normals(of))).toMatchObject({
            revision: expect.any(Number),
          });
        }
        expect(await store.normals(owner, 'quillmere')).toEqual(normals(9));
        expect(await store.comingDays(owner, 'quillmere')).toBeUndefined();
        const first = { atMs: Date.parse('2027-05-01T06:00Z'), days: airFrom('2027-05-01', [20, 21, 22]) };
        const second = { atMs: first.atMs + 1, days: airFrom('2027-05-03', [23, 24]) };
        for (const coming of [first, second]) await store.putComingDays(owner, 'quillmere', coming);
        expect(await store.comingDays(owner, 'quillmere')).toEqual(second);
      });

      test('cannot be kept where there is no place', async () => {
        const owner = randomUUID();
        expect(await store.putAir(owner, 'quillmere', airFrom('2027-05-01', [20]))).toBeUndefined();
        expect(await store.deleteAir(owner, 'quillmere')).toBeUndefined();
        expect(await store.putNormals(owner, 'quillmere', { meanMaxC: [], meanMinC: [] })).toBeUndefined();
        expect(await store.putComingDays(owner, 'quillmere', { atMs: 0, days: [] })).toBeUndefined();
        expect(await store.air(owner, 'quillmere')).toEqual([]);
      });
    });

    describe('the readings of a bed', () => {
      test('come back bit by bit, those of other thermometers apart', async () => {
        const owner = await newGarden();
        const soil = readingsFrom('2027-05-01T22:00Z', 47, [0.1 + 0.2, -0, 1 / 3, -12.345678901234567, 5e-324]);
        const atSeed = { ...hours('2027-05-01T00:00Z', 30), basis: new Uint8Array(30).fill(3) };
        const put = await store.putReadings(owner, 'north', probe, soil);
        expect(put).toEqual({ added: 5, unchanged: 0, replaced: 0 });
        await store.putReadings(owner, 'north', { medium: 'soil', probeDepthCm: null }, atSeed);
        await store.putReadings(owner, 'north', { medium: 'air', probeDepthCm: null }, hours('2027-05-01T00:00Z', 2));
        expect(await other.readings(owner, 'north', probe)).toEqual(soil);
        expect(await other.readings(owner, 'north', { medium: 'soil', probeDepthCm: null })).toEqual(atSeed);
        expect(await other.series(owner, 'north')).toEqual([
          { medium: 'air', probeDepthCm: null, from: '2027-04-30', to: '2027-04-30', readings: 2 },
          { medium: 'soil', probeDepthCm: null, from: '2027-04-30', to: '2027-05-02', readings: 30 },
          { medium: 'soil', probeDepthCm: 5, from: '2027-05-01', to: '2027-05-01', readings: 5 },
        ]);
      });

      test('sent twice change nothing; a reading with another value replaces', async () => {
        const owner = await newGarden();
        const sent = hours('2027-05-01T00:00Z', 100);
        await store.putReadings(owner, 'north', probe, sent);
        const before = await revisions(owner);
        const twice = await other.putReadings(owner, 'north', probe, sent);
        expect(twice).toEqual({ added: 0, unchanged: 100, replaced: 0 });
        expect(await revisions(owner)).toEqual(before);
        const mended = { ...sent, valueC: sent.valueC.with(40, 99) };
        const put = await store.putReadings(owner, 'north', probe, mended);
        expect(put).toEqual({ added: 0, unchanged: 99, replaced: 1 });
        expect(await store.readings(owner, 'north', probe)).toEqual(mended);
        expect((await revisions(owner)).bed).toBeGreaterThan(before.bed!);
      });

      test('have the days that all of them together have, in whatever pieces and order they came', async () => {
        for (const [timeZone, step] of [
          ['Europe/Berlin', 10],
          ['America/New_York', 60],
          ['Etc/GMT+2', 9 * 60],
          ['Etc/GMT+2', 25 * 60],
        ] as const) {
          const owner = await newGarden(timeZone);
          const values = Array.from({ length: Math.ceil((75 * 24 * 60) / step) }, (_, i) => ((i * 7919) % 301) / 10);
          const all = readingsFrom('2027-02-20T05:03:00Z', step, values);
          const pieces = [0.7, 0.75, 0, 0.1, 0.11, 0.5, 0.3].map((start) => Math.floor(start * values.length));
          for (const from of pieces) {
            const to = Math.min(...pieces.filter((start) => start > from), values.length);
            await store.putReadings(owner, 'north', probe, {
              atMs: all.atMs.subarray(from, to),
              valueC: all.valueC.subarray(from, to),
              basis: all.basis.subarray(from, to),
            });
          }
          const { days } = daysOf(all, zoneNamed(timeZone), longestJoinedMs(usualStepMs(all.atMs)));
          expect(await store.readingDays(owner, 'north', probe), `${timeZone} ${step}`).toEqual(days);
          expect(await store.readings(owner, 'north', probe)).toEqual(all);
          const range = { from: date('2027-03-10'), to: date('2027-03-31') };
          expect(await store.readingDays(owner, 'north', probe, range)).toEqual(
            days.filter((day) => day.date >= range.from && day.date <= range.to),
          );
        }
      });

      test('are read and deleted from one instant up to another', async () => {
        const owner = await newGarden();
        const all = hours('2027-05-01T00:00Z', 24 * 70);
        const airProbe = { medium: 'air', probeDepthCm: null } as const;
        await store.putReadings(owner, 'north', probe, all);
        await store.putReadings(owner, 'north', airProbe, all);
        const range = { fromMs: all.atMs[31]!, toMs: all.atMs[1000]! };
        expect((await store.readings(owner, 'north', probe, range)).atMs).toEqual(all.atMs.slice(31, 1000));
        expect((await store.readings(owner, 'north', probe, { toMs: all.atMs[2]! })).atMs).toEqual(
          all.atMs.slice(0, 2),
        );
        expect(await store.deleteReadings(owner, 'north', range, [probe])).toBe(969);
        expect(await store.deleteReadings(owner, 'north', range, [probe])).toBe(0);
        const left = await store.readings(owner, 'north', probe);
        expect([...left.valueC]).toEqual([...all.valueC.slice(0, 31), ...all.valueC.slice(1000)]);
        const { days } = daysOf(left, zoneNamed(quillmere.timeZone), longestJoinedMs(3_600_000));
        expect(await store.readingDays(owner, 'north', probe)).toEqual(days);
        expect(await store.deleteReadings(owner, 'north')).toBe(all.atMs.length - 969 + all.atMs.length);
        expect(await store.series(owner, 'north')).toEqual([]);
      });

      test('are sorted into other days when the place, or the bed by moving, comes into another zone', async () => {
        const owner = await newGarden('Etc/GMT+2');
        const all = hours('2027-05-01T00:00Z', 24 * 66);
        await store.putReadings(owner, 'north', probe, all);
        const daysIn = (zone: string) => daysOf(all, zoneNamed(zone), longestJoinedMs(3_600_000)).days;
        const before = await revisions(owner);
        await store.putPlace(owner, 'quillmere', { ...quillmere, timeZone: 'Pacific/Chatham' });
        expect(await store.readingDays(owner, 'north', probe)).toEqual(daysIn('Pacific/Chatham'));
        expect((await revisions(owner)).bed).toBeGreaterThan(before.bed!);
        await store.putPlace(owner, 'elsewhere', { ...quillmere, timeZone: 'Europe/Berlin' });
        await store.putBed(owner, 'north', { ...northBed, place: 'elsewhere' });
        expect(await store.readingDays(owner, 'north', probe)).toEqual(daysIn('Europe/Berlin'));
        expect(await store.readings(owner, 'north', probe)).toEqual(all);
      });

      test('out of order, or not finite, are refused as our own mistake', async () => {
        const owner = await newGarden();
        const backwards = { ...hours('2027-05-01T00:00Z', 2), atMs: Float64Array.of(2, 1) };
        await expect(store.putReadings(owner, 'north', probe, backwards)).rejects.toThrow('in time order');
        const endless = readingsFrom('2027-05-01T00:00Z', 60, [1, Number.NaN]);
        await expect(store.putReadings(owner, 'north', probe, endless)).rejects.toThrow('finite');
        expect(await store.series(owner, 'north')).toEqual([]);
      });

      test('cannot be kept where there is no bed', async () => {
        const owner = randomUUID();
        const sent = hours('2027-05-01T00:00Z', 2);
        expect(await store.putReadings(owner, 'north', probe, sent)).toBeUndefined();
        expect(await store.deleteReadings(owner, 'north')).toBeUndefined();
      });
    });

    seasonContract(() => ({ store, other }));
    alertContract(() => ({ store, other }));
    serviceContract(() => ({ store, other }));
    changeContract(() => ({ url: database.url, store, other }));

    describe('several at once', () => {
      test('lose none of the readings that they add to one day of one bed', async () => {
        const owner = await newGarden();
        const all = readingsFrom(
          '2027-05-01T02:00Z',
          1,
          Array.from({ length: 600 }, (_, i) => i / 10),
        );
        const every = (nth: number) => Uint32Array.from({ length: 60 }, (_, i) => 10 * i + nth);
        const puts = Array.from({ length: 10 }, (_, nth) =>
          (nth % 2 ? store : other).putReadings(owner, 'north', probe, {
            atMs: Float64Array.from(every(nth), (i) => all.atMs[i]!),
            valueC: Float64Array.from(every(nth), (i) => all.valueC[i]!),
            basis: new Uint8Array(60),
          }),
        );
        for (const put of await Promise.all(puts)) expect(put).toEqual({ added: 60, unchanged: 0, replaced: 0 });
        expect(await store.readings(owner, 'north', probe)).toEqual(all);
      });

      test('lose none of the places, beds and days that they put', async () => {
        const owner = await newGarden();
        await Promise.all(
          Array.from({ length: 20 }, async (_, i) => {
            const mine = i % 2 ? store : other;
            await mine.putBed(owner, `bed-${i}`, northBed);
            await mine.putAir(owner, 'quillmere', airFrom(`2027-05-${10 + i}`, [i]));
            await mine.putReadings(owner, `bed-${i}`, probe, hours('2027-05-01T00:00Z', 30));
          }),
        );
        expect(await store.beds(owner, { limit: 100 })).toHaveLength(21);
        expect((await store.air(owner, 'quillmere')).map(({ max }) => max)).toEqual([...Array(20).keys()]);
        const kept = await store.beds(owner, { limit: 100 });
        expect(new Set(kept.map(({ revision }) => revision)).size).toBe(21);
      });

      test('begin with an empty database at once, and each step of the schema is taken once', async () => {
        const empty = await emptyDatabase();
        const stores = await Promise.all(Array.from({ length: 6 }, () => openStore(empty.url)));
        for (const one of stores) await one.ready();
        await Promise.all(stores.map((one) => one.close()));
        const raw = await openDatabase(empty.url);
        const steps = await raw.all<{ name: string }>('select name from schema_migrations order by name');
        expect(steps.map(({ name }) => name)).toEqual(migrations.map(({ name }) => name));
        await raw.close();
        await empty.remove();
      });
    });

    describe('an owner', () => {
      test('sees and changes nothing of another, whatever the ids', async () => {
        const [mine, theirs] = [await newGarden(), randomUUID()];
        await store.putAir(mine, 'quillmere', airFrom('2027-05-01', [20]));
        await store.putNormals(mine, 'quillmere', { meanMaxC: Array(12).fill(20), meanMinC: Array(12).fill(10) });
        await store.putComingDays(mine, 'quillmere', { atMs: 1, days: airFrom('2027-05-02', [21]) });
        await store.putReadings(mine, 'north', probe, hours('2027-05-01T00:00Z', 30));
        await store.putLot(mine, 'packet', lot);
        await store.putSowing(mine, 'carrots', { ...sowing, lot: 'packet' });
        await store.putCount(mine, 'carrots', count('2027-05-20', 31));
        await store.putPlan(mine, 'autumn', plan);
        const entries = [{ uid: 'sow', digest: 'a' }];
        await store.calendarRevisions(mine, 'north', entries, 5);
        const everything = async (owner: string) => ({
          place: await store.place(owner, 'quillmere'),
          places: await store.places(owner, { limit: 100 }),
          bed: await store.bed(owner, 'north'),
          beds: await store.beds(owner, { limit: 100 }),
          air: await store.air(owner, 'quillmere'),
          normals: await store.normals(owner, 'quillmere'),
          coming: await store.comingDays(owner, 'quillmere'),
          series: await store.series(owner, 'north'),
          readings: [...(await store.readings(owner, 'north', probe)).atMs],
          days: await store.readingDays(owner, 'north', probe),
          lot: await store.lot(owner, 'packet'),
          lots: await store.lots(owner, { limit: 100 }),
          sowing: await store.sowing(owner, 'carrots'),
          sowings: await store.sowings(owner, { limit: 100 }),
          sowingsOf: await store.sowingsOf(owner, 'north', 100),
          plan: await store.plan(owner, 'autumn'),
          plans: await store.plans(owner, { limit: 100, bed: 'north' }),
          calendar: await store.calendarRevisions(owner, 'north', owner === mine ? entries : [], 6),
        });
        const before = await everything(mine);
        for (const seen of Object.values(await everything(theirs))) expect(seen ?? []).toEqual([]);

        expect(await store.putBed(theirs, 'north', northBed)).toEqual({ outcome: 'no-place' });
        expect(await store.putReadings(theirs, 'north', probe, hours('2027-05-01T00:00Z', 9))).toBeUndefined();
        expect(await store.deleteReadings(theirs, 'north')).toBeUndefined();
        expect(await store.deleteAir(theirs, 'quillmere')).toBeUndefined();
        expect(await store.putSowing(theirs, 'carrots', sowing)).toEqual({ outcome: 'no-bed' });
        expect(await store.putCount(theirs, 'carrots', count('2027-05-20', 99))).toBeUndefined();
        expect(await store.deleteCount(theirs, 'carrots', date('2027-05-20'))).toBeUndefined();
        expect(await store.deleteSowing(theirs, 'carrots')).toBe('absent');
        expect(await store.deletePlan(theirs, 'autumn')).toBe('absent');
        expect(await store.deleteLot(theirs, 'packet')).toBe('absent');
        expect(await store.renewCalendarToken(theirs, 'north')).toBeUndefined();
        expect(await store.calendarRevisions(theirs, 'north', entries, 9)).toBeUndefined();
        expect(await store.deleteBed(theirs, 'north')).toBe('absent');
        expect(await store.deletePlace(theirs, 'quillmere', { withBeds: true })).toBe('absent');
        await store.putPlace(theirs, 'quillmere', { ...quillmere, name: 'Theirs', timeZone: 'Europe/Berlin' });
        await store.putBed(theirs, 'north', { ...northBed, cover: 'fleece' });
        await store.putReadings(theirs, 'north', probe, readingsFrom('2027-05-01T00:00Z', 60, [99, 99]));
        await store.putAir(theirs, 'quillmere', airFrom('2027-05-01', [99]));
        await store.deleteReadings(theirs, 'north');
        expect(await store.putSowing(theirs, 'carrots', { ...sowing, lot: 'packet' })).toEqual({ outcome: 'no-lot' });
        await store.putLot(theirs, 'packet', { ...lot, storeC: 99 });
        await store.putSowing(theirs, 'carrots', { ...sowing, lot: 'packet', seeds: 99 });
        await store.putCount(theirs, 'carrots', count('2027-05-20', 99));
        await store.putPlan(theirs, 'autumn', { ...plan, crop: 'beet' });
        await store.calendarRevisions(theirs, 'north', [{ uid: 'sow', digest: 'theirs' }], 99);
        await store.renewCalendarToken(theirs, 'north');
        await store.deletePlace(theirs, 'quillmere', { withBeds: true });
        expect(await everything(mine)).toEqual(before);
      });
    });

    describe('the schema', () => {
      test('of a database that an earlier version has filled is brought up to date, and what was in it stays', async () => {
        for (let steps = 1; steps < migrations.length; steps++) {
          const old = await emptyDatabase();
          const raw = await openDatabase(old.url);
          await migrate(raw, migrations.slice(0, steps));
          await raw.transaction(async (query) => {
            await query.run("insert into owners (owner, revision) values ('mine', 7)");
            await query.run(
              `insert into places (owner, id, revision, name, latitude, longitude, time_zone)
               values ('mine', 'quillmere', 6, 'Quillmere Allotment Society', 44, -30, 'Etc/GMT+2')`,
            );
            await query.run(
              `insert into beds (owner, id, revision, place, name, kind, cover, moisture, shade_percent)
               values ('mine', 'north', 7, 'quillmere', 'North bed', 'open-ground', 'bare', 'rain', 10)`,
            );
          });
          await raw.close();
          const today = await openStore(old.url);
          expect(await today.bed('mine', 'north')).toMatchObject({ ...northBed, revision: 7 });
          await today.putReadings('mine', 'north', probe, hours('2027-05-01T00:00Z', 3));
          await today.close();
          const again = await openStore(old.url);
          expect((await again.readings('mine', 'north', probe)).atMs).toHaveLength(3);
          await again.close();
          await old.remove();
        }
      });

      test('from before years of air were packed carries every day over as it was', async () => {
        const old = await emptyDatabase();
        const raw = await openDatabase(old.url);
        await migrate(raw, migrations.slice(0, 6));
        const days = [
          { date: date('1999-12-31'), min: -3.4, mean: null, max: 1.25 },
          { date: date('2000-02-29'), min: 1 / 3, mean: 5e-324, max: 412.7 },
          { date: date('2000-12-31'), min: null, mean: null, max: null },
          ...airFrom('2001-01-01', [20.1, 21.2, 22.3]),
        ];
        await raw.transaction(async (query) => {
          await query.run("insert into owners (owner, revision) values ('mine', 7)");
          for (const place of ['quillmere', 'second']) {
            await query.run(
              `insert into places (owner, id, revision, name, latitude, longitude, time_zone)
               values ('mine', $1, 6, 'Quillmere Allotment Society', 44, -30, 'Etc/GMT+2')`,
              [place],
            );
          }
          for (const day of days) {
            await query.run(
              `insert into air_days (owner, place, date, min_c, mean_c, max_c)
               values ('mine', 'quillmere', $1, $2, $3, $4)`,
              [day.date, day.min, day.mean, day.max],
            );
          }
        });
        await raw.close();
        const today = await openStore(old.url);
        expect(await today.air('mine', 'quillmere')).toEqual(days);
        expect(await today.air('mine', 'second')).toEqual([]);
        expect(await today.place('mine', 'quillmere')).toMatchObject({ revision: 6 });
        expect(await today.putAir('mine', 'quillmere', days)).toEqual({ added: 0, unchanged: 6, replaced: 0 });
        await today.close();
        await old.remove();
      });

      test('from before frost dates were kept knows none, and keeps them from then on', async () => {
        const old = await emptyDatabase();
        const raw = await openDatabase(old.url);
        await migrate(raw, migrations.slice(0, 13));
        await raw.transaction(async (query) => {
          await query.run("insert into owners (owner, revision) values ('mine', 7)");
          await query.run(
            `insert into places (owner, id, revision, name, latitude, longitude, time_zone)
             values ('mine', 'quillmere', 6, 'Quillmere Allotment Society', 44, -30, 'Etc/GMT+2')`,
          );
        });
        await raw.close();
        const today = await openStore(old.url);
        const place = (await today.place('mine', 'quillmere'))!;
        expect(place).toMatchObject({ revision: 6, lastFrostAround: null, firstFrostAround: null });
        const { id: _, revision: __, fieldsRevision: ___, ...fields } = place;
        await today.putPlace('mine', 'quillmere', { ...fields, lastFrostAround: '05-20' });
        expect(await today.place('mine', 'quillmere')).toMatchObject({
          lastFrostAround: '05-20',
          firstFrostAround: null,
        });
        await today.close();
        await old.remove();
      });

      test('from before there were calendars gives a bed a token once it is replaced or renewed, not before', async () => {
        const old = await emptyDatabase();
        const raw = await openDatabase(old.url);
        await migrate(raw);
        await storeOf(raw).putPlace('mine', 'quillmere', quillmere);
        const beds = ['north', 'south'];
        for (const bed of beds) await storeOf(raw).putBed('mine', bed, northBed);
        await raw.transaction((query) => query.run('update beds set calendar_token = null'));
        const tokenOf = async (bed: string) => (await storeOf(raw).bed('mine', bed))!.calendarToken;
        expect(await storeOf(raw).putBed('mine', 'north', northBed)).toMatchObject({
          outcome: 'unchanged',
          kept: { calendarToken: null },
        });
        await storeOf(raw).putBed('mine', 'north', { ...northBed, cover: 'mulch' });
        expect(await tokenOf('north')).toMatch(/^[\w-]{43}$/);
        expect(await tokenOf('south')).toBeNull();
        const token = await storeOf(raw).renewCalendarToken('mine', 'south');
        expect(await tokenOf('south')).toBe(token);
        await raw.close();
        await old.remove();
      });

      test('from when a place had one source keeps it, with what is known of it, as the first of a list', async () => {
        const old = await emptyDatabase();
        const raw = await openDatabase(old.url);
        await migrate(raw, migrations.slice(0, 12));
        await raw.transaction(async (query) => {
          await query.run("insert into owners (owner, revision) values ('mine', 7)");
          for (const [place, url] of [
            ['asked', 'https://weather.example/a'],
            ['new', 'https://weather.example/b'],
            ['changed', 'https://weather.example/c'],
            ['without', null],
          ] as const) {
            await query.run(
              `insert into places (owner, id, revision, name, latitude, longitude, time_zone, source_format, source_url,
                 source_every_hours) values ('mine', $1, 6, 'Quillmere', 44, -30, 'Etc/GMT+2', $2, $3, $4)`,
              [place, url === null ? null : 'station-day-file', url, url === null ? null : 6],
            );
          }
          for (const [place, url] of [
            ['asked', 'https://weather.example/a'],
            ['changed', 'https://weather.example/before'],
          ] as const) {
            await query.run(
              `insert into sources (owner, place, format, url, asked_url, etag, fetched_at_ms, tried_at_ms, next_at_ms,
                 failures, last_error) values ('mine', $1, 'station-day-file', $2, $2, '"1"', 5000, 6000, 7000, 2, 'No.')`,
              [place, url],
            );
          }
        });
        await raw.close();
        const today = await openStore(old.url);
        const own = (url: string) => ({ preset: null, format: 'station-day-file', url, everyHours: 6 });
        const asked = own('https://weather.example/a');
        expect(await today.place('mine', 'asked')).toMatchObject({ revision: 6, sources: [asked] });
        expect((await today.place('mine', 'without'))!.sources).toEqual([]);
        const unknown = { notBeforeMs: null, days: null };
        expect(await today.sourceStates('mine', 'asked')).toEqual([
          {
            source: asked,
            fetchedAtMs: 5000,
            triedAtMs: 6000,
            nextAtMs: 7000,
            failures: 2,
            lastError: 'No.',
            ...unknown,
          },
        ]);
        const fresh = { fetchedAtMs: null, triedAtMs: null, nextAtMs: 0, failures: 0, lastError: null, ...unknown };
        expect(await today.sourceStates('mine', 'new')).toEqual([
          { source: own('https://weather.example/b'), ...fresh },
        ]);
        expect(await today.sourceStates('mine', 'changed')).toEqual([
          { source: own('https://weather.example/c'), ...fresh },
        ]);
        expect(await today.leaseSource('mine', 'asked', 0, 7000, 8000)).toMatchObject({
          etag: '"1"',
          fetchedAtMs: 5000,
        });
        expect((await today.dueSources(7000, 9)).map(({ place }) => place)).toEqual(['changed', 'new']);
        await today.close();
        await old.remove();
      });

      test('of a later version is left alone', async () => {
        const later = await emptyDatabase();
        const raw = await openDatabase(later.url);
        await migrate(raw, [
          ...migrations,
          { name: '999-moon-phases', statements: () => ['create table moons (n integer)'] },
        ]);
        await expect(openStore(later.url)).rejects.toThrow('later version: 999-moon-phases');
        await raw.close();
        await later.remove();
      });

      test('that cannot be brought up to date is left as it was', async () => {
        const empty = await emptyDatabase();
        const raw = await openDatabase(empty.url);
        const broken = { name: '002-broken', statements: () => ['create table fine (n integer)', 'create nonsense'] };
        await expect(migrate(raw, [migrations[0]!, broken])).rejects.toThrow();
        await migrate(raw);
        await expect(raw.all('select * from fine')).rejects.toThrow();
        await raw.close();
        await empty.remove();
      });

      test('has the owner first in every key, by which rows can be spread over servers', () => {
        const statements = migrations.flatMap((step) => step.statements('text'));
        const tables = statements.filter((statement) => statement.startsWith('create table'));
        expect(tables.length).toBeGreaterThan(6);
        for (const table of tables) expect(table).toMatch(/primary key \(owner, |owner text not null primary key/);
        for (const table of tables) expect(table.match(/foreign key \((?!owner, )/)).toBeNull();
      });
    });

    describe('the source of a place', () => {
      const source = { preset: null, format: 'station-day-file', url: 'https://weather.example/{from}', everyHours: 6 };
      const MINUTE_MS = 60_000;
      const nowMs = Date.parse('2027-05-01T06:00Z');
      /** A new owner with a place that has a source. */
      async function newSource(): Promise<string> {
        const owner = randomUUID();
        await store.putPlace(owner, 'quillmere', { ...quillmere, sources: [source] });
        return owner;
      }
      const isDue = async (owner: string, atMs: number) =>
        (await other.dueSources(atMs, 1000)).some((due) => due.owner === owner);
      const fetched = {
        outcome: 'fetched',
        atMs: nowMs,
        nextAtMs: nowMs + 360 * MINUTE_MS,
        notBeforeMs: null,
        askedUrl: 'https://weather.example/2027-05-01',
        etag: '"a"',
        lastModified: null,
        days: { from: date('1997-05-01'), to: date('2027-04-28'), count: 10_950 },
      } as const;
      const lease = (owner: string, atMs = nowMs, n = 0) =>
        store.leaseSource(owner, 'quillmere', n, atMs, atMs + 10 * MINUTE_MS);
      const state = async (owner: string, n = 0) => (await other.sourceStates(owner, 'quillmere'))[n];

      test('is due at once, and leased to one alone, until the lease has run out', async () => {
        const owner = await newSource();
        expect(await isDue(owner, nowMs)).toBe(true);
        const both = await Promise.all(
          [store, other].map((one) => one.leaseSource(owner, 'quillmere', 0, nowMs, nowMs + 10 * MINUTE_MS)),
        );
        expect(both.filter((one) => one !== undefined)).toHaveLength(1);
        expect(both.find((one) => one !== undefined)).toMatchObject({
          place: { id: 'quillmere', sources: [source] },
          source,
          askedUrl: null,
          etag: null,
          fetchedAtMs: null,
          failures: 0,
        });
        expect(await isDue(owner, nowMs + 9 * MINUTE_MS)).toBe(false);
        expect(await isDue(owner, nowMs + 10 * MINUTE_MS)).toBe(true);
        expect(await lease(owner, nowMs + 10 * MINUTE_MS)).toBeDefined();
      });

      test('is due again in its hours after it was fetched, and what is known of the answer is there', async () => {
        const owner = await newSource();
        const { lease: mine } = (await lease(owner))!;
        expect(await store.endLease(owner, 'quillmere', mine, fetched)).toBe(true);
        expect(await state(owner)).toEqual({
          source,
          fetchedAtMs: nowMs,
          triedAtMs: nowMs,
          nextAtMs: fetched.nextAtMs,
          notBeforeMs: null,
          failures: 0,
          lastError: null,
          days: fetched.days,
        });
        expect(await isDue(owner, fetched.nextAtMs - 1)).toBe(false);
        expect(await lease(owner, fetched.nextAtMs - 1)).toBeUndefined();
        const { askedUrl, etag, lastModified } = fetched;
        expect(await lease(owner, fetched.nextAtMs)).toMatchObject({
          askedUrl,
          etag,
          lastModified,
          fetchedAtMs: nowMs,
        });
      });

      test('keeps its last good answer through failures, which are counted and told', async () => {
        const owner = await newSource();
        await store.endLease(owner, 'quillmere', (await lease(owner))!.lease, fetched);
        for (let n = 1; n <= 2; n++) {
          const atMs = fetched.nextAtMs + n * 60 * MINUTE_MS;
          const { lease: mine, failures } = (await lease(owner, atMs))!;
          expect(failures).toBe(n - 1);
          const end = {
            outcome: 'failed',
            nextAtMs: atMs + 5 * MINUTE_MS,
            notBeforeMs: null,
            error: `Reason ${n}.`,
          } as const;
          expect(await store.endLease(owner, 'quillmere', mine, end)).toBe(true);
          expect(await state(owner)).toMatchObject({
            fetchedAtMs: nowMs,
            triedAtMs: atMs,
            failures: n,
            lastError: `Reason ${n}.`,
          });
          expect(await isDue(owner, end.nextAtMs - 1)).toBe(false);
        }
        const { lease: mine, etag } = (await lease(owner, nowMs + 9e8))!;
        expect(etag).toBe('"a"');
        await store.endLease(owner, 'quillmere', mine, { ...fetched, nextAtMs: nowMs + 1e9 });
        expect(await state(owner)).toMatchObject({ failures: 0, lastError: null });
      });

      test('given up is due as before; a lease that has run out and was taken by another ends nothing', async () => {
        const owner = await newSource();
        const first = (await lease(owner))!;
        await store.endLease(owner, 'quillmere', first.lease, { outcome: 'given-up' });
        expect(await isDue(owner, nowMs)).toBe(true);
        const second = (await lease(owner))!;
        expect(await store.endLease(owner, 'quillmere', first.lease, fetched)).toBe(false);
        expect(await state(owner)).toMatchObject({ fetchedAtMs: null });
        expect(await store.endLease(owner, 'quillmere', second.lease, fetched)).toBe(true);
      });

      test('with another url or format is a new one; with other hours or another name of the place it is the same', async () => {
        for (const change of [{ url: 'https://other.example/' }, { format: 'daily-archive-json' }]) {
          const owner = await newSource();
          const { lease: old } = (await lease(owner))!;
          await store.endLease(owner, 'quillmere', old, fetched);
          await store.putPlace(owner, 'quillmere', {
            ...quillmere,
            name: 'Q',
            sources: [{ ...source, everyHours: 24 }],
          });
          expect(await isDue(owner, nowMs)).toBe(false);
          await store.putPlace(owner, 'quillmere', { ...quillmere, sources: [{ ...source, ...change }] });
          expect(await state(owner)).toMatchObject({ fetchedAtMs: null, failures: 0 });
          expect(await lease(owner)).toMatchObject({ etag: null, askedUrl: null, fetchedAtMs: null });
          expect(await store.endLease(owner, 'quillmere', old, fetched)).toBe(false);
        }
      });

      test('asked more often than before does not wait for what was planned', async () => {
        const owner = await newSource();
        await store.endLease(owner, 'quillmere', (await lease(owner))!.lease, fetched);
        await store.putPlace(owner, 'quillmere', { ...quillmere, sources: [{ ...source, everyHours: 1 }] });
        expect(await isDue(owner, nowMs + 59 * MINUTE_MS)).toBe(false);
        expect(await isDue(owner, nowMs + 60 * MINUTE_MS)).toBe(true);
      });

      test('is one of several, each with a state of its own, which it keeps when the list is put in another order', async () => {
        const owner = await newSource();
        const named = { preset: 'met-norway', format: null, url: null, everyHours: 6 };
        await store.putPlace(owner, 'quillmere', { ...quillmere, sources: [source, named] });
        await store.endLease(owner, 'quillmere', (await lease(owner))!.lease, fetched);
        const { lease: mine, source: leased } = (await lease(owner, nowMs, 1))!;
        expect(leased).toEqual(named);
        await store.putPlace(owner, 'quillmere', { ...quillmere, sources: [named, source] });
        const end = { outcome: 'failed', nextAtMs: nowMs + MINUTE_MS, notBeforeMs: null, error: 'No.' } as const;
        expect(await store.endLease(owner, 'quillmere', mine, end)).toBe(true);
        expect(await state(owner, 0)).toMatchObject({ source: named, failures: 1, lastError: 'No.', days: null });
        expect(await state(owner, 1)).toMatchObject({ source, fetchedAtMs: nowMs, failures: 0, days: fetched.days });
        expect((await other.place(owner, 'quillmere'))!.sources).toEqual([named, source]);
        expect((await other.places(owner, { limit: 5 })).map(({ sources }) => sources)).toEqual([[named, source]]);
        await store.putPlace(owner, 'quillmere', { ...quillmere, sources: [source] });
        expect(await other.sourceStates(owner, 'quillmere')).toMatchObject([{ source, fetchedAtMs: nowMs }]);
      });

      test('is among the due ones of presets only if it is a preset', async () => {
        const owner = await newSource();
        await store.putPlace(owner, 'quillmere', {
          ...quillmere,
          sources: [source, { preset: 'nasa-power', format: null, url: null, everyHours: 24 }],
        });
        const due = async (presetsOnly: boolean) =>
          (await other.dueSources(nowMs, 10_000, { presetsOnly })).filter((one) => one.owner === owner);
        expect((await due(false)).map(({ n }) => n)).toEqual([0, 1]);
        expect((await due(true)).map(({ n }) => n)).toEqual([1]);
      });

      test('is due at once when hurried, unless it was tried just now or its publisher asks to wait', async () => {
        const owner = await newSource();
        await store.endLease(owner, 'quillmere', (await lease(owner))!.lease, fetched);
        const later = nowMs + 6 * MINUTE_MS;
        await store.hurrySources(owner, 'quillmere', later, nowMs - 1);
        expect(await isDue(owner, later)).toBe(false);
        await store.hurrySources(owner, 'quillmere', later, nowMs);
        expect(await isDue(owner, later)).toBe(true);
        const notBeforeMs = later + 60 * MINUTE_MS;
        const { lease: mine } = (await lease(owner, later))!;
        await store.endLease(owner, 'quillmere', mine, { ...fetched, atMs: later, notBeforeMs });
        await store.hurrySources(owner, 'quillmere', notBeforeMs - 1, notBeforeMs - 1);
        expect(await isDue(owner, notBeforeMs - 1)).toBe(false);
        // Nor is it where its owner shortens its hours.
        await store.putPlace(owner, 'quillmere', { ...quillmere, sources: [{ ...source, everyHours: 0.01 }] });
        expect(await isDue(owner, notBeforeMs - 1)).toBe(false);
        expect(await isDue(owner, notBeforeMs)).toBe(true);
      });

      test('put off to spare its publisher waits until then, and has not failed', async () => {
        const owner = await newSource();
        const { lease: mine } = (await lease(owner))!;
        const nextAtMs = nowMs + 30 * MINUTE_MS;
        await store.endLease(owner, 'quillmere', mine, { outcome: 'put-off', nextAtMs });
        expect(await state(owner)).toMatchObject({ failures: 0, fetchedAtMs: null, nextAtMs, notBeforeMs: nextAtMs });
        expect(await isDue(owner, nextAtMs - 1)).toBe(false);
        expect(await isDue(owner, nextAtMs)).toBe(true);
      });

      test('is neither due nor told of where the place has none, or is gone', async () => {
        const owner = await newSource();
        await lease(owner);
        await store.putPlace(owner, 'quillmere', quillmere);
        expect(await isDue(owner, nowMs + 1e9)).toBe(false);
        expect(await state(owner)).toBeUndefined();
        expect(await lease(owner, nowMs + 1e9)).toBeUndefined();
        expect(await store.deletePlace(owner, 'quillmere')).toBe('deleted');
        expect(await store.leaseSource(randomUUID(), 'quillmere', 0, nowMs, nowMs + 1)).toBeUndefined();
      });
    });
  });
}
