import { RequestError } from '../../../basics/errors.js';
import { seedsNeededAnswerSchema, seedsNeededSchema } from '../../../contract/lots.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import { MAX_SEEDS } from '../../../garden/lots/fewest-seeds.js';
import { seedsNeeded } from '../../../garden/lots/seeds-needed.js';
import type { CropChoice, LotFields } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { chosenCrop } from '../../../germination/crop-choice.js';
import { ownerOf } from '../../auth/owner.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { storageProblems } from '../../problems/common-problems.js';
import { exampleSeedsQuestion } from '../../question/examples.js';
import { read } from '../../question/read.js';
import { refuseQuery } from '../../resource/resource.js';
import { dateOf, refuseToCome } from './lots.js';

/** The route for the number of seeds to sow. */
export const seedsNeededRoutes = (store: Store, clock: () => Date): Route[] => [
  {
    method: 'POST',
    url: '/v1/seeds-needed',
    operation: {
      id: 'seedsNeeded',
      summary: 'How many seeds to sow for a number of plants, with a given probability',
      description:
        'Beta-binomial over the lot and the bed: all seeds share one lot, known from its test, and one bed, for which only a range is known.',
      json: { schema: seedsNeededSchema, example: exampleSeedsQuestion },
      answer: { schema: seedsNeededAnswerSchema },
      problems: [
        'not-json',
        'not-understood',
        'too-large',
        'unsupported-media-type',
        'not-acceptable',
        'unknown-crop',
        'unknown-lot',
        'too-many-seeds',
        ...storageProblems,
      ],
    },
    async handler(request) {
      refuseQuery(request);
      const { crop: choice, plants, sureness, lot: told, field } = read(seedsNeededSchema, request.body);
      const crop = chosenCrop(choice);
      const now = clock();
      const lot =
        typeof told === 'string' ? await keptLot(store, ownerOf(request), told, choice) : toldLot(told, choice, now);
      const range = typeof field === 'number' ? { from: field, to: field } : (field ?? null);
      const answer = seedsNeeded({ crop, plants, sureness, lot, field: range }, dateOf(now));
      if (answer.fewest === null) throw tooManySeeds(plants, sureness);
      const content = {
        crop: crop.id,
        plants,
        sureness,
        seeds: answer.fewest.seeds,
        range: answer.fewest.plants,
        field: answer.field,
        assumptions: answer.assumptions,
        warnings: answer.warnings,
      };
      return signed(content, now);
    },
  },
];

function toldLot(told: Omit<LotFields, 'crop'> | undefined, crop: CropChoice, now: Date): LotFields | null {
  if (!told) return null;
  refuseToCome(told, now, ['lot']);
  return { ...told, crop };
}

async function keptLot(store: Store, owner: string, id: string, crop: CropChoice): Promise<LotFields> {
  const lot = await store.lot(owner, id);
  if (!lot) {
    throw new RequestError('unknown-lot', keptRefusal('unknown-lot.question', { id }), [
      { path: ['lot'], detail: keptRefusal('unknown-lot.field') },
    ]);
  }
  if (typeof lot.crop === 'string' && typeof crop === 'string' && lot.crop !== crop) {
    throw new RequestError(
      'not-understood',
      keptRefusal('not-understood.lot-of-other-crop', { lot: id, lotCrop: lot.crop, crop }),
      [{ path: ['lot'], detail: keptRefusal('not-understood.lot-of-other-crop.field', { lotCrop: lot.crop }) }],
    );
  }
  return lot;
}

const tooManySeeds = (plants: number, sureness: number): RequestError =>
  new RequestError('too-many-seeds', keptRefusal('too-many-seeds', { maxSeeds: MAX_SEEDS, plants, sureness }));
