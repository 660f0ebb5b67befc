import { describe, expect, it } from 'vitest';
import { type FindPast, type PastSoil, pastSoil } from '../../../src/answers/ahead/past-soil.js';
import { defaultBed, type QuestionBed } from '../../../src/answers/question.js';
import { soilOfChangedBeds } from '../../../src/answers/windows/changed-bed.js';
import { usualCriteria } from '../../../src/answers/windows/dates-in-years.js';
import type { WindowQuestion } from '../../../src/answers/windows/judged-dates.js';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import { addDays, daysBetween, findZone, HOUR_MS, type PlainDate, startOfDay } from '../../../src/basics/calendar.js';
import { readSeries } from '../../../src/readings/read-series.js';
import { cropCalled } from '../germination/make.js';

const plain = (date: string): PlainDate => date as PlainDate;
const zone = findZone('Etc/GMT+2')!;
const site = { zone, latitude: 40, longitude: -30, annualRainMm: null };

/** Six invented years of air up to the end of 2026. */
function airOf(meanC: number, swingC: number) {
  const daily = Array.from({ length: 6 * 365 }, (_, day) => {
    const odd = 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 31);
    const mean = meanC - swingC * Math.cos((2 * Math.PI * (day - 25)) / 365.25) + odd;
    return { date: addDays(plain('2021-01-03'), day), min: mean - 6, max: mean + 6 };
  });
  return [readSeries({ medium: 'air', unit: 'C', daily }, zone, [])];
}
const soils = new Map<string, PastSoil>();
const findPast: FindPast = (series, bedding, phaseMs) => {
  const key = JSON.stringify([series[0]!.days[0], bedding.bed, bedding.depthCm]);
  const past = soils.get(key) ?? pastSoil(series, bedding, phaseMs);
  soils.set(key, past);
  return past;
};

const questionOf = (
  crop: string,
  series: WindowQuestion['series'],
  changes: Partial<WindowQuestion>,
): WindowQuestion => ({
  crop: cropCalled(crop),
  site,
  bed: defaultBed,
  depthCm: cropCalled(crop).sowingDepthCm!,
  time: '12:00',
  lot: null,
  timeFactor: null,
  series,
  understood: [],
  from: plain('2027-01-01'),
  to: plain('2027-12-31'),
  criteria: { ...usualCriteria, maxDays: cropCalled(crop).maxDays },
  prefer: 'earliest',
  judge: 'harvest',
  normals: null,
  ...changes,
});
const shaded: QuestionBed = { ...defaultBed, shadePercent: 50 };
const wet: QuestionBed = { ...defaultBed, moisture: 'wet' };
const film: QuestionBed = { ...defaultBed, cover: 'black-film' };

describe('the soil of a bed that is changed', () => {
  it.each([
    ['shade in summer', shaded, '2027-06-01', '2027-08-31', -1],
    ['water in summer', wet, '2027-06-01', '2027-08-31', -1],
    ['black film in spring', film, '2027-03-01', '2027-05-15', 1],
  ] as const)(
    '%s is in every year about what the model makes of it over the whole record',
    (_, bed, from, to, sign) => {
      const series = airOf(16, 11);
      const bedding = { site, bed: defaultBed, depthCm: 1.3 };
      const phaseMs = startOfDay(plain('2027-01-01'), zone);
      const past = findPast(series, bedding, phaseMs);
      const full = findPast(series, { ...bedding, bed }, phaseMs);
      const days = { from: plain(from), to: plain(to), lyingDays: 20 };
      const [cheap] = soilOfChangedBeds(past, bedding, [bed], days) as [PastSoil];
      let [squares, effect, n] = [0, 0, 0];
      for (let year = 2022; year <= 2026; year++) {
        const first = (startOfDay(plain(`${year}${from.slice(4)}`), zone) - past.startMs) / HOUR_MS;
        const hours = 24 * daysBetween(plain(from), plain(to));
        for (let hour = first; hour < first + hours; hour++) {
          squares += (cheap.hourlyC[hour]! - full.hourlyC[hour]!) ** 2;
          effect += full.hourlyC[hour]! - past.hourlyC[hour]!;
          n++;
        }
      }
      expect(Math.sign(effect / n)).toBe(sign);
      expect(Math.sqrt(squares / n)).toBeLessThan(0.5);
      // In winter nothing is changed.
      const january = Math.round((startOfDay(plain('2025-01-10'), zone) - past.startMs) / HOUR_MS);
      expect(cheap.hourlyC[january]).toBe(past.hourlyC[january]);
    },
  );
});

describe('what would make a date good', () => {
  const actionsOf = (crop: string, series: WindowQuestion['series'], changes: Partial<WindowQuestion>) => {
    const asked = questionOf(crop, series, changes);
    return { asked, found: sowingWindows(asked, findPast) };
  };

  it('is shade or water where the soil is too hot for the seed, and the dates are good in a bed so changed', () => {
    const { asked, found } = actionsOf('lettuce', airOf(17, 11), {
      from: plain('2027-07-10'),
      to: plain('2027-08-09'),
      judge: 'emergence',
    });
    const helps = found.instead.filter(({ action }) => action === 'shade' || action === 'keep-wet');
    expect(helps.length).toBeGreaterThan(0);
    for (const { action, grade, from, to } of helps) {
      const bed = action === 'shade' ? shaded : wet;
      const inIt = sowingWindows({ ...asked, bed }, findPast).dates.filter(({ date }) => date >= from && date <= to);
      const alike = inIt.filter((one) => one.grade === grade || one.grade === 'good').length;
      expect(alike / inIt.length).toBeGreaterThan(0.8);
    }
  });

  it('is a cover where the soil is still too cold, and opens dates before the first good one', () => {
    const { found } = actionsOf('snap-bean', airOf(13, 8), {
      from: plain('2027-04-01'),
      to: plain('2027-05-05'),
    });
    const { spans } = sowingWindows(questionOf('snap-bean', airOf(13, 8), {}), findPast);
    const cover = found.instead.find(({ action }) => action === 'cover')!;
    const firstGood = spans.find(({ grade }) => grade === 'good')!.from;
    expect(cover.from < firstGood && cover.from >= '2027-04-01').toBe(true);
  });

  it('is nothing of the bed where frost or heat at harvest is the reason', () => {
    const { found } = actionsOf('beet', airOf(19, 10), {
      from: plain('2027-06-01'),
      to: plain('2027-07-10'),
    });
    expect(found.spans[0]!.reasons[0]!.code).toBe('heat-at-harvest');
    expect(found.instead.every(({ action }) => action === 'wait' || action === 'start-indoors')).toBe(true);
  });
});
