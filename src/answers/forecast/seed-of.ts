import { germinationCurve } from '../../germination/curve/curve.js';
import type { Seed } from '../../germination/run/cohorts.js';
import type { Question } from '../question.js';

/** The seed of a question: the crop's, as the lot, and the grower's own factor or counts, make it. */
export function seedOf({
  crop,
  lot,
  timeFactor,
  learned,
}: Pick<Question, 'crop' | 'lot' | 'timeFactor'> & Partial<Pick<Question, 'learned'>>): Seed {
  const shiftC = lot?.hotLimitShiftC ?? 0;
  return {
    curve: germinationCurve(crop.rows, crop.soil?.maximumC ?? null, shiftC),
    hotThresholdC: crop.hotThresholdC + shiftC,
    chillingSensitive: crop.chillingSensitive,
    sigmaLog10: crop.sigmaLog10,
    timeFactor: timeFactor ?? learned?.timeFactor?.middle ?? 1,
  };
}

/** The percent of the seed that comes where everything suits it: as the lot was tested, else the table's best. */
export const viablePercentOf = ({ lot }: Pick<Question, 'lot'>, { curve }: Pick<Seed, 'curve'>): number =>
  lot?.germinationPercent ?? curve.bestPercent;
