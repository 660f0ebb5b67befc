import { addDays, daysBetween, type PlainDate, startOfDay } from '../../basics/calendar.js';
import { type Note, notUnderstood, RequestError } from '../../basics/errors.js';
import { fieldFact, wasValue } from '../../basics/field-facts.js';
import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { Normals } from '../../climate/normals.js';
import type { Caution, Crop } from '../../germination/crop.js';
import { frostExposure } from '../../germination/run/frost-exposure.js';
import type { Risk } from '../../growth/pests/pest-risks.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { SeriesReport } from '../../readings/report.js';
import { type FindPast, MIN_YEARS, type PastSoil, pastSoil, THIN_YEARS, yearsTold } from '../ahead/past-soil.js';
import { climatologicalSoil } from '../forecast/extrapolation.js';
import { bedSafety } from '../forecast/safety-notes.js';
import { seedOf } from '../forecast/seed-of.js';
import type { Bedding, Lot } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { bestOf, type SowingBest } from './best-date.js';
import { type DateInYears, datesInYears, type WindowCriteria } from './dates-in-years.js';
import { type Grade, type GradedRun, gradesOf, windowRuns } from './grades.js';
import { type HarvestDates, harvestOfDate, harvestOfRun } from './harvest-dates.js';
import { harvestSeason, STAND_DAYS, soilCourse } from './harvest-season.js';
import { indoorWays } from './indoor-ways.js';
import { type Quantiles, quantilesOf } from './quantiles.js';
import { type Reason, reasonsOf } from './reasons.js';
import { met, pestNotes, pestsMet } from './risks-met.js';
import type { Run } from './sureness.js';
import { directWays, insteadOf, type SowingInstead, type SowingWay, waysOf } from './ways.js';
import { CLOSED_AS, type WhyClosed } from './why-nots.js';
import type { WindowNote } from './window-facts.js';
import { datesInClimatologicalYear, yearsOfDates } from './years-of-dates.js';

/** What a grower asks: when should I sow. */
export interface WindowQuestion extends Bedding {
  readonly crop: Crop;
  readonly time: string;
  readonly lot: Lot | null;
  readonly timeFactor: number | null;
  readonly series: readonly ReadSeries[];
  readonly understood: readonly SeriesReport[];
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly criteria: WindowCriteria;
  readonly prefer: 'earliest' | 'surest';
  /** `emergence`: that it comes up is enough. */
  readonly judge: 'harvest' | 'emergence';
  readonly normals: Normals | null;
}

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
  const { series, site, crop, criteria, from, to, normals } = question;
  const nDates = daysBetween(from, to) + 1;
  refuseDates(question, nDates);
  const phaseMs = startOfDay(from, site.zone);
  const past = yearsTold(series) >= MIN_YEARS ? findPast(series, question, phaseMs, shouldStop) : null;
  const dated = (day: number): PlainDate => addDays(from, day);
  const isToHarvest = question.judge === 'harvest';
  const countDays = isToHarvest ? Math.max(STAND_DAYS, criteria.maxDays) : criteria.maxDays;
  const asked = { ...question, countDays };
  const dates = Array.from({ length: nDates }, (_, day) => dated(day));
  const harvestOf = (soil: PastSoil | null) => (isToHarvest && soil ? harvestSeason(question, soil.air, dates) : null);
  const known = past ? yearsOfDates(past, asked, nDates) : [];
  const seed = seedOf(question);
  const viablePercent = question.lot?.germinationPercent ?? seed.curve.bestPercent;
  const ofPast = harvestOf(past);
  const inYears = datesInYears({ seed, viablePercent, crop, criteria, years: known, harvest: ofPast }, shouldStop);
  const told = known.filter((_, i) => inYears.years[i]);
  const years = told.map(({ year }) => year);
  const isUsual = years.length < MIN_YEARS;
  if (isUsual && !normals) refuseFewYears(years.length);
  // Usual years lie before the dates asked, whenever the last value came.
  const usual = isUsual
    ? climatologicalSoil(normals!, { ...question, series: [] }, phaseMs, findPast, shouldStop)
    : null;
  const { all, frostKnown } = usual
    ? datesInClimatologicalYear(usual, asked, nDates, (some) =>
        datesInYears({ seed, viablePercent, crop, criteria, years: some, harvest: harvestOf(usual) }, shouldStop),
      )
    : inYears;
  const soil = usual ?? past!;
  const soilOfDates = soilCourse(usual ? yearsOfDates(usual, asked, nDates).slice(-1) : known, nDates);

  const season = usual ? harvestOf(usual) : ofPast;
  const isJudged = season !== null;
  const nYears = isUsual ? 0 : years.length;
  const graded = gradesOf(all, criteria);
  const { sureness, runs } = graded;
  const windows = windowRuns(runs);
  const setting = { crop, criteria, from, years: nYears, soilC: soilOfDates };
  const gradeOf = gradeOfDates(runs, nDates);
  const reasonsIn = (run: Run): Reason[] => reasonsOf(all, run, setting);
  const best = bestOf(question, all, graded, nYears, reasonsIn);
  // A climatological year has no late frosts, so it plants nothing out.
  const indoors = season && !usual ? indoorWays({ ...question, nDates }, season, soil, told) : [];
  const risks = pestsMet(question, { from, upBy: addDays(to, criteria.maxDays) });
  const risksOf = (run: Run): Risk[] =>
    met(risks, crop, { from: dated(run.from), upBy: addDays(dated(run.to), criteria.maxDays) });
  return {
    crop,
    years: isUsual
      ? { from: null, to: null, count: 0 }
      : { from: Math.min(...years), to: Math.max(...years), count: years.length },
    criteria: { judge: question.judge, ...criteria, standDays: countDays },
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
    closed: closedRuns(all, windows).map(({ why, ...run }) => ({
      from: dated(run.from),
      to: dated(run.to),
      why,
    })),
    spans: runs.map((run) => ({
      from: dated(run.from),
      to: dated(run.to),
      grade: run.grade,
      sureness: isUsual ? null : middleOf(sureness.slice(run.from, run.to + 1)),
      reasons: run.grade === 'good' ? [] : reasonsIn(run),
      harvest: run.grade === 'poor' ? null : harvestOfRun(all, run, from),
    })),
    ways: waysOf(directWays(windows, all, graded, best?.date ?? null, from), indoors),
    instead: insteadOf(runs, indoors, from),
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
    assumptions: [...soil.assumptions, ...assumptionsOf(question, nYears, isJudged), ...pestNotes(risks)],
    warnings: [...soil.warnings, ...warningsOf(question, nYears, frostKnown, isJudged), ...bedSafety(question.bed)],
  };
}

