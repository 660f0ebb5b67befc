import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import { basisCode } from '../../basics/series.js';
import type { DailyAir } from '../../growth/workable-ground.js';
import type { ReadSeries } from '../../readings/read-series.js';

/**
 * The air of some series day by day, measured days before forecast ones; days of normals are none.
 *
 * @returns null where no day's minimum and maximum are known.
 */
export function airDays(series: readonly ReadSeries[]): DailyAir | null {
  const known = new Map<PlainDate, { readonly min: number; readonly max: number }>();
  for (const origin of ['forecast', 'measured'] as const) {
    for (const one of series) {
      if (one.medium !== 'air' || one.origin !== origin) continue;
      one.days.forEach(({ date, min, max, complete }, day) => {
        if (min !== null && max !== null && complete && isOfItsYear(one, day)) known.set(date, { min, max });
      });
    }
  }
  const dates = [...known.keys()].sort();
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return null;
  const n = daysBetween(first, last) + 1;
  const minC = new Float64Array(n).fill(NaN);
  const maxC = new Float64Array(n).fill(NaN);
  for (let day = 0, date = first; day < n; day++, date = addDays(date, 1)) {
    const one = known.get(date);
    if (one) [minC[day], maxC[day]] = [one.min, one.max];
  }
  return { firstDate: first, minC, maxC };
}

/** What stands for a day that is not known says nothing of its year. */
const STAND_INS = (['repeated', 'drift', 'past-years'] as const).map(basisCode);
const isOfItsYear = ({ dayBasis }: ReadSeries, day: number): boolean => !STAND_INS.includes(dayBasis[day] ?? -1);
