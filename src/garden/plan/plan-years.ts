import {
  type FindPast,
  isTypical,
  MIN_YEARS,
  type PastSoil,
  seriesOfYears,
  yearsTold,
} from '../../answers/ahead/past-soil.js';
import { climatologicalSoil } from '../../answers/forecast/extrapolation.js';
import type { YearOfDates } from '../../answers/windows/year-of-dates.js';
import { climatologicalYears, type DatesAsked, yearsOfDates } from '../../answers/windows/years-of-dates.js';
import { type PlainDate, startOfDay } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import type { ShouldStop } from '../../basics/stop.js';
import { shadedSoil } from '../bed/shaded-soil.js';
import { gardenRefusal } from '../refusal-facts.js';
import type { PlanQuestion } from './plan-question.js';
import { planStandDays } from './starts-of-year.js';

/** The season of a plan in the years that are known. */
export interface PlanYears {
  readonly years: readonly YearOfDates[];
  /** null, null and 0 where a usual year stands for all. */
  readonly told: { readonly from: number | null; readonly to: number | null; readonly count: number };
  readonly past: PastSoil;
  readonly isUsual: boolean;
  /** The same years in the bed under shade; null where that cannot be told. */
  inShade(): readonly YearOfDates[] | null;
}

/** The season as past years would have had it, or a usual one. */
export function planYears(
  question: PlanQuestion,
  from: PlainDate,
  nDays: number,
  findPast: FindPast,
  shouldStop?: ShouldStop,
): PlanYears {
  const { site, crop, normals } = question;
  const series = seriesOfYears(question);
  const phaseMs = startOfDay(from, site.zone);
  const criteria = { share: 0, shareIfHeld: 0, maxDays: planStandDays(crop), sureness: 0 };
  const asked: DatesAsked = { site, from, time: '12:00', criteria };
  const past = yearsTold(series) >= MIN_YEARS ? findPast(series, question, phaseMs, shouldStop) : null;
  // Years of which little is known have their say on the dates that they tell of, as in sowing windows.
  const years = past ? yearsOfDates(past, asked, nDays) : [];
  const whole = years.filter(({ hourlyC }) => hoursKnown(hourlyC) >= hourlyC.length / 2);
  if (past && whole.length >= MIN_YEARS) {
    return {
      years,
      told: isTypical(question) ? NO_YEARS : { from: whole[0]!.year, to: whole.at(-1)!.year, count: whole.length },
      past,
      isUsual: false,
      inShade: () => {
        const shaded = shadedSoil(past, series, question, phaseMs, findPast, shouldStop);
        return shaded && yearsOfDates(shaded, asked, nDays);
      },
    };
  }
  if (!normals) throw noPastYears(whole.length);
  const usual = climatologicalSoil(normals, { ...question, series: [] }, phaseMs, findPast, shouldStop);
  return {
    years: climatologicalYears(usual, asked, nDays),
    told: NO_YEARS,
    past: usual,
    isUsual: true,
    inShade: () => null,
  };
}

const NO_YEARS = { from: null, to: null, count: 0 } as const;

const hoursKnown = (hourlyC: Float64Array): number =>
  hourlyC.reduce((sum, tempC) => sum + (Number.isNaN(tempC) ? 0 : 1), 0);

const noPastYears = (count: number): RequestError =>
  new RequestError('no-past-years', gardenRefusal('no-past-years.plan', { years: count, minYears: MIN_YEARS }));
