import type { ViabilityConstants } from './viability.js';

/** Seed that constants were measured on, where they stand in for those of a crop. */
export const viabilityKin = ['maize', 'beet', 'rape', 'mustard'] as const;
export type Kin = (typeof viabilityKin)[number];

/** One published set of constants of the viability equation. */
export interface ViabilitySet extends ViabilityConstants {
  readonly source: string;
  /** The seed it was measured on, where that is not the crop's own. */
  readonly measuredOn: Kin | null;
}

/** Temperature terms that fitted many species alike: Dickie and others 1990. */
export const COMMON_TERMS = { ch: 0.0329, cq: 0.000478 };

/** One published set. */
export const viabilitySet = (
  source: string,
  { ke, cw, ch, cq }: ViabilityConstants,
  measuredOn: Kin | null = null,
): ViabilitySet => ({ ke, cw, ch, cq, source, measuredOn });

/** No set was found for cabbages themselves: rape and brown mustard, of the same genus, stand in. */
export const kinOfCabbage: readonly ViabilitySet[] = [
  viabilitySet('Ellis and others 1989', { ke: 7.718, cw: 4.54, ...COMMON_TERMS }, 'rape'),
  viabilitySet('Ellis and others 1989', { ke: 7.768, cw: 4.56, ...COMMON_TERMS }, 'mustard'),
];
