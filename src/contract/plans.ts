import { z } from 'zod';
import { daysBetween } from '../basics/calendar.js';
import { wasValue } from '../basics/field-facts.js';
import { gapWhys } from '../garden/plan/plan-notes.js';
import { sowingMethods } from '../garden/store/season-store.js';
import { answerShape, dateOutSchema, dateSchema, dateSpanSchema, factShape, idSchema, noteSchema } from './common.js';
import { cautionSchema, cropChoiceSchema, ownCropSchema } from './crop.js';
import { addIssue, fieldFact } from './field-issue.js';
import { gradeSchema } from './grades.js';
import { revisionOutSchema } from './kept.js';

const MAX_DAYS = 366;
const MAX_PER_WEEK = 10_000;

const harvestSchema = z
  .strictObject({
    from: dateSchema.describe('First date of the wanted harvest.'),
    to: dateSchema.describe('Last date of the harvest, within a year.'),
    perWeek: z.int().min(1).max(MAX_PER_WEEK).describe('Plants to harvest per week.'),
  })
  .superRefine(({ from, to }, context) => {
    if (to < from) addIssue(context, ['to'], fieldFact('field.before-from', { from, ...wasValue(to) }));
    else if (daysBetween(from, to) >= MAX_DAYS) {
      addIssue(context, ['to'], fieldFact('field.within-a-year', wasValue(to)));
    }
  });

export const planPutSchema = z.strictObject({
  bed: idSchema.describe('The id of the stored bed where the crop grows.'),
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
      'The past years behind the plan; null, null and 0 for one usual year from normals, or if none were needed.',
    ),
  weeksPerSowing: z
    .number()
    .nullable()
    .describe('Weeks of harvest from one sowing; null if the days to maturity are unknown.'),
  sowings: z.array(
    z.strictObject({
      date: dateOutSchema,
      seeds: z.number().describe('Seeds that give the plants nine times in ten, if as good as the chart’s.'),
      plants: z.number().describe('Plants wanted in its weeks.'),
      method: z.enum(sowingMethods),
      grade: gradeSchema.describe('Of its date in the bed as it is, as sowing windows grade it.'),
      instead: z
        .strictObject({ action: z.enum(['shade', 'start-indoors']), text: z.string(), ...factShape })
        .nullable()
        .describe('What it rests on where its date is poor in the bed as it is; null: it needs nothing.'),
      sown: z.boolean().describe('True if a sowing of that date and method is stored for the bed.'),
      shaded: z.boolean().describe('True if the row is assumed to be in half shade until emergence.'),
      half: dateOutSchema.describe('Date of half emergence, the median of the years.'),
      halfRange: dateSpanSchema.nullable().describe('The middle 80 % of the years; null for a room or a usual year.'),
      harvest: z
        .strictObject({ from: dateOutSchema, to: dateOutSchema, slowed: z.boolean() })
        .describe('Harvest period, as past years ripen it; slowed: it takes longer than the published days.'),
      sureness: z
        .number()
        .nullable()
        .describe('The lowest share of past years that reached one of its weeks; null from normals alone.'),
      indoors: z
        .strictObject({ roomC: z.number(), hardenOff: dateSpanSchema, plantOut: dateOutSchema })
        .nullable()
        .describe('For a sowing in trays; null: in the bed.'),
      advice: z.array(noteSchema).describe('Remedies for this sowing: shade, evening, trays.'),
    }),
  ),
  gaps: z
    .array(
      z.strictObject({ from: dateOutSchema, to: dateOutSchema, why: z.enum(gapWhys), text: z.string(), ...factShape }),
    )
    .describe('Weeks of the harvest that no sowing reaches in most years.'),
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
