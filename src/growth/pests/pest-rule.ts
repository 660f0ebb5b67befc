import type { DegreeDayLimits } from './degree-days.js';

/** The part of a row that a pest takes. */
export const threatened = ['seed', 'seedling', 'plant', 'root'] as const;
export type Threatened = (typeof threatened)[number];

/** A sum of degree days at which a brood is at its most. */
export interface BroodSum extends DegreeDayLimits {
  /** Counted from this day of a northern year on, MM-DD; half a year later in the south. */
  readonly since: string;
  /** [°C·d] */
  readonly sumCDays: number;
}

/** A pest whose dates follow from the air's temperature. */
export interface PestRule<Id extends string = string> {
  readonly id: Id;
  /** Ids of the crops that it lives on. */
  readonly crops: readonly string[];
  readonly threatens: Threatened;
  /** Its broods of a year, the first one first. */
  readonly broods: readonly BroodSum[];
  readonly source: string;
}
