import type { PastSoil } from '../../src/answers/ahead/past-soil.js';
import { airAboveBed } from '../../src/answers/soil/air-above-bed.js';
import { type ModelledBed, modelledBed } from '../../src/answers/soil/modelled-bed.js';
import {
  addDays,
  DAY_MS,
  dayOfYear,
  daysBetween,
  fixedZone,
  type PlainDate,
  startOfDay,
  type Zone,
} from '../../src/basics/calendar.js';
import { readSeries } from '../../src/readings/read-series.js';
import { tableOf } from './records.js';

/** A station's days in a row, NaN where missing, and what the model makes of its air. */
export interface Station {
  readonly name: string;
  readonly zone: Zone;
  readonly latitude: number;
  readonly firstDate: PlainDate;
  readonly nDays: number;
  readonly years: Int32Array;
  readonly months: Int32Array;
  readonly daysOfMonth: Int32Array;
  readonly daysOfYear: Float64Array;
  /** Measured daily means [°C]. */
  readonly soil5C: Float64Array;
  readonly soil10C: Float64Array;
  readonly airC: Float64Array;
  /** Modelled daily means [°C]. */
  readonly model5C: Float64Array;
  readonly model10C: Float64Array;
  /** The response of 5 cm to sunnier weather than usual. */
  readonly sun: Float64Array;
  readonly bed: ModelledBed;
}

/** How much the model is told of the place. */
export type Told = 'rain' | 'no-rain' | 'no-climate';

export interface StationPlace {
  readonly station: string;
  readonly latitude: number;
  readonly longitude: number;
}

export const stationPlaces = (): StationPlace[] =>
  tableOf('stations.csv').map(({ station, latitude, longitude }) => ({
    station: station!,
    latitude: Number(latitude),
    longitude: Number(longitude),
  }));

/** Reads a station and runs the model under grass over its whole record, as the service would. */
export function stationOf({ station, latitude, longitude }: StationPlace, told: Told = 'rain'): Station {
  const rows = tableOf(`stations/uscrn_${station}.csv`);
  const firstDate = rows[0]!.date as PlainDate;
  const nDays = daysBetween(firstDate, rows.at(-1)!.date as PlainDate) + 1;
  const column = (name: string): Float64Array => {
    const values = new Float64Array(nDays).fill(NaN);
    for (const row of rows)
      if (row[name] !== '') values[daysBetween(firstDate, row.date as PlainDate)] = Number(row[name]);
    return values;
  };
  const rain = column('precip_mm').filter((mm) => !Number.isNaN(mm));
  const annualRainMm = (rain.reduce((sum, mm) => sum + mm, 0) / rain.length) * 365.2425;
  // Days of the network are of local standard time.
  const zone = fixedZone(60 * Math.round(longitude / 15));
  const site = { zone, latitude, longitude, annualRainMm: told === 'rain' ? annualRainMm : null };
  const daily = rows
    .filter((row) => row.tmin_c !== '' && row.tmax_c !== '')
    .map((row) => ({ date: row.date as PlainDate, min: Number(row.tmin_c), max: Number(row.tmax_c) }));
  const startMs = startOfDay(firstDate, zone);
  const whole = { phaseMs: startMs, fromMs: startMs, toMs: startMs + nDays * DAY_MS };
  const air = airAboveBed([readSeries({ medium: 'air', unit: 'C', daily }, zone, [])], site, whole)!;
  const asked = told === 'no-climate' ? { ...air, climate: null } : air;
  const grass = { kind: 'open-ground', cover: 'grass', moisture: 'rain', shadePercent: 0 } as const;
  const bed = modelledBed(asked, latitude, grass, [10, 5]);
  const dates = Array.from({ length: nDays }, (_, day) => addDays(firstDate, day));
  return {
    name: station,
    zone,
    latitude,
    firstDate,
    nDays,
    years: Int32Array.from(dates, (date) => Number(date.slice(0, 4))),
    months: Int32Array.from(dates, (date) => Number(date.slice(5, 7))),
    daysOfMonth: Int32Array.from(dates, (date) => Number(date.slice(8, 10))),
    daysOfYear: Float64Array.from(dates, dayOfYear),
    soil5C: column('soil5_c'),
    soil10C: column('soil10_c'),
    airC: column('tavg_c'),
    model5C: dailyMeans(bed.hourlyC[1]!, nDays),
    model10C: dailyMeans(bed.hourlyC[0]!, nDays),
    sun: dailyMeans(bed.sun(), nDays),
    bed,
  };
}

export function dailyMeans(hourlyC: Float64Array, nDays: number): Float64Array {
  return Float64Array.from({ length: nDays }, (_, day) => {
    const hours = hourlyC.subarray(24 * day, 24 * day + 24);
    return hours.length === 24 ? hours.reduce((sum, tempC) => sum + tempC, 0) / 24 : NaN;
  });
}

/** A station's soil as past years, measured or modelled by the hour, beside the air's minima. */
export const pastOf = ({ bed, zone, firstDate }: Station, hourlyC: Float64Array): PastSoil => ({
  startMs: startOfDay(firstDate, zone),
  hourlyC,
  course: null,
  years: 20,
  comingC: new Float64Array(),
  air: {
    firstDate,
    minC: Float64Array.from(bed.air.record.days, ({ minC }) => minC),
    maxC: Float64Array.from(bed.air.record.days, ({ maxC }) => maxC),
  },
  isUsual: false,
  sdK: null,
  assumptions: [],
  warnings: [],
});
