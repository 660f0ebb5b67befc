import { dayNumber, daysBetween, type PlainDate } from '../../basics/calendar.js';
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
  const first = dayNumber(firstDate);
  let isKnown = false;
  for (const origin of ['forecast', 'measured'] as const) {
    for (const one of air) {
      if (one.origin !== origin) continue;
      const { days, dayBasis } = one;
      for (let day = 0; day < days.length; day++) {
        const { date, min, max, complete } = days[day]!;
        if (min === null || max === null || !complete || STAND_INS.includes(dayBasis[day] ?? -1)) continue;
        const at = dayNumber(date) - first;
        minC[at] = min;
        maxC[at] = max;
        isKnown = true;
      }
    }
  }
  return isKnown ? { firstDate, minC, maxC } : null;
}

/** Bases of stand-ins for unknown days, which say nothing of their year. */
const STAND_INS = (['repeated', 'drift', 'past-years', 'climate-table'] as const).map(basisCode);
