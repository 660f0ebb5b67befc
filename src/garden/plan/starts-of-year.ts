import { datesInYears, usualCriteria } from '../../answers/windows/dates-in-years.js';
import { growthOfYear, type HarvestSeason, STAND_DAYS } from '../../answers/windows/harvest-season.js';
import type { WhyNot } from '../../answers/windows/why-nots.js';
import type { YearOfDates } from '../../answers/windows/year-of-dates.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { Crop, FrostClass } from '../../germination/crop.js';
import type { Seed } from '../../germination/run/cohorts.js';
import type { Fate } from '../../growth/fate.js';
import { plantingOutOf } from '../../growth/tray-dates.js';
import { fromTray } from '../../growth/tray-growth.js';
import type { HarvestPeriod } from '../sowing/harvest-period.js';
import type { DaySpan } from './batches.js';

/** What the starts of a plan's every year have in common. */
export interface StartsAsked {
  readonly crop: Crop;
  readonly seed: Seed;
  readonly picking: HarvestPeriod;
  readonly nDays: number;
  /** When plants that grow from a day on are picked by the published days, where no harvest is judged. */
  ripe(day: number): DaySpan;
  /** The demands of the harvest on the season; null: emergence alone is judged. */
  readonly harvest: HarvestSeason | null;
  /** The soil of a mean year on each date [°C]; shape (nDays). */
  readonly soilC: Float64Array;
}

/** What a sowing on each day would have done in one year. */
export interface StartsOfYear {
  /** 1: good, at least fair, or fair but thin, as sowing windows judge it; 0: not; NaN: not known. */
  readonly good: Float64Array;
  readonly fair: Float64Array;
  readonly thin: Float64Array;
  /** The day on which half was up; NaN where none came. */
  readonly halfDay: Float64Array;
  readonly stand: Float64Array;
  readonly ifHeldAreLost: Float64Array;
  readonly hotHours: Float64Array;
  readonly whyNot: readonly (WhyNot | null)[];
  /** When the sowing of a day is picked; null: it is not. */
  picked(day: number): DaySpan | null;
  /** When plants put out of their trays on a day are picked; null: they are not; undefined: not known. */
  pickedFromTray(outDay: number): DaySpan | null | undefined;
}

/** Grown plants of a crop of whose harvest nothing is known are over with a night so cold: common practice, no source [°C]. */
export const ENDS_C: Readonly<Record<FrostClass, number>> = { tender: 0, 'half-hardy': -4, hardy: -9 };

/** The stand of a plan's sowing is counted so long after it, as that of sowing windows [d]. */
export const planStandDays = (crop: Crop): number => Math.max(STAND_DAYS, crop.maxDays);

/** A year's part in a plan: the sowings of every day of the season, judged as sowing windows judge them. */
export function startsOfYear(asked: StartsAsked, year: YearOfDates, shouldStop?: ShouldStop): StartsOfYear {
  const { crop, seed, nDays, harvest, soilC } = asked;
  const criteria = { ...usualCriteria, maxDays: crop.maxDays };
  const season = { seed, viablePercent: seed.curve.bestPercent, crop, criteria, years: [year], harvest, soilC };
  const { all } = datesInYears(season, shouldStop);
  const of = (what: (date: (typeof all)[number], day: number) => number | undefined): Float64Array =>
    Float64Array.from({ length: nDays }, (_, day) => what(all[day]!, day) ?? NaN);
  const hot = hotHoursOf(year, seed.hotThresholdC);
  const thin = of((date) => date.thin);
  const halfDay = of(({ halfDays }, day) => halfDays[0] && Math.floor(day + NOON + halfDays[0]));
  const halfH = of(({ halfDays }, day) => halfDays[0] && year.sowH[day]! + 24 * harvestFactor(harvest) * halfDays[0]);
  const pickedBy = pickings(asked, year);
  return {
    good: of(({ good }) => good),
    fair: of(({ fair }) => fair),
    thin,
    halfDay,
    stand: of(({ stand }) => stand[0]),
    ifHeldAreLost: of(({ ifHeldAreLost }) => ifHeldAreLost[0]),
    hotHours: of(({ halfDays }, day) => halfDays[0] && hot(day, halfDays[0])),
    whyNot: all.slice(0, nDays).map(({ whyNot }) => whyNot),
    picked: (day) => (thin[day] === 1 ? (pickedBy.inPlace(year.sowH[day]!, halfH[day]!, halfDay[day]!) ?? null) : null),
    pickedFromTray: pickedBy.fromTray,
  };
}

const harvestFactor = (harvest: HarvestSeason | null): number => harvest?.bedFactor ?? 1;
/** A sowing without a time is made at noon [d]. */
const NOON = 0.5;

/** When plants of a year are picked: from the first harvest of middling kinds on, for as long as a batch lasts, up to the frost that ends it. */
function pickings(asked: StartsAsked, year: YearOfDates) {
  const { crop, picking, ripe, harvest } = asked;
  const ends = endsBy(year, endC(crop, harvest));
  const lastsDays = picking.toDays - picking.fromDays;
  const inPlace = harvest && growthOfYear(harvest, year);
  const needs = plantingOutOf(crop);
  const grownOn =
    harvest &&
    crop.growth &&
    needs &&
    growthOfYear({ ...harvest, ...fromTray(crop.growth, harvest.kinds, needs) }, year);
  const firstDay = year.minFromH / 24;
  const spanOf = ({ why, harvestDay }: Fate): DaySpan | null | undefined => {
    if (why === undefined) return undefined;
    if (Number.isNaN(harvestDay) || !(why === null || why === 'bolts' || why === 'over-winter')) return null;
    const fromDay = Math.round(firstDay + harvestDay);
    return endedBy({ fromDay, toDay: fromDay + lastsDays - 1 }, ends(fromDay));
  };
  const byDays = (day: number): DaySpan | null => endedBy(ripe(day), ends(day));
  return {
    inPlace: (sownH: number, upH: number, halfDay: number) => (inPlace ? spanOf(inPlace(sownH, upH)) : byDays(halfDay)),
    fromTray: (outDay: number) => (grownOn ? spanOf(grownOn(24 * outDay, 24 * outDay)) : byDays(outDay)),
  };
}

/** A night so cold ends what is ripe [°C]; null: none does, or none is known to. */
function endC({ frost }: Crop, harvest: HarvestSeason | null): number | null {
  const own = harvest?.growth.harvest;
  return own ? own.endFrostC : frost && ENDS_C[frost];
}

export const endedBy = ({ fromDay, toDay }: DaySpan, endDay: number): DaySpan | null =>
  fromDay < endDay ? { fromDay, toDay: Math.min(toDay, endDay - 1) } : null;

/** The first day, from a day on, whose night ends what grows. What is not known of a year's air ends nothing. */
function endsBy({ minC, minFromH }: YearOfDates, limitC: number | null): (day: number) => number {
  if (!minC || limitC === null) return () => Infinity;
  const first = Math.round(minFromH / 24);
  const next = new Float64Array(minC.length + 1).fill(Infinity);
  for (let i = minC.length - 1; i >= 0; i--) next[i] = minC[i]! <= limitC ? first + i : next[i + 1]!;
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
