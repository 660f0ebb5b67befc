import { dateAt, HOUR_MS } from '../../../basics/calendar.js';
import { type Note, RequestError } from '../../../basics/errors.js';
import { basisCode } from '../../../basics/series.js';
import type { ShouldStop } from '../../../basics/stop.js';
import type { ReadSeries } from '../../../readings/read-series.js';
import type { Extrapolation } from '../../ahead/hours-ahead.js';
import type { PastSoil } from '../../ahead/past-soil.js';
import { type YearsAhead, yearsAhead } from '../../ahead/years-ahead.js';
import type { Bedding } from '../../question.js';
import { answerRefusal } from '../../refusal-facts.js';
import { COARSE_STEP_MS, isCoarse, type Site } from '../../soil/known-hours.js';
import type { SoilWarning } from '../../soil/soil-facts.js';
import { type FilledRecord, filledRecord } from './filled-record.js';
import { type LaidOut, layOut } from './lay-out.js';
import { type LongGap, longGapOf } from './long-gap.js';

const FILLED = basisCode('filled');

/** Hourly means at the seed, on a clock of whole hours before and after the wetting. */
export interface SeedTemperature extends LaidOut {
  readonly startMs: number;
}

/** Known temperature at the seed, to be extrapolated as far as needed. */
export interface SeedRecord extends Omit<FilledRecord, 'knownC'> {
  /** False where nothing since wetting shows the swing of day and night. */
  readonly showsSwing: boolean;
  /** Warnings about the temperatures, with filled hours counted up to so many after imbibition began. */
  warnings(hoursAfterWetting: number): readonly Note[];
  /** The first gap since the wetting, up to so many hours after it, that leaves nothing to go by; null: there is none. */
  longGap(hoursAfterWetting: number): LongGap | null;
  /** The past years after the last measured hour; null where something else is supposed. */
  readonly ahead: YearsAhead | null;
  /** As `upTo` from the wetting on, but with one series for each past year after the last measured hour. */
  members(hoursAfterWetting: number): readonly Float64Array[];
  /** Temperatures up to this many hours after wetting, supposed where nothing was sent. */
  upTo(hoursAfterWetting: number): SeedTemperature;
}

/** Nothing is asked of hours further than this after the wetting [h]. */
const MAX_NEEDED_H = 368 * 24;
/** Laid out beyond what is asked, because the count's last day is asked for next [h]. */
const SPARE_H = 24;

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
  const record = filledRecord(series, bedding, imbibitionMs, longestH, shouldStop);
  const { soil, imbibitionH, knownToH, measuredToH, knownC } = record;
  const { startMs, basis } = soil;
  const longGap = (hoursAfterWetting: number): LongGap | null =>
    longGapOf(basis.subarray(0, Math.min(knownToH, imbibitionH + hoursAfterWetting)), imbibitionH, startMs, site);
  const gap = longGap(neededH);
  if (gap) throw gap.refusal;

  const swing = swingOf(record);
  const now = {
    lastMs: startMs + measuredToH * HOUR_MS,
    knownC: knownC.subarray(0, measuredToH),
    comingC: knownC.subarray(measuredToH),
  };
  const ahead = past && now.knownC.length >= 24 ? yearsAhead(past, now, site) : null;
  const after = { beyond, past, ahead };
  let laidOut = layOut(record, after, 0, site);
  return {
    soil,
    imbibitionH,
    knownToH,
    measuredToH,
    showsSwing: swing.isShown,
    warnings: (hoursAfterWetting) => [
      ...soil.warnings,
      ...fillWarnings(
        basis.subarray(Math.min(imbibitionH, knownToH), Math.min(knownToH, imbibitionH + hoursAfterWetting)),
      ),
      ...swingWarnings(swing, series.some(isCoarse)),
    ],
    longGap,
    ahead,
    members: (hoursAfterWetting) => membersOf(record, ahead, hoursAfterWetting),
    upTo(hoursAfterWetting) {
      const total = imbibitionH + hoursAfterWetting;
      if (total > knownToH && beyond === 'refuse') {
        refuseBeyond(startMs + knownToH * HOUR_MS, startMs + total * HOUR_MS, site);
      }
      if (laidOut.hourlyC.length < total) {
        laidOut = layOut(record, after, beyond === 'refuse' ? total : total + SPARE_H, site);
      }
      return {
        startMs,
        hourlyC: laidOut.hourlyC.subarray(0, total),
        basis: laidOut.basis.subarray(0, total),
        sdK: laidOut.sdK.subarray(0, total),
      };
    },
  };
}

/** The hours since the wetting as in each past year: the known ones, then those of the year. */
function membersOf(
  { imbibitionH, measuredToH, knownC }: FilledRecord,
  ahead: YearsAhead | null,
  hoursAfterWetting: number,
): Float64Array[] {
  const total = imbibitionH + hoursAfterWetting;
  const nKnown = Math.min(total, measuredToH);
  return (ahead?.members(Math.max(0, total - measuredToH)) ?? []).map((member) => {
    const since = new Float64Array(hoursAfterWetting);
    if (nKnown > imbibitionH) since.set(knownC.subarray(imbibitionH, nKnown));
    since.set(member.subarray(Math.max(0, imbibitionH - measuredToH)), Math.max(0, nKnown - imbibitionH));
    return since;
  });
}

interface Swing {
  readonly isShown: boolean;
  /** Some days since the wetting are known by their mean alone. */
  readonly hasMeansOnly: boolean;
}

/** Whether the values since the wetting show the swing of day and night; before any, those that came earlier. */
function swingOf({ soil: { swings, basis }, imbibitionH, knownToH }: FilledRecord): Swing {
  const fromH = Math.min(imbibitionH, knownToH);
  const sinceWetting = swings.subarray(fromH, knownToH);
  const swinging = sinceWetting.reduce((sum, one) => sum + one, 0);
  return {
    isShown: swinging > 0 || (sinceWetting.length === 0 && swings.some((one) => one === 1)),
    hasMeansOnly: sinceWetting.some((one, i) => one === 0 && basis[fromH + i] !== FILLED),
  };
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

function swingWarnings({ isShown, hasMeansOnly }: Swing, coarse: boolean): SoilWarning[] {
  const warnings: SoilWarning[] = [];
  if (coarse) warnings.push({ code: 'coarse-step', params: { stepHours: COARSE_STEP_MS / HOUR_MS } });
  if (!isShown) warnings.push({ code: 'no-swing', params: {} });
  else if (hasMeansOnly) warnings.push({ code: 'some-days-without-swing', params: {} });
  return warnings;
}
