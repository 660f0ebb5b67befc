import { z } from 'zod';
import { FIRST_YEAR, LAST_YEAR } from '../basics/calendar.js';
import { MAX_SEEDS } from '../garden/lots/fewest-seeds.js';
import { answerShape, dateOutSchema, dateSchema, idSchema, spanSchema } from './common.js';
import { cropChoiceSchema, ownCropSchema } from './crop.js';
import { addIssue, fieldFact, mustBe } from './field-issue.js';
import { revisionOutSchema } from './kept.js';

const percent = z.number().min(0).max(100);

/** Fields of a lot beside its crop. */
const lotShape = {
  germinationPercent: percent
    .nullable()
    .default(null)
    .describe("The packet's percent, or that of a test whose seeds are not told; or send `test`."),
  test: z
    .strictObject({ sown: z.int().min(1).max(1_000_000), germinated: z.int().min(0) })
    .refine(({ sown, germinated }) => germinated <= sown, {
      path: ['germinated'],
      error: mustBe('field.more-than-sown'),
    })
    .nullable()
    .default(null)
    .describe('A counted test: how many seeds were laid out, and how many of those germinated.'),
  testedOn: dateSchema.nullable().default(null).describe('When the percent or the test was found.'),
  packedYear: z.int().min(FIRST_YEAR).max(LAST_YEAR).nullable().default(null).describe('The year on the packet.'),
  moisturePercent: z
    .number()
    .min(1)
    .max(60)
    .nullable()
    .default(null)
    .describe('Water in the seed [% of its fresh weight]. With storeC and testedOn the percent is aged.'),
  storeC: z.number().min(-30).max(60).nullable().default(null).describe('How warm the seed is stored [°C].'),
  hotLimitShiftC: z.number().min(-8).max(8).default(0).describe('How much more heat this lot bears than the crop [K].'),
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
      percent: z.number().nullable().describe('Of a hundred seeds, how many germinate; null: not known.'),
      range: spanSchema
        .nullable()
        .describe(
          'What a counted test, and published constants that disagree, leave open 80 times in 100; null where there is neither.',
        ),
      aged: z
        .array(z.strictObject({ percent: z.number(), source: z.string() }))
        .describe('What each published set of constants leaves; empty where the percent is not aged.'),
      testBeforeUse: z.boolean().describe('Older than the seed is counted on for, and not tested within a year.'),
    })
    .describe('What the lot is worth today.'),
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
  plants: z.int().min(1).max(100_000).describe('How many plants are wanted.'),
  sureness: z.number().min(0.01).max(0.999).default(0.9).describe('How sure to be of that many or more.'),
  lot: z
    .union([idSchema.describe('A kept lot.'), toldLotSchema])
    .optional()
    .describe("The seed; left out: as good as the chart's."),
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
  seeds: z.number().max(MAX_SEEDS).describe('How many to sow.'),
  range: spanSchema.describe('How many plants that many seeds give, 80 times in 100.'),
  field: spanSchema.describe('The share of germinating seed that becomes plants, as reckoned with.'),
  ...answerShape,
});
