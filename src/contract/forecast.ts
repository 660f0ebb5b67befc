import { z } from 'zod';
import { remedyActions } from '../answers/forecast/remedies/remedies.js';
import type { Fact } from '../basics/fact.js';
import { bedKinds, covers, moistures } from '../seedbed/bed.js';
import { frostAroundShape } from './climate.js';
import {
  answerShape,
  dateOutSchema,
  dateSchema,
  dateSpanSchema,
  idSchema,
  paramsSchema,
  spanSchema,
  timeSchema,
  timeZoneSchema,
} from './common.js';
import { cropChoiceSchema } from './crop.js';
import { addIssue, fieldFact, mustBe } from './field-issue.js';
import { dateVerdictSchema, harvestSchema } from './grades.js';
import { localeShape } from './locale.js';
import { hotLimitShiftSchema } from './lots.js';
import { reportSchema } from './readings.js';
import { riskSchema } from './risk.js';
import { dayOutShape, hourlySeriesOutSchema, seriesSchema } from './series.js';

/** A name longer than this is no town's. */
const MAX_NAME = 200;

export const placeSchema = z.strictObject({
  near: z
    .string()
    .min(1)
    .max(MAX_NAME)
    .optional()
    .describe('A town, as GET /v1/localities knows it, such as "Ithaca, New York, US"; coordinates win over it.')
    .meta({ examples: ['Ithaca, New York, US'] }),
  latitude: z
    .number()
    .min(-90)
    .max(90)
    .optional()
    .describe(
      'North positive [°]. Needed for air temperatures; without it the last week is repeated after the last value.',
    ),
  longitude: z.number().min(-180).max(180).optional().describe('East positive [°].'),
  elevationM: z.number().min(-500).max(9000).optional().describe('Above the sea [m]. Default: that of `near`.'),
  lastFrostAround: frostAroundShape.lastFrostAround.optional(),
  firstFrostAround: frostAroundShape.firstFrostAround.optional(),
  timeZone: timeZoneSchema.optional().describe('IANA time zone. Default: looked up from the coordinates.'),
  annualRainMm: z
    .number()
    .min(0)
    .max(20_000)
    .optional()
    .describe(
      'Mean annual precipitation [mm]: a better estimate of soil under grass, beside a year of air temperatures.',
    ),
});

const bedSchema = z
  .strictObject({
    kind: z.enum(bedKinds).default('open-ground'),
    cover: z.enum(covers).default('bare'),
    moisture: z.enum(moistures).default('moist'),
    shadePercent: z.number().min(0).max(100).default(0),
    roomC: z
      .number()
      .min(-10)
      .max(50)
      .nullable()
      .default(null)
      .describe('Temperature of the room, for `indoors` [°C].'),
    wettedOn: dateSchema.optional().describe('For `dry`: the day the seed is first watered, at 12:00.'),
  })
  .superRefine(({ kind, roomC, moisture, wettedOn }, context) => {
    const fault = (path: string, fact: Fact) => addIssue(context, [path], fact);
    if (kind === 'indoors' && roomC === null) fault('roomC', fieldFact('field.room-needed'));
    if (moisture === 'dry' && wettedOn === undefined) fault('wettedOn', fieldFact('field.wetted-on-needed'));
    if (moisture !== 'dry' && wettedOn !== undefined) fault('wettedOn', fieldFact('field.only-dry'));
  });

/** A stored bed by its id, or a place with, at will, what the bed in it is like. */
const whereSchema = z
  .strictObject({
    place: z.union([idSchema.describe('A stored place.'), placeSchema]).optional(),
    bed: z.union([idSchema.describe('A stored bed.'), bedSchema]).optional(),
  })
  .superRefine(({ place, bed }, context) => {
    const fault = (path: string[], fact: Fact) => addIssue(context, path, fact);
    if (typeof bed === 'string' && place !== undefined) {
      fault(['bed'], fieldFact('field.bed-beside-place'));
    }
    if (typeof bed === 'object' && place === undefined) fault(['place'], fieldFact('field.place-needed'));
    if (place === undefined && bed === undefined) fault([], fieldFact('field.place-or-bed-needed'));
  });

export const sowingSchema = z.strictObject({
  date: dateSchema,
  time: timeSchema.default('12:00'),
  depthCm: z.number().min(0).max(30).optional().describe("Default: the crop's, else 1.3 [cm]."),
  seeds: z.number().int().min(1).max(10_000_000).optional().describe('Without it no seedlings in the answer.'),
});

export const lotSchema = z.strictObject({
  germinationPercent: z.number().min(0).max(100).optional().describe("The lot's own test [%]."),
  testedOn: dateSchema.optional(),
  hotLimitShiftC: hotLimitShiftSchema,
});

const share = z.number().min(0).max(1);

export const beyondSchema = z
  .enum(['past-years', 'climate-table', 'seasonal-drift', 'repeat-last-week', 'refuse'])
  .describe(
    'What to suppose after the last value. Default: past-years where three years or more are known, or normals; else climate-table where no temperatures are known; else seasonal-drift where there is a latitude, else repeat-last-week.',
  );

export const climateChoiceSchema = z
  .enum(['any', 'own'])
  .default('any')
  .describe('`own`: only years and normals that are kept or sent; `any`: where they are too few, the climate table.');

/** All of the question but its temperatures: what the CSV form asks in its query. */
export const questionShape = {
  crop: cropChoiceSchema,
  where: whereSchema.optional(),
  sowing: sowingSchema,
  lot: lotSchema.optional(),
  timeFactor: z
    .number()
    .min(0.1)
    .max(10)
    .optional()
    .describe("The grower's own: how many times longer than the chart; replaces the crop's bedTimeFactor."),
  standFactor: z
    .union([
      share,
      z.strictObject({ from: share, to: share }).refine(({ from, to }) => from <= to, mustBe('field.from-above-to')),
    ])
    .optional()
    .describe("The grower's own share of a laboratory's stand; replaces the crop's field."),
  countDays: z.number().int().min(1).max(366).optional().describe('When the grower counts [d after sowing].'),
  beyond: beyondSchema.optional(),
  climate: climateChoiceSchema,
};

