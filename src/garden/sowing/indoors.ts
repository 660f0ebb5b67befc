import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { DailyMinima } from '../../climate/frost-dates.js';
import type { Crop, FrostClass } from '../../germination/crop.js';
import { germinationCurve, rateAt } from '../../germination/curve/curve.js';

/** A sowing in trays: when half is up, the days of hardening off, and when it is planted out. */
export interface IndoorStart {
  readonly half: PlainDate;
  /** By day outside, by night in; the last included. */
  readonly hardenOff: { readonly from: PlainDate; readonly to: PlainDate };
  readonly plantOut: PlainDate;
}

/** A heated room where nobody says how warm it is [°C]. */
export const DEFAULT_ROOM_C = 20;
/** So many days of hardening off: lists say 7 to 10. Common practice, no source. */
export const HARDENING_DAYS = 8;

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
 * @param nightsBear Do nights from a date on bear the young plants? As `nightsBear` tells from past years.
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
    const hardenOff = { from: addDays(plantOut, -HARDENING_DAYS), to: addDays(plantOut, -1) };
    return { half, hardenOff, plantOut };
  }
  return null;
}
/** Nobody keeps seedlings in trays longer. */
const HALF_A_YEAR_DAYS = 183;

/**
 * What nights a young plant just hardened off bears: none so cold or colder for a month, and on the mean of its first week
 * not below `mildC` [°C]. Common practice, no source; lists give 7 to 10 °C for tender crops.
 */
const bearsC: Readonly<Record<FrostClass, { readonly limitC: number; readonly mildC: number }>> = {
  tender: { limitC: 0, mildC: 8 },
  'half-hardy': { limitC: -2, mildC: -Infinity },
  hardy: { limitC: -5, mildC: -Infinity },
};
const FROST_DAYS = 30;
const MILD_DAYS = 7;
/** In so many of the past years; what is left is the risk of a late frost. */
const SURE = 0.85;

/**
 * Whether nights bear young plants of a crop put out on a date, by what they were on that date in past years.
 *
 * A date is borne where in 85 % of the years no night of the 30 days from it on was as cold as the crop's limit, and the
 * mean night of its first week, over all the years, was mild enough. Screen temperatures: a bed on a clear night may be
 * several kelvin colder.
 *
 * @param minima The air's daily minima of past years; null: none is known. A date of which no year is known is taken as borne.
 * @param frost  The crop's hardiness; null: taken as tender.
 * @param anomalyK   How much colder than these a night may well be [K]: of a usual year, in which no night is odd.
 */
export function nightsBear(
  minima: DailyMinima | null,
  frost: FrostClass | null,
  oddK = 0,
): (date: PlainDate) => boolean {
  if (!minima) return () => true;
  const { firstDate, minC } = minima;
  const { limitC, mildC } = bearsC[frost ?? 'tender'];
  const firstYear = Number(firstDate.slice(0, 4));
  const lastYear = Number(addDays(firstDate, minC.length - 1).slice(0, 4));
  const known = new Map<string, boolean>();

  const isBorne = (monthDay: string): boolean => {
    let [years, without, nightsC, nights] = [0, 0, 0, 0];
    for (let year = firstYear; year <= lastYear; year++) {
      const at = daysBetween(firstDate, `${year}-${monthDay}` as PlainDate);
      let coldestC = Infinity;
      for (let day = 0; day < FROST_DAYS; day++) coldestC = Math.min(coldestC, minC[at + day] ?? NaN);
      if (Number.isNaN(coldestC)) continue;
      years++;
      if (coldestC - oddK > limitC) without++;
      for (let day = 0; day < MILD_DAYS; day++, nights++) nightsC += minC[at + day]!;
    }
    return years === 0 || (without >= SURE * years && nightsC / nights >= mildC);
  };
  return (date) => {
    const monthDay = date.slice(5) === '02-29' ? '02-28' : date.slice(5);
    const told = known.get(monthDay) ?? isBorne(monthDay);
    known.set(monthDay, told);
    return told;
  };
}
