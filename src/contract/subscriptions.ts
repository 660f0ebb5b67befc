import { z } from 'zod';
import { alertEvents } from '../garden/store/alert-store.js';
import { answerShape, factShape, idSchema } from './common.js';
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
    .describe('The https address that messages are posted to.')
    .meta({ examples: ['https://shed.example/alerts'] }),
  events: z.array(z.enum(alertEvents)).min(1).refine(isOnceEach, ONCE_EACH).describe('The events to report.'),
  beds: z
    .array(idSchema)
    .min(1)
    .max(MAX_BEDS)
    .refine(isOnceEach, ONCE_EACH)
    .nullable()
    .describe('Ids of stored beds; null: all.'),
  crops: z
    .array(idSchema)
    .min(1)
    .max(MAX_CROPS)
    .refine(isOnceEach, ONCE_EACH)
    .nullable()
    .describe('Ids of crops; null: all sown crops. `window-open` needs a list.'),
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
  pending: z.number().describe('Number of waiting messages.'),
  deliveredAt: instantSchema.nullable().describe('When a message was last delivered; null: never.'),
  failing: z
    .strictObject({ times: z.number(), why: z.string(), ...factShape, nextTryAt: instantSchema })
    .nullable()
    .describe('Why the first waiting message could not be delivered; null: nothing failed.'),
  switchedOff: z
    .strictObject({ at: instantSchema, why: z.string(), ...factShape })
    .nullable()
    .describe('When sending was switched off; PUT it again to switch it on. Waiting messages stay stored.'),
};
export const subscriptionAnswerSchema = z.strictObject({
  ...subscriptionOutShape,
  secret: z
    .string()
    .optional()
    .describe(
      'The secret that signs messages, as in Standard Webhooks; returned once, when the subscription is created.',
    ),
  ...answerShape,
});
export const subscriptionListSchema = z.strictObject({
  subscriptions: z.array(z.strictObject(subscriptionOutShape)),
  next: idSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export type SubscriptionWire = z.infer<z.ZodObject<typeof subscriptionOutShape>>;
