import type { Forecast } from '../../answers/forecast/forecast.js';
import { daysBetween, type PlainDate } from '../../basics/calendar.js';
import { logit } from '../../basics/numerics/logit.js';
import type { Crop } from '../../germination/crop.js';
import type { Posterior } from '../learning/count-posterior.js';
import { oddsOfStands, oddsOfTimes } from '../learning/posterior-factors.js';
import { type Tally, talliesOf } from '../learning/tally.js';
import type { Count } from '../store/season-store.js';
import type { VerdictFact } from './sowing-facts.js';

/** Where a sowing should be by its forecast. */
export type Expected = 'not-yet' | 'due' | 'past';
/** The grower's finding. */
export type Observed = 'none' | 'some' | 'enough';
export const verdicts = ['wait', 'count-now', 'late', 'thin', 'good', 'lost'] as const;
export type Verdict = (typeof verdicts)[number];

/** How a sowing stands. */
export interface Judgement {
  readonly verdict: Verdict;
  /** null: nobody has counted, and nothing is guessed. */
  readonly odds: { readonly late: number; readonly lost: number } | null;
  readonly text: VerdictFact;
}

/** Evidence by which a sowing is judged. */
export interface Evidence {
  readonly crop: Crop;
  readonly forecast: Forecast;
  /** Of the seed, where everything suits it. */
  readonly viablePercent: number;
  readonly posterior: Posterior | null;
  /** True if even in a slow bed most would have been up by the last count. */
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
  const isPast = yesNo(expected === 'past');
  const waiting = waitingFact(forecast, isPast);
  if (!posterior || !last) {
    return expected === 'not-yet'
      ? { verdict: 'wait', odds: null, text: waiting }
      : {
          verdict: 'count-now',
          odds: null,
          text: { code: 'verdict.count-now', params: { lastCountOn: last?.date ?? null, isPast } },
        };
  }
  const odds = oddsOf(posterior, crop);
  const observed = observedOf(evidence)!;
  const { to } = forecast.keepMoist;
  const counted = { countedOn: last.date, seedlings: last.seedlings, ofSeeds: last.ofSeeds };
  const slow = (mostRowsShow: boolean) => ({
    ...counted,
    found: observed === 'some' ? ('some' as const) : ('nothing' as const),
    mostRowsShow: yesNo(mostRowsShow),
    livesPercent: percentOf(1 - odds.lost),
    moistUntilDate: to >= today ? to : null,
  });
  const wait = (mostRowsShow: boolean): Judgement => ({
    verdict: 'wait',
    odds,
    text: { code: 'verdict.wait', params: { ...waiting.params, ...slow(mostRowsShow) } },
  });
  const late = (mostRowsShow: boolean): Judgement => ({
    verdict: 'late',
    odds,
    text: { code: 'verdict.late', params: slow(mostRowsShow) },
  });
  const thin = (before: Count | null): Judgement => ({
    verdict: 'thin',
    odds,
    text: {
      code: 'verdict.thin',
      params: { ...counted, beforeOn: before?.date ?? null, beforeSeedlings: before?.seedlings ?? 0 },
    },
  });
  if (odds.lost >= LOST_ODDS) {
    if (isOverdue) {
      return { verdict: 'lost', odds, text: { code: 'verdict.lost', params: { lostPercent: percentOf(odds.lost) } } };
    }
    return expected === 'not-yet' ? wait(true) : late(true);
  }
  const eaten = eatenSince(evidence);
  if (eaten) return thin(eaten);
  if (observed === 'enough') {
    const isThinned = yesNo(counts.some(({ thinned }) => thinned));
    return { verdict: 'good', odds, text: { code: 'verdict.good', params: { ...counted, isThinned } } };
  }
  if (observed === 'some' && expected === 'past' && thinOdds(posterior, crop) >= LIKELY) return thin(null);
  if (expected !== 'not-yet' && isOld(forecast, last, today)) {
    return {
      verdict: 'count-now',
      odds,
      text: { code: 'verdict.count-now', params: { lastCountOn: last.date, isPast } },
    };
  }
  // A sowing that is not yet due is never called late, however slow its bed.
  return expected !== 'not-yet' && odds.late >= LIKELY ? late(false) : wait(false);
}

/** That there is nothing to count yet. */
const waitingFact = ({ emergence: { first }, stand }: Forecast, isPast: 'yes' | 'no') =>
  ({
    code: 'verdict.wait',
    params: {
      countedOn: null,
      found: 'nothing',
      seedlings: 0,
      ofSeeds: null,
      firstDate: 'why' in first ? null : first.range.from,
      countDate: stand.by,
      mostRowsShow: 'no',
      livesPercent: 100,
      isPast,
      moistUntilDate: null,
    },
  }) as const satisfies VerdictFact;

const yesNo = (is: boolean): 'yes' | 'no' => (is ? 'yes' : 'no');
const percentOf = (share: number): number => Math.min(100, Math.max(0, Math.round(100 * share)));

/** The fullest count before the last, where less than half of it stands now without anybody having thinned it. */
export function eatenSince({ counts, seeds }: Pick<Evidence, 'counts' | 'seeds'>): Count | null {
  if (counts.length === 0) return null;
  const shareOf = ({ seedlings, ofSeeds }: Count): number => seedlings / (ofSeeds ?? seeds ?? 1);
  const fullest = counts.reduce((full, one) => (shareOf(one) > shareOf(full) ? one : full));
  const last = counts.at(-1)!;
  const isThinned = counts.some(({ thinned }) => thinned !== false);
  const isSeen = fullest.seedlings >= MIN_SEEN && shareOf(last) < shareOf(fullest) / 2;
  return isSeen && !isThinned ? fullest : null;
}
/** With fewer seedlings, losing half of them may be chance. */
const MIN_SEEN = 10;

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
