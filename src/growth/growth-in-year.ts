import type { Growth, HeatHarvest } from '../germination/growth.js';
import { bulbYear } from './bulb-year.js';
import { type AirOfYear, endedBy, type Fate, type FateTold, type Grower, NOTHING, UNKNOWN } from './fate.js';
import { frostAhead } from './frost-ahead.js';
import { harvestDays } from './harvest-days.js';
import { heatSums } from './heat-sums.js';
import type { LongDays } from './long-days.js';
import { meanOver, sumsUpTo } from './mean-over.js';
import { seasonDayOf, YEAR_DAYS } from './season-day.js';

/** Heat units of early and late kinds beside those of the middling kind, which the crop has [1]. */
export interface KindSpread {
  readonly early: number;
  readonly late: number;
}

/** Seedlings are looked after for so long [d]. */
const SEEDLING_DAYS = 30;
/** Heat spoils a harvest from so long before it on [d]. */
const SPOILS_DAYS = 14;
/** A harvest further off than this is none [d]. */
const MAX_GROWTH_DAYS = 250;
/** It bolts as a small plant where more than this share of its growth lies after days have become long: tuned, on two lists. */
const GROWN_IN_LONG_DAYS = 0.95;
/** Sown in the second half of the growing year, and ripe only after the first month of the next, it has stood over winter [d]. */
const SECOND_HALF_DAY = 181;
const WINTER_ENDS_DAY = 31;

/**
 * The fate of a crop that emerges on a day, for every day of a year.
 *
 * @param growth The crop's.
 * @param air    The year's; days are counted from its first.
 * @param kinds  Of early and late kinds.
 * @param long   When days make it bolt; null: they do not.
 * @returns Asked with the day of the sowing and that of half emergence [d, may have a fraction]. What it gives is written over by
 * the next question: an answer asks some ten thousand.
 *
 * Rules: no frost on the seedling for 30 days; none harder than both limits after that; none that ends it from half of its heat units to the end of the least picking; the
 * harvest within 250 days; no heat above its limit from 14 days before the harvest to the end of that picking. Days that are too
 * long for it and a winter that it stands over are told as reasons of their own, as they only make it worse.
 */
export function growthInYear(
  growth: Growth,
  air: AirOfYear,
  kinds: KindSpread,
  long: LongDays | null,
): (sownDay: number, upDay: number) => Fate {
  const seedlingFrost = frostAhead(air.minC, growth.seedlingFrostC);
  const nDays = air.minC.length;
  const told: FateTold = { ...NOTHING, why: null };
  const grow = growerOf(growth, air, kinds, long);
  return (sownDay, upDay) => {
    const up = Math.floor(upDay);
    if (!(up >= 0) || up >= nDays) return UNKNOWN;
    if (seedlingFrost[up]! < SEEDLING_DAYS) return endedBy(told, 'frost-on-seedling', up + seedlingFrost[up]!);
    if (up + SEEDLING_DAYS > nDays) return UNKNOWN;
    return grow ? grow(told, Math.floor(sownDay), up) : endedBy(told, null, NaN);
  };
}

function growerOf(
  { harvest, seedlingFrostC }: Growth,
  air: AirOfYear,
  kinds: KindSpread,
  long: LongDays | null,
): Grower | null {
  if (harvest?.by === 'heat') return heatYear(harvest, air, kinds, seedlingFrostC, long);
  return harvest?.by === 'day-length' ? bulbYear(harvest, air) : null;
}

