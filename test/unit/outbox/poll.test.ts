import { describe, expect, test } from 'vitest';
import { HOUR_MS } from '../../../src/basics/calendar.js';
import type { KnownNow } from '../../../src/garden/sowing/known-now.js';
import { MAX_PENDING, type SubscriptionFields } from '../../../src/garden/store/alert-store.js';
import type { Store } from '../../../src/garden/store/store.js';
import { pollDue } from '../../../src/outbox/poll.js';
import { openStore } from '../../../src/storage/open-store.js';
import { airFrom, date, northBed, probe, quillmere, readingsFrom } from '../../storage/make.js';
import { closedAfterEach } from '../egress/servers.js';
import { milestone, sowingNow } from '../garden/known.js';
import { sayPlainly } from '../words/say-plainly.js';

const OWNER = 'quillmere';
/** Noon at the place. */
const NOW = Date.parse('2027-05-03T14:00Z');

const { open } = closedAfterEach();

async function garden() {
  const store: Store = await openStore('sqlite::memory:');
  open.push(store);
  await store.putPlace(OWNER, 'quillmere', quillmere);
  await store.putBed(OWNER, 'north', northBed);
  const fields: SubscriptionFields = {
    url: 'https://shed.example/',
    events: ['emergence-shift', 'frost'],
    beds: null,
    crops: null,
  };
  await store.putSubscription(OWNER, 'shed', fields, NOW);
  let hours = 0;
  let looks = 0;
  const faults: unknown[] = [];
  const state = { known: { sowings: [], windows: [] } as KnownNow, fails: false };
  const silent = (): void => {};
  const settings = (version = '1.0.0') => ({
    store,
    version,
    say: sayPlainly,
    look: async () => {
      looks++;
      if (state.fails) throw new Error('no forecast now');
      return state.known;
    },
    clock: () => new Date(NOW + hours * HOUR_MS),
    log: { info: silent, warn: silent, error: (details: object) => void faults.push(details) },
    signal: new AbortController().signal,
  });
  return {
    store,
    state,
    faults,
    fields,
    settings,
    looks: () => looks,
    /** Looks at what is due so long after the start. */
    async lookAfter(after: number, version?: string) {
      hours = after;
      return pollDue(settings(version));
    },
    /** What waits to be sent, taken out. */
    async sent() {
      const messages: Record<string, unknown>[] = [];
      for (;;) {
        const delivery = await store.leaseDelivery(OWNER, 'shed', NOW + hours * HOUR_MS, NOW);
        if (!delivery) return messages;
        messages.push(JSON.parse(delivery.body));
        await store.endDelivery(OWNER, 'shed', delivery, { outcome: 'delivered', atMs: NOW });
      }
    },
  };
}

const frosty = {
  known: { sowings: [sowingNow({ comingMinC: [{ date: date('2027-05-20'), minC: -1.26 }] })], windows: [] },
};

