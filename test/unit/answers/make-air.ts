import { addDays, type PlainDate, type Zone } from '../../../src/basics/calendar.js';
import { type ReadSeries, readSeries } from '../../../src/readings/read-series.js';

/** Years of daily extremes of the air: seasons, weather, and winters with frost. */
export function airOfYears(first: PlainDate, years: number, zone: Zone): ReadSeries {
  const daily = Array.from({ length: Math.round(365.25 * years) }, (_, day) => {
    const level =
      9 - 11 * Math.cos((2 * Math.PI * (day - 20)) / 365.25) + 4 * Math.sin(day / 3.1) + 2 * Math.sin(day * 1.7);
    return { date: addDays(first, day), min: level - 5 - Math.sin(day * 0.9), max: level + 5 + Math.sin(day * 1.3) };
  });
  return readSeries({ medium: 'air', unit: 'C', daily }, zone, []);
}
