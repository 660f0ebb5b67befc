import { describe, expect, it } from 'vitest';
import { type FindPast, type PastSoil, pastSoil } from '../../../src/answers/ahead/past-soil.js';
import { defaultBed } from '../../../src/answers/question.js';
import { usualCriteria } from '../../../src/answers/windows/dates-in-years.js';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import { addDays, findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { gardenPlan } from '../../../src/garden/plan/plan.js';
import { readSeries } from '../../../src/readings/read-series.js';
import { cropCalled } from '../germination/make.js';

const plain = (date: string): PlainDate => date as PlainDate;
const zone = findZone('Etc/GMT+2')!;

/** Six invented years of air up to the end of 2026, and the soil of it, worked out once for each bed. */
function placeOf(latitude: number, meanC: number, swingC: number) {
  const daily = Array.from({ length: 6 * 365 }, (_, day) => {
    const odd = 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 31);
    const mean = meanC - Math.sign(latitude) * swingC * Math.cos((2 * Math.PI * (day - 25)) / 365.25) + odd;
    return { date: addDays(plain('2021-01-03'), day), min: mean - 5, max: mean + 5 };
  });
  const known = new Map<string, PastSoil>();
  const findPast: FindPast = (series, bedding, phaseMs) => {
    const key = `${bedding.depthCm} ${bedding.bed.shadePercent}`;
    const past = known.get(key) ?? pastSoil(series, bedding, phaseMs);
    known.set(key, past);
    return past;
  };
  const site = { zone, latitude, longitude: -30, annualRainMm: null };
  return { site, series: [readSeries({ medium: 'air', unit: 'C', daily }, zone, [])], findPast };
}

const PLACES = {
  cool: placeOf(52, 9, 8),
  temperate: placeOf(44, 12, 10),
  warm: placeOf(36, 17, 10),
  hot: placeOf(31, 21, 9),
  southern: placeOf(-37, 15, 7),
};
const CROPS = ['lettuce', 'carrot', 'spinach', 'pea', 'snap-bean', 'cucumber'];

describe.each(Object.entries(PLACES))('a plan of a %s place', (_, { site, series, findPast }) => {
  it.each(CROPS)('sows %s on dates that sowing windows call good or fair, or names what makes up for it', (id) => {
    const crop = cropCalled(id);
    const today = plain('2027-01-01');
    const common = { crop, site, series, bed: defaultBed, depthCm: 1.3, normals: null };
    const { sowings } = gardenPlan(
      { ...common, today, sown: [], harvest: { from: plain('2027-04-01'), to: plain('2027-12-15'), perWeek: 10 } },
      findPast,
    );
    const { dates } = sowingWindows(
      {
        ...common,
        time: '12:00',
        lot: null,
        timeFactor: null,
        understood: [],
        from: today,
        to: plain('2027-12-31'),
        criteria: { ...usualCriteria, maxDays: crop.maxDays },
        prefer: 'earliest',
        judge: 'harvest',
      },
      findPast,
    );
    const gradeOf = new Map(dates.map(({ date, grade }) => [date, grade]));
    const isSown = dates.some(({ grade }) => grade !== 'poor');
    expect(sowings.length > 0 || !isSown).toBe(true);
    for (const { date, method, grade, instead, indoors, half, harvest } of sowings) {
      expect([date, grade]).toEqual([date, gradeOf.get(date)]);
      if (instead === null) expect([date, ['good', 'fair'].includes(grade)]).toEqual([date, true]);
      else expect([date, grade, method]).toEqual([date, 'poor', instead.action === 'shade' ? 'direct' : 'indoors']);
      expect(harvest.from > (indoors?.plantOut ?? half.date) && harvest.to >= harvest.from).toBe(true);
    }
  });
});
