import { HOUR_MS } from '../../basics/calendar.js';
import type { PlaceDays } from '../soil/place-days.js';
import type { SeedTemperature } from './record/seed-temperature.js';

/** The temperature at the seed by the hour, from the sowing's midnight to the end of the last day. All of one length. */
export interface HoursAtSeed {
  /** When the first hour begins. */
  readonly startMs: number;
  /** The middle of each hour, in days of the place since the sowing's midnight: 1.5 is noon of the next day. */
  readonly atDay: Float64Array;
  /** The hours' means. */
  readonly tempC: Float64Array;
  /** Provenance of each hour: codes of basics/series. */
  readonly basis: Uint8Array;
}

/** The hours that fall on the days asked about. */
export function hoursAtSeed(
  { dayOfHour, endH, startH }: PlaceDays,
  { startMs, hourlyC, basis }: SeedTemperature,
): HoursAtSeed {
  let from = 0;
  while (from < dayOfHour.length && dayOfHour[from]! < 0) from++;
  let last = dayOfHour.length - 1;
  while (last >= from && dayOfHour[last]! >= endH.length) last--;
  if (last < from) return { startMs, atDay: new Float64Array(0), tempC: new Float64Array(0), basis: new Uint8Array(0) };
  const atDay = new Float64Array(last + 1 - from);
  for (let i = 0; i < atDay.length; i++) {
    const day = dayOfHour[from + i]!;
    atDay[i] = day + (from + i + 0.5 - startH[day]!) / (endH[day]! - startH[day]!);
  }
  return {
    startMs: startMs + from * HOUR_MS,
    atDay,
    tempC: hourlyC.slice(from, last + 1),
    basis: basis.slice(from, last + 1),
  };
}
