import { z } from 'zod';
import { usualCriteria } from '../answers/windows/dates-in-years.js';
import { answerShape, dateOutSchema, dateSchema, paramsSchema } from './common.js';
import { cautionSchema } from './crop.js';
import { lotSchema, needTemperatures, questionShape, sowingSchema, temperaturesSchema } from './forecast.js';
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
};

const windowSowingSchema = sowingSchema.omit({ date: true }).default({ time: '12:00' });

export const windowQuerySchema = z.strictObject({
  crop: questionShape.crop,
  where: questionShape.where,
  sowing: windowSowingSchema,
  lot: lotSchema.optional(),
  timeFactor: questionShape.timeFactor,
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

const whySchema = z.enum(['too-cold', 'too-hot', 'too-slow', 'frost-to-come']);

export const windowAnswerSchema = z.strictObject({
  crop: z.string(),
  years: z
    .strictObject({ from: z.number().nullable(), to: z.number().nullable(), count: z.number() })
    .describe('Of the first date; null, null and 0 where normals make one usual year.'),
  criteria: z.strictObject({
    share: z.number(),
    shareIfHeld: z.number(),
    maxDays: z.number(),
    sureness: z.number(),
  }),
  best: z
    .strictObject({
      date: dateOutSchema,
      why: z.string(),
      code: z.string().optional(),
      params: paramsSchema.optional(),
    })
    .nullable(),
  windows: z
    .array(
      z.strictObject({
        from: dateOutSchema,
        to: dateOutSchema,
        sureness: z.number().nullable().describe('The least in it; null from normals alone.'),
        halfDays: quantilesSchema,
        stand: quantilesSchema,
        risks: z.array(riskSchema).describe('Those of `risks` that meet rows sown in it.'),
      }),
    )
    .describe('A week or more of sure dates each.'),
  closed: z.array(z.strictObject({ from: dateOutSchema, to: dateOutSchema, why: whySchema })),
  dates: z.array(
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
    }),
  ),
  cautions: z.array(cautionSchema),
  risks: z
    .array(riskSchema)
    .describe(
      'What threatens rows sown between the first date and the last, in the order of dates: pests, from past years of air.',
    ),
  understood: z.array(reportSchema),
  ...answerShape,
});
export type WindowAnswer = z.infer<typeof windowAnswerSchema>;
