import { z } from 'zod';
import { threatened } from '../growth/pests/pest-rule.js';
import { dateOutSchema, saidShape } from './common.js';

/** A risk to a row: also in sowing windows and forecasts. */
export const riskSchema = z.strictObject({
  id: z
    .string()
    .describe(
      'seedcorn-maggot, onion-maggot, cabbage-maggot, carrot-rust-fly, carrot-weevil, damping-off; more may come.',
    ),
  threatens: z.enum(threatened),
  from: dateOutSchema.describe('Of a brood: the day by which it is at its most in a tenth of the years.'),
  to: dateOutSchema.describe('In nine tenths of them.'),
  peak: dateOutSchema.nullable().describe('In half of them; null: it does not follow from sums of warmth.'),
  degreeDays: z
    .strictObject({
      baseC: z.number(),
      ceilingC: z.number().nullable(),
      since: z.string().describe('The day from which the sum counts, MM-DD.'),
      sum: z.number().describe('[°C·d]'),
      soFar: z.number().nullable().describe('What has come together in the year itself; null: not known.'),
      asOf: dateOutSchema.nullable().describe('By the end of this day.'),
    })
    .nullable(),
  inYears: z.number().nullable().describe('Past years in which the brood came.'),
  ofYears: z.number().nullable().describe('Past years known.'),
  ...saidShape,
  text: z.string(),
  source: z.string(),
});
export type RiskAnswer = z.infer<typeof riskSchema>;
