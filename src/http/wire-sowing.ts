import type { Middle } from '../answers/question.js';
import type { Note } from '../basics/errors.js';
import type { KnownSowing } from '../garden/known-sowing.js';
import { resowByOf } from '../garden/resowing.js';
import type { KeptCount, Sowing } from '../garden/season-store.js';
import type { SowingState } from '../garden/sowing-state.js';
import type { ToDo } from '../garden/what-to-do.js';
import type { Rounding } from './rounding.js';
import type { SowingAnswer } from './schemas/sowings.js';
import { forecastOnWire } from './wire-forecast.js';

/** A sowing as it is kept. */
export const sowingOnWire = ({ id, revision, ...fields }: Sowing) => ({ id, revision, ...fields });

/** A sowing, and how it stands. */
export function sowingStateOnWire(
  known: KnownSowing,
  state: SowingState,
  toDo: readonly ToDo[],
  rounding: Rounding,
): Omit<SowingAnswer, 'model' | 'issuedAt'> {
  const { growing, judgement, indoors, harvest, expected, observed, warnings } = state;
  const { share } = rounding;
  const middle = (one: Middle | null) => one && { middle: share(one.middle), from: share(one.from), to: share(one.to) };
  const learned = growing?.learned ?? null;
  return {
    ...sowingOnWire(known.sowing),
    counts: [...known.counts],
    forecast: growing && forecastOnWire(growing.forecast, rounding),
    learned: learned && {
      timeFactor: middle(learned.timeFactor),
      standFactor: middle(learned.standFactor),
      text: learned.text,
    },
    expected,
    observed,
    judgement: judgement && {
      ...judgement,
      odds: judgement.odds && { late: share(judgement.odds.late), lost: share(judgement.odds.lost) },
    },
    indoors,
    harvest,
    resowBy: resowByOf(state.resowing),
    toDo: [...toDo],
    assumptions: [],
    warnings: [...warnings],
  };
}

/** A sowing, while how it stands cannot be told. */
export const sowingInPart = (
  sowing: Sowing,
  counts: readonly KeptCount[],
  why: Note,
): Omit<SowingAnswer, 'model' | 'issuedAt'> => ({
  ...sowingOnWire(sowing),
  counts: [...counts],
  forecast: null,
  learned: null,
  expected: null,
  observed: null,
  judgement: null,
  indoors: null,
  harvest: null,
  resowBy: null,
  toDo: [],
  assumptions: [],
  warnings: [why],
});
