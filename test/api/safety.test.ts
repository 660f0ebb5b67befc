import { afterAll, describe, expect, it } from 'vitest';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import { dateAfter, post, quillmere, startApp } from './helper.js';

// What keeps the gardener safe is told where it applies, and once.

const app = await startApp();
afterAll(() => app.close());

/** Weeks of days between two temperatures. */
const days = (min: number, max: number) => ({
  medium: 'soil',
  daily: Array.from({ length: 50 }, (_, day) => ({ date: dateAfter('2027-06-25', day), min, max })),
});
const HOT = days(24, 41);
const MILD = days(14, 20);
const COLD = days(3, 9);

async function codesOf(crop: string, temperatures: object, bed: object = {}, query = ''): Promise<string[]> {
  const response = await post(app, `/v1/forecasts${query}`, {
    crop,
    where: { place: quillmere, bed },
    sowing: { date: '2027-07-01' },
    temperatures: [temperatures],
  });
  if (response.statusCode !== 200) throw new Error(response.body);
  return response.json<ForecastAnswer>().warnings.map(({ code }) => code);
}

const SAFETY = [
  'electricity-near-water',
  'mould-on-paper',
  'compost-dust',
  'hot-clear-film',
  'heat-for-you',
  'burning-sap',
  'look-alikes',
];
const safetyOf = (codes: readonly string[]): string[] => codes.filter((code) => SAFETY.includes(code));

describe('what keeps the gardener safe', () => {
  it('is nothing for radishes in open ground on mild days', async () => {
    expect(safetyOf(await codesOf('radish', MILD))).toEqual([]);
  });

  it('is told of rooms, trays, pots and clear film', async () => {
    const room = { kind: 'indoors', roomC: 20 };
    expect(safetyOf(await codesOf('radish', { ...MILD, medium: 'soil' }, room))).toEqual([
      'electricity-near-water',
      'compost-dust',
    ]);
    for (const kind of ['pot', 'tray'])
      expect(safetyOf(await codesOf('radish', MILD, { kind }))).toEqual(['compost-dust']);
    expect(safetyOf(await codesOf('radish', MILD, { cover: 'clear-film' }))).toEqual(['hot-clear-film']);
  });

  it('is told of heat, and once of what is advised against it: trays in a room, seed on damp paper', async () => {
    const codes = safetyOf(await codesOf('lettuce', HOT));
    expect(codes).toEqual(['electricity-near-water', 'compost-dust', 'mould-on-paper', 'heat-for-you']);
    expect(safetyOf(await codesOf('snap-bean', COLD))).toContain('mould-on-paper');
    expect(safetyOf(await codesOf('snap-bean', COLD))).not.toContain('heat-for-you');
  });

  it('is told of plants whose sap burns, or that look like deadly ones', async () => {
    for (const crop of ['parsnip', 'celery', 'parsley']) {
      expect(safetyOf(await codesOf(crop, MILD))).toEqual(expect.arrayContaining(['burning-sap', 'look-alikes']));
    }
    expect(safetyOf(await codesOf('carrot', MILD))).toEqual(['look-alikes']);
  });

  it('is told in German as well', async () => {
    const response = await post(app, '/v1/forecasts?lang=de', {
      crop: 'parsnip',
      where: { place: quillmere, bed: { kind: 'pot' } },
      sowing: { date: '2027-07-01' },
      temperatures: [MILD],
    });
    const texts = response.json<ForecastAnswer>().warnings.map(({ text }) => text);
    expect(texts).toEqual(
      expect.arrayContaining([expect.stringMatching(/Legionellen/), expect.stringMatching(/Schierling/)]),
    );
  });
});
