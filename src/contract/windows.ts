import { z } from 'zod';
import { usualCriteria } from '../answers/windows/dates-in-years.js';
import { whysClosed } from '../answers/windows/why-nots.js';
import { answerShape, dateOutSchema, dateSchema, dateSpanSchema, paramsSchema } from './common.js';
import { cautionSchema } from './crop.js';
import { lotSchema, needTemperatures, questionShape, sowingSchema, temperaturesSchema } from './forecast.js';
import { gradeSchema, harvestSchema, reasonsSchema } from './grades.js';
import { localeShape } from './locale.js';
import { reportSchema } from './readings.js';
import { riskSchema } from './risk.js';

const share = z.number().min(0.01).max(1);

/** What is asked beside the crop, the place, the bed and the temperatures. */
const windowShape = {
  from: dateSchema.optional().describe('First date judged. Default: today.'),
  to: dateSchema.optional().describe('Last date judged, within a year. Default: 364 days after from.'),
  share: share.default(usualCriteria.share).describe('Of what the lot can give, so much is up within maxDays.'),
  shareIfHeld: share
    .default(usualCriteria.shareIfHeld)
    .describe('And so much even without the seed that heat or cold held too long.'),
  maxDays: z.int().min(1).max(120).optional().describe("Default: the crop's."),
  sureness: share.default(usualCriteria.sureness).describe('In so many of the years.'),
  prefer: z
    .enum(['earliest', 'surest'])
    .default('earliest')
    .describe('Which date is best: the earliest with two sure weeks around it, or the surest of all.'),
  dates: z.boolean().default(true).describe('false: the dates one by one, most of the answer, are left out.'),
  judge: z
    .enum(['harvest', 'emergence'])
    .default('harvest')
    .describe(
      'What makes a date good: that a harvest is had before frost, heat or short days end the crop, or that it comes up alone.',
    ),
};

const windowSowingSchema = sowingSchema.omit({ date: true }).default({ time: '12:00' });

export const windowQuerySchema = z.strictObject({
  crop: questionShape.crop,
  where: questionShape.where,
  sowing: windowSowingSchema,
  lot: lotSchema.optional(),
  timeFactor: questionShape.timeFactor,
  climate: questionShape.climate,
  ...windowShape,
});
export const windowBodySchema = z
  .strictObject({ ...windowQuerySchema.shape, temperatures: temperaturesSchema })
  .superRefine(needTemperatures);
export type WindowQuery = z.infer<typeof windowQuerySchema>;

const quantilesSchema = z
  .strictObject({ p10: z.number(), p50: z.number(), p90: z.number() })
  .nullable()
  .describe('Of the years; null: none of them has it.');

const waySpanSchema = z.strictObject({
  from: dateOutSchema,
  best: dateOutSchema.describe('The best date of this way; the best of all in place is `best` of the answer.'),
  to: dateOutSchema,
});

const waySchema = z.discriminatedUnion('method', [
  z.strictObject({
    method: z.literal('direct'),
    grade: gradeSchema,
    sow: waySpanSchema,
    harvest: harvestSchema,
  }),
  z.strictObject({
    method: z.literal('indoors'),
    grade: gradeSchema,
    roomC: z.number().describe('Of the room it is sown in, day and night.'),
    sow: waySpanSchema.describe('In trays.'),
    hardenOff: dateSpanSchema.describe('Outside by day, in by night, before the best date of `plantOut`.'),
    plantOut: waySpanSchema.describe('On dates that the nights, the soil and the ground of past years bear.'),
    harvest: harvestSchema,
  }),
]);

const surenessSchema = z.number().nullable();

export const windowAnswerSchema = z.strictObject({
  crop: z.string(),
  years: z
    .strictObject({ from: z.number().nullable(), to: z.number().nullable(), count: z.number() })
    .describe('Of the first date; null, null and 0 where normals make one usual year.'),
  criteria: z.strictObject({
    judge: z.enum(['harvest', 'emergence']),
    share: z.number(),
    shareIfHeld: z.number(),
    maxDays: z.number(),
    standDays: z.number().describe('The stand is counted so long after the sowing.'),
    sureness: z.number(),
  }),
  best: z
    .strictObject({
      date: dateOutSchema,
      grade: gradeSchema,
      reasons: reasonsSchema,
      why: z.string(),
      code: z.string().optional(),
      params: paramsSchema.optional(),
    })
    .nullable()
    .describe('null: no date is good or fair; see `instead`.'),
  windows: z
    .array(
      z.strictObject({
        from: dateOutSchema,
        to: dateOutSchema,
        sureness: z.number().nullable().describe('The least in it; null from normals alone.'),
        halfDays: quantilesSchema,
        stand: quantilesSchema,
        grade: gradeSchema,
        harvest: harvestSchema,
        risks: z.array(riskSchema).describe('Those of `risks` that meet rows sown in it.'),
      }),
    )
    .describe(
      'A week or more of sure dates each; or of grade `fair`, two weeks or more of dates near which none is good.',
    ),
  closed: z
    .array(
      z.strictObject({ from: dateOutSchema, to: dateOutSchema, why: z.enum(whysClosed).describe('More may come.') }),
    )
    .describe('The poor ones of `spans`, each with its first reason in a word.'),
  spans: z
    .array(
      z.strictObject({
        from: dateOutSchema,
        to: dateOutSchema,
        grade: gradeSchema,
        sureness: surenessSchema.describe('The middle one of its dates; null from normals alone.'),
        reasons: reasonsSchema,
        harvest: harvestSchema,
      }),
    )
    .describe(
      'Every date in exactly one span, of a week or more but at the ends: of one grade and, if it is not good, of one main reason. Its `sureness` is the middle one of its dates, and `inYears` of its reasons the mean of them; one date has its own in `dates`, and in `dateVerdict` of forecasts.',
    ),
  ways: z
    .array(waySchema)
    .describe(
      'How it can be grown, the better way first. `indoors` is told of crops that are planted out, from three years of air on.',
    ),
  instead: z
    .array(
      z.strictObject({
        action: z.enum(['keep-wet', 'shade', 'cover', 'wait', 'start-indoors']),
        grade: gradeSchema,
        from: dateOutSchema,
        to: dateOutSchema,
        text: z.string(),
        params: paramsSchema.optional(),
      }),
    )
    .describe(
      'What would make a date good, where the first one asked is not: what is done to the bed first, then waiting, or trays. Helps for the bed are told where no date asked is good: ask of the weeks in question.',
    ),
  dates: z
    .array(
      z.strictObject({
        date: dateOutSchema,
        sureness: z
          .number()
          .nullable()
          .describe('The share of years in which it was good, as a centred 7-day mean; null from normals alone.'),
        firstDays: quantilesSchema,
        halfDays: quantilesSchema,
        mostDays: quantilesSchema,
        stand: quantilesSchema,
        ifHeldAreLost: quantilesSchema,
        grade: gradeSchema,
        harvest: harvestSchema,
      }),
    )
    .optional()
    .describe('One by one; missing where dates=false.'),
  cautions: z.array(cautionSchema),
  risks: z
    .array(riskSchema)
    .describe(
      'What threatens rows sown between the first date and the last, in the order of dates: pests, from past years of air.',
    ),
  understood: z.array(reportSchema),
  ...localeShape,
  ...answerShape,
});
export type WindowReply = z.infer<typeof windowAnswerSchema>;
/** With its dates, as is asked for unless somebody says otherwise. */
export type WindowAnswer = WindowReply & { readonly dates: NonNullable<WindowReply['dates']> };
