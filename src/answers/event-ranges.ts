import type { Outcome } from '../germination/outcome.js';
import type { Ensemble } from './ensemble.js';
import type { Beyond } from './hours-ahead.js';
import type { EventRange } from './milestones.js';
import { aDayWide, rangeOf } from './range.js';
import type { HourSpan } from './soil-range.js';

/** When a tenth, half and nine tenths of those that come are up. */
export type Event = 'first' | 'half' | 'most';
/** Of those events that come. */
export type Ranges = Partial<Record<Event, EventRange>>;
const EVENTS = ['first', 'half', 'most'] as const;

/** What the past years and the doubt of the soil leave open. */
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

/** What a drift or a repeated week leaves open after the last value, and the doubt of the soil. */
export function supposedRanges(
  { knownH, beyond }: { readonly knownH: number; readonly beyond: Beyond },
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
