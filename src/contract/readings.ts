import { z } from 'zod';
import { bases } from '../basics/series.js';
import { answerShape, dateOutSchema, paramsSchema } from './common.js';

const tempOut = z.number().nullable();

/** A row of a file that was dropped, or kept although doubtful. */
const rowSchema = z.strictObject({
  line: z.number(),
  value: z.string(),
  valueC: z.number().optional().describe('The value in °C, if it is a temperature.'),
  why: z.string(),
  code: z.string().optional(),
  params: paramsSchema.optional(),
});

/** The report on a series. */
const reportShape = {
  delimiter: z.string().optional(),
  decimalMark: z.enum(['.', ',']).optional(),
  encoding: z.string().optional(),
  headerLine: z.number().nullable().optional().describe('null: no line names the columns.'),
  timeColumn: z.number().optional().describe('The first column is 1.'),
  column: z.number().optional(),
  columns: z
    .array(
      z.strictObject({
        index: z.number(),
        name: z.string(),
        looksLike: z.string().describe('time, date, temperature, text, or by its name: humidity, battery.'),
        unit: z.enum(['C', 'F', 'K']).optional(),
      }),
    )
    .optional(),
  medium: z.enum(['soil', 'air']),
  probeDepthCm: z.number().optional(),
  unit: z.enum(['C', 'F', 'K']).describe('The unit of the values in the file or series.'),
  timeZone: z.string(),
  dateOrder: z.string().nullable().optional(),
  clock: z.string().optional(),
  stepMinutes: z.number().nullable(),
  rows: z.number(),
  used: z.number(),
  from: z.string().nullable(),
  to: z.string().nullable(),
  min: tempOut,
  mean: tempOut,
  max: tempOut,
  dropped: z.array(rowSchema).describe('The first 100.'),
  droppedCount: z.number(),
  doubtful: z.array(rowSchema).optional().describe('Doubtful values of a file that were kept: the first 100.'),
  doubtfulCount: z.number().optional(),
  gaps: z.array(z.strictObject({ from: z.string(), to: z.string(), hours: z.number() })).describe('The first 100.'),
  series: z
    .strictObject({
      medium: z.enum(['soil', 'air']),
      probeDepthCm: z.number().optional(),
      unit: z.literal('C'),
      origin: z.literal('forecast').optional(),
      daily: z.array(
        z.strictObject({
          date: dateOutSchema,
          min: z.number().optional(),
          mean: z.number().optional(),
          max: z.number().optional(),
          basis: z.enum(bases).optional(),
          readings: z.number().optional().describe('Number of readings of the day; left out for a series of days.'),
          complete: z.boolean(),
        }),
      ),
    })
    .describe('The days, in °C.'),
};

export const reportSchema = z.strictObject(reportShape);
export type ReportWire = z.infer<typeof reportSchema>;

export const checkAnswerSchema = z.strictObject({ ...reportShape, ...answerShape });
export type CheckAnswer = z.infer<typeof checkAnswerSchema>;
