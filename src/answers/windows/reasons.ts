import { addDays, type PlainDate } from '../../basics/calendar.js';
import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import type { Crop } from '../../germination/crop.js';
import { frostExposure } from '../../germination/run/frost-exposure.js';
import type { DateInYears, WindowCriteria } from './dates-in-years.js';
import type { Run } from './sureness.js';
import type { WhyNot } from './why-nots.js';
import type { ReasonFact } from './window-facts.js';

/** Why dates are not good: the reason's own code, and its sentence. */
export interface Reason {
  readonly code: WhyNot;
  readonly text: ReasonFact;
}

/** What the sentences say of a crop. */
export interface ReasonSetting {
  readonly crop: Crop;
  readonly criteria: WindowCriteria;
  readonly from: PlainDate;
  /** The number of years that judge the dates; 0: one climatological year. */
  readonly years: number;
  /** The soil of a mean year on each date [°C]; shape (nDates). */
  readonly soilC: Float64Array;
}

/** Maximum number of reasons; and the least share of the first reason's spoilt years that another must reach. */
const MAX_REASONS = 3;
const MIN_OF_FIRST = 0.4;

/**
 * Why the dates of a run were not good, what spoilt most years first.
 *
 * @param of The number of years told is of one date, by the week around it, or the mean of all dates of the run.
 */
export function reasonsOf(
  dates: readonly DateInYears[],
  run: Run,
  setting: ReasonSetting,
  of: 'date' | 'dates',
): Reason[] {
  const counts = new Map<WhyNot, number>();
  let known = 0;
  for (const date of dates.slice(run.from, run.to + 1)) {
    known += date.known;
    for (const [why, n] of date.causes) counts.set(why, (counts.get(why) ?? 0) + n);
  }
  const ranked = [...counts].sort((a, b) => b[1] - a[1]);
  const first = ranked[0]?.[1] ?? 0;
  return ranked
    .filter(([, n], i) => i < MAX_REASONS && n >= MIN_OF_FIRST * first)
    .map(([code, n]) => ({ code, text: sentence(code, n / known, dates, run, setting, of) }));
}

function sentence(
  code: WhyNot,
  share: number,
  dates: readonly DateInYears[],
  run: Run,
  { crop, criteria, from, years, soilC }: ReasonSetting,
  of: 'date' | 'dates',
): ReasonFact {
  const ofYears = Math.max(1, years);
  const often = { inYears: Math.max(1, Math.round(share * ofYears)), ofYears, of: years > 1 ? of : ('date' as const) };
  const { growth, soil } = crop;
  const harvest = growth?.harvest ?? null;
  const heat = harvest?.by === 'heat' ? harvest : null;
  switch (code) {
    case 'too-cold': {
      const inRun = soilC.subarray(run.from, run.to + 1).filter((tempC) => !Number.isNaN(tempC));
      const meanC = inRun.length === 0 ? null : tenth(inRun.reduce((sum, tempC) => sum + tempC, 0) / inRun.length);
      const minimumC = tenth(
        growth?.leastSoilC ?? soil?.minimumC ?? Math.min(...crop.rows.map((row) => row.temperatureC)),
      );
      // A run's mean may lie above the minimum where only some of its days are too cold.
      return {
        code: 'reason.too-cold',
        params: { minimumC, meanC: meanC !== null && meanC < minimumC ? meanC : null },
      };
    }
    case 'too-hot':
      return { code: 'reason.too-hot', params: { thresholdC: tenth(crop.hotThresholdC), ...often } };
    case 'too-slow':
      return { code: 'reason.too-slow', params: { maxDays: criteria.maxDays, ...often } };
    case 'frost-to-come': {
      const frostC = growth?.seedlingFrostC ?? frostExposure(crop)?.limitC ?? 0;
      return { code: 'reason.frost-to-come', params: { frostC, ...often } };
    }
    case 'too-late': {
      const ends = dates.slice(run.from, run.to + 1).flatMap(({ endDays }, i) => {
        const days = endDays.length === 0 ? NaN : hazenQuantile(endDays, 0.5);
        return Number.isNaN(days) ? [] : run.from + i + days;
      });
      const middle = ends.length === 0 ? null : hazenQuantile(Float64Array.from(ends).sort(), 0.5);
      return {
        code: 'reason.too-late',
        params: {
          endsBy: middle === null ? 'cold' : 'frost',
          on: middle === null ? null : addDays(from, Math.round(middle)),
          ...often,
        },
      };
    }
    case 'heat-at-harvest':
      return { code: 'reason.heat-at-harvest', params: { hotC: heat?.hotHarvestC ?? 0, ...often } };
    case 'bolts':
      return { code: 'reason.bolts', params: { dayLengthH: growth?.boltingDayLengthH ?? 0 } };
    case 'over-winter':
      return { code: 'reason.over-winter', params: {} };
    case 'day-length':
      return { code: 'reason.day-length', params: {} };
    case 'ground-wet':
      return { code: 'reason.ground-wet', params: {} };
  }
}

const tenth = (value: number): number => Math.round(10 * value) / 10;
