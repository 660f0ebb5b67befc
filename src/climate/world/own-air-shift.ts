import { addDays } from '../../basics/calendar.js';
import type { MonthlyTemperatures } from './months-at-height.js';
import type { DailyExtremes } from './typical-years.js';

/** A month with fewer known days than this says nothing of its mean [d]. */
const MIN_DAYS = 20;

/**
 * Monthly means moved toward a place's own air of a year or two.
 *
 * @param months The means from stations.
 * @param own    The place's air; NaN is a missing day.
 * @returns The means; a month that the air does not cover stays as it was.
 * @throws ScienceError never.
 *
 * Formula: of n Januaries, the mean's difference from the stations' is added n/(n + 1) times; and so on.
 * Source: our study; shrinkage as between equal variances of a year about the climate and of the table about the place.
 * @example one January of 31 days, 2 K warmer by day than the stations' // => meanMaxC[0] 1 K higher
 */
export function movedToOwnAir(months: MonthlyTemperatures, own: DailyExtremes): MonthlyTemperatures {
  const ofMonths = ownMonths(own);
  const moved = (means: Float64Array, sums: (of: OwnMonth) => number): Float64Array =>
    means.map((mean, month) => {
      const known = ofMonths.filter((one) => one.month === month && one.days >= MIN_DAYS);
      const n = known.length;
      if (n === 0) return mean;
      const ownMean = known.reduce((sum, one) => sum + sums(one) / one.days, 0) / n;
      return mean + ((ownMean - mean) * n) / (n + 1);
    });
  return {
    meanMaxC: moved(months.meanMaxC, ({ maxSum }) => maxSum),
    meanMinC: moved(months.meanMinC, ({ minSum }) => minSum),
  };
}

interface OwnMonth {
  /** January is 0. */
  readonly month: number;
  days: number;
  maxSum: number;
  minSum: number;
}

function ownMonths({ firstDate, minC, maxC }: DailyExtremes): OwnMonth[] {
  const months = new Map<string, OwnMonth>();
  for (let day = 0; day < minC.length; day++) {
    if (Number.isNaN(minC[day]! + maxC[day]!)) continue;
    const name = addDays(firstDate, day).slice(0, 7);
    const one = months.get(name) ?? { month: Number(name.slice(5)) - 1, days: 0, maxSum: 0, minSum: 0 };
    one.days++;
    one.maxSum += maxC[day]!;
    one.minSum += minC[day]!;
    months.set(name, one);
  }
  return [...months.values()];
}
