import { isIP } from 'node:net';
import { notUnderstood, RequestError } from '../../../basics/errors.js';
import type { Fact } from '../../../basics/fact.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { orAsKept } from '../../../contract/kept.js';
import { keptRefusal } from '../../../contract/refusal-facts.js';
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
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import type { Unworded } from '../../negotiation/worded.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import { exampleSubscription } from '../../question/examples.js';
import {
  asKept,
  asParameter,
  fieldsOf,
  idIn,
  isAskedAsKept,
  putAndAnswer,
  type Repository,
  readOnlyOf,
  readPut,
  refuseQuery,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { deleteRoute, listRoute } from '../../resource/resource-routes.js';

/** A secret that is sent is no slip: somebody wants to choose it, and cannot. */
const sentBackSchema = subscriptionAnswerSchema.omit({ secret: true });

/**
 * Where a grower's tools are told what is new.
 *
 * @param allowPrivate Receivers may lie on this machine or in its network, and do without encryption.
 */
export const subscriptionRoutes = (store: Store, clock: () => Date, allowPrivate: boolean): Route[] => {
  const keeper: Repository<Subscription, SubscriptionFields> = {
    find: store.subscription,
    async put(owner, id, fields, ifRevision) {
      await refuseUnknown(store, owner, fields);
      return store.putSubscription(owner, id, fields, clock().getTime(), ifRevision);
    },
    show: (subscription) => asKept(serializeSubscription(subscription)),
    shownOnce: ({ secret }) => ({ secret }),
  };
  return [
    listRoute(
      {
        kind: 'subscription',
        summary: 'Your subscriptions, by id',
        schema: subscriptionListSchema,
        list: store.subscriptions,
        onWire: serializeSubscription,
      },
      clock,
    ),
    {
      method: 'PUT',
      url: '/v1/subscriptions/:id',
      operation: {
        id: 'putSubscription',
        summary: 'Have what is new posted to an address; or change that, or switch it on again',
        description:
          'Messages are `{ type, timestamp, data }`, signed as Standard Webhooks 1.0.0 says with the secret that is given once, where the subscription is created; DELETE it and PUT it again for another. They come in order and at least once, under the same `webhook-id` each time. Only a status of 2xx takes one; else it is sent again, ever later, for three days, and then the subscription is switched off, as it is at once by 410. What waits is kept and goes out when it is PUT again. The last 200 sowings of the beds are looked at, and windows of up to 100 pairs of bed and crop.',
        json: {
          schema: subscriptionPutSchema,
          example: exampleSubscription,
          readOnly: readOnlyOf(subscriptionPutSchema, sentBackSchema),
        },
        answer: { schema: subscriptionAnswerSchema, mayCreate: true },
        ifMatch: true,
        ifNoneMatch: true,
        problems: ['unknown-bed', 'unknown-crop', ...changeProblems],
      },
      handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'subscription');
        const fields = readPut(subscriptionPutSchema, sentBackSchema, request.body);
        refuseUrl(fields.url, allowPrivate);
        return putAndAnswer(request, reply, id, keeper, () => fields, clock);
      },
    },
    {
      method: 'GET',
      url: '/v1/subscriptions/:id',
      operation: {
        id: 'getSubscription',
        summary: 'One subscription, and how it stands with its messages',
        query: [asParameter],
        answer: { schema: orAsKept(subscriptionAnswerSchema, subscriptionPutSchema) },
        problems: ['not-found', ...keptProblems],
      },
      async handler(request, reply) {
        const isAsKept = isAskedAsKept(request);
        const id = idIn(request, 'subscription');
        const subscription = await store.subscription(ownerOf(request), id);
        if (!subscription) throw resourceNotFound('subscription', id);
        const content = serializeSubscription(subscription);
        if (isAsKept)
          return sendAsKept(request, reply, subscription.revision, fieldsOf(subscriptionPutSchema, content));
        return sendWithETag(request, reply, content, () => signed(content, clock()));
      },
    },
    deleteRoute(
      'subscription',
      'Delete a subscription; messages that wait are not sent',
      () => keeper,
      store.deleteSubscription,
    ),
  ];
};

/** What a name leads to is seen when a message is sent; an address that is written out can be refused at once. */
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
