import { addDays, dayOfYear, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { germinationCurve, rateAt } from '../../germination/curve/curve.js';
import { dayLengthH } from '../../seedbed/sun/day-length.js';

/** When a sowing is ready: from the published days of the early kinds to those of the late ones. */
export interface Harvest {
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** Do short days put it off by a day or more? */
  readonly slowed: boolean;
}

/** From when a crop grows: half of it is up, and it stands in the garden. */
export interface GrownPlant {
  readonly half: PlainDate;
  /** null: sown where it stays. */
  readonly plantedOut: PlainDate | null;
}

/** Published days from sowing take the seed to come up as it does in soil of this warmth [°C]. Our assumption. */
export const NOMINAL_C = 20;
/** On days so long and longer plants keep to the published days [h]; on short ones they grow at half that pace. */
export const FULL_PACE_H = 12;
export const HALF_PACE_H = 11;

/**
 * When a sowing is ready to harvest.
 *
 * Days published from sowing are counted from half emergence, less the days that the chart gives at 20 °C: a sowing that
 * comes up late is ready late. Days published from planting out are counted from there. Short days slow growth. Warmth,
 * water and the kind sown are left out: no heat sum to harvest is published for most crops.
 *
 * @param crop        Its `maturity`, and its rows.
 * @param at          When half is up, and when it was planted out.
 * @param latitudeDeg Latitude, north positive [°]; null: growth is not slowed.
 * @returns null where the days to maturity are not known, or are counted from a planting out that there is not.
 *
 * Formula: the first day on which the paces of all days since the start add up to the days of growth; pace 1 where the
 * day has 12 h or more, 1/2 where it has 11 or less, straight between.
 * Validity: the law of short days is a rule of thumb, common practice, no source. It makes a crop of 65 days that comes
 * up on 20 August at 37° ready after 79, where McDaniel (Virginia Tech, 2011) says 80. Near the equator and in spring
 * after the equinox it does nothing.
 * Source: maturity as the crop's entry says; the day's length as `dayLengthH`.
 * @example harvestOf(carrot, { half: '2027-05-20', plantedOut: null }, 44) // => { from: '2027-07-12', to: '2027-08-06', slowed: false }
 */
export function harvestOf(crop: Crop, { half, plantedOut }: GrownPlant, latitudeDeg: number | null): Harvest | null {
  const growth = growthOf(crop);
  if (!growth) return null;
  const start = growth.countedFrom === 'planting-out' ? plantedOut : half;
  if (start === null) return null;
  const from = grownOn(start, growth.fromDays, latitudeDeg);
  const to = grownOn(start, growth.toDays, latitudeDeg);
  // A plant that is ripe in its tray gives no harvest.
  const notBefore = (date: PlainDate): PlainDate => (plantedOut !== null && plantedOut > date ? plantedOut : date);
  return { from: notBefore(from), to: notBefore(to), slowed: to !== addDays(start, growth.toDays) };
}

/** Whole days of growth at full pace, from half emergence or from planting out; null where they are not known. */
export function growthOf({ maturity, rows, soil }: Crop): Crop['maturity'] {
  if (!maturity || maturity.countedFrom === 'planting-out') return maturity;
  const nominalDays = 1 / rateAt(germinationCurve(rows, soil?.maximumC ?? null), NOMINAL_C);
  return {
    ...maturity,
    fromDays: Math.max(0, Math.round(maturity.fromDays - nominalDays)),
    toDays: Math.max(0, Math.round(maturity.toDays - nominalDays)),
  };
}

/** The date by which so many days of growth at full pace are done. */
export function grownOn(start: PlainDate, days: number, latitudeDeg: number | null): PlainDate {
  let grown = 0;
  let n = 0;
  for (const day = dayOfYear(start); grown < days - 1e-9; n++) grown += growthPace(day + n, latitudeDeg);
  return addDays(start, n);
}

/**
 * How fast plants grow on a day, beside the published days.
 *
 * @param dayOfYear   1 January is 1; days beyond a year's end go on counting.
 * @param latitudeDeg Latitude, north positive [°]; null: at full pace.
 * @example growthPace(355, 44) // => 0.5
 */
export function growthPace(dayOfYear: number, latitudeDeg: number | null): number {
  if (latitudeDeg === null) return 1;
  const dayH = dayLengthH(latitudeDeg, ((dayOfYear - 1) % YEAR_DAYS) + 1);
  return 1 - 0.5 * Math.min(1, Math.max(0, (FULL_PACE_H - dayH) / (FULL_PACE_H - HALF_PACE_H)));
}
const YEAR_DAYS = 365.25;
