import type { IfRevision, Put, Resource, ResourcePage } from './resource.js';

export const alertEvents = ['hot-spell', 'emergence-shift', 'window-open', 'frost', 'sow-again'] as const;
export type AlertEvent = (typeof alertEvents)[number];

/** What its owner wants to be told of, and where. */
export interface SubscriptionFields {
  readonly url: string;
  readonly events: readonly AlertEvent[];
  /** Of these beds alone; null: of all. */
  readonly beds: readonly string[] | null;
  /** Of these crops alone; null: of all. */
  readonly crops: readonly string[] | null;
}

/** How it stands with a subscription's messages. */
export interface DeliveryState {
  /** How many messages wait, the one that is being sent among them. */
  readonly pending: number;
  /** When one was last delivered [ms]; null: never yet. */
  readonly deliveredAtMs: number | null;
  /** How often the first that waits has failed. */
  readonly failures: number;
  /** Why it failed last, in a sentence; null where it has not. */
  readonly lastError: string | null;
  /** When it is tried next [ms], not before. */
  readonly nextAtMs: number;
  /** Since when, and why, nothing is sent any more; null: it is. */
  readonly switchedOff: { readonly atMs: number; readonly reason: string } | null;
}

export interface Subscription extends SubscriptionFields, DeliveryState, Resource {
  /** What its messages are signed with, as Standard Webhooks writes it: `whsec_` and base64. */
  readonly secret: string;
}

export interface SubscriptionRef {
  readonly owner: string;
  readonly subscription: string;
}

/** What somebody who looks at a garden for a subscription has to know beforehand. */
export interface Poll {
  readonly subscription: Subscription;
  /** What the garden was like when all of it was last told; null: never yet. */
  readonly seen: string | null;
  /** What was last told, by subject: any text. */
  readonly told: ReadonlyMap<string, string>;
  /** The owner's beds, with what changes where something in or around them does. */
  readonly beds: readonly {
    readonly id: string;
    readonly revision: number;
    readonly placeRevision: number;
    readonly timeZone: string;
  }[];
}

/** Something to remember of a subject as told, and the message that tells it. */
export interface Notification {
  readonly subject: string;
  /** What was last told when this was thought of; null: nothing. Where it is something else by now, nothing is told. */
  readonly before: string | null;
  /** What is told now; null: the subject is forgotten. */
  readonly mark: string | null;
  /** The message's body; null: nobody needs to hear of it. */
  readonly body: string | null;
}

/** A message to be sent, and the right of one instance to send it, for a while. */
export interface Delivery {
  readonly lease: number;
  /** The same however often it is sent. */
  readonly messageId: string;
  readonly body: string;
  readonly url: string;
  readonly secret: string;
  /** How often it has failed before. */
  readonly failures: number;
}

/** How an attempt has ended. `given-up`: by us, and nothing is known of the receiver. */
export type DeliveryEnd =
  | { readonly outcome: 'delivered'; readonly atMs: number }
  | { readonly outcome: 'failed'; readonly nextAtMs: number; readonly error: string }
  | { readonly outcome: 'switched-off'; readonly atMs: number; readonly error: string }
  | { readonly outcome: 'given-up' };

/** So many messages of a subscription wait at most: what comes then is told when there is room, as it is by then. */
export const MAX_PENDING = 1000;

/** What growers want to be told of, what they were told, and what is still on its way to them. All as `Store` says. */
export interface AlertStore {
  /**
   * Creates a subscription, with a new secret, or replaces it: its messages and its secret stay. One that was switched
   * off is switched on, be it otherwise unchanged, and its messages are due at once; at another address as well.
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
  /** Deletes a subscription with all that waits. */
  deleteSubscription(owner: string, id: string, ifRevision?: IfRevision): Promise<'deleted' | 'absent' | 'stale'>;

  /** Subscriptions, of all owners, for which the garden is to be looked at by now, the longest due first. */
  dueLooks(nowMs: number, limit: number): Promise<SubscriptionRef[]>;
  /** Takes a look on, the next one being due then; undefined where it is not due, or another has taken it. */
  takeLook(owner: string, id: string, nowMs: number, nextMs: number): Promise<Poll | undefined>;
  /**
   * Keeps what is told and the messages that tell it, all or none. What another has told meanwhile, and messages beyond
   * `MAX_PENDING` with what they tell, are left out.
   *
   * @param seen What the garden was like; kept where nothing was left out.
   * @returns How many messages are new.
   */
  tell(owner: string, id: string, tellings: readonly Notification[], seen: string): Promise<number | undefined>;

  /** Subscriptions, of all owners, whose first message is to be sent by now, the longest due first. */
  dueDeliveries(nowMs: number, limit: number): Promise<SubscriptionRef[]>;
  /** Takes a subscription's first message on, so that nobody else sends it until then. */
  leaseDelivery(owner: string, id: string, nowMs: number, untilMs: number): Promise<Delivery | undefined>;
  /** Keeps how a delivery has ended; false: the lease was lost meanwhile, and nothing is kept. */
  endDelivery(
    owner: string,
    id: string,
    delivery: Pick<Delivery, 'lease' | 'messageId'>,
    end: DeliveryEnd,
  ): Promise<boolean>;
  /** How many messages of all owners wait, counted no further than the limit. */
  messagesWaiting(limit: number): Promise<number>;
}
