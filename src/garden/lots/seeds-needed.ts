import type { PlainDate } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import type { Crop, Span } from '../../germination/crop.js';
import { bestPercent } from '../../germination/curve/curve.js';
import { plantShare } from '../learning/plant-share.js';
import type { LotFields } from '../store/season-store.js';
import { type FewestSeeds, fewestSeeds } from './fewest-seeds.js';
import { lotNow, lotState } from './lot-now.js';

/** How many plants are wanted, and what is known of the seed and the bed. */
export interface SeedsQuestion {
  readonly crop: Crop;
  readonly plants: number;
  /** The chance of that many plants or more, over 0 and below 1. */
  readonly sureness: number;
  /** null: seed as good as the handbook's. */
  readonly lot: LotFields | null;
  /** The grower's own share of germinating seed that becomes plants; null: the crop's. */
  readonly field: Span | null;
}

export interface SeedsAnswer {
  /** null: more than could ever be sown. */
  readonly fewest: FewestSeeds | null;
  readonly field: Span;
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/** How many seeds to sow for a number of plants. */
export function seedsNeeded(
  { crop, plants, sureness, lot, field: own }: SeedsQuestion,
  onDate: PlainDate,
): SeedsAnswer {
  const field = own ?? crop.field;
  const state = lot && lotState(lot, onDate);
  const percent = state?.foundPercent ?? null;
  const chartPercent = bestPercent(crop.rows);
  const germinated = lot?.test ?? (percent ?? chartPercent) / 100;
  const probits = state?.ageings.map((ageing) => ageing.probits) ?? [];
  return {
    fewest: fewestSeeds(plants, sureness, plantShare({ germinated, probits }, field)),
    field,
    assumptions: [
      ...(state?.assumptions ?? []),
      ...(percent === null
        ? [
            {
              code: 'lot',
              text: `Nothing is told of how much of the seed germinates: it is taken to be as good as the best of the chart, ${Math.round(chartPercent)} in a hundred.`,
            },
          ]
        : []),
      fieldNote(field, own !== null),
      {
        code: 'one-lot-one-bed',
        text: 'All seeds share one lot and one bed, and how good both are is not known exactly: where they are poor, all of the sowing is. So more seed is asked for than a division by their means gives.',
      },
    ],
    warnings: [
      ...(state?.warnings ?? []),
      ...poorSeed(lot, onDate),
      ...crop.cautions.filter(({ code }) => code === 'treated-seed' || code === 'weak-lot'),
    ],
  };
}

/** Of seed poorer than this more is sown than it is worth: our choice of when to say so [%]. */
const POOR_PERCENT = 30;

function poorSeed(lot: LotFields | null, onDate: PlainDate): Note[] {
  const percent = lot && lotNow(lot, onDate).percent;
  if (percent === null || percent >= POOR_PERCENT) return [];
  const text = `Of a hundred such seeds about ${Math.round(percent)} germinate, and what does is weak: test it once more, or buy fresh seed rather than sow so many.`;
  return [{ code: 'poor-seed', text }];
}

function fieldNote({ from, to }: Span, isOwn: boolean): Note {
  const whose = isOwn ? 'as you say' : 'as beds have given';
  const text =
    from === to
      ? `Of a hundred seeds that germinate, ${percentOf(from)} become plants, ${whose}.`
      : `Of a hundred seeds that germinate, ${percentOf(from)} to ${percentOf(to)} become plants, ${whose}; all shares between are taken to be equally likely, which is our assumption.`;
  return { code: 'field', text };
}

const percentOf = (share: number): number => Math.round(1000 * share) / 10;
