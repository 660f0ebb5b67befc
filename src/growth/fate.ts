/** Why there was no good harvest of what was up, the first that came. */
const growthWhys = [
  'frost-on-seedling',
  'frost-before-harvest',
  'season-too-short',
  'heat-at-harvest',
  'bolts',
  'over-winter',
  'day-length',
] as const;
export type GrowthWhy = (typeof growthWhys)[number];

/** The air of a year from some day on, day by day [°C]. Shape (n) each; NaN: not known. */
export interface AirOfYear {
  /** The minima for frost in a climatological year: as cold as one year in five. */
  readonly minC: Float64Array;
  /** (min + max)/2: for growth. */
  readonly meanC: Float64Array;
  /** The day of the year of its first day, 1 January being 1. */
  readonly firstDayOfYear: number;
  readonly latitudeDeg: number;
}

/** The fate of a crop in one year. */
export interface Fate {
  /** null: it was harvested; undefined: the year is not known so far. */
  readonly why: GrowthWhy | null | undefined;
  /** The day of the first harvest of early, middling and late kinds; NaN: none is known. */
  readonly earlyDay: number;
  readonly harvestDay: number;
  readonly lateDay: number;
  /** The day of the frost that ended it; NaN: none did. */
  readonly endDay: number;
}

export const NOTHING = { earlyDay: NaN, harvestDay: NaN, lateDay: NaN, endDay: NaN } as const;
export const UNKNOWN: Fate = { ...NOTHING, why: undefined };

/** A fate that is written over from question to question. */
export type FateTold = { -readonly [K in keyof Fate]: Fate[K] };

/** Tells the fate of a crop whose seedlings were spared, by the day it was sown and the day it came up. */
export type Grower = (told: FateTold, sownDay: number, up: number) => Fate;

/** Tells a fate without a harvest. */
export function endedBy(told: FateTold, why: GrowthWhy | null, endDay: number): Fate {
  told.why = why;
  told.earlyDay = NaN;
  told.harvestDay = NaN;
  told.lateDay = NaN;
  told.endDay = endDay;
  return told;
}
