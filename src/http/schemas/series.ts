import { z } from 'zod';
import { bases } from '../../basics/series.js';
import { dateOutSchema, dateSchema } from './common.js';

const temperature = z.number().describe('In the unit of the series.');

const dailyRowSchema = z.strictObject({
  date: dateSchema,
  min: temperature.optional(),
  mean: temperature.optional(),
  max: temperature.optional(),
  basis: z.enum(bases).optional(),
  plusMinus: z.number().min(0).optional().describe('Half the width of the 80 % range of the mean [K].'),
  readings: z.number().optional().describe('As in a report of ours; not used.'),
  complete: z.boolean().optional().describe('As in a report of ours; a day that is not complete is left out.'),
});

const readingRowSchema = z.strictObject({
  at: z
    .string()
    .max(40)
    .describe('RFC 3339 instant, or a wall clock of the place where its time zone is given.')
    .meta({ examples: ['2027-08-03T14:30:00-02:00'] }),
  value: temperature,
  basis: z.enum(bases).optional(),
});

const seriesShape = {
  medium: z.enum(['soil', 'air']),
  probeDepthCm: z.number().min(0).max(100).optional().describe('Depth of the thermometer [cm]; left out: at the seed.'),
  unit: z.enum(['C', 'F', 'K']).default('C'),
  origin: z.enum(['measured', 'forecast']).optional(),
};

/** The one shape of a temperature series: days or readings, never both. */
export const seriesSchema = z
  .strictObject({
    ...seriesShape,
    daily: z
      .array(dailyRowSchema)
      .min(1)
      .max(40_000)
      .optional()
      .describe('A mean, or min and max, or all three, for each date.'),
    readings: z.array(readingRowSchema).min(2).max(200_000).optional().describe('Instantaneous readings.'),
  })
  .superRefine(({ daily, readings }, context) => {
    if ((daily === undefined) === (readings === undefined)) {
      context.addIssue({ code: 'custom', message: 'needs either "daily" or "readings", and not both' });
    }
  })
  .describe('A temperature series. A soil series without probeDepthCm was measured at the seed.');

const seriesOutShape = { medium: z.literal('soil'), probeDepthCm: z.number(), unit: z.literal('C') };

/** Temperatures by the hour that can be sent back as they are. */
export const hourlySeriesOutSchema = z.strictObject({
  ...seriesOutShape,
  readings: z
    .array(z.strictObject({ at: z.string().meta({ format: 'date-time' }), value: z.number(), basis: z.enum(bases) }))
    .describe('Instantaneous temperatures, an hour apart.'),
});
export type HourlySeriesOut = z.infer<typeof hourlySeriesOutSchema>;

/** How warm a day is, and on what that rests. */
export const dayOutShape = {
  date: dateOutSchema,
  min: z.number(),
  mean: z.number(),
  max: z.number(),
  basis: z.enum(bases),
};

/** A series that can be sent back as it is. */
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
