import { sampleStandardDeviation } from 'simple-statistics';
import { addDays, dateAt, daysBetween, HOUR_MS, type PlainDate, startOfDay } from '../../basics/calendar.js';
import { type Note, notUnderstood, RequestError } from '../../basics/errors.js';
import { fieldFact, wasValue } from '../../basics/field-facts.js';
import type { Basis } from '../../basics/series.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { Normals } from '../../climate/normals.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { SeriesReport } from '../../readings/report.js';
import { plusMinusK } from '../../seedbed/surface/estimate-sd.js';
import { aheadSdK } from '../ahead/ahead-sd.js';
import type { Extrapolation } from '../ahead/hours-ahead.js';
import { type FindPast, kindOfYears, pastSoil } from '../ahead/past-soil.js';
import { type AssumedExtrapolation, assumedExtrapolation } from '../forecast/extrapolation.js';
import { extrapolationNote } from '../forecast/extrapolation-note.js';
import { type SeedRecord, type SeedTemperature, seedRecord } from '../forecast/record/seed-temperature.js';
import { seedDays } from '../forecast/seed-days.js';
import type { Bedding } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { type HourReadings, hourReadings } from './hour-readings.js';
import { extentOf } from './known-hours.js';
import { placeDays } from './place-days.js';
import { atSeed } from './probe-at-seed.js';
import { refuseDepth } from './refuse-depth.js';
import type { SoilWarning } from './soil-facts.js';

/** A grower's question: the soil temperature at a depth of a bed. */
export interface SoilQuestion extends Bedding {
  readonly series: readonly ReadSeries[];
  readonly understood: readonly SeriesReport[];
  /** null: from the first date known. */
  readonly from: PlainDate | null;
  /** null: to the last date known. */
  readonly to: PlainDate | null;
  readonly step: 'day' | 'hour';
  readonly beyond: Extrapolation | null;
  readonly normals: Normals | null;
  readonly typicalAir?: ReadSeries | null | undefined;
}

export interface SoilDay {
  readonly date: PlainDate;
  readonly min: number;
  readonly mean: number;
  readonly max: number;
  readonly basis: Basis;
  /** Half the width of the range that holds the day's mean four times in five [K]. */
  readonly plusMinus: number;
}