function heatYear(
  harvest: HeatHarvest,
  air: AirOfYear,
  kinds: KindSpread,
  seedlingFrostC: number,
  long: LongDays | null,
): Grower {
  const { baseTempC, ceilingTempC, heatUnitsCDays: units, leastPickingDays, endFrostC, hotHarvestC } = harvest;
  const nDays = air.minC.length;
  const sums = heatSums(air.meanC, baseTempC, ceilingTempC);
  const ripeFrom = harvestDays(sums, units);
  const halfFrom = harvestDays(sums, units / 2);
  const earlyFrom = harvestDays(sums, units * kinds.early);
  const slowestFrom = harvestDays(sums, units * kinds.late);
  const endFrost = endFrostC === null ? null : frostAhead(air.minC, endFrostC);
  // Between seedling and half of its growth a plant bears the harder of the two frosts: assumed.
  const growingFrost = endFrostC === null ? null : frostAhead(air.minC, Math.min(endFrostC, seedlingFrostC));
  const means = hotHarvestC === null ? null : sumsUpTo(air.meanC);
  const ofYear = (day: number): number => ((air.firstDayOfYear + day - 1 + YEAR_DAYS) % YEAR_DAYS) + 1;
  const seasonOf = (day: number): number => seasonDayOf(ofYear(day), air.latitudeDeg);
  return (told, sownDay, up) => {
    const ripe = ripeFrom[up]!;
    const half = halfFrom[up]!;
    const inBetween = growingFrost ? up + SEEDLING_DAYS + growingFrost[up + SEEDLING_DAYS]! : Infinity;
    if (inBetween < (half >= 0 ? half : nDays)) return endedBy(told, 'frost-before-harvest', inBetween);
    const frozen = endFrost && half <= nDays ? half + endFrost[half]! : Infinity;
    if (frozen <= (ripe >= 0 ? ripe + leastPickingDays - 1 : nDays)) {
      return endedBy(told, 'frost-before-harvest', frozen);
    }
    const isLate = ripe - up > MAX_GROWTH_DAYS || (Number.isNaN(ripe) && nDays - up > MAX_GROWTH_DAYS);
    if (isLate) return endedBy(told, 'season-too-short', NaN);
    if (Number.isNaN(ripe) || ripe + leastPickingDays > nDays) return UNKNOWN;
    const slowest = slowestFrom[up]!;
    told.earlyDay = earlyFrom[up]!;
    told.harvestDay = ripe;
    // Frost ends the late kinds too: theirs is no harvest of the next year.
    told.lateDay = Number.isNaN(slowest) ? ripe : Math.max(ripe, Math.min(slowest, frozen - 1));
    told.endDay = NaN;
    if (means && meanOver(means, ripe - SPOILS_DAYS, ripe + leastPickingDays) > hotHarvestC!) {
      told.why = 'heat-at-harvest';
    } else if (long && boltsInLongDays(sums, ofYear, long, up, units)) {
      told.why = 'bolts';
    } else {
      const isOver =
        seedlingFrostC < 0 && seasonOf(sownDay) >= SECOND_HALF_DAY && isAfterWinter(seasonOf, sownDay, ripe);
      told.why = isOver ? 'over-winter' : null;
    }
    return told;
  };
}

/** Is the ripe day past the first month of the growing year after the one it was sown in? */
function isAfterWinter(seasonOf: (day: number) => number, sownDay: number, ripe: number): boolean {
  const untilNextYear = YEAR_DAYS - seasonOf(sownDay);
  return ripe - sownDay >= untilNextYear + WINTER_ENDS_DAY;
}

/** Grows it nearly all after the first long day, having come up before the last? */
function boltsInLongDays(
  sums: Float64Array,
  ofYear: (day: number) => number,
  { first, last }: LongDays,
  up: number,
  units: number,
): boolean {
  const day = ofYear(up);
  const [untilFirst, untilLast] = [(first - day + YEAR_DAYS) % YEAR_DAYS, (last - day + YEAR_DAYS) % YEAR_DAYS];
  // Up while days are long already, the last of them comes before the next first one.
  if (untilLast < untilFirst) return true;
  const firstLong = Math.min(sums.length - 1, up + untilFirst);
  return sums[firstLong]! - sums[up]! < (1 - GROWN_IN_LONG_DAYS) * units;
}
