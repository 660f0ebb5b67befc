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
import { type FindPast, MIN_YEARS, pastSoil, THIN_YEARS, yearsTold } from '../ahead/past-soil.js';
import { climatologicalSoil } from '../forecast/extrapolation.js';
import { bedSafety } from '../forecast/safety-notes.js';
import { seedOf } from '../forecast/seed-of.js';
import type { Bedding, Lot } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { type DateInYears, datesInYears, type WhyNotInYear, type WindowCriteria } from './dates-in-years.js';
import { met, pestNotes, pestsMet } from './risks-met.js';
import { bestDay, type Run, smoothed, sureRuns } from './sureness.js';
import type { BestDateWhy, WindowNote } from './window-facts.js';
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
  readonly normals: Normals | null;
}

export interface Quantiles {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export interface SowingWindow {
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** The least in it; null where a usual year stands for all. */
  readonly sureness: number | null;
  readonly halfDays: Quantiles | null;
  readonly stand: Quantiles | null;
  /** What threatens rows sown in it. */
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
}

export interface SowingWindows {
  readonly crop: Crop;
  /** null, null and 0 where a usual year stands for all. */
  readonly years: { readonly from: number | null; readonly to: number | null; readonly count: number };
  readonly criteria: WindowCriteria;
  readonly best: { readonly date: PlainDate; readonly why: BestDateWhy } | null;
  readonly windows: readonly SowingWindow[];
  readonly closed: readonly { readonly from: PlainDate; readonly to: PlainDate; readonly why: WhyNotInYear }[];
  readonly dates: readonly WindowDate[];
  readonly cautions: readonly Caution[];
  /** What threatens rows sown between the first date and the last. */
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
  const known = past ? yearsOfDates(past, question, nDates) : [];
  const seed = seedOf(question);
  const viablePercent = question.lot?.germinationPercent ?? seed.curve.bestPercent;
  const inYears = datesInYears({ seed, viablePercent, crop, criteria, years: known }, shouldStop);
  const years = known.filter((_, i) => inYears.years[i]).map(({ year }) => year);
  const isUsual = years.length < MIN_YEARS;
  if (isUsual && !normals) refuseFewYears(years.length);
  // Usual years lie before the dates asked, whenever the last value came.
  const usual = isUsual
    ? climatologicalSoil(normals!, { ...question, series: [] }, phaseMs, findPast, shouldStop)
    : null;
  const { all, frostKnown } = usual
    ? datesInClimatologicalYear(usual, question, nDates, (some) =>
        datesInYears({ seed, viablePercent, crop, criteria, years: some }, shouldStop),
      )
    : inYears;
  const soil = usual ?? past!;

