import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import { type Note, notUnderstood } from '../../basics/errors.js';
import { fieldFact, wasValue } from '../../basics/field-facts.js';
import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { Caution, Crop } from '../../germination/crop.js';
import type { Risk } from '../../growth/pests/pest-risks.js';
import type { SeriesReport } from '../../readings/report.js';
import { type FindPast, isTypical, pastSoil } from '../ahead/past-soil.js';
import { bedSafety } from '../forecast/safety-notes.js';
import { bestOf, type SowingBest } from './best-date.js';
import type { DateInYears, WindowCriteria } from './dates-in-years.js';
import { type Grade, windowRuns } from './grades.js';
import { type HarvestDates, harvestOfDate, harvestOfRun } from './harvest-dates.js';
import { indoorWays } from './indoor-ways.js';
import { insteadInBed } from './instead-in-bed.js';
import { type JudgedDates, judgedDates, type WindowQuestion } from './judged-dates.js';
import { type Quantiles, quantilesOf } from './quantiles.js';
import type { Reason } from './reasons.js';
import { met, pestNotes, pestsMet } from './risks-met.js';
import type { Run } from './sureness.js';
import { directWays, insteadOf, type SowingInstead, type SowingWay, waysOf } from './ways.js';
import { CLOSED_AS, type WhyClosed } from './why-nots.js';
import { windowAssumptions, windowWarnings } from './window-notes.js';

/** Dates on end of one grade. */
export interface SowingSpan {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly grade: Grade;
  /** The middle one of its dates; null where a usual year stands for all. */
  readonly sureness: number | null;
  readonly reasons: readonly Reason[];
  readonly harvest: HarvestDates | null;
}

export interface SowingWindow {
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** The least in it; null where a usual year stands for all. */
  readonly sureness: number | null;
  readonly halfDays: Quantiles | null;
  readonly stand: Quantiles | null;
  /** `fair`: no date near it is good, but these are next best. */
  readonly grade: Grade;
  readonly harvest: HarvestDates | null;
  /** Risks to rows sown in it. */
  readonly risks: readonly Risk[];
}

export interface WindowDate {
  readonly date: PlainDate;
  readonly sureness: number | null;
  readonly firstDays: Quantiles | null;
  readonly halfDays: Quantiles | null;
  readonly mostDays: Quantiles | null;
  readonly stand: Quantiles | null;
  readonly ifHeldAreLost: Quantiles | null;
  readonly grade: Grade;
  readonly harvest: HarvestDates | null;
}

