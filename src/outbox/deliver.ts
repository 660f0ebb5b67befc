import type { Delivery, DeliveryEnd, SubscriptionRef } from '../garden/store/alert-store.js';
import { deliveryFact } from '../garden/store/connection-facts.js';
import type { Store } from '../garden/store/store.js';
import { factToStore } from '../garden/store/stored-fact.js';
import { backOffMs } from './back-off.js';
import type { Sender } from './send-webhook.js';
import { signedHeaders } from './sign.js';

export interface DeliverSettings {
  readonly store: Store;
  readonly sender: Sender;
  readonly clock: () => Date;
  /** Returns a number from 0 to below 1. */
  readonly random: () => number;
  readonly log: DeliveryLog;
  /** Counts of outcomes, which the caller reads. */
  readonly tally?: Record<DeliveryEnd['outcome'], number>;
  /** Aborted when the service stops. */
  readonly signal: AbortSignal;
}

export interface DeliveryLog {
  info(details: object, message: string): void;
  warn(details: object, message: string): void;
  error(details: object, message: string): void;
}

/** Several times an attempt's time-out: a longer attempt belongs to an instance that has died. */
const LEASE_MS = 2 * 60_000;

/**
 * Sends the first waiting message of a subscription, unless another instance holds its lease. While it fails, those
 * behind it wait: messages arrive in order.
 */
export async function deliver({ owner, subscription: id }: SubscriptionRef, settings: DeliverSettings): Promise<void> {
  const { store, clock, log } = settings;
  const startMs = clock().getTime();
  const delivery = await store.leaseDelivery(owner, id, startMs, startMs + LEASE_MS);
  if (!delivery) return;
  const end = await attempt(delivery, settings);
  const details = { owner, subscription: id, message: delivery.messageId };
  if (end.outcome === 'failed') log.warn({ ...details, why: end.error }, 'a message has failed');
  else if (end.outcome === 'switched-off') log.warn({ ...details, why: end.error }, 'a subscription was switched off');
  else if (end.outcome === 'delivered') log.info(details, 'a message was delivered');
  if (settings.tally) settings.tally[end.outcome]++;
  await store.endDelivery(owner, id, delivery, end);
}

async function attempt(
  { messageId, body, url, secret, failures }: Delivery,
  { sender, clock, random, log, signal }: DeliverSettings,
): Promise<DeliveryEnd> {
  const headers = signedHeaders(secret, messageId, clock().getTime(), body);
  const sent = await sender.send(url, headers, body, signal).catch((err: unknown) => {
    if (!signal.aborted) log.error({ err }, 'a message could not be sent');
    return null;
  });
  const atMs = clock().getTime();
  if (sent?.outcome === 'delivered') return { outcome: 'delivered', atMs };
  if (sent === null && signal.aborted) return { outcome: 'given-up' };
  const error = factToStore(sent?.error ?? deliveryFact('delivery.not-sent'));
  const waitMs = sent?.outcome === 'gone' ? null : backOffMs(failures + 1, random(), sent?.retryAfterMs);
  return waitMs === null
    ? { outcome: 'switched-off', atMs, error }
    : { outcome: 'failed', nextAtMs: atMs + waitMs, error };
}
