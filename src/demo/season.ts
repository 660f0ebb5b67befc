import { defaultBed } from '../answers/question.js';
import { soilTemperatures } from '../answers/soil/soil-temperatures.js';
import {
  addDays,
  daysBetween,
  HOUR_MS,
  instantAt,
  instantText,
  type PlainDate,
  zoneNamed,
} from '../basics/calendar.js';
import { probit } from '../basics/numerics/probit.js';
import { readSeries } from '../readings/read-series.js';
import { type DemoAirDay, inventedAir } from './air.js';
import { chance } from './chance.js';

/** The demo's date. Its record of air ends the day before. */
export const today = '2027-08-03' as PlainDate;
const FIRST_DATE = '2012-08-03' as PlainDate;
const SEED = 44_030;

/** The place of the Quillmere Allotment Society, out in the ocean where no land is. */
export const place = {
  name: 'Quillmere Allotment Society',
  latitude: 44,
  longitude: -30,
  timeZone: 'Etc/GMT+2',
  annualRainMm: 900,
};

/** Its two beds, both watered to stay moist: north lies open, frame is raised and half in shade. */
export const beds = {
  north: { name: 'North bed', kind: 'open-ground', cover: 'bare', moisture: 'moist', shadePercent: 0 },
  frame: { name: 'Frame', kind: 'raised-bed', cover: 'bare', moisture: 'moist', shadePercent: 50 },
} as const;

/** Fifteen years of air. */
export const pastAir = (): DemoAirDay[] => inventedAir(FIRST_DATE, daysBetween(FIRST_DATE, today), chance(SEED));

/** The forecast days: the three hot days that north-bed-august.csv has in its soil, and four cooler ones. */
export const comingDays: readonly DemoAirDay[] = (
  [
    [17, 31.5],
    [18.5, 33],
    [17.5, 31.5],
    [12.5, 22.5],
    [11.5, 21.5],
    [12, 22],
    [12.5, 23],
  ] as const
).map(([min, max], day) => ({ date: addDays(today, day), min, max }));

/** The demo's instant: noon of its date. */
export const now = new Date(instantAt(today, '12:00', zoneNamed(place.timeZone)));

/** Two rows in the north bed: carrots of June that emerged slowly, and onions of July that have hardly emerged. */
export const sowings: Readonly<Record<string, object>> = {
  'carrots-june': { bed: 'north', crop: 'carrot', date: '2027-06-10', seeds: 200 },
  'onions-july': { bed: 'north', crop: 'onion', date: '2027-07-17', seeds: 200 },
};
/** Their counts, by date. */
export const counted: Readonly<Record<string, readonly (readonly [date: string, seedlings: number])[]>> = {
  'carrots-june': [
    ['2027-06-18', 0],
    ['2027-06-22', 9],
    ['2027-06-26', 48],
    ['2027-07-02', 83],
  ],
  'onions-july': [
    ['2027-07-26', 0],
    ['2027-07-30', 0],
    ['2027-08-03', 4],
  ],
};

/** The lettuce that the society wants next year. */
export const plan = {
  bed: 'north',
  crop: 'lettuce',
  harvest: { from: '2028-05-15', to: '2028-08-31', perWeek: 10 },
};

export const probeDepthCm = 5;
const PROBE_DAYS = 7;
/** The bed's difference from the model, the same as in north-bed-august.csv, and the probe's noise [K]. */
const BED_K = 0.8;
const NOISE_K = 0.15;

/**
 * A week of hourly probe readings in the north bed up to the last midnight: the soil that the service models from the
 * air, plus the bed's own difference.
 */
export function northReadings(): { at: string; value: number }[] {
  const zone = zoneNamed(place.timeZone);
  const air = readSeries({ medium: 'air', unit: 'C', origin: 'measured', daily: pastAir().slice(-400) }, zone, []);
  const { hours } = soilTemperatures({
    site: { zone, latitude: place.latitude, longitude: place.longitude, annualRainMm: place.annualRainMm },
    bed: { ...defaultBed, ...beds.north },
    depthCm: probeDepthCm,
    series: [air],
    understood: [],
    from: addDays(today, -PROBE_DAYS),
    to: addDays(today, -1),
    step: 'hour',
    beyond: null,
    normals: null,
  });
  const random = chance(SEED + 1);
  return Array.from(hours!.tempC, (tempC, hour) => ({
    at: instantText(hours!.startMs + hour * HOUR_MS, zone),
    value: Math.round((tempC + BED_K + NOISE_K * probit(random())) * 10) / 10,
  }));
}
