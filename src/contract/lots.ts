import { z } from 'zod';
import { FIRST_YEAR, LAST_YEAR } from '../basics/calendar.js';
import { MAX_SEEDS } from '../garden/lots/fewest-seeds.js';
import { answerShape, dateOutSchema, dateSchema, idSchema, spanSchema } from './common.js';
import { cropChoiceSchema, ownCropSchema } from './crop.js';
import { addIssue, fieldFact, mustBe } from './field-issue.js';
import { revisionOutSchema } from './kept.js';

/** The ceiling shift of a lot. */
export const hotLimitShiftSchema = z
  .number()
  .min(-8)
  .max(8)
  .default(0)
  .describe("How much higher this lot's thermoinhibition threshold is than the crop's [K].");

const percent = z.number().min(0).max(100);

/** Fields of a lot beside its crop. */
const lotShape = {
  germinationPercent: percent
    .nullable()
    .default(null)
    .describe('The percent on the packet, or of a test with unknown counts; or send `test`.'),
  test: z
    .strictObject({ sown: z.int().min(1).max(1_000_000), germinated: z.int().min(0) })
    .refine(({ sown, germinated }) => germinated <= sown, {
      path: ['germinated'],
      error: mustBe('field.more-than-sown'),
    })
    .nullable()
    .default(null)
    .describe('A counted test: seeds laid out, and how many of them germinated.'),
  testedOn: dateSchema.nullable().default(null).describe('Date of the percent or the test.'),
  packedYear: z.int().min(FIRST_YEAR).max(LAST_YEAR).nullable().default(null).describe('Year on the packet.'),
  moisturePercent: z
    .number()
    .min(1)
    .max(60)
    .nullable()
    .default(null)
    .describe('Water in the seed [% of its fresh weight]. With storeC and testedOn the percent is aged.'),
  storeC: z.number().min(-30).max(60).nullable().default(null).describe('Temperature of the seed store [°C].'),
  hotLimitShiftC: hotLimitShiftSchema,
};

/** The percent is given once: directly or by a count. */
function refuseBoth(
  { germinationPercent, test }: { germinationPercent: unknown; test: unknown },
  context: z.RefinementCtx,
): void {
  if (germinationPercent === null || test === null) return;
  addIssue(context, ['germinationPercent'], fieldFact('field.beside-test'));
}

export const lotPutSchema = z.strictObject({ crop: cropChoiceSchema, ...lotShape }).superRefine(refuseBoth);
const toldLotSchema = z.strictObject(lotShape).superRefine(refuseBoth);

const lotOutShape = {
  id: z.string(),
  revision: revisionOutSchema,
  crop: z.union([z.string(), ownCropSchema]),
  germinationPercent: z.number().nullable(),
  test: z.strictObject({ sown: z.number(), germinated: z.number() }).nullable(),
  testedOn: dateOutSchema.nullable(),
  packedYear: z.number().nullable(),
  moisturePercent: z.number().nullable(),
  storeC: z.number().nullable(),
  hotLimitShiftC: z.number(),
};
export const lotAnswerSchema = z.strictObject({
  ...lotOutShape,
  now: z
    .strictObject({
      on: dateOutSchema,
      percent: z.number().nullable().describe('Seeds in a hundred that germinate; null: unknown.'),
      range: spanSchema
        .nullable()
        .describe('80 % range from the counted test and from published constants that disagree; null without both.'),
      aged: z
        .array(z.strictObject({ percent: z.number(), source: z.string() }))
        .describe('The aged percent by each published set of constants; empty if it is not aged.'),
      testBeforeUse: z
        .boolean()
        .describe('True if the seed is older than its usual life and was not tested within a year.'),
    })
    .describe("The lot's value today."),
  ...answerShape,
});
export const lotListSchema = z.strictObject({
  lots: z.array(z.strictObject(lotOutShape)),
  next: idSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});

const share = z.number().min(0).max(1);

export const seedsNeededSchema = z.strictObject({
  crop: cropChoiceSchema,
  plants: z.int().min(1).max(100_000).describe('Number of plants wanted.'),
  sureness: z.number().min(0.01).max(0.999).default(0.9).describe('Probability of at least that many.'),
  lot: z
    .union([idSchema.describe('A stored lot.'), toldLotSchema])
    .optional()
    .describe("The seed. Default: as good as the chart's."),
  field: z
    .union([
      share,
      z.strictObject({ from: share, to: share }).refine(({ from, to }) => from <= to, mustBe('field.from-above-to')),
    ])
    .optional()
    .describe("The grower's own share of germinating seed that becomes plants; replaces the crop's field."),
});

export const seedsNeededAnswerSchema = z.strictObject({
  crop: z.string(),
  plants: z.number(),
  sureness: z.number(),
  seeds: z.number().max(MAX_SEEDS).describe('Number of seeds to sow.'),
  range: spanSchema.describe('80 % range of plants from that many seeds.'),
  field: spanSchema.describe('The assumed share of germinating seed that becomes plants.'),
  ...answerShape,
});
