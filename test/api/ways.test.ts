import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { WindowAnswer } from '../../src/contract/windows.js';
import { openStore } from '../../src/storage/open-store.js';
import { askerOf, dateAfter, quillmere, startApp } from './helper.js';

// Six invented years of air with winters of -4 °C and summers of 24 °C, as in the middle of a continent, are kept of Quillmere.

const store = await openStore('sqlite::memory:');
const app = await startApp({ store });
const ask = askerOf(app);
afterAll(async () => {
  await app.close();
  await store.close();
});

const YEARS = 6;
/** Weather goes on from year to year out of step with the calendar, so that no two years are alike. */
const daily = Array.from({ length: Math.floor(365.25 * YEARS) }, (_, day) => {
  const level =
    10.5 - 14 * Math.cos((2 * Math.PI * (day - 22)) / 365.25) + 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 61.7);
  return { date: dateAfter('2021-01-01', day), min: level - 6, max: level + 6 };
});

beforeAll(async () => {
  await ask('PUT', '/v1/places/inland', { name: 'Quillmere inland', ...quillmere, latitude: 40.05 });
  const kept = await ask('POST', '/v1/places/inland/air', { medium: 'air', unit: 'C', daily });
  expect(kept.statusCode, kept.body).toBeLessThan(300);
  await ask('PUT', '/v1/beds/inland', { place: 'inland', name: 'Inland bed', moisture: 'moist' });
});

const windowsOf = async (query: string): Promise<WindowAnswer> => {
  const answer = await ask('GET', `/v1/beds/inland/sowing-windows?${query}`);
  expect(answer.statusCode, answer.body).toBe(200);
  return answer.json();
};
type Way = WindowAnswer['ways'][number];
const isIndoors = (way: Way): way is Extract<Way, { method: 'indoors' }> => way.method === 'indoors';

/** Where a frost falls on any of so many days after a date, in how many of the past springs? */
const frostsAfter = (date: string, days: number): number =>
  [2021, 2022, 2023, 2024, 2025, 2026].filter((year) => {
    const from = `${year}${date.slice(4)}`;
    return daily.some((day) => day.min <= 0 && day.date >= from && day.date < dateAfter(from, days));
  }).length;

describe('growing from trays', () => {
  test('tells of tomato a date for the tray, for hardening off and for planting out, and a harvest after it', async () => {
    const { ways, instead, windows } = await windowsOf('crop=tomato&from=2028-01-01&dates=false');
    const tray = ways.find(isIndoors)!;
    expect([tray.grade, tray.roomC]).toEqual(['good', 20]);
    for (const at of ['from', 'best', 'to'] as const) expect(tray.plantOut[at]).toBe(dateAfter(tray.sow[at], 42));
    expect(tray.hardenOff).toEqual({ from: dateAfter(tray.plantOut.best, -8), to: dateAfter(tray.plantOut.best, -1) });
    expect(tray.sow.from <= tray.sow.best && tray.sow.best <= tray.sow.to).toBe(true);
    expect(tray.harvest!.from > dateAfter(tray.plantOut.from, 40)).toBe(true);
    expect(tray.harvest!.to > tray.harvest!.from).toBe(true);
    // Frost spares what is planted out: by the air that was sent, and not by the service's own count.
    expect(frostsAfter(tray.plantOut.from, 45)).toBeLessThanOrEqual(1);
    expect(tray.plantOut.from > '2028-04-20' && tray.plantOut.from < '2028-06-01', tray.plantOut.from).toBe(true);
    // Seed in place comes up weeks later than a tray is sown.
    expect(tray.sow.from < windows[0]!.from).toBe(true);
    expect(instead.find(({ action }) => action === 'start-indoors')).toMatchObject({
      grade: 'good',
      from: tray.sow.from,
      to: tray.sow.to,
      params: { roomC: 20, plantOutFromDate: tray.plantOut.from, plantOutToDate: tray.plantOut.to },
    });
  });

  test('is said in German and in °F as well', async () => {
    const { instead } = await windowsOf('crop=tomato&from=2028-01-01&dates=false&lang=de&textUnit=F');
    const { text } = instead.find(({ action }) => action === 'start-indoors')!;
    expect(text).toMatch(/^Säen Sie vom .* in Schalen in einem Raum von 68 °F, und pflanzen Sie vom .* aus\.$/);
  });

  test('is not told of crops that are sown in place, where coming up is enough, or of a room', async () => {
    const methods = async (query: string) =>
      (await windowsOf(`from=2028-01-01&dates=false&${query}`)).ways.filter(isIndoors);
    expect(await methods('crop=carrot')).toEqual([]);
    expect(await methods('crop=tomato&judge=emergence')).toEqual([]);
    await ask('PUT', '/v1/beds/room', { place: 'inland', name: 'Room', kind: 'indoors', roomC: 20 });
    const room: WindowAnswer = (await ask('GET', '/v1/beds/room/sowing-windows?crop=tomato&from=2028-01-01')).json();
    expect(room.ways.filter(isIndoors)).toEqual([]);
  });

  test('is not told from normals, of which no night is a late frost', async () => {
    const meanC = [-3, -1, 4, 10, 16, 22, 24, 23, 19, 12, 5, -1];
    const months = { meanMaxC: meanC.map((mean) => mean + 6), meanMinC: meanC.map((mean) => mean - 6) };
    await ask('PUT', '/v1/places/usual', { name: 'Usual', ...quillmere, latitude: 40.05 });
    const kept = await ask('PUT', '/v1/places/usual/normals', months);
    expect(kept.statusCode, kept.body).toBeLessThan(300);
    const answer = await ask('GET', '/v1/places/usual/sowing-windows?crop=tomato&from=2028-01-01&dates=false');
    expect(answer.statusCode, answer.body).toBe(200);
    expect((answer.json() as WindowAnswer).ways.filter(isIndoors)).toEqual([]);
  });
});
