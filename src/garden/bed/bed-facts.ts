import type { FactKinds, FactOf } from '../../basics/fact.js';

/** How old a source's last good answer is: `ageDays` is 0 for less than two; `ageHours` is missing where there is none. */
const age = { ageHours: 'count?', ageDays: 'count' } as const;
/** A preset's publisher, or the host of an address. */
const source = { source: 'text' } as const;

/** Notes on the stored data of a bed and its place. */
export const bedFacts = {
  'source-stale': { ...source, ...age },
  'source-failing': { ...source, failures: 'count', ...age },
  'readings-to-come': { bed: 'text', lastDate: 'date', todayDate: 'date', deleteFrom: 'text' },
} as const satisfies FactKinds;

export type BedNote = FactOf<typeof bedFacts>;
export type ReadingsToCome = Extract<BedNote, { readonly code: 'readings-to-come' }>;
