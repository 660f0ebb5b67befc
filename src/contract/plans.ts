import { z } from 'zod';
import { daysBetween } from '../basics/calendar.js';
import { wasValue } from '../basics/field-facts.js';
import { gapWhys } from '../garden/plan/plan-notes.js';
import { sowingMethods } from '../garden/store/season-store.js';
import { answerShape, dateOutSchema, dateSchema, dateSpanSchema, idSchema, noteSchema, saidShape } from './common.js';
import { cautionSchema, cropChoiceSchema, ownCropSchema } from './crop.js';
import { addIssue, fieldFact } from './field-issue.js';
import { revisionOutSchema } from './kept.js';

const MAX_DAYS = 366;
const MAX_PER_WEEK = 10_000;

const harvestSchema = z
  .strictObject({
    from: dateSchema.describe('The first date of the harvest that is wanted.'),
    to: dateSchema.describe('The last, within a year.'),
    perWeek: z.int().min(1).max(MAX_PER_WEEK).describe('How many plants to harvest in a week.'),
  })
  .superRefine(({ from, to }, context) => {
    if (to < from) addIssue(context, ['to'], fieldFact('field.before-from', { from, ...wasValue(to) }));
    else if (daysBetween(from, to) >= MAX_DAYS) {
      addIssue(context, ['to'], fieldFact('field.within-a-year', wasValue(to)));
    }
  });

export const planPutSchema = z.strictObject({
  bed: idSchema.describe('The id of a kept bed: where the crop grows.'),
  crop: cropChoiceSchema,
  harvest: harvestSchema,
});

const planOutShape = {
  id: z.string(),
  revision: revisionOutSchema,
  bed: z.string(),
  crop: z.union([z.string(), ownCropSchema]),
  harvest: z.strictObject({ from: dateOutSchema, to: dateOutSchema, perWeek: z.number() }),
};

export const planAnswerSchema = z.strictObject({
  ...planOutShape,
  years: z
    .strictObject({ from: z.number().nullable(), to: z.number().nullable(), count: z.number() })
    .describe(
      'The past years it is made from; null, null and 0 where normals make one usual year, or none were needed.',
    ),
  weeksPerSowing: z
    .number()
    .nullable()
    .describe('How many weeks one sowing is the harvest of; null where the days to maturity are not known.'),
  sowings: z.array(
    z.strictObject({
      date: dateOutSchema,
      seeds: z.number().describe('For its plants, nine times in ten, of seed as good as the chart’s.'),
      plants: z.number().describe('As many as are wanted in its weeks.'),
      method: z.enum(sowingMethods),
      sown: z.boolean().describe('It has been made: a sowing of that date and method is kept for the bed.'),
      shaded: z.boolean().describe('It is counted on that the row is shaded by half until it is up.'),
      half: dateOutSchema.describe('When half is up, in the middle of the years.'),
      halfRange: dateSpanSchema
        .nullable()
        .describe('The middle 80 % of the years; null where a room or a usual year says it.'),
      harvest: z
        .strictObject({ from: dateOutSchema, to: dateOutSchema, slowed: z.boolean() })
        .describe('When it is picked; slowed: short days put it off.'),
      sureness: z
        .number()
        .nullable()
        .describe('The least share of past years in which one of its weeks was reached; null from normals alone.'),
      indoors: z
        .strictObject({ roomC: z.number(), hardenOff: dateSpanSchema, plantOut: dateOutSchema })
        .nullable()
        .describe('Of a sowing in trays; null: in the bed.'),
      advice: z.array(noteSchema).describe('Shade, the evening, trays: what helps this sowing.'),
    }),
  ),
  gaps: z
    .array(
      z.strictObject({ from: dateOutSchema, to: dateOutSchema, why: z.enum(gapWhys), text: z.string(), ...saidShape }),
    )
    .describe('Weeks of the harvest that nothing reaches in most years.'),
  cautions: z.array(cautionSchema),
  ...answerShape,
});
export type PlanAnswer = z.infer<typeof planAnswerSchema>;

export const planListSchema = z.strictObject({
  plans: z.array(z.strictObject(planOutShape)),
  next: idSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export type PlanWire = z.infer<z.ZodObject<typeof planOutShape>>;
