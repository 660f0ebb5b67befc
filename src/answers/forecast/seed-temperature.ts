import { dateAt, HOUR_MS, instantText } from '../../basics/calendar.js';
import { type Note, RequestError } from '../../basics/errors.js';
import { basisCode } from '../../basics/series.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { ReadSeries } from '../../readings/read-series.js';
import { aheadUncertaintyK } from '../ahead/ahead-uncertainty.js';
import { type Extrapolation, hoursAhead } from '../ahead/hours-ahead.js';
import type { PastSoil } from '../ahead/past-soil.js';
import { type YearsAhead, yearsAhead } from '../ahead/years-ahead.js';
import type { Bedding } from '../question.js';
import { answerRefusal } from '../refusal-facts.js';
import { fillGap, type MissingHours, missingHours } from '../soil/fill-gaps.js';
import { COARSE_STEP_MS, extentOf, isCoarse, type Site } from '../soil/known-hours.js';
import { recentSoil } from '../soil/recent-soil.js';
import type { SoilWarning } from '../soil/soil-facts.js';
import type { SoilRecord } from '../soil/soil-record.js';

/** Hourly means at the seed, on a clock of whole hours before and after the wetting. */
export interface SeedTemperature {
  readonly startMs: number;
  readonly hourlyC: Float64Array;
  /** What each hour rests on: codes of basics/series. */
  readonly basis: Uint8Array;
  /** How far a day's mean may be off for want of knowing the soil, the weather ahead left aside: standard deviation [K]. */
  readonly sdK: Float64Array;
}

/** What is known of the temperature at the seed, ready to be carried on as far as it is needed. */
export interface SeedRecord {
  readonly soil: SoilRecord;
  /** The hour of the wetting, counted from the record's start. */
  readonly imbibitionH: number;
  /** The hour at which the values sent end. */
  readonly knownToH: number;
  /** And the last of them that is no forecast: past years begin after it. */
  readonly measuredToH: number;
  /** False where nothing since wetting shows the swing of day and night. */
  readonly showsSwing: boolean;
  /** Warnings about the temperatures, with filled hours counted up to so many after imbibition began. */
  warnings(hoursAfterWetting: number): readonly Note[];
  /** The first gap since the wetting, up to so many hours after it, that leaves nothing to go by; null: there is none. */
  longGap(hoursAfterWetting: number): LongGap | null;
  /** The past years after the last measured hour; null where something else is supposed. */
  readonly ahead: YearsAhead | null;
  /** As `upTo` from the wetting on, but after the last measured hour once as in each past year. */
  members(hoursAfterWetting: number): readonly Float64Array[];
  /** Temperatures up to this many hours after wetting, supposed where nothing was sent. */
  upTo(hoursAfterWetting: number): SeedTemperature;
}

/** A gap that nothing but its two ends tell of. */
export interface LongGap {
  /** Hours after the wetting; negative where it begins before. */
  readonly fromH: number;
  /** The refusal for a question that needs the hours of the gap. */
  readonly refusal: RequestError;
}

/** No gap longer than this is filled since wetting [h]: nothing would be left to go by. */
const MAX_FILLED_H = 14 * 24;
/** The values may begin this long after the wetting; their first day stands in [h]. */
const MAX_START_GAP_H = 24;
/** Nothing is asked of hours further than this after the wetting [h]. */
const MAX_NEEDED_H = 368 * 24;
/** Laid out beyond what is asked, because the count's last day is asked for next [h]. */
const SPARE_H = 24;
/** The wetting may lie this far beyond the last value [h]. */
const MAX_AHEAD_H = 366 * 24;

/**
 * The temperature at the seed as far as it is known, from up to a month before the last value or the wetting on.
 *
 * @param series  Soil and air.
 * @param bedding The place, the bed, and how deep the seed lies.
 * @param imbibitionMs   When the seed was wetted; the whole hours are counted from here.
 * @param beyond  What to suppose after the last value.
 * @param options `past`: the bed's soil in past years, where they are supposed. `longestH`: nothing is asked of hours further
 * than this after the wetting. `neededH`: what comes later may have gaps, which `longGap` tells of.
 * @param shouldStop Asked once a year of soil.
 * @throws {RequestError} where the values begin too late, have too long a gap, or end too early for what is asked.
 */
