import { addDays, daysBetween, HOUR_MS, type PlainDate } from '../../basics/calendar.js';
import type { ShouldStop } from '../../basics/stop.js';
import { type ReadSeries, readSeries } from '../../readings/read-series.js';
import { type PastSoil, pastSoil, yearsBefore } from '../ahead/past-soil.js';
import type { Bedding, QuestionBed } from '../question.js';

/** The model runs over so many past years of both beds: their difference hardly depends on the year. */
const COMPARED_YEARS = 2;
/** It runs in for so long before the first date [d]: soil at the depth of seed has forgotten its start by then. */
const RUN_IN_DAYS = 30;
/** The difference is that of so many days before and after a day [d]. */
const AROUND_DAYS = 7;
const YEAR_DAYS = 365.25;
const RECORD_YEAR_DAYS = 366;

/** Dates on which a sowing may be made, and until when the seed lies after the last of them. */
export interface SeedDays {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly lyingDays: number;
}

/**
 * A bed's past soil as it would have been with the bed changed, near some dates: by what the model makes of the beds in two recent years
 * of the same air. It costs about as much as a year of soil, where that of the whole record costs as much as its years.
 *
 * @param past    The bed's soil as it was, with its air.
 * @param bedding The bed as it is.
 * @param changes The beds as they would be.
 * @param days    The dates; on other days of the year nothing is changed.
 * @returns One for each change; none where the air is not known.
 */
export function soilOfChangedBeds(
  past: PastSoil,
  bedding: Bedding,
  changes: readonly QuestionBed[],
  days: SeedDays,
  shouldStop?: ShouldStop,
): PastSoil[] {
  const years = yearsCompared(past, bedding, days);
  if (years.length === 0) return [];
  const modelled = (bed: QuestionBed): PastSoil[] =>
    years.map((series) => pastSoil([series], { ...bedding, bed }, past.startMs, shouldStop));
  const asItIs = modelled(bedding.bed);
  return changes.map((bed) => warmedBy(past, differenceOf(past.startMs, asItIs, modelled(bed))));
}

/** The air around the dates in the last years that know all of it, each with the days to run in. */
function yearsCompared({ air }: PastSoil, { site }: Bedding, { from, to, lyingDays }: SeedDays): ReadSeries[] {
  if (!air) return [];
  const nDays = RUN_IN_DAYS + daysBetween(from, to) + 1 + lyingDays;
  const years: ReadSeries[] = [];
  for (let back = 1; years.length < COMPARED_YEARS; back++) {
    const first = addDays(yearsBefore(from, back), -RUN_IN_DAYS);
    const at = daysBetween(air.firstDate, first);
    if (at < 0) break;
    const daily = Array.from({ length: nDays }, (_, day) => ({
      date: addDays(first, day),
      min: air.minC[at + day] ?? NaN,
      max: air.maxC[at + day] ?? NaN,
    }));
    if (daily.some(({ min, max }) => Number.isNaN(min + max))) continue;
    years.push(readSeries({ medium: 'air', unit: 'C', daily }, site.zone, []));
  }
  return years;
}

/** Difference by day of the record's year and hour of its day [K]. Shape (366 x 24); 0 where nothing was compared. */
function differenceOf(startMs: number, before: readonly PastSoil[], after: readonly PastSoil[]): Float64Array {
  const sumsK = new Float64Array(RECORD_YEAR_DAYS * 24);
  const counts = new Uint16Array(RECORD_YEAR_DAYS);
  before.forEach((asItIs, year) => {
    const offsetH = Math.round((asItIs.startMs - startMs) / HOUR_MS);
    for (let hour = 24 * RUN_IN_DAYS; hour < asItIs.hourlyC.length; hour++) {
      const differenceK = after[year]!.hourlyC[hour]! - asItIs.hourlyC[hour]!;
      if (Number.isNaN(differenceK)) continue;
      const hourOfDay = modulo(offsetH + hour, 24);
      const day = dayOfRecordYear(Math.floor((offsetH + hour) / 24));
      sumsK[24 * day + hourOfDay]! += differenceK;
      if (hourOfDay === 0) counts[day]!++;
    }
  });
  return aroundEach(sumsK, counts);
}

function warmedBy(past: PastSoil, warmerK: Float64Array): PastSoil {
  const warmed = (hoursC: Float64Array, fromH: number): Float64Array => {
    const all = hoursC.slice();
    for (let day = Math.floor(fromH / 24); 24 * day < fromH + all.length; day++) {
      const ofYear = 24 * dayOfRecordYear(day);
      if (warmerK[ofYear] === 0) continue;
      const [first, last] = [Math.max(0, 24 * day - fromH), Math.min(all.length, 24 * day + 24 - fromH)];
      for (let hour = first; hour < last; hour++) all[hour]! += warmerK[ofYear + hour + fromH - 24 * day]!;
    }
    return all;
  };
  return { ...past, hourlyC: warmed(past.hourlyC, 0), comingC: warmed(past.comingC, past.hourlyC.length) };
}

const modulo = (value: number, of: number): number => ((value % of) + of) % of;
const dayOfRecordYear = (day: number): number => Math.floor(modulo(day, YEAR_DAYS));

/** Means of the days around each, hour by hour; 0 where none of them was compared. */
function aroundEach(sumsK: Float64Array, counts: Uint16Array): Float64Array {
  const days = counts.length;
  return sumsK.map((_, i) => {
    const [day, hour] = [Math.floor(i / 24), i % 24];
    if (counts[day] === 0) return 0;
    let [sum, n] = [0, 0];
    for (let near = day - AROUND_DAYS; near <= day + AROUND_DAYS; near++) {
      const at = modulo(near, days);
      sum += sumsK[24 * at + hour]!;
      n += counts[at]!;
    }
    return sum / n;
  });
}
