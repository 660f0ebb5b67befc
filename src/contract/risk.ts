import { z } from 'zod';
import { threatened } from '../growth/pests/pest-rule.js';
import { dateOutSchema, factShape } from './common.js';

/** A risk to a row: also in sowing windows and forecasts. */
export const riskSchema = z.strictObject({
  id: z
    .string()
    .describe(
      'seedcorn-maggot, onion-maggot, cabbage-maggot, carrot-rust-fly, carrot-weevil, damping-off; more may come.',
    ),
  threatens: z.enum(threatened),
  from: dateOutSchema.describe('For a brood: the day by which it peaks in a tenth of the years.'),
  to: dateOutSchema.describe('The same in nine tenths of the years.'),
  peak: dateOutSchema.nullable().describe('The same in half of the years; null: it does not follow from degree days.'),
  degreeDays: z
    .strictObject({
      baseC: z.number(),
      ceilingC: z.number().nullable(),
      since: z.string().describe('First day of the sum, MM-DD.'),
      sum: z.number().describe('[°C·d]'),
      soFar: z.number().nullable().describe('The sum so far this year; null: unknown.'),
      asOf: dateOutSchema.nullable().describe('Last day of that sum.'),
    })
    .nullable(),
  inYears: z.number().nullable().describe('Past years with the brood.'),
  ofYears: z.number().nullable().describe('Known past years.'),
  ...factShape,
  text: z.string(),
  source: z.string(),
});
export type RiskAnswer = z.infer<typeof riskSchema>;
