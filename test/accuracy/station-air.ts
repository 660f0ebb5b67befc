import { daysBetween, type PlainDate } from '../../src/basics/calendar.js';
import type { DailyAir } from '../../src/growth/workable-ground.js';
import { tableOf } from './records.js';
import { stationPlaces } from './stations.js';

/** A station's air day by day, NaN where missing, and its soil at 5 cm under grass. */
export function stationAir(station: string): { air: DailyAir; latitude: number; soil5C: Float64Array } {
  const rows = tableOf(`stations/uscrn_${station}.csv`);
  const firstDate = rows[0]!.date as PlainDate;
  const n = daysBetween(firstDate, rows.at(-1)!.date as PlainDate) + 1;
  const column = (name: string): Float64Array => {
    const values = new Float64Array(n).fill(NaN);
    for (const row of rows)
      if (row[name] !== '') values[daysBetween(firstDate, row.date as PlainDate)] = Number(row[name]);
    return values;
  };
  const { latitude } = stationPlaces().find((one) => one.station === station)!;
  return { air: { firstDate, minC: column('tmin_c'), maxC: column('tmax_c') }, latitude, soil5C: column('soil5_c') };
}
