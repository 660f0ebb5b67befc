import type { MonthDay } from '../../climate/frost-dates.js';

/** Days that leave a risk of frost of 10, 50 and 90 %; null: the risk is never so high. */
export interface FrostRisk {
  readonly risk10: MonthDay | null;
  readonly risk50: MonthDay | null;
  readonly risk90: MonthDay | null;
}

export interface ClimateStation {
  readonly id: string;
  readonly name: string;
  readonly country: string;
  readonly km: number;
  readonly elevationM: number;
  /** Its part of the weights above 0, 0 to 1. */
  readonly share: number;
}

/** The frost dates that a grower told, and what they changed. */
export interface TunedBy {
  readonly lastFrostAround?: MonthDay;
  /** The last spring frost in half of the years without it; null: fewer than half have one. */
  readonly untuned?: MonthDay | null;
  readonly firstFrostAround?: MonthDay;
  /** The same of the first autumn frost. */
  readonly untunedFirst?: MonthDay | null;
  /** All minima were moved by this [K]. */
  readonly minimaMovedC: number;
}

/** The climate that an answer rests on, and what it is worth. */
export interface Climate {
  readonly basis: 'climate-table' | 'past-years' | 'normals';
  /** Years made from the table; null: none. */
  readonly typicalYears: number | null;
  /** Half the 80 % range of a month's mean [K]; null: not known. */
  readonly plusMinusC: number | null;
  /** Half the 80 % range of a window's first and last date [d]; null: not known. */
  readonly plusMinusDays: number | null;
  /** Stations of the table that weigh most, the heaviest first. */
  readonly stations: readonly ClimateStation[];
  /** null: not known. */
  readonly lastSpringFrost: FrostRisk | null;
  readonly firstAutumnFrost: FrostRisk | null;
  /** null: no frost date was told, or it changed nothing. */
  readonly tunedBy: TunedBy | null;
}
