import { growthOfYear, type HarvestSeason } from '../../src/answers/windows/harvest-season.js';
import { yearsOfDates } from '../../src/answers/windows/years-of-dates.js';
import { daysBetween, type PlainDate } from '../../src/basics/calendar.js';
import type { DaySpan } from '../../src/garden/plan/batches.js';
import type { HarvestPeriod } from '../../src/garden/sowing/harvest-period.js';
import type { Crop } from '../../src/germination/crop.js';
import { germinationCurve, rateAt, shareAt } from '../../src/germination/curve/curve.js';
import { pastOf, type Station } from './stations.js';

/** The days of a season at a station in one year, as they were measured. Day 0 is its first date. */
export interface MeasuredYear {
  readonly year: number;
  /** Daily means of soil at 5 cm, and minima of the air [°C]. Shape (nDays). */
  readonly soilC: Float64Array;
  readonly minC: Float64Array;
  /** (min + max)/2 of the air, for growth. */
  readonly meanC: Float64Array;
}

/** Holes of so many days are bridged. */
const MAX_HOLE_DAYS = 3;

/** What was measured in each year on the dates of a season; years with longer holes are left out. */
export function measuredYears(station: Station, firstDate: PlainDate, nDays: number): MeasuredYear[] {
  const minC = Float64Array.from(station.bed.air.record.days, (day) => day.minC);
  const meanC = Float64Array.from(station.bed.air.record.days, (day) => (day.minC + day.maxC) / 2);
  const [first, last] = [station.years[0]!, station.years.at(-1)!];
  return Array.from({ length: last - first + 1 }, (_, i) => first + i).flatMap((year) => {
    const at = daysBetween(station.firstDate, `${year}${firstDate.slice(4)}` as PlainDate);
    if (at < 0 || at + nDays > station.nDays) return [];
    const soilC = bridged(station.soil5C.subarray(at, at + nDays));
    return soilC.some(Number.isNaN)
      ? []
      : [{ year, soilC, minC: minC.slice(at, at + nDays), meanC: meanC.slice(at, at + nDays) }];
  });
}

function bridged(values: Float64Array): Float64Array {
  const whole = values.slice();
  for (let from = 0; from < whole.length; from++) {
    if (!Number.isNaN(whole[from]!)) continue;
    let to = from;
    while (to < whole.length && Number.isNaN(whole[to]!)) to++;
    if (to - from > MAX_HOLE_DAYS) return whole.fill(NaN);
    const [before, after] = [whole[from - 1] ?? whole[to]!, whole[to] ?? whole[from - 1]!];
    for (let day = from; day < to; day++) whole[day] = before + ((after - before) * (day - from + 1)) / (to - from + 1);
  }
  return whole;
}

/** The years of a station as its air makes its soil, each on the dates of a season; nothing of it was measured in the ground. */
export function yearsFromAir(station: Station, from: PlainDate, nDays: number, maxDays: number) {
  const { zone, latitude } = station;
  const past = pastOf(station, station.bed.hourlyC[1]!);
  const site = { zone, latitude, longitude: null, annualRainMm: null };
  const criteria = { share: 0, shareIfHeld: 0, maxDays, sureness: 0 };
  return yearsOfDates(past, { site, from, time: '12:00', criteria }, nDays);
}

/** Seed that is not half up after so many times the days in which a sowing should be is lost. */
const LOST_AFTER = 2;
/** A row as thin as this, beside the chart's best, is no batch. */
const LEAST_STAND = 0.5;

/** When plants of a year as it was measured are picked that are up, or stand in the garden, from a day on; null: never. */
export function ripeIn({ minC, meanC }: MeasuredYear, harvest: HarvestSeason, { fromDays, toDays }: HarvestPeriod) {
  const none = new Float64Array();
  const fateOf = growthOfYear(harvest, { minC, meanC, minFromH: 0, hourlyC: none, sowH: none })!;
  const rule = harvest.growth.harvest;
  const endC = rule?.endFrostC ?? -Infinity;
  return (sownDay: number, upDay: number): DaySpan | null => {
    const { why, harvestDay } = fateOf(24 * sownDay, 24 * upDay);
    if (Number.isNaN(harvestDay) || (why !== null && why !== 'bolts' && why !== 'over-winter')) return null;
    let toDay = harvestDay;
    while (toDay < harvestDay + toDays - fromDays - 1 && toDay + 1 < minC.length && minC[toDay + 1]! > endC) toDay++;
    return { fromDay: harvestDay, toDay };
  };
}

/**
 * When sowings made at noon of each day are picked in a year as it was measured; null: never. No part of the service: half
 * is up when the chart's rates at each day's measured mean add up to one, and it makes a row where the chart's percents on
 * those days, each by its part in the progress, come to half of the best. Growth is that of the year's measured air.
 */
export function pickedIn(
  measured: MeasuredYear,
  crop: Crop,
  ripe: (sownDay: number, upDay: number) => DaySpan | null,
): (DaySpan | null)[] {
  const { soilC } = measured;
  const curve = germinationCurve(crop.rows, crop.soil?.maximumC ?? null);
  const rates = Float64Array.from(soilC, (tempC) => rateAt(curve, tempC));
  const shares = Float64Array.from(soilC, (tempC) => shareAt(curve, tempC));
  return Array.from(soilC, (_, sown) => {
    let [progress, stand, day] = [0, 0, sown];
    for (; progress < 1; day++) {
      if (day >= soilC.length || day - sown > LOST_AFTER * crop.maxDays) return null;
      const step = Math.min(1 - progress, rates[day]! * (day === sown ? 0.5 : 1));
      progress += step;
      stand += step * shares[day]!;
    }
    const half = day - 1;
    return stand < LEAST_STAND ? null : ripe(sown, half);
  });
}

/** Days of the calendar in so many equal steps from one to another. */
export const equalSteps = (from: number, to: number, n: number): number[] =>
  Array.from({ length: n }, (_, i) => Math.round(n === 1 ? (from + to) / 2 : from + ((to - from) * i) / (n - 1)));

const touches = (span: DaySpan | null, week: DaySpan): boolean =>
  span !== null && span.fromDay <= week.toDay && span.toDay >= week.fromDay;

/** In how many of the weeks something is ripe. */
export const ripeWeeks = (pickings: readonly (DaySpan | null)[], weeks: readonly DaySpan[]): number =>
  weeks.filter((week) => pickings.some((span) => touches(span, week))).length;

/** In how many of the weeks the number wanted is ripe: each batch holds enough for so many, what is over first is picked first. */
export function suppliedWeeks(
  pickings: readonly (DaySpan | null)[],
  weeks: readonly DaySpan[],
  batchWeeks: number,
): number {
  const left = pickings.flatMap((span) => (span ? [{ span, weeks: batchWeeks }] : []));
  left.sort((a, b) => a.span.toDay - b.span.toDay);
  return weeks.filter((week) => {
    const batch = left.find((one) => one.weeks > 0 && touches(one.span, week));
    if (batch) batch.weeks--;
    return batch !== undefined;
  }).length;
}
