import type { Say } from '../basics/fact.js';
import { byOwner } from '../egress/by-owner.js';
import { alertsOf } from '../garden/alerts/alerts.js';
import type { KnownNow } from '../garden/sowing/known-now.js';
import type { Subscription, SubscriptionRef } from '../garden/store/alert-store.js';
import type { Store } from '../garden/store/store.js';
import type { DeliveryLog } from './deliver.js';
import { notificationOf } from './notification.js';
import { hasMoved, quickWatermark, watermark, watermarkFrom } from './watermark.js';

export interface PollSettings {
  readonly store: Store;
  /** Collects the current state that a subscription covers, given the ids of all the owner's beds. */
  readonly look: (
    owner: string,
    subscription: Subscription,
    beds: readonly string[],
    signal: AbortSignal,
  ) => Promise<KnownNow>;
  /** Version of this program; another version may find more in the same garden. */
  readonly version: string;
  /** Turns facts into the messages' text. */
  readonly say: Say;
  readonly clock: () => Date;
  readonly log: DeliveryLog;
  /** Aborted when the service stops. */
  readonly signal: AbortSignal;
}

/** Interval between polls for one subscription. */
const POLL_EVERY_MS = 15 * 60_000;
const MAX_A_ROUND = 1000;
/** Owners polled at once; most of a poll waits behind other work. */
const MAX_AT_ONCE = 4;

/**
 * Polls the gardens that are due, a few owners' at a time, and writes notifications of changes.
 *
 * @returns Number of new messages.
 */
export async function pollDue(settings: PollSettings): Promise<number> {
  const due = await settings.store.duePolls(settings.clock().getTime(), MAX_A_ROUND);
  let total = 0;
  await byOwner(due, { atOnce: MAX_AT_ONCE, perOwner: 1 }, async (one) => {
    if (settings.signal.aborted) return;
    const added = await pollFor(one, settings).catch((err: unknown) => {
      // A failed poll must not stop those of others. After the service began to stop, failures are expected.
      if (!settings.signal.aborted) settings.log.error({ err, ...one }, 'what is new cannot be total now');
      return 0;
    });
    total += added;
  });
  return total;
}

/** Polls one subscription and writes notifications, unless nothing relevant has changed since its watermark. */
async function pollFor({ owner, subscription: id }: SubscriptionRef, settings: PollSettings): Promise<number> {
  const { store, look, version, say, clock, signal } = settings;
  const nowMs = clock().getTime();
  const poll = await store.takePoll(owner, id, nowMs, nowMs + POLL_EVERY_MS);
  if (!poll) return 0;
  const before = watermarkFrom(poll.watermark);
  if (before?.quick === quickWatermark(poll, version, nowMs)) return 0;
  const current = await watermark(store, owner, poll, version, nowMs);
  if (before && !hasMoved(before, current)) return 0;
  const beds = poll.beds.map(({ id: bed }) => bed);
  const state = await look(owner, poll.subscription, beds, signal);
  const alerts = alertsOf(poll.subscription, poll.marks, state);
  const notifications = alerts.map((alert) => notificationOf(alert, nowMs, say));
  return (await store.addNotifications(owner, id, notifications, JSON.stringify(current))) ?? 0;
}
