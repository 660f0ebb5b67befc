import {
  addDays,
  DAY_MS,
  dateAt,
  dayOfYear,
  daysBetween,
  HOUR_MS,
  type PlainDate,
  startOfDay,
} from '../../basics/calendar.js';
import { basisCode } from '../../basics/series.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { AIR_DAY_SHAPE } from '../../seedbed/sun/day-curve.js';
import { fillDays } from '../../seedbed/sun/fill-days.js';
import { hourlyFromDays } from '../../seedbed/sun/hourly-from-days.js';
import { extraterrestrialMJ } from '../../seedbed/sun/sun.js';
import { type ClimateNumbers, climateNumbers } from '../../seedbed/surface/climate-numbers.js';
import type { AirDayAbove, AirRecord } from '../../seedbed/surface/surface-forcing.js';
import { CLIMATOLOGICAL_RANGE_K } from '../ahead/climatological-air.js';
import { extentOf, isCoarse, knownHours, type Site, sunOnClock } from './known-hours.js';

/** The air above a bed on whole hours, and what is known of the place's own climate. */
export interface AirAboveBed {
  /** The clock's first hour. */
  readonly startMs: number;
  readonly record: AirRecord;
  /** Provenance of the soil under each hour: codes of basics/series. */
  readonly basis: Uint8Array;
  /** 1 where the hour's day is known by minimum and maximum, or by the hour. */
  readonly swings: Uint8Array;
  /** Day of the year of each of the record's days. */
  readonly daysOfYear: Float64Array;
  /** null: less than a year of whole days is known. */
  readonly climate: ClimateNumbers | null;
  /** 0 where a day of the record was filled. */
  readonly daysKnown: Uint8Array;
}

