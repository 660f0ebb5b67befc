import type { BulbHarvest, Growth, HeatHarvest } from '../../../src/germination/growth.js';
import { type AirOfYear, type Fate, NOTHING, UNKNOWN } from '../../../src/growth/fate.js';
import { frostAhead } from '../../../src/growth/frost-ahead.js';
import type { KindSpread } from '../../../src/growth/growth-in-year.js';
import { heatSums } from '../../../src/growth/heat-sums.js';
import type { LongDays } from '../../../src/growth/long-days.js';
import { meanOver, sumsUpTo } from '../../../src/growth/mean-over.js';
import { seasonDayOf, YEAR_DAYS } from '../../../src/growth/season-day.js';

const SEEDLING_DAYS = 30;
const SPOILS_DAYS = 14;
const MAX_GROWTH_DAYS = 250;
const GROWN_IN_LONG_DAYS = 0.95;
const SECOND_HALF_DAY = 181;
const WINTER_ENDS_DAY = 31;
const AUTUMN_DAY = 243;
const LONGEST_DAY = 171;

/** `growthInYear`, each question answered by itself: every harvest looked for by halving, every night of a winter looked at. */
export function growthPlainly(
  growth: Growth,
  air: AirOfYear,
  kinds: KindSpread,
  long: LongDays | null,
): (sownDay: number, upDay: number) => Fate {
  const { harvest, seedlingFrostC } = growth;
  const seedlingFrost = frostAhead(air.minC, seedlingFrostC);
  const nDays = air.minC.length;
  const heat = harvest?.by === 'heat' ? heatYear(harvest, air, kinds, seedlingFrostC, long) : null;
  return (sownDay, upDay) => {
    const up = Math.floor(upDay);
    if (!(up >= 0) || up >= nDays) return UNKNOWN;
    if (seedlingFrost[up]! < SEEDLING_DAYS)
      return { ...NOTHING, why: 'frost-on-seedling', endDay: up + seedlingFrost[up]! };
    if (up + SEEDLING_DAYS > nDays) return UNKNOWN;
    if (heat) return heat(Math.floor(sownDay), up);
    return harvest?.by === 'day-length' ? plainBulbFate(harvest, air, up) : { ...NOTHING, why: null };
  };
}

function heatYear(
  harvest: HeatHarvest,
  air: AirOfYear,
  kinds: KindSpread,
  seedlingFrostC: number,
  long: LongDays | null,
): (sownDay: number, up: number) => Fate {
  const { baseTempC, ceilingTempC, heatUnitsCDays: units, leastPickingDays, endFrostC, hotHarvestC } = harvest;
  const nDays = air.minC.length;
  const sums = heatSums(air.meanC, baseTempC, ceilingTempC);
  const endFrost = endFrostC === null ? null : frostAhead(air.minC, endFrostC);
  // Between seedling and half of its growth a plant bears the harder of the two frosts: assumed.
  const growingFrost = endFrostC === null ? null : frostAhead(air.minC, Math.min(endFrostC, seedlingFrostC));
  const means = hotHarvestC === null ? null : sumsUpTo(air.meanC);
  const ofYear = (day: number): number => ((air.firstDayOfYear + day - 1 + YEAR_DAYS) % YEAR_DAYS) + 1;
  const seasonOf = (day: number): number => seasonDayOf(ofYear(day), air.latitudeDeg);
  return (sownDay, up) => {
    const ripe = plainHarvestDay(sums, up, units);
    const half = plainHarvestDay(sums, up, units / 2);
    const inBetween = growingFrost ? up + SEEDLING_DAYS + growingFrost[up + SEEDLING_DAYS]! : Infinity;
    if (inBetween < (half >= 0 ? half : nDays)) return { ...NOTHING, why: 'frost-before-harvest', endDay: inBetween };
    const frozen = endFrost && half <= nDays ? half + endFrost[half]! : Infinity;
    if (frozen <= (ripe >= 0 ? ripe + leastPickingDays - 1 : nDays)) {
      return { ...NOTHING, why: 'frost-before-harvest', endDay: frozen };
    }
    const isLate = ripe - up > MAX_GROWTH_DAYS || (Number.isNaN(ripe) && nDays - up > MAX_GROWTH_DAYS);
    if (isLate) return { ...NOTHING, why: 'season-too-short' };
    if (Number.isNaN(ripe) || ripe + leastPickingDays > nDays) return UNKNOWN;
    const early = plainHarvestDay(sums, up, units * kinds.early);
    const slowest = plainHarvestDay(sums, up, units * kinds.late);
    // Frost ends the late kinds too: theirs is no harvest of the next year.
    const late = Number.isNaN(slowest) ? ripe : Math.max(ripe, Math.min(slowest, frozen - 1));
    const told = { earlyDay: early, harvestDay: ripe, lateDay: late, endDay: NaN };
    if (means && meanOver(means, ripe - SPOILS_DAYS, ripe + leastPickingDays) > hotHarvestC!) {
      return { ...told, why: 'heat-at-harvest' };
    }
    if (long && boltsInLongDays(sums, ofYear, long, up, units)) return { ...told, why: 'bolts' };
    const isOver = seedlingFrostC < 0 && seasonOf(sownDay) >= SECOND_HALF_DAY && isAfterWinter(seasonOf, sownDay, ripe);
    return { ...told, why: isOver ? 'over-winter' : null };
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

/** `harvestDays` of one day, by halving. */
export function plainHarvestDay(sums: Float64Array, fromDay: number, units: number): number {
  const last = sums.length - 1;
  if (fromDay > last) return NaN;
  const goal = sums[fromDay]! + units - 1e-9;
  // Sums that are not known compare as false, so the halving ends before them or after the last.
  let below = fromDay;
  let reached = last + 1;
  while (reached - below > 1) {
    const middle = (below + reached) >> 1;
    if (sums[middle]! < goal) below = middle;
    else reached = middle;
  }
  return reached <= last && sums[reached]! >= goal ? reached - 1 : NaN;
}

function plainBulbFate(harvest: BulbHarvest, air: AirOfYear, up: number): Fate {
  const { swellsAfterDays, ripensInDays, leastLeafDays, endFrostC } = harvest;
  const day = seasonDayOf(((air.firstDayOfYear + up - 1) % YEAR_DAYS) + 1, air.latitudeDeg);
  const swellsDay = LONGEST_DAY + swellsAfterDays;
  const isAutumn = day >= AUTUMN_DAY;
  if (!isAutumn && day > swellsDay - leastLeafDays) return { ...NOTHING, why: 'day-length' };
  const swells = up + swellsDay - day + (isAutumn ? YEAR_DAYS : 0);
  const ripe = swells + ripensInDays;
  if (isAutumn) {
    for (let i = up; i < Math.min(swells, air.minC.length); i++) {
      if (air.minC[i]! <= endFrostC) return { ...NOTHING, why: 'frost-before-harvest', endDay: i };
    }
    if (swells > air.minC.length) return UNKNOWN;
  }
  return { earlyDay: ripe, harvestDay: ripe, lateDay: ripe, endDay: NaN, why: null };
}
