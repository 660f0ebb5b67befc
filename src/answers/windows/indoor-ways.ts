import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { plantingOutGrades } from '../../growth/planting-out.js';
import { DEFAULT_ROOM_C, hardenOffBefore } from '../../growth/tray-dates.js';
import { fromTray } from '../../growth/tray-growth.js';
import type { PastSoil } from '../ahead/past-soil.js';
import { MIN_YEARS } from '../ahead/past-soil.js';
import type { QuestionBed } from '../question.js';
import type { Site } from '../soil/known-hours.js';
import type { WindowCriteria } from './dates-in-years.js';
import { daysOutdoors } from './days-outdoors.js';
import { type Grade, gradeOfShares, gradeRuns, windowRuns } from './grades.js';
import { type HarvestDates, harvestOfRun, type RipeDays } from './harvest-dates.js';
import { growthOfYear, type HarvestSeason, kindSpread } from './harvest-season.js';
import { bestDay, smoothed } from './sureness.js';
import type { YearOfDates } from './year-of-dates.js';

/** Dates in their order, `best` among them. */
export interface WayDates {
  readonly from: PlainDate;
  readonly best: PlainDate;
  readonly to: PlainDate;
}

/** Sown in trays in a room, and planted out. */
export interface IndoorWay {
  readonly method: 'indoors';
  readonly grade: Grade;
  /** The room's temperature, day and night [°C]. */
  readonly roomC: number;
  readonly sow: WayDates;
  /** For what is planted out on the best date. */
  readonly hardenOff: { readonly from: PlainDate; readonly to: PlainDate };
  readonly plantOut: WayDates;
  readonly harvest: HarvestDates | null;
}

export interface IndoorAsked {
  readonly crop: Crop;
  readonly site: Site;
  readonly bed: QuestionBed;
  readonly criteria: WindowCriteria;
  /** The first date of sowing, and how many there are. */
  readonly from: PlainDate;
  readonly nDates: number;
}

/**
 * Sowing dates in trays, for planting out on dates that nights, soil and ground bear, with a harvest in most years.
 *
 * @param season What the harvest of the same crop asks, sown in place.
 * @param past   The bed's past: nights and soil for planting out.
 * @param years  The same years as dates in place are judged by. A plant is followed from its planting out on.
 * @returns In the order of dates; none where the crop is not raised in trays, fewer than three years are known, or no date suits.
 */
export function indoorWays(
  { crop, site, bed, criteria, from, nDates }: IndoorAsked,
  season: HarvestSeason,
  past: PastSoil,
  years: readonly YearOfDates[],
): IndoorWay[] {
  const needs = crop.plantingOut;
  if (!needs || !past.air || bed.kind === 'indoors' || bed.kind === 'tray' || years.length < MIN_YEARS) return [];
  // Young plants stand deeper than seed, but the bed's past is known at the seed: a day's mean differs little.
  const days = needs.leastSoilC === null ? { ...past.air, soilC: null } : daysOutdoors(past, site.zone)!;
  // Soil in pots is at hand at any time.
  const { ground } = season;
  const place = { latitudeDeg: ground && site.latitude, ...(ground ? { ground } : {}) };
  const gradeOn = plantingOutGrades(needs, days, { ...place, drains: bed.kind === 'raised-bed' });
  const leadDays = 7 * needs.weeksFromSowing;
  const firstOut = addDays(from, leadDays);
  const plantings = Array.from({ length: nDates }, (_, day) => gradeOn(addDays(firstOut, day)));
  const isFit = plantings.map((grade) => grade === 'good' || grade === 'fair');
  if (!isFit.includes(true)) return [];

  // Shares are smoothed over a week: dates beside those that bear plants count too.
  const isAsked = isFit.map((_, day) =>
    isFit.slice(Math.max(0, day - BESIDE_DAYS), day + BESIDE_DAYS + 1).includes(true),
  );
  const dates = plantedInYears(crop, season, years, isAsked);
  const good = smoothed(dates.map((date) => date.good));
  const fair = smoothed(dates.map((date) => date.fair));
  const grades = plantings.map((planting, day): Grade => {
    if (!isFit[day]) return 'poor';
    const grade = gradeOfShares(good[day]!, fair[day]!, criteria);
    return planting === 'fair' && grade === 'good' ? 'fair' : grade;
  });
  return windowRuns(gradeRuns(grades), MIN_FAIR_DAYS).flatMap((run): IndoorWay[] => {
    const best = bestDay(good, [run], 'earliest')?.day ?? run.from;
    const datesAfter = (lead: number): WayDates => ({
      from: addDays(from, run.from + lead),
      best: addDays(from, best + lead),
      to: addDays(from, run.to + lead),
    });
    const plantOut = datesAfter(leadDays);
    return [
      {
        method: 'indoors',
        grade: run.grade,
        roomC: DEFAULT_ROOM_C,
        sow: datesAfter(0),
        hardenOff: hardenOffBefore(plantOut.best),
        plantOut,
        harvest: harvestOfRun(dates, run, firstOut),
      },
    ];
  });
}

/** All of a sowing in trays goes out at once: a week of fair dates is enough [d]. */
const MIN_FAIR_DAYS = 7;

interface PlantedInYears extends RipeDays {
  /** The share of years in which it was harvested; NaN where fewer than three tell. */
  readonly good: number;
  /** And that in which it at least was after a winter, or bolting. */
  readonly fair: number;
}

const NOT_ASKED: PlantedInYears = {
  good: NaN,
  fair: NaN,
  earlyDays: new Float64Array(),
  lateDays: new Float64Array(),
};
/** Around a date, so many days before and after it make its best a sure one [d]. */
const BESIDE_DAYS = 7;

/** The fates, over the years, of plants put out so many weeks after each date. */
function plantedInYears(
  crop: Crop,
  season: HarvestSeason,
  years: readonly YearOfDates[],
  isAsked: readonly boolean[],
): PlantedInYears[] {
  const needs = crop.plantingOut!;
  const planted = { ...season, ...fromTray(crop.growth!, kindSpread(crop), needs) };
  const fates = years.map((year) => growthOfYear(planted, year));
  return isAsked.map((asked, day) => {
    if (!asked) return NOT_ASKED;
    const outH = 24 * (day + 7 * needs.weeksFromSowing);
    const early: number[] = [];
    const late: number[] = [];
    let [known, good, fair] = [0, 0, 0];
    for (const [i, fateOf] of fates.entries()) {
      const fate = fateOf?.(outH, outH);
      if (fate?.why === undefined) continue;
      known++;
      const isFair = fate.why === 'bolts' || fate.why === 'over-winter';
      if (fate.why === null) good++;
      if (fate.why !== null && !isFair) continue;
      fair++;
      const outDay = (outH - years[i]!.minFromH) / 24;
      if (!Number.isNaN(fate.earlyDay)) early.push(fate.earlyDay - outDay);
      if (!Number.isNaN(fate.lateDay)) late.push(fate.lateDay - outDay);
    }
    const isKnown = known >= MIN_YEARS;
    return {
      good: isKnown ? good / known : NaN,
      fair: isKnown ? fair / known : NaN,
      earlyDays: Float64Array.from(early).sort(),
      lateDays: Float64Array.from(late).sort(),
    };
  });
}
