import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import type { WindowAnswer } from '../../src/contract/windows.js';
import { askerOf, dateAfter, keepQuillmere, startApp } from './helper.js';

// Three invented years of air are kept of Quillmere; it is noon of 3 August 2027.

const app = await startApp();
beforeAll(async () => {
  await keepQuillmere(app);
  await ask('PUT', '/v1/beds/verdict', { place: 'quillmere', name: 'Verdict bed' });
});
afterAll(() => app.close());
const ask = askerOf(app);

const forecastOf = async (crop: string, sowing: string, more = ''): Promise<ForecastAnswer> =>
  (await ask('GET', `/v1/beds/verdict/forecast?crop=${crop}&sowing=${sowing}${more}`)).json();

describe('the verdict on a date', () => {
  test('calls a sowing of snap beans in November poor before anything else, and names the next good date', async () => {
    const { dateVerdict, harvest } = await forecastOf('snap-bean', '2027-11-30');
    expect(dateVerdict!.grade).toBe('poor');
    expect(dateVerdict!.code).toBe('verdict-on-date.poor');
    expect(dateVerdict!.reasons[0]!.code).toBe('too-cold');
    const windows: WindowAnswer = (
      await ask('GET', '/v1/beds/verdict/sowing-windows?crop=snap-bean&from=2027-11-30')
    ).json();
    expect(dateVerdict!.better).toEqual({ date: windows.best!.date, grade: 'good' });
    expect(dateVerdict!.better!.date > '2028-03-15').toBe(true);
    expect(dateVerdict!.text).toMatch(/^Too cold to sow; better on \d+ \w+ 2028\.$/);
    expect(harvest).toBeNull();
  });

  test('is the grade that sowing windows give the date, with its harvest', async () => {
    const windows: WindowAnswer = (
      await ask('GET', '/v1/beds/verdict/sowing-windows?crop=lettuce&from=2027-08-03')
    ).json();
    for (const date of ['2027-08-15', '2027-09-05', '2027-10-20']) {
      const { dateVerdict, harvest } = await forecastOf('lettuce', date);
      const told = windows.dates.find((one) => one.date === date)!;
      expect([dateVerdict!.grade, harvest], date).toEqual([told.grade, told.harvest]);
      if (dateVerdict!.grade === 'good') expect(dateVerdict!.better).toBeNull();
      if (harvest) expect(harvest.from > dateAfter(date, 25)).toBe(true);
    }
  });

  test('is given in German, and is null where no years are known', async () => {
    const { dateVerdict } = await forecastOf('snap-bean', '2027-11-30', '&lang=de');
    expect(dateVerdict!.text).toMatch(/^Zu kalt zum Säen; besser am /);
    const alone = await ask('POST', '/v1/forecasts', {
      crop: 'lettuce',
      where: { place: { timeZone: 'Etc/GMT+2' } },
      sowing: { date: '2027-05-03' },
      temperatures: [
        {
          medium: 'soil',
          daily: Array.from({ length: 20 }, (_, i) => ({ date: dateAfter('2027-05-03', i), mean: 15 })),
        },
      ],
    });
    expect(alone.json()).toMatchObject({ dateVerdict: null, harvest: null });
  });
});
