import { z } from 'zod';
import { alertEvents } from '../garden/store/alert-store.js';
import { answerShape, idSchema, saidShape } from './common.js';
import { addIssue, fieldFact, mustBe } from './field-issue.js';
import { revisionOutSchema } from './kept.js';

const MAX_BEDS = 100;
const MAX_CROPS = 30;

const isOnceEach = (all: readonly string[]): boolean => new Set(all).size === all.length;
const ONCE_EACH = mustBe('field.once-each');

const subscriptionFields = {
  url: z
    .string()
    .max(2000)
    .refine((text) => !/[\p{Cc}\p{Cs}\s]/u.test(text), mustBe('field.no-spaces'))
    .describe('Where messages are posted to: an https address.')
    .meta({ examples: ['https://shed.example/alerts'] }),
  events: z.array(z.enum(alertEvents)).min(1).refine(isOnceEach, ONCE_EACH).describe('What to be told of.'),
  beds: z
    .array(idSchema)
    .min(1)
    .max(MAX_BEDS)
    .refine(isOnceEach, ONCE_EACH)
    .nullable()
    .describe('Ids of kept beds; null: all.'),
  crops: z
    .array(idSchema)
    .min(1)
    .max(MAX_CROPS)
    .refine(isOnceEach, ONCE_EACH)
    .nullable()
    .describe('Ids of crops; null: all that are sown. `window-open` needs them named.'),
};

export const subscriptionPutSchema = z
  .strictObject({
    ...subscriptionFields,
    beds: subscriptionFields.beds.default(null),
    crops: subscriptionFields.crops.default(null),
  })
  .superRefine(({ events, crops }, context) => {
    if (!events.includes('window-open') || crops !== null) return;
    addIssue(context, ['crops'], fieldFact('field.crops-needed'));
  });

const instantSchema = z.string().meta({ format: 'date-time' });
const subscriptionOutShape = {
  id: z.string(),
  revision: revisionOutSchema,
  url: z.string(),
  events: z.array(z.enum(alertEvents)),
  beds: z.array(z.string()).nullable(),
  crops: z.array(z.string()).nullable(),
  pending: z.number().describe('How many messages wait.'),
  deliveredAt: instantSchema.nullable().describe('When one was last delivered; null: never yet.'),
  failing: z
    .strictObject({ times: z.number(), why: z.string(), ...saidShape, nextTryAt: instantSchema })
    .nullable()
    .describe('Why the first message that waits could not be delivered; null: nothing has failed.'),
  switchedOff: z
    .strictObject({ at: instantSchema, why: z.string(), ...saidShape })
    .nullable()
    .describe('Since when nothing is sent any more; PUT it again to switch it on. What waits is kept.'),
};
export const subscriptionAnswerSchema = z.strictObject({
  ...subscriptionOutShape,
  secret: z
    .string()
    .optional()
    .describe(
      'What messages are signed with, as Standard Webhooks says: given once, where the subscription is created.',
    ),
  ...answerShape,
});
export const subscriptionListSchema = z.strictObject({
  subscriptions: z.array(z.strictObject(subscriptionOutShape)),
  next: idSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export type SubscriptionWire = z.infer<z.ZodObject<typeof subscriptionOutShape>>;
