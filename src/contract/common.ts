import { z } from 'zod';
import { findDate, findZone, type PlainDate } from '../basics/calendar.js';
import { mustBe } from './field-issue.js';

const DATE_FAULT = mustBe('field.date');

/** A calendar date at the place. */
export const dateSchema = z
  .string({ error: DATE_FAULT })
  .refine((text): boolean => findDate(text) !== undefined, DATE_FAULT)
  .transform((text) => text as PlainDate)
  .meta({ format: 'date', examples: ['2027-08-03'] });

export const timeSchema = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, mustBe('field.clock-time'))
  .describe('Clock time at the place, HH:MM.');

export const idSchema = z
  .string()
  .regex(/^[a-z0-9-]{1,64}$/, mustBe('field.id'))
  .describe("The caller's id for it.");

export const timeZoneSchema = z
  .string()
  .max(64)
  .refine((name) => findZone(name) !== undefined, mustBe('field.time-zone'))
  .describe('IANA time zone of the place.');

export const spanSchema = z.strictObject({ from: z.number(), to: z.number() });
/** A date in an answer. */
export const dateOutSchema = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/)
  .meta({ format: 'date' });
export const dateSpanSchema = z.strictObject({ from: dateOutSchema, to: dateOutSchema });
/** Plain values, named with their unit. */
export const paramsSchema = z
  .record(z.string(), z.union([z.string(), z.number(), z.null()]))
  .describe(
    'The values in the text, named with their units, so that callers can word it themselves instead of parsing a sentence.',
  );
/** Fields beside a text, so that callers can word it themselves. */
export const factShape = {
  code: z.string().optional().describe('Code of the message, unless the text stands beside another code.'),
  params: paramsSchema.optional(),
  also: z
    .strictObject({ code: z.string(), text: z.string(), params: paramsSchema })
    .optional()
    .describe('A fact that the text adds at its end.'),
};
export const noteSchema = z.strictObject({
  ...factShape,
  code: z.string(),
  text: z.string(),
  source: z.string().optional().describe('Source of a fact about a crop.'),
});

export const modelSchema = z.strictObject({
  name: z.string(),
  version: z.string(),
  sources: z.array(z.string()).optional().describe('Sources of the model: with model=full, and at /v1/model.'),
});

export const attributionSchema = z.strictObject({
  ...factShape,
  code: z.string(),
  text: z.string().describe('The credit that the publisher asks for; show it beside the answer.'),
  url: z.string().meta({ format: 'uri' }),
  licence: z.string().nullable().describe('Name of the licence; null: the publisher names none.'),
});

/** Fields of every answer. */
export const answerShape = {
  attributions: z
    .array(attributionSchema)
    .optional()
    .describe('Credits for the public sources that the answer rests on; left out where it rests on none.'),
  assumptions: z.array(noteSchema).describe('Assumptions behind the answer.'),
  warnings: z.array(noteSchema).describe('Warnings for the grower.'),
  model: modelSchema,
  issuedAt: z
    .string()
    .describe('When the answer was worked out; an answer with unchanged inputs is returned again as it was.')
    .meta({ format: 'date-time' }),
};

export const precisionSchema = z
  .enum(['rounded', 'full'])
  .default('rounded')
  .describe('`full`: numbers are not rounded.');
