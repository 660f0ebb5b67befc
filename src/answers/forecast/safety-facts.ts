import type { FactKinds, FactOf } from '../../basics/fact.js';

/** Cautions for the gardener's safety, where the bed or the advice calls for them. */
export const safetyFacts = {
  'electricity-near-water': {},
  'mould-on-paper': {},
  'compost-dust': {},
  'hot-clear-film': {},
  'heat-for-you': {},
} as const satisfies FactKinds;

/** One of them, and who says so. */
export type SafetyNote = FactOf<typeof safetyFacts> & { readonly source: string };