export interface SowingWindows {
  readonly crop: Crop;
  /** null, null and 0 where a usual year stands for all. */
  readonly years: { readonly from: number | null; readonly to: number | null; readonly count: number };
  readonly criteria: WindowCriteria & { readonly judge: 'harvest' | 'emergence'; readonly standDays: number };
  /** null: no date is good or fair. */
  readonly best: SowingBest | null;
  readonly windows: readonly SowingWindow[];
  readonly closed: readonly { readonly from: PlainDate; readonly to: PlainDate; readonly why: WhyClosed }[];
  readonly spans: readonly SowingSpan[];
  readonly ways: readonly SowingWay[];
  readonly instead: readonly SowingInstead[];
  readonly dates: readonly WindowDate[];
  readonly cautions: readonly Caution[];
  /** Risks to rows sown between the first date and the last. */
  readonly risks: readonly Risk[];
  readonly understood: readonly SeriesReport[];
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/** When to sow: the dates of a season, judged by what each would have done in past years. */
export function sowingWindows(
  question: WindowQuestion,
  findPast: FindPast = pastSoil,
  shouldStop?: ShouldStop,
): SowingWindows {
  const { crop, criteria, from, to } = question;
  const nDates = daysBetween(from, to) + 1;
  refuseDates(question, nDates);
  const judged = judgedDates(question, findPast, shouldStop);
  const { all, graded, gradeOf, reasonsIn, spans, years, isUsual, isJudged, soil } = judged;
  const { sureness, runs } = graded;
  const dated = (day: number): PlainDate => addDays(from, day);
  const windows = windowRuns(runs);
  const best = bestOf(question, judged);
  // A climatological year has no late frosts, so it plants nothing out.
  const indoors =
    judged.season && !isUsual ? indoorWays({ ...question, nDates }, judged.season, soil, judged.known) : [];
  const risks = pestsMet(question, { from, upBy: addDays(to, criteria.maxDays) });
  const risksOf = (run: Run): Risk[] =>
    met(risks, crop, { from: dated(run.from), upBy: addDays(dated(run.to), criteria.maxDays) });
  return {
    crop,
    years:
      isUsual || isTypical(question)
        ? { from: null, to: null, count: 0 }
        : { from: Math.min(...years), to: Math.max(...years), count: years.length },
    criteria: { judge: question.judge, ...criteria, standDays: judged.standDays },
    best,
    windows: windows.map((run) => ({
      from: dated(run.from),
      to: dated(run.to),
      sureness: isUsual ? null : Math.min(...sureness.subarray(run.from, run.to + 1)),
      grade: run.grade,
      harvest: harvestOfRun(all, run, from),
      halfDays: pooled(all, run, ({ halfDays }) => halfDays),
      stand: pooled(all, run, ({ stand }) => stand),
      risks: risksOf(run),
    })),
    closed: closedSpans(judged).map(({ why, ...run }) => ({
      from: dated(run.from),
      to: dated(run.to),
      why,
    })),
    spans: spans.map((run) => ({
      from: dated(run.from),
      to: dated(run.to),
      grade: run.grade,
      sureness: isUsual ? null : middleOf(sureness.slice(run.from, run.to + 1)),
      reasons: run.grade === 'good' ? [] : reasonsIn(run),
      harvest: run.grade === 'poor' ? null : harvestOfRun(all, run, from),
    })),
    ways: waysOf(directWays(windows, judged, { best: best?.date ?? null, ...question }), indoors),
    instead: [...insteadInBed(question, judged, shouldStop), ...insteadOf(runs, indoors, from)],
    dates: all.map((one, day) => ({
      date: dated(day),
      sureness: isUsual ? null : Number.isNaN(sureness[day]!) ? 0 : sureness[day]!,
      firstDays: quantilesOf(one.firstDays),
      halfDays: quantilesOf(one.halfDays),
      mostDays: quantilesOf(one.mostDays),
      stand: quantilesOf(one.stand),
      ifHeldAreLost: quantilesOf(one.ifHeldAreLost),
      grade: gradeOf[day]!,
      harvest: gradeOf[day] === 'poor' ? null : harvestOfDate(one, dated(day)),
    })),
    cautions: crop.cautions,
    risks,
    understood: question.understood,
    assumptions: [...soil.assumptions, ...windowAssumptions(question, years.length, isJudged), ...pestNotes(risks)],
    warnings: [
      ...soil.warnings,
      ...windowWarnings(question, years.length, judged.frostKnown, isJudged),
      ...bedSafety(question.bed),
    ],
  };
}

/** The middle one of some shares; NaN counts as 0. */
const middleOf = (shares: Float64Array): number => hazenQuantile(shares.map((share) => share || 0).sort(), 0.5);

/** Of the values of all dates of a run. */
function pooled(
  dates: readonly DateInYears[],
  { from, to }: Run,
  what: (date: DateInYears) => Float64Array,
): Quantiles | null {
  const values = dates.slice(from, to + 1).map(what);
  const all = new Float64Array(values.reduce((n, { length }) => n + length, 0));
  let at = 0;
  for (const one of values) {
    all.set(one, at);
    at += one.length;
  }
  return quantilesOf(all.sort());
}

/** Spans of poor dates, each with its main reason in the few words of pictures; dates of which nothing is known have none. */
function closedSpans({ spans, reasonsIn }: JudgedDates): (Run & { why: WhyClosed })[] {
  const closed: { from: number; to: number; why: WhyClosed }[] = [];
  for (const { grade, from, to } of spans) {
    const reason = grade === 'poor' ? reasonsIn({ from, to })[0] : undefined;
    if (!reason) continue;
    const why = CLOSED_AS[reason.code];
    const last = closed.at(-1);
    if (last && last.to === from - 1 && last.why === why) last.to = to;
    else closed.push({ from, to, why });
  }
  return closed;
}

function refuseDates({ from, to, criteria: { maxDays } }: WindowQuestion, nDates: number): void {
  if (nDates < 1)
    throw notUnderstood([{ path: ['to'], detail: fieldFact('field.before-from', { from, ...wasValue(to) }) }]);
  if (nDates > 366) throw notUnderstood([{ path: ['to'], detail: fieldFact('field.within-a-year', wasValue(to)) }]);
  if (maxDays > 366)
    throw notUnderstood([
      { path: ['maxDays'], detail: fieldFact('field.at-most', { limit: 366, of: 'number', ...wasValue(maxDays) }) },
    ]);
}
