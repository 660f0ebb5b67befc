import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import type { Check } from './check-for.js';
import type { LostIfBare } from './growing.js';
import type { Harvest } from './harvest.js';
import type { Expected, Judgement, Observed } from './judgement.js';
import type { SeasonAhead } from './resowing.js';
import type { TriageFact } from './triage-facts.js';
import {
  COMES_UP,
  type HarvestOdds,
  isToSowAgain,
  LOOK_AGAIN_DAYS,
  lessDelay,
  lossesOn,
  turningDate,
} from './triage-rule.js';

export const triageDos = ['wait', 'count', 'sow-again', 'fill-gaps', 'nothing'] as const;
export const triageActions = ['sow-again', 'wait', 'fill-gaps'] as const;

/** One of the things that can be done about a row, and what it costs. */
export interface TriageOption {
  readonly action: (typeof triageActions)[number];
  /** The last date on which it may be done; null: past years do not tell. */
  readonly by?: PlainDate | null;
  /** The date of the next decision. */
  readonly until?: PlainDate;
  /** That a row stands in the end; that it lives, and that it does not. */
  readonly odds: { readonly stands: number; readonly late?: number; readonly lost?: number };
  readonly costs: {
    /** null: nobody said how many are sown. */
    readonly seeds: number | null;
    /** Mean days of harvest lost against a row that had come up in time, the new sowing's own cost among them; null: not known. */
    readonly daysLost: number | null;
  };
  readonly harvest: Pick<Harvest, 'from' | 'to'> | null;
}

/** What to do about a row that should be up. */
export interface Triage {
  readonly do: (typeof triageDos)[number];
  readonly text: TriageFact;
  /** The one to do first. */
  readonly options: readonly TriageOption[];
  readonly checkFor: readonly Check[];
}

/** The key that sorts a row. */
export interface TriageEvidence {
  readonly crop: Crop;
  readonly sown: PlainDate;
  readonly seeds: number | null;
  readonly today: PlainDate;
  readonly expected: Expected;
  readonly observed: Observed | null;
  readonly judgement: Judgement;
  /** The odds at each later look that the row is lost, if it stays bare. */
  readonly lostIfBare: readonly LostIfBare[];
  /** Until when the row is kept moist. */
  readonly moistTo: PlainDate;
  /** The missing share of a usual stand, 0 to 1. */
  readonly missing: number;
  /** The number of counts that found nothing. */
  readonly bareCounts: number;
  /** A new sowing as past years judge it; null: they do not tell. */
  readonly season: SeasonAhead | null;
  /** The row's own harvest, should it stand. */
  readonly harvest: Harvest | null;
  /** Quick crops that still fit, where it has become too late for its own. */
  readonly fitting: readonly Crop[];
  readonly checkFor: readonly Check[];
}

/** True if the row needs a decision: it is due, or was found thin or lost. */
export const isToTriage = (expected: Expected, { verdict }: Judgement): boolean =>
  expected !== 'not-yet' || verdict !== 'wait';

/** True if the decision is needed because seedlings are missing. */
export const isWanting = ({ verdict }: Judgement, observed: Observed | null): boolean =>
  verdict === 'thin' || (verdict !== 'count-now' && observed === 'none');

/** What to do about a row that should be up: what loses the least harvest in the mean; of equal ones, to wait. */
export function triageOf(evidence: TriageEvidence): Triage | null {
  const { judgement, expected, season, checkFor } = evidence;
  if (!isToTriage(expected, judgement)) return null;
  const { verdict, odds } = judgement;
  if (verdict === 'good') return nothing(evidence, 'stands');
  if (verdict === 'count-now' || odds === null) {
    return { do: 'count', text: { code: 'do.count', params: {} }, options: [], checkFor: [] };
  }
  const isTooLate = season?.resowing === 'too-late';
  if (verdict === 'thin') return isTooLate ? nothing(evidence, 'too-late') : fillGaps(evidence);
  if (isTooLate && verdict === 'lost') return nothing(evidence, 'too-late');
  return { ...waitOrSowAgain(evidence, odds), checkFor };
}

const nothing = ({ crop, fitting, checkFor }: TriageEvidence, why: 'stands' | 'too-late'): Triage => ({
  do: 'nothing',
  text: {
    code: 'do.nothing',
    params: {
      why,
      crop: cropInFacts(crop),
      hasFitting: fitting.length > 0 ? 'yes' : 'no',
      fitting: fitting.map(({ id }) => id).join('\n'),
    },
  },
  options: [],
  checkFor: why === 'stands' ? [] : checkFor,
});

/** When a new sowing may be made; null: past years do not tell. */
function spanOf({ season, today }: TriageEvidence): { on: PlainDate; by: PlainDate } | null {
  if (season === null || season.resowing === 'too-late') return null;
  const { from, by } = season.resowing;
  return { on: from > today ? from : today, by };
}

