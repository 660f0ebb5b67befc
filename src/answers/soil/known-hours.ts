import {
  addDays,
  DAY_MS,
  dateAt,
  dayOfYear,
  HOUR_MS,
  instantAt,
  type PlainDate,
  startOfDay,
  type Zone,
} from '../../basics/calendar.js';
import { bases } from '../../basics/series.js';
import type { Day } from '../../readings/daily/days.js';
import { meansWithin } from '../../readings/daily/means-within.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { longestJoinedMs } from '../../readings/time/step.js';
import { soilDayShape } from '../../seedbed/sun/day-curve.js';
import { dayLengthH } from '../../seedbed/sun/day-length.js';
import { type DayOnClock, hourlyFromDays } from '../../seedbed/sun/hourly-from-days.js';
import { sdOfPlusMinusK } from '../../seedbed/surface/estimate-sd.js';

/** The place of the seed for the calendar and the sun. */
export interface Site {
  readonly zone: Zone;
  readonly latitude: number | null;
  readonly longitude: number | null;
  /** Mean annual precipitation [mm]; null: not known. */
  readonly annualRainMm: number | null;
}

/** Hour by hour, what a series says. */
export interface KnownHours {
  /** Hourly means [°C]; NaN where the series says nothing. */
  readonly hourlyC: Float64Array;
  /** Provenance of each: codes of basics/series. */
  readonly basis: Uint8Array;
  /** Standard deviation of its day's mean [K]. */
  readonly sdK: Float64Array;
  /** 1 where the hour shows the swing of day and night, 0 where only a mean is known. */
  readonly swings: Uint8Array;
}

/** A step longer than this shows no night and no afternoon [ms]. */
export const COARSE_STEP_MS = 6 * HOUR_MS;
/** Daylight the day curve is made for [h]; polar days and nights are cut off here. */
const MIN_DAYLIGHT_H = 4;
const MAX_DAYLIGHT_H = 22;

/** How far a day's mean may be off where nobody says, by what it rests on [K]: a probe's own error, and our judgement of
 * the others from what the model and the drift err by. */
const SD_BY_BASIS_K: readonly number[] = bases.map(
  (basis) =>
    ({
      measured: 0.2,
      corrected: 1,
      modelled: 1.4,
      filled: 1.5,
      forecast: 1.5,
      'past-years': 2,
      drift: 2,
      repeated: 3,
      'climate-table': 2.5,
    })[basis],
);

/** Nobody is surer, and nobody less sure, of a day's mean [K]. */
const MIN_SD_K = 0.1;
const MAX_SD_K = 15;

/** The instants between which a series says anything. */
export function extentOf({ readings, days, zone }: ReadSeries): { firstMs: number; lastMs: number } {
  if (readings) return { firstMs: readings.atMs[0]!, lastMs: readings.atMs.at(-1)! };
  return { firstMs: startOfDay(days[0]!.date, zone), lastMs: startOfDay(addDays(days.at(-1)!.date, 1), zone) };
}

export const isCoarse = (series: ReadSeries): boolean => (series.usualStepMs ?? 0) > COARSE_STEP_MS;

/** A series laid out on whole hours from an instant on. */
export const knownHours = (series: ReadSeries, site: Site, startMs: number, nHours: number): KnownHours =>
  series.readings ? hoursOfReadings(series, startMs, nHours) : hoursOfDays(series, site, startMs, nHours);

