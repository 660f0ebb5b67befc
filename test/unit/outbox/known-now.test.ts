import { createHmac } from 'node:crypto';
import { text } from 'node:stream/consumers';
import { describe, expect, test } from 'vitest';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import { HOUR_MS } from '../../../src/basics/calendar.js';
import { growing } from '../../../src/garden/sowing/growing.js';
import { type KnownNow, knownNow } from '../../../src/garden/sowing/known-now.js';
import type { SubscriptionFields } from '../../../src/garden/store/alert-store.js';
import type { Store } from '../../../src/garden/store/store.js';
import { deliver } from '../../../src/outbox/deliver.js';
import { pollDue } from '../../../src/outbox/poll.js';
import { webhookSender } from '../../../src/outbox/send-webhook.js';
import { openStore } from '../../../src/storage/open-store.js';
import { airFrom, date, northBed, quillmere, sowing } from '../../storage/make.js';
import { closedAfterEach, serve } from '../egress/servers.js';
import { sayPlainly } from '../words/say-plainly.js';

const OWNER = 'quillmere';
/** Noon at the place. */
const NOW = Date.parse('2027-05-03T14:00Z');

const { open } = closedAfterEach();

const ask = {
  growing: async (question: Parameters<typeof growing>[0]) => growing(question),
  windows: async (question: Parameters<typeof sowingWindows>[0]) => sowingWindows(question),
};

/** Air by the day up to yesterday, of mild years, as many as asked for. */
const mildYears = (years: number) =>
  airFrom(
    `${2027 - years}-05-03`,
    Array.from(
      { length: Math.round(365.25 * years) },
      (_, day) => 12 - 5 * Math.cos((2 * Math.PI * (day + 98)) / 365.25),
    ),
  ).filter((day) => day.date < '2027-05-03');

/** The society's garden with a bed, lettuce and beans sown today into it, and a mild week ahead. */
async function garden(years = 1): Promise<Store> {
  const store = await openStore('sqlite::memory:');
  open.push(store);
  await store.putPlace(OWNER, 'quillmere', quillmere);
  await store.putAir(OWNER, 'quillmere', mildYears(years));
  await store.putComingDays(OWNER, 'quillmere', { atMs: NOW, days: airFrom('2027-05-03', Array(14).fill(15)) });
  await store.putBed(OWNER, 'north', northBed);
  for (const [id, crop] of [
    ['lettuces', 'lettuce'],
    ['beans', 'snap-bean'],
  ] as const) {
    await store.putSowing(OWNER, id, { ...sowing, crop });
  }
  return store;
}
const everything: SubscriptionFields = {
  url: 'https://shed.example/',
  events: ['hot-spell', 'emergence-shift', 'frost'],
  beds: null,
  crops: null,
};
const known = (store: Store, changes: Partial<SubscriptionFields> = {}, beds = ['north']): Promise<KnownNow> =>
  knownNow(store, OWNER, { ...everything, ...changes }, beds, new Date(NOW), ask);
const ids = ({ sowings }: KnownNow) => sowings.map(({ sowing: { id } }) => id);

