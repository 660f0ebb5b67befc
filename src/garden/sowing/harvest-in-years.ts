import { MIN_YEARS, yearsBefore } from '../../answers/ahead/past-soil.js';
import { kindSpread } from '../../answers/windows/harvest-season.js';
import { addDays, dayOfYear, daysBetween, type PlainDate } from '../../basics/calendar.js';
import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import type { Crop } from '../../germination/crop.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import type { Fate } from '../../growth/fate.js';
import { growthInYear } from '../../growth/growth-in-year.js';
import { longDays } from '../../growth/long-days.js';
import { plantingOutOf } from '../../growth/tray-dates.js';
import { fromTray } from '../../growth/tray-growth.js';
import type { DailyAir } from '../../growth/workable-ground.js';
import { type GrownPlant, growthOf, type Harvest } from './harvest.js';
import type { SowingWarning } from './sowing-facts.js';

/** null: nobody knows when, or, with the reason, frost comes before. */
export interface MaturityDates {
  readonly harvest: Harvest | null;
  readonly why?: SowingWarning;
}

/** Growth is followed for so long [d]: the longest that growth rules look ahead. */
const FOLLOWED_DAYS = 290;
/** Older years than these are not used: climates move. */
const MAX_YEARS = 30;

/**
 * When a crop that stands is ready: by this year's air as far as it is known, and from then on by that of each past year, with the rules
 * that sowing windows judge harvests by.
 *
 * @param crop        Of whose growth something is known; else nothing is told.
 * @param from        When half is up, or it was planted out.
 * @param air         Of several years, day by day.
 * @param latitudeDeg Latitude, north positive [°].
 * @returns From the first harvest of early kinds to that of late ones, each in the middle of the years that have one; the frost
 * that ends it where half of the years or more have none; null where fewer than three years tell.
 */
export function harvestInYears(
  crop: Crop,
  { half, plantedOut }: GrownPlant,
  air: DailyAir,
  latitudeDeg: number,
): MaturityDates | null {
  const needs = plantedOut === null ? null : plantingOutOf(crop);
  if (!crop.growth?.harvest || (plantedOut !== null && !needs)) return null;
  if (crop.growth.harvest.by === 'heat' && crop.growth.harvest.countedFrom === 'planting-out' && !needs) return null;
  const start = plantedOut ?? half;
  const asSown = { growth: crop.growth, kinds: kindSpread(crop) };
  const { growth, kinds } = needs ? fromTray(asSown.growth, asSown.kinds, needs) : asSown;
  const long = growth.boltingDayLengthH === null ? null : longDays(latitudeDeg, growth.boltingDayLengthH);
  const fates = yearsOfAir(air, start).map(({ minC, meanC }): Fate => {
    const year = { minC, meanC, firstDayOfYear: dayOfYear(start), latitudeDeg };
    return growthInYear(growth, year, kinds, long)(0, 0);
  });
  const told = fates.filter(({ why }) => why !== undefined);
  if (told.length < MIN_YEARS) return null;
  const ripe = told.filter(({ earlyDay }) => !Number.isNaN(earlyDay));
  const middle = (days: readonly number[]): PlainDate =>
    addDays(start, Math.round(hazenQuantile(Float64Array.from(days).sort(), 0.5)));
  if (2 * ripe.length > told.length) {
    const fromDate = middle(ripe.map(({ earlyDay }) => earlyDay));
    const to = middle(ripe.map(({ lateDay }) => lateDay));
    const slowed = daysBetween(start, fromDate) > (growthOf(crop)?.fromDays ?? Infinity);
    return { harvest: { from: fromDate, to, slowed } };
  }
  const ends = told.map(({ endDay }) => endDay).filter((day) => !Number.isNaN(day));
  if (ends.length === 0) return { harvest: null };
  return {
    harvest: null,
    why: { code: 'frost-before-harvest', params: { crop: cropInFacts(crop), endDate: middle(ends) } },
  };
}

/** Days that lack their air are as the day before, but no more than so many on end. */
const MAX_BRIDGED = 3;

/** The air from a date on: as it was where it is known, else as in one of the past years; one after the other. */
function yearsOfAir({ firstDate, minC, maxC }: DailyAir, start: PlainDate) {
  const own = daysBetween(firstDate, start);
  const isKnown = (day: number): boolean => !Number.isNaN((minC[day] ?? NaN) + (maxC[day] ?? NaN));
  return Array.from({ length: MAX_YEARS }, (_, i) => {
    const past = daysBetween(firstDate, yearsBefore(start, i + 1));
    const year = { minC: new Float64Array(FOLLOWED_DAYS), meanC: new Float64Array(FOLLOWED_DAYS) };
    let bridged = 0;
    for (let day = 0; day < FOLLOWED_DAYS; day++) {
      const from = isKnown(own + day) ? own + day : isKnown(past + day) ? past + day : null;
      bridged = from === null ? bridged + 1 : 0;
      const isBridged = from === null && day > 0 && bridged <= MAX_BRIDGED;
      year.minC[day] = from !== null ? minC[from]! : isBridged ? year.minC[day - 1]! : NaN;
      year.meanC[day] = from !== null ? (minC[from]! + maxC[from]!) / 2 : isBridged ? year.meanC[day - 1]! : NaN;
    }
    return year;
  }).filter(({ meanC }) => !meanC.some(Number.isNaN));
}
