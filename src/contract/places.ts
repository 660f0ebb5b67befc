import { z } from 'zod';
import { wasValue } from '../basics/field-facts.js';
import { sourceFormats } from '../garden/store/source-formats.js';
import { sourceUrlFault } from '../garden/store/source-url.js';
import { isTemperature } from '../readings/read-series.js';
import { answerShape, dateOutSchema, idSchema, timeZoneSchema } from './common.js';
import { addIssue, fieldFact, mustBe } from './field-issue.js';
import { nameSchema, revisionOutSchema } from './kept.js';
import { localeShape } from './locale.js';

const sourceShape = {
  format: z.enum(sourceFormats),
  url: z
    .string()
    .max(2000)
    .superRefine((text, context) => {
      const fault = /[\p{Cc}\p{Cs}\s]/u.test(text)
        ? fieldFact('field.no-spaces', wasValue(text))
        : sourceUrlFault(text);
      if (fault !== null) addIssue(context, [], fault);
    })
    .describe('May hold the placeholders {latitude} {longitude} {from} {to} {fromCompact} {toCompact}.')
    .meta({ examples: ['https://weather.example/quillmere.json'] }),
  everyHours: z.number().min(1).max(168).describe('Hours between two requests [h].'),
};

const placeFields = {
  name: nameSchema,
  latitude: z.number().min(-90).max(90).describe('North positive [°].'),
  longitude: z.number().min(-180).max(180).describe('East positive [°].'),
  elevationM: z.number().min(-500).max(9000).nullable().describe('Above the sea [m].'),
  timeZone: timeZoneSchema,
  annualRainMm: z.number().min(0).max(20_000).nullable().describe('Mean annual precipitation [mm].'),
  source: z.strictObject(sourceShape).nullable().describe("The source of the place's air temperatures."),
};

export const placePutSchema = z.strictObject({
  ...placeFields,
  elevationM: placeFields.elevationM.default(null),
  annualRainMm: placeFields.annualRainMm.default(null),
  source: placeFields.source.default(null),
});
export const placePatchSchema = z
  .strictObject(placeFields)
  .partial()
  .describe('Named fields are replaced; null removes an optional one.');

const placeOutShape = {
  id: z.string(),
  revision: revisionOutSchema,
  name: z.string(),
  latitude: z.number(),
  longitude: z.number(),
  elevationM: z.number().nullable(),
  timeZone: z.string(),
  annualRainMm: z.number().nullable(),
  source: z.strictObject({ format: z.string(), url: z.string(), everyHours: z.number() }).nullable(),
};
export const placeAnswerSchema = z.strictObject({ ...placeOutShape, ...answerShape });
export const placeListSchema = z.strictObject({
  places: z.array(z.strictObject(placeOutShape)),
  next: idSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export type PlaceWire = z.infer<z.ZodObject<typeof placeOutShape>>;

const airDayOutSchema = z.strictObject({
  date: dateOutSchema,
  min: z.number().optional(),
  mean: z.number().optional(),
  max: z.number().optional(),
});
const airSeriesShape = { medium: z.literal('air'), unit: z.literal('C'), daily: z.array(airDayOutSchema) };

const seriesRevision = {
  revision: revisionOutSchema.describe("Changes with every change of the place's air, normals or forecast."),
};

const airAnswerSchema = z.strictObject({
  ...seriesRevision,
  series: z.strictObject(airSeriesShape),
  next: dateOutSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});

export const airKeptSchema = z.union([airAnswerSchema, airAnswerSchema.shape.series]);

export const comingDaysAnswerSchema = z.strictObject({
  ...seriesRevision,
  at: z.string().describe('When they were sent or fetched.').meta({ format: 'date-time' }),
  series: z.strictObject({ ...airSeriesShape, origin: z.literal('forecast') }),
  ...answerShape,
});

export const comingDaysKeptSchema = z.union([comingDaysAnswerSchema, comingDaysAnswerSchema.shape.series]);

const monthlySchema = z
  .array(z.number().refine(isTemperature, mustBe('field.air-temperature')))
  .length(12)
  .describe('January first [°C].');

export const normalsSchema = z
  .strictObject({ meanMaxC: monthlySchema, meanMinC: monthlySchema })
  .superRefine(({ meanMaxC, meanMinC }, context) => {
    meanMinC.forEach((min, month) => {
      if (min > meanMaxC[month]!) {
        const fact = fieldFact('field.min-above-max', { meanMaxC: meanMaxC[month]!, ...wasValue(min) });
        addIssue(context, ['meanMinC', month], fact);
      }
    });
  });
export const normalsAnswerSchema = z.strictObject({
  ...seriesRevision,
  meanMaxC: z.array(z.number()),
  meanMinC: z.array(z.number()),
  ...answerShape,
});

const monthDaySchema = z
  .string()
  .regex(/^\d{2}-\d{2}$/)
  .nullable();
const frostSideSchema = z.strictObject({
  risk10: monthDaySchema,
  risk50: monthDaySchema,
  risk90: monthDaySchema,
  seasons: z.number().describe('Seasons with a known frost date, or known to have no frost.'),
  seasonsWithFrost: z.number(),
});

export const frostAnswerSchema = z.strictObject({
  thresholdC: z.number(),
  lastSpringFrost: frostSideSchema.describe('Month and day after which the risk of another frost is 10, 50, 90 %.'),
  firstAutumnFrost: frostSideSchema.describe('Month and day before which the risk of a frost is 10, 50, 90 %.'),
  years: z
    .strictObject({ from: z.number().nullable(), to: z.number().nullable() })
    .describe('Of the air; null where typical years of the climate table stand in.'),
  ...localeShape,
  ...answerShape,
});
