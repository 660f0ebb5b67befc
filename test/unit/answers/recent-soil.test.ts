import { describe, expect, it } from 'vitest';
import { defaultBed, type QuestionBed } from '../../../src/answers/question.js';
import { recentSoil } from '../../../src/answers/soil/recent-soil.js';
import { SNOW_SUPPOSED } from '../../../src/answers/soil/soil-notes.js';
import { type SoilRecord, soilRecord } from '../../../src/answers/soil/soil-record.js';
import { addDays, findZone, HOUR_MS, instantAt, type PlainDate, startOfDay } from '../../../src/basics/calendar.js';
import { type ReadSeries, readSeries } from '../../../src/readings/read-series.js';
import { airOfYears } from './make-air.js';

const zone = findZone('Europe/Berlin')!;
const site = { zone, latitude: 50, longitude: 10, annualRainMm: 700 };
const YEAR_H = 368 * 24;
/** Temperatures are told in tenths [K]. */
const TOLD_K = 0.1;

/** Air of nearly three years that ends in winter or in spring, and a probe's last two months. */
const airUpTo = (last: string): ReadSeries => {
  const days = Math.round(365.25 * 2.8);
  return airOfYears(addDays(last as PlainDate, 1 - days), 2.8, zone);
};
const probeBefore = ({ days }: ReadSeries): ReadSeries => {
  const fromMs = startOfDay(days.at(-60)!.date, zone);
  const readings = Array.from({ length: 59 * 24 }, (_, hour) => ({
    at: new Date(fromMs + hour * HOUR_MS).toISOString(),
    value: 9 + 3 * Math.sin(hour / 300) + 2 * Math.sin((2 * Math.PI * (hour - 9)) / 24),
  }));
  return readSeries({ medium: 'soil', unit: 'C', probeDepthCm: 5, readings } as never, zone, []);
};
const spring = airUpTo('2025-05-20');
const beds: [string, ReadSeries[], Partial<QuestionBed>][] = [
  ['open ground under air alone', [spring], {}],
  ['grass', [spring], { cover: 'grass' }],
  ['a probe at 5 cm', [spring, probeBefore(spring)], {}],
  ['a pot', [spring], { kind: 'pot', moisture: 'moist' }],
  ['dry soil that was watered', [spring], { moisture: 'dry', wettedOn: '2025-05-02' as PlainDate }],
  ['winter', [airUpTo('2025-02-20')], { moisture: 'moist' }],
];

/** The hours of a record from an instant on. */
const since = ({ startMs, hourlyC, sdK }: SoilRecord, fromMs: number) => {
  const from = (fromMs - startMs) / HOUR_MS;
  return { hourlyC: hourlyC.slice(from), sdK: sdK.slice(from) };
};
const codes = ({ warnings, assumptions }: SoilRecord) => [...warnings, ...assumptions].map(({ code }) => code);

describe('the soil of the last weeks, kept for the next question', () => {
  it.each(beds)('differs from that of one question by less than is told: %s', (_, series, make) => {
    const lastDate = series[0]!.days.at(-1)!.date;
    for (const ago of [0, 3, 11, 26]) {
      const bedding = { site, bed: { ...defaultBed, ...make }, depthCm: 1.3 };
      const fromMs = instantAt(addDays(lastDate, -ago), '12:30', zone);
      const kept = recentSoil(series, bedding, fromMs, fromMs + YEAR_H * HOUR_MS);
      const wanted = { phaseMs: fromMs, fromMs, toMs: fromMs + YEAR_H * HOUR_MS };
      const alone = soilRecord(series, bedding, wanted);
      expect(codes(kept)).toEqual(codes(alone));
      const [ours, theirs] = [since(kept, fromMs), since(alone, fromMs)];
      expect(ours.hourlyC.length).toBe(theirs.hourlyC.length);
      ours.hourlyC.forEach((tempC, hour) => {
        expect(Math.abs(tempC - theirs.hourlyC[hour]!)).toBeLessThan(TOLD_K / 2);
        expect(Math.abs(ours.sdK[hour]! - theirs.sdK[hour]!)).toBeLessThan(TOLD_K / 2);
      });
    }
  });

  it('is the same whichever question came first, and whatever was done to what it gave', () => {
    const bedding = { site, bed: defaultBed, depthCm: 2 };
    const [early, late] = ['2025-05-09', '2025-05-18'].map((date) => instantAt(date as PlainDate, '12:00', zone));
    const ask = (series: ReadSeries, fromMs: number) =>
      since(recentSoil([series], bedding, fromMs, fromMs + YEAR_H * HOUR_MS), late!);
    const first = ask(spring, early!);
    recentSoil([spring], bedding, late!, late! + YEAR_H * HOUR_MS).hourlyC.fill(0);
    expect(ask(spring, late!)).toEqual(first);
    const readAgain = airUpTo('2025-05-20');
    expect(ask(readAgain, late!)).toEqual(first);
  });

  it('is worked out anew for other temperatures, another bed and another depth, and warns of what came with them', () => {
    const fromMs = instantAt('2025-05-10' as PlainDate, '12:00', zone);
    const ask = (series: ReadSeries, make: Partial<QuestionBed> = {}, depthCm = 2): SoilRecord =>
      recentSoil([series], { site, bed: { ...defaultBed, ...make }, depthCm }, fromMs, fromMs + YEAR_H * HOUR_MS);
    const plain = ask(spring);
    const days = spring.days.map((day) => ({ ...day, max: day.max! + 2 }));
    for (const other of [ask({ ...spring, days }), ask(spring, { cover: 'mulch' }), ask(spring, {}, 4)])
      expect(since(other, fromMs).hourlyC).not.toEqual(since(plain, fromMs).hourlyC);
    const doubtful = ask({ ...spring, warnings: [{ code: 'odd', text: 'Odd.' }] });
    expect(codes(doubtful)).toEqual(['odd', ...codes(plain)]);
    expect(since(doubtful, fromMs)).toEqual(since(plain, fromMs));
  });

  it('supposes snow only where it lies in the hours asked of', () => {
    const winter = airOfYears('2022-06-01' as PlainDate, 2.8, zone);
    const cold = {
      ...winter,
      days: winter.days.map((day, i, { length }) =>
        i > length - 50 && i < length - 25 ? { ...day, min: -14, max: -8 } : { ...day, min: 6, max: 12 },
      ),
    };
    const bedding = { site, bed: defaultBed, depthCm: 2 };
    const lastDate = cold.days.at(-1)!.date;
    const isSnowy = Array.from({ length: 50 }, (_, ago) => {
      const fromMs = instantAt(addDays(lastDate, -ago), '12:00', zone);
      const kept = codes(recentSoil([cold], bedding, fromMs, fromMs + YEAR_H * HOUR_MS)).includes(SNOW_SUPPOSED);
      if (ago % 7 === 0) {
        const wanted = { phaseMs: fromMs, fromMs, toMs: fromMs + YEAR_H * HOUR_MS };
        expect(codes(soilRecord([cold], bedding, wanted)).includes(SNOW_SUPPOSED)).toBe(kept);
      }
      return kept;
    });
    expect(isSnowy[0]).toBe(false);
    expect(isSnowy.at(-1)).toBe(true);
  });
});
