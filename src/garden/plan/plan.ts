import { type FindPast, kindOfYears, pastSoil } from '../../answers/ahead/past-soil.js';
import { planSafety } from '../../answers/forecast/safety-notes.js';
import { seedOf } from '../../answers/forecast/seed-of.js';
import { usualCriteria } from '../../answers/windows/dates-in-years.js';
import { daysOutdoors, usualDaysOutdoors } from '../../answers/windows/days-outdoors.js';
import type { Grade } from '../../answers/windows/grades.js';
import { harvestSeason, soilCourse } from '../../answers/windows/harvest-season.js';
import type { WhyNot } from '../../answers/windows/why-nots.js';
import type { YearOfDates } from '../../answers/windows/year-of-dates.js';
import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import { neverStop, type ShouldStop } from '../../basics/stop.js';
import type { Caution, Crop } from '../../germination/crop.js';
import { DEFAULT_ROOM_C } from '../../growth/tray-dates.js';
import { fewestSeeds, MAX_SEEDS } from '../lots/fewest-seeds.js';
import { type HarvestPeriod, harvestPeriodOf, weeksOfHarvest } from '../sowing/harvest-period.js';
import { bearsPlants, daysInRoom } from '../sowing/indoors.js';
import type { PlanFields, SowingMethod } from '../store/season-store.js';
import { type Batch, batchesFor, type DaySpan } from './batches.js';
import type { Advice, GapFact } from './plan-facts.js';
import { adviceOn, assumptionsOf, type GapWhy, gapFact, insteadOn, warningsOf } from './plan-notes.js';
import type { PlanQuestion } from './plan-question.js';
import { type PlanYears, planYears } from './plan-years.js';
import {
  directStarts,
  gradesOfStarts,
  indoorStarts,
  type PlanSeason,
  type PlanStart,
  plantsPerSeed,
  ripening,
} from './starts.js';
import { planStandDays, startsOfYear } from './starts-of-year.js';

export interface PlanSowing {
  readonly date: PlainDate;
  readonly method: SowingMethod;
  /** The grade that sowing windows give its date in the bed as it is. */
  readonly grade: Grade;
  /** The help that it rests on where its date is poor without; null: it needs none. */
  readonly instead: { readonly action: 'shade' | 'start-indoors'; readonly text: Advice } | null;
  /** Has it been made? */
  readonly sown: boolean;
  /** Is it counted on that the row is shaded by half until it is up? */
  readonly shaded: boolean;
  readonly seeds: number;
  readonly plants: number;
  /** When half is up in the middle of the years; range: the middle 80 % of them, null where a room or a usual year says it. */
  readonly half: {
    readonly date: PlainDate;
    readonly range: { readonly from: PlainDate; readonly to: PlainDate } | null;
  };
  readonly harvest: { readonly from: PlainDate; readonly to: PlainDate; readonly slowed: boolean };
  /** The share of past years in which each of its weeks was reached; null where a usual year stands for all. */
  readonly sureness: number | null;
  readonly indoors: {
    readonly roomC: number;
    readonly hardenOff: { readonly from: PlainDate; readonly to: PlainDate };
    readonly plantOut: PlainDate;
  } | null;
  readonly advice: readonly Advice[];
}

export interface PlanGap {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly why: GapWhy;
  readonly text: GapFact;
}

