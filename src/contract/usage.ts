import { z } from 'zod';
import { quotaNames } from '../garden/store/quotas.js';
import { answerShape } from './common.js';

const usedSchema = z.strictObject({ used: z.number(), limit: z.number() });

export const usageAnswerSchema = z.strictObject({
  quotas: z
    .strictObject(Object.fromEntries(quotaNames.map((name) => [name, usedSchema])))
    .describe('Thermometers and devices are counted per bed: `used` is that of the bed with most.'),
  ...answerShape,
});
