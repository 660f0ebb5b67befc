import type { IfRevision, Put, Resource, ResourcePage } from './resource.js';

export const alertEvents = ['hot-spell', 'emergence-shift', 'window-open', 'frost', 'sow-again'] as const;
export type AlertEvent = (typeof alertEvents)[number];

/** A subscription as its owner sends it: the events wanted, and the address. */
export interface SubscriptionFields {
  readonly url: string;
  readonly events: readonly AlertEvent[];
  /** Only these beds; null: all. */
  readonly beds: readonly string[] | null;
  /** Only these crops; null: all. */
  readonly crops: readonly string[] | null;
}

/** State of a subscription's messages. */
export interface DeliveryState {
  /** Number of waiting messages, the one being sent included. */
  readonly pending: number;
  /** Time of the latest delivery [ms]; null: none yet. */
  readonly deliveredAtMs: number | null;
  /** Failed attempts at the first waiting message. */
  readonly failures: number;
  /** Reason of its latest failure, in a sentence; null: none. */
  readonly lastError: string | null;
  /** Earliest time of its next attempt [ms]. */
  readonly nextAtMs: number;
  /** Time and reason of switching off; null: the subscription is active. */
  readonly switchedOff: { readonly atMs: number; readonly reason: string } | null;
}

export interface Subscription extends SubscriptionFields, DeliveryState, Resource {
  /** The key that signs its messages, in the form of Standard Webhooks: `whsec_` and base64. */
  readonly secret: string;
}

export interface SubscriptionRef {
  readonly owner: string;
  readonly subscription: string;
}

/** The stored state that a poll of a garden for a subscription starts from. */
export interface Poll {
  readonly subscription: Subscription;
  /** The garden's state when a poll last stored all its notifications; null: never yet. */
  readonly watermark: string | null;
  /** The latest mark of each subject: any text. */
  readonly marks: ReadonlyMap<string, string>;
  /** The owner's beds, with the revisions that change with anything in or around them. */
  readonly beds: readonly {
    readonly id: string;
    readonly revision: number;
    readonly placeRevision: number;
    readonly timeZone: string;
  }[];
}

/** A new mark of a subject, and the message about it. */
export interface Notification {
  readonly subject: string;
  /**
   * The mark that this was computed from; null: none. With another mark in the store by now, the notification is
   * dropped.
   */
  readonly before: string | null;
  /** The new mark; null: the subject is deleted. */
  readonly mark: string | null;
  /** The message's body; null: no message. */
  readonly body: string | null;
}

/** A message to send, leased to one instance for a while. */
export interface Delivery {
  readonly lease: number;
  /** The same in all attempts. */
  readonly messageId: string;
  readonly body: string;
  readonly url: string;
  readonly secret: string;
  /** Failed attempts so far. */
  readonly failures: number;
}

/** Outcome of an attempt. `given-up`: we aborted it, and it says nothing about the receiver. */
export type DeliveryEnd =
  | { readonly outcome: 'delivered'; readonly atMs: number }
  | { readonly outcome: 'failed'; readonly nextAtMs: number; readonly error: string }
  | { readonly outcome: 'switched-off'; readonly atMs: number; readonly error: string }
  | { readonly outcome: 'given-up' };

/**
 * Waiting messages of a subscription at most; later changes are notified when there is room, in their state by then.
 */
export const MAX_PENDING = 1000;

/** Subscriptions, their notifications, and the messages under way. The rules of `Store` apply. */
export interface AlertStore {
  /**
   * Creates a subscription with a new secret, or replaces it and keeps its messages and secret. It also switches on one
   * that was switched off, even without other changes, and makes its messages due at once; so does a new address.
   */
  putSubscription(
    owner: string,
    id: string,
    fields: SubscriptionFields,
    nowMs: number,
    ifRevision?: IfRevision,
  ): Promise<Put<Subscription>>;
  subscription(owner: string, id: string): Promise<Subscription | undefined>;
  subscriptions(owner: string, page: ResourcePage): Promise<Subscription[]>;
  /** Deletes a subscription with its waiting messages. */
  deleteSubscription(owner: string, id: string, ifRevision?: IfRevision): Promise<'deleted' | 'absent' | 'stale'>;

  /** Subscriptions, of all owners, whose garden is due for a poll, the longest due first. */
  duePolls(nowMs: number, limit: number): Promise<SubscriptionRef[]>;
  /** Takes a poll and schedules the next one; undefined when none is due or another instance has taken it. */
  takePoll(owner: string, id: string, nowMs: number, nextMs: number): Promise<Poll | undefined>;
  /**
   * Stores marks and their messages, all or none. Notifications with an outdated mark, and those whose message would
   * exceed `MAX_PENDING`, are left out.
   *
   * @param watermark The garden's state; stored unless a notification was left out.
   * @returns Number of new messages.
   */
  addNotifications(
    owner: string,
    id: string,
    notifications: readonly Notification[],
    watermark: string,
  ): Promise<number | undefined>;

  /** Subscriptions, of all owners, whose first message is due, the longest due first. */
  dueDeliveries(nowMs: number, limit: number): Promise<SubscriptionRef[]>;
  /** Leases a subscription's first message, so that no other instance sends it until then. */
  leaseDelivery(owner: string, id: string, nowMs: number, untilMs: number): Promise<Delivery | undefined>;
  /** Stores the outcome of a delivery; false: the lease was lost meanwhile, and nothing is stored. */
  endDelivery(
    owner: string,
    id: string,
    delivery: Pick<Delivery, 'lease' | 'messageId'>,
    end: DeliveryEnd,
  ): Promise<boolean>;
  /** Number of waiting messages of all owners, counted up to the limit only. */
  messagesWaiting(limit: number): Promise<number>;
}
