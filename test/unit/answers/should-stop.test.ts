import { describe, expect, it } from 'vitest';
import { pastSoil } from '../../../src/answers/ahead/past-soil.js';
import { forecast } from '../../../src/answers/forecast/forecast.js';
import { defaultBed } from '../../../src/answers/question.js';
import { soilTemperatures } from '../../../src/answers/soil/soil-temperatures.js';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import { addDays, findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { StoppedError } from '../../../src/basics/errors.js';
import { gardenPlan } from '../../../src/garden/plan/plan.js';
import { growing } from '../../../src/garden/sowing/growing.js';
import { cropCalled } from '../germination/make.js';
import { airOfYears } from './make-air.js';

const zone = findZone('Etc/GMT+2')!;
const site = { zone, latitude: 44, longitude: -30, annualRainMm: 800 };
const YEARS = 6;
const air = airOfYears('2021-01-01' as PlainDate, YEARS, zone);
const last = air.days.at(-1)!.date;
const common = { site, bed: defaultBed, depthCm: 1.3, series: [air], understood: [], normals: null };
const crop = cropCalled('lettuce');
const lot = null;
const sowing = { date: addDays(last, -5), time: '12:00', depthCm: null, seeds: 100 };
const question = {
  ...common,
  crop,
  lot,
  sowing,
  countDays: null,
  timeFactor: null,
  standFactor: null,
  beyond: null,
  zoneFromStamps: false,
};
const window = {
  crop,
  lot,
  time: '12:00',
  timeFactor: null,
  from: last,
  to: addDays(last, 30),
  prefer: 'surest' as const,
  judge: 'harvest' as const,
};
const criteria = { share: 0.8, shareIfHeld: 0.6, maxDays: 21, sureness: 0.8 };
const harvest = { from: addDays(last, 60), to: addDays(last, 90), perWeek: 5 };

const work = {
  'the soil of past years': (shouldStop?: () => boolean) => pastSoil([air], common, 0, shouldStop),
  windows: (shouldStop?: () => boolean) => sowingWindows({ ...common, ...window, criteria }, pastSoil, shouldStop),
  'a forecast': (shouldStop?: () => boolean) => forecast({ ...question, learned: null }, pastSoil, shouldStop),
  'soil by the day': (shouldStop?: () => boolean) =>
    soilTemperatures({ ...common, from: null, to: null, step: 'day', beyond: null }, pastSoil, shouldStop),
  'a sowing and its counts': (shouldStop?: () => boolean) =>
    growing({ ...question, learned: null, lotId: null, counts: [], others: [] }, pastSoil, shouldStop),
  'a plan': (shouldStop?: () => boolean) =>
    gardenPlan({ ...common, crop, harvest, sown: [], today: last }, pastSoil, shouldStop),
};

describe.each(Object.entries(work))('%s', (_, run) => {
  it('asks a few times a year whether to stop, and gives the same answer while the answer is no', () => {
    let asked = 0;
    const answer = run(() => {
      asked++;
      return false;
    });
    expect(answer).toEqual(run());
    expect(asked).toBeGreaterThanOrEqual(YEARS);
    expect(asked).toBeLessThan(100 * YEARS);
  });

  it('ends at the first yes, and at any later one', () => {
    for (const yesAt of [1, 2, YEARS]) {
      let asked = 0;
      expect(() => run(() => ++asked === yesAt)).toThrow(StoppedError);
      expect(asked).toBe(yesAt);
    }
  });
});
