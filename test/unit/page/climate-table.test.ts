import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keepClimate } from '../../../src/page/begin/climate-table.js';
import type { Send } from '../../../src/page/shell/api.js';
import { whenView } from '../../../src/page/when/when-view.js';
import { startApp } from '../../api/helper.js';
import { askedOf, seen, sendTo } from './when-made.js';

let app: FastifyInstance;
let send: Send;
beforeAll(async () => {
  app = await startApp();
  send = sendTo(app);
  const place = { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
  await send({ method: 'PUT', path: '/v1/places/quillmere', json: place });
  await send({ method: 'PUT', path: '/v1/beds/north', json: { place: 'quillmere', name: 'North bed' } });
});
afterAll(() => app.close());

const LOWS = ['2', '2', '3,5', '5', '8', '11', '14', '14', '11', '8', '5', '−3'];
const HIGHS = ['9', '9', '11', '14', '17', '20', '23', '23', '20', '16', '12', '10'];
const HALF_A_YEAR_OFF = Object.fromEntries(
  LOWS.flatMap((_, i) => [
    [`low${i + 1}`, LOWS[(i + 6) % 12]!],
    [`high${i + 1}`, HIGHS[(i + 6) % 12]!],
  ]),
);
const table = (changes: Readonly<Record<string, string>> = {}): URLSearchParams =>
  new URLSearchParams({
    act: 'keep-climate',
    about: 'quillmere',
    unit: 'C',
    ...Object.fromEntries(LOWS.map((low, i) => [`low${i + 1}`, low])),
    ...Object.fromEntries(HIGHS.map((high, i) => [`high${i + 1}`, high])),
    ...changes,
  });
const keep = async (said: URLSearchParams) => keepClimate(said, await askedOf(send, 'view=when'));
const season = async () => seen((await whenView.answer(await askedOf(send, 'view=when')))!.shown).slice(0, 300);

describe('the months’ means of a climate table', () => {
  test.each([
    [{ low4: '' }, 'Write both means of April'],
    [{ high7: 'warm' }, '“warm” of July is no number'],
    [{ low1: '12' }, 'In January the lowest, 12, is above the highest, 9'],
    [{ high8: '99' }, '99 °C in August?'],
    [{ high12: '99' }, '99 °C in December?'],
    [{ unit: 'F', high7: '180' }, '180 °F in July?'],
    [{ about: 'nowhere' }, 'nowhere'],
    [HALF_A_YEAR_OFF, 'At 44° N, 30° W summer is in July'],
  ])('are refused where they cannot be, and nothing is kept: %j', async (wrong, words) => {
    const got = await keep(table(wrong as Record<string, string>));
    expect(JSON.stringify(got)).toContain(words);
    expect(await season()).toContain('Too few past years');
  });

  test('are kept in the degrees that they were typed in, and tell when to sow', async () => {
    expect(await keep(table())).toEqual({ value: { said: 'Kept: the means of the twelve months', at: 'answer' } });
    const inC = (await send({ method: 'GET', path: '/v1/places/quillmere/normals' })).body;
    expect(inC).toMatchObject({ meanMinC: [2, 2, 3.5, 5, 8, 11, 14, 14, 11, 8, 5, -3], meanMaxC: HIGHS.map(Number) });
    await keep(table({ unit: 'F', low1: '35.6', high1: '50' }));
    const inF = (await send({ method: 'GET', path: '/v1/places/quillmere/normals' })).body as typeof inC & {
      meanMinC: number[];
      meanMaxC: number[];
    };
    expect(inF.meanMinC[0]).toBeCloseTo(2, 9);
    expect(inF.meanMaxC[0]).toBeCloseTo(10, 9);
    await keep(table());
    const markup = (await whenView.answer(await askedOf(send, 'view=when&degrees=F')))!.shown.markup;
    expect(markup).toMatch(/<details class="add" id="fold-keep-climate-quillmere">.*name="low3" value="38.3"/s);
    const tried = { said: table({ high4: '' }), file: null, problem: { status: 422, code: '', title: '', detail: '' } };
    const again = await whenView.answer({ ...(await askedOf(send, 'view=when')), tried });
    expect(again!.shown.markup).toContain('<details class="add" id="fold-keep-climate-quillmere" open>');
    expect(await season()).toMatch(/^\s*Sow lettuce in North bed today, .*: in a usual year enough of it comes up/);
  });
});
