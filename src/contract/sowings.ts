import { z } from 'zod';
import { checkCodes } from '../garden/sowing/check-for.js';
import { verdicts } from '../garden/sowing/judgement.js';
import { triageActions, triageDos } from '../garden/sowing/triage.js';
import { tasks } from '../garden/sowing/what-to-do.js';
import { sowingMethods } from '../garden/store/season-store.js';
import { answerShape, dateOutSchema, dateSchema, dateSpanSchema, factShape, idSchema, timeSchema } from './common.js';
import { cropChoiceSchema } from './crop.js';
import { forecastAnswerSchema } from './forecast.js';
import { revisionOutSchema } from './kept.js';

const MAX_SEEDS = 10_000_000;
const wholeSeeds = z.int().min(1).max(MAX_SEEDS);

const sowingFields = {
  bed: idSchema.describe('The id of the stored bed where it is sown, or will be planted out.'),
  crop: cropChoiceSchema,
  date: dateSchema,
  time: timeSchema,
  depthCm: z.number().min(0).max(30).nullable().describe("null: the crop's, else 1.3 [cm]."),
  seeds: wholeSeeds.nullable().describe('Number of seeds sown; null: unknown.'),
  lot: idSchema.nullable().describe('The id of a stored lot.'),
  method: z.enum(sowingMethods).describe('`indoors`: in trays in a room, to be planted out in the bed.'),
  roomC: z
    .number()
    .min(-10)
    .max(50)
    .nullable()
    .describe('Temperature of that room [°C]; null: that of an indoor bed, else 20.'),
};

export const sowingPutSchema = z.strictObject({
  ...sowingFields,
  time: sowingFields.time.default('12:00'),
  depthCm: sowingFields.depthCm.default(null),
  seeds: sowingFields.seeds.default(null),
  lot: sowingFields.lot.default(null),
  method: sowingFields.method.default('direct'),
  roomC: sowingFields.roomC.default(null),
});
export const sowingPatchSchema = z.strictObject(sowingFields).partial().describe('Named fields are replaced.');

export const countPutSchema = z.strictObject({
  seedlings: z
    .int()
    .min(0)
    .max(MAX_SEEDS)
    .describe('Seedlings counted; a count of 0 tells no less than one of a hundred.'),
  ofSeeds: wholeSeeds.nullable().default(null).describe("Seeds in the counted stretch. Default: the sowing's seeds."),
  thinned: z
    .union([z.boolean(), z.int().min(0).max(MAX_SEEDS)])
    .default(false)
    .describe(
      'Seedlings pulled out before this count, in all; true: an unknown number. false: as in an earlier count.',
    ),
});

const countOutSchema = z.strictObject({
  date: dateOutSchema,
  revision: revisionOutSchema,
  seedlings: z.number(),
  ofSeeds: z.number().nullable(),
  thinned: z.union([z.boolean(), z.number()]),
});
export const countAnswerSchema = z.strictObject({ ...countOutSchema.shape, ...answerShape });

const middleSchema = z
  .strictObject({ middle: z.number(), from: z.number(), to: z.number() })
  .nullable()
  .describe('The median, and the middle 80 %; null: the counts add nothing to the crop’s own range.');

const sowingOutShape = {
  id: z.string(),
  revision: revisionOutSchema,
  ...sowingFields,
  bed: z.string(),
  crop: z.unknown().describe('As it was sent: an id, or rows.'),
  date: dateOutSchema,
  time: z.string(),
  depthCm: z.number().nullable(),
  seeds: z.number().nullable(),
  lot: z.string().nullable(),
  roomC: z.number().nullable(),
};

const {
  model: _model,
  issuedAt: _issuedAt,
  hourly: _hourly,
  place: _place,
  climate: _climate,
  ...forecastShape
} = forecastAnswerSchema.shape;

const harvestSpanSchema = z.strictObject({ from: dateOutSchema, to: dateOutSchema });