export function seedRecord(
  series: readonly ReadSeries[],
  bedding: Bedding,
  imbibitionMs: number,
  beyond: Extrapolation,
  {
    past = null,
    longestH = MAX_NEEDED_H,
    neededH = longestH,
  }: { readonly past?: PastSoil | null; readonly longestH?: number; readonly neededH?: number } = {},
  shouldStop?: ShouldStop,
): SeedRecord {
  const { site } = bedding;
  refuseElsewhen(series, bedding, imbibitionMs);
  const soil = recentSoil(series, bedding, imbibitionMs, imbibitionMs + longestH * HOUR_MS, shouldStop);
  const hasDays = series.some(({ days }) => days.some(({ complete }) => complete));
  if (hasDays && soil.hourlyC.every(Number.isNaN)) refuseNothingNear(imbibitionMs, site);
  const { startMs, swings, basis } = soil;
  const imbibitionH = (imbibitionMs - startMs) / HOUR_MS;
  const knownToH = soil.hourlyC.findLastIndex((value) => !Number.isNaN(value)) + 1;
  const knownC = soil.hourlyC.subarray(0, knownToH);
  for (const gap of fillAll(knownC, imbibitionH, (hour) => startMs + hour * HOUR_MS, site)) {
    basis.fill(basisCode('filled'), gap.fromH, gap.toH);
    soil.sdK.fill(FILLED_SD_K, gap.fromH, gap.toH);
  }
  const longGap = (hoursAfterWetting: number): LongGap | null =>
    longGapOf(basis.subarray(0, Math.min(knownToH, imbibitionH + hoursAfterWetting)), imbibitionH, startMs, site);
  const gap = longGap(neededH);
  if (gap) throw gap.refusal;

  const sinceWetting = swings.subarray(Math.min(imbibitionH, knownToH), knownToH);
  const swinging = sinceWetting.reduce((sum, one) => sum + one, 0);
  const someMeansOnly = sinceWetting.some(
    (one, i) => one === 0 && basis[Math.min(imbibitionH, knownToH) + i] !== FILLED,
  );
  const showsSwing = swinging > 0 || (sinceWetting.length === 0 && swings.some((one) => one === 1));
  const measuredToH = lastMeasured(basis, knownToH);
  const now = {
    lastMs: startMs + measuredToH * HOUR_MS,
    knownC: knownC.subarray(0, measuredToH),
    comingC: knownC.subarray(measuredToH),
  };
  const ahead = past && now.knownC.length >= 24 ? yearsAhead(past, now, site) : null;
  const layOut = (total: number): Omit<SeedTemperature, 'startMs'> => {
    const all = {
      hourlyC: new Float64Array(total),
      basis: new Uint8Array(total),
      sdK: new Float64Array(total).fill(soil.sdK[knownToH - 1]!),
    };
    all.hourlyC.set(knownC.subarray(0, total));
    all.basis.set(basis.subarray(0, Math.min(total, knownToH)));
    all.sdK.set(soil.sdK.subarray(0, Math.min(total, knownToH)));
    if (past && ahead && total > measuredToH) {
      const nAhead = total - measuredToH;
      all.hourlyC.set(ahead.usual(nAhead), measuredToH);
      // Usual air of a climate goes on as it began.
      const isTable = basis[knownToH - 1] === basisCode('climate-table');
      all.basis.fill(basisCode(isTable ? 'climate-table' : 'past-years'), Math.min(total, knownToH));
      all.sdK.set(
        aheadUncertaintyK(soil, past, { fromH: measuredToH, nHours: nAhead, comingH: now.comingC.length }),
        measuredToH,
      );
    } else if (total > knownToH && beyond !== 'refuse') {
      // Where no past year is known right now, the season drifts on.
      const supposed = beyond === 'repeat-last-week' ? beyond : 'seasonal-drift';
      all.hourlyC.set(hoursAhead(supposed, knownC, total - knownToH, startMs + knownToH * HOUR_MS, site), knownToH);
      all.basis.fill(basisCode(supposed === 'seasonal-drift' ? 'drift' : 'repeated'), knownToH);
    }
    return all;
  };
  let laidOut = layOut(0);
  return {
    soil,
    imbibitionH,
    knownToH,
    measuredToH,
    showsSwing,
    warnings: (hoursAfterWetting) => [
      ...soil.warnings,
      ...fillWarnings(
        basis.subarray(Math.min(imbibitionH, knownToH), Math.min(knownToH, imbibitionH + hoursAfterWetting)),
      ),
      ...swingWarnings(showsSwing, someMeansOnly, series.some(isCoarse)),
    ],
    longGap,
    ahead,
    members(hoursAfterWetting) {
      const total = imbibitionH + hoursAfterWetting;
      const nKnown = Math.min(total, measuredToH);
      return (ahead?.members(Math.max(0, total - measuredToH)) ?? []).map((member) => {
        const since = new Float64Array(hoursAfterWetting);
        if (nKnown > imbibitionH) since.set(knownC.subarray(imbibitionH, nKnown));
        since.set(member.subarray(Math.max(0, imbibitionH - measuredToH)), Math.max(0, nKnown - imbibitionH));
        return since;
      });
    },
    upTo(hoursAfterWetting) {
      const total = imbibitionH + hoursAfterWetting;
      if (total > knownToH && beyond === 'refuse') {
        refuseBeyond(startMs + knownToH * HOUR_MS, startMs + total * HOUR_MS, site);
      }
      if (laidOut.hourlyC.length < total) laidOut = layOut(beyond === 'refuse' ? total : total + SPARE_H);
      return {
        startMs,
        hourlyC: laidOut.hourlyC.subarray(0, total),
        basis: laidOut.basis.subarray(0, total),
        sdK: laidOut.sdK.subarray(0, total),
      };
    },
  };
}

/** The hour after the last that is no forecast; the last known of all where next to nothing is measured. */
function lastMeasured(basis: Uint8Array, knownToH: number): number {
  let end = knownToH;
  while (end > 0 && basis[end - 1]! >= FORECAST) end--;
  return end >= 24 ? end : knownToH;
}