function hoursOfReadings(series: ReadSeries, startMs: number, nHours: number): KnownHours {
  const readings = series.readings!;
  const edges = new Float64Array(nHours + 1);
  for (let hour = 0; hour <= nHours; hour++) edges[hour] = startMs + hour * HOUR_MS;
  const starts = edges.subarray(0, nHours);
  const ends = edges.subarray(1);
  const { meanC, coveredMs } = meansWithin(readings, starts, ends, longestJoinedMs(series.usualStepMs));
  const basis = new Uint8Array(nHours);
  let next = 0;
  for (let hour = 0; hour < nHours; hour++) {
    if (coveredMs[hour]! < HOUR_MS / 2) meanC[hour] = NaN;
    while (next < readings.atMs.length - 1 && readings.atMs[next]! < starts[hour]!) next++;
    basis[hour] = readings.basis[next]!;
  }
  const sdK = new Float64Array(nHours);
  for (let hour = 0; hour < nHours; hour++) sdK[hour] = SD_BY_BASIS_K[basis[hour]!]!;
  return { hourlyC: meanC, basis, sdK, swings: new Uint8Array(nHours).fill(isCoarse(series) ? 0 : 1) };
}

function hoursOfDays(series: ReadSeries, site: Site, startMs: number, nHours: number): KnownHours {
  const firstDate = dateAt(startMs - DAY_MS, site.zone);
  const lastDate = dateAt(startMs + (nHours + 24) * HOUR_MS, site.zone);
  const basis = new Uint8Array(nHours);
  const swings = new Uint8Array(nHours);
  const sdK = new Float64Array(nHours);
  const onClock: DayOnClock[] = [];
  for (let i = 0; i < series.days.length; i++) {
    const day = series.days[i]!;
    if (day.date < firstDate || day.date > lastDate) continue;
    const clock = dayOnClock(day, site, startMs);
    onClock.push(clock);
    const from = Math.max(0, Math.ceil(clock.startH - 0.5));
    const to = Math.max(0, Math.ceil(clock.endH - 0.5));
    basis.fill(series.dayBasis[i]!, from, to);
    const plusMinusK = series.dayPlusMinusK[i] ?? null;
    sdK.fill(
      plusMinusK === null
        ? SD_BY_BASIS_K[series.dayBasis[i]!]!
        : Math.min(MAX_SD_K, Math.max(MIN_SD_K, sdOfPlusMinusK(plusMinusK))),
      from,
      to,
    );
    if (day.min !== null) swings.fill(1, from, to);
  }
  return { hourlyC: hourlyFromDays(onClock, nHours, soilDayShape(series.probeDepthCm ?? 0)), basis, sdK, swings };
}

/** A day on the clock of hours since an instant. */
function dayOnClock({ date, min, mean, max }: Day, site: Site, startMs: number): DayOnClock {
  const { startH, endH, sunriseH, sunsetH } = sunOnClock(date, site, startMs);
  return { startH, endH, sunriseH, sunsetH, minC: min, meanC: mean, maxC: max };
}

/** When a date begins and ends, and when the sun rises and sets on it, in hours since an instant. */
export function sunOnClock(date: PlainDate, site: Site, startMs: number, ofYear = dayOfYear(date)) {
  const toHours = (ms: number): number => (ms - startMs) / HOUR_MS;
  const daylightH =
    site.latitude === null ? 12 : Math.min(MAX_DAYLIGHT_H, Math.max(MIN_DAYLIGHT_H, dayLengthH(site.latitude, ofYear)));
  const noonH = toHours(solarNoonMs(date, site));
  return {
    startH: toHours(startOfDay(date, site.zone)),
    endH: toHours(startOfDay(addDays(date, 1), site.zone)),
    sunriseH: noonH - daylightH / 2,
    sunsetH: noonH + daylightH / 2,
  };
}

/** When the sun stands highest, by the longitude (the equation of time, at most 17 minutes, is left out); else at 12:00. */
function solarNoonMs(date: PlainDate, { zone, longitude }: Site): number {
  const clockNoonMs = instantAt(date, '12:00', zone);
  if (longitude === null) return clockNoonMs;
  const clockAheadH = zone.offsetMs(clockNoonMs) / HOUR_MS - longitude / 15;
  return clockNoonMs + (clockAheadH - 24 * Math.round(clockAheadH / 24)) * HOUR_MS;
}
