import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { WeekAnswer } from '../../src/contract/this-week.js';
import type { WindowAnswer } from '../../src/contract/windows.js';
import { openStore } from '../../src/storage/open-store.js';
import { cropCalled } from '../unit/germination/make.js';
import { askerOf, dateAfter, quillmere, startApp } from './helper.js';

// Six invented years of air with winters of -4 °C and summers of 24 °C are kept of Quillmere; today is 3 August 2027 there.

const store = await openStore('sqlite::memory:');
const app = await startApp({ store });
const ask = askerOf(app);
afterAll(async () => {
  await app.close();
  await store.close();
});

const YEARS = 7;
const daily = Array.from({ length: Math.floor(365.25 * YEARS) }, (_, day) => {
  const level =
    10.5 - 14 * Math.cos((2 * Math.PI * (day - 22)) / 365.25) + 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 61.7);
  return { date: dateAfter('2020-01-01', day), min: level - 6, max: level + 6 };
});

beforeAll(async () => {
  await ask('PUT', '/v1/places/inland', { name: 'Quillmere inland', ...quillmere, latitude: 40.05 });
  const kept = await ask('POST', '/v1/places/inland/air', { medium: 'air', unit: 'C', daily });
  expect(kept.statusCode, kept.body).toBeLessThan(300);
  await ask('PUT', '/v1/beds/inland', { place: 'inland', name: 'Inland bed' });
  await ask('PUT', '/v1/beds/other', { place: 'inland', name: 'Other bed' });
  await ask('PUT', '/v1/sowings/carrots', { bed: 'inland', crop: 'carrot', date: '2027-07-01', seeds: 200 });
});

const week = async (query: string): Promise<WeekAnswer> => {
  const answer = await ask('GET', `/v1/this-week?${query}`);
  expect(answer.statusCode, answer.body).toBe(200);
  return answer.json();
};
/** The windows of a crop; of one that is raised in trays from its weeks in them before the date on. */
async function windowsOf(crop: string, on: string): Promise<WindowAnswer> {
  const from = dateAfter(on, -7 * (cropCalled(crop).plantingOut?.weeksFromSowing ?? 0));
  return (await ask('GET', `/v1/beds/other/sowing-windows?crop=${crop}&from=${from}&dates=false`)).json();
}

describe('the week of a bed', () => {
  test('tells of every crop once: to sow, soon, not now, or sown already', async () => {
    const { sow, soon, notNow, sown, from, to } = await week('bed=inland');
    expect([from, to]).toEqual(['2027-08-03', '2027-08-09']);
    const told = [...sow, ...soon, ...notNow].map(({ crop }) => crop);
    expect(new Set(told).size).toBe(told.length);
    expect(told).not.toContain('carrot');
    expect(sown).toEqual([{ crop: 'carrot', sowing: 'carrots', bed: 'inland', date: '2027-07-01' }]);
    const { crops } = (await ask('GET', '/v1/crops')).json() as { crops: { id: string }[] };
    expect([...told, 'carrot'].sort()).toEqual(crops.map(({ id }) => id).sort());
    expect(sow.map(({ rank }) => rank)).toEqual(sow.map((_, i) => i + 1));
    expect(sow.length).toBeGreaterThan(2);
  });

  test('gives the grades and dates of the sowing windows', async () => {
    const { sow, soon, notNow } = await week('bed=inland&on=2028-05-10');
    expect(sow.length).toBeGreaterThan(3);
    for (const { crop, method, grade, date, until, harvest } of sow) {
      const { ways, spans } = await windowsOf(crop, '2028-05-10');
      const way = ways.find(
        (one) => one.method === method && one.sow.from <= '2028-05-16' && one.sow.to >= '2028-05-10',
      )!;
      expect([until, harvest], crop).toEqual([way.sow.to, way.harvest]);
      const span = spans.find(({ from, to }) => from <= date && date <= to)!;
      if (method === 'direct') expect(grade, crop).toBe(span.grade);
    }
    for (const { crop, from, method } of soon) {
      const { ways } = await windowsOf(crop, '2028-05-10');
      expect(
        ways.some((way) => way.method === method && way.sow.from === from),
        crop,
      ).toBe(true);
      expect(from > '2028-05-16' && from <= '2028-05-31', crop).toBe(true);
    }
    for (const { crop, next } of notNow) {
      const { ways } = await windowsOf(crop, '2028-05-10');
      expect(
        ways.every(({ sow }) => sow.to < '2028-05-10' || sow.from > '2028-05-16'),
        crop,
      ).toBe(true);
      if (next) expect(next.from > '2028-05-31', crop).toBe(true);
    }
  });

  test('tells of tomato the tray in spring, and the planting out in May', async () => {
    const spring = await week('place=inland&crop=tomato&on=2028-04-20');
    expect(spring.sow).toMatchObject([{ crop: 'tomato', method: 'indoors', rank: 1 }]);
    const [{ text, params }] = spring.sow as [WeekAnswer['sow'][number]];
    expect(text).toContain('in trays');
    const june = await week(`place=inland&crop=tomato&on=${params!.plantOutDate}`);
    expect(june.plantOut).toMatchObject([{ crop: 'tomato' }]);
  });

  test('tells tasks of the week and the frost that is forecast, of today’s week alone', async () => {
    const coming = [
      { date: '2027-08-04', min: 3, max: 15 },
      { date: '2027-08-05', min: -1.2, max: 14 },
    ];
    const put = await ask('PUT', '/v1/places/inland/coming-days', { medium: 'air', unit: 'C', daily: coming });
    expect(put.statusCode, put.body).toBe(201);
    const { ahead, toDo } = await week('place=inland&crop=radish');
    expect(ahead).toMatchObject([
      { code: 'frost', from: '2027-08-05', to: '2027-08-05', params: { minC: -1.2, nights: 1 } },
    ]);
    expect(ahead[0]!.text).toContain('down to -1.2');
    expect(toDo.map(({ sowing }) => sowing)).toContain('carrots');
    const later = await week('place=inland&crop=radish&on=2027-09-01');
    expect([later.ahead, later.toDo]).toEqual([[], []]);
    await ask('DELETE', '/v1/places/inland/coming-days');
  });
});

describe('what cannot be answered', () => {
  test.each([
    ['', 422, 'near'],
    ['bed=inland&place=inland', 422, 'bed'],
    ['bed=inland&crop=', 422, 'crop'],
    ['bed=inland&crop=dragonfruit', 422, undefined],
    ['bed=inland&on=tomorrow', 422, 'on'],
    ['bed=nowhere', 404, undefined],
  ])('%s is refused in words', async (query, status, parameter) => {
    const answer = await ask('GET', `/v1/this-week?${query}`);
    expect(answer.statusCode, answer.body).toBe(status);
    if (parameter) expect(answer.json().errors[0]).toMatchObject({ parameter });
  });

  test('a place without air says that three years are needed', async () => {
    await ask('PUT', '/v1/places/bare', { name: 'Bare', ...quillmere });
    const answer = await ask('GET', '/v1/this-week?place=bare');
    expect([answer.statusCode, answer.json().code]).toEqual([422, 'no-readings']);
  });
});
