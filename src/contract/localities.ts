import { z } from 'zod';
import { answerShape, dateOutSchema } from './common.js';
import { mustBe } from './field-issue.js';

/** Characters of a name at most; no town's name with region and country is longer. */
export const MAX_NAME = 100;

/** The name of a town, also with its region and country. */
export const nearSchema = z
  .string()
  .min(1)
  .max(MAX_NAME)
  .refine((text) => !/[\p{Cc}\p{Cs}]/u.test(text), mustBe('field.plain-text'))
  .describe('A town, also with its region and country, by name or code: `Ithaca`, `Portland, ME`, `Paris, Texas, US`.')
  .meta({ examples: ['Ithaca, New York, US'] });

export const countrySchema = z
  .string()
  .regex(/^[A-Za-z]{2}$/, mustBe('field.country'))
  .describe('ISO 3166-1, two letters.')
  .meta({ examples: ['US'] });

export const localitySchema = z.strictObject({
  near: z.string().describe('Names this one and no other: send it as `near`.'),
  name: z.string(),
  region: z.string().nullable(),
  country: z.string().describe('ISO 3166-1, two letters.'),
  latitude: z.number(),
  longitude: z.number(),
  elevationM: z.number().nullable().describe('From a model of the ground, of about 90 m.'),
  timeZone: z.string(),
  population: z.number().nullable(),
  match: z
    .enum(['name', 'begins', 'alike', 'nearest'])
    .describe('Its name is the text, begins with it, or differs from it in one letter; or it is near the point.'),
  km: z.number().optional().describe('Distance from the point.'),
});
export type LocalityWire = z.output<typeof localitySchema>;

export const localitiesSchema = z.strictObject({
  localities: z.array(localitySchema),
  source: z.strictObject({ name: z.string(), licence: z.string(), url: z.string(), asOf: dateOutSchema }),
  ...answerShape,
});
export type LocalitiesWire = z.output<typeof localitiesSchema>;