export interface SoilTemperatures {
  readonly depthCm: number;
  readonly daily: readonly SoilDay[] | null;
  readonly hours: HourReadings | null;
  readonly understood: readonly SeriesReport[];
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/** No more is answered at once: thirty years of days, two of them by the hour. */
const MAX_DAYS = 11_000;
const MAX_DAYS_BY_HOUR = 800;
const TAUGHT_AFTER_H = 60 * 24;

/** Soil temperature at a depth by day or hour, with its uncertainty. */
export function soilTemperatures(
  question: SoilQuestion,
  findPast: FindPast = pastSoil,
  shouldStop?: ShouldStop,
): SoilTemperatures {
  const { site, series, step, depthCm, bed } = question;
  refuseDepth(bed.kind, depthCm, ['depthCm']);
  const { from, to } = datesOf(question);
  const startMs = startOfDay(from, site.zone);
  const recordOf = ({ beyond, past }: AssumedExtrapolation, neededH: number): SeedRecord => {
    try {
      const reach = { past, longestH: neededH + TAUGHT_AFTER_H, neededH };
      return seedRecord(series, { site, bed, depthCm }, startMs, beyond, reach, shouldStop);
    } catch (error) {
      if (!(error instanceof RequestError) || error.code !== 'starts-after-sowing') throw error;
      throw notUnderstood([{ path: ['from'], detail: fieldFact('field.long-before-first', { from }) }]);
    }
  };
  const hours = Math.ceil((startOfDay(addDays(to, 1), site.zone) - startMs) / HOUR_MS);
  // Readings after the dates asked teach the bed's model as well.
  let supposed: AssumedExtrapolation = { beyond: 'refuse', past: null };
  let record = asksAhead(question, startMs + hours * HOUR_MS) ? null : recordOf(supposed, hours);
  if (!record || record.imbibitionH + hours > record.measuredToH) {
    supposed = assumedExtrapolation(question, startMs, findPast, shouldStop);
    record = recordOf(supposed, hours);
  }
  const { beyond } = supposed;
  const temperature = record.upTo(hours);
  return {
    depthCm,
    daily: step === 'day' ? daysOf(question, record, temperature, from, to, beyond) : null,
    hours:
      step === 'hour'
        ? hourReadings({
            startMs,
            tempC: temperature.hourlyC.subarray(record.imbibitionH),
            basis: temperature.basis.subarray(record.imbibitionH),
          })
        : null,
    understood: question.understood,
    assumptions: [
      ...record.soil.assumptions,
      ...(record.imbibitionH + hours > record.knownToH
        ? [extrapolationNote(beyond, record, site, kindOfYears(question))]
        : []),
    ],
    warnings: [...record.warnings(hours).filter(({ code }) => !ofSowings.has(code)), ...farAhead(record, hours)],
  };
}

/** May anything after the last measured value be asked of? Past years, a second of work, are looked for only then. */
function asksAhead({ series, beyond }: SoilQuestion, toMs: number): boolean {
  const measured = series.filter(({ origin }) => origin === 'measured').map((one) => extentOf(one).lastMs);
  return beyond !== null || measured.length < series.length || measured.length === 0 || toMs > Math.max(...measured);
}

/** Codes that concern the spells of a sowing alone, so soil answers leave them out. */
const ofSowings = new Set(['no-swing', 'some-days-without-swing']);
/** A drift or a repeated week says little so long after the last value [d]. */
const FAR_AHEAD_DAYS = 30;

function farAhead(record: SeedRecord, hours: number): SoilWarning[] {
  const daysAhead = Math.floor((record.imbibitionH + hours - record.knownToH) / 24);
  if (daysAhead <= FAR_AHEAD_DAYS) return [];
  return [{ code: 'far-ahead', params: { about: 'soil', daysAhead } }];
}

function daysOf(
  { series, site, depthCm }: SoilQuestion,
  record: SeedRecord,
  temperature: SeedTemperature,
  from: PlainDate,
  to: PlainDate,
  beyond: Extrapolation,
): SoilDay[] {
  const { startMs, hourlyC, sdK } = temperature;
  const days = placeDays(startMs, hourlyC.length, from, daysBetween(from, to) + 1, site.zone);
  const { ahead, measuredToH } = record;
  const members = ahead?.members(Math.max(0, hourlyC.length - measuredToH)) ?? [];
  return seedDays(atSeed(series, depthCm), days, temperature).map(({ fromH, toH, ...day }) => {
    let sum = 0;
    for (let hour = fromH; hour < toH; hour++) sum += sdK[hour]!;
    const leadDays = Math.floor((toH - 1 - record.knownToH) / 24);
    const aheadK = ahead
      ? spreadK(
          members,
          hourlyC.subarray(
            Math.max(fromH, record.imbibitionH),
            Math.max(record.imbibitionH, Math.min(toH, measuredToH)),
          ),
          toH - measuredToH,
          Math.max(fromH, record.imbibitionH, measuredToH) - measuredToH,
        )
      : leadDays < 0
        ? 0
        : aheadSdK(beyond, leadDays, isSpring(day.date, site.latitude));
    return { ...day, plusMinus: plusMinusK(Math.hypot(sum / (toH - fromH), aheadK)) };
  });
}

/**
 * Standard deviation of the members' daily means [K]; 0 where fewer than two are known.
 *
 * @param members    From the last measured hour on.
 * @param measuredC The day's hours that are measured; all members have them in common.
 * @param toH       The day's end, in hours after the last measured one; not above 0: it has none but measured hours.
 * @param fromH     The first of its hours that is not measured, likewise.
 */
function spreadK(members: readonly Float64Array[], measuredC: Float64Array, toH: number, fromH: number): number {
  if (toH <= 0) return 0;
  const shared = measuredC.reduce((sum, tempC) => sum + tempC, 0);
  const means: number[] = [];
  for (const member of members) {
    let sum = shared;
    for (let hour = fromH; hour < toH; hour++) sum += member[hour]!;
    if (Number.isFinite(sum)) means.push(sum / (measuredC.length + toH - fromH));
  }
  return means.length < 2 ? 0 : sampleStandardDeviation(means);
}

function isSpring(date: PlainDate, latitude: number | null): boolean {
  const month = Number(date.slice(5, 7));
  return (latitude ?? 0) >= 0 ? month >= 2 && month <= 5 : month >= 8 && month <= 11;
}

/** Which dates are asked, as far as they can be answered. */
function datesOf({ series, site, from, to, step, bed }: SoilQuestion): { from: PlainDate; to: PlainDate } {
  const extents = series.map(extentOf);
  const isRoom = bed.kind === 'indoors';
  const first = extents.length > 0 ? dateAt(Math.min(...extents.map((one) => one.firstMs)), site.zone) : null;
  const lastMs = Math.max(...extents.map((one) => one.lastMs));
  const last = first === null ? null : [first, dateAt(lastMs - 1, site.zone)].sort()[1]!;
  const wanted = { from: from ?? first, to: to ?? last };
  for (const name of ['from', 'to'] as const) {
    if (wanted[name] === null) {
      throw notUnderstood([{ path: [name], detail: fieldFact('field.date-needed') }]);
    }
  }
  const asked = { from: wanted.from!, to: wanted.to! };
  const nDays = daysBetween(asked.from, asked.to) + 1;
  if (nDays < 1) {
    throw notUnderstood([
      { path: ['to'], detail: fieldFact('field.before-from', { from: asked.from, ...wasValue(asked.to) }) },
    ]);
  }
  const most = step === 'hour' ? MAX_DAYS_BY_HOUR : MAX_DAYS;
  if (nDays > most) {
    throw notUnderstood([{ path: ['to'], detail: fieldFact('field.many-days', { maxDays: most, step }) }]);
  }
  if (!isRoom && first !== null && asked.from < first) {
    throw notUnderstood([
      { path: ['from'], detail: fieldFact('field.before-first', { firstDate: first, from: asked.from }) },
    ]);
  }
  if (!isRoom && last !== null && daysBetween(last, asked.to) > 366) {
    throw new RequestError('ends-too-early', answerRefusal('ends-too-early.soil', { lastDate: last, to: asked.to }), [
      { path: ['to'], detail: answerRefusal('ends-too-early.soil.field', { lastDate: last }) },
    ]);
  }
  return asked;
}
