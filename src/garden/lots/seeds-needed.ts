import type { PlainDate } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import type { Crop, Span } from '../../germination/crop.js';
import { bestPercent } from '../../germination/curve/curve.js';
import { plantShare } from '../learning/plant-share.js';
import type { LotFields } from '../store/season-store.js';
import { type FewestSeeds, fewestSeeds } from './fewest-seeds.js';
import type { SeedsNote } from './lot-facts.js';
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
        ? [{ code: 'lot', params: { about: 'seeds', chartPercent: Math.round(chartPercent) } } as const]
        : []),
      fieldNote(field, own !== null),
      { code: 'one-lot-one-bed', params: {} },
    ],
    warnings: [
      ...(state?.warnings ?? []),
      ...poorSeed(lot, onDate),
      ...crop.cautions.filter(({ code }) => code === 'treated-seed' || code === 'weak-lot'),
    ],
  };
}

/** Seed that germinates worse than this is better replaced than sown thicker: our choice of when to say so [%]. */
export const POOR_PERCENT = 30;

function poorSeed(lot: LotFields | null, onDate: PlainDate): SeedsNote[] {
  const percent = lot && lotNow(lot, onDate).percent;
  if (percent === null || percent >= POOR_PERCENT) return [];
  return [{ code: 'poor-seed', params: { percent: Math.round(percent) } }];
}

const fieldNote = ({ from, to }: Span, isOwn: boolean): SeedsNote => ({
  code: 'field',
  params: {
    fromPercent: percentOf(from),
    toPercent: percentOf(to),
    isRange: from === to ? 'no' : 'yes',
    whose: isOwn ? 'own' : 'crop',
  },
});

const percentOf = (share: number): number => Math.round(1000 * share) / 10;
