import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PlanAnswer } from '../../src/contract/plans.js';
import { exampleNormals, examplePlan } from '../../src/http/question/examples.js';
import { askerOf, dateAfter, keepQuillmere, quillmere, startApp } from './helper.js';

// Three invented years of air are kept of Quillmere; it is noon of 3 August 2027.

const app = await startApp();
beforeAll(() => keepQuillmere(app));
afterAll(() => app.close());
const ask = askerOf(app);

/** A plan under an id that no other test uses. */
let lastId = 0;
const newUrl = (): string => `/v1/plans/plan-${++lastId}`;
async function planOf(changes: object, url = newUrl()): Promise<PlanAnswer> {
  const response = await ask('PUT', url, { ...examplePlan, ...changes });
  if (response.statusCode >= 300) throw new Error(`The plan was refused: ${response.body}`);
  return response.json();
}
const harvest = (from: string, to: string, perWeek = 12) => ({ from, to, perWeek });

describe('a plan', () => {
  test('says what to sow for every week of a harvest, and is kept', async () => {
    const url = newUrl();
    const put = await planOf({}, url);
    expect(put).toMatchObject({ ...examplePlan, id: url.split('/').at(-1), gaps: [], weeksPerSowing: 2 });
    expect(put.years.count).toBe(3);
    // Eleven weeks and a day, two to a sowing.
    expect(put.sowings.map(({ plants }) => plants)).toEqual([24, 24, 24, 24, 24, 24]);
    for (const { date, half, halfRange, harvest: picked, seeds, plants, method, sureness } of put.sowings) {
      expect(method).toBe('direct');
      expect(seeds).toBeGreaterThan(plants);
      expect(half > date && picked.from > half && picked.to > picked.from).toBe(true);
      expect(halfRange!.from <= half && half <= halfRange!.to).toBe(true);
      // 615 °C·d above 4.4 °C from coming up on: 40 days of 20 °C, and longer where it is cooler.
      expect(picked.from > dateAfter(half, 38) && picked.from < dateAfter(half, 80)).toBe(true);
      expect(picked.to <= dateAfter(picked.from, 13)).toBe(true);
      expect(sureness).toBeGreaterThanOrEqual(2 / 3);
    }
    const { issuedAt: _, ...got } = (await ask('GET', url)).json();
    const { issuedAt: __, ...before } = put;
    expect(got).toEqual(before);
    expect((await ask('DELETE', url)).statusCode).toBe(204);
    expect((await ask('GET', url)).statusCode).toBe(404);
  });

  test('is listed without its sowings, of one bed if that is named', async () => {
    await ask('PUT', '/v1/beds/south', { place: 'quillmere', name: 'South bed' });
    await planOf({ bed: 'south', crop: 'onion' }, '/v1/plans/of-the-south');
    const { plans } = (await ask('GET', '/v1/plans?bed=south')).json();
    expect(plans).toMatchObject([{ id: 'of-the-south', ...examplePlan, bed: 'south', crop: 'onion' }]);
    const all = (await ask('GET', '/v1/plans')).json().plans.map(({ id }: { id: string }) => id);
    expect(all).toEqual(expect.arrayContaining(['of-the-south', 'north-summer']));
    expect((await ask('GET', '/v1/plans?limit=1')).json().next).not.toBeNull();
  });

  test('says that what should have been sown by today is too late', async () => {
    const { sowings, gaps } = await planOf({ crop: 'carrot', harvest: harvest('2027-08-10', '2027-10-31') });
    expect(gaps[0]).toMatchObject({ from: '2027-08-10', why: 'too-late' });
    expect(sowings.every(({ date }) => date >= '2027-08-03')).toBe(true);
  });

  test('counts a sowing that was made', async () => {
    await ask('PUT', '/v1/beds/east', { place: 'quillmere', name: 'East bed' });
    const plan = { bed: 'east', crop: 'beet', harvest: harvest('2027-09-20', '2027-10-17') };
    await ask('PUT', '/v1/sowings/east-beet', { bed: 'east', crop: 'beet', date: '2027-07-20', seeds: 40 });
    await ask('PUT', '/v1/sowings/east-radish', { bed: 'east', crop: 'radish', date: '2027-07-21', seeds: 40 });
    const { sowings } = await planOf(plan);
    expect(sowings[0]).toMatchObject({ date: '2027-07-20', sown: true });
    expect(sowings.slice(1).every(({ date, sown }) => date >= '2027-08-03' && !sown)).toBe(true);
  });

  test.each([-2, -1, 0])('asks for no second sowing of what was sown %i days from today', async (days) => {
    const bed = `early-${-days}`;
    await ask('PUT', `/v1/beds/${bed}`, { place: 'quillmere', name: 'Early bed' });
    // Of two weeks, for which today is the day to sow.
    const wanted = { bed, crop: 'lettuce', harvest: harvest('2027-09-22', '2027-10-05') };
    const { sowings } = await planOf(wanted);
    expect(sowings.map(({ date, sown }) => [date, sown])).toEqual([['2027-08-03', false]]);
    const date = dateAfter('2027-08-03', days);
    await ask('PUT', `/v1/sowings/${bed}`, { bed, crop: 'lettuce', date, seeds: 90 });
    const after = await planOf(wanted);
    expect(after.sowings.map(({ date, sown }) => [date, sown])).toEqual([[date, true]]);
  });

  test('of a crop whose days to maturity are not known is one gap', async () => {
    const { sowings, gaps } = await planOf({ crop: 'onion' });
    expect(sowings).toEqual([]);
    expect(gaps).toMatchObject([
      { from: examplePlan.harvest.from, to: examplePlan.harvest.to, why: 'maturity-unknown' },
    ]);
  });

  test('takes a curve of the caller’s own, of which nobody knows when it is ready', async () => {
    const rows = [
      { temperatureC: 10, days: 12, percent: 80 },
      { temperatureC: 20, days: 5, percent: 95 },
    ];
    expect((await planOf({ crop: { name: 'Our own', rows } })).gaps).toMatchObject([{ why: 'maturity-unknown' }]);
  });

  test('counted from planting out starts indoors, with the days of hardening off', async () => {
    const { sowings } = await planOf({ crop: 'tomato', harvest: harvest('2028-07-15', '2028-09-15', 2) });
    for (const { method, indoors, date, half } of sowings) {
      expect(method).toBe('indoors');
      expect(half).toBe(dateAfter(date, 8));
      expect(indoors!.hardenOff).toEqual({
        from: dateAfter(indoors!.plantOut, -8),
        to: dateAfter(indoors!.plantOut, -1),
      });
    }
    expect(sowings.length).toBeGreaterThan(0);
  });

  test('is made for a usual year where only normals are kept, and refused where nothing is, unkept', async () => {
    await ask('PUT', '/v1/places/bare', { name: 'Bare', ...quillmere });
    await ask('PUT', '/v1/beds/bare', { place: 'bare', name: 'Bare bed' });
    const url = newUrl();
    const refused = await ask('PUT', url, { ...examplePlan, bed: 'bare' });
    expect([refused.statusCode, refused.json().code]).toEqual([422, 'no-past-years']);
    expect((await ask('GET', url)).statusCode).toBe(404);
    await ask('PUT', '/v1/places/bare/normals', exampleNormals);
    const { sowings, years } = await planOf({ bed: 'bare' }, url);
    expect(years).toEqual({ from: null, to: null, count: 0 });
    expect(sowings.length).toBeGreaterThan(3);
    expect(sowings.every(({ sureness }) => sureness === null)).toBe(true);
  });

  test('plants nothing tender out by the nights of a usual year: a grower waits for the last frost', async () => {
    const place = { name: 'Upland', ...quillmere };
    await ask('PUT', '/v1/places/upland', place);
    await ask('PUT', '/v1/beds/upland', { place: 'upland', name: 'Upland bed' });
    await ask('PUT', '/v1/places/upland/normals', exampleNormals);
    const tomato = { bed: 'upland', crop: 'tomato', harvest: harvest('2028-07-15', '2028-09-15', 2) };
    const { sowings, gaps, warnings } = await planOf(tomato);
    expect(sowings).toEqual([]);
    expect(gaps.length).toBeGreaterThan(0);
    expect(warnings).toContainEqual(
      expect.objectContaining({ code: 'planting-out-unknown', params: { crop: 'tomato' } }),
    );
    // Cabbage bears frost, and is planted out by it.
    const cabbage = await planOf({ ...tomato, crop: 'cabbage' });
    expect(cabbage.warnings.map(({ code }) => code)).not.toContain('planting-out-unknown');
  });

  test('warns of lamps and compost where it starts in trays', async () => {
    const codes = async (plan: object) => (await planOf(plan)).warnings.map(({ code }) => code);
    const trays = await codes({ crop: 'tomato', harvest: harvest('2028-07-15', '2028-09-15', 2) });
    expect(trays.filter((code) => code === 'electricity-near-water' || code === 'compost-dust')).toHaveLength(2);
  });

  test('has a tag that changes with it, its bed and its place, and no other', async () => {
    const url = newUrl();
    const put = await ask('PUT', url, { ...examplePlan, crop: 'radish' });
    const { etag } = (await ask('GET', url)).headers;
    expect(etag).toBe(put.headers.etag);
    const ifNoneMatch = { 'if-none-match': String(etag) };
    expect((await ask('GET', url, undefined, ifNoneMatch)).statusCode).toBe(304);
    expect((await ask('PUT', url, { ...examplePlan, crop: 'carrot' }, { 'if-match': String(etag) })).statusCode).toBe(
      200,
    );
    expect((await ask('PUT', url, examplePlan, { 'if-match': String(etag) })).statusCode).toBe(412);
    const now = String((await ask('GET', url)).headers.etag);
    await ask('POST', '/v1/places/quillmere/air', { medium: 'air', daily: [{ date: '2027-08-01', min: 12, max: 21 }] });
    expect((await ask('GET', url, undefined, { 'if-none-match': now })).statusCode).toBe(200);
  });
});