export const triageSchema = z
  .strictObject({
    do: z
      .enum(triageDos)
      .describe(
        'The option with the least mean loss of harvest; among equal ones, to wait. `count`: nothing is guessed without a count. `nothing`: it stands well, or it is too late this season.',
      ),
    text: z.string(),
    ...factShape,
    options: z
      .array(
        z.strictObject({
          action: z.enum(triageActions),
          by: dateOutSchema.nullable().optional().describe('The last date for it; null: unknown from past years.'),
          until: dateOutSchema.optional().describe('When to decide again, or the last day to keep the row moist.'),
          odds: z.strictObject({
            stands: z.number().describe('Probability that the row, or what fills its gaps, stands in the end.'),
            late: z
              .number()
              .optional()
              .describe('Of those that stand, the ones that only come later: a part of `stands`, not beside it.'),
            lost: z
              .number()
              .optional()
              .describe('Probability that the row is dead: what `stands` leaves of 1, if nothing is sown.'),
          }),
          costs: z.strictObject({
            seeds: z.number().nullable().describe('null: the number sown is unknown.'),
            daysLost: z
              .number()
              .nullable()
              .describe(
                'Mean days of harvest lost, weighted by the odds, against a row that emerged in time; sowing again itself counts as a twentieth of a harvest. null: unknown from past years.',
              ),
          }),
          harvest: harvestSpanSchema.nullable(),
        }),
      )
      .describe('The best option first.'),
    checkFor: z
      .array(
        z.strictObject({
          likely: z.boolean().describe('True if the known facts about the row point to it.'),
          text: z.string(),
          ...factShape,
          code: z.enum(checkCodes),
        }),
      )
      .describe('Possible causes of a bare row, likely ones first.'),
  })
  .nullable()
  .describe('Advice about a row that should be up; null: it is not due yet, or unknown from its temperatures.');

export const sowingAnswerSchema = z.strictObject({
  ...sowingOutShape,
  counts: z.array(countOutSchema).describe('By date.'),
  forecast: z
    .strictObject(forecastShape)
    .nullable()
    .describe('From the bed’s latest readings and the lessons of its counts; null: see warnings.'),
  learned: z
    .strictObject({ timeFactor: middleSchema, standFactor: middleSchema, text: z.string(), ...factShape })
    .nullable()
    .describe('What counts in this bed taught about this crop; null: no counts yet.'),
  expected: z.enum(['not-yet', 'due', 'past']).nullable().describe('By the forecast.'),
  observed: z.enum(['none', 'some', 'enough']).nullable().describe('By the last count; null: there is none.'),
  judgement: z
    .strictObject({
      verdict: z.enum(verdicts),
      odds: z
        .strictObject({
          late: z.number().describe('Probability that it lives but takes longer than beds of this crop have taken.'),
          lost: z.number().describe('Probability that nothing more emerges.'),
        })
        .nullable()
        .describe('null: there is no count, and nothing is guessed.'),
      text: z.string(),
      ...factShape,
    })
    .nullable(),
  indoors: z
    .strictObject({ half: dateOutSchema, hardenOff: dateSpanSchema, plantOut: dateOutSchema })
    .nullable()
    .describe('For a sowing in trays.'),
  harvest: z
    .strictObject({
      from: dateOutSchema,
      to: dateOutSchema,
      slowed: z.boolean().describe('True if it takes longer than the published days.'),
    })
    .nullable()
    .describe(
      'From early cultivars to late ones, by the warmth of past years; by published days if no air is known. null: unknown.',
    ),
  resowBy: dateOutSchema
    .nullable()
    .describe(
      'The last date of the season that sowing windows call good for a new sowing. null: it has passed, or there are no past years.',
    ),
  triage: triageSchema,
  toDo: z
    .array(
      z.strictObject({ task: z.enum(tasks), from: dateOutSchema, to: dateOutSchema, text: z.string(), ...factShape }),
    )
    .describe('Tasks of the next two weeks, the most pressing first.'),
  ...answerShape,
});
export type SowingAnswer = z.infer<typeof sowingAnswerSchema>;

/** Optional parts of each sowing in a list. */
export const sowingParts = ['judgement', 'triage', 'toDo', 'forecast'] as const;

const { model: _ofList, issuedAt: _whenListed, assumptions: _none, ...sowingStateShape } = sowingAnswerSchema.shape;

export const sowingListSchema = z.strictObject({
  sowings: z
    .array(z.strictObject({ ...z.strictObject(sowingStateShape).partial().shape, ...sowingOutShape }))
    .describe('The stored fields of each, with the parts that `with` names.'),
  next: idSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export type SowingList = z.infer<typeof sowingListSchema>;
