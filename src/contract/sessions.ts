import { z } from 'zod';
import { answerShape } from './common.js';

const instantSchema = z.string().meta({ format: 'date-time' });

export const sessionListSchema = z.strictObject({
  sessions: z
    .array(
      z.strictObject({
        id: z.string(),
        created: instantSchema,
        lastUsed: instantSchema.describe('To the hour.'),
        expires: instantSchema,
        label: z.string().describe('What the browser says it is, in short.'),
        isCurrent: z.boolean().describe('It is the one that asks.'),
      }),
    )
    .describe('The latest first.'),
  ...answerShape,
});
