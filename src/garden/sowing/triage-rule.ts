import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';

/** A row that waits is looked at again after so long [d]. */
export const LOOK_AGAIN_DAYS = 4;
/** Share of repeated sowings that come up. Our assumption. */
export const COMES_UP = 0.75;
/** Cost of a sowing, seed and half an hour, as a share of a whole harvest. Our assumption. */
export const RESOWING_COST = 0.05;
/** Each day by which a sowing is later costs so much, as a share of a whole harvest [1/d]. Our assumption. */
export const LOST_A_DAY = 0.004;

/**
 * The probability of a dead row above which sowing again at once loses less than waiting for the next look.
 *
 * Waiting loses `lossByWaiting` where the row is dead; sowing again wastes its cost where the row lives.
 *
 * @param lossByWaiting By how much less a sowing gives that is made at the next look, as a share of a whole harvest; rising
 * odds make it negative.
 * @param cost          What sowing again costs in the same measure, above 0.
 * @returns Odds from 0 to 1, to be exceeded: 1 where waiting loses nothing.
 *
 * Formula: p dH > (1 - p) c, so that p > c / (c + dH).
 * Source: the action of least expected loss, as in any text on decisions (DeGroot 1970, Optimal Statistical Decisions, from
 * memory).
 * @example sowAgainAbove(0.1) // => 0.333
 */
export const sowAgainAbove = (lossByWaiting: number, cost = RESOWING_COST): number =>
  lossByWaiting <= 0 ? 1 : cost / (cost + lossByWaiting);

/** Expected loss of each choice, as a share of a whole harvest. */
export interface Losses {
  readonly sowAgain: number;
  /** Until the next look, and then sowing again where the row is dead. */
  readonly wait: number;
}

/** The harvest that a sowing made on a date may be expected to give, as a share of a whole one. */
export type HarvestOdds = (date: PlainDate) => number;

/** The odds of a harvest by the date of a sowing, less what is lost by its being later than the first one's. */
export const lessDelay =
  (odds: HarvestOdds, sown: PlainDate): HarvestOdds =>
  (date) =>
    Math.max(0, odds(date) - LOST_A_DAY * daysBetween(sown, date));

/**
 * Losses of sowing again on a date, and of waiting for the next look.
 *
 * @param lostOdds How likely the row is dead, 0 to 1.
 * @param harvest  The expected harvest by date of sowing.
 * @param on       The date on which it may be sown again.
 */
export function lossesOn(lostOdds: number, harvest: HarvestOdds, on: PlainDate): Losses {
  const lossAt = (date: PlainDate): number => 1 - COMES_UP * harvest(date);
  return {
    sowAgain: lostOdds * lossAt(on) + RESOWING_COST,
    wait: lostOdds * (lossAt(addDays(on, LOOK_AGAIN_DAYS)) + RESOWING_COST),
  };
}

/** True if sowing again on a date loses less than waiting; a tie waits. */
export const isToSowAgain = (lostOdds: number, harvest: HarvestOdds, on: PlainDate): boolean =>
  lostOdds > sowAgainAbove(COMES_UP * (harvest(on) - harvest(addDays(on, LOOK_AGAIN_DAYS))));

/**
 * The next look on which it turns to sowing again, should the row still be bare by then.
 *
 * @param lostOn How likely the row is lost, should it be bare on a date.
 * @param last   The last date on which it may be sown again.
 * @returns null: it does not up to then.
 */
export function turningDate(
  lostOn: (date: PlainDate) => number,
  harvest: HarvestOdds,
  today: PlainDate,
  last: PlainDate,
): PlainDate | null {
  for (let on = addDays(today, LOOK_AGAIN_DAYS); on <= last; on = addDays(on, LOOK_AGAIN_DAYS)) {
    if (isToSowAgain(lostOn(on), harvest, on)) return on;
  }
  return null;
}
