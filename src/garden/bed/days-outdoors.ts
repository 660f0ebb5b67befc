import { daysBetween } from '../../basics/calendar.js';
import type { DailyMinima } from '../../climate/frost-dates.js';
import type { DaysOutdoors } from '../../growth/planting-out.js';
import { doubtfulMinima } from '../../readings/checks/doubtful-minima.js';
import type { BedInputs } from './bed-inputs.js';

/** The stored minima of the air, day by day from the first on; NaN where there is none, or a doubtful one. */
export function minimaOf({ series }: BedInputs): DailyMinima | null {
  const air = series.find(({ medium, origin }) => medium === 'air' && origin === 'measured');
  const firstDate = air?.days[0]?.date;
  if (!air || firstDate === undefined) return null;
  const minC = new Float64Array(daysBetween(firstDate, air.days.at(-1)!.date) + 1).fill(Number.NaN);
  for (const { date, min } of air.days) minC[daysBetween(firstDate, date)] = min ?? Number.NaN;
  for (const { date } of doubtfulMinima(air.days)) minC[daysBetween(firstDate, date)] = Number.NaN;
  return { firstDate, minC };
}

/** The stored days of air by which plants are planted out. Soil is null, so that the air's mean stands for it. */
export function daysOutdoors(kept: BedInputs): DaysOutdoors | null {
  const minima = minimaOf(kept);
  const air = kept.series.find(({ medium, origin }) => medium === 'air' && origin === 'measured');
  if (!minima || !air) return null;
  const maxC = new Float64Array(minima.minC.length).fill(Number.NaN);
  for (const { date, max } of air.days) maxC[daysBetween(minima.firstDate, date)] = max ?? Number.NaN;
  return { firstDate: minima.firstDate, minC: Float64Array.from(minima.minC), maxC, soilC: null };
}
