import type { Forecast } from '../../answers/forecast/forecast.js';
import { daysBetween, type PlainDate } from '../../basics/calendar.js';
import { logit } from '../../basics/numerics/logit.js';
import type { Crop } from '../../germination/crop.js';
import type { Posterior } from '../learning/count-posterior.js';
import { oddsOfStands, oddsOfTimes } from '../learning/posterior-factors.js';
import { type Tally, talliesOf } from '../learning/tally.js';
import type { Count } from '../store/season-store.js';

/** Where a sowing should be by its forecast. */
export type Expected = 'not-yet' | 'due' | 'past';
/** What the grower found. */
export type Observed = 'none' | 'some' | 'enough';
export const verdicts = ['wait', 'count-now', 'late', 'thin', 'good', 'lost'] as const;
export type Verdict = (typeof verdicts)[number];

/** How a sowing stands. */
export interface Judgement {
  readonly verdict: Verdict;
  /** null: nobody has counted, and nothing is guessed. */
  readonly odds: { readonly late: number; readonly lost: number } | null;
  readonly text: string;
}

/** What a sowing is judged by. */
export interface Evidence {
  readonly crop: Crop;
  readonly forecast: Forecast;
  /** Of the seed, where everything suits it. */
  readonly viablePercent: number;
  readonly posterior: Posterior | null;
  /** By the last count, would most have been up in a slow bed, too? */
  readonly isOverdue: boolean;
  /** In the order of dates. */
  readonly counts: readonly Count[];
  readonly seeds: number | null;
  readonly today: PlainDate;
}

/** A row is called lost where it lives with less than a twentieth of the odds: pulling up one that lives costs more than waiting. */
export const LOST_ODDS = 0.95;
const LIKELY = 0.5;
/** A count is old after a quarter of the days to half, but within these [d]. */
const OLD_AFTER_DAYS = { least: 5, most: 10 };

/** Where a sowing should be on a date: due from the first day of its range on, past after most in beds. */
export function expectedOf({ emergence: { first, most }, stand }: Forecast, today: PlainDate): Expected {
  if ('why' in first) return today <= stand.by ? 'not-yet' : 'past';
  if (today < first.range.from) return 'not-yet';
  return today <= ('why' in most ? stand.by : most.inBeds.to) ? 'due' : 'past';
}

/**
 * What the last count says: enough is the least share that beds give of what the seed can, or more, whatever the weather
 * took of it. After thinning by an unknown number, an earlier count that was enough still holds.
 */
export function observedOf({
  crop,
  viablePercent,
  counts,
  seeds,
}: Pick<Evidence, 'crop' | 'viablePercent' | 'counts' | 'seeds'>): Observed | null {
  const tallies = talliesOf(counts);
  const last = tallies.at(-1);
  if (!last) return null;
  const enough = (viablePercent / 100) * crop.field.from;
  const isEnough = ({ came, ofSeeds }: Tally): boolean => {
    const of = ofSeeds ?? seeds;
    return of !== null && came > 0 && came >= enough * of;
  };
  if (isEnough(last) || (last.isAtLeast && tallies.some(isEnough))) return 'enough';
  return last.came > 0 || last.isAtLeast ? 'some' : 'none';
}