describe('what is known now', () => {
  test('of a sowing is its forecast from stored data, and the coldest of the forecast days', async () => {
    const { sowings, windows } = await known(await garden());
    expect(windows).toEqual([]);
    expect(sowings.map(({ crop }) => crop.id).sort()).toEqual(['lettuce', 'snap-bean']);
    for (const one of sowings) {
      expect(one).toMatchObject({ today: '2027-05-03', sowing: { bed: 'north' }, forecast: { hotSpells: [] } });
      expect(one.forecast!.emergence.half).toMatchObject({ date: expect.stringMatching(/^2027-0[56]-/) });
      expect(one.plantOut).toBeNull();
      expect(one.comingMinC).toHaveLength(14);
      expect(one.comingMinC[0]).toEqual({ date: '2027-05-03', minC: 5 });
    }
  });

  test('of the coming nights is all that is forecast, though the air before them is not known, or no day of them', async () => {
    const store = await garden();
    await store.deleteAir(OWNER, 'quillmere', { from: date('2027-04-01') });
    const days = [{ date: date('2027-05-04'), min: -2, mean: null, max: null }];
    await store.putComingDays(OWNER, 'quillmere', { atMs: NOW, days });
    for (const { comingMinC } of (await known(store)).sowings) {
      expect(comingMinC).toEqual([{ date: '2027-05-04', minC: -2 }]);
    }
  });

  test('of the coming nights is nothing for a bed that is indoors', async () => {
    const store = await garden();
    await store.putBed(OWNER, 'north', { ...northBed, kind: 'indoors', roomC: 20 });
    expect((await known(store)).sowings.map(({ comingMinC }) => comingMinC)).toEqual([[], []]);
  });

  test('of a sowing indoors is when it will be planted out, as nights allow', async () => {
    const store = await garden(4);
    await store.putSowing(OWNER, 'trays', { ...sowing, crop: 'cabbage', method: 'indoors', roomC: 20 });
    const { sowings } = await known(store, { crops: ['cabbage'] });
    expect(sowings).toMatchObject([{ sowing: { id: 'trays' }, plantOut: expect.stringMatching(/^2027-0[67]-/) }]);
  });

  test('is of the beds and crops that are wanted, and of sowings that still live', async () => {
    const store = await garden();
    await store.putBed(OWNER, 'south', northBed);
    await store.putSowing(OWNER, 'southern', { ...sowing, bed: 'south', crop: 'lettuce' });
    await store.putSowing(OWNER, 'long-ago', { ...sowing, crop: 'lettuce', date: date('2026-10-01') });
    await store.putSowing(OWNER, 'own', {
      ...sowing,
      crop: { rows: [10, 20].map((temperatureC) => ({ temperatureC, days: 9, percent: 80 })) },
    });
    const both = ['north', 'south'];
    expect(ids(await known(store, {}, both)).sort()).toEqual(['beans', 'lettuces', 'own', 'southern']);
    expect(ids(await known(store, { beds: ['south'] }, both))).toEqual(['southern']);
    expect(ids(await known(store, { crops: ['lettuce'] }, both)).sort()).toEqual(['lettuces', 'southern']);
    expect(ids(await known(store, { events: ['window-open'], crops: ['lettuce'], beds: ['west'] }, both))).toEqual([]);
  });

  test('is found without reading the air of sowings that are long over', async () => {
    const store = await garden();
    let reads = 0;
    const air: Store['air'] = (...args) => {
      reads++;
      return store.air(...args);
    };
    // What was read of one store is kept beside it, so that each look has a store of its own.
    const counting = (): Store => ({ ...store, air });
    await known(counting());
    const before = reads;
    for (let i = 0; i < 5; i++) await store.putSowing(OWNER, `old-${i}`, { ...sowing, date: date('2026-05-03') });
    reads = 0;
    await known(counting());
    expect(reads).toBe(before);
  });

  test('of a row of which enough is up is no heat at the seed any more', async () => {
    const store = await garden();
    const hot = airFrom('2027-05-03', Array(14).fill(30));
    await store.putComingDays(OWNER, 'quillmere', { atMs: NOW, days: hot });
    const spellsOf = async (): Promise<number> =>
      (await known(store, { crops: ['lettuce'] })).sowings[0]!.forecast!.hotSpells!.length;
    expect(await spellsOf()).toBeGreaterThan(0);
    const count = { date: date('2027-05-03'), ofSeeds: null, thinned: false };
    await store.putCount(OWNER, 'lettuces', { ...count, seedlings: 3 });
    expect(await spellsOf()).toBeGreaterThan(0);
    await store.putCount(OWNER, 'lettuces', { ...count, seedlings: 120 });
    expect(await spellsOf()).toBe(0);
  });

  test('of a sowing whose bed has no temperatures is nothing', async () => {
    const store = await garden();
    await store.deleteAir(OWNER, 'quillmere');
    await store.putComingDays(OWNER, 'quillmere', { atMs: NOW, days: [] });
    const { sowings } = await known(store);
    expect(sowings).toHaveLength(2);
    for (const { forecast } of sowings) expect(forecast).toBeNull();
  });

  test('of when to sow are the windows from today on; without past years, nothing', async () => {
    const wanted = { events: ['window-open'] as const, crops: ['lettuce', 'carrot'] };
    const { sowings, windows } = await known(await garden(6), wanted);
    expect(sowings).toEqual([]);
    expect(windows).toMatchObject([
      { bed: 'north', crop: { id: 'lettuce' }, today: '2027-05-03' },
      { bed: 'north', crop: { id: 'carrot' }, today: '2027-05-03' },
    ]);
    expect(windows[0]!.windows![0]).toMatchObject({ from: '2027-05-03' });
    const poor = await known(await garden(1), wanted);
    expect(poor.windows.map((one) => one.windows)).toEqual([null, null]);
  });
});