const FORECAST = basisCode('forecast');

/** A day filled from its neighbours, knowing nothing of the weather, may be off by this much [K]: our judgement. */
const FILLED_SD_K = 1.5;
const FILLED = basisCode('filled');

/** Refuses what begins too late for the sowing, or ended too long before it. */
function refuseElsewhen(series: readonly ReadSeries[], { bed, site }: Bedding, imbibitionMs: number): void {
  if (bed.kind === 'indoors') return;
  const extents = series.map(extentOf);
  refuseFarAhead(imbibitionMs, Math.max(...extents.map((extent) => extent.lastMs)), site);
  const firstMs = Math.min(...extents.map((extent) => extent.firstMs));
  if (firstMs - imbibitionMs > MAX_START_GAP_H * HOUR_MS) refuseLateStart(firstMs, site);
}

/** What was sent lies before and after, and too far off on both sides. */
function refuseNothingNear(imbibitionMs: number, site: Site): never {
  throw new RequestError(
    'gap-too-long',
    answerRefusal('gap-too-long.around', { date: dateAt(imbibitionMs, site.zone) }),
  );
}

/** The first run of filled hours since the wetting that is longer than anything left to go by. */
function longGapOf(basis: Uint8Array, imbibitionH: number, startMs: number, site: Site): LongGap | null {
  let fromH = -1;
  for (let hour = 0; hour <= basis.length; hour++) {
    const isFilled = basis[hour] === FILLED;
    if (isFilled && fromH < 0) fromH = hour;
    if (isFilled || fromH < 0) continue;
    if (hour > imbibitionH && hour - fromH > MAX_FILLED_H) {
      const [fromAt, toAt] = [fromH, hour].map((one) => instantText(startMs + one * HOUR_MS, site.zone)) as [
        string,
        string,
      ];
      const refusal = new RequestError('gap-too-long', answerRefusal('gap-too-long', { fromAt, toAt }));
      return { fromH: fromH - imbibitionH, refusal };
    }
    fromH = -1;
  }
  return null;
}

/** Fills, in place, every missing hour between the first needed and the last known; tells which they were. */
function fillAll(
  knownC: Float64Array,
  imbibitionH: number,
  atMs: (hour: number) => number,
  site: Site,
): MissingHours[] {
  if (knownC.reduce((known, value) => (Number.isNaN(value) ? known : known + 1), 0) < 24) {
    throw new RequestError('too-few-readings', answerRefusal('too-few-readings'));
  }
  const gaps = missingHours(knownC);
  for (const gap of gaps) fillGap(knownC, gap);
  const first = knownC.findIndex((value) => !Number.isNaN(value));
  if (first - imbibitionH > MAX_START_GAP_H) refuseLateStart(atMs(first), site);
  for (let hour = first - 1; hour >= 0; hour--) knownC[hour] = knownC[Math.min(hour + 24, knownC.length - 1)]!;
  return first > imbibitionH ? [{ fromH: imbibitionH, toH: first }, ...gaps] : gaps;
}

function refuseLateStart(firstMs: number, site: Site): never {
  const firstDate = dateAt(firstMs, site.zone);
  throw new RequestError('starts-after-sowing', answerRefusal('starts-after-sowing', { firstDate }), [
    { path: ['sowing', 'date'], detail: answerRefusal('starts-after-sowing.field', { firstDate }) },
  ]);
}

function refuseFarAhead(imbibitionMs: number, lastMs: number, site: Site): void {
  if (imbibitionMs - lastMs <= MAX_AHEAD_H * HOUR_MS) return;
  throw new RequestError(
    'ends-too-early',
    answerRefusal('ends-too-early.before-wetting', { lastDate: dateAt(lastMs - 1, site.zone) }),
  );
}

function refuseBeyond(lastKnownMs: number, neededMs: number, site: Site): never {
  const [lastDate, countDate] = [dateAt(lastKnownMs - 1, site.zone), dateAt(neededMs, site.zone)];
  throw new RequestError('ends-too-early', answerRefusal('ends-too-early.before-count', { lastDate, countDate }), [
    {
      path: ['beyond'],
      detail: answerRefusal('ends-too-early.before-count.field'),
    },
  ]);
}

function fillWarnings(basis: Uint8Array): SoilWarning[] {
  const hours = basis.reduce((n, one) => n + Number(one === FILLED), 0);
  if (hours === 0) return [];
  return [{ code: 'hours-filled', params: { hours, percent: Math.max(1, Math.round((100 * hours) / basis.length)) } }];
}

function swingWarnings(showsSwing: boolean, someMeansOnly: boolean, coarse: boolean): SoilWarning[] {
  const warnings: SoilWarning[] = [];
  if (coarse) warnings.push({ code: 'coarse-step', params: { stepHours: COARSE_STEP_MS / HOUR_MS } });
  if (!showsSwing) warnings.push({ code: 'no-swing', params: {} });
  else if (someMeansOnly) warnings.push({ code: 'some-days-without-swing', params: {} });
  return warnings;
}