export const forecastQuerySchema = z.strictObject(questionShape);

/** The series that a question rests on; only a bed indoors can do without. */
export const temperaturesSchema = z
  .array(seriesSchema)
  .max(20)
  .default([])
  .describe('Soil and air, measured and forecast, in any mixture; a bed indoors, or one that is kept, needs none.');

/** Whether a place says where it is, so that its climate can be looked up. */
export const isLocated = (place: NonNullable<ForecastQuery['where']>['place']): boolean =>
  typeof place === 'object' &&
  (place.near !== undefined || (place.latitude !== undefined && place.longitude !== undefined));

/** Without temperatures nothing outdoors can be answered, unless they are kept, or the place is known. */
export function needTemperatures(
  { where, temperatures }: { where?: ForecastQuery['where']; temperatures: readonly unknown[] },
  context: z.RefinementCtx,
): void {
  const isIndoors = typeof where?.bed === 'object' && where.bed.kind === 'indoors';
  const isKept = typeof where?.bed === 'string' || typeof where?.place === 'string';
  if (temperatures.length === 0 && !isIndoors && !isKept && !isLocated(where?.place))
    addIssue(context, ['temperatures'], fieldFact('field.no-series'));
}

export const forecastBodySchema = z
  .strictObject({ ...questionShape, temperatures: temperaturesSchema })
  .superRefine(needTemperatures);
export type ForecastQuery = z.infer<typeof forecastQuerySchema>;
export type ForecastBody = z.infer<typeof forecastBodySchema>;

const milestoneSchema = z.union([
  z.strictObject({
    date: dateOutSchema,
    days: z.number().describe('Elapsed hours since sowing / 24.'),
    range: z
      .strictObject({ from: dateOutSchema, to: dateOutSchema.nullable() })
      .describe(
        'The middle 80 % of what the weather and the soil estimate leave open; `to: null`: past the count day.',
      ),
    inBeds: dateSpanSchema.describe("The days times the two ends of the crop's bedTimeFactor."),
  }),
  z.strictObject({ why: z.enum(['not-by-count-day', 'not-at-this-temperature']) }),
]);

const spellSchema = z.strictObject({
  from: dateOutSchema,
  to: dateOutSchema,
  days: z.number().describe('Dates touched.'),
  hours: z.number().describe('Hours beyond the threshold.'),
  peakC: z.number().describe('Highest hourly mean of a hot spell, lowest of a cold one [°C].'),
  thresholdC: z.number(),
  severity: z.enum(['mild', 'severe']),
  delayDays: z.strictObject({ half: z.number(), most: z.number() }).nullable(),
  standAtRisk: z.number().describe('Points of stand lost to this spell if seed it held too long is lost.'),
  hoursInFirstDay: z.number(),
  freeDate: z
    .strictObject({
      date: dateOutSchema,
      hotHoursLeft: z.number().describe('Hours beyond the threshold that such a sowing still meets.'),
    })
    .nullable()
    .describe('The first later sowing that meets no such spell before most of it is up; null: none up to `lookedTo`.'),
  lookedTo: dateOutSchema.describe('Until when these temperatures are looked at.'),
  remedies: z.array(
    z.strictObject({
      action: z.enum(remedyActions),
      text: z.string(),
      params: paramsSchema.optional(),
      hotHoursAvoided: spanSchema.optional(),
      coolerC: spanSchema.optional().describe("At the seed, at the day's peak [K]."),
    }),
  ),
});

export const forecastAnswerSchema = z.strictObject({
  crop: z.string(),
  sowing: z.strictObject({ date: dateOutSchema, time: z.string(), depthCm: z.number(), seeds: z.number().optional() }),
  countDays: z.number(),
  emergence: z
    .strictObject({ first: milestoneSchema, half: milestoneSchema, most: milestoneSchema })
    .describe('When 10, 50 and 90 % of those that come up by the count day are up.'),
  stand: z
    .strictObject({
      by: dateOutSchema,
      laboratory: z.number(),
      ifHeldAreLost: z.number(),
      field: spanSchema,
      seedlings: spanSchema.optional(),
    })
    .describe('Percent of seeds sown.'),
  chart: z
    .strictObject({ meanC: z.number(), days: z.number().nullable(), percent: z.number() })
    .describe('What a constant-temperature chart says at the mean from sowing to half, or to the count.'),
  hotSpells: z.array(spellSchema).nullable().describe('null: means alone cannot show them.'),
  coldSpells: z.array(spellSchema).nullable().describe('Below 10 °C, for crops that chill harms.'),
  keepMoist: dateSpanSchema,
  daily: z.array(
    z.strictObject({
      ...dayOutShape,
      emergedPercent: z.number().describe('Percent of seeds sown that are up by the end of the date, in a laboratory.'),
      hotHours: z.number(),
    }),
  ),
  dateVerdict: dateVerdictSchema,
  harvest: harvestSchema,
  hourly: hourlySeriesOutSchema
    .nullable()
    .optional()
    .describe(
      'With `hourly=true`: the days of `daily` by the hour, as a series that can be sent back; null: only days are known.',
    ),
  risks: z
    .array(riskSchema)
    .describe('What threatens the row, in the order of dates; pests where past years of air are known.'),
  understood: z.array(reportSchema),
  ...localeShape,
  ...answerShape,
});
export type ForecastAnswer = z.infer<typeof forecastAnswerSchema>;
