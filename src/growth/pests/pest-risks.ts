import type { PlainDate } from '../../basics/calendar.js';
import type { DailyAir } from '../workable-ground.js';
import { type BroodDates, broodDates } from './brood-dates.js';
import type { RiskFact } from './pest-facts.js';
import type { BroodSum, Threatened } from './pest-rule.js';
import { type PestId, pestsOf } from './pest-rules.js';

/** Something that threatens a row between two dates. */
export interface Risk {
  readonly id: PestId | 'damping-off';
  readonly threatens: Threatened;
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** The date of its peak; null: it does not follow from heat sums. */
  readonly peak: PlainDate | null;
  readonly degreeDays: RiskDegreeDays | null;
  /** Past years that had it, and those that are known; null: it does not follow from years. */
  readonly inYears: number | null;
  readonly ofYears: number | null;
  readonly text: RiskFact;
  readonly source: string;
}

export interface RiskDegreeDays {
  readonly baseC: number;
  readonly ceilingC: number | null;
  /** MM-DD. */
  readonly since: string;
  readonly sum: number;
  /** The heat sum of the year itself, and its last day; null: nothing of it is known. */
  readonly soFar: number | null;
  readonly asOf: PlainDate | null;
}

/** The question about the dates of a crop's pests. */
export interface PestsAsked {
  /** As the handbook gives it. */
  readonly crop: string;
  readonly latitudeDeg: number;
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/**
 * The pests of a crop whose broods are out between two dates, by the warmth of the air, in the order of their peaks.
 *
 * @param asked The crop, the place, and the dates.
 * @param air   Days of past years, and of the year itself as far as they are known.
 * @returns None for a crop that none of the rules names, or where fewer than three past years are known.
 * @throws ScienceError never.
 * @example of snap bean in Illinois, 1 May to 15 June 2027 // => seedcorn maggot, peaks 23 May and 17 June
 */
export function pestRisks({ crop, latitudeDeg, from, to }: PestsAsked, air: DailyAir): Risk[] {
  const risks: Risk[] = [];
  for (const { id, threatens, broods, source } of pestsOf(crop)) {
    broods.forEach((brood, i) => {
      // A season of the south begins in the year before.
      for (let year = yearOf(from) - 1; year <= yearOf(to); year++) {
        const dates = broodDates(brood, air, year, latitudeDeg);
        if (!dates || dates.to < from || dates.from > to) continue;
        risks.push({ id, threatens, source, ...datesOf(dates, brood), text: textOf(id, i + 1, dates) });
      }
    });
  }
  return risks.sort((a, b) => (a.peak! < b.peak! ? -1 : 1));
}

const datesOf = ({ from, peak, to, since, soFar, inYears, ofYears }: BroodDates, brood: BroodSum) => ({
  from,
  to,
  peak,
  degreeDays: {
    baseC: brood.baseC,
    ceilingC: brood.ceilingC,
    since: since.slice(5),
    sum: brood.sumCDays,
    soFar: soFar?.sumCDays ?? null,
    asOf: soFar?.on ?? null,
  },
  inYears,
  ofYears,
});

function textOf(id: PestId, brood: number, { from, peak, to }: BroodDates): RiskFact {
  const spread = from === to ? ('none' as const) : ('days' as const);
  const dates = { fromDate: from, peakDate: peak, toDate: to, spread };
  if (id === 'carrot-weevil') return { code: `risk.${id}`, params: dates };
  return { code: `risk.${id}`, params: { brood, ...dates } };
}

const yearOf = (date: PlainDate): number => Number(date.slice(0, 4));
