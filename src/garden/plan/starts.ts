import { commonest, type DateInYears, datesInYears } from '../../answers/windows/dates-in-years.js';
import { smoothed } from '../../answers/windows/sureness.js';
import type { WhyNot } from '../../answers/windows/why-nots.js';
import type { YearOfDates } from '../../answers/windows/year-of-dates.js';
import { addDays, dayOfYear, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { UncertainShare } from '../../basics/numerics/chance-of-count.js';
import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { Crop, FrostClass, Span } from '../../germination/crop.js';
import { shareAt } from '../../germination/curve/curve.js';
import type { Seed } from '../../germination/run/cohorts.js';
import { plantShare } from '../learning/plant-share.js';
import { growthPace } from '../sowing/harvest.js';
import type { HarvestPeriod } from '../sowing/harvest-period.js';
import { daysInRoom, type IndoorStart, indoorsOf } from '../sowing/indoors.js';
import type { BatchStart, DaySpan } from './batches.js';

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
  /** The share of years in which some of it would have been ripe between two days, had no frost taken it before. */
  reachWithoutFrost(week: DaySpan): number;
}

/** What all starts of a plan have in common. */
export interface PlanSeason {
  readonly crop: Crop;
  readonly seed: Seed;
  readonly picking: HarvestPeriod;
  /** The first possible sowing: day 0. */
  readonly firstDate: PlainDate;
  readonly nDays: number;
  /** When plants that grow from a day on are picked. */
  ripe(day: number): DaySpan;
  readonly years: readonly StartsOfYear[];
}

/**
 * A thinner stand than a sowing window asks for is made up for by more seed: half of what the lot can give will do, but
 * without what heat or cold held. Chosen at 13 stations: with a quarter plans promised spinach that did not come.
 */
const PLAN_SHARE = 0.5;
/** A date counts as open where it was good in so many of the years. */
const MIN_SURENESS = 0.5;
/** Grown plants of a crop are over with a night so cold: common practice, no source [°C]. */
export const ENDS_C: Readonly<Record<FrostClass, number>> = { tender: 0, 'half-hardy': -4, hardy: -9 };

/** What a sowing on each day would have done in one year. */
export interface StartsOfYear {
  /** 1: it came up well, 0: not; NaN: not known. */
  readonly good: Float64Array;
  /** The day on which half was up; NaN where none came. */
  readonly halfDay: Float64Array;
  readonly stand: Float64Array;
  readonly ifHeldAreLost: Float64Array;
  readonly hotHours: Float64Array;
  readonly whyNot: readonly (WhyNot | null)[];
  /** The first day, from a day on, whose night ends what grows. */
  endsBy(day: number): number;
}

/** A year's part in a plan: the sowings of every day of the season, as it would have had them. */
export function startsOfYear(
  { crop, seed, nDays }: Pick<PlanSeason, 'crop' | 'seed' | 'nDays'>,
  year: YearOfDates,
  shouldStop?: ShouldStop,
): StartsOfYear {
  const criteria = { share: PLAN_SHARE, shareIfHeld: PLAN_SHARE, maxDays: maxPlanDays(crop), sureness: MIN_SURENESS };
  const asked = { seed, viablePercent: seed.curve.bestPercent, crop, criteria, years: [year] };
  const { all } = datesInYears(asked, shouldStop);
  const of = (what: (date: DateInYears, day: number) => number | undefined): Float64Array =>
    Float64Array.from({ length: nDays }, (_, day) => what(all[day]!, day) ?? NaN);
  const hot = hotHoursOf(year, seed.hotThresholdC);
  return {
    good: of(({ good }) => good),
    halfDay: of(({ halfDays }, day) => halfDays[0] && Math.floor(day + NOON + halfDays[0])),
    stand: of(({ stand }) => stand[0]),
    ifHeldAreLost: of(({ ifHeldAreLost }) => ifHeldAreLost[0]),
    hotHours: of(({ halfDays }, day) => halfDays[0] && hot(day, halfDays[0])),
    whyNot: all.slice(0, nDays).map(({ whyNot }) => whyNot),
    endsBy: endsBy(year, crop.frost),
  };
}

/** A sowing of a plan may lie twice as long as one that is worth making where nothing hangs on it [d]. */
export const maxPlanDays = (crop: Crop): number => 2 * crop.maxDays;