export interface GardenPlan {
  readonly years: PlanYears['told'];
  /** How many weeks one sowing is the harvest of; null where the days to maturity are not known. */
  readonly weeksPerSowing: number | null;
  readonly sowings: readonly PlanSowing[];
  readonly gaps: readonly PlanGap[];
  readonly cautions: readonly Caution[];
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/**
 * What to sow when, so that there is something to harvest in every week from one date to another.
 *
 * Every possible sowing is run in every past year, and graded as sowing windows grade it: one on a poor date is none, unless
 * shade or a tray makes it good. Sowings are aimed so that one is picked when the one before is over;
 * where the bed is shut by heat, the same bed under shade is tried, and then trays. What is left is a gap.
 *
 * @param question The bed, the crop, the harvest, and what is known.
 * @throws {RequestError} `no-past-years` where neither three past years are known nor normals.
 */
export function gardenPlan(
  question: PlanQuestion,
  findPast: FindPast = pastSoil,
  shouldStop: ShouldStop = neverStop,
): GardenPlan {
  const { crop, harvest, bed, site } = question;
  const picking = harvestPeriodOf(crop);
  if (!picking) return planOfUnknown(question);
  const roomC = bed.roomC ?? DEFAULT_ROOM_C;
  const firstDate = addDays(harvest.from, -longestAhead(crop, picking, roomC));
  const nDays = daysBetween(firstDate, harvest.to) + 1;
  const seed = seedOf({ crop, lot: null, timeFactor: null });
  const ripe = ripening(picking, firstDate, nDays + MAX_TO_GROW_DAYS, site.latitude);
  const known = planYears(question, firstDate, nDays, findPast, shouldStop);
  const dates = Array.from({ length: nDays }, (_, day) => addDays(firstDate, day));
  const toHarvest = harvestSeason({ crop, site, bed, from: firstDate, timeFactor: null }, known.past.air, dates);
  const seasonOf = (yearsOfBed: readonly YearOfDates[]): PlanSeason => {
    const soilC = soilCourse(known.isUsual ? yearsOfBed.slice(0, 1) : yearsOfBed, nDays);
    const common = { crop, seed, picking, firstDate, nDays, ripe, harvest: toHarvest, soilC };
    const years = yearsOfBed.map((year) => startsOfYear(common, year, shouldStop));
    const { sureness } = usualCriteria;
    return { ...common, years, gradeOf: gradesOfStarts(years, nDays, { sureness, isUsual: known.isUsual }) };
  };
  const season = seasonOf(known.years);
  const weeks = weeksOf(harvest, firstDate);
  const batchWeeks = weeksOfHarvest(picking);

  const direct = directStarts(season);
  const shut = batchesFor(weeks, batchWeeks, [direct]).unreached.map((week) => whyNotFor(weeks[week]!, direct, season));
  const inShade = shut.includes('too-hot') ? known.inShade() : null;
  const outdoors = known.isUsual
    ? usualDaysOutdoors(known.past, site.zone, crop.frost)
    : daysOutdoors(known.past, site.zone);
  const bears = bearsPlants(crop, outdoors, { latitudeDeg: site.latitude, drains: bed.kind === 'raised-bed' });
  const kinds = [direct, inShade ? directStarts(seasonOf(inShade), true) : [], indoorStarts(season, roomC, bears)];
  const todayDay = daysBetween(firstDate, question.today);
  const isSown = ({ day, method }: PlanStart): boolean =>
    question.sown.some((one) => one.method === method && daysBetween(firstDate, one.date) === day);
  const possible = kinds.map((starts) => starts.filter((start) => start.day >= todayDay || isSown(start)));
  const { batches, unreached } = batchesFor(weeks, batchWeeks, possible, possible.flat().filter(isSown));
  const never = new Set(batchesFor(weeks, batchWeeks, kinds).unreached);
  const whyOf = (week: number): GapWhy => (never.has(week) ? whyShut(weeks[week]!, kinds, season) : 'too-late');
  const years = known.told.count;
  return {
    years: known.told,
    weeksPerSowing: batchWeeks,
    sowings: batches.map((batch) =>
      sowingOf(batch, question, season, { roomC, isUsual: known.isUsual, sown: isSown(batch.start) }),
    ),
    gaps: gapsOf(unreached, weeks, whyOf, question, firstDate),
    cautions: crop.cautions,
    assumptions: [
      ...known.past.assumptions,
      ...assumptionsOf(crop, picking, { years, kind: kindOfYears(question), roomC, isJudged: toHarvest !== null }),
    ],
    warnings: [
      ...known.past.warnings,
      ...warningsOf(crop, {
        years,
        airIsKnown: known.past.air !== null,
        isTrayKnown: outdoors !== null,
        isJudged: toHarvest !== null,
      }),
      ...planSafety(
        bed,
        batches.some(({ start }) => start.method === 'indoors'),
      ),
    ],
  };
}

/** Nothing can be planned for a crop whose days to maturity nobody says. */
function planOfUnknown({ crop, harvest: { from, to } }: PlanQuestion): GardenPlan {
  return {
    years: { from: null, to: null, count: 0 },
    weeksPerSowing: null,
    sowings: [],
    gaps: [{ from, to, why: 'maturity-unknown', text: gapFact('maturity-unknown', crop) }],
    cautions: crop.cautions,
    assumptions: [],
    warnings: [],
  };
}

/** So long before a harvest a sowing may be made: coming up, or weeks in trays, and growth at half its pace [d]. */
function longestAhead(crop: Crop, picking: HarvestPeriod, roomC: number): number {
  const inTrays = 7 * (crop.weeksInTrays ?? 0) + Math.min(MAX_IN_ROOM_DAYS, daysInRoom(crop, roomC) ?? 0);
  return Math.ceil(2 * picking.toDays + Math.max(planStandDays(crop), inTrays)) + 7;
}
const MAX_IN_ROOM_DAYS = 60;
/** From the last sowing it takes no longer until plants grow in the garden [d]. */
const MAX_TO_GROW_DAYS = 200;

/** Weeks of a harvest, the last perhaps a short one. */
function weeksOf({ from, to }: PlanFields['harvest'], firstDate: PlainDate): DaySpan[] {
  const [first, last] = [daysBetween(firstDate, from), daysBetween(firstDate, to)];
  return Array.from({ length: Math.ceil((last - first + 1) / 7) }, (_, week) => ({
    fromDay: first + 7 * week,
    toDay: Math.min(last, first + 7 * week + 6),
  }));
}

/** Why the sowing is shut, or fails, that by the published days would be picked in a week; null: nothing is wrong with it. */
function whyNotFor(week: DaySpan, starts: readonly PlanStart[], season: PlanSeason): WhyNot | null {
  if (starts.length === 0) return null;
  const middle = (week.fromDay + week.toDay) / 2;
  const missesBy = ({ day, half }: PlanStart): number => {
    const { fromDay, toDay } = season.ripe(Math.round(half?.p50 ?? day + season.crop.maxDays));
    return Math.abs((fromDay + toDay) / 2 - middle);
  };
  return starts.reduce((best, start) => (missesBy(start) < missesBy(best) ? start : best)).whyNot;
}

/** Why nothing reaches a week: what shuts the bed to its sowings, or the frost after which nothing is picked any more. */
function whyShut(week: DaySpan, [direct, ...others]: readonly (readonly PlanStart[])[], season: PlanSeason): GapWhy {
  const isAfter = (starts: readonly PlanStart[]): boolean => {
    const last = Math.max(...starts.map(({ isOpen, picked }) => (isOpen && picked ? picked.toDay : -Infinity)));
    return last < week.fromDay && starts.some(({ isOpen }) => isOpen);
  };
  const whyNot = whyNotFor(week, direct!, season);
  if (whyNot === null) return [direct!, ...others].some(isAfter) ? 'frost' : 'too-cold';
  return GAP_OF[whyNot];
}

/** Reasons against a sowing, in the few words of gaps. */
const GAP_OF: Readonly<Record<WhyNot, GapWhy>> = {
  'too-cold': 'too-cold',
  'too-hot': 'too-hot',
  'too-slow': 'too-cold',
  'frost-to-come': 'frost',
  'too-late': 'frost',
  'heat-at-harvest': 'too-hot',
  bolts: 'too-hot',
  'day-length': 'too-cold',
  'ground-wet': 'too-cold',
  'over-winter': 'frost',
};

/** So sure a sowing is to give its plants. */
const SEEDS_SURENESS = 0.9;

/** A chosen sowing in a grower's words. */
function sowingOf(
  { start, weeks, sureness }: Batch<PlanStart>,
  { crop, harvest }: PlanQuestion,
  season: PlanSeason,
  { roomC, isUsual, sown }: { readonly roomC: number; readonly isUsual: boolean; readonly sown: boolean },
): PlanSowing {
  const dated = (day: number): PlainDate => addDays(season.firstDate, Math.round(day));
  const { half, method, indoors } = start;
  const isPlantedOut = season.picking.countedFrom === 'planting-out';
  const grownFrom = isPlantedOut ? daysBetween(season.firstDate, indoors!.plantOut) : Math.round(half!.p50);
  const { fromDay, toDay } = start.picked!;
  const plants = harvest.perWeek * weeks.length;
  const grade = season.gradeOf[start.day]!;
  return {
    date: dated(start.day),
    method,
    grade,
    instead: insteadOn(start, grade, crop, roomC),
    sown,
    shaded: start.isShaded,
    seeds: fewestSeeds(plants, SEEDS_SURENESS, plantsPerSeed(start, crop))?.seeds ?? MAX_SEEDS,
    plants,
    half: {
      date: dated(half!.p50),
      range: indoors || isUsual ? null : { from: dated(half!.p10), to: dated(half!.p90) },
    },
    harvest: { from: dated(fromDay), to: dated(toDay), slowed: fromDay - grownFrom > season.picking.fromDays },
    sureness: isUsual ? null : sureness,
    indoors: indoors && { roomC, hardenOff: indoors.hardenOff, plantOut: indoors.plantOut },
    advice: adviceOn(start, crop, roomC),
  };
}

/** Weeks that nothing reaches, those of one reason that follow on one another as one. */
function gapsOf(
  unreached: readonly number[],
  weeks: readonly DaySpan[],
  whyOf: (week: number) => GapWhy,
  { crop }: PlanQuestion,
  firstDate: PlainDate,
): PlanGap[] {
  const runs: { first: number; last: number; why: GapWhy }[] = [];
  for (const week of unreached) {
    const why = whyOf(week);
    const last = runs.at(-1);
    if (last && last.last === week - 1 && last.why === why) last.last = week;
    else runs.push({ first: week, last: week, why });
  }
  return runs.map(({ first, last, why }) => ({
    from: addDays(firstDate, weeks[first]!.fromDay),
    to: addDays(firstDate, weeks[last]!.toDay),
    why,
    text: gapFact(why, crop),
  }));
}
