import { addDays, type PlainDate, startOfDay, zoneNamed } from '../basics/calendar.js';
import { yearCourse } from '../climate/year-course.js';
import { crops } from '../germination/crops.js';
import { readSeries } from '../readings/read-series.js';
import { type PastSoil, STEPS_PER_K } from './ahead/past-soil.js';
import { DEFAULT_DEPTH_CM, defaultBed } from './question.js';
import { usualCriteria } from './windows/dates-in-years.js';
import type { WindowQuestion } from './windows/judged-dates.js';

const FIRST_DATE = '2001-01-01' as PlainDate;
const YEARS = 4;
const COMING_DAYS = 7;
/** With a leap day, so that the first year of the dates begins where the record does. */
const DAYS = 365 * YEARS + 1 + COMING_DAYS;
/** Heat holds the first, frost ends and cold holds the second, the third bears cold, the fourth is slow. A
 * fifth makes the first question of a garden no cheaper; without the fourth it costs a tenth more. */
const CROPS = ['lettuce', 'tomato', 'spinach', 'carrot'];
/** Clocks change in the one and not in the other. */
const PLACES = [
  { timeZone: 'Europe/Berlin', latitude: 50.5, longitude: 10.5, annualRainMm: 700 },
  { timeZone: 'Africa/Lagos', latitude: 6.5, longitude: 3.5, annualRainMm: null },
];

/** A question, and the soil of past years that it is answered from. */
export interface ExampleWindows {
  readonly question: WindowQuestion;
  readonly past: PastSoil;
}

/**
 * When to sow some crops in invented beds: small questions that take the same way as those of gardens. Compiled code rests on
 * what it has seen, so they hold what gardens hold: two kinds of zone, coming days, weather known to a tenth, frost and heat.
 */
export function exampleWindows(): ExampleWindows[] {
  const daily = Array.from({ length: DAYS }, (_, day) => ({
    date: addDays(FIRST_DATE, day),
    min: rounded(usualC(day) - 6, 10),
    max: rounded(usualC(day) + 6, 10),
  }));
  const hourlyC = Float64Array.from({ length: 24 * DAYS }, (_, hour) =>
    rounded(usualC(hour / 24) + 3 * Math.sin((2 * Math.PI * (hour - 9)) / 24), STEPS_PER_K),
  );
  const course = yearCourse(
    daily.map((_, day) => day),
    daily.map(({ min, max }) => (min + max) / 2),
  );
  const from = addDays(FIRST_DATE, DAYS - COMING_DAYS);
  const minC = Float64Array.from(daily, ({ min }) => min);
  const maxC = Float64Array.from(daily, ({ max }) => max);
  const places = PLACES.map(({ timeZone, ...where }) => {
    const zone = zoneNamed(timeZone);
    return { zone, where, series: [readSeries({ medium: 'air', unit: 'C', daily }, zone, [])] };
  });
  return CROPS.map((id, i) => {
    const crop = crops.get(id)!;
    const { zone, where, series } = places[i % places.length]!;
    return {
      question: {
        crop,
        site: { zone, ...where },
        bed: defaultBed,
        depthCm: crop.sowingDepthCm ?? DEFAULT_DEPTH_CM,
        time: '12:00',
        lot: null,
        timeFactor: null,
        series,
        understood: [],
        from,
        to: addDays(from, 364),
        criteria: { ...usualCriteria, maxDays: crop.maxDays },
        prefer: 'earliest',
        judge: 'harvest',
        normals: null,
      },
      past: {
        startMs: startOfDay(FIRST_DATE, zone),
        hourlyC: hourlyC.slice(0, -24 * COMING_DAYS),
        course,
        years: YEARS,
        comingC: hourlyC.slice(-24 * COMING_DAYS),
        air: { firstDate: FIRST_DATE, minC, maxC },
        isUsual: false,
        sdK: 1.5,
        assumptions: [],
        warnings: [],
      },
    };
  });
}

/** The temperature of an invented day: seasons and spells of weather [°C]. */
const usualC = (day: number): number =>
  10 - 12 * Math.cos((2 * Math.PI * (day - 20)) / 365) + 4 * Math.sin(day / 3.1) + 2 * Math.sin(day * 1.7);

const rounded = (tempC: number, steps: number): number => Math.round(tempC * steps) / steps;
