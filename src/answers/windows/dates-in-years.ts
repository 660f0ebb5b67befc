import type { ShouldStop } from '../../basics/stop.js';
import type { Crop } from '../../germination/crop.js';
import { type SowingOutcomes, sowingsOf } from '../../germination/many/all-sowings.js';
import { COHORTS, type Seed } from '../../germination/run/cohorts.js';
import { frostExposure } from '../../germination/run/frost-exposure.js';
import type { GrowthWhy } from '../../growth/fate.js';
import { growthOfYear, type HarvestSeason, STAND_DAYS, soilCourse } from './harvest-season.js';
import { type WhyNot, whyNots } from './why-nots.js';
import type { YearOfDates } from './year-of-dates.js';

/** What makes a date good in a year, and sure over the years. */
export interface WindowCriteria {
  /** Of what the lot can give, so much is up within `maxDays`. */
  readonly share: number;
  /** And so much even without the seed that heat or cold held too long. */
  readonly shareIfHeld: number;
  readonly maxDays: number;
  /** In so many of the years. */
  readonly sureness: number;
}

/**
 * What makes a date good where nobody says otherwise. Without held seed 0.4 is enough, and not 0.6: fields stood full where hardly any
 * seed was told as left without it, so most of what is held comes all the same.
 */
export const usualCriteria = { share: 0.7, shareIfHeld: 0.4, sureness: 0.8 } as const;

/** What a date would have done in the years that are known. */
export interface DateInYears {
  /** The share of them in which it was good; NaN where none is known. */
  readonly good: number;
  /** The commonest reason of the others; null where it was good in all. */
  readonly whyNot: WhyNot | null;
  /** The share in which it did fairly: a small harvest, or one after a winter. Never below `good`. */
  readonly fair: number;
  /** And the share in which it did fairly with a thinner stand. Never below `fair`. */
  readonly thin: number;
  /** The number of known years, and the years that each reason spoilt. */
  readonly known: number;
  readonly causes: ReadonlyMap<WhyNot, number>;
  /** Days from the date to the frosts that ended it, and to the first harvest of early and of late kinds; rising. */
  readonly endDays: Float64Array;
  readonly earlyDays: Float64Array;
  readonly lateDays: Float64Array;
  /** A value of each year in which half of those that came were up, rising. */
  readonly firstDays: Float64Array;
  readonly halfDays: Float64Array;
  readonly mostDays: Float64Array;
  /** Percent of seeds sown, of a lot as good as the table's, in each year that is known; rising. */
  readonly stand: Float64Array;
  readonly ifHeldAreLost: Float64Array;
}

export interface DatesInYears {
  readonly all: readonly DateInYears[];
  /** Which years tell of half of the dates or more. */
  readonly years: readonly boolean[];
  readonly frostKnown: boolean;
}

interface Season {
  readonly seed: Seed;
  readonly viablePercent: number;
  readonly crop: Crop;
  readonly criteria: WindowCriteria;
  readonly years: readonly YearOfDates[];
  /** The demands of the harvest; null: emergence alone is judged. */
  readonly harvest?: HarvestSeason | null;
  /** The soil of a mean year on each date, where these are not all of the years; shape (nDates). */
  readonly soilC?: Float64Array;
}