describe('a plan that cannot be made', () => {
  const refusals: readonly (readonly [name: string, changes: object, code: string, says: string])[] = [
    [
      'ends before it begins',
      { harvest: harvest('2028-08-01', '2028-07-31') },
      'not-understood',
      'must not be before from',
    ],
    ['is longer than a year', { harvest: harvest('2028-01-01', '2029-01-01') }, 'not-understood', 'within a year'],
    ['wants nothing', { harvest: harvest('2028-06-01', '2028-07-31', 0) }, 'not-understood', 'at least 1'],
    ['wants half a plant', { harvest: harvest('2028-06-01', '2028-07-31', 0.5) }, 'not-understood', 'whole'],
    ['wants a million', { harvest: harvest('2028-06-01', '2028-07-31', 1e6) }, 'not-understood', 'at most 10000'],
    ['has no date', { harvest: { from: 'June', to: '2028-07-31', perWeek: 1 } }, 'not-understood', 'must be a date'],
    ['has no harvest', { harvest: undefined }, 'not-understood', 'missing'],
    ['has a colour', { colour: 'green' }, 'not-understood', 'not a field known here'],
    ['is of no crop', { crop: 'letuce' }, 'unknown-crop', 'lettuce'],
    ['is in no bed', { bed: 'nowhere' }, 'unknown-bed', 'PUT /v1/beds/nowhere'],
    ['is in a bed indoors', { bed: 'sill' }, 'not-understood', 'which is indoors'],
  ];
  test.each(refusals)('because it %s is refused in words, and not kept', async (_, changes, code, says) => {
    await ask('PUT', '/v1/beds/sill', { place: 'quillmere', name: 'Sill', kind: 'indoors', roomC: 18 });
    const url = newUrl();
    const response = await ask('PUT', url, { ...examplePlan, ...changes });
    expect([response.statusCode, response.json().code]).toEqual([422, code]);
    expect(response.json().detail).toContain(says);
    expect((await ask('GET', url)).statusCode).toBe(404);
  });
});