function waitOrSowAgain(
  evidence: TriageEvidence,
  { late, lost }: NonNullable<Judgement['odds']>,
): Omit<Triage, 'checkFor'> {
  const { crop, sown, seeds, today, judgement, observed, moistTo, season, harvest: own } = evidence;
  const span = spanOf(evidence);
  const isLost = judgement.verdict === 'lost';
  const harvest: HarvestOdds = lessDelay(season?.odds ?? (() => 0), sown);
  const canSow = span !== null || (season === null && isLost);
  const again = canSow && (isLost || (span !== null && span.on === today && isToSowAgain(lost, harvest, today)));
  const lostOn = (date: PlainDate): number => evidence.lostIfBare.findLast((one) => one.date <= date)?.odds ?? lost;
  const againOn = span && !again ? turningDate(lostOn, harvest, today, span.by) : null;
  const lookOn = addDays(today, LOOK_AGAIN_DAYS);
  const losses = span && lossesOn(lost, harvest, span.on);
  const wait: TriageOption = {
    action: 'wait',
    until: againOn ?? [moistTo, lookOn].sort()[1]!,
    odds: { stands: 1 - lost, late, lost },
    costs: { seeds: 0, daysLost: daysOf(crop, losses?.wait) },
    // Dates that have begun while the row is bare are no longer its dates.
    harvest: own && own.from > today && !isLost ? { from: own.from, to: own.to } : null,
  };
  const fresh = span && season!.harvestOf(span.on);
  const sowAgain: TriageOption = {
    action: 'sow-again',
    by: span?.by ?? null,
    odds: { stands: 1 - lost * (1 - COMES_UP) },
    costs: { seeds, daysLost: daysOf(crop, losses?.sowAgain) },
    harvest: fresh && { from: fresh.from, to: fresh.to },
  };
  const moistUntilDate = moistTo > today ? moistTo : null;
  const isAlike = isAlikeIn(wait.costs.daysLost, sowAgain.costs.daysLost) && canSow ? 'yes' : 'no';
  const [rows, ofRows] = inRows(again ? lost : 1 - lost);
  if (again) {
    const from = span && span.on > today ? span.on : null;
    const sureness = isLost ? 'lost' : lost >= LIKELY ? 'probably' : 'perhaps';
    return {
      do: 'sow-again',
      text: {
        code: 'do.sow-again',
        params: { sureness, lostRows: rows, ofRows, from, by: span?.by ?? null, moistUntilDate, isAlike },
      },
      options: [sowAgain, wait],
    };
  }
  return {
    do: 'wait',
    text: {
      code: 'do.wait',
      params: {
        found: observed === 'some' ? 'some' : 'nothing',
        livingRows: rows,
        ofRows,
        lookOn,
        again: againOn === null ? 'no' : againOn === lookOn ? 'then' : 'later',
        againOn,
        moistUntilDate,
        isAlike,
        bareCounts: evidence.bareCounts,
      },
    },
    options: canSow ? [wait, sowAgain] : [wait],
  };
}

/** Costs that differ by less are told as alike [d]. */
const ALIKE_DAYS = 0.5;
const isAlikeIn = (a: number | null, b: number | null): boolean =>
  a !== null && b !== null && Math.abs(a - b) < ALIKE_DAYS;

/** From these odds on a row is told as probably lost. */
const LIKELY = 0.6;

function fillGaps(evidence: TriageEvidence): Triage {
  const { crop, sown, seeds, today, missing, season, checkFor } = evidence;
  const span = spanOf(evidence);
  const harvest = lessDelay(season?.odds ?? (() => 0), sown);
  const fresh = span && season!.harvestOf(span.on);
  const lost = span ? missing * (1 - COMES_UP * harvest(span.on)) : undefined;
  return {
    do: 'fill-gaps',
    text: {
      code: 'do.fill-gaps',
      params: { from: span && span.on > today ? span.on : null, by: span?.by ?? null },
    },
    options: [
      {
        action: 'fill-gaps',
        by: span?.by ?? null,
        odds: { stands: COMES_UP },
        costs: { seeds: seeds === null ? null : Math.ceil(missing * seeds), daysLost: daysOf(crop, lost) },
        harvest: fresh && { from: fresh.from, to: fresh.to },
      },
    ],
    checkFor,
  };
}

/** A share of a whole harvest in days on which a sowing is picked. */
const daysOf = ({ pickingDays }: Crop, share: number | undefined): number | null =>
  pickingDays === null || share === undefined ? null : pickingDays * share;

/** Odds as people picture them, such as 3 rows in 4; the nearest of these. */
const PICTURED: readonly (readonly [rows: number, of: number])[] = [
  [1, 20],
  [1, 10],
  [1, 5],
  [1, 4],
  [1, 3],
  [1, 2],
  [2, 3],
  [3, 4],
  [4, 5],
  [9, 10],
  [19, 20],
];
const inRows = (odds: number): readonly [rows: number, of: number] =>
  PICTURED.reduce((best, one) => (Math.abs(one[0] / one[1] - odds) < Math.abs(best[0] / best[1] - odds) ? one : best));
