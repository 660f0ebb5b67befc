import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import {
  type DeliveryEnd,
  MAX_PENDING,
  type Notification,
  type SubscriptionFields,
} from '../../src/garden/store/alert-store.js';
import type { Store } from '../../src/garden/store/store.js';
import { airFrom, lot, northBed, quillmere, sowing } from './make.js';

const MINUTE_MS = 60_000;
const nowMs = Date.parse('2027-05-01T06:00Z');
const fields: SubscriptionFields = {
  url: 'https://shed.example/alerts',
  events: ['hot-spell', 'frost'],
  beds: null,
  crops: ['lettuce'],
};
const told = (subject: string, body: string | null, before: string | null = null, mark: string | null = 'told') =>
  ({ subject, before, mark, body }) satisfies Notification;

/** What must hold of subscriptions and their messages, in two stores over one database. */
export function alertContract(stores: () => { readonly store: Store; readonly other: Store }): void {
  /** A new owner with a subscription, `count` messages waiting. */
  async function subscribed(count = 0) {
    const { store, other } = stores();
    const owner = randomUUID();
    await store.putSubscription(owner, 'shed', fields, nowMs);
    const tellings = Array.from({ length: count }, (_, i) => told(`subject-${i}`, `message ${i}`));
    await store.addNotifications(owner, 'shed', tellings, 'as it was');
    const state = async () => (await other.subscription(owner, 'shed'))!;
    const isDue = async (atMs: number) => (await other.dueDeliveries(atMs, 1000)).some((due) => due.owner === owner);
    const lease = (atMs = nowMs, one = store) => one.leaseDelivery(owner, 'shed', atMs, atMs + MINUTE_MS);
    /** Sends the first message, so to say. */
    const deliver = async (end: DeliveryEnd, atMs = nowMs) => {
      const delivery = (await lease(atMs))!;
      expect(await store.endDelivery(owner, 'shed', delivery, end)).toBe(true);
      return delivery;
    };
    return { store, other, owner, state, isDue, lease, deliver };
  }
  const delivered = (atMs = nowMs) => ({ outcome: 'delivered', atMs }) as const;
  const failed = (nextAtMs: number) => ({ outcome: 'failed', nextAtMs, error: 'It refused the connection.' }) as const;
  const off = { outcome: 'switched-off', atMs: nowMs + 5, error: 'It is gone.' } as const;

  describe('a subscription', () => {
    test('comes back as it was put, with a secret of 256 bits of its own that stays', async () => {
      const { store, owner, state } = await subscribed();
      const first = await state();
      expect(first).toEqual({
        ...fields,
        id: 'shed',
        revision: first.revision,
        secret: first.secret,
        pending: 0,
        deliveredAtMs: null,
        failures: 0,
        lastError: null,
        nextAtMs: nowMs,
        switchedOff: null,
      });
      expect(first.secret).toMatch(/^whsec_[A-Za-z0-9+/]{43}=$/);
      expect(await store.putSubscription(owner, 'shed', fields, nowMs)).toEqual({ outcome: 'unchanged', kept: first });
      const put = await store.putSubscription(owner, 'shed', { ...fields, beds: ['north'] }, nowMs);
      expect(put).toMatchObject({ outcome: 'replaced', kept: { beds: ['north'], secret: first.secret } });
      const second = await store.putSubscription(owner, 'second', fields, nowMs);
      expect('kept' in second && second.kept.secret).not.toBe(first.secret);
      expect((await store.subscriptions(owner, { limit: 9 })).map(({ id }) => id)).toEqual(['second', 'shed']);
      expect((await store.subscriptions(owner, { after: 'second', limit: 9 })).map(({ id }) => id)).toEqual(['shed']);
    });

    test('is put only at the revision that was asked for, and deleted with what waits; made anew, it has another secret', async () => {
      const { store, owner, state } = await subscribed(2);
      const { revision, secret } = await state();
      const other = { ...fields, url: 'https://other.example/' };
      expect(await store.putSubscription(owner, 'shed', other, nowMs, revision + 1)).toEqual({ outcome: 'stale' });
      expect(await store.putSubscription(owner, 'new', other, nowMs, 1)).toEqual({ outcome: 'stale' });
      expect(await store.deleteSubscription(owner, 'shed')).toBe('deleted');
      expect(await store.deleteSubscription(owner, 'shed')).toBe('absent');
      await store.putSubscription(owner, 'shed', fields, nowMs);
      expect(await state()).toMatchObject({ pending: 0 });
      expect((await state()).secret).not.toBe(secret);
    });

    test('is nobody else’s', async () => {
      const { store, owner, state, lease } = await subscribed(1);
      const before = await state();
      const theirs = randomUUID();
      expect(await store.subscription(theirs, 'shed')).toBeUndefined();
      expect(await store.subscriptions(theirs, { limit: 9 })).toEqual([]);
      expect(await store.deleteSubscription(theirs, 'shed')).toBe('absent');
      expect(await store.addNotifications(theirs, 'shed', [told('a', 'b')], 'x')).toBeUndefined();
      expect(await store.takePoll(theirs, 'shed', nowMs, nowMs + 1)).toBeUndefined();
      expect(await store.leaseDelivery(theirs, 'shed', nowMs, nowMs + 1)).toBeUndefined();
      const delivery = (await lease())!;
      expect(await store.endDelivery(theirs, 'shed', delivery, delivered())).toBe(false);
      await store.putSubscription(theirs, 'shed', fields, nowMs);
      await store.deleteSubscription(theirs, 'shed');
      expect(await store.subscription(owner, 'shed')).toEqual(before);
    });
  });

  describe('the garden is polled for a subscription', () => {
    test('once it is due, by one of two instances', async () => {
      const { store, other, owner } = await subscribed(1);
      await store.putPlace(owner, 'quillmere', quillmere);
      await store.putBed(owner, 'north', northBed);
      const isDue = async (atMs: number) => (await other.duePolls(atMs, 1000)).some((due) => due.owner === owner);
      expect(await isDue(nowMs)).toBe(true);
      const nextMs = nowMs + 15 * MINUTE_MS;
      const both = await Promise.all([store, other].map((one) => one.takePoll(owner, 'shed', nowMs, nextMs)));
      const looks = both.filter((one) => one !== undefined);
      expect(looks).toHaveLength(1);
      const bed = (await store.bed(owner, 'north'))!;
      const place = (await store.place(owner, 'quillmere'))!;
      expect(looks[0]).toMatchObject({
        subscription: { ...fields, id: 'shed', pending: 1 },
        watermark: 'as it was',
        marks: new Map([['subject-0', 'told']]),
        beds: [{ id: 'north', revision: bed.revision, placeRevision: place.revision, timeZone: quillmere.timeZone }],
      });
      expect(await isDue(nextMs - 1)).toBe(false);
      expect(await isDue(nextMs)).toBe(true);
    });

    test('and something in a bed, a lot, or the air over a bed shows in the poll', async () => {
      const { store, owner } = await subscribed();
      await store.putPlace(owner, 'quillmere', quillmere);
      await store.putBed(owner, 'north', northBed);
      let atMs = nowMs;
      await store.putLot(owner, 'packet', lot);
      const garden = async () => (await store.takePoll(owner, 'shed', atMs, ++atMs))!.beds;
      const seen = [await garden()];
      for (const change of [
        () => store.putSowing(owner, 'lettuces', { ...sowing, crop: 'lettuce', lot: 'packet' }),
        () => store.putLot(owner, 'packet', { ...lot, packedYear: 2020 }),
        () => store.putAir(owner, 'quillmere', airFrom('2027-05-01', [20])),
        () => store.putComingDays(owner, 'quillmere', { atMs: 1, days: airFrom('2027-05-02', [31]) }),
      ]) {
        await change();
        const now = await garden();
        expect(seen).not.toContainEqual(now);
        seen.push(now);
      }
      expect(await garden()).toEqual(seen.at(-1));
    });

    test('but not while it is switched off; put again, at once', async () => {
      const { store, owner, deliver } = await subscribed(1);
      await deliver(off);
      expect(await store.takePoll(owner, 'shed', nowMs + 1e9, nowMs + 2e9)).toBeUndefined();
      expect((await store.duePolls(nowMs + 1e9, 1000)).some((due) => due.owner === owner)).toBe(false);
      await store.putSubscription(owner, 'shed', fields, nowMs + 1e9);
      expect(await store.takePoll(owner, 'shed', nowMs + 1e9, nowMs + 2e9)).toBeDefined();
    });
  });

  describe('a notification', () => {
    const lookAt = async (store: Store, owner: string) => {
      const { marks, watermark: seen } = (await store.takePoll(owner, 'shed', 1e15, 0))!;
      return { marks: Object.fromEntries(marks), seen };
    };

    test('is stored together with its message, once, from either instance', async () => {
      const { store, other, owner, state } = await subscribed();
      const tellings = [told('hot', 'Hot days.', null, 'hot'), told('half', null, null, '2027-05-20')];
      const both = await Promise.all(
        [store, other].map((one) => one.addNotifications(owner, 'shed', tellings, 'seen')),
      );
      expect(both.sort()).toEqual([0, 1]);
      expect(await state()).toMatchObject({ pending: 1 });
      expect(await lookAt(store, owner)).toEqual({ marks: { hot: 'hot', half: '2027-05-20' }, seen: 'seen' });
    });

    test('from an outdated mark is left out, and the garden is polled again', async () => {
      const { store, owner, state } = await subscribed();
      await store.addNotifications(owner, 'shed', [told('half', null, null, '20 May')], 'first');
      const stale = [told('half', 'From the 10th to the 25th.', '10 May', '25 May'), told('hot', 'Hot.')];
      expect(await store.addNotifications(owner, 'shed', stale, 'second')).toBe(1);
      expect(await lookAt(store, owner)).toEqual({ marks: { half: '20 May', hot: 'told' }, seen: 'first' });
      expect(await store.addNotifications(owner, 'shed', [told('half', 'Later.', '20 May', '25 May')], 'third')).toBe(
        1,
      );
      expect(await lookAt(store, owner)).toEqual({ marks: { half: '25 May', hot: 'told' }, seen: 'third' });
      expect(await state()).toMatchObject({ pending: 2 });
      await store.addNotifications(owner, 'shed', [told('hot', null, 'told', null)], 'fourth');
      expect(await lookAt(store, owner)).toEqual({ marks: { half: '25 May' }, seen: 'fourth' });
    });

    test(`beyond ${MAX_PENDING} messages that wait is left out with its message, for when there is room`, async () => {
      const { store, owner, state, deliver } = await subscribed(MAX_PENDING - 1);
      const tellings = ['a', 'b', 'c'].map((subject) => told(subject, subject));
      expect(await store.addNotifications(owner, 'shed', [...tellings, told('quiet', null)], 'full')).toBe(1);
      expect(await state()).toMatchObject({ pending: MAX_PENDING });
      const { marks, seen } = await lookAt(store, owner);
      expect([marks.a, marks.b, marks.quiet, seen]).toEqual(['told', undefined, 'told', 'as it was']);
      await deliver(delivered());
      expect(await store.addNotifications(owner, 'shed', tellings.slice(1), 'full')).toBe(1);
      expect(await state()).toMatchObject({ pending: MAX_PENDING });
    });
  });

  describe('a message', () => {
    test('is sent by one at a time, in the order of notifications, and gone once delivered', async () => {
      const { store, other, owner, state, isDue, lease } = await subscribed(3);
      await store.addNotifications(owner, 'shed', [told('later', 'message 3')], 'x');
      const secret = (await state()).secret;
      const ids = new Set<string>();
      for (let i = 0; i < 4; i++) {
        expect(await isDue(nowMs)).toBe(true);
        const both = await Promise.all([store, other].map((one) => lease(nowMs, one)));
        const taken = both.filter((one) => one !== undefined);
        expect(taken).toHaveLength(1);
        expect(taken[0]).toMatchObject({ body: `message ${i}`, url: fields.url, secret, failures: 0 });
        expect(taken[0]!.messageId).toMatch(/^msg_[\w-]{27}$/);
        ids.add(taken[0]!.messageId);
        expect(await isDue(nowMs)).toBe(false);
        expect(await other.endDelivery(owner, 'shed', taken[0]!, delivered())).toBe(true);
        expect(await state()).toMatchObject({ pending: 3 - i, deliveredAtMs: nowMs });
      }
      expect(ids.size).toBe(4);
      expect(await isDue(nowMs + 1e9)).toBe(false);
      expect(await lease()).toBeUndefined();
    });

    test('whose sender died is sent again by another, as the same message; the first has nothing more to say', async () => {
      const { store, other, owner, state, isDue, lease } = await subscribed(1);
      const first = (await lease())!;
      expect(await lease(nowMs + MINUTE_MS - 1, other)).toBeUndefined();
      expect(await isDue(nowMs + MINUTE_MS)).toBe(true);
      const second = (await lease(nowMs + MINUTE_MS, other))!;
      expect(second).toMatchObject({ messageId: first.messageId, body: first.body });
      expect(await store.endDelivery(owner, 'shed', first, failed(nowMs))).toBe(false);
      expect(await state()).toMatchObject({ pending: 1, failures: 0 });
      expect(await other.endDelivery(owner, 'shed', second, delivered())).toBe(true);
      expect(await store.endDelivery(owner, 'shed', first, delivered())).toBe(false);
    });

    test('that failed holds the others back until it is delivered; its failures are counted and shown', async () => {
      const { isDue, deliver, state } = await subscribed(2);
      const nextAtMs = nowMs + 5 * MINUTE_MS;
      await deliver(failed(nextAtMs));
      expect(await state()).toMatchObject({
        pending: 2,
        failures: 1,
        lastError: 'It refused the connection.',
        nextAtMs,
      });
      expect(await isDue(nextAtMs - 1)).toBe(false);
      expect(await deliver(failed(nextAtMs + 1), nextAtMs)).toMatchObject({ body: 'message 0', failures: 1 });
      expect(await deliver(delivered(), nextAtMs + 1)).toMatchObject({ body: 'message 0', failures: 2 });
      expect(await state()).toMatchObject({ pending: 1, failures: 0, lastError: null });
      expect(await deliver({ outcome: 'given-up' })).toMatchObject({ body: 'message 1', failures: 0 });
      expect(await isDue(nowMs)).toBe(true);
    });

    test('of one that was switched off waits, and goes out when it is put again', async () => {
      const { store, owner, state, isDue, deliver } = await subscribed(2);
      const { revision } = await state();
      const { messageId } = await deliver(off);
      const after = await state();
      expect(after).toMatchObject({ pending: 2, switchedOff: { atMs: off.atMs, reason: 'It is gone.' } });
      expect(after.revision).toBeGreaterThan(revision);
      expect(await isDue(nowMs + 1e12)).toBe(false);
      expect(await store.putSubscription(owner, 'shed', fields, nowMs)).toMatchObject({
        outcome: 'replaced',
        kept: { switchedOff: null, failures: 0, lastError: null, pending: 2, secret: after.secret },
      });
      expect(await deliver(delivered())).toMatchObject({ messageId, body: 'message 0', failures: 0 });
      expect(await state()).toMatchObject({ pending: 1 });
    });

    test('goes to another address at once, and what is said of the one before counts no more', async () => {
      const { store, owner, state, lease, deliver } = await subscribed(1);
      await deliver(failed(nowMs + 1e9));
      const old = (await lease(nowMs + 1e9))!;
      await store.putSubscription(owner, 'shed', { ...fields, url: 'https://new.example/' }, nowMs);
      expect(await store.endDelivery(owner, 'shed', old, off)).toBe(false);
      expect(await state()).toMatchObject({ switchedOff: null, failures: 0, pending: 1 });
      expect(await lease()).toMatchObject({ url: 'https://new.example/', messageId: old.messageId, failures: 0 });
    });
  });
}
