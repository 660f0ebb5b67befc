import type { CautionFact } from './caution-facts.js';
import type { Growth, PlantingOut } from './growth.js';
import type { ViabilitySet } from './storage/viability-sets.js';

/** What one constant temperature did to a crop's seed. */
export interface CropRow {
  /** Constant temperature at the seed [°C]. */
  readonly temperatureC: number;
  /** Was the coming-up timed here? `true` with `days: null`: timed, and none or too few came. `false`: never timed. */
  readonly tested: boolean;
  /** Days from sowing until half of those that come are up; null where not timed or none came. */
  readonly days: number | null;
  /** Normal seedlings in a hundred seeds; null where not counted. */
  readonly percent: number | null;
}

/** From the lower to the upper end of something. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A thing to know before sowing, and who says so. */
export type Caution = CautionFact & {
  /** A publication, or "common practice, no source", or "from memory: ...". */
  readonly source: string;
};

export interface SoilLimits {
  readonly minimumC: number;
  readonly optimumFromC: number;
  readonly optimumToC: number;
  readonly maximumC: number;
}

export type FrostClass = 'hardy' | 'half-hardy' | 'tender';

export interface Maturity {
  readonly fromDays: number;
  readonly toDays: number;
  readonly countedFrom: 'sowing' | 'planting-out';
}

/** A crop as the forecast needs it: from the handbook, or the caller's own rows. */
export interface Crop {
  readonly id: string;
  readonly name: string;
  readonly latinName: string | null;
  readonly rows: readonly CropRow[];
  /** null: the caller's own rows, which say nothing of limits beyond them. */
  readonly soil: SoilLimits | null;
  /** Above this, seed of this crop begins to be held or lost [°C]. */
  readonly hotThresholdC: number;
  readonly frost: FrostClass | null;
  /** Does soil below 10 °C harm the wet seed, rather than only delay it? */
  readonly chillingSensitive: boolean;
  readonly sowingDepthCm: number | null;
  readonly maturity: Maturity | null;
  readonly storageYears: number | null;
  /** Share of a laboratory's stand that beds have given, 0 to 1. */
  readonly field: Span;
  /** How many times longer than the chart beds have taken. */
  readonly bedTimeFactor: Span;
  /** Days within which a sowing should be up to be worth making. */
  readonly maxDays: number;
  /** Spread among seeds: standard deviation of log10 of the time to come up. */
  readonly sigmaLog10: number;
  /** From emergence until it is fit to plant out [weeks]; null: it does not bear to be moved. */
  readonly weeksInTrays: number | null;
  /** How long one sowing is picked before it is over, or past its best [d]; null: its harvest is not told. */
  readonly pickingDays: number | null;
  /** From emergence to harvest; null: the caller's own rows, which say nothing of it. */
  readonly growth: Growth | null;
  /** Its needs when planted out of a tray; null: it is sown in place, or nothing is known of it. */
  readonly plantingOut: PlantingOut | null;
  readonly isThinned: boolean;
  readonly isFed: boolean;
  readonly viability: readonly ViabilitySet[];
  readonly cautions: readonly Caution[];
  readonly source: string;
}
