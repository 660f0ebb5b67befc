import { allSowings, type Counting } from '../../../src/germination/many/all-sowings.js';
import { COHORTS, cohortRun, type Seed, unknownProgress } from '../../../src/germination/run/cohorts.js';
import { outcomeAt } from '../../../src/germination/run/outcome.js';

/** Where a sowing in the fast answer is not what that sowing run alone gives: nothing, if all is well. */
export function differencesFromSlow(
  seed: Seed,
  hourlyC: Float64Array,
  sowH: ArrayLike<number>,
  counting: Counting,
): string[] {
  const fast = allSowings(seed, hourlyC, sowH, counting);
  const { withinH, viablePercent } = counting;
  // One hourly for all of them, which the first run through an hour works out: the runs are long enough without it.
  const { germinable, progressPerHour } = unknownProgress(hourlyC.length);
  return Array.from(sowH).flatMap((atH, i) => {
    const alone = hourlyC.subarray(atH, atH + withinH);
    const firstGap = alone.findIndex((tempC) => Number.isNaN(tempC));
    const seen = firstGap < 0 ? alone : alone.subarray(0, firstGap);
    const toH = atH + seen.length;
    const run = cohortRun(seed, seen, {
      germinable: germinable.subarray(atH, toH),
      progressPerHour: progressPerHour.subarray(atH, toH),
    });
    const slow = outcomeAt(run, withinH, viablePercent);
    const isKnown = seen.length === withinH || run.upAtH[COHORTS - 1]! < Infinity || run.killedAtH < Infinity;
    if (!isKnown) return fast.known[i] === 0 ? [] : [`${i}: known, but should not be`];
    const stands = ['laboratoryPercent', 'ifHeldAreLostPercent'] as const;
    const times = ['firstH', 'halfH', 'mostH'] as const;
    return [
      ...(fast.known[i] === 1 ? [] : [`${i}: should be known`]),
      ...stands
        .filter((name) => fast[name][i] !== slow[name])
        .map((name) => `${i}: ${name} is ${fast[name][i]}, not ${slow[name]}`),
      ...times
        .filter(
          (name) => !(Math.abs(fast[name][i]! - (slow[name] ?? NaN)) <= 1e-6) && !bothNone(fast[name][i]!, slow[name]),
        )
        .map((name) => `${i}: ${name} is ${fast[name][i]}, not ${slow[name]}`),
    ];
  });
}

const bothNone = (fastH: number, slowH: number | null): boolean => Number.isNaN(fastH) && slowH === null;
