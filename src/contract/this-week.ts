import { z } from 'zod';
import { sowingMethods } from '../garden/store/season-store.js';
import { answerShape, dateOutSchema, dateSpanSchema, factShape } from './common.js';
import { gradeSchema, harvestSchema, reasonsSchema } from './grades.js';
import { localeShape } from './locale.js';
import { sowingAnswerSchema } from './sowings.js';

const methodSchema = z.enum(sowingMethods).describe('`direct`: where it stays; `indoors`: in trays in a room.');
const toldShape = { text: z.string(), ...factShape };

export const weekAnswerSchema = z.strictObject({
  from: dateOutSchema.describe('The first of the seven days.'),
  to: dateOutSchema,
  years: z
    .strictObject({
      from: z.number().nullable(),
      to: z.number().nullable(),
      count: z.number(),
    })
    .describe('Past years that the grades rest on; null, null and 0 where a usual year or typical years do.'),
  sow: z
    .array(
      z.strictObject({
        rank: z.number().describe('1: sow it first. By grade, then by how soon its good dates end.'),
        crop: z.string(),
        method: methodSchema,
        grade: gradeSchema,
        date: dateOutSchema.describe('The best date in the week.'),
        until: dateOutSchema.describe('The last date as good.'),
        lastCall: z.boolean().describe('True if `until` lies in the week.'),
        harvest: harvestSchema,
        reasons: reasonsSchema,
        ...toldShape,
      }),
    )
    .describe('What can be sown in the seven days, the first first.'),
  plantOut: z
    .array(
      z.strictObject({
        crop: z.string(),
        sowing: z.string().optional(),
        ...dateSpanSchema.shape,
        ...toldShape,
      }),
    )
    .describe('What can be planted out: of `sowing`, where one stands in trays; else as a tray or a shop has it.'),
  soon: z
    .array(
      z.strictObject({
        crop: z.string(),
        method: methodSchema,
        from: dateOutSchema,
        grade: gradeSchema,
      }),
    )
    .describe('Opens within 21 days of `from`.'),
  notNow: z
    .array(
      z.strictObject({
        crop: z.string(),
        reasons: reasonsSchema.describe('Against a sowing on `from`, in place.'),
        next: z.strictObject({ from: dateOutSchema, method: methodSchema }).nullable(),
      }),
    )
    .describe('Every other crop asked; `next`: when it can be sown within a year.'),
  sown: z
    .array(
      z.strictObject({
        crop: z.unknown(),
        sowing: z.string(),
        bed: z.string(),
        date: dateOutSchema,
      }),
    )
    .describe('What grows already: with `bed` it is not proposed again.'),
  toDo: z
    .array(
      z.strictObject({
        sowing: z.string(),
        ...sowingAnswerSchema.shape.toDo.element.shape,
      }),
    )
    .describe('What there is to do about sowings, the most pressing first; only for a week that begins today.'),
  ahead: z
    .array(
      z.strictObject({
        ...toldShape,
        code: z.enum(['frost', 'hot-spell']).describe('More may come.'),
        sowing: z.string().optional(),
        ...dateSpanSchema.shape,
      }),
    )
    .describe('What the coming days bring, as forecast.'),
  ...localeShape,
  ...answerShape,
});
export type WeekAnswer = z.infer<typeof weekAnswerSchema>;
