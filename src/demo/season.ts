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

/** The day on which the society asks. Its record of air ends the day before. */
export const today = '2027-08-03' as PlainDate;
const FIRST_DATE = '2012-08-03' as PlainDate;
const SEED = 44_030;

/** The Quillmere Allotment Society, out in the ocean where no land is: its place, as the service is told of it. */
export const place = {
  name: 'Quillmere Allotment Society',
  latitude: 44,
  longitude: -30,
  timeZone: 'Etc/GMT+2',
  annualRainMm: 900,
};

/** Its two beds, both kept moist: north lies open, frame is raised and half in shade. */
export const beds = {
  north: { name: 'North bed', kind: 'open-ground', cover: 'bare', moisture: 'moist', shadePercent: 0 },
  frame: { name: 'Frame', kind: 'raised-bed', cover: 'bare', moisture: 'moist', shadePercent: 50 },
} as const;

/** Fifteen years of air. */
export const pastAir = (): DemoAirDay[] => inventedAir(FIRST_DATE, daysBetween(FIRST_DATE, today), chance(SEED));

/** What is forecast: the three hot days that north-bed-august.csv has in its soil, and four that are not. */
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

/** The moment at which the demo plays: noon of its day. */
export const now = new Date(instantAt(today, '12:00', zoneNamed(place.timeZone)));

/** Two rows in the north bed: carrots of June that came up slowly, and onions of July that are hardly up yet. */
export const sowings: Readonly<Record<string, object>> = {
  'carrots-june': { bed: 'north', crop: 'carrot', date: '2027-06-10', seeds: 200 },
  'onions-july': { bed: 'north', crop: 'onion', date: '2027-07-17', seeds: 200 },
};
/** What was counted in them, by date. */
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
/** The bed is warmer than the model has it, as north-bed-august.csv has it too, and the probe trembles [K]. */
const BED_K = 0.8;
const NOISE_K = 0.15;

/**
 * A week of a probe in the north bed, by the hour up to the last midnight: the soil that the service works out from the
 * air, and what a bed has of its own.
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