/** Sowings in the bed itself, on every day. */
export function directStarts(season: PlanSeason, isShaded = false): PlanStart[] {
  const { years, nDays, picking, ripe } = season;
  if (picking.countedFrom === 'planting-out') return [];
  const good = smoothed(Array.from({ length: nDays }, (_, day) => mean(known(years, ({ good }) => good[day]!))));
  let latest = -Infinity;
  return Array.from({ length: nDays }, (_, day): PlanStart => {
    const told = years.filter((year) => !Number.isNaN(year.good[day]!));
    const grown = told.map((year) => (year.good[day] === 1 ? ripe(year.halfDay[day]!) : null));
    const pickings = grown.map((span, i) => span && endedBy(span, told[i]!.endsBy(told[i]!.halfDay[day]!)));
    const half = spreadOf(known(told, ({ halfDay }) => halfDay[day]!));
    const isOpen = half !== null && good[day]! >= MIN_SURENESS;
    // Half of a lot is not up sooner for a later sowing, but half of what is up by the count may be.
    if (isOpen) latest = Math.max(latest, middleOf(ripe(Math.round(half.p50))));
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
      reach: (week) => shareOf(pickings, (span) => span !== null && isWithin(span, week)),
      reachWithoutFrost: (week) => shareOf(grown, (span) => span !== null && isWithin(span, week)),
    };
  });
}

/** What some years tell; those that tell nothing are left out. */
const known = (years: readonly StartsOfYear[], what: (year: StartsOfYear) => number): number[] =>
  years.map(what).filter((value) => !Number.isNaN(value));
/** A sowing without a time is made at noon [d]. */
const NOON = 0.5;
/** Fit plants that wait longer in their trays are no good for a harvest on time: common practice, no source [d]. */
const MAX_WAIT_DAYS = 14;

/** Sowings in trays in a room, planted out when they are fit and nights bear them: those that need not wait long for it. */
export function indoorStarts(season: PlanSeason, roomC: number, bears: (date: PlainDate) => boolean): PlanStart[] {
  const { crop, seed, years, nDays, firstDate, picking, ripe } = season;
  const days = daysInRoom(crop, roomC);
  if (days === null || crop.weeksInTrays === null) return [];
  const stand = seed.curve.bestPercent * shareAt(seed.curve, roomC);
  return Array.from({ length: nDays }, (_, day): PlanStart => {
    const indoors = indoorsOf(crop, addDays(firstDate, day), roomC, bears, MAX_WAIT_DAYS);
    const half = day + Math.round(days);
    const plantOut = indoors ? daysBetween(firstDate, indoors.plantOut) : NaN;
    const grown = indoors ? ripe(picking.countedFrom === 'sowing' ? half : plantOut) : null;
    // A plant that is ripe in its tray gives no harvest.
    const span = grown && grown.toDay > plantOut ? { ...grown, fromDay: Math.max(grown.fromDay, plantOut) } : null;
    return {
      day,
      method: 'indoors',
      isShaded: false,
      isOpen: span !== null,
      ripeDay: span ? middleOf(span) : NaN,
      half: { p10: half, p50: half, p90: half },
      stand,
      ifHeldAreLost: stand,
      hotHours: 0,
      whyNot: null,
      indoors,
      reach: (week) =>
        shareOf(years, (year) => {
          const ended = span && endedBy(span, year.endsBy(plantOut));
          return ended !== null && isWithin(ended, week);
        }),
      reachWithoutFrost: (week) => Number(span !== null && isWithin(span, week)),
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

const endedBy = ({ fromDay, toDay }: DaySpan, endDay: number): DaySpan | null =>
  fromDay < endDay ? { fromDay, toDay: Math.min(toDay, endDay - 1) } : null;

/** The first day, from a day on, whose night ends what grows. What is not known of a year's air ends nothing. */
function endsBy({ minC, minFromH }: YearOfDates, frost: FrostClass | null): (day: number) => number {
  if (!minC || !frost) return () => Infinity;
  const first = Math.round(minFromH / 24);
  const next = new Float64Array(minC.length + 1).fill(Infinity);
  for (let i = minC.length - 1; i >= 0; i--) next[i] = minC[i]! <= ENDS_C[frost] ? first + i : next[i + 1]!;
  return (day) => next[Math.min(minC.length, Math.max(0, day - first))]!;
}

/** Hours hotter than a threshold from noon of a day on, for so many days. */
function hotHoursOf({ hourlyC, sowH }: YearOfDates, thresholdC: number): (day: number, days: number) => number {
  const sums = new Float64Array(hourlyC.length + 1);
  for (let hour = 0; hour < hourlyC.length; hour++) sums[hour + 1] = sums[hour]! + Number(hourlyC[hour]! > thresholdC);
  return (day, days) => {
    const from = sowH[day]!;
    return sums[Math.min(hourlyC.length, Math.ceil(from + 24 * days))]! - sums[from]!;
  };
}

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
