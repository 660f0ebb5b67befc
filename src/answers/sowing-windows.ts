import { addDays, dateAt, daysBetween, HOUR_MS, instantAt, type PlainDate, startOfDay } from '../basics/calendar.js';
import { type Note, notUnderstood, RequestError } from '../basics/errors.js';
import { hazenQuantile } from '../basics/hazen-quantile.js';
import type { Caution, Crop } from '../germination/crop.js';
import type { ReadSeries } from '../readings/read-series.js';
import type { SeriesReport } from '../readings/report.js';
import { type DateInYears, datesInYears, type WhyNot, type WindowCriteria } from './dates-in-years.js';
import { extentOf } from './known-hours.js';
import type { Bedding, Lot } from './question.js';
import { seedOf } from './seed-of.js';
import { soilRecord } from './soil-record.js';
import { centredMean, type Run, smoothed, sureRuns } from './sureness.js';

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
}

export interface Quantiles {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export interface SowingWindow {
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** The least in it. */
  readonly sureness: number;
  readonly halfDays: Quantiles | null;
  readonly stand: Quantiles | null;
}

export interface WindowDate {
  readonly date: PlainDate;
  readonly sureness: number;
  readonly firstDays: Quantiles | null;
  readonly halfDays: Quantiles | null;
  readonly mostDays: Quantiles | null;
  readonly stand: Quantiles | null;
  readonly ifHeldAreLost: Quantiles | null;
}

export interface SowingWindows {
  readonly crop: Crop;
  readonly years: { readonly from: number; readonly to: number; readonly count: number };
  readonly criteria: WindowCriteria;
  readonly best: { readonly date: PlainDate; readonly why: string } | null;
  readonly windows: readonly SowingWindow[];
  readonly closed: readonly { readonly from: PlainDate; readonly to: PlainDate; readonly why: WhyNot }[];
  readonly dates: readonly WindowDate[];
  readonly cautions: readonly Caution[];
  readonly understood: readonly SeriesReport[];
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/** No odds are told from fewer past years; under five they are thin. */
const FEWEST_YEARS = 3;
const THIN_YEARS = 5;
/** The best date has two sure weeks around it. */
const AROUND_DAYS = 15;
const SURE_AROUND = 0.9;

/** When to sow: the dates of a season, judged by what each would have done in past years. */
export function sowingWindows(question: WindowQuestion): SowingWindows {
  const { series, site, crop, criteria, from, to, time } = question;
  const nDates = daysBetween(from, to) + 1;
  refuseDates(question, nDates);
  const extents = series.map(extentOf);
  const firstMs = Math.min(...extents.map((one) => one.firstMs));
  const lastMs = Math.max(...extents.map((one) => one.lastMs));
  const firstDate = dateAt(firstMs, site.zone);
  const startMs = startOfDay(firstDate, site.zone);
  const soil = soilRecord(series, question, { phaseMs: startMs, fromMs: startMs, toMs: lastMs });

  const shifts = yearsBack(from, to, firstDate, dateAt(lastMs - 1, site.zone), criteria.maxDays);
  const sowH = shifts.map((years) =>
    Float64Array.from({ length: nDates }, (_, day) =>
      Math.round((instantAt(yearsBefore(addDays(from, day), years), time, site.zone) - soil.startMs) / HOUR_MS),
    ),
  );
  const seed = seedOf(question);
  const viablePercent = question.lot?.germinationPercent ?? seed.curve.bestPercent;
  const dates = datesInYears({ seed, viablePercent, crop, criteria, soil, sowH });
  const years = dates.years
    .map((isKnown, i) => (isKnown ? Number(from.slice(0, 4)) - shifts[i]! : NaN))
    .filter(Number.isFinite);
  if (years.length < FEWEST_YEARS) refuseFewYears(years.length);

  const sureness = smoothed(dates.all.map(({ good }) => good));
  const windows = sureRuns(sureness, criteria.sureness);
  const dated = (day: number): PlainDate => addDays(from, day);
  return {
    crop,
    years: { from: Math.min(...years), to: Math.max(...years), count: years.length },
    criteria,
    best: bestOf(question, dates.all, sureness, windows, years.length),
    windows: windows.map((run) => ({
      from: dated(run.from),
      to: dated(run.to),
      sureness: Math.min(...sureness.subarray(run.from, run.to + 1)),
      halfDays: pooled(dates.all, run, ({ halfDays }) => halfDays),
      stand: pooled(dates.all, run, ({ stand }) => stand),
    })),
    closed: closedRuns(dates.all, windows).map(({ why, ...run }) => ({
      from: dated(run.from),
      to: dated(run.to),
      why,
    })),
    dates: dates.all.map((one, day) => ({
      date: dated(day),
      sureness: Number.isNaN(sureness[day]!) ? 0 : sureness[day]!,
      firstDays: quantilesOf(one.firstDays),
      halfDays: quantilesOf(one.halfDays),
      mostDays: quantilesOf(one.mostDays),
      stand: quantilesOf(one.stand),
      ifHeldAreLost: quantilesOf(one.ifHeldAreLost),
    })),
    cautions: crop.cautions,
    understood: question.understood,
    assumptions: [...soil.assumptions, ...assumptionsOf(question, years.length)],
    warnings: [...soil.warnings, ...warningsOf(question, years.length, dates.frostKnown)],
  };
}

/** A date some years earlier; 29 February becomes the 28th. */
function yearsBefore(date: PlainDate, years: number): PlainDate {
  const year = Number(date.slice(0, 4)) - years;
  const isLeapDay = date.endsWith('02-29') && !(year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0));
  return `${year}${isLeapDay ? '-02-28' : date.slice(4)}` as PlainDate;
}

/** How many years back the season was, wherever the record holds some of its dates; the earliest year first. */
function yearsBack(
  from: PlainDate,
  to: PlainDate,
  firstDate: PlainDate,
  lastDate: PlainDate,
  maxDays: number,
): number[] {
  const shifts: number[] = [];
  const most = Number(to.slice(0, 4)) - Number(firstDate.slice(0, 4)) + 1;
  for (let years = most; years >= 0; years--) {
    const isWithin = yearsBefore(to, years) > firstDate && addDays(yearsBefore(from, years), maxDays) <= lastDate;
    if (isWithin) shifts.push(years);
  }
  return shifts;
}

function quantilesOf(values: readonly number[]): Quantiles | null {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  if (sorted.length === 0) return null;
  return { p10: hazenQuantile(sorted, 0.1), p50: hazenQuantile(sorted, 0.5), p90: hazenQuantile(sorted, 0.9) };
}

const pooled = (
  dates: readonly DateInYears[],
  { from, to }: Run,
  what: (date: DateInYears) => readonly number[],
): Quantiles | null => quantilesOf(dates.slice(from, to + 1).flatMap(what));

/** The earliest date in a window with two sure weeks around it, else the surest; or the surest of all. */
function bestOf(
  { from, prefer, criteria }: WindowQuestion,
  dates: readonly DateInYears[],
  sureness: Float64Array,
  windows: readonly Run[],
  years: number,
): SowingWindows['best'] {
  const around = centredMean(sureness, AROUND_DAYS);
  const highest = (values: Float64Array): number =>
    values.reduce((best, value, day) => (value > (values[best] ?? -1) + 1e-12 ? day : best), -1);
  const sure = windows.flatMap((run) => {
    for (let day = run.from; day <= run.to; day++) if (around[day]! >= SURE_AROUND) return [day];
    return [];
  });
  const isEarliest = prefer === 'earliest' && sure.length > 0;
  const day = isEarliest ? sure[0]! : highest(prefer === 'surest' ? sureness : around);
  if (day < 0 || !(sureness[day]! > 0)) return null;
  const half = quantilesOf(dates[day]!.halfDays);
  const held = Math.round(sureness[day]! * years);
  const how = isEarliest ? 'the earliest date with two sure weeks around it' : 'the surest date';
  return {
    date: addDays(from, day),
    why: `It is ${how}: sown then, ${Math.round(100 * criteria.share)} % was up within ${criteria.maxDays} days in about ${held} of ${years} years${
      half ? `; half was up in ${half.p50.toFixed(0)} days (${half.p10.toFixed(0)} to ${half.p90.toFixed(0)})` : ''
    }.`,
  };
}

/** Runs of dates outside the windows, each with the reason that most years give; dates good in most years have none. */
function closedRuns(dates: readonly DateInYears[], windows: readonly Run[]): (Run & { why: WhyNot })[] {
  const isOpen = new Uint8Array(dates.length);
  for (const { from, to } of windows) isOpen.fill(1, from, to + 1);
  const runs: { from: number; to: number; why: WhyNot }[] = [];
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
    throw notUnderstood([{ path: ['to'], detail: `must not be before from; it was ${to}, and from is ${from}` }]);
  if (nDates > 366) throw notUnderstood([{ path: ['to'], detail: 'must be within a year of from' }]);
  if (maxDays > 366) throw notUnderstood([{ path: ['maxDays'], detail: 'must be at most 366' }]);
}

function refuseFewYears(count: number): never {
  throw new RequestError(
    'no-past-years',
    `${count === 0 ? 'No past year' : count === 1 ? 'One past year' : `${count} past years`} of these dates can be told from the temperatures sent; odds need ${FEWEST_YEARS}. Send daily minima and maxima of the air of several years.`,
    [{ path: ['temperatures'], detail: `Must hold these dates in ${FEWEST_YEARS} years or more.` }],
  );
}

function assumptionsOf({ crop, criteria }: WindowQuestion, years: number): Note[] {
  return [
    {
      code: 'past-years',
      text: `Each date is judged by what it would have done in ${years} past years, and counted as one of them more or less alike: rain, pests and whether the ground can be worked are left out.`,
    },
    {
      code: 'good-date',
      text: `A date is good in a year if ${Math.round(100 * criteria.share)} % of what the lot can give is up within ${criteria.maxDays} days, ${Math.round(100 * criteria.shareIfHeld)} % even without seed held too long by heat or cold${frostWords(crop)}.`,
    },
  ];
}

function frostWords({ frost, maturity }: Crop): string {
  if (frost === 'tender') {
    return maturity && maturity.countedFrom === 'sowing'
      ? `, and no frost comes within ${Math.max(30, maturity.fromDays)} days of the first seedling`
      : ', and no frost comes within 30 days of the first seedling; later frost is not counted, as its harvest is not counted from the sowing';
  }
  return frost === 'half-hardy' ? ', and it freezes no harder than -2 °C within 30 days of the first seedling' : '';
}

function warningsOf({ crop }: WindowQuestion, years: number, frostKnown: boolean): Note[] {
  const notes: Note[] = [];
  if (years < THIN_YEARS) {
    notes.push({
      code: 'thin-years',
      text: `${years} years are few: the ends of the windows may be off by a week.`,
    });
  }
  if (!frostKnown && (crop.frost === 'tender' || crop.frost === 'half-hardy')) {
    notes.push({
      code: 'frost-unknown',
      text: 'Without air temperatures frost cannot be told from soil: the windows do not heed it. Send the air’s daily minima.',
    });
  }
  if (crop.frost === 'hardy') {
    notes.push({
      code: 'frost-hardy',
      text: 'Frost is not counted against a hardy crop; young seedlings can still suffer in a hard one.',
    });
  }
  return notes;
}
