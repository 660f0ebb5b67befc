import { describe, expect, it } from 'vitest';
import { type FindPast, pastSoil } from '../../../src/answers/ahead/past-soil.js';
import { defaultBed } from '../../../src/answers/question.js';
import { type SoilQuestion, soilTemperatures } from '../../../src/answers/soil/soil-temperatures.js';
import { addDays, findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { airOfYears } from './make-air.js';

const zone = findZone('Etc/GMT+2')!;
const site = { zone, latitude: 44, longitude: -30, annualRainMm: 800 };
const air = airOfYears('2022-01-01' as PlainDate, 4, zone);
const lastDate = air.days.at(-1)!.date;
const measured = { ...air, days: air.days.slice(0, -5), dayBasis: air.dayBasis.slice(0, -5) };
const coming = { ...air, origin: 'forecast' as const, days: air.days.slice(-5), dayBasis: [] };
const question: SoilQuestion = {
  site,
  bed: defaultBed,
  depthCm: 1.3,
  series: [air],
  understood: [],
  from: null,
  to: null,
  step: 'day',
  beyond: null,
  normals: null,
};

describe('soil by the day over some years', () => {
  it('looks for no past years where all dates asked are measured, and answers as if it had', () => {
    let looked = 0;
    const find: FindPast = (...asked) => {
      looked++;
      return pastSoil(...asked);
    };
    const quick = soilTemperatures(question, find);
    expect(looked).toBe(0);
    const slow = soilTemperatures({ ...question, beyond: 'past-years' }, find);
    expect(looked).toBe(1);
    expect(quick.daily).toEqual(slow.daily);
    expect(quick.warnings).toEqual(slow.warnings);
    expect(quick.assumptions).toEqual(slow.assumptions);
  });

  it.each([
    ['dates after the last value', { to: addDays(lastDate, 10) }, 'past-years'],
    ['days that are a forecast', { series: [measured, coming] }, 'forecast'],
  ])('looks for past years for %s', (_, asked, basis) => {
    let looked = 0;
    const { daily } = soilTemperatures({ ...question, ...asked }, (...all) => {
      looked++;
      return pastSoil(...all);
    });
    expect(looked).toBe(1);
    expect(daily!.at(-1)!.basis).toBe(basis);
  });
});
