import { z } from 'zod';
import { checkCodes } from '../garden/sowing/check-for.js';
import { verdicts } from '../garden/sowing/judgement.js';
import { triageActions, triageDos } from '../garden/sowing/triage.js';
import { tasks } from '../garden/sowing/what-to-do.js';
import { sowingMethods } from '../garden/store/season-store.js';
import { answerShape, dateOutSchema, dateSchema, dateSpanSchema, idSchema, saidShape, timeSchema } from './common.js';
import { cropChoiceSchema } from './crop.js';
import { forecastAnswerSchema } from './forecast.js';
import { revisionOutSchema } from './kept.js';

const MAX_SEEDS = 10_000_000;
const wholeSeeds = z.int().min(1).max(MAX_SEEDS);

const sowingFields = {
  bed: idSchema.describe('The id of a kept bed: where it is sown, or will be planted out.'),
  crop: cropChoiceSchema,
  date: dateSchema,
  time: timeSchema,
  depthCm: z.number().min(0).max(30).nullable().describe("null: the crop's, else 1.3 [cm]."),
  seeds: wholeSeeds.nullable().describe('How many seeds were sown; null: not known.'),
  lot: idSchema.nullable().describe('The id of a kept lot.'),
  method: z.enum(sowingMethods).describe('`indoors`: in trays in a room, to be planted out in the bed.'),
  roomC: z
    .number()
    .min(-10)
    .max(50)
    .nullable()
    .describe('How warm that room is [°C]; null: as an indoor bed says, else 20.'),
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
export const sowingPatchSchema = z.strictObject(sowingFields).partial().describe('Fields that are named are replaced.');

export const countPutSchema = z.strictObject({
  seedlings: z
    .int()
    .min(0)
    .max(MAX_SEEDS)
    .describe('How many stand there; a count of 0 tells no less than one of a hundred.'),
  ofSeeds: wholeSeeds
    .nullable()
    .default(null)
    .describe("Of how many seeds, where only a stretch was counted. Default: the sowing's seeds."),
  thinned: z
    .union([z.boolean(), z.int().min(0).max(MAX_SEEDS)])
    .default(false)
    .describe(
      'How many were pulled out before this count, in all; true: some were, nobody knows how many. false: what an earlier count says of it holds.',
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
  .describe('The middle, and the middle 80 %; null: the counts say no more than the crop’s own range.');

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

const { model: _model, issuedAt: _issuedAt, hourly: _hourly, ...forecastShape } = forecastAnswerSchema.shape;

const harvestSpanSchema = z.strictObject({ from: dateOutSchema, to: dateOutSchema });

export const triageSchema = z
  .strictObject({
    do: z
      .enum(triageDos)
      .describe(
        'The option that loses the least harvest in the mean; of equal ones, to wait. `count`: without a count nothing is guessed. `nothing`: it stands well, or it is too late this season.',
      ),
    text: z.string(),
    ...saidShape,
    options: z
      .array(
        z.strictObject({
          action: z.enum(triageActions),
          by: dateOutSchema.nullable().optional().describe('The last date for it; null: past years do not tell.'),
          until: dateOutSchema.optional().describe('When to decide anew, or until when the row is kept moist.'),
          odds: z.strictObject({
            stands: z.number().describe('That a row, or what fills the gaps, stands in the end.'),
            late: z.number().optional(),
            lost: z.number().optional(),
          }),
          costs: z.strictObject({
            seeds: z.number().nullable().describe('null: nobody said how many were sown.'),
            daysLost: z
              .number()
              .nullable()
              .describe(
                'Mean days of harvest lost against a row that had come up in time, over the odds; sowing again is itself reckoned as a twentieth of a harvest. null: past years do not tell.',
              ),
          }),
          harvest: harvestSpanSchema.nullable(),
        }),
      )
      .describe('The one to do first.'),
    checkFor: z
      .array(
        z.strictObject({
          likely: z.boolean().describe('What is known of the row points to it.'),
          text: z.string(),
          ...saidShape,
          code: z.enum(checkCodes),
        }),
      )
      .describe('Why little or nothing may have come up: what is likely first.'),
  })
  .nullable()
  .describe('What to do about a row that should be up; null: it is not due yet, or its temperatures do not tell.');

export const sowingAnswerSchema = z.strictObject({
  ...sowingOutShape,
  counts: z.array(countOutSchema).describe('In the order of dates.'),
  forecast: z
    .strictObject(forecastShape)
    .nullable()
    .describe('From the bed’s latest readings, and what its counts have taught; null: see warnings.'),
  learned: z
    .strictObject({ timeFactor: middleSchema, standFactor: middleSchema, text: z.string(), ...saidShape })
    .nullable()
    .describe('What counts in this bed have taught of this crop; null: there is none yet.'),
  expected: z.enum(['not-yet', 'due', 'past']).nullable().describe('By the forecast.'),
  observed: z.enum(['none', 'some', 'enough']).nullable().describe('By the last count; null: there is none.'),
  judgement: z
    .strictObject({
      verdict: z.enum(verdicts),
      odds: z
        .strictObject({
          late: z.number().describe('That it lives, and takes longer than beds of this crop have taken.'),
          lost: z.number().describe('That nothing comes of it any more.'),
        })
        .nullable()
        .describe('null: nobody has counted, and nothing is guessed.'),
      text: z.string(),
      ...saidShape,
    })
    .nullable(),
  indoors: z
    .strictObject({ half: dateOutSchema, hardenOff: dateSpanSchema, plantOut: dateOutSchema })
    .nullable()
    .describe('Of a sowing in trays.'),
  harvest: z
    .strictObject({ from: dateOutSchema, to: dateOutSchema, slowed: z.boolean().describe('By short days.') })
    .nullable()
    .describe('From the published days of early kinds to those of late ones; null: not known.'),
  resowBy: dateOutSchema
    .nullable()
    .describe(
      'The last date of the season on which a new sowing is still good: it comes up well, and is ready before frost or short days end the season. null where that is over, and without past years.',
    ),
  triage: triageSchema,
  toDo: z
    .array(
      z.strictObject({ task: z.enum(tasks), from: dateOutSchema, to: dateOutSchema, text: z.string(), ...saidShape }),
    )
    .describe('In the next two weeks, the most pressing first.'),
  ...answerShape,
});
export type SowingAnswer = z.infer<typeof sowingAnswerSchema>;

/** What a list can tell of each sowing besides what is kept of it. */
export const sowingParts = ['judgement', 'triage', 'toDo', 'forecast'] as const;

const { model: _ofList, issuedAt: _whenListed, assumptions: _none, ...sowingStateShape } = sowingAnswerSchema.shape;

export const sowingListSchema = z.strictObject({
  sowings: z
    .array(z.strictObject({ ...z.strictObject(sowingStateShape).partial().shape, ...sowingOutShape }))
    .describe('Each as it is kept, with the parts that `with` names.'),
  next: idSchema.nullable().describe('Send as `after` for the next page; null on the last.'),
  ...answerShape,
});
export type SowingList = z.infer<typeof sowingListSchema>;
