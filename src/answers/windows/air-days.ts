import { daysBetween, type PlainDate } from '../../basics/calendar.js';
import { basisCode } from '../../basics/series.js';
import type { DailyAir } from '../../growth/workable-ground.js';
import type { ReadSeries } from '../../readings/read-series.js';

/**
 * The air of some series day by day, measured days before forecast ones; days of normals are none.
 *
 * @returns null where no day's minimum and maximum are known.
 */
export function airDays(series: readonly ReadSeries[]): DailyAir | null {
  const air = series.filter(({ medium, days }) => medium === 'air' && days.length > 0);
  if (air.length === 0) return null;
  const [firstDate] = air.map(({ days }) => days[0]!.date).sort() as [PlainDate];
  const lastDate = air
    .map(({ days }) => days.at(-1)!.date)
    .sort()
    .at(-1)!;
  const n = daysBetween(firstDate, lastDate) + 1;
  const minC = new Float64Array(n).fill(NaN);
  const maxC = new Float64Array(n).fill(NaN);
  let isKnown = false;
  for (const origin of ['forecast', 'measured'] as const) {
    for (const one of air) {
      if (one.origin !== origin) continue;
      one.days.forEach(({ date, min, max, complete }, day) => {
        if (min === null || max === null || !complete || !isOfItsYear(one, day)) return;
        const at = daysBetween(firstDate, date);
        [minC[at], maxC[at]] = [min, max];
        isKnown = true;
      });
    }
  }
  return isKnown ? { firstDate, minC, maxC } : null;
}

/** Bases of stand-ins for unknown days, which say nothing of their year. */
const STAND_INS = (['repeated', 'drift', 'past-years', 'climate-table'] as const).map(basisCode);
const isOfItsYear = ({ dayBasis }: ReadSeries, day: number): boolean => !STAND_INS.includes(dayBasis[day] ?? -1);
