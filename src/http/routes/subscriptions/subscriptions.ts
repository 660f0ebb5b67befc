import { isIP } from 'node:net';
import { notUnderstood, RequestError } from '../../../basics/errors.js';
import type { Fact } from '../../../basics/fact.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import {
  type SubscriptionWire,
  subscriptionAnswerSchema,
  subscriptionListSchema,
  subscriptionPutSchema,
} from '../../../contract/subscriptions.js';
import { isPublicAddress } from '../../../egress/public-address.js';
import type { Subscription, SubscriptionFields } from '../../../garden/store/alert-store.js';
import type { Store } from '../../../garden/store/store.js';
import { factStored } from '../../../garden/store/stored-fact.js';
import { webhookUrlFault } from '../../../garden/store/webhook-url.js';
import { cropRefusal } from '../../../germination/crop-choice.js';
import { crops as handbook } from '../../../germination/crops.js';
import type { Unworded } from '../../negotiation/worded.js';
import type { Route } from '../../openapi/route.js';
import { exampleSubscription } from '../../question/examples.js';
import { putRoute, type Replacement } from '../../resource/change-routes.js';
import { asKept, type Repository } from '../../resource/resource.js';
import { deleteRoute, getRoute, listRoute } from '../../resource/resource-routes.js';

/** A secret in the body is refused: the caller wants to choose it and cannot. */
const sentBackSchema = subscriptionAnswerSchema.omit({ secret: true });

/**
 * The routes of subscriptions to news.
 *
 * @param allowPrivate Allows receivers in the local network and without encryption.
 */
export const subscriptionRoutes = (store: Store, clock: () => Date, allowPrivate: boolean): Route[] => {
  const schemas = { kind: 'subscription', put: subscriptionPutSchema, answer: subscriptionAnswerSchema } as const;
  const onWire = serializeSubscription;
  const subscriptions: Repository<Subscription, SubscriptionFields> = {
    find: store.subscription,
    async put(owner, id, fields, ifRevision) {
      await refuseUnknown(store, owner, fields);
      return store.putSubscription(owner, id, fields, clock().getTime(), ifRevision);
    },
    show: (subscription) => asKept(onWire(subscription)),
    shownOnce: ({ secret }) => ({ secret }),
  };
  const list = {
    kind: 'subscription',
    summary: 'Your subscriptions, by id',
    schema: subscriptionListSchema,
    list: store.subscriptions,
  } as const;
  const put: Replacement<typeof subscriptionPutSchema> = {
    ...schemas,
    summary: 'Subscribe an address to news, change the subscription, or switch it on again',
    description:
      'Messages are `{ type, timestamp, data }`, signed by Standard Webhooks 1.0.0 with the secret that is returned once, when the subscription is created; DELETE it and PUT it again for another. They arrive in order and at least once, under the same `webhook-id` each time. A status of 2xx accepts a message; otherwise it is sent again at growing intervals for three days, and then the subscription is switched off; 410 switches it off at once. Waiting messages stay stored and are sent after another PUT. The last 200 sowings of the beds are considered, and windows of up to 100 pairs of bed and crop.',
    sentBack: sentBackSchema,
    example: exampleSubscription,
    problems: ['unknown-bed', 'unknown-crop'],
    refuse: ({ url }) => refuseUrl(url, allowPrivate),
  };
  const shown = { ...schemas, summary: 'One subscription, with the state of its messages', onWire };
  const deleted = 'Delete a subscription; messages that wait are not sent';
  return [
    listRoute({ ...list, onWire }, clock),
    putRoute(put, subscriptions, clock),
    getRoute(shown, subscriptions, clock),
    deleteRoute('subscription', deleted, () => subscriptions, store.deleteSubscription),
  ];
};

/** Refuses an unsuitable literal address at once; a host name is resolved only when a message is sent. */
function refuseUrl(url: string, allowPrivate: boolean): void {
  const fault = webhookUrlFault(url, allowPrivate) ?? (allowPrivate ? null : privateFault(url));
  if (fault !== null) throw notUnderstood([{ path: ['url'], detail: fault }]);
}

function privateFault(url: string): Fact | null {
  const hostname = new URL(url).hostname.replace(/^\[|\]$/g, '').replace(/\.$/, '');
  const isPrivate = isIP(hostname) ? !isPublicAddress(hostname) : /(^|\.)localhost$/.test(hostname);
  return isPrivate ? fieldFact('field.private-address', { host: hostname }) : null;
}

async function refuseUnknown(store: Store, owner: string, { beds, crops }: SubscriptionFields): Promise<void> {
  for (const [i, crop] of (crops ?? []).entries()) {
    if (handbook.has(crop)) continue;
    throw new RequestError('unknown-crop', keptRefusal('unknown-crop.listed', { id: crop }), [
      { path: ['crops', i], detail: cropRefusal('unknown-crop.field') },
    ]);
  }
  const kept = await Promise.all((beds ?? []).map(async (id) => ({ id, bed: await store.bed(owner, id) })));
  for (const [i, { id, bed }] of kept.entries()) {
    if (bed) continue;
    throw new RequestError('unknown-bed', keptRefusal('unknown-bed', { id }), [
      { path: ['beds', i], detail: keptRefusal('unknown-bed.field') },
    ]);
  }
}

const instantText = (atMs: number): string => new Date(atMs).toISOString();

const serializeSubscription = (subscription: Subscription): Unworded<SubscriptionWire> => {
  const { id, revision, url, events, beds, crops, pending, deliveredAtMs, failures, lastError, nextAtMs, switchedOff } =
    subscription;
  return {
    id,
    revision,
    url,
    events: [...events],
    beds: beds && [...beds],
    crops: crops && [...crops],
    pending,
    deliveredAt: deliveredAtMs === null ? null : instantText(deliveredAtMs),
    failing:
      lastError === null || switchedOff
        ? null
        : { times: failures, why: factStored(lastError), nextTryAt: instantText(nextAtMs) },
    switchedOff: switchedOff && { at: instantText(switchedOff.atMs), why: factStored(switchedOff.reason) },
  };
};