/** Every date's sowing in every year that is known. */
export function datesInYears(season: Season, shouldStop?: ShouldStop): DatesInYears {
  const nDates = season.years[0]?.sowH.length ?? 0;
  const tallies = Array.from({ length: nDates }, () => ({ known: 0, good: 0, fair: 0, thin: 0 }));
  // The years that each reason spoilt, date by date.
  const spoilt = new Int32Array(nDates * whyNots.length);
  const values = (): ValuesOfDates => valuesOfDates(nDates, season.years.length);
  const [firstDays, halfDays, mostDays, stand, ifHeldAreLost] = [values(), values(), values(), values(), values()];
  const [endDays, earlyDays, lateDays] = [values(), values(), values()];
  const harvest = season.harvest ?? null;
  const countH = 24 * (harvest ? Math.max(STAND_DAYS, season.criteria.maxDays) : season.criteria.maxDays);
  const closed = harvest && closures(harvest, season.soilC ?? soilCourse(season.years, nDates));
  const sow = sowingsOf(season.seed, { withinH: countH, viablePercent: season.viablePercent });
  const years = season.years.map((own) => {
    const outcomes = sow(own.hourlyC, own.sowH, shouldStop);
    const judge = judgeOf(season, harvest, own, countH);
    let known = 0;
    for (let date = 0; date < nDates; date++) {
      if (outcomes.known[date] === 0) continue;
      const sowH = own.sowH[date]!;
      const found = judge(outcomes, date, sowH);
      // A year whose harvest lies ahead of today is known as far as its coming up: of this date it says nothing.
      if (harvest) known++;
      if (found === null) continue;
      const whyNot = closed?.[date] ?? found.whyNot;
      const tally = tallies[date]!;
      if (!harvest) known++;
      tally.known++;
      if (whyNot === null) tally.good++;
      else spoilt[date * whyNots.length + whyNots.indexOf(whyNot)]!++;
      if (!closed?.[date]) {
        if (whyNot === null || found.isFair) tally.fair++;
        if (whyNot === null || found.isFair || found.isThin) tally.thin++;
        if (!Number.isNaN(found.endH)) endDays.add(date, (found.endH - sowH) / 24);
        if (!Number.isNaN(found.earlyH)) earlyDays.add(date, (found.earlyH - sowH) / 24);
        if (!Number.isNaN(found.lateH)) lateDays.add(date, (found.lateH - sowH) / 24);
      }
      stand.add(date, outcomes.laboratoryPercent[date]!);
      ifHeldAreLost.add(date, outcomes.ifHeldAreLostPercent[date]!);
      if (Number.isNaN(outcomes.halfH[date]!)) continue;
      firstDays.add(date, outcomes.firstH[date]! / 24);
      halfDays.add(date, outcomes.halfH[date]! / 24);
      mostDays.add(date, outcomes.mostH[date]! / 24);
    }
    return known >= nDates / 2;
  });
  return {
    all: tallies.map(({ known, good, fair, thin }, date) => {
      const causes = causesOf(spoilt, date);
      return {
        good: good / known,
        fair: fair / known,
        thin: thin / known,
        known,
        causes,
        endDays: endDays.sorted(date),
        earlyDays: earlyDays.sorted(date),
        lateDays: lateDays.sorted(date),
        whyNot: mostOften(causes),
        firstDays: firstDays.sorted(date),
        halfDays: halfDays.sorted(date),
        mostDays: mostDays.sorted(date),
        stand: stand.sorted(date),
        ifHeldAreLost: ifHeldAreLost.sorted(date),
      };
    }),
    years,
    frostKnown: season.years.some(({ minC }) => minC !== null),
  };
}

interface ValuesOfDates {
  add(date: number, value: number): void;
  /** What was added to a date, rising. */
  sorted(date: number): Float64Array;
}

/** Values by date, up to so many of each: one array for all, as there are thousands of them. */
function valuesOfDates(nDates: number, most: number): ValuesOfDates {
  const values = new Float64Array(nDates * most);
  const counts = new Int32Array(nDates);
  return {
    add(date, value) {
      values[date * most + counts[date]!] = value;
      counts[date]!++;
    },
    sorted: (date) => values.subarray(date * most, date * most + counts[date]!).sort(),
  };
}

function causesOf(spoilt: Int32Array, date: number): ReadonlyMap<WhyNot, number> {
  const causes = new Map<WhyNot, number>();
  for (let why = 0; why < whyNots.length; why++) {
    const years = spoilt[date * whyNots.length + why]!;
    if (years > 0) causes.set(whyNots[why]!, years);
  }
  return causes;
}

const mostOften = (reasons: ReadonlyMap<WhyNot, number>): WhyNot | null =>
  [...reasons].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;

