import { z } from 'zod';
import { climateSchema } from './climate.js';

/** Where an answer is about, and the climate that it rests on. */
export const localeShape = {
  place: z
    .strictObject({
      id: z.string().optional().describe('Of a stored place.'),
      near: z.string().optional().describe('The town, where one was named.'),
      latitude: z.number(),
      longitude: z.number(),
      elevationM: z.number().nullable(),
      timeZone: z.string(),
    })
    .nullable()
    .optional()
    .describe('Where it is about; null: the question names no place.'),
  climate: climateSchema.nullable().optional().describe('null: the answer rests on none.'),
};
