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
  /** What is known now of all that a subscription is about, given the ids of all the owner's beds. */
  readonly look: (
    owner: string,
    subscription: Subscription,
    beds: readonly string[],
    signal: AbortSignal,
  ) => Promise<KnownNow>;
  /** Of this program: another may know more of the same garden. */
  readonly version: string;
  /** Words the messages. */
  readonly say: Say;
  readonly clock: () => Date;
  readonly log: DeliveryLog;
  /** Aborted when the service stops. */
  readonly signal: AbortSignal;
}

/** So often a garden is looked at for a subscription, and not more. */
const POLL_EVERY_MS = 15 * 60_000;
const MAX_A_ROUND = 1000;
/** So many owners' gardens are looked at at once: most of a look waits for its turn among background work. */
const MAX_AT_ONCE = 4;

/**
 * Looks at the gardens that are due, a few owners' at a time, and tells what is new.
 *
 * @returns How many messages are new.
 */
export async function pollDue(settings: PollSettings): Promise<number> {
  const due = await settings.store.dueLooks(settings.clock().getTime(), MAX_A_ROUND);
  let told = 0;
  await byOwner(due, { atOnce: MAX_AT_ONCE, perOwner: 1 }, async (one) => {
    if (settings.signal.aborted) return;
    const added = await pollFor(one, settings).catch((err: unknown) => {
      // Of others there may be something to tell all the same; a service that stops works nothing out any more.
      if (!settings.signal.aborted) settings.log.error({ err, ...one }, 'what is new cannot be told now');
      return 0;
    });
    told += added;
  });
  return told;
}

/** Tells one subscription what is new, unless nothing that could change a message has changed since all was told. */
async function pollFor({ owner, subscription: id }: SubscriptionRef, settings: PollSettings): Promise<number> {
  const { store, look, version, say, clock, signal } = settings;
  const nowMs = clock().getTime();
  const taken = await store.takeLook(owner, id, nowMs, nowMs + POLL_EVERY_MS);
  if (!taken) return 0;
  const before = watermarkFrom(taken.seen);
  if (before?.quick === quickWatermark(taken, version, nowMs)) return 0;
  const mark = await watermark(store, owner, taken, version, nowMs);
  if (before && !hasMoved(before, mark)) return 0;
  const beds = taken.beds.map(({ id: bed }) => bed);
  const known = await look(owner, taken.subscription, beds, signal);
  const alerts = alertsOf(taken.subscription, taken.told, known);
  const tellings = alerts.map((alert) => notificationOf(alert, nowMs, say));
  return (await store.tell(owner, id, tellings, JSON.stringify(mark))) ?? 0;
}
