import { z } from 'zod';
import { grades } from '../answers/windows/grades.js';
import { whyNots } from '../answers/windows/why-nots.js';
import { dateOutSchema, dateSpanSchema, factShape, paramsSchema } from './common.js';

export const gradeSchema = z
  .enum(grades)
  .describe(
    '`good`: in `sureness` of the years it comes up and is harvested. `fair`: in half of them, or thinner or smaller. `poor`: the rest.',
  );
export const harvestSchema = dateSpanSchema
  .nullable()
  .describe(
    'From the first harvest of early kinds to that of late ones, in the middle of the years; null: none is told.',
  );
export const reasonsSchema = z
  .array(
    z.strictObject({
      code: z.enum(whyNots).describe('More may come.'),
      text: z.string(),
      params: paramsSchema.optional(),
    }),
  )
  .describe('Why it is not good, what spoilt most years first.');

/** Is the date of a sowing a good one? */
export const dateVerdictSchema = z
  .strictObject({
    grade: gradeSchema,
    reasons: reasonsSchema,
    better: z.strictObject({ date: dateOutSchema, grade: gradeSchema }).nullable(),
    text: z.string(),
    ...factShape,
  })
  .nullable()
  .describe('Is it a good date? As sowing windows grade it; null without a climate.');
