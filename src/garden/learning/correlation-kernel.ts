import { daysBetween, type PlainDate } from '../../basics/calendar.js';

/** The bed's share of what sets a sowing apart, which recurs in its next sowings; the rest is the sowing's own. Our assumption. */
const BEDS_SHARE = 0.7;
/** Half-life of what a bed's sowing teaches [d], as beds change; and the part of it that belongs to the season. Our assumption. */
const HALF_LIFE_DAYS = 730;
const SEASONS_SHARE = 0.2;
/** The factor for sowings of different lots. Our assumption. */
const OTHER_LOT = 0.8;

/** Fields of a sowing that the kernel compares. */
interface DatedLot {
  readonly date: PlainDate;
  readonly lot: string | null;
}

/**
 * Correlation kernel between two sowings of a crop in one bed.
 *
 * @param a One sowing's date and lot; null: the lot is unknown.
 * @param b The other's.
 * @returns 0 to 0.7.
 *
 * Formula: 0.7 · 2^(-days/730) · (0.8 + 0.2 cos(2π days/365.25)) · (1, or 0.8 of another lot).
 * Source: the form is a product of standard kernels (Rasmussen, Williams 2006, chapter 4); the numbers are ours.
 * @example correlationKernel of two sowings two years apart, of one lot // => 0.35
 */
export function correlationKernel(a: DatedLot, b: DatedLot): number {
  const days = Math.abs(daysBetween(a.date, b.date));
  const season = 1 - SEASONS_SHARE + SEASONS_SHARE * Math.cos((2 * Math.PI * days) / 365.25);
  const lot = a.lot !== null && b.lot !== null && a.lot !== b.lot ? OTHER_LOT : 1;
  return BEDS_SHARE * 2 ** (-days / HALF_LIFE_DAYS) * season * lot;
}