/** The reason that most years give; null: none gives any. */
export function commonest(reasons: readonly (WhyNot | null)[]): WhyNot | null {
  const counts = new Map<WhyNot, number>();
  for (const why of reasons) if (why) counts.set(why, (counts.get(why) ?? 0) + 1);
  return mostOften(counts);
}

/** The outcome of a sowing in a year. Hours of the year's clock; NaN: none. */
interface Found {
  /** null: it was good. */
  whyNot: WhyNot | null;
  /** Not good, but a small harvest, or one after a winter. */
  isFair: boolean;
  /** At worst that, and of a thinner stand. */
  isThin: boolean;
  endH: number;
  earlyH: number;
  lateH: number;
}

/** Tells an outcome without a harvest. */
function withoutHarvest(found: Found, whyNot: WhyNot | null): Found {
  found.whyNot = whyNot;
  found.isFair = false;
  found.isThin = false;
  found.endH = NaN;
  found.earlyH = NaN;
  found.lateH = NaN;
  return found;
}

/**
 * Judges one sowing of a year; null: too little is known of what came after. What it gives is written over by the next question, as
 * thousands are asked.
 */
type Judge = (outcomes: SowingOutcomes, i: number, sowH: number) => Found | null;

function judgeOf(season: Season, harvest: HarvestSeason | null, own: YearOfDates, countH: number): Judge {
  const found = withoutHarvest({} as Found, null);
  const tooWhat = soilOfTheCrop(season, own.hourlyC, countH);
  return harvest ? harvestJudge(season, harvest, own, tooWhat, found) : emergenceJudge(season, own, tooWhat, found);
}

/** The reason why too little came up after an hour. */
type TooWhat = (sowH: number) => WhyNot;

/** Was enough up in time, and did frost leave the seedlings alone? */
function emergenceJudge(season: Season, own: YearOfDates, tooWhat: TooWhat, found: Found): Judge {
  const frost = frostRule(season, own);
  return (outcomes, i, sowH) => {
    const firstH = outcomes.firstH[i]!;
    const frozen = frost && !Number.isNaN(firstH) ? frost(sowH + firstH) : false;
    if (frozen === null) return null;
    if (!isStand(season, outcomes, i, 0)) return withoutHarvest(found, tooWhat(sowH));
    return withoutHarvest(found, frozen ? 'frost-to-come' : null);
  };
}

/** Is so much up, and even without seed held too long? */
const isStand = (
  { criteria, viablePercent }: Season,
  { up, ifHeldAreLostPercent }: SowingOutcomes,
  i: number,
  less: number,
) =>
  up[i]! >= (criteria.share - less) * COHORTS - 1e-9 &&
  ifHeldAreLostPercent[i]! >= (criteria.shareIfHeld - less) * viablePercent - 1e-9;

/** A thin stand has this much less of what a good one has, of all seed and without what was held too long. */
const THINNER = 0.2;
/** Reasons that spoil a harvest. */
const TOLD_AS: Readonly<Record<GrowthWhy, WhyNot>> = {
  'frost-on-seedling': 'frost-to-come',
  'frost-before-harvest': 'too-late',
  'season-too-short': 'too-late',
  'heat-at-harvest': 'heat-at-harvest',
  bolts: 'bolts',
  'over-winter': 'over-winter',
  'day-length': 'day-length',
};

/** Did enough come up, and was it harvested? */
function harvestJudge(season: Season, harvest: HarvestSeason, own: YearOfDates, tooWhat: TooWhat, found: Found): Judge {
  const fateOf = growthOfYear(harvest, own);
  const { growth, bedFactor } = harvest;
  const patienceH = 24 * growth.patienceFactor * season.criteria.maxDays;
  return (outcomes, i, sowH) => {
    const upH = bedFactor * outcomes.halfH[i]!;
    if (!(upH <= patienceH) || !isStand(season, outcomes, i, THINNER)) return withoutHarvest(found, tooWhat(sowH));
    const isThin = !isStand(season, outcomes, i, 0);
    const fate = fateOf ? fateOf(sowH, sowH + upH) : null;
    if (fate !== null && fate.why === undefined) return null;
    const why = fate?.why ?? null;
    const isFair = why === 'bolts' || why === 'over-winter';
    const isHarvested = why === null || isFair;
    found.whyNot = why !== null ? TOLD_AS[why] : isThin ? tooWhat(sowH) : null;
    found.isFair = isFair && !isThin;
    found.isThin = isHarvested;
    found.endH = fate ? own.minFromH + 24 * fate.endDay : NaN;
    found.earlyH = fate && isHarvested ? own.minFromH + 24 * fate.earlyDay : NaN;
    found.lateH = fate && isHarvested ? own.minFromH + 24 * fate.lateDay : NaN;
    return found;
  };
}