/** A receiver that is told what is new in a garden, look by look. */
async function listener(store: Store, wanted: Partial<SubscriptionFields> = {}) {
  const messages: { type: string; data: Record<string, unknown> }[] = [];
  const shed = await serve(async (request, response) => {
    const body = await text(request);
    const { 'webhook-id': id, 'webhook-timestamp': at, 'webhook-signature': signature } = request.headers;
    const key = Buffer.from(secret.slice('whsec_'.length), 'base64');
    // As Standard Webhooks says.
    expect(signature).toBe(`v1,${createHmac('sha256', key).update(`${id}.${at}.${body}`).digest('base64')}`);
    messages.push(JSON.parse(body));
    response.end();
  });
  const sender = webhookSender({
    userAgent: 'test',
    isAllowed: (address) => address === '127.0.0.1',
    allowHttp: true,
  });
  open.push(shed, sender);
  await store.putSubscription(OWNER, 'shed', { ...everything, ...wanted, url: shed.url }, NOW);
  const { secret } = (await store.subscription(OWNER, 'shed'))!;
  let nowMs = NOW;
  const silent = (): void => {};
  const settings = {
    store,
    sender,
    clock: () => new Date(nowMs),
    random: () => 0,
    log: { info: silent, warn: silent, error: (details: object) => expect(details).toBeUndefined() },
    signal: new AbortController().signal,
    version: '1.0.0',
    say: sayPlainly,
    look: (owner: string, subscription: SubscriptionFields, beds: readonly string[]) =>
      knownNow(store, owner, subscription, beds, new Date(nowMs), ask),
  };
  return {
    messages,
    nowMs: () => nowMs,
    /** Looks and sends, some hours later than the last time. */
    async told(hoursLater = 1): Promise<string[]> {
      nowMs += hoursLater * HOUR_MS;
      messages.splice(0);
      await pollDue(settings);
      for (let due = 1; due > 0; ) {
        const refs = await store.dueDeliveries(nowMs, 9);
        for (const ref of refs) await deliver(ref, settings);
        due = refs.length;
      }
      return messages.map(({ type, data }) => `${type} ${data.sowing ?? data.crop}`).sort();
    },
  };
}

describe('from the weather to the receiver', () => {
  test('a hot week and a frost in the forecast are told, and a cold one that delays the beans, each once', async () => {
    const store = await garden();
    const { messages, told, nowMs } = await listener(store);
    const coming = (maxC: readonly number[], minC?: number) =>
      store.putComingDays(OWNER, 'quillmere', {
        atMs: nowMs(),
        days: airFrom('2027-05-03', maxC).map((day, i) =>
          minC !== undefined && i === 12 ? { ...day, min: minC } : day,
        ),
      });

    expect(await told()).toEqual([]);
    // Lettuce is held above some 26 °C; ten days at 38 °C in the air warm the soil at the seed beyond that.
    await coming([15, 15, ...Array(10).fill(38), 15, 15]);
    const hot = await told();
    expect(hot).toContain('hot-spell lettuces');
    expect(messages.filter(({ type }) => type === 'hot-spell').map(({ data }) => data)).toContainEqual(
      expect.objectContaining({ bed: 'north', sowing: 'lettuces', crop: 'lettuce' }),
    );
    expect(await told()).toEqual([]);
    await coming(Array(14).fill(12));
    const cold = await told();
    expect(cold).toContain('emergence-shift beans');
    expect(cold.filter((one) => one.startsWith('hot-spell'))).toEqual([]);
    await coming(Array(14).fill(26), -1.5);
    expect(await told()).toContain('frost beans');
    expect(await told()).toEqual([]);
    expect(await store.subscription(OWNER, 'shed')).toMatchObject({ pending: 0, failures: 0 });
  });

  test('a row that stays bare is told to be sown again, once, when that costs less than waiting', async () => {
    const store = await garden(4);
    await store.putComingDays(OWNER, 'quillmere', { atMs: NOW, days: [] });
    const { messages, told } = await listener(store, { events: ['sow-again'], crops: ['lettuce'] });
    const heard: string[] = [];
    const bareOn = ['2027-05-09', '2027-05-15', '2027-05-21', '2027-05-27'];
    for (const on of bareOn) {
      await store.putCount(OWNER, 'lettuces', { date: date(on), seedlings: 0, ofSeeds: null, thinned: false });
      if ((await told(6 * 24)).length === 0) continue;
      expect(messages[0]).toMatchObject({
        type: 'sow-again',
        data: { bed: 'north', sowing: 'lettuces', crop: 'lettuce', from: null, code: 'news.sow-again' },
      });
      expect(messages[0]!.data.text).toMatch(
        /^Lettuce sown on 3 May 2027 in bed north: (probably lost \(\d+ in \d+\)|lost)\. Sow again now; the last good day is /,
      );
      heard.push(...messages.map(() => on));
    }
    expect(heard).toHaveLength(1);
    expect(heard[0]! > bareOn[0]!).toBe(true);
    expect(await store.subscription(OWNER, 'shed')).toMatchObject({ pending: 0, failures: 0 });
  });

  // These mild years have summers of 12 °C, in which radishes are had before winter and carrots are not; seedlings of both
  // bear some 5 °C of frost: "temperate crops" in a published ranking of damaging ranges (PMC10202904, table 2).
  test('that radishes can be sown is told after the nights that would kill their seedlings', async () => {
    const store = await garden(4);
    const coming = (minC: number) =>
      store.putComingDays(OWNER, 'quillmere', {
        atMs: NOW,
        days: airFrom('2027-05-03', Array(14).fill(18)).map((day, i) => (i === 13 ? { ...day, min: minC } : day)),
      });
    await coming(-9);
    const { told } = await listener(store, { events: ['window-open'], crops: ['radish'] });
    expect(await told()).toEqual([]);
    await coming(-3);
    expect(await told()).toEqual(['window-open radish']);
    expect(await told()).toEqual([]);
  });
});
