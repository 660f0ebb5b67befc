import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';
import { germinationCurve, rateAt } from '../../germination/curve/curve.js';
import { type DaysOutdoors, type PlantingSite, plantingOutGrades } from '../../growth/planting-out.js';
import { hardenOffBefore, plantingOutOf, type TrayCrop } from '../../growth/tray-dates.js';

/** A sowing in trays: when half is up, the days of hardening off, and when it is planted out. */
export interface IndoorStart {
  readonly half: PlainDate;
  /** By day outside, by night in; the last included. */
  readonly hardenOff: { readonly from: PlainDate; readonly to: PlainDate };
  readonly plantOut: PlainDate;
}

/** Days from sowing until half is up in a room; null where none comes up at its temperature. */
export function daysInRoom({ rows, soil }: Pick<Crop, 'rows' | 'soil'>, roomC: number): number | null {
  const rate = rateAt(germinationCurve(rows, soil?.maximumC ?? null), roomC);
  return rate > 0 ? 1 / rate : null;
}

/**
 * What becomes of a sowing started indoors.
 *
 * @param crop     Its chart, and how frost-hardy it is.
 * @param date     When it is sown.
 * @param roomC    The room's temperature, day and night [°C]; trays are taken to be as warm.
 * @param nightsBear Does a date bear the young plants? As `bearsPlants` tells from past years.
 * @param longestWaitDays So long may fit plants wait for such nights in their trays.
 * @returns null where none comes up in that room, the crop does not bear to be moved, or no night bears it for so long.
 *
 * Source: days to half from the crop's chart; the rest is common practice, no source: weeks until it is fit, a week and a day
 * of hardening off, planting out on the first date from then on that nights bear.
 * @example of tomato sown on 1 April in a room of 20 °C, nights mild from 20 May on // => half 9 April, plantOut 20 May
 */
export function indoorsOf(
  crop: Pick<Crop, 'weeksInTrays' | 'rows' | 'soil'>,
  date: PlainDate,
  roomC: number,
  nightsBear: (date: PlainDate) => boolean,
  longestWaitDays = HALF_A_YEAR_DAYS,
): IndoorStart | null {
  const weeks = crop.weeksInTrays;
  const days = daysInRoom(crop, roomC);
  if (weeks === null || days === null) return null;
  const half = addDays(date, Math.round(days));
  const fit = addDays(half, 7 * weeks);
  for (let wait = 0; wait <= longestWaitDays; wait++) {
    const plantOut = addDays(fit, wait);
    if (!nightsBear(plantOut)) continue;
    return { half, hardenOff: hardenOffBefore(plantOut), plantOut };
  }
  return null;
}
/** Nobody keeps seedlings in trays longer. */
const HALF_A_YEAR_DAYS = 183;

/**
 * Whether nights, soil and ground bear young plants of a crop put out on a date, by what they were on it in past years: a date that
 * `plantingOutGrades` calls fair or better.
 *
 * @param days What is known of the place's past years; null: nothing is. On what nobody knows nothing is planted out: a grower waits for
 * the last frost.
 */
export function bearsPlants(
  crop: TrayCrop,
  days: DaysOutdoors | null,
  site: PlantingSite,
): (date: PlainDate) => boolean {
  const needs = plantingOutOf(crop);
  if (!needs || !days) return () => false;
  const gradeOf = plantingOutGrades(needs, days, site);
  return (date) => {
    const grade = gradeOf(date);
    return grade === 'good' || grade === 'fair';
  };
}
