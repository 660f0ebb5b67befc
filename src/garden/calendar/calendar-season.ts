import type { Forecast } from '../../answers/forecast/forecast.js';
import type { PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import type { TriageFact } from '../sowing/triage-facts.js';
import type { Plan, Sowing, SowingMethod } from '../store/season-store.js';
import type { Bed } from '../store/store.js';

/** Dates from and to, both included. */
export interface Dates {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** A sowing, and what is known of what becomes of it. */
export interface GrowingSowing {
  readonly sowing: Sowing;
  readonly crop: Crop;
  /** null: it cannot be forecast. */
  readonly forecast: Forecast | null;
  /** null: sown where it stays, or it does not come as far. */
  readonly indoors: { readonly hardenOff: Dates; readonly plantOut: PlainDate } | null;
  /** null: not known. */
  readonly harvest: Dates | null;
  /** True if it stands too thin to be thinned out. */
  readonly isSparse: boolean;
  /** The last date on which a new sowing is still good; null: not known. */
  readonly resowBy: PlainDate | null;
  /** That it is to be sown again now; null: it is not. */
  readonly sowAgain: TriageFact | null;
}

/** One of the sowings that a plan asks for, as far as a calendar tells of it. */
export interface SowingToMake {
  /** Which of the plan's sowings it is: the same for as long as it is for the same part of the harvest. */
  readonly turn: number;
  readonly date: PlainDate;
  readonly seeds: number | null;
  readonly method: SowingMethod;
  /** When half is up, and the middle 80 % of past years. */
  readonly half: { readonly date: PlainDate; readonly range: Dates | null };
  readonly harvest: Dates;
  readonly indoors: GrowingSowing['indoors'];
}

/** A plan, and the sowings that are still to be made for it. */
export interface GrowingPlan {
  readonly plan: Plan;
  readonly crop: Crop;
  readonly sowings: readonly SowingToMake[];
}

/** All that a bed's calendar tells of. */
export interface BedSeason {
  readonly bed: Bed;
  readonly sowings: readonly GrowingSowing[];
  readonly plans: readonly GrowingPlan[];
  /** The air's forecast minima [°C], by their dates. */
  readonly comingMinC: readonly { readonly date: PlainDate; readonly minC: number }[];
}
