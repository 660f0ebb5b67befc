import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultBed } from '../../../src/answers/question.js';
import { soilTemperatures } from '../../../src/answers/soil/soil-temperatures.js';
import { addDays, type PlainDate, zoneNamed } from '../../../src/basics/calendar.js';
import { inventedAir } from '../../../src/demo/air.js';
import { chance } from '../../../src/demo/chance.js';
import {
  pastAir as airOfThePast,
  beds,
  comingDays,
  northReadings,
  place,
  probeDepthCm,
  today,
} from '../../../src/demo/season.js';
import { readSeries } from '../../../src/readings/read-series.js';

// The demo's place does not exist, so nothing outside can say what its air was. It is held to what temperate, maritime
// climates are like; the ranges are common knowledge, no source, and wide enough for a plain one.

const pastAir = airOfThePast();
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const middle = (texts: readonly string[]): string => texts.toSorted()[Math.floor(texts.length / 2)]!;
const inMonth = (month: string) => pastAir.filter(({ date }) => date.slice(5, 7) === month);
const dayMeans = pastAir.map(({ min, max }) => (min + max) / 2);

describe('chance', () => {
  // Park, Miller, Stockmeyer (1993), from memory: begun at 1, the 10,000th state is 399268537. The C++ standard's
  // minstd_rand is held to the same value.
  it('is the minimum standard generator', () => {
    const random = chance(1);
    for (let i = 1; i < 10_000; i++) random();
    expect(Math.round(random() * (2 ** 31 - 1))).toBe(399_268_537);
  });
});

describe('the invented air', () => {
  it('is of every date of fifteen years, up to yesterday', () => {
    expect(pastAir[0]!.date).toBe('2012-08-03');
    expect(pastAir.at(-1)!.date).toBe(addDays(today, -1));
    pastAir.forEach(({ date }, day) => {
      expect(date).toBe(addDays('2012-08-03' as PlainDate, day));
    });
    expect(comingDays[0]!.date).toBe(today);
  });

  it('is the same in every run, and other from another seed', () => {
    const from = '2020-01-01' as PlainDate;
    expect(inventedAir(from, 50, chance(7))).toEqual(inventedAir(from, 50, chance(7)));
    expect(inventedAir(from, 50, chance(7))).not.toEqual(inventedAir(from, 50, chance(8)));
  });

  it('has warm Julys and mild Januaries', () => {
    expect(mean(inMonth('07').map(({ max }) => max))).toBeGreaterThan(22);
    expect(mean(inMonth('07').map(({ max }) => max))).toBeLessThan(26);
    expect(mean(inMonth('07').map(({ min }) => min))).toBeGreaterThan(11);
    expect(mean(inMonth('07').map(({ min }) => min))).toBeLessThan(15);
    expect(mean(inMonth('01').map(({ max }) => max))).toBeGreaterThan(4);
    expect(mean(inMonth('01').map(({ min }) => min))).toBeGreaterThan(-2);
    const [coldest, hottest] = [Math.min(...pastAir.map(({ min }) => min)), Math.max(...pastAir.map(({ max }) => max))];
    expect(coldest).toBeGreaterThan(-12);
    expect(hottest).toBeLessThan(38);
  });

  it('is above 30 °C now and then: on one to six days a year, never outside the warm half of it', () => {
    const hot = pastAir.filter(({ max }) => max > 30);
    expect(hot.length / 15).toBeGreaterThan(1);
    expect(hot.length / 15).toBeLessThan(6);
    for (const { date } of hot) expect(date.slice(5) > '05-01' && date.slice(5) < '10-01', date).toBe(true);
  });

  it('has its last frost of spring around mid April to early May, in the middle year', () => {
    const years = Array.from({ length: 14 }, (_, i) => String(2013 + i));
    const lastFrosts = years.map((year) =>
      pastAir
        .filter(({ date, min }) => date.startsWith(year) && date.slice(5) < '07-15' && min <= 0)
        .at(-1)!
        .date.slice(5),
    );
    expect(middle(lastFrosts) >= '04-10' && middle(lastFrosts) <= '05-10', middle(lastFrosts)).toBe(true);
  });

  it('has anomalies of about 3 K with a lag-1 autocorrelation of about 0.7', () => {
    // What is left when the middle of the same fortnight of all years is taken away.
    const fortnight = (date: string): number =>
      Math.floor((Number(date.slice(5, 7)) - 1) * 2 + Number(date.slice(8)) / 16);
    const seasonC = Array.from({ length: 24 }, (_, i) =>
      mean(dayMeans.filter((_, day) => fortnight(pastAir[day]!.date) === i)),
    );
    const strays = dayMeans.map((tempC, day) => tempC - seasonC[fortnight(pastAir[day]!.date)]!);
    const variance = mean(strays.map((stray) => stray ** 2));
    const kept = mean(strays.slice(1).map((stray, day) => stray * strays[day]!)) / variance;
    expect(Math.sqrt(variance)).toBeGreaterThan(2.6);
    expect(Math.sqrt(variance)).toBeLessThan(3.4);
    expect(kept).toBeGreaterThan(0.63);
    expect(kept).toBeLessThan(0.77);
  });

  it('has a diurnal range of 2 K or more, wider in summer than in winter', () => {
    const range = (month: string): number => mean(inMonth(month).map(({ min, max }) => max - min));
    expect(Math.min(...pastAir.map(({ min, max }) => max - min))).toBeGreaterThan(1.85);
    expect(range('07')).toBeGreaterThan(range('01') + 3);
  });
});

