import { type AirOfYears, seriesOfYears, yearsTold } from '../answers/ahead/past-soil.js';
import type { Forecast } from '../answers/forecast/forecast.js';
import type { Question } from '../answers/question.js';
import type { SoilQuestion, SoilTemperatures } from '../answers/soil/soil-temperatures.js';
import type { CropSeason } from '../answers/week/crop-season.js';
import type { WindowQuestion } from '../answers/windows/judged-dates.js';
import type { SowingWindows } from '../answers/windows/sowing-windows.js';
import { zoneNamed } from '../basics/calendar.js';
import { digestOfJson } from '../basics/digest.js';
import type { RequestError } from '../basics/errors.js';
import type { GardenPlan } from '../garden/plan/plan.js';
import type { PlanQuestion } from '../garden/plan/plan-question.js';
import type { Growing, GrowingQuestion } from '../garden/sowing/growing.js';
import { bytesOfSeries, columnsOf, type SeriesColumns, seriesOf } from './series-columns.js';

/** The questions that can take seconds, and their answers. */
export interface LongQuestions {
  readonly windows: { readonly question: WindowQuestion; readonly answer: SowingWindows };
  readonly season: { readonly question: WindowQuestion; readonly answer: CropSeason };
  readonly forecast: { readonly question: Question; readonly answer: Forecast };
  readonly growing: { readonly question: GrowingQuestion; readonly answer: Growing };
  readonly plan: { readonly question: PlanQuestion; readonly answer: GardenPlan };
  readonly soil: { readonly question: SoilQuestion; readonly answer: SoilTemperatures };
}
export type JobKind = keyof LongQuestions;
type AnyQuestion = LongQuestions[JobKind]['question'];

/** A question in the form sent to a thread: zones by name, series as columns. */
export type Sendable<Asked extends AnyQuestion> = Omit<Asked, 'site' | 'series' | 'typicalAir'> & {
  readonly site: Omit<Asked['site'], 'zone'> & { readonly zone: string };
  readonly series: readonly SeriesColumns[];
  readonly typicalAir: SeriesColumns | null;
};

/** Packed past soil; the key is a digest of all its inputs. */
export interface PackedPast {
  readonly key: string;
  readonly bytes: Uint8Array;
}

export type Job = {
  [K in JobKind]: {
    readonly kind: K;
    readonly question: Sendable<LongQuestions[K]['question']>;
    readonly modelVersion: string;
    /** One whole number; other than 0 when nobody waits for the answer any more. */
    readonly stop: SharedArrayBuffer;
    /** Cached past soil for the question. */
    readonly remembered: readonly PackedPast[];
  };
}[JobKind];

export type JobDone = { readonly threadId: number; readonly made: readonly PackedPast[] } & (
  | { readonly answer: unknown }
  | { readonly refused: Pick<RequestError, 'code' | 'sentences' | 'faults'> }
  | { readonly failed: string }
  | { readonly stopped: true }
);

/** Converts a question for sending to a thread. */
export function sendable<Asked extends AnyQuestion>({ site, series, typicalAir, ...rest }: Asked): Sendable<Asked> {
  return {
    ...rest,
    site: { ...site, zone: site.zone.name },
    series: series.map(columnsOf),
    typicalAir: typicalAir ? columnsOf(typicalAir) : null,
  } as unknown as Sendable<Asked>;
}

/** Restores a question in a thread. */
export function received<Asked extends AnyQuestion>(
  sent: Sendable<Asked>,
  seriesFrom: (columns: SeriesColumns) => Asked['series'][number] = seriesOf,
): Asked {
  return {
    ...sent,
    site: { ...sent.site, zone: zoneNamed(sent.site.zone) },
    series: sent.series.map(seriesFrom),
    typicalAir: sent.typicalAir && seriesFrom(sent.typicalAir),
  } as unknown as Asked;
}

/** A digest of a question; callers with equal digests share one answer. */
export function digestOfQuestion<K extends JobKind>(kind: K, question: Sendable<LongQuestions[K]['question']>): string {
  const { series, typicalAir, ...rest } = question;
  const parts = [kind, rest, series.map(({ digest, warnings }) => [digest, warnings]), typicalAir?.digest];
  return digestOfJson(parts);
}

/** Processor time of a question for each past year [ms], measured without cached past soil. */
const MS_A_YEAR: Record<JobKind, number> = { forecast: 12, windows: 20, season: 20, growing: 16, plan: 40, soil: 50 };

/** Estimated work of a question [ms of a processor]. */
export const costOf = (kind: JobKind, asked: AirOfYears): number =>
  MS_A_YEAR[kind] * Math.min(40, Math.max(1, yearsTold(seriesOfYears(asked))));

/** Memory of a waiting question [bytes]. */
export const bytesOfQuestion = ({ series, typicalAir }: AirOfYears): number =>
  [...series, ...(typicalAir ? [typicalAir] : [])].reduce((sum, one) => sum + bytesOfSeries(one), 0);
