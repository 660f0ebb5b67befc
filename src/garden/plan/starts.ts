import { commonest } from '../../answers/windows/dates-in-years.js';
import { type Grade, gradesOf } from '../../answers/windows/grades.js';
import { gradeOfDates } from '../../answers/windows/judged-dates.js';
import type { WhyNot } from '../../answers/windows/why-nots.js';
import { addDays, dayOfYear, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { UncertainShare } from '../../basics/numerics/chance-of-count.js';
import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import type { Crop, Span } from '../../germination/crop.js';
import { shareAt } from '../../germination/curve/curve.js';
import { plantShare } from '../learning/plant-share.js';
import { growthPace } from '../sowing/harvest.js';
import type { HarvestPeriod } from '../sowing/harvest-period.js';
import { daysInRoom, type IndoorStart, indoorsOf } from '../sowing/indoors.js';
import type { BatchStart, DaySpan } from './batches.js';
import type { StartsAsked, StartsOfYear } from './starts-of-year.js';

export type StartMethod = 'direct' | 'indoors';

/** A possible sowing of a plan, and what came of it in past years. */
export interface PlanStart extends BatchStart {
  readonly method: StartMethod;
  /** Is it sown under shade? */
  readonly isShaded: boolean;
  /** When half is up, by day: in the middle of the years, and between the outer tenths; null where it never was. */
  readonly half: { readonly p10: number; readonly p50: number; readonly p90: number } | null;
  /** Laboratory stand [% of seeds sown], of all seed and without what heat or cold held too long. */
  readonly stand: number;
  readonly ifHeldAreLost: number;
  /** Hours hotter than the seed bears before half is up. */
  readonly hotHours: number;
  /** The commonest reason of the years in which it was not good; null: it was good in all. */
  readonly whyNot: WhyNot | null;
  readonly indoors: IndoorStart | null;
  /** When it is picked, in the middle of the years that pick it; null: none does. */
  readonly picked: DaySpan | null;
}

/** What all starts of a plan have in common. */
export interface PlanSeason extends StartsAsked {
  /** The first possible sowing: day 0. */
  readonly firstDate: PlainDate;
  readonly years: readonly StartsOfYear[];
  /** The grade of each day's sowing in the bed, as sowing windows have it. */
  readonly gradeOf: readonly Grade[];
}

/**
 * The grade of each day's sowing, from years of which each tells what it would have done.
 *
 * @param sureness In so many of the years a good date is good.
 * @param isUsual  Does the first of the years stand for a usual one, and do the others tell how it may differ?
 */
export function gradesOfStarts(
  years: readonly StartsOfYear[],
  nDays: number,
  { sureness, isUsual }: { readonly sureness: number; readonly isUsual: boolean },
): Grade[] {
  const shares = (day: number, what: 'good' | 'fair' | 'thin', of = years): number =>
    mean(known(of, (year) => year[what][day]!));
  const dates = Array.from({ length: nDays }, (_, day) => ({
    good: shares(day, 'good', isUsual ? years.slice(0, 1) : years),
    fair: shares(day, 'fair'),
    thin: shares(day, 'thin'),
  }));
  return gradeOfDates(gradesOf(dates, { sureness }).runs, nDays);
}

/** Sowings in the bed itself, on every day; those on dates that sowing windows call poor are shut. */
export function directStarts(season: PlanSeason, isShaded = false): PlanStart[] {
  const { years, nDays, picking, gradeOf } = season;
  if (picking.countedFrom === 'planting-out') return [];
  let latest = -Infinity;
  return Array.from({ length: nDays }, (_, day): PlanStart => {
    const told = years.filter((year) => !Number.isNaN(year.good[day]!));
    const pickings = told.map((year) => year.picked(day));
    const picked = middlePicking(pickings);
    const half = spreadOf(known(told, ({ halfDay }) => halfDay[day]!));
    const isOpen = half !== null && picked !== null && gradeOf[day] !== 'poor';
    // Half of a lot is not up sooner for a later sowing, but half of what is up by the count may be.
    if (isOpen) latest = Math.max(latest, middleOf(picked));
    return {
      day,
      method: 'direct',
      isShaded,
      isOpen,
      ripeDay: isOpen ? latest : NaN,
      half,
      stand: middle(told.map((year) => year.stand[day]!)),
      ifHeldAreLost: middle(told.map((year) => year.ifHeldAreLost[day]!)),
      hotHours: middle(known(told, (year) => year.hotHours[day]!)),
      whyNot: commonest(told.map((year) => year.whyNot[day]!)),
      indoors: null,
      picked,
      reach: (week) => shareOf(pickings, (span) => span !== null && isWithin(span, week)),
    };
  });
}

/** The middle first and last day of those pickings that there are. */
function middlePicking(pickings: readonly (DaySpan | null)[]): DaySpan | null {
  const spans = pickings.flatMap((span) => span ?? []);
  if (spans.length === 0) return null;
  const at = (what: (span: DaySpan) => number): number => Math.round(middle(spans.map(what)));
  return { fromDay: at(({ fromDay }) => fromDay), toDay: at(({ toDay }) => toDay) };
}

/** What some years tell; those that tell nothing are left out. */
const known = (years: readonly StartsOfYear[], what: (year: StartsOfYear) => number): number[] =>
  years.map(what).filter((value) => !Number.isNaN(value));
/** Fit plants that wait longer in their trays are no good for a harvest on time: common practice, no source [d]. */
const MAX_WAIT_DAYS = 14;

/** Sowings in trays in a room, planted out when they are fit and nights bear them: those that need not wait long for it. */
export function indoorStarts(season: PlanSeason, roomC: number, bears: (date: PlainDate) => boolean): PlanStart[] {
  const { crop, seed, years, nDays, firstDate } = season;
  const days = daysInRoom(crop, roomC);
  if (days === null || crop.weeksInTrays === null) return [];
  const stand = seed.curve.bestPercent * shareAt(seed.curve, roomC);
  return Array.from({ length: nDays }, (_, day): PlanStart => {
    const indoors = indoorsOf(crop, addDays(firstDate, day), roomC, bears, MAX_WAIT_DAYS);
    const half = day + Math.round(days);
    const outDay = indoors ? daysBetween(firstDate, indoors.plantOut) : NaN;
    const told = indoors ? years.map((year) => year.pickedFromTray(outDay)) : [];
    const pickings = told.filter((span) => span !== undefined);
    const picked = middlePicking(pickings);
    return {
      day,
      method: 'indoors',
      isShaded: false,
      isOpen: picked !== null,
      ripeDay: picked ? middleOf(picked) : NaN,
      half: { p10: half, p50: half, p90: half },
      stand,
      ifHeldAreLost: stand,
      hotHours: 0,
      whyNot: null,
      indoors,
      picked,
      reach: (week) => shareOf(pickings, (span) => span !== null && isWithin(span, week)),
    };
  });
}

/** The share of a laboratory's stand that trays give, where beds give less: our assumption. */
const IN_TRAYS: Span = { from: 0.8, to: 1 };

/** The share of a start's seeds that become plants; of those that heat or cold holds too long none may, or all. */
export function plantsPerSeed({ method, stand, ifHeldAreLost }: PlanStart, { field }: Crop): UncertainShare {
  const { from, to } = method === 'indoors' ? IN_TRAYS : field;
  return plantShare({ germinated: stand / 100, probits: [] }, { from: from * (ifHeldAreLost / stand), to });
}

/**
 * When plants that grow from a day on are picked, in days since a first date: as `grownOn` says, for many days at once.
 *
 * @param nDays Days that may be asked.
 */
export function ripening(
  { fromDays, toDays }: HarvestPeriod,
  firstDate: PlainDate,
  nDays: number,
  latitude: number | null,
): (day: number) => DaySpan {
  const first = dayOfYear(firstDate);
  // At half the pace growth takes twice as long.
  const grown = new Float64Array(nDays + 2 * toDays + 1);
  for (let day = 1; day < grown.length; day++) grown[day] = grown[day - 1]! + growthPace(first + day - 1, latitude);
  const after = (day: number, days: number): number => {
    let [from, to] = [day + days, day + 2 * days];
    while (from < to) {
      const half = (from + to) >> 1;
      if (grown[half]! - grown[day]! >= days - 1e-9) to = half;
      else from = half + 1;
    }
    return from;
  };
  return (day) => ({ fromDay: after(day, fromDays), toDay: after(day, toDays) - 1 });
}

const middleOf = ({ fromDay, toDay }: DaySpan): number => (fromDay + toDay) / 2;
const isWithin = (span: DaySpan, week: DaySpan): boolean => span.fromDay <= week.toDay && span.toDay >= week.fromDay;

function spreadOf(values: readonly number[]): PlanStart['half'] {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const at = (p: number): number => hazenQuantile(sorted, p);
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const middle = (values: readonly number[]): number => spreadOf(values)?.p50 ?? NaN;

const shareOf = <T>(all: readonly T[], is: (one: T) => boolean): number =>
  all.length === 0 ? 0 : all.filter(is).length / all.length;