/** The middle one of some shares; NaN counts as 0. */
const middleOf = (shares: Float64Array): number => hazenQuantile(shares.map((share) => share || 0).sort(), 0.5);

function gradeOfDates(runs: readonly GradedRun[], nDates: number): Grade[] {
  const of = new Array<Grade>(nDates).fill('poor');
  for (const { from, to, grade } of runs) of.fill(grade, from, to + 1);
  return of;
}

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

/** Runs of dates outside the windows, each with the reason that most years give; dates good in most years have none. */
function closedRuns(dates: readonly DateInYears[], windows: readonly Run[]): (Run & { why: WhyClosed })[] {
  const isOpen = new Uint8Array(dates.length);
  for (const { from, to } of windows) isOpen.fill(1, from, to + 1);
  const runs: { from: number; to: number; why: WhyClosed }[] = [];
  dates.forEach(({ whyNot }, day) => {
    if (isOpen[day] || whyNot === null) return;
    const why = CLOSED_AS[whyNot];
    const last = runs.at(-1);
    if (last && last.to === day - 1 && last.why === why) last.to = day;
    else runs.push({ from: day, to: day, why });
  });
  return runs;
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

function refuseFewYears(count: number): never {
  throw new RequestError(
    'no-past-years',
    answerRefusal('no-past-years.windows', { years: count, minYears: MIN_YEARS }),
    [{ path: ['temperatures'], detail: answerRefusal('no-past-years.windows.field', { minYears: MIN_YEARS }) }],
  );
}

const assumptionsOf = (question: WindowQuestion, years: number, isJudged: boolean): WindowNote[] => [
  years === 0
    ? { code: 'normals', params: { about: 'windows' } }
    : { code: 'past-years', params: { about: 'windows', years } },
  ...(isJudged ? [harvestJudged(question, years)] : emergenceJudged(question)),
];

function harvestJudged({ crop, criteria }: WindowQuestion, years: number): WindowNote {
  const { patienceFactor, bedFactor } = crop.growth!;
  return {
    code: 'harvest-judged',
    params: {
      sharePercent: Math.round(100 * criteria.share),
      ifHeldPercent: Math.round(100 * criteria.shareIfHeld),
      standDays: Math.max(STAND_DAYS, criteria.maxDays),
      halfDays: Math.round((patienceFactor * criteria.maxDays) / bedFactor),
      years,
    },
  };
}

const emergenceJudged = ({ crop, criteria, judge, bed }: WindowQuestion): WindowNote[] => [
  ...(judge === 'emergence' ? [] : [{ code: 'harvest-not-judged', params: { why: whyNotJudged(crop, bed) } } as const]),
  {
    code: 'good-date',
    params: {
      sharePercent: Math.round(100 * criteria.share),
      ifHeldPercent: Math.round(100 * criteria.shareIfHeld),
      maxDays: criteria.maxDays,
      ...frostParams(crop),
    },
  },
];

/** Why no harvest is judged where it is asked for. */
function whyNotJudged({ growth }: Crop, { kind }: Bedding['bed']): 'crop' | 'indoors' | 'air' {
  if (!growth) return 'crop';
  return kind === 'indoors' ? 'indoors' : 'air';
}

/** Which frost makes a date a bad one, and how long after the first seedling. */
function frostParams(crop: Crop) {
  const exposure = frostExposure(crop);
  if (exposure === null) return { frost: 'not-counted', frostFreeDays: 0, frostC: 0 } as const;
  const { days: frostFreeDays, limitC: frostC } = exposure;
  if (crop.frost === 'half-hardy') return { frost: 'half-hardy', frostFreeDays, frostC } as const;
  const isSown = crop.maturity?.countedFrom === 'sowing';
  return { frost: isSown ? 'tender' : 'tender-planted-out', frostFreeDays, frostC } as const;
}

function warningsOf({ crop }: WindowQuestion, years: number, frostKnown: boolean, isJudged: boolean): WindowNote[] {
  const notes: WindowNote[] = [];
  if (years > 0 && years < THIN_YEARS) notes.push({ code: 'thin-years', params: { about: 'windows', years } });
  if (!frostKnown && (crop.frost === 'tender' || crop.frost === 'half-hardy')) {
    notes.push({ code: 'frost-unknown', params: { about: 'windows' } });
  }
  if (crop.frost === 'hardy' && !isJudged) notes.push({ code: 'frost-hardy', params: {} });
  return notes;
}
