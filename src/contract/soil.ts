import { z } from 'zod';
import { answerShape, dateSchema } from './common.js';
import { needTemperatures, questionShape, sowingSchema, temperaturesSchema } from './forecast.js';
import { localeShape } from './locale.js';
import { reportSchema } from './readings.js';
import { seriesOutSchema } from './series.js';

/** Fields of the question beside the place, the bed and the temperatures. */
const soilQueryShape = {
  depthCm: z
    .number()
    .min(0)
    .max(30)
    .optional()
    .describe("Depth [cm]. Default: the sowing's, else the crop's, else 1.3."),
  from: dateSchema
    .optional()
    .describe('Default: the first date of the temperatures; for a stored bed, a week before today.'),
  to: dateSchema.optional().describe('Default: the last date; for a stored bed, a week after today.'),
  step: z.enum(['day', 'hour']).default('day'),
};

const { where, beyond, climate, crop, lot, timeFactor, standFactor, countDays } = questionShape;

export const soilQuerySchema = z.strictObject({ where, beyond, climate, crop: crop.optional(), ...soilQueryShape });

/** The body of a forecast is accepted too; of its seed only the depth counts. */
export const soilBodySchema = z
  .strictObject({
    where,
    beyond,
    climate,
    crop: crop.optional(),
    sowing: sowingSchema.optional(),
    lot,
    timeFactor,
    standFactor,
    countDays,
    ...soilQueryShape,
    temperatures: temperaturesSchema,
  })
  .superRefine(needTemperatures);
export type SoilQuery = z.infer<typeof soilQuerySchema> & Pick<z.infer<typeof soilBodySchema>, 'sowing'>;

export const soilAnswerSchema = z.strictObject({
  series: seriesOutSchema,
  understood: z.array(reportSchema),
  ...localeShape,
  ...answerShape,
});
export type SoilAnswer = z.infer<typeof soilAnswerSchema>;