describe('the demo’s bed and its probe', () => {
  const zone = zoneNamed(place.timeZone);
  const read = (daily: readonly { date: PlainDate }[], origin: 'measured' | 'forecast') =>
    readSeries({ medium: 'air', unit: 'C', origin, daily }, zone, []);
  const soil = (depthCm: number, from: PlainDate, to: PlainDate) =>
    soilTemperatures({
      site: { zone, latitude: place.latitude, longitude: place.longitude, annualRainMm: place.annualRainMm },
      bed: { ...defaultBed, ...beds.north },
      depthCm,
      series: [read(pastAir.slice(-400), 'measured'), read(comingDays, 'forecast')],
      understood: [],
      from,
      to,
      step: 'day',
      beyond: null,
      normals: null,
    }).daily!;
  /** Means of the whole days among readings by the hour. */
  const daysOf = (readings: readonly { at: string; value: number }[]) =>
    [...new Set(readings.map(({ at }) => at.slice(0, 10) as PlainDate))]
      .map((date) => ({ date, values: readings.filter(({ at }) => at.startsWith(date)).map(({ value }) => value) }))
      .filter(({ values }) => values.length === 24)
      .map(({ date, values }) => ({ date, mean: mean(values) }));

  it('was read for the week before today, by the hour up to midnight', () => {
    const readings = northReadings();
    expect(readings).toHaveLength(7 * 24 + 1);
    expect(readings[0]!.at).toBe('2027-07-27T00:00:00-02:00');
    expect(readings.at(-1)!.at).toBe('2027-08-03T00:00:00-02:00');
  });

  it('agrees with the service’s own soil but for 0.8 K that the bed is warmer', () => {
    const days = daysOf(northReadings());
    expect(days).toHaveLength(7);
    for (const [i, { mean: modelC }] of soil(probeDepthCm, days[0]!.date, days.at(-1)!.date).entries()) {
      expect(days[i]!.mean - modelC).toBeGreaterThan(0.6);
      expect(days[i]!.mean - modelC).toBeLessThan(1);
    }
  });

  it('is about as warm at the seed as north-bed-august.csv has it, hot days among them', () => {
    const file = readFileSync(new URL('../../../fixtures/demo/north-bed-august.csv', import.meta.url), 'utf8');
    const days = daysOf(
      file
        .trim()
        .split('\n')
        .slice(1)
        .map((line) => line.split(','))
        .map(([at, value]) => ({ at: at!, value: Number(value) })),
    );
    const modelled = soil(1.3, days[0]!.date, days.at(-1)!.date);
    const differences = days.map(({ mean: fileC }, i) => fileC - modelled[i]!.mean);
    expect(days).toHaveLength(17);
    expect(Math.abs(mean(differences))).toBeLessThan(2);
    for (const hot of differences.slice(-3)) expect(Math.abs(hot)).toBeLessThan(3);
  });
});
