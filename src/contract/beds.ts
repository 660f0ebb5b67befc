import { z } from 'zod';
import { bases } from '../basics/series.js';
import { bedKinds, covers, moistures } from '../seedbed/bed.js';
import { answerShape, dateOutSchema, idSchema } from './common.js';
import { addIssue, fieldFact } from './field-issue.js';
import { nameSchema, revisionOutSchema } from './kept.js';

const bedFields = {
  place: idSchema.describe('The id of a stored place.'),
  name: nameSchema,
  kind: z.enum(bedKinds),
  cover: z.enum(covers),
  moisture: z.enum(moistures),
  shadePercent: z.number().min(0).max(100),
  roomC: z.number().min(-10).max(50).nullable().describe('Temperature of the room, for `indoors` [°C].'),
};

/** A bed indoors is as warm as its room. */
function needRoom({ kind, roomC }: { kind: string; roomC: number | null }, context: z.RefinementCtx): void {
  if (kind !== 'indoors' || roomC !== null) return;
  addIssue(context, ['roomC'], fieldFact('field.room-needed'));
}

export const bedPutSchema = z
  .strictObject({
    ...bedFields,
    kind: bedFields.kind.default('open-ground'),
    cover: bedFields.cover.default('bare'),
    moisture: bedFields.moisture.default('moist'),
    shadePercent: bedFields.shadePercent.default(0),
    roomC: bedFields.roomC.default(null),
  })
  .superRefine(needRoom);
export const bedPatchSchema = z
  .strictObject(bedFields)
  .partial()
  .describe('Named fields are replaced; null removes roomC.');

const bedOutShape = {
  ...bedFields,
  id: z.string(),
  revision: revisionOutSchema,
  place: z.string(),
  name: z.string(),
  shadePercent: z.number(),
  roomC: z.number().nullable(),
  calendarUrl: z
    .string()
    .nullable()
    .describe(
      "The address of the bed's calendar, with the token that opens it without a key; a path unless the service was started with PUBLIC_URL. null: the bed is older than calendars; POST …/calendar-token creates one.",
    ),
};
export const bedAnswerSchema = z.strictObject({ ...bedOutShape, ...answerShape });
export const bedListSchema = z.strictObject({
  beds: z.array(z.strictObject(bedOutShape)),
  next: idSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export type BedWire = z.infer<z.ZodObject<typeof bedOutShape>>;

const probeOutShape = {
  medium: z.enum(['soil', 'air']),
  probeDepthCm: z.number().optional().describe('Default: at the seed.'),
};

const thermometerShape = {
  ...probeOutShape,
  readings: z.number().describe('Number of stored readings.'),
  from: dateOutSchema.describe('Local date of the first reading.'),
  to: dateOutSchema.describe('Local date of the last reading.'),
};
export const thermometersAnswerSchema = z.strictObject({
  thermometers: z.array(z.strictObject(thermometerShape)),
  ...answerShape,
});
export type ThermometerWire = z.infer<z.ZodObject<typeof thermometerShape>>;

const readingsSeriesSchema = z.strictObject({
  ...probeOutShape,
  unit: z.literal('C'),
  readings: z.array(
    z.strictObject({
      at: z.string().meta({ format: 'date-time' }),
      value: z.number(),
      basis: z.enum(bases).optional().describe('Default: measured.'),
    }),
  ),
});
const readingsAnswerSchema = z.strictObject({
  revision: revisionOutSchema.describe('Changes with every change of the bed or its contents.'),
  series: z.array(readingsSeriesSchema).describe('One series for each thermometer.'),
  next: z.string().nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export const readingsKeptSchema = z.union([readingsAnswerSchema, readingsSeriesSchema]);
