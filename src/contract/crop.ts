import { z } from 'zod';
import { faultOfRows } from '../germination/custom-crop.js';
import { answerShape, noteSchema, spanSchema } from './common.js';
import { addIssue, mustBe } from './field-issue.js';

const share = z.number().min(0).max(1);
const tempC = z.number().min(-10).max(60);

const soilLimitsSchema = z
  .strictObject({ minimumC: tempC, optimumFromC: tempC, optimumToC: tempC, maximumC: tempC })
  .refine(
    (soil) =>
      soil.minimumC <= soil.optimumFromC && soil.optimumFromC <= soil.optimumToC && soil.optimumToC <= soil.maximumC,
    mustBe('field.soil-not-rising'),
  )
  .describe('Soil temperatures for the crop [°C].');

/** A custom response curve. */
export const ownCropSchema = z
  .strictObject({
    name: z.string().min(1).max(100).optional(),
    rows: z
      .array(
        z.strictObject({
          temperatureC: tempC.describe('Constant temperature at the seed [°C].'),
          tested: z
            .boolean()
            .optional()
            .describe(
              '`true` with `days: null`: timed, and none emerged. Default: true if days are given or percent is 0.',
            ),
          days: z.number().min(0.1).max(1000).nullable().describe('Days to half emergence.'),
          percent: z.number().min(0).max(100).nullable().describe('Seedlings in a hundred seeds.'),
        }),
      )
      .min(2)
      .max(100),
    soil: soilLimitsSchema.optional(),
    hotThresholdC: tempC.optional(),
    chillingSensitive: z.boolean().optional(),
    sowingDepthCm: z.number().min(0).max(30).optional(),
    field: z
      .strictObject({ from: share, to: share })
      .refine(({ from, to }) => from <= to, mustBe('field.from-above-to'))
      .optional(),
    bedTimeFactor: z
      .strictObject({ from: z.number().min(0.1).max(10), to: z.number().min(0.1).max(10) })
      .refine(({ from, to }) => from <= to, mustBe('field.from-above-to'))
      .optional(),
  })
  .superRefine(({ rows }, context) => {
    const fault = faultOfRows(rows);
    if (fault) addIssue(context, ['rows'], fault);
  });

/** A crop id, or the rows of a custom response curve. */
export const cropChoiceSchema = z.union(
  [
    z
      .string()
      .min(1)
      .max(64)
      .describe('The id of a crop of GET /v1/crops.')
      .meta({ examples: ['lettuce'] }),
    ownCropSchema,
  ],
  { error: mustBe('field.crop') },
);

/** A caution about a crop before sowing, with its source. */
export const cautionSchema = noteSchema.required({ source: true });

const cropShape = {
  id: z.string(),
  name: z.string(),
  latinName: z.string().nullable(),
  rows: z
    .array(
      z.strictObject({
        temperatureC: z.number(),
        tested: z.boolean(),
        days: z.number().nullable(),
        percent: z.number().nullable(),
      }),
    )
    .describe('`tested: true, days: null`: tested, none emerged. `tested: false`: days never timed there.'),
  soil: soilLimitsSchema,
  hotThresholdC: z.number().describe('Above this temperature seed becomes thermoinhibited [°C].'),
  frost: z.enum(['hardy', 'half-hardy', 'tender']),
  chillingSensitive: z.boolean(),
  sowingDepthCm: z.number().nullable(),
  maturity: z
    .strictObject({ fromDays: z.number(), toDays: z.number(), countedFrom: z.enum(['sowing', 'planting-out']) })
    .nullable(),
  storageYears: z.number().nullable(),
  field: spanSchema.describe("Emergence in beds as a share of a laboratory's."),
  bedTimeFactor: spanSchema.describe("Time to emergence in beds as a multiple of the chart's."),
  maxDays: z.number(),
  cautions: z.array(cautionSchema),
  source: z.string(),
};

export const cropAnswerSchema = z.strictObject({ ...cropShape, ...answerShape });
export const cropListSchema = z.strictObject({
  crops: z.array(z.strictObject(cropShape)),
  next: z.string().nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export type CropWire = z.infer<z.ZodObject<typeof cropShape>>;
export type CropAnswer = z.infer<typeof cropAnswerSchema>;
export type CropList = z.infer<typeof cropListSchema>;
