import { probit } from '../../src/basics/numerics/probit.js';
import { chance } from '../../src/demo/chance.js';
import { COHORTS, type Seed } from '../../src/germination/run/cohorts.js';
import { hourlyProgress } from '../../src/germination/run/hourly-progress.js';

/** One bed's sowing as it truly is, and what a grower may count in it. */
export interface TrueSowing {
  readonly timeFactor: number;
  /** Share of the viable seed that came up at all. */
  readonly standFactor: number;
  readonly halfH: number;
  /** How many stand at an hour, as a grower who counts right would find. */
  standingAt(hour: number): number;
  readonly seeds: number;
}

/** What a sowing is made to be. */
export interface Nature {
  readonly timeFactor: number;
  readonly standFactor: number;
  readonly seeds: number;
  /** Share of the seed that comes where everything suits it. */
  readonly viable: number;
  /** The crop's; the sowing's own is 0.6 to 1.6 times as wide. */
  readonly sigmaLog10: number;
  /** At most so many of the seedlings are eaten in a day. */
  readonly eatenADay?: number;
}

/** Soil of an invented season, warming or cooling, with day, night and odd weeks [°C]. */
export function inventedSoil(seed: number, nDays: number, startC: number, perDayC: number): Float64Array {
  const random = chance(seed);
  let oddK = 0;
  return Float64Array.from({ length: nDays * 24 }, (_, hour) => {
    if (hour % 24 === 0) oddK = 0.8 * oddK + 1.2 * probit(random());
    return Math.max(1, startC + (perDayC * hour) / 24 + oddK + 3.5 * Math.sin((2 * Math.PI * ((hour % 24) - 9)) / 24));
  });
}

/** Seed is sorted into so many ranks, the fastest and most heat-proof first. */
const RANKS = 20;

/** How far seed of each rank has come by each hour, with a time factor of 1 and middling speed. Shape (20) of (nHours + 1). */
export function waysOf(seed: Seed, hourlyC: Float64Array): Float64Array[] {
  const { germinable, progressPerHour } = hourlyProgress(seed, hourlyC, 0, hourlyC.length);
  return Array.from({ length: RANKS }, (_, rank) => {
    const way = new Float64Array(hourlyC.length + 1);
    const cohort = Math.floor(((rank + 0.5) * COHORTS) / RANKS);
    for (let hour = 0; hour < hourlyC.length; hour++) {
      way[hour + 1] = way[hour]! + (germinable[hour]! > cohort ? progressPerHour[hour]! : 0);
    }
    return way;
  });
}

/**
 * A sowing unlike the model: the seeds' times are skewed and wider or narrower than the crop's, seed is lost in patches,
 * and seedlings are eaten once they are up.
 */
export function trueSowing(
  ways: readonly Float64Array[],
  random: () => number,
  { timeFactor, standFactor, seeds, viable, sigmaLog10, eatenADay = 0.02 }: Nature,
): TrueSowing {
  const width = Math.LN10 * sigmaLog10 * (0.6 + random());
  const eaten = eatenADay * random();
  const upAtH: number[] = [];
  const goneAtH: number[] = [];
  let patch = 0;
  for (let i = 0; i < seeds; i++) {
    // Every ten seeds another patch of ground.
    if (i % 10 === 0) patch = Math.min(1, Math.max(0, standFactor * (1 + 0.5 * probit(random()))));
    if (random() > viable * patch) continue;
    const u = random();
    // As wide as a normal distribution, with longer tails; and stretched on the slow side.
    const logistic = 0.55 * Math.log(u / (1 - u));
    const goal = timeFactor * Math.exp(width * (logistic > 0 ? 1.3 * logistic : 0.85 * logistic));
    const upH = hourAt(ways[Math.floor(u * RANKS)]!, goal);
    if (upH === Infinity) continue;
    upAtH.push(upH);
    goneAtH.push(upH - (24 * Math.log(random())) / Math.max(1e-9, eaten));
  }
  return {
    timeFactor,
    standFactor: upAtH.length / (seeds * viable),
    halfH: [...upAtH].sort((a, b) => a - b)[upAtH.length >> 1] ?? Infinity,
    seeds,
    standingAt: (hour) => upAtH.filter((up, i) => up <= hour && goneAtH[i]! > hour).length,
  };
}

function hourAt(way: Float64Array, goal: number): number {
  if (way.at(-1)! < goal) return Infinity;
  let [low, high] = [0, way.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (way[middle]! >= goal) high = middle;
    else low = middle;
  }
  return low + (goal - way[low]!) / (way[high]! - way[low]!);
}

/** A tenth of the counts is wrong: nothing seen, weeds counted too, a slip of the pen, a neighbour's row. */
export function countedWrong(right: number, seeds: number, random: () => number): number {
  const kind = Math.floor(4 * random());
  const wrong = [0, right + Math.floor(0.1 * seeds * random()), right * (random() < 0.5 ? 10 : 0.1), seeds * random()][
    kind
  ]!;
  return Math.min(seeds, Math.max(0, Math.round(wrong)));
}
