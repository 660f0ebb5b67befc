import { CHILLING_C, type CohortRun, cohortRun, type HourlyProgress, NOT_YET, type Seed } from './cohorts.js';
import { DRINKING_HOURS } from './cold-loss.js';
import { type Outcome, outcomeAt } from './outcome.js';

/** Harmful hours less than this far apart belong to one spell [h]. */
const JOINS_WITHIN_H = 24;
/** Fewer harmful hours than this on every day make no spell [h]. */
export const MIN_HOURS_ON_A_DAY = 6;
/** This long without relief makes a spell severe [h]. */
const UNBROKEN_H = 24;
/** A day's mean counts when at least this many of its hours lie after wetting, as for any daily mean [h]. */
const HOURS_OF_A_DAY = 18;

/** A run of days on which heat (or cold) holds the seed. Hours since wetting. */
export interface Spell {
  /** First harmful hour, and the hour after the last. */
  readonly fromH: number;
  readonly toH: number;
  /** Days touched and harmful hours. */
  readonly days: number;
  readonly hours: number;
  /** The highest hourly mean of a hot spell, the lowest of a cold one [°C]. */
  readonly peakC: number;
  readonly thresholdC: number;
  readonly severity: 'mild' | 'severe';
  /** How much earlier half and most would come without it [d]; null where either does not come at all. */
  readonly delayDays: { readonly half: number; readonly most: number } | null;
  /** Points of stand lost to it if seed that it held too long is lost. */
  readonly standAtRiskPoints: number;
  /** Harmful hours of it in the first day after wetting, when seed is most easily stopped. */
  readonly hoursInFirstDay: number;
}

export interface SpellSowing {
  readonly seed: Seed;
  /** Hourly means at the seed since wetting [°C]. */
  readonly hourlyC: Float64Array;
  /** What of these hours the first run has worked out. */
  readonly hourly: HourlyProgress;
  /** Which day at the place each hour falls on, never falling. */
  readonly dayOfHour: Int32Array;
  readonly countH: number;
  readonly viablePercent: number;
}

/** Spells of heat between wetting and most, and what each costs: the sowing is run again with the spell cut off at the threshold. */
export const hotSpells = (sowing: SpellSowing, run: CohortRun, outcome: Outcome): Spell[] =>
  spells(sowing, outcome, {
    thresholdC: sowing.seed.hotThresholdC,
    sign: 1,
    isCostly: (fromH, toH) => run.heatInducedAtH.some((riskH) => riskH > fromH && riskH <= toH),
  });

/** Spells of soil under 10 °C, for crops that chill harms. */
export const coldSpells = (sowing: SpellSowing, run: CohortRun, outcome: Outcome): Spell[] =>
  sowing.seed.chillingSensitive
    ? spells(sowing, outcome, {
        thresholdC: CHILLING_C,
        sign: -1,
        isCostly: (fromH) => fromH < DRINKING_HOURS && run.coldLoss > 0,
      })
    : [];

/** Which side of which threshold harms: sign 1 above, -1 below. */
interface Harm {
  readonly thresholdC: number;
  readonly sign: 1 | -1;
  /** Is seed lost to it, were held seed lost? */
  isCostly(fromH: number, toH: number): boolean;
}