describe('a garden is polled for a subscription', () => {
  test('and a change is notified once, in a message by the contract', async () => {
    const { lookAfter, state, sent } = await garden();
    Object.assign(state, frosty);
    expect(await lookAfter(0)).toBe(1);
    const [message] = await sent();
    expect(message).toEqual({
      type: 'frost',
      timestamp: '2027-05-03T14:00:00.000Z',
      data: {
        bed: 'north',
        sowing: 'beans',
        crop: 'snap-bean',
        nights: [{ date: '2027-05-20', minC: -1.3 }],
        text: expect.stringContaining('on 20 May 2027 the air is forecast to fall to -1.3 °C'),
        code: 'news.frost',
        params: {
          crop: 'snap-bean',
          bed: 'north',
          sownOn: expect.stringMatching(/^2027-/),
          date: '2027-05-20',
          minC: -1.3,
          nights: 1,
        },
      },
    });
    expect(await lookAfter(30)).toBe(0);
    expect(await sent()).toEqual([]);
  });

  test('at most every quarter of an hour, and only after a change of something or of the date', async () => {
    const { store, lookAfter, looks, fields } = await garden();
    await lookAfter(0);
    expect(looks()).toBe(1);
    await lookAfter(5);
    expect(looks()).toBe(1);
    const changes: [hours: number, change: () => Promise<unknown>][] = [
      [6, () => store.putAir(OWNER, 'quillmere', airFrom('2027-05-01', [20]))],
      [7, () => store.putBed(OWNER, 'north', { ...northBed, cover: 'fleece' })],
      [8, () => store.putSubscription(OWNER, 'shed', { ...fields, crops: ['snap-bean'] }, NOW + 8 * HOUR_MS)],
      // Midnight at the place.
      [12, async () => {}],
    ];
    for (const [i, [hours, change]] of changes.entries()) {
      await change();
      await lookAfter(hours);
      expect(looks()).toBe(i + 2);
      await lookAfter(hours + 0.5);
      expect(looks()).toBe(i + 2);
    }
    await lookAfter(14, '1.0.1');
    expect(looks()).toBe(6);
    await store.putBed(OWNER, 'north', northBed);
    await lookAfter(14.1, '1.0.1');
    expect(looks()).toBe(6);
    await lookAfter(14.25, '1.0.1');
    expect(looks()).toBe(7);
  });

  test('twice to four times a day where a probe sends each minute, and again when its soil moves, a sowing is counted or older readings come', async () => {
    const { store, lookAfter, looks } = await garden();
    const sowing = {
      bed: 'north',
      crop: 'snap-bean',
      date: date('2027-05-01'),
      time: '12:00',
      depthCm: null,
      seeds: 100,
    };
    await store.putSowing(OWNER, 'beans', { ...sowing, lot: null, method: 'direct', roomC: null });
    const start = '2027-05-03T14:00Z';
    /** A day that swings by ten degrees, and is warmer by `moreC` than usual. */
    const minutesFrom = (hours: number, n: number, moreC = 0) =>
      readingsFrom(
        new Date(Date.parse(start) + hours * HOUR_MS).toISOString(),
        1,
        Array.from(
          { length: n },
          (_, i) => 15 + moreC + 5 * Math.sin((2 * Math.PI * (hours + i / 60)) / 24) + 0.3 * Math.sin(1.7 * i),
        ),
      );
    await store.putReadings(OWNER, 'north', probe, minutesFrom(-48, 48 * 60));
    await lookAfter(0);
    expect(looks()).toBe(1);
    /** Readings of a day, sent by the quarter of an hour, each followed by a look where one is due. */
    const dayOf = async (day: number, moreC: number): Promise<number> => {
      const before = looks();
      for (let quarter = 0; quarter < 96; quarter++) {
        const hours = 24 * day + quarter / 4;
        await store.putReadings(OWNER, 'north', probe, minutesFrom(hours, 15, moreC));
        await lookAfter(hours + 0.25);
      }
      return looks() - before;
    };
    // Midnight at the place.
    expect(await dayOf(0, 0)).toBe(1);
    const warmer = await dayOf(1, 2);
    expect(warmer).toBeGreaterThanOrEqual(3);
    expect(warmer).toBeLessThanOrEqual(5);
    const before = looks();
    await lookAfter(49);
    expect(looks()).toBe(before);
    await store.putCount(OWNER, 'beans', { date: date('2027-05-05'), seedlings: 4, ofSeeds: null, thinned: false });
    await lookAfter(49.5);
    expect(looks()).toBe(before + 1);
    await store.putReadings(OWNER, 'north', probe, minutesFrom(-24 * 9, 60));
    await lookAfter(50);
    expect(looks()).toBe(before + 2);
    await lookAfter(50.5);
    expect(looks()).toBe(before + 2);
  });

  test('by two services at once notifies nothing twice', async () => {
    const { store, state, settings, sent } = await garden();
    Object.assign(state, frosty);
    const told = await Promise.all([pollDue(settings()), pollDue(settings())]);
    expect(told.sort()).toEqual([0, 1]);
    expect(await store.subscription(OWNER, 'shed')).toMatchObject({ pending: 1 });
    expect(await sent()).toHaveLength(1);
  });

  test('again after a failure, and the others all the same', async () => {
    const { store, fields, lookAfter, state, faults, sent } = await garden();
    Object.assign(state, frosty);
    await store.putSubscription(OWNER, 'a-first', { ...fields, events: ['hot-spell'] }, NOW);
    state.fails = true;
    expect(await lookAfter(0)).toBe(0);
    expect(faults).toHaveLength(2);
    state.fails = false;
    expect(await lookAfter(1)).toBe(1);
    expect(await sent()).toHaveLength(1);
  });

  test('with a full outbox notifies when there is room, of the state by then', async () => {
    const { store, lookAfter, state, sent } = await garden();
    const half = (on: string) => ({
      emergence: { first: milestone('2027-05-10'), half: milestone(on), most: milestone(on) },
    });
    const knownHalf = (on: string) => ({ known: { sowings: [sowingNow({ forecast: half(on) })], windows: [] } });
    Object.assign(state, knownHalf('2027-05-14'));
    await lookAfter(0);
    const { marks } = (await store.takePoll(OWNER, 'shed', NOW + 1e9, NOW))!;
    expect([...marks.keys()]).toEqual(['emergence-shift beans']);
    const padding = Array.from({ length: MAX_PENDING }, (_, i) => ({
      subject: `p${i}`,
      before: null,
      mark: 'x',
      body: '{}',
    }));
    await store.addNotifications(OWNER, 'shed', padding, 'other');
    Object.assign(state, knownHalf('2027-05-18'));
    expect(await lookAfter(1)).toBe(0);
    Object.assign(state, knownHalf('2027-05-20'));
    await sent();
    expect(await lookAfter(2)).toBe(1);
    expect(await sent()).toMatchObject([
      { type: 'emergence-shift', data: { before: '2027-05-14', half: '2027-05-20' } },
    ]);
  });
});
