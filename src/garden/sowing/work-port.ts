import { DEFAULT_DEPTH_CM, type Lot } from '../../answers/question.js';
import { usualCriteria } from '../../answers/windows/dates-in-years.js';
import type { WindowQuestion } from '../../answers/windows/judged-dates.js';
import type { SowingWindows } from '../../answers/windows/sowing-windows.js';
import { addDays, type PlainDate } from '../../basics/calendar.js';
import { type ErrorCode, type Note, RequestError } from '../../basics/errors.js';
import { type FactKinds, factsOf } from '../../basics/fact.js';
import type { Crop } from '../../germination/crop.js';
import { type BedInputs, seriesToGoBy } from '../bed/bed-inputs.js';
import { namingSources } from '../bed/naming-sources.js';
import type { GardenPlan } from '../plan/plan.js';
import type { PlanQuestion } from '../plan/plan-question.js';
import type { Growing, GrowingQuestion } from './growing.js';

export const askFacts = { 'not-worked-out': {} } as const satisfies FactKinds;
const askFact = factsOf(askFacts);

/** Works out what takes seconds, wherever that is done. */
export interface WorkPort {
  /** True where the answer goes without what cannot be worked out just now, and says so. */
  readonly canDoWithout?: boolean;
  growing(question: GrowingQuestion): Promise<Growing>;
  windows(question: WindowQuestion): Promise<SowingWindows>;
}

/** Works out a whole season of a bed. */
export interface SeasonWorkPort extends WorkPort {
  plan(question: PlanQuestion): Promise<GardenPlan>;
}

/** Why something cannot be answered from what is kept. */
export interface Unanswered {
  readonly why: Note;
}

/** The result of a job, or the reason for its refusal. */
export const orUnanswered = async <T>(
  work: () => Promise<T>,
  { canDoWithout = false }: Pick<WorkPort, 'canDoWithout'> = {},
) =>
  work().catch((error: unknown): Unanswered => {
    if (!(error instanceof RequestError)) throw error;
    if (!isOnlyNow(error.code)) return { why: { code: error.code, text: error.sentences } };
    if (!canDoWithout) throw error;
    return { why: { code: error.code, text: [askFact('not-worked-out'), ...error.sentences] } };
  });

/** True if the service or the caller is too busy, rather than the garden's data insufficient. */
const isOnlyNow = (code: ErrorCode): boolean => ONLY_NOW.includes(code);
const ONLY_NOW: readonly ErrorCode[] = ['busy', 'stopping', 'too-many-requests', 'too-much-at-once'];

/** A kept sowing's question, what is kept of its bed, and the instant it is asked at. */
interface SowingAsked {
  readonly question: GrowingQuestion;
  readonly kept: BedInputs;
  readonly now: Date;
}

/** What a kept sowing does by today. */
export const growingNow = ({ question, kept, now }: SowingAsked, ask: WorkPort): Promise<Growing | Unanswered> =>
  orUnanswered(async () => {
    const series = question.bed.kind === 'indoors' ? question.series : seriesToGoBy(kept, now.getTime());
    return namingSources(kept, () => ask.growing({ ...question, series }));
  }, ask);

/** What is to be sown in a kept bed, and how. */
export interface ToSow {
  readonly crop: Crop;
  readonly time: string;
  readonly depthCm: number | null;
  readonly lot: Lot | null;
}

/** When a crop can be sown in a kept bed, from a date on: in a year, or so many days more than that date. */
export const windowsAhead = (
  kept: BedInputs,
  from: PlainDate,
  { crop, time, depthCm, lot }: ToSow,
  ask: WorkPort,
  daysMore = 364,
): Promise<SowingWindows | Unanswered> =>
  orUnanswered(async () => {
    const { site, bedMake, series, normals, typicalAir } = kept;
    const question = {
      crop,
      site,
      bed: bedMake!,
      depthCm: depthCm ?? crop.sowingDepthCm ?? DEFAULT_DEPTH_CM,
      time,
      lot,
      timeFactor: null,
      series,
      understood: [],
      from,
      to: addDays(from, daysMore),
      criteria: { ...usualCriteria, maxDays: crop.maxDays },
      prefer: 'earliest',
      judge: 'harvest',
      normals,
      typicalAir,
    } as const;
    const found = await namingSources(kept, () => ask.windows(question));
    // Second-best windows are not worth a message, nor a second sowing.
    return { ...found, windows: found.windows.filter(({ grade }) => grade === 'good') };
  }, ask);