  const sureness = smoothed(all.map(({ good }) => good));
  const windows = sureRuns(sureness, criteria.sureness);
  const dated = (day: number): PlainDate => addDays(from, day);
  const risks = pestsMet(question, { from, upBy: addDays(to, criteria.maxDays) });
  const risksOf = (run: Run): Risk[] =>
    met(risks, crop, { from: dated(run.from), upBy: addDays(dated(run.to), criteria.maxDays) });
  return {
    crop,
    years: isUsual
      ? { from: null, to: null, count: 0 }
      : { from: Math.min(...years), to: Math.max(...years), count: years.length },
    criteria,
    best: bestOf(question, all, sureness, windows, isUsual ? 0 : years.length),
    windows: windows.map((run) => ({
      from: dated(run.from),
      to: dated(run.to),
      sureness: isUsual ? null : Math.min(...sureness.subarray(run.from, run.to + 1)),
      halfDays: pooled(all, run, ({ halfDays }) => halfDays),
      stand: pooled(all, run, ({ stand }) => stand),
      risks: risksOf(run),
    })),
    closed: closedRuns(all, windows).map(({ why, ...run }) => ({
      from: dated(run.from),
      to: dated(run.to),
      why,
    })),
    dates: all.map((one, day) => ({
      date: dated(day),
      sureness: isUsual ? null : Number.isNaN(sureness[day]!) ? 0 : sureness[day]!,
      firstDays: quantilesOf(one.firstDays),
      halfDays: quantilesOf(one.halfDays),
      mostDays: quantilesOf(one.mostDays),
      stand: quantilesOf(one.stand),
      ifHeldAreLost: quantilesOf(one.ifHeldAreLost),
    })),
    cautions: crop.cautions,
    risks,
    understood: question.understood,
    assumptions: [...soil.assumptions, ...assumptionsOf(question, isUsual ? 0 : years.length), ...pestNotes(risks)],
    warnings: [
      ...soil.warnings,
      ...warningsOf(question, isUsual ? 0 : years.length, frostKnown),
      ...bedSafety(question.bed),
    ],
  };
}

/** @param sorted Rising. */
function quantilesOf(sorted: Float64Array): Quantiles | null {
  if (sorted.length === 0) return null;
  return { p10: hazenQuantile(sorted, 0.1), p50: hazenQuantile(sorted, 0.5), p90: hazenQuantile(sorted, 0.9) };
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

/** The best date, and why. */
function bestOf(
  { from, prefer, criteria }: WindowQuestion,
  dates: readonly DateInYears[],
  sureness: Float64Array,
  windows: readonly Run[],
  years: number,
): SowingWindows['best'] {
  const best = bestDay(sureness, windows, prefer);
  if (!best) return null;
  const { day, isEarliest } = best;
  const half = quantilesOf(dates[day]!.halfDays);
  return {
    date: addDays(from, day),
    why: {
      code: 'why.best-date',
      params: {
        isEarliest: isEarliest ? 'yes' : 'no',
        sharePercent: Math.round(100 * criteria.share),
        maxDays: criteria.maxDays,
        inYears: Math.round(sureness[day]! * years),
        ofYears: years,
        halfDays: half && Math.round(half.p50),
        halfFromDays: half && Math.round(half.p10),
        halfToDays: half && Math.round(half.p90),
      },
    },
  };
}

/** Runs of dates outside the windows, each with the reason that most years give; dates good in most years have none. */
function closedRuns(dates: readonly DateInYears[], windows: readonly Run[]): (Run & { why: WhyNotInYear })[] {
  const isOpen = new Uint8Array(dates.length);
  for (const { from, to } of windows) isOpen.fill(1, from, to + 1);
  const runs: { from: number; to: number; why: WhyNotInYear }[] = [];
  dates.forEach(({ whyNot }, day) => {
    if (isOpen[day] || whyNot === null) return;
    const last = runs.at(-1);
    if (last && last.to === day - 1 && last.why === whyNot) last.to = day;
    else runs.push({ from: day, to: day, why: whyNot });
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

const assumptionsOf = ({ crop, criteria }: WindowQuestion, years: number): WindowNote[] => [
  years === 0
    ? { code: 'normals', params: { about: 'windows' } }
    : { code: 'past-years', params: { about: 'windows', years } },
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

/** Which frost makes a date a bad one, and how long after the first seedling. */
function frostParams(crop: Crop) {
  const exposure = frostExposure(crop);
  if (exposure === null) return { frost: 'not-counted', frostFreeDays: 0, frostC: 0 } as const;
  const { days: frostFreeDays, limitC: frostC } = exposure;
  if (crop.frost === 'half-hardy') return { frost: 'half-hardy', frostFreeDays, frostC } as const;
  const isSown = crop.maturity?.countedFrom === 'sowing';
  return { frost: isSown ? 'tender' : 'tender-planted-out', frostFreeDays, frostC } as const;
}

function warningsOf({ crop }: WindowQuestion, years: number, frostKnown: boolean): WindowNote[] {
  const notes: WindowNote[] = [];
  if (years > 0 && years < THIN_YEARS) notes.push({ code: 'thin-years', params: { about: 'windows', years } });
  if (!frostKnown && (crop.frost === 'tender' || crop.frost === 'half-hardy')) {
    notes.push({ code: 'frost-unknown', params: { about: 'windows' } });
  }
  if (crop.frost === 'hardy') notes.push({ code: 'frost-hardy', params: {} });
  return notes;
}