/** How a sowing stands, from what was expected and what was found. */
export function judgementOf(evidence: Evidence): Judgement {
  const { crop, forecast, posterior, isOverdue, counts, today } = evidence;
  const expected = expectedOf(forecast, today);
  const last = counts.at(-1);
  if (!posterior || !last) {
    return expected === 'not-yet'
      ? { verdict: 'wait', odds: null, text: `Nothing is to be seen yet: ${whenFirst(forecast)}.` }
      : {
          verdict: 'count-now',
          odds: null,
          text: `${expected === 'due' ? 'Seedlings are due' : 'All should be up'}, and nobody has counted. Count them, even if there are none: without a count nothing can be said.`,
        };
  }
  const odds = oddsOf(posterior, crop);
  const observed = observedOf(evidence)!;
  const { to } = forecast.keepMoist;
  const keepMoist = to >= today ? ` Keep it moist until ${to}.` : '';
  const said = (verdict: Verdict, text: string): Judgement => ({ verdict, odds, text });
  if (odds.lost >= LOST_ODDS) {
    return isOverdue
      ? said('lost', `That nothing will come of it any more is ${inHundred(odds.lost)}. Sow again.`)
      : said(
          expected === 'not-yet' ? 'wait' : 'late',
          `None were up on ${last.date}, where most rows would show some by then. In a slow bed they may still come: count again in a few days before you give it up.${keepMoist}`,
        );
  }
  const eaten = eatenSince(evidence);
  if (eaten) {
    return said(
      'thin',
      `${counted(last)}, and ${eaten.seedlings} on ${eaten.date}. Something has taken them, or one of the counts is wrong: look for slugs, birds and seedlings fallen over at the soil, count again, and sow again what is bare.`,
    );
  }
  if (observed === 'enough') {
    return said(
      'good',
      `${counted(last)}: ${counts.some(({ thinned }) => thinned) ? 'with those pulled out, ' : ''}as many as beds give, or more.`,
    );
  }
  const isOver = expected === 'past';
  if (observed === 'some' && isOver && thinOdds(posterior, crop) >= LIKELY) {
    return said(
      'thin',
      `${counted(last)}, fewer than beds give of this crop, and hardly any are to come. Fill the gaps with a new sowing, or plant closer.`,
    );
  }
  if (expected !== 'not-yet' && isOld(forecast, last, today)) {
    return said('count-now', `The last count, on ${last.date}, is old. Count again, even if there are none.`);
  }
  // Of what is not yet due nobody says that it is late, however slow its bed may be.
  if (expected !== 'not-yet' && odds.late >= LIKELY) {
    return said(
      'late',
      observed === 'some'
        ? `${counted(last)}: it is late, not lost, and more may come.${keepMoist}`
        : `It is late, not lost: that it lives is ${inHundred(1 - odds.lost)}. Count again in a few days.${keepMoist}`,
    );
  }
  return said(
    'wait',
    observed === 'some'
      ? `${counted(last)}, and more may come.${keepMoist}`
      : `None were up on ${last.date}; that it lives is ${inHundred(1 - odds.lost)}.${expected === 'past' ? ' Count again in a few days.' : ''}${keepMoist}`,
  );
}

/** The fullest count before the last, where less than half of it stands now without anybody having thinned it. */
function eatenSince({ counts, seeds }: Pick<Evidence, 'counts' | 'seeds'>): Count | null {
  const shareOf = ({ seedlings, ofSeeds }: Count): number => seedlings / (ofSeeds ?? seeds ?? 1);
  const fullest = counts.reduce((full, one) => (shareOf(one) > shareOf(full) ? one : full));
  const last = counts.at(-1)!;
  const isThinned = counts.some(({ thinned }) => thinned !== false);
  const isSeen = fullest.seedlings >= FEWEST_SEEN && shareOf(last) < shareOf(fullest) / 2;
  return isSeen && !isThinned ? fullest : null;
}
/** Of fewer seedlings nobody can tell what took half of them. */
const FEWEST_SEEN = 10;

/** How likely a sowing lives but takes longer than beds of its crop have taken, and how likely it is dead. */
function oddsOf(posterior: Posterior, crop: Crop): NonNullable<Judgement['odds']> {
  const latest = Math.log(crop.bedTimeFactor.to);
  const late = sumWhere(posterior.logTime, oddsOfTimes(posterior), (logTime) => logTime > latest);
  return { late: late * (1 - posterior.dead), lost: posterior.dead };
}

/** How likely a sowing that lives gives less than beds of its crop have given. */
function thinOdds(posterior: Posterior, crop: Crop): number {
  const least = crop.field.from > 0 ? logit(Math.min(crop.field.from, 0.999)) : Number.NEGATIVE_INFINITY;
  return sumWhere(posterior.logitStand, oddsOfStands(posterior), (value) => value < least);
}

const sumWhere = (points: Float64Array, odds: Float64Array, isMeant: (point: number) => boolean): number =>
  points.reduce((sum, point, i) => (isMeant(point) ? sum + odds[i]! : sum), 0);

function isOld({ emergence: { half } }: Forecast, last: Count, today: PlainDate): boolean {
  const quarter = 'why' in half ? OLD_AFTER_DAYS.most : half.days / 4;
  const days = Math.min(OLD_AFTER_DAYS.most, Math.max(OLD_AFTER_DAYS.least, quarter));
  return daysBetween(last.date, today) > days;
}

const whenFirst = ({ emergence: { first }, stand }: Forecast): string =>
  'why' in first
    ? `by its temperatures nothing comes before the count on ${stand.by}`
    : `the first are expected from ${first.range.from} on`;

const counted = ({ seedlings, ofSeeds, date }: Count): string =>
  `${seedlings === 1 ? 'One seedling was' : `${seedlings} seedlings were`} counted${ofSeeds === null ? '' : ` of ${ofSeeds} seeds`} on ${date}`;

function inHundred(odds: number): string {
  const whole = Math.round(100 * odds);
  return whole >= 100 ? 'all but certain' : whole <= 0 ? 'all but ruled out' : `likely in ${whole} of 100 such rows`;
}
