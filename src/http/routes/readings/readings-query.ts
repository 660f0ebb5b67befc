import { z } from 'zod';
import { findStamp } from '../../../basics/calendar.js';
import { mustBe } from '../../../contract/field-issue.js';
import { dateRangeParameters, dateRangeShape, keptPrecisionSchema, refuseBackward } from '../../../contract/kept.js';
import type { Probe } from '../../../garden/store/store.js';
import { asParameter, asQueryShape } from '../../resource/resource.js';

const MAX_READINGS = 50_000;
const DEFAULT_READINGS = 10_000;
const MAX_STAMP_CHARACTERS = 40;

const mediumSchema = z.enum(['soil', 'air']);
/** A query's value for the thermometer at the depth of the seed. */
export const AT_SEED = 'seed';
const depthSchema = z.union([z.literal(AT_SEED), z.number().min(0).max(100)]);
const stampText = z.string().max(MAX_STAMP_CHARACTERS);

const probeShape = {
  medium: mediumSchema.optional(),
  probeDepthCm: z.union([z.literal(AT_SEED), z.coerce.number().min(0).max(100)]).optional(),
};
export const readingsQuery = z
  .strictObject({
    ...dateRangeShape,
    ...probeShape,
    after: stampText
      .refine((text) => findStamp(text) !== undefined, mustBe('field.instant'))
      .transform((text) => findStamp(text)!.ms)
      .optional(),
    limit: z.coerce.number().int().min(1).max(MAX_READINGS).default(DEFAULT_READINGS),
    precision: keptPrecisionSchema,
    ...asQueryShape,
  })
  .superRefine(refuseBackward);
export type ReadingsAsked = Omit<z.output<typeof readingsQuery>, 'as'>;
export const deleteQuery = z.strictObject({ ...dateRangeShape, ...probeShape }).superRefine(refuseBackward);

/** Query parameters that select thermometers and dates. */
export const deleteParameters = [
  ...dateRangeParameters,
  { name: 'medium', schema: mediumSchema, description: 'Only thermometers in this medium.' },
  {
    name: 'probeDepthCm',
    schema: depthSchema,
    description: 'Only the thermometer at this depth [cm]; `seed`: the one at the seed.',
  },
];
export const readingsParameters = [
  ...deleteParameters,
  {
    name: 'after',
    schema: stampText.meta({ examples: ['2027-05-03T12:00:00-02:00'] }),
    description: 'Return only instants after this one.',
  },
  {
    name: 'limit',
    schema: z.int().min(1).max(MAX_READINGS).default(DEFAULT_READINGS),
    description: 'Approximate number of readings of one thermometer: a page holds whole days.',
  },
  { name: 'precision', schema: keptPrecisionSchema },
  { ...asParameter, description: '`kept`: only the series, of one thermometer, as it can be sent back.' },
];

/** True if a query selects this thermometer. */
export const isWanted = (probe: Probe, { medium, probeDepthCm }: Partial<ReadingsAsked>): boolean =>
  (medium === undefined || probe.medium === medium) &&
  (probeDepthCm === undefined || probe.probeDepthCm === (probeDepthCm === AT_SEED ? null : probeDepthCm));
