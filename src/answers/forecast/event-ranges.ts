import type { CohortRun } from '../../germination/run/cohorts.js';
import { countUpBy, type Outcome } from '../../germination/run/outcome.js';
import type { Ensemble } from '../ahead/ensemble.js';
import type { Extrapolation } from '../ahead/hours-ahead.js';
import { aDayWide, rangeOf } from '../range.js';
import type { HourSpan } from '../soil/soil-range.js';
import type { EventRange } from './milestones.js';

/** When a tenth, half and nine tenths of those that come are up. */
export type Event = 'first' | 'half' | 'most';
/** Ranges of the events that come. */
export type Ranges = Partial<Record<Event, EventRange>>;
const EVENTS = ['first', 'half', 'most'] as const;

/** Ranges by the ensemble of past years and the uncertainty of the soil. */
export function ensembleRanges(ensemble: Ensemble, outcome: Outcome): Ranges {
  return Object.fromEntries(
    EVENTS.flatMap((event) => {
      const eventH = outcome[`${event}H`];
      if (eventH === null) return [];
      const span = ensemble.span(eventH);
      return [[event, { ...aDayWide(span), isOpen: span.toH > span.fromH }]];
    }),
  );
}

/** Ranges by the errors of a drift or a repeated week after the last value, and the uncertainty of the soil. */
export function assumedRanges(
  { knownH, beyond }: { readonly knownH: number; readonly beyond: Extrapolation },
  outcome: Outcome,
  soil: Record<Event, HourSpan> | null,
): Ranges {
  return Object.fromEntries(
    EVENTS.flatMap((event) => {
      const eventH = outcome[`${event}H`];
      if (eventH === null) return [];
      // No past year reaches so far ahead: the drift's own errors stand in.
      const supposed = beyond === 'past-years' ? 'seasonal-drift' : beyond;
      const range = rangeOf(eventH, knownH, supposed, soil?.[event] ?? null);
      return [[event, { ...range, isOpen: eventH > knownH || soil !== null }]];
    }),
  );
}

/** The same sowing as fast and as slow as the counts leave it, beside its middle. */
export interface LearnedRuns {
  readonly fast: CohortRun;
  readonly middle: CohortRun;
  readonly slow: CohortRun;
}

/** Ranges with what the counts leave open of the time laid on them: each is taken to err for itself. */
export function withLearned(ranges: Ranges, run: CohortRun, outcome: Outcome, learned: LearnedRuns): Ranges {
  return Object.fromEntries(
    EVENTS.flatMap((event) => {
      const eventH = outcome[`${event}H`];
      const range = ranges[event];
      if (eventH === null || !range) return [];
      const cohort = Math.max(0, countUpBy(run, eventH) - 1);
      const [fastH, middleH, slowH] = [learned.fast, learned.middle, learned.slow].map((one) => one.upAtH[cohort]!);
      const earlierH = Number.isFinite(middleH!) ? middleH! - fastH! : 0;
      const laterH = Number.isFinite(middleH!) ? slowH! - middleH! : 0;
      const fromH = Math.max(0, eventH - Math.hypot(eventH - range.fromH, earlierH));
      return [[event, { fromH, toH: eventH + Math.hypot(range.toH - eventH, laterH), isOpen: true }]];
    }),
  );
}