function spells(sowing: SpellSowing, outcome: Outcome, harm: Harm): Spell[] {
  const { hourlyC } = sowing;
  // Where some of the seed still waits at the count, what came after most of the rest is what holds it.
  const endH = Math.min(hourlyC.length, Math.ceil(outcome.someWait ? sowing.countH : (outcome.mostH ?? sowing.countH)));
  const isHarmful = (hour: number): boolean => harm.sign * (hourlyC[hour]! - harm.thresholdC) > 0;
  const stretches: { fromH: number; toH: number }[] = [];
  for (let hour = 0; hour < endH; hour++) {
    if (!isHarmful(hour)) continue;
    const open = stretches.at(-1);
    if (open && hour - open.toH < JOINS_WITHIN_H) open.toH = hour + 1;
    else stretches.push({ fromH: hour, toH: hour + 1 });
  }
  return stretches.flatMap(({ fromH, toH }) => {
    const tally = tallyOf(sowing, fromH, toH, isHarmful, harm.sign);
    if (tally.mostHoursOnADay < MIN_HOURS_ON_A_DAY) return [];
    const severe =
      tally.longestRunH >= UNBROKEN_H || anyDayMeanHarmful(sowing, fromH, toH, harm) || harm.isCostly(fromH, toH);
    return [
      {
        fromH,
        toH,
        days: tally.days,
        hours: tally.hours,
        peakC: tally.peakC,
        thresholdC: harm.thresholdC,
        severity: severe ? ('severe' as const) : ('mild' as const),
        hoursInFirstDay: tally.hoursInFirstDay,
        ...costOf(sowing, outcome, fromH, toH, harm),
      },
    ];
  });
}

function tallyOf(sowing: SpellSowing, fromH: number, toH: number, isHarmful: (hour: number) => boolean, sign: 1 | -1) {
  let hours = 0;
  let days = 0;
  let hoursToday = 0;
  let mostHoursOnADay = 0;
  let runH = 0;
  let longestRunH = 0;
  let hoursInFirstDay = 0;
  let peakC = -sign * Infinity;
  let today = -1;
  for (let hour = fromH; hour < toH; hour++) {
    if (!isHarmful(hour)) {
      runH = 0;
      continue;
    }
    const tempC = sowing.hourlyC[hour]!;
    if (sign * (tempC - peakC) > 0) peakC = tempC;
    if (sowing.dayOfHour[hour] !== today) {
      today = sowing.dayOfHour[hour]!;
      days++;
      hoursToday = 0;
    }
    hours++;
    if (hour < 24) hoursInFirstDay++;
    mostHoursOnADay = Math.max(mostHoursOnADay, ++hoursToday);
    longestRunH = Math.max(longestRunH, ++runH);
  }
  return { hours, days, mostHoursOnADay, longestRunH, hoursInFirstDay, peakC };
}

function anyDayMeanHarmful({ hourlyC, dayOfHour }: SpellSowing, fromH: number, toH: number, harm: Harm): boolean {
  let hour = fromH;
  while (hour > 0 && dayOfHour[hour - 1] === dayOfHour[fromH]) hour--;
  while (hour < toH) {
    const day = dayOfHour[hour];
    let sum = 0;
    let count = 0;
    for (; hour < hourlyC.length && dayOfHour[hour] === day; hour++) {
      sum += hourlyC[hour]!;
      count++;
    }
    if (count >= HOURS_OF_A_DAY && harm.sign * (sum / count - harm.thresholdC) > 0) return true;
  }
  return false;
}

/** What the spell costs: the sowing is run again with the spell cut off at the threshold. */
function costOf(sowing: SpellSowing, outcome: Outcome, fromH: number, toH: number, harm: Harm) {
  const clipped = sowing.hourlyC.slice();
  const hourly = {
    germinable: sowing.hourly.germinable.slice(),
    progressPerHour: sowing.hourly.progressPerHour.slice(),
  };
  for (let hour = fromH; hour < toH; hour++) {
    if (harm.sign * (clipped[hour]! - harm.thresholdC) <= 0) continue;
    clipped[hour] = harm.thresholdC;
    hourly.germinable[hour] = NOT_YET;
  }
  const without = outcomeAt(cohortRun(sowing.seed, clipped, hourly), sowing.countH, sowing.viablePercent);
  const comes = outcome.halfH !== null && outcome.mostH !== null && without.halfH !== null && without.mostH !== null;
  return {
    delayDays: comes
      ? {
          half: Math.max(0, outcome.halfH - without.halfH!) / 24,
          most: Math.max(0, outcome.mostH - without.mostH!) / 24,
        }
      : null,
    standAtRiskPoints: Math.max(0, without.ifHeldAreLostPercent - outcome.ifHeldAreLostPercent),
  };
}