/** The stretch of time for which the soil is wanted. */
export interface WantedAir {
  /** Hours begin so long after each whole hour of this instant. */
  readonly phaseMs: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/** Air so long before the first hour wanted still shapes the soil at seed depth [ms]; earlier air tells of the climate only. */
const MEMORY_MS = 400 * DAY_MS;

/**
 * Lays air series out over the place's days and hours. Gaps are filled, and their hours marked.
 *
 * @param series Air, the surest last: where two tell of a day, the later one stands.
 * @param site   The place; its latitude is known.
 * @param wanted Which hours matter.
 * @returns The air; or null where none of it lies within the time wanted or its memory.
 */
export function airAboveBed(series: readonly ReadSeries[], site: Site, wanted: WantedAir): AirAboveBed | null {
  const table = dayTable(series);
  const lastMs = Math.min(wanted.toMs, Math.max(...series.map((one) => extentOf(one).lastMs)));
  const { phaseMs } = wanted;
  const firstMs = Math.max(
    startOfDay(firstJoinedDate(table, dateAt(wanted.fromMs, site.zone)), site.zone),
    wanted.fromMs - MEMORY_MS,
  );
  const startMs = phaseMs + Math.ceil((firstMs - phaseMs) / HOUR_MS) * HOUR_MS;
  const nHours = Math.floor((lastMs - startMs) / HOUR_MS);
  if (nHours < 1 || table.minC.every(Number.isNaN)) return null;

  const climate = climateNumbers(table, site.latitude!, site.annualRainMm);
  const low = fillDays(table.dayOfYear, table.minC);
  const high = fillDays(table.dayOfYear, table.maxC);
  const firstDay = Math.max(0, daysBetween(table.firstDate, dateAt(startMs, site.zone)));
  const lastDay = daysBetween(table.firstDate, dateAt(startMs + nHours * HOUR_MS - 1, site.zone));
  const days: AirDayAbove[] = [];
  const daysOfYear: number[] = [];
  const basis = new Uint8Array(nHours).fill(basisCode('filled'));
  const swings = new Uint8Array(nHours);
  for (let day = firstDay, date = addDays(table.firstDate, firstDay); day <= lastDay; day++, date = addDays(date, 1)) {
    // A last day that is cut short may lie beyond the table, so the day before replaces it.
    const known = Math.min(day, low.length - 1);
    const ofYear = dayOfYear(date);
    const sun = sunOnClock(date, site, startMs, ofYear);
    daysOfYear.push(ofYear);
    days.push({
      startH: sun.startH,
      endH: sun.endH,
      sunriseH: sun.sunriseH,
      sunsetH: sun.sunsetH,
      minC: low[known]!,
      maxC: Math.max(low[known]!, high[known]!),
      extraterrestrialMJ: extraterrestrialMJ(site.latitude!, ofYear),
    });
    if (!(table.basis[day]! < UNKNOWN)) continue;
    const from = Math.max(0, Math.ceil(sun.startH - 0.5));
    const to = Math.max(0, Math.ceil(sun.endH - 0.5));
    basis.fill(soilBasis(table.basis[day]!), from, to);
    swings.fill(table.swings[day]!, from, to);
  }
  const hourlyC = hourlyFromDays(days, nHours, AIR_DAY_SHAPE);
  for (const one of series) {
    if (!one.readings || isCoarse(one)) continue;
    const known = knownHours(one, site, startMs, nHours);
    for (let hour = 0; hour < nHours; hour++) {
      if (Number.isNaN(known.hourlyC[hour])) continue;
      hourlyC[hour] = known.hourlyC[hour]!;
      basis[hour] = soilBasis(known.basis[hour]!);
      swings[hour] = 1;
    }
  }
  const daysKnown = Uint8Array.from(days, (_, i) => Number((table.basis[firstDay + i] ?? UNKNOWN) < UNKNOWN));
  if (!daysKnown.includes(1)) return null;
  return {
    startMs,
    record: { hourlyC, days },
    basis,
    swings,
    daysOfYear: Float64Array.from(daysOfYear),
    climate,
    daysKnown,
  };
}

/** Over a longer hole in the air nothing is followed: the soil begins anew after it [d]. */
const MAX_FOLLOWED_HOLE = 30;

/** The first date from which on the air is known up to another, but for shorter holes. */
function firstJoinedDate({ firstDate, basis }: DayTable, upTo: PlainDate): PlainDate {
  const last = Math.min(basis.length - 1, daysBetween(firstDate, upTo));
  let first = last;
  for (let day = last; day >= 0 && first - day <= MAX_FOLLOWED_HOLE + 1; day--) {
    if (basis[day]! < UNKNOWN) first = day;
  }
  return first < 0 || !(basis[first]! < UNKNOWN) ? firstDate : addDays(firstDate, first);
}

/** Daily extremes from the first date known to the last, NaN where a day is missing. */
interface DayTable {
  readonly firstDate: PlainDate;
  readonly dayOfYear: Float64Array;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly basis: Uint8Array;
  readonly swings: Uint8Array;
}
const UNKNOWN = 255;

function dayTable(series: readonly ReadSeries[]): DayTable {
  const [firstDate, lastDate] = [
    series.map(({ days }) => days[0]!.date).sort()[0]!,
    series
      .map(({ days }) => days.at(-1)!.date)
      .sort()
      .at(-1)!,
  ];
  const n = daysBetween(firstDate, lastDate) + 1;
  const minC = new Float64Array(n).fill(NaN);
  const maxC = new Float64Array(n).fill(NaN);
  const basis = new Uint8Array(n).fill(UNKNOWN);
  const swings = new Uint8Array(n);
  const meansC = new Float64Array(n).fill(NaN);
  for (const one of series) {
    one.days.forEach((day, i) => {
      const at = daysBetween(firstDate, day.date);
      // A day of which only a part was read stands only where nothing else is known of it.
      if (!day.complete && (basis[at]! < UNKNOWN || !isOnly(one))) return;
      basis[at] = one.dayBasis[i] ?? basisCode(one.origin);
      const isWide = day.min !== null && day.max !== null && !isCoarse(one);
      minC[at] = isWide ? day.min : NaN;
      maxC[at] = isWide ? day.max : NaN;
      meansC[at] = isWide ? NaN : (day.mean ?? NaN);
      swings[at] = isWide ? 1 : 0;
    });
  }
  const halfRange = climatologicalRangeK(minC, maxC) / 2;
  meansC.forEach((mean, at) => {
    if (Number.isNaN(mean)) return;
    minC[at] = mean - halfRange;
    maxC[at] = mean + halfRange;
  });
  const days = Float64Array.from({ length: n }, (_, i) => dayOfYear(addDays(firstDate, i)));
  return { firstDate, dayOfYear: days, minC, maxC, basis, swings };
}

/** True if a series has no whole day. */
const isOnly = ({ days }: ReadSeries): boolean => !days.some((day) => day.complete);

function climatologicalRangeK(minC: Float64Array, maxC: Float64Array): number {
  let [sum, known] = [0, 0];
  minC.forEach((low, i) => {
    if (Number.isNaN(low)) return;
    sum += maxC[i]! - low;
    known++;
  });
  return known > 0 ? sum / known : CLIMATOLOGICAL_RANGE_K;
}

/** Provenance of soil worked out from air: measured air makes a model, other air keeps its own provenance. */
const soilBasis = (airBasis: number): number => (airBasis <= basisCode('corrected') ? basisCode('modelled') : airBasis);
