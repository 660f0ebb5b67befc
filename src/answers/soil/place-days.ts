import { addDays, HOUR_MS, type PlainDate, startOfDay, type Zone } from '../../basics/calendar.js';

/** The place's days as stretches of a record's hours. */
export interface PlaceDays {
  /** The dates, in order. */
  readonly dates: readonly PlainDate[];
  /** For each hour of the record, which of the dates it falls on by its middle; -1 before the first, and the count after the last. */
  readonly dayOfHour: Int32Array;
  /** When each date begins and ends, in hours since the record's start. */
  readonly startH: Float64Array;
  readonly endH: Float64Array;
}

/**
 * Which date at the place each hour of a record falls on.
 *
 * @param startMs When the record starts.
 * @param nHours  How many hours it has.
 * @param from    First date wanted.
 * @param nDays   How many dates are wanted.
 */
export function placeDays(startMs: number, nHours: number, from: PlainDate, nDays: number, zone: Zone): PlaceDays {
  const dates: PlainDate[] = [];
  const startH = new Float64Array(nDays + 1);
  for (let day = 0, date = from; day <= nDays; day++, date = addDays(date, 1)) {
    dates.push(date);
    startH[day] = (startOfDay(date, zone) - startMs) / HOUR_MS;
  }
  const endH = startH.subarray(1);
  const dayOfHour = new Int32Array(nHours);
  let day = -1;
  for (let hour = 0; hour < nHours; hour++) {
    const middle = hour + 0.5;
    if (day < 0 && middle >= startH[0]!) day = 0;
    while (day >= 0 && day < nDays && middle >= endH[day]!) day++;
    dayOfHour[hour] = day;
  }
  return { dates: dates.slice(0, nDays), dayOfHour, startH: startH.subarray(0, nDays), endH };
}
