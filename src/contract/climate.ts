import { z } from 'zod';
import { findDate } from '../basics/calendar.js';
import { mustBe } from './field-issue.js';

const A_LEAP_YEAR = 2024;
/** Is it a day of some year, such as 05-20? */
const isMonthDay = (text: string): boolean => findDate(`${A_LEAP_YEAR}-${text}`) !== undefined;

const MONTH_DAY_FAULT = mustBe('field.month-day');

/** A day of each year, in a request. */
export const monthDaySchema = z
  .string({ error: MONTH_DAY_FAULT })
  .refine(isMonthDay, MONTH_DAY_FAULT)
  .meta({ examples: ['05-20'] });

/** What a grower knows of frost by heart. */
export const frostAroundShape = {
  lastFrostAround: monthDaySchema
    .nullable()
    .describe("MM-DD by the grower's own knowledge: the last frost of spring comes by then in half of the years."),
  firstFrostAround: monthDaySchema
    .nullable()
    .describe("MM-DD by the grower's own knowledge: the first frost of autumn comes by then in half of the years."),
};

const monthDayOutSchema = z.string().regex(/^\d{2}-\d{2}$/);
const riskSchema = z
  .strictObject({
    risk10: monthDayOutSchema.nullable(),
    risk50: monthDayOutSchema.nullable(),
    risk90: monthDayOutSchema.nullable(),
  })
  .nullable();

/** The climate that an answer rests on. */
export const climateSchema = z.strictObject({
  basis: z.enum(['climate-table', 'past-years', 'normals']).describe('More may come.'),
  typicalYears: z.number().nullable().describe('Years made from the climate table; null: none.'),
  plusMinusC: z
    .number()
    .nullable()
    .describe("Half the 80 % range of a month's mean, by leaving each station out in turn; null: not known."),
  plusMinusDays: z
    .number()
    .nullable()
    .describe("Half the 80 % range of a window's first and last date, by record against table; null: not known."),
  stations: z
    .array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        country: z.string(),
        km: z.number(),
        elevationM: z.number(),
        share: z.number().describe('Its part of the weight, 0 to 1.'),
      }),
    )
    .describe('Weather stations that weigh most in the climate table’s answer, the heaviest first.'),
  lastSpringFrost: riskSchema.describe('Month and day after which the risk of another frost is 10, 50, 90 %.'),
  firstAutumnFrost: riskSchema.describe('Month and day before which the risk of a frost is 10, 50, 90 %.'),
  tunedBy: z
    .strictObject({
      lastFrostAround: monthDayOutSchema.optional(),
      untuned: monthDayOutSchema.nullable().optional().describe('risk50 of lastSpringFrost without it.'),
      firstFrostAround: monthDayOutSchema.optional(),
      untunedFirst: monthDayOutSchema.nullable().optional().describe('risk50 of firstAutumnFrost without it.'),
      minimaMovedC: z.number().describe('All minima of the air were moved by this.'),
    })
    .nullable()
    .describe('The frost dates told; null: none, or they changed nothing.'),
});
export type ClimateWire = z.infer<typeof climateSchema>;
