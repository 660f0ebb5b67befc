import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { keepReadings, readingsForm } from '../../../src/page/begin/keep-readings.js';
import type { Send } from '../../../src/page/shell/api.js';
import { startApp } from '../../api/helper.js';
import { askedOf, sendTo } from './page-send.js';

const SOIL = 'time,soil (C)\n2027-05-03T00:00-02:00,11\n2027-05-03T01:00-02:00,10.5\n2027-05-03T02:00-02:00,10\n';
const AIR = 'date,air min (F),air max (F)\n2027-05-01,41,59\n2027-05-02,43,61\n';

let app: FastifyInstance;
let send: Send;
beforeAll(async () => {
  app = await startApp();
  send = sendTo(app);
});
afterAll(() => app.close());

beforeEach(async () => {
  await send({ method: 'DELETE', path: '/v1/places/quillmere?with=beds' });
  const place = { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
  await send({ method: 'PUT', path: '/v1/places/quillmere', json: place });
  await send({ method: 'PUT', path: '/v1/beds/north', json: { place: 'quillmere', name: 'North bed' } });
});

const keep = async (text: string | null, bed = 'north', more: Readonly<Record<string, string>> = {}) => {
  const file = text === null ? null : { name: 'logger.csv', body: Buffer.from(text), text };
  const asked = { ...(await askedOf(send, 'source=file&bed=')), file };
  return keepReadings(new URLSearchParams({ act: 'keep-readings', about: 'file', bed, ...more }), asked);
};
const kept = async (path: string) =>
  (await send({ method: 'GET', path })).body as { series: { readings: object[]; probeDepthCm?: number }[] };
const detailOf = (got: Awaited<ReturnType<typeof keep>>): string =>
  'problem' in got ? [got.problem.detail, ...(got.problem.errors ?? []).map(({ detail }) => detail)].join(' ') : '';

describe('a file that is kept for a bed', () => {
  test('lies as deep as is said when it is kept', async () => {
    const file = { name: 'logger.csv', body: Buffer.from(SOIL) };
    const said = new URLSearchParams({ bed: 'north', probeDepthCm: '7,5' });
    await keepReadings(said, { ...(await askedOf(send, 'source=file&bed=&probeDepthCm=5')), file });
    expect((await kept('/v1/beds/north/readings')).series).toMatchObject([{ probeDepthCm: 7.5 }]);
  });

  test('goes with the bed where it is of the soil, read as the question says, and the question goes on with the bed', async () => {
    expect(await keep(SOIL, 'north', { probeDepthCm: '5' })).toMatchObject({
      value: {
        said: 'Kept for North bed: 3 readings: 3 new',
        at: 'answer',
        goesOn: { bed: 'north', source: 'bed' },
      },
    });
    const { series } = await kept('/v1/beds/north/readings');
    expect(series).toMatchObject([{ probeDepthCm: 5, readings: [{ value: 11 }, { value: 10.5 }, { value: 10 }] }]);
  });

  test('goes with the place where it is of the air', async () => {
    expect(await keep(AIR)).toMatchObject({
      value: { said: 'Kept for North bed: 2 days of air: 2 new' },
    });
    const { body } = await send({ method: 'GET', path: '/v1/places/quillmere/air?precision=rounded' });
    expect(body).toMatchObject({ series: { daily: [{ min: 5, max: 15 }, { date: '2027-05-02' }] } });
    expect((await kept('/v1/beds/north/readings')).series).toEqual([]);
  });

  test('is kept once, however often it is sent', async () => {
    await keep(SOIL);
    expect(await keep(SOIL)).toMatchObject({
      value: { said: 'Kept for North bed: 3 readings: 3 kept already' },
    });
    expect(await keep(SOIL.replace('10.5', '9'))).toMatchObject({
      value: { said: 'Kept for North bed: 3 readings: 1 in place of others, 2 kept already' },
    });
    expect((await kept('/v1/beds/north/readings')).series[0]!.readings).toHaveLength(3);
  });

  test.each([
    ['no bed', SOIL, '', 'Choose the bed'],
    ['a bed that is gone', SOIL, 'gone', 'Choose the bed'],
    ['no file', null, 'north', 'Choose it once more'],
    ['days of the soil', 'date,soil min (C),soil max (C)\n2027-05-01,8,14\n', 'north', 'by the day'],
    ['degrees that nobody tells', SOIL.replace(' (C)', ''), 'north', 'unit'],
  ])('is refused with %s, and nothing is kept', async (_, text, bed, words) => {
    expect(detailOf(await keep(text, bed))).toContain(words);
    expect((await kept('/v1/beds/north/readings')).series).toEqual([]);
    const { body } = await send({ method: 'GET', path: '/v1/places/quillmere/air' });
    expect(body).toMatchObject({ series: { daily: [] } });
  });
});

describe('the form for it', () => {
  test('holds the file as text where there is no script to hold it', async () => {
    const asked = await askedOf(send, 'source=file&bed=north');
    const file = { name: 'logger.csv', body: Buffer.from('"a" <b>'), text: '"a" <b>' };
    expect(readingsForm({ ...asked, file }).markup).toContain('name="pasted" value="&quot;a&quot; &lt;b&gt;"');
    const { markup } = readingsForm({ ...asked, file: { name: 'long.csv', body: file.body } });
    expect(markup).not.toContain('pasted');
    expect(markup).toMatch(/<noscript>.*<input type="file" name="file">.*<\/noscript>/);
  });

  test('leads to where a bed is kept, as long as there is none', async () => {
    await send({ method: 'DELETE', path: '/v1/beds/north' });
    expect(readingsForm(await askedOf(send, 'source=file')).markup).toContain('view=growing');
  });
});
