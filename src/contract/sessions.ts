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
        label: z.string().describe("The browser's short description."),
        isCurrent: z.boolean().describe('True for the session of this request.'),
      }),
    )
    .describe('Latest first.'),
  ...answerShape,
});
