import { type FindPast, kindOfYears, pastSoil } from '../../answers/ahead/past-soil.js';
import { planSafety } from '../../answers/forecast/safety-notes.js';
import { seedOf } from '../../answers/forecast/seed-of.js';
import { daysOutdoors, usualDaysOutdoors } from '../../answers/windows/days-outdoors.js';
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
import { type Batch, batchesFor, type DaySpan, MIN_REACH } from './batches.js';
import type { Advice, GapFact } from './plan-facts.js';
import { adviceOn, assumptionsOf, type GapWhy, gapFact, warningsOf } from './plan-notes.js';
import type { PlanQuestion } from './plan-question.js';
import { type PlanYears, planYears } from './plan-years.js';
import {
  directStarts,
  indoorStarts,
  maxPlanDays,
  type PlanSeason,
  type PlanStart,
  plantsPerSeed,
  ripening,
  startsOfYear,
} from './starts.js';

export interface PlanSowing {
  readonly date: PlainDate;
  readonly method: SowingMethod;
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
 * Every possible sowing is run in every past year. Sowings are aimed so that one is picked when the one before is over;
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
  const common = { crop, seed, picking, firstDate, nDays, ripe };
  const known = planYears(question, firstDate, nDays, findPast, shouldStop);
  const seasonOf = (years: readonly YearOfDates[]): PlanSeason => ({
    ...common,
    years: years.map((year) => startsOfYear(common, year, shouldStop)),
  });
  const season = seasonOf(known.years);
  const weeks = weeksOf(harvest, firstDate);
  const batchWeeks = weeksOfHarvest(picking);

  const direct = directStarts(season);
  const shut = batchesFor(weeks, batchWeeks, [direct]).unreached.map((week) => whyShut(weeks[week]!, [direct], season));
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
  const years = known.isUsual ? 0 : known.years.length;
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
      ...assumptionsOf(crop, picking, { years, kind: kindOfYears(question), roomC }),
    ],
    warnings: [
      ...known.past.warnings,
      ...warningsOf(crop, { years, airIsKnown: known.past.air !== null, isTrayKnown: outdoors !== null }),
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
  return Math.ceil(2 * picking.toDays + Math.max(maxPlanDays(crop), inTrays)) + 7;
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

/** Why nothing reaches a week: a frost, or what shuts the bed to the sowings that would come up in time for it. */
function whyShut(week: DaySpan, [direct, ...others]: readonly (readonly PlanStart[])[], season: PlanSeason): GapWhy {
  const isTaken = (start: PlanStart): boolean => start.isOpen && start.reachWithoutFrost(week) >= MIN_REACH;
  if ([direct!, ...others].some((starts) => starts.some(isTaken))) return 'frost';
  if (direct!.length === 0) return 'too-cold';
  const middle = (week.fromDay + week.toDay) / 2;
  const missesBy = ({ day, half }: PlanStart): number => {
    const { fromDay, toDay } = season.ripe(Math.round(half?.p50 ?? day + season.crop.maxDays));
    return Math.abs((fromDay + toDay) / 2 - middle);
  };
  const { whyNot } = direct!.reduce((best, start) => (missesBy(start) < missesBy(best) ? start : best));
  return whyNot === 'too-hot' ? 'too-hot' : whyNot === 'frost-to-come' ? 'frost' : 'too-cold';
}

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
  const { fromDay, toDay } = season.ripe(grownFrom);
  const plants = harvest.perWeek * weeks.length;
  return {
    date: dated(start.day),
    method,
    sown,
    shaded: start.isShaded,
    seeds: fewestSeeds(plants, SEEDS_SURENESS, plantsPerSeed(start, crop))?.seeds ?? MAX_SEEDS,
    plants,
    half: {
      date: dated(half!.p50),
      range: indoors || isUsual ? null : { from: dated(half!.p10), to: dated(half!.p90) },
    },
    harvest: { from: dated(fromDay), to: dated(toDay), slowed: toDay - grownFrom !== season.picking.toDays - 1 },
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