/** Reasons that close dates in any year: ground that cannot be worked, or soil too cold for the crop. */
function closures({ growth, isWet }: HarvestSeason, soilC: Float64Array): (WhyNot | null)[] {
  const { leastSoilC } = growth;
  return Array.from(isWet, (wet, date) => {
    if (wet) return 'ground-wet';
    return leastSoilC !== null && soilC[date]! < leastSoilC ? 'too-cold' : null;
  });
}

/** What is wrong with the soil after an hour, were too little to come up: more of its hours are too hot than too cold, or
 * it is colder all in all than the crop bears, or but slow. */
function soilOfTheCrop({ seed, crop }: Season, hourlyC: Float64Array, hours: number): TooWhat {
  const { soil, rows } = crop;
  const coldestC = soil?.minimumC ?? Math.min(...rows.map((row) => row.temperatureC));
  const coolC = soil?.optimumFromC ?? coldestC;
  let sums: SoilSums | null = null;
  return (fromH) => {
    // Years without a lost sowing need no sums.
    sums ??= soilSums(hourlyC, { hotC: seed.hotThresholdC, coolC });
    const { hotterH, sumsC } = sums;
    const toH = Math.min(hourlyC.length, fromH + hours);
    if (hotterH[toH]! > hotterH[fromH]!) return 'too-hot';
    return (sumsC[toH]! - sumsC[fromH]!) / (toH - fromH) < coldestC ? 'too-cold' : 'too-slow';
  };
}

/** Hours too hot less hours too cold, and degrees, each summed up to an hour. Shape (nHours + 1) each. */
interface SoilSums {
  readonly hotterH: Int32Array;
  readonly sumsC: Float64Array;
}

function soilSums(hourlyC: Float64Array, { hotC, coolC }: { readonly hotC: number; readonly coolC: number }): SoilSums {
  const hotterH = new Int32Array(hourlyC.length + 1);
  const sumsC = new Float64Array(hourlyC.length + 1);
  let hotter = 0;
  let sumC = 0;
  for (let hour = 0; hour < hourlyC.length; hour++) {
    const tempC = hourlyC[hour]!;
    if (tempC > hotC) hotter++;
    if (tempC < coolC) hotter--;
    if (!Number.isNaN(tempC)) sumC += tempC;
    hotterH[hour + 1] = hotter;
    sumsC[hour + 1] = sumC;
  }
  return { hotterH, sumsC };
}

/** Does frost come on seedlings that show at an hour? null: not known. */
type FrostRule = (firstH: number) => boolean | null;

function frostRule({ crop }: Season, { minC, minFromH }: YearOfDates): FrostRule | null {
  const exposure = frostExposure(crop);
  if (exposure === null || !minC) return null;
  const { limitC, days: exposedDays } = exposure;
  // How many days ahead the next frost lies, from the last day back.
  const nextFrost = new Float64Array(minC.length + 1).fill(Infinity);
  for (let day = minC.length - 1; day >= 0; day--) nextFrost[day] = minC[day]! <= limitC ? 0 : nextFrost[day + 1]! + 1;
  return (firstH) => {
    const day = Math.floor((firstH - minFromH) / 24);
    if (day < 0 || day >= minC.length) return null;
    if (nextFrost[day]! <= exposedDays) return true;
    return day + exposedDays < minC.length ? false : null;
  };
}
