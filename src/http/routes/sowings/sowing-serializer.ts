import type { Middle } from '../../../answers/question.js';
import type { Note } from '../../../basics/errors.js';
import type { SowingAnswer } from '../../../contract/sowings.js';
import type { KnownSowing } from '../../../garden/sowing/known-sowing.js';
import { resowByOf } from '../../../garden/sowing/resowing.js';
import type { SowingState } from '../../../garden/sowing/sowing-state.js';
import type { Triage } from '../../../garden/sowing/triage.js';
import type { ToDo } from '../../../garden/sowing/what-to-do.js';
import type { KeptCount, Sowing } from '../../../garden/store/season-store.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';
import { serializeForecast } from '../forecasts/forecast-serializer.js';

/** Serializes the stored fields of a sowing. */
export const serializeSowing = ({ id, revision, ...fields }: Sowing) => ({ id, revision, ...fields });

/** Serializes a sowing with its state. */
export function serializeSowingState(
  known: KnownSowing,
  state: SowingState,
  toDo: readonly ToDo[],
  rounding: Rounding,
): Omit<Unworded<SowingAnswer>, 'model' | 'issuedAt'> {
  const { growing, judgement, indoors, harvest, expected, observed, warnings } = state;
  const { share } = rounding;
  const middle = (one: Middle | null) => one && { middle: share(one.middle), from: share(one.from), to: share(one.to) };
  const learned = growing?.learned ?? null;
  return {
    ...serializeSowing(known.sowing),
    counts: [...known.counts],
    forecast: growing && serializeForecast(growing.forecast, rounding),
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
    triage: triageOnWire(state.triage, rounding),
    toDo: [...toDo],
    assumptions: [],
    warnings: [...warnings],
  };
}

/** Serializes the advice about a bare row, with odds and days rounded. */
const triageOnWire = (triage: Triage | null, { share, days }: Rounding): Unworded<SowingAnswer>['triage'] =>
  triage && {
    do: triage.do,
    text: triage.text,
    options: triage.options.map(({ odds, costs, ...option }) => ({
      ...option,
      odds: Object.fromEntries(
        Object.entries(odds).map(([name, value]) => [name, share(value)]),
      ) as unknown as typeof odds,
      costs: { ...costs, daysLost: costs.daysLost === null ? null : days(costs.daysLost) },
    })),
    checkFor: [...triage.checkFor],
  };

/** Serializes a sowing whose state is unavailable. */
export const serializeSowingPart = (
  sowing: Sowing,
  counts: readonly KeptCount[],
  why: Note,
): Omit<Unworded<SowingAnswer>, 'model' | 'issuedAt'> => ({
  ...serializeSowing(sowing),
  counts: [...counts],
  forecast: null,
  learned: null,
  expected: null,
  observed: null,
  judgement: null,
  indoors: null,
  harvest: null,
  resowBy: null,
  triage: null,
  toDo: [],
  assumptions: [],
  warnings: [why],
});
