import { z } from 'zod';
import { findDate } from '../basics/calendar.js';
import { bases } from '../basics/series.js';
import { dateOutSchema, dateSchema } from './common.js';
import { addIssue, fieldFact } from './field-issue.js';
import { hasOnly, rowsOf } from './rows.js';

const temperature = z.number().describe('In the unit of the series.');

export const dailyRowSchema = z.strictObject({
  date: dateSchema,
  min: temperature.optional(),
  mean: temperature.optional(),
  max: temperature.optional(),
  basis: z.enum(bases).optional(),
  plusMinus: z.number().min(0).optional().describe('Half the width of the 80 % range of the mean [K].'),
  readings: z.number().optional().describe('Accepted from a report; not used.'),
  complete: z.boolean().optional().describe('Accepted from a report; an incomplete day is left out.'),
});

const MAX_STAMP_LENGTH = 40;

export const readingRowSchema = z.strictObject({
  at: z
    .string()
    .max(MAX_STAMP_LENGTH)
    .describe('RFC 3339 instant, or local time without an offset if the time zone is given.')
    .meta({ examples: ['2027-08-03T14:30:00-02:00'] }),
  value: temperature,
  basis: z.enum(bases).optional(),
});

const isNumber = (value: unknown): boolean => Number.isFinite(value);
const isBasis = (value: unknown): boolean => (bases as readonly unknown[]).includes(value);

const DAY_FITS = {
  date: (value: unknown) => typeof value === 'string' && findDate(value) !== undefined,
  min: isNumber,
  mean: isNumber,
  max: isNumber,
  basis: isBasis,
};
const READING_FITS = {
  at: (value: unknown) => typeof value === 'string' && value.length <= MAX_STAMP_LENGTH,
  value: isNumber,
  basis: isBasis,
};

/** Fast checks for the common fields of days and readings; the schemas check the rarer ones. */
export const dailyRowsSchema = rowsOf(dailyRowSchema, (row) => 'date' in row && hasOnly(row, DAY_FITS), {
  min: 1,
  max: 40_000,
});
export const readingRowsSchema = rowsOf(
  readingRowSchema,
  (row) => 'at' in row && 'value' in row && hasOnly(row, READING_FITS),
  { min: 2, max: 200_000 },
);

const seriesShape = {
  medium: z.enum(['soil', 'air']),
  probeDepthCm: z.number().min(0).max(100).optional().describe('Depth of the thermometer [cm]. Default: at the seed.'),
  unit: z.enum(['C', 'F', 'K']).default('C'),
  origin: z.enum(['measured', 'forecast']).optional(),
};

/** The one shape of a temperature series: either days or readings. */
export const seriesSchema = z
  .strictObject({
    ...seriesShape,
    daily: dailyRowsSchema.optional().describe('Mean, or min and max, or all three, for each date.'),
    readings: readingRowsSchema.optional().describe('Instantaneous readings.'),
  })
  .superRefine(({ daily, readings }, context) => {
    if ((daily === undefined) === (readings === undefined)) {
      addIssue(context, [], fieldFact('field.daily-or-readings'));
    }
  })
  .describe('A temperature series. A soil series without probeDepthCm was measured at the seed.');

const seriesOutShape = { medium: z.literal('soil'), probeDepthCm: z.number(), unit: z.literal('C') };

/** Hourly temperatures that can be sent back unchanged. */
export const hourlySeriesOutSchema = z.strictObject({
  ...seriesOutShape,
  readings: z
    .array(z.strictObject({ at: z.string().meta({ format: 'date-time' }), value: z.number(), basis: z.enum(bases) }))
    .describe('Instantaneous temperatures, an hour apart.'),
});
export type HourlySeriesOut = z.infer<typeof hourlySeriesOutSchema>;

/** The temperature of a day, with its provenance. */
export const dayOutShape = {
  date: dateOutSchema,
  min: z.number(),
  mean: z.number(),
  max: z.number(),
  basis: z.enum(bases),
};

/** A series that can be sent back unchanged. */
export const seriesOutSchema = z.union([
  z.strictObject({
    ...seriesOutShape,
    daily: z.array(
      z.strictObject({
        ...dayOutShape,
        plusMinus: z.number().describe("Half the width of the 80 % range of the day's mean [K]."),
      }),
    ),
  }),
  hourlySeriesOutSchema,
]);
