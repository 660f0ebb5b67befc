import { z } from 'zod';
import { wasValue } from '../basics/field-facts.js';
import { sourceFormats } from '../garden/store/source-formats.js';
import { presetNames } from '../garden/store/source-presets.js';
import { sourceUrlFault } from '../garden/store/source-url.js';
import { isTemperature } from '../readings/read-series.js';
import { frostAroundShape } from './climate.js';
import { answerShape, attributionSchema, dateOutSchema, factShape, idSchema, timeZoneSchema } from './common.js';
import { addIssue, fieldFact, mustBe } from './field-issue.js';
import { nameSchema, revisionOutSchema } from './kept.js';
import { localeShape } from './locale.js';
import { nearSchema } from './localities.js';

const everyHoursSchema = z.number().min(1).max(168).describe('Hours between two requests [h].');

const addressSourceSchema = z.strictObject({
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
    .describe('May hold the placeholders {latitude} {longitude} {from} {to} {fromCompact} {toCompact} {timeZone}.')
    .meta({ examples: ['https://weather.example/quillmere.json'] }),
  everyHours: everyHoursSchema,
});

const presetSourceSchema = z.strictObject({
  preset: z
    .string()
    .max(64)
    .describe('A source by its name at GET /v1/source-presets.')
    .meta({ enum: [...presetNames], examples: ['nasa-power'] }),
  everyHours: everyHoursSchema.optional().describe('Hours between two requests [h]; left out: those of the preset.'),
});
const oneSourceSchema = z.union([addressSourceSchema, presetSourceSchema]);
export type SourceAsked = z.output<typeof oneSourceSchema>;

const MAX_SOURCES = 4;
const sourceSchema = z
  .union([addressSourceSchema, presetSourceSchema, z.array(oneSourceSchema).min(1).max(MAX_SOURCES)])
  .nullable()
  .describe("The source of the place's air temperatures, or several: an archive and a forecast.");

/** When and how a source has answered. */
const sourceStateSchema = z.strictObject({
  status: z
    .enum(['not-asked', 'ok', 'stale', 'failing', 'off'])
    .describe('`stale`: its last good answer is old; `off`: this service is set not to ask it.'),
  fetchedAt: z.string().nullable().describe('When it last answered well.').meta({ format: 'date-time' }),
  triedAt: z.string().nullable().describe('When it was last asked.').meta({ format: 'date-time' }),
  nextTryAt: z.string().nullable().describe('When it is asked next; null: it is not.').meta({ format: 'date-time' }),
  failures: z.number().describe('How often it has failed since it last answered well.'),
  why: z
    .strictObject({ ...factShape, code: z.string(), text: z.string() })
    .nullable()
    .describe('What went wrong last; null where nothing did since it last answered well.'),
  days: z
    .strictObject({ from: dateOutSchema, to: dateOutSchema, count: z.number() })
    .nullable()
    .describe('The days that it has given: the first, the last, and how many are kept from the first to the last.'),
});
const presetOutShape = { preset: z.string(), everyHours: z.number() };
const addressOutShape = { format: z.string(), url: z.string(), everyHours: z.number() };
const sourceOutSchema = z.union([z.strictObject(addressOutShape), z.strictObject(presetOutShape)]);
const sourceWithStateSchema = z.union([
  z.strictObject({ ...addressOutShape, state: sourceStateSchema }),
  z.strictObject({ ...presetOutShape, state: sourceStateSchema }),
]);
const sourcesOutSchema = z.array(sourceWithStateSchema).describe('All sources of the place, each with its state.');

const placeFields = {
  name: nameSchema,
  latitude: z.number().min(-90).max(90).describe('North positive [°].'),
  longitude: z.number().min(-180).max(180).describe('East positive [°].'),
  elevationM: z.number().min(-500).max(9000).nullable().describe('Above the sea [m].'),
  timeZone: timeZoneSchema,
  annualRainMm: z.number().min(0).max(20_000).nullable().describe('Mean annual precipitation [mm].'),
  ...frostAroundShape,
  source: sourceSchema,
};

/** What can be looked up by the town, or by the coordinates. */
const lookedUp = {
  near: nearSchema
    .optional()
    .describe(
      'A town: its name, coordinates, height and zone are looked up once, and kept. What is sent beside it wins.',
    ),
  name: placeFields.name.optional().describe('Default: that of `near`.'),
  latitude: placeFields.latitude.optional(),
  longitude: placeFields.longitude.optional(),
  timeZone: placeFields.timeZone
    .optional()
    .describe('IANA time zone. Default: that of the town, or of the coordinates.'),
};

export const placePutSchema = z.strictObject({
  ...placeFields,
  ...lookedUp,
  elevationM: placeFields.elevationM.default(null),
  annualRainMm: placeFields.annualRainMm.default(null),
  lastFrostAround: placeFields.lastFrostAround.default(null),
  firstFrostAround: placeFields.firstFrostAround.default(null),
  source: placeFields.source.default(null),
  sources: z.unknown().optional().meta({
    readOnly: true,
    description: 'As answered, sent back: beside a single `source` the others stay.',
  }),
});
/** What `as=kept` answers. */
export const placeKeptSchema = placePutSchema.omit({ sources: true, near: true }).extend({
  name: placeFields.name,
  latitude: placeFields.latitude,
  longitude: placeFields.longitude,
  timeZone: placeFields.timeZone,
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
  lastFrostAround: z.string().nullable(),
  firstFrostAround: z.string().nullable(),
  source: z
    .union([sourceOutSchema, z.array(sourceOutSchema)])
    .nullable()
    .describe('The first of the sources; with `as=kept` a list of all, where there are several.'),
};
export const placeAnswerSchema = z.strictObject({ ...placeOutShape, sources: sourcesOutSchema, ...answerShape });
export const sourcesAnswerSchema = z.strictObject({ sources: sourcesOutSchema, ...answerShape });
const saidSchema = z.strictObject({ ...factShape, code: z.string(), text: z.string() });
export const presetsAnswerSchema = z.strictObject({
  presets: z.array(
    z.strictObject({
      preset: z.enum(presetNames),
      name: z.string().describe('As its publisher names it.'),
      gives: saidSchema,
      terms: saidSchema,
      attribution: attributionSchema,
      host: z.string().describe('The host that is asked.'),
      licence: z.string().nullable(),
      url: z.string().describe('The publisher’s documentation.').meta({ format: 'uri' }),
      termsUrl: z.string().meta({ format: 'uri' }),
      everyHours: z.number(),
      contactNeeded: z.boolean().describe('True if SOURCES_CONTACT is needed.'),
    }),
  ),
  allowed: z.enum(['off', 'presets', 'any']).describe('Which sources this service asks.'),
  ...answerShape,
});
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
