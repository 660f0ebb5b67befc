import { createHash } from 'node:crypto';
import { dateAt, zoneNamed } from '../basics/calendar.js';
import type { Look, Subscription, SubscriptionRef } from '../garden/alert-store.js';
import { alertsOf } from '../garden/alerts.js';
import type { KnownNow } from '../garden/known-now.js';
import type { Store } from '../garden/store.js';
import type { Log } from './deliver.js';
import { tellingOf } from './wire-alert.js';

export interface LookSettings {
  readonly store: Store;
  /** What is known now of all that a subscription is about, given the ids of all the owner's beds. */
  readonly look: (owner: string, subscription: Subscription, beds: readonly string[]) => Promise<KnownNow>;
  /** Of this program: another may know more of the same garden. */
  readonly version: string;
  readonly clock: () => Date;
  readonly log: Log;
  /** Aborted when the service stops. */
  readonly signal: AbortSignal;
}

/** So often a garden is looked at for a subscription, and not more. */
const LOOK_EVERY_MS = 15 * 60_000;
const MOST_A_ROUND = 1000;

/**
 * Looks at the gardens that are due, one after the other, and tells what is new.
 *
 * @returns How many messages are new.
 */
export async function lookAtDue(settings: LookSettings): Promise<number> {
  const due = await settings.store.dueLooks(settings.clock().getTime(), MOST_A_ROUND);
  let told = 0;
  for (const one of due) {
    if (settings.signal.aborted) break;
    told += await lookFor(one, settings).catch((err: unknown) => {
      // Of others there may be something to tell all the same; a service that stops works nothing out any more.
      if (!settings.signal.aborted) settings.log.error({ err, ...one }, 'what is new cannot be told now');
      return 0;
    });
  }
  return told;
}

/** Tells one subscription what is new, unless nothing has changed since all was told. */
async function lookFor({ owner, subscription: id }: SubscriptionRef, settings: LookSettings): Promise<number> {
  const { store, look, version, clock } = settings;
  const nowMs = clock().getTime();
  const taken = await store.takeLook(owner, id, nowMs, nowMs + LOOK_EVERY_MS);
  if (!taken) return 0;
  const seen = digestOf(taken, version, nowMs);
  if (seen === taken.seen) return 0;
  const beds = taken.beds.map(({ id: bed }) => bed);
  const known = await look(owner, taken.subscription, beds);
  const alerts = alertsOf(taken.subscription, taken.told, known);
  const tellings = alerts.map((alert) => tellingOf(alert, nowMs));
  return (await store.tell(owner, id, tellings, seen)) ?? 0;
}

/** What the garden is like: it changes with whatever changes in it, in the subscription or the program, and by the day. */
function digestOf({ subscription, beds }: Look, version: string, nowMs: number): string {
  const dated = beds.map(({ timeZone, ...bed }) => ({ ...bed, today: dateAt(nowMs, zoneNamed(timeZone)) }));
  const said = JSON.stringify([version, subscription.revision, dated]);
  return createHash('sha256').update(said).digest('base64url');
}
