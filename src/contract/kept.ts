import { z } from 'zod';
import { wasValue } from '../basics/field-facts.js';
import type { DateRange } from '../garden/store/store.js';
import { answerShape, dateSchema } from './common.js';
import { addIssue, fieldFact, mustBe } from './field-issue.js';
import { reportSchema } from './readings.js';

/** A name as people write it. */
export const nameSchema = z
  .string()
  .min(1)
  .max(200)
  .refine((text) => !/[\p{Cc}\p{Cs}]/u.test(text), mustBe('field.plain-text'));

/** Dates from and to, both included. */
export const dateRangeShape = { from: dateSchema.optional(), to: dateSchema.optional() };
/** A range that ends before it begins is an error, not an empty range. */
export function refuseBackward({ from, to }: DateRange, context: z.RefinementCtx): void {
  if (from === undefined || to === undefined || from <= to) return;
  addIssue(context, ['to'], fieldFact('field.before-from', { from, ...wasValue(to) }));
}
export const dateRangeParameters = [
  { name: 'from', schema: dateSchema, description: 'The first date at the place.' },
  { name: 'to', schema: dateSchema, description: 'The last date at the place.' },
];

/** Stored values are returned as they were sent, unless rounding is requested. */
export const keptPrecisionSchema = z
  .enum(['full', 'rounded'])
  .default('full')
  .describe('Temperatures are returned as they were stored; `rounded` returns them to 0.1.');

export const changesAnswerSchema = z.strictObject({
  added: z.number().describe('Number of new values.'),
  unchanged: z.number().describe('Number of values stored before with the same content.'),
  replaced: z.number().describe('Number of values that replaced others.'),
  understood: z.array(reportSchema),
  ...answerShape,
});

export type ChangesWire = z.infer<typeof changesAnswerSchema>;

export const revisionOutSchema = z.number().describe('Changes with every change. If-Match takes it in quotes.');

/** An answer that, with `as=kept`, holds exactly the fields that a PUT takes. */
export const orAsKept = (answer: z.ZodObject, put: z.ZodObject) =>
  z.union([
    answer,
    z.strictObject(Object.fromEntries(Object.entries(answer.shape).filter(([name]) => Object.hasOwn(put.shape, name)))),
  ]);

export const deletedAnswerSchema = z.strictObject({ deleted: z.number(), ...answerShape });
