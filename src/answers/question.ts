import type { PlainDate } from '../basics/calendar.js';
import type { Normals } from '../climate/normals.js';
import type { Crop, Span } from '../germination/crop.js';
import type { ReadSeries } from '../readings/read-series.js';
import type { SeriesReport } from '../readings/report.js';
import type { BedMake } from '../seedbed/bed.js';
import type { Extrapolation } from './ahead/hours-ahead.js';
import type { LearnedFact } from './forecast/forecast-facts.js';
import type { Site } from './soil/known-hours.js';

/** Where in the garden the seed lies. */
export interface QuestionBed extends BedMake {
  readonly roomC: number | null;
  /** When seed sown into dry soil is first wetted. */
  readonly wettedOn: PlainDate | null;
}

/** Where and how deep a temperature is asked. */
export interface Bedding {
  readonly site: Site;
  readonly bed: QuestionBed;
  /** How deep the seed lies, or whatever depth is asked [cm]. */
  readonly depthCm: number;
}

export const defaultBed: QuestionBed = {
  kind: 'open-ground',
  cover: 'bare',
  moisture: 'moist',
  shadePercent: 0,
  roomC: null,
  wettedOn: null,
};

/** A seed lot, as far as the grower has tested it. */
export interface Lot {
  readonly germinationPercent: number | null;
  readonly testedOn: PlainDate | null;
  readonly hotLimitShiftC: number;
}

/** The middle of what is left open, and its middle 80 %. */
export interface Middle {
  readonly middle: number;
  readonly from: number;
  readonly to: number;
}

/** What the grower's counts have taught of this crop in this bed, or of this sowing. */
export interface Learned {
  /** How many times longer than the chart; null: the counts say nothing of it. */
  readonly timeFactor: Middle | null;
  /** The share of a laboratory's stand; null: the counts say nothing of it. */
  readonly standFactor: Middle | null;
  readonly text: LearnedFact;
}

/** Where nobody says how deep [cm]: half an inch, as in the handbook's trials. */
export const DEFAULT_DEPTH_CM = 1.3;

/** How deep the seed lies [cm]: as sown, else the crop's usual, else the handbook's. */
export const seedDepthCm = ({ sowing, crop }: Pick<Question, 'sowing' | 'crop'>): number =>
  sowing.depthCm ?? crop.sowingDepthCm ?? DEFAULT_DEPTH_CM;

/** What a grower asks: this crop, sown here and then, over these temperatures. */
export interface Question {
  readonly crop: Crop;
  readonly site: Site;
  /** True where the caller named no zone and the stamps' own offset serves. */
  readonly zoneFromStamps: boolean;
  readonly bed: QuestionBed;
  readonly sowing: {
    readonly date: PlainDate;
    readonly time: string;
    readonly depthCm: number | null;
    readonly seeds: number | null;
  };
  readonly lot: Lot | null;
  /** How many times longer than the chart this grower's beds take; replaces the crop's range. */
  readonly timeFactor: number | null;
  /** The share of the laboratory's stand that this grower's beds give; replaces the crop's. */
  readonly standFactor: Span | null;
  /** null: nothing was counted; what the grower says above goes before it. */
  readonly learned: Learned | null;
  readonly countDays: number | null;
  readonly series: readonly ReadSeries[];
  /** What was understood of each series, told back as it is. */
  readonly understood: readonly SeriesReport[];
  readonly beyond: Extrapolation | null;
  /** The place's normals, where past years are not known. */
  readonly normals: Normals | null;
  /** Typical years of the place's air, where neither past years nor normals are known. */
  readonly typicalAir?: ReadSeries | null | undefined;
  /** Is it asked whether the date is a good one? It costs a tenth of a second or two. */
  readonly judgesDate?: boolean;
}
