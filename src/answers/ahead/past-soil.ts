import { addDays, DAY_MS, dateAt, HOUR_MS, type PlainDate, startOfDay, type Zone } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import type { Harmonics } from '../../basics/numerics/harmonic-fit.js';
import { basisCode } from '../../basics/series.js';
import type { ShouldStop } from '../../basics/stop.js';
import { yearCourse } from '../../climate/year-course.js';
import { isDoubtfulMinimum } from '../../readings/checks/doubtful-minima.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { SOWN_DEPTHS_CM } from '../../seedbed/conduction/soil-from-air.js';
import { residualVarianceK2 } from '../../seedbed/surface/residual-model.js';
import type { Bedding } from '../question.js';
import { extentOf } from '../soil/known-hours.js';
import type { ModelledBed } from '../soil/modelled-bed.js';
import { tellableDepthCm } from '../soil/probe-at-seed.js';
import { type SoilRecord, soilRecords } from '../soil/soil-record.js';

/** Soil at the seed in all known years, each of which may come again. */
export interface PastSoil {
  readonly startMs: number;
  /** Hourly means up to the last hour that is not a forecast [°C]; NaN where nothing is known. Shape (n). */
  readonly hourlyC: Float64Array;
  /** The year's course of the daily mean, on days since the record's start; null: less than a year is known. */
  readonly course: Harmonics | null;
  /** Number of whole past years of air or soil. */
  readonly years: number;
  /** After the last measured hour, as the coming days make the soil [°C]. Shape (m). */
  readonly comingC: Float64Array;
  /** The air's extremes; null where no air is known. */
  readonly air: AirDays | null;
  /** True where it is one usual year again and again, made from normals. */
  readonly isUsual: boolean;
  /** Standard deviation of a day's mean without a probe [K]; null: measured soil. */
  readonly sdK: number | null;
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/** Daily extremes of the air from a date on [°C], coming days and filled ones among them. Shape (nDays) each. */
export interface AirDays {
  readonly firstDate: PlainDate;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
}

/** No odds are told from fewer past years; under five they are thin. */
export const MIN_YEARS = 3;
export const THIN_YEARS = 5;
/** Older years than these are not used: climates move. */
const MAX_YEARS = 30;
const YEAR_DAYS = 365.25;
/** Coming days after this are not looked at: no forecast reaches so far [ms]. */
const MAX_COMING_MS = 40 * DAY_MS;

/**
 * How many past years some series tell of, before a date: the days known, in years, of the one that knows most.
 * A cheap look, before the soil is worked out over them.
 */
export const yearsTold = (series: readonly ReadSeries[]): number =>
  Math.floor(
    Math.max(0, ...series.filter(({ origin }) => origin === 'measured').map(({ days }) => days.length)) /
      (YEAR_DAYS - DAYS_FORGIVEN),
  );
/** A year may lack so many days. */
const DAYS_FORGIVEN = 20;

/** What a question knows of a place's past. */
export interface AirOfYears {
  readonly series: readonly ReadSeries[];
  /** Typical years of air, made from a climate table; left out or null: the place's own years answer, or its normals. */
  readonly typicalAir?: ReadSeries | null | undefined;
}

/** Whether typical years stand for the place's own, which are too few. */
export const isTypical = ({ series, typicalAir }: AirOfYears): boolean =>
  typicalAir != null && yearsTold(series) < MIN_YEARS;

export const kindOfYears = (asked: AirOfYears): 'past-years' | 'typical-years' =>
  isTypical(asked) ? 'typical-years' : 'past-years';

/** The series that past years are told from. */
export const seriesOfYears = (asked: AirOfYears): readonly ReadSeries[] =>
  isTypical(asked) ? [asked.typicalAir!] : asked.series;

/** Finds the soil of past years: works it out, or remembers it. The bedding's depth says which of a bed's depths is given. */
export type FindPast = (
  series: readonly ReadSeries[],
  bedding: Bedding,
  phaseMs: number,
  shouldStop?: ShouldStop,
) => PastSoil;

/** A bed's past soil at several depths, from one run. */
export interface PastSoils {
  /** Rising [cm]. Shape (n). */
  readonly depthsCm: readonly number[];
  /** Shape (n). */
  readonly soils: readonly PastSoil[];
}

/** The depth at which past soil is found for a depth [cm]. */
export const pastDepthCm = tellableDepthCm;

/** The depths whose past soil is found in one run with that of a depth [cm]: all at which crops are sown, or that depth alone. */
export function depthsWith(depthCm: number): readonly number[] {
  const own = tellableDepthCm(depthCm);
  return SOWN_DEPTHS_CM.includes(own) ? SOWN_DEPTHS_CM : [own];
}

/** The one of a bed's depths that was asked for. */
export const pastAt = ({ depthsCm, soils }: PastSoils, depthCm: number): PastSoil =>
  soils[depthsCm.indexOf(tellableDepthCm(depthCm))]!;

/**
 * A bed's soil over all years that are used: measured, or worked out from what was measured.
 *
 * @param phaseMs Hours begin so long after each whole hour of this instant.
 * @param shouldStop Asked once a year of soil.
 */
export const pastSoil: FindPast = (series, { depthCm, ...place }, phaseMs, shouldStop) =>
  soilsAt([tellableDepthCm(depthCm)], series, place, phaseMs, shouldStop)[0]!;

/** The same at all depths that are found in one run with the bedding's: an hour costs little more at ten depths than at one. */
export function pastSoils(
  series: readonly ReadSeries[],
  { depthCm, ...place }: Bedding,
  phaseMs: number,
  shouldStop?: ShouldStop,
): PastSoils {
  const depthsCm = depthsWith(depthCm);
  return { depthsCm, soils: soilsAt(depthsCm, series, place, phaseMs, shouldStop) };
}

function soilsAt(
  depthsCm: readonly number[],
  series: readonly ReadSeries[],
  place: Omit<Bedding, 'depthCm'>,
  phaseMs: number,
  shouldStop?: ShouldStop,
): PastSoil[] {
  const extents = series.map(extentOf);
  // One coming day far off must not push the past years out of sight.
  const measured = series.filter(({ origin }) => origin === 'measured').map(extentOf);
  const measuredToMs = Math.max(...(measured.length > 0 ? measured : extents).map((one) => one.lastMs));
  const lastMs = Math.min(measuredToMs + MAX_COMING_MS, Math.max(...extents.map((one) => one.lastMs)));
  const { zone } = place.site;
  const earliest = addDays(dateAt(lastMs, zone), -Math.ceil((MAX_YEARS + 1) * YEAR_DAYS));
  const first = [earliest, dateAt(Math.min(...extents.map((one) => one.firstMs)), zone)].sort()[1]!;
  const fromMs = phaseMs + Math.floor((startOfDay(first, zone) - phaseMs) / HOUR_MS) * HOUR_MS;
  let air: AirDays | null = null;
  const take = (record: SoilRecord): PastSoil => {
    // The air is the same at all depths.
    air ??= record.model && extremesOf(record, record.model, zone);
    return pastOf(record, air);
  };
  return soilRecords(series, place, depthsCm, { phaseMs: fromMs, fromMs, toMs: lastMs }, take, shouldStop);
}

function pastOf({ startMs, hourlyC, basis, model, assumptions, warnings }: SoilRecord, air: AirDays | null): PastSoil {
  const forecast = basisCode('forecast');
  let end = hourlyC.length;
  while (end > 0 && (Number.isNaN(hourlyC[end - 1]!) || basis[end - 1]! >= forecast)) end--;
  const known = toSteps(hourlyC.subarray(0, end));
  forgetLongGaps(known, basis);
  const nDays = Math.floor(end / 24);
  const daily = new Float64Array(nDays);
  let daysKnown = 0;
  for (let day = 0; day < nDays; day++) {
    let sum = 0;
    for (let hour = 24 * day; hour < 24 * day + 24; hour++) sum += known[hour]!;
    daily[day] = sum / 24;
    if (!Number.isNaN(sum)) daysKnown++;
  }
  const days = Float64Array.from({ length: nDays }, (_, day) => day);
  return {
    startMs,
    hourlyC: known,
    course: daysKnown >= 365 ? yearCourse(days, daily) : null,
    years: Math.floor(daysKnown / (YEAR_DAYS - DAYS_FORGIVEN)),
    comingC: toSteps(comingOf(hourlyC, end)),
    air,
    isUsual: false,
    sdK: model && Math.sqrt(residualVarianceK2(model.surface.residuals, 0)),
    assumptions,
    warnings,
  };
}

/** Past soil is kept to so many steps a kelvin, as `foldPast` folds it, so that what is worked out from it is the same before
 * it was kept and after. */
export const STEPS_PER_K = 100;

/** Adding 0 leaves no -0 behind. */
const toSteps = (tempsC: Float64Array): Float64Array =>
  tempsC.map((tempC) => Math.round(tempC * STEPS_PER_K) / STEPS_PER_K + 0);

/** The coming days up to their first unknown hour. */
function comingOf(hourlyC: Float64Array, measuredToH: number): Float64Array {
  const rest = hourlyC.subarray(measuredToH);
  const gap = rest.findIndex(Number.isNaN);
  return rest.slice(0, gap < 0 ? rest.length : gap);
}

function extremesOf({ startMs, modelFromH }: SoilRecord, { air }: ModelledBed, zone: Zone): AirDays {
  const { days } = air.record;
  const firstMs = startMs + (modelFromH + (days[0]!.startH + days[0]!.endH) / 2) * HOUR_MS;
  return {
    firstDate: dateAt(firstMs, zone),
    minC: Float64Array.from(days, (_, day) => soundMinimum(days, day)),
    maxC: Float64Array.from(days, ({ maxC }) => maxC),
  };
}

/** A minimum, or where it hardly can be true the middle of those beside it: no frost is told from a failed reading. */
function soundMinimum(days: readonly { readonly minC: number; readonly maxC: number }[], day: number): number {
  const [before, own, after] = [days[day - 1], days[day]!, days[day + 1]];
  if (!before || !after) return own.minC;
  const isDoubtful = isDoubtfulMinimum([before.minC, own.minC, after.minC], [before.maxC, own.maxC, after.maxC]);
  return isDoubtful ? (before.minC + after.minC) / 2 : own.minC;
}

/** A year with a longer filled gap is left out [d]. */
const MAX_FILLED_DAYS = 14;

function forgetLongGaps(hourlyC: Float64Array, basis: Uint8Array): void {
  const filled = basisCode('filled');
  for (let fromH = 0; fromH < hourlyC.length; ) {
    let toH = fromH;
    while (toH < hourlyC.length && basis[toH] === filled) toH++;
    if (toH - fromH > 24 * MAX_FILLED_DAYS) hourlyC.fill(NaN, fromH, toH);
    fromH = toH + 1;
  }
}

/** A date some years earlier; 29 February becomes the 28th. */
export function yearsBefore(date: PlainDate, years: number): PlainDate {
  const year = Number(date.slice(0, 4)) - years;
  const isLeapDay = date.endsWith('02-29') && !(year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0));
  return `${year}${isLeapDay ? '-02-28' : date.slice(4)}` as PlainDate;
}
