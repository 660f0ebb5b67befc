import { addDays, dateAt, dayOfYear } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import type { ShouldStop } from '../../basics/stop.js';
import { climatologicalAirOf, type Normals } from '../../climate/normals.js';
import { dailyAirSeries } from '../../readings/daily-air-series.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { Extrapolation } from '../ahead/hours-ahead.js';
import { type FindPast, MIN_YEARS, type PastSoil, pastSoil, seriesOfYears, yearsTold } from '../ahead/past-soil.js';
import type { Bedding } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { extentOf, type Site } from '../soil/known-hours.js';

/** The part of a question about the time after its last value. */
export interface AskedExtrapolation extends Bedding {
  readonly series: readonly ReadSeries[];
  readonly typicalAir?: ReadSeries | null | undefined;
  readonly beyond: Extrapolation | null;
  readonly normals: Normals | null;
}

/** The assumption after the last value, with the past years or the climatological year that it needs. */
export interface AssumedExtrapolation {
  readonly beyond: Extrapolation;
  readonly past: PastSoil | null;
}

/** True if the question needs the soil of past years, which is seconds of work. */
export const needsPast = ({ series, typicalAir, beyond, bed, site, normals }: AskedExtrapolation): boolean =>
  (beyond === null || beyond === 'past-years') &&
  bed.kind !== 'indoors' &&
  (site.latitude !== null || series.every((one) => one.medium === 'soil')) &&
  (yearsTold(seriesOfYears({ series, typicalAir })) >= MIN_YEARS ||
    (normals !== null && site.latitude !== null && series.length > 0));

/**
 * What to suppose after the last value: as asked; else past years where there are three or more, else a usual year where
 * there are normals, else the season's drift where there is a latitude, else the last week.
 */
export function assumedExtrapolation(
  asked: AskedExtrapolation,
  phaseMs: number,
  findPast: FindPast = pastSoil,
  shouldStop?: ShouldStop,
): AssumedExtrapolation {
  const { beyond, normals, site } = asked;
  const series = seriesOfYears(asked);
  if (needsPast(asked)) {
    if (yearsTold(series) >= MIN_YEARS) {
      const past = findPast(series, asked, phaseMs, shouldStop);
      if (past.years >= MIN_YEARS) return { beyond: 'past-years', past };
    }
    if (normals)
      return { beyond: 'past-years', past: climatologicalSoil(normals, asked, phaseMs, findPast, shouldStop) };
  }
  if (beyond === 'past-years') refuseNoPastYears();
  return { beyond: beyond ?? (site.latitude === null ? 'repeat-last-week' : 'seasonal-drift'), past: null };
}

function refuseNoPastYears(): never {
  throw new RequestError('no-past-years', answerRefusal('no-past-years.beyond', { minYears: MIN_YEARS }), [
    { path: ['beyond'], detail: answerRefusal('no-past-years.beyond.field', { minYears: MIN_YEARS }) },
  ]);
}

/** Climatological air before the last value: a year of dates, after soil that has forgotten its start [d]. */
const CLIMATOLOGICAL_DAYS = 1400;

/** A bed's soil in a usual year, as the normals make it. */
export function climatologicalSoil(
  normals: Normals,
  { series, ...bedding }: Pick<AskedExtrapolation, 'series' | keyof Bedding>,
  phaseMs: number,
  findPast: FindPast = pastSoil,
  shouldStop?: ShouldStop,
): PastSoil {
  const lastMs = Math.max(phaseMs, ...series.map((one) => extentOf(one).lastMs));
  return {
    ...findPast([climatologicalSeries(normals, lastMs, bedding.site)], bedding, phaseMs, shouldStop),
    isUsual: true,
  };
}

/** Daily extremes of usual air up to an instant, as a series. */
export function climatologicalSeries(normals: Normals, lastMs: number, site: Site): ReadSeries {
  const last = dateAt(lastMs - 1, site.zone);
  const dates = Array.from({ length: CLIMATOLOGICAL_DAYS }, (_, i) => addDays(last, i + 1 - CLIMATOLOGICAL_DAYS));
  return dailyAirSeries(dates, climatologicalAirOf(normals, dates.map(dayOfYear)), site.zone);
}
