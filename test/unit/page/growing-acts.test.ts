import type { FastifyInstance } from 'fastify';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { SowingAnswer } from '../../../src/contract/sowings.js';
import { exampleCount } from '../../../src/http/question/examples.js';
import { growingAction } from '../../../src/page/growing/growing-actions.js';
import type { Send } from '../../../src/page/shell/api.js';
import { refusalSaid } from '../../../src/page/shell/refusal-words.js';
import type { AskedQuestion } from '../../../src/page/shell/view.js';
import { keepQuillmere, startApp } from '../../api/helper.js';
import { askedOf, sendTo } from './page-send.js';
import { english } from './readers.js';

let app: FastifyInstance;
let send: Send;
let asked: AskedQuestion;

// Today is 3 August 2027 there; 200 lettuce seeds were sown on 30 July, and counted today.
beforeAll(async () => {
  app = await startApp();
  await keepQuillmere(app);
  send = sendTo(app);
  asked = await askedOf(send, 'view=growing&ofBed=');
});
afterAll(() => app.close());

afterEach(async () => {
  const carrots = (await idsOf('sowings')).filter((id) => id.startsWith('carrot')).map((id) => `/v1/sowings/${id}`);
  for (const path of [...carrots, '/v1/plans/radish-2028-05-01']) await send({ method: 'DELETE', path });
  await send({ method: 'PUT', path: '/v1/sowings/north-lettuce/counts/2027-08-03', json: exampleCount });
});

const act = (said: Record<string, string>, as: AskedQuestion = asked) => growingAction(new URLSearchParams(said), as);
const detailOf = async (said: Record<string, string>): Promise<string> => {
  const got = await act(said);
  return 'problem' in got
    ? [got.problem.detail, ...(got.problem.errors ?? []).map(({ detail }) => detail)].join(' ')
    : '';
};
const kept = async <T>(path: string): Promise<T> => (await send({ method: 'GET', path })).body as T;
const idsOf = async (kind: 'places' | 'beds' | 'sowings' | 'plans'): Promise<string[]> =>
  (await kept<Record<string, { id: string }[]>>(`/v1/${kind}`))[kind]!.map(({ id }) => id);
const counts = async (id = 'north-lettuce') => (await kept<SowingAnswer>(`/v1/sowings/${id}`)).counts;

const count = { act: 'count', about: 'north-lettuce', date: '2027-08-03', seedlings: '14' };
const sow = {
  act: 'sow',
  about: 'new',
  bed: 'north',
  crop: 'carrot',
  date: '2027-07-20',
  seeds: '150',
  method: 'direct',
};
const plan = {
  act: 'plan',
  about: 'new',
  bed: 'north',
  crop: 'radish',
  from: '2028-05-01',
  to: '2028-05-21',
  perWeek: '10',
};

describe('a count', () => {
  test('is kept as it is typed, and told in the reader’s words', async () => {
    expect(await act(count)).toEqual({ value: { said: 'Counted: 14 on 3 August', at: 'sowing-north-lettuce' } });
    expect(await counts()).toMatchObject([{ date: '2027-08-03', seedlings: 14, ofSeeds: null, thinned: false }]);
  });

  test('that is sent twice is counted once', async () => {
    await act(count);
    const once = await counts();
    expect(await act(count)).toHaveProperty('value');
    expect(await counts()).toEqual(once);
  });

  test('of none is one', async () => {
    await act({ ...count, seedlings: '0' });
    expect((await counts())[0]!.seedlings).toBe(0);
  });

  test.each([
    [{ ofSeeds: '50' }, { ofSeeds: 50, thinned: false }],
    [{ thinned: '12' }, { ofSeeds: null, thinned: 12 }],
    [{ thinnedSome: 'yes' }, { ofSeeds: null, thinned: true }],
    // A number says more than that there were some.
    [
      { thinned: '12', thinnedSome: 'yes' },
      { ofSeeds: null, thinned: 12 },
    ],
  ])('of a stretch, or after thinning, says so: %j', async (more, expected) => {
    await act({ ...count, ...(more as Record<string, string>) });
    expect((await counts())[0]).toMatchObject(expected);
  });

  test.each([
    [{ seedlings: '' }, 'write 0'],
    [{ seedlings: '14x' }, '“14x” is no whole number'],
    [{ seedlings: '14.5' }, '“14.5” is no whole number'],
    [{ seedlings: '1,000' }, '“1,000” is no whole number'],
    [{ seedlings: '-1' }, '“-1” is no whole number'],
    [{ ofSeeds: 'many' }, '“many” is no whole number'],
    [{ date: '' }, 'on which day'],
    [{ date: '2027-02-30x' }, 'on which day'],
    [{ date: '2027-08-04' }, 'must not be a day to come'],
    [{ seedlings: '201' }, 'must not be more than the 200 seeds'],
    [{ about: 'nothing' }, 'No sowing is kept'],
    [{ about: '../beds/north' }, 'id in the path'],
  ])('that cannot be is refused, and changes nothing: %j', async (wrong, words) => {
    const before = await counts();
    expect(await detailOf({ ...count, ...(wrong as Record<string, string>) })).toContain(words);
    expect(await counts()).toEqual(before);
  });

  test('is forgotten, and forgetting it twice is harmless', async () => {
    const forget = { act: 'forget-count', about: 'x', of: 'north-lettuce', date: '2027-08-03' };
    expect(await act(forget)).toMatchObject({ value: { said: 'Forgotten: the count of 3 August' } });
    expect(await counts()).toEqual([]);
    expect(await act(forget)).toHaveProperty('value');
  });

  test('that does not reach the service says so, and that nothing typed is lost', async () => {
    const away = { ...asked, send: () => Promise.reject(new TypeError('fetch failed')) };
    const got = await act(count, away);
    if (!('problem' in got)) throw new Error('it was taken');
    expect(got.problem.status).toBe(0);
    expect(refusalSaid(got.problem, english).map(({ markup }) => markup)).toEqual([
      expect.stringContaining('still here'),
    ]);
  });
});

describe('a sowing', () => {
  test('is kept under its crop and date', async () => {
    expect(await act(sow)).toEqual({ value: { said: 'Kept: Carrot, sown 20 July', at: 'sowing-carrot-2027-07-20' } });
    expect(await kept('/v1/sowings/carrot-2027-07-20')).toMatchObject({
      bed: 'north',
      crop: 'carrot',
      date: '2027-07-20',
      seeds: 150,
      method: 'direct',
    });
  });

  test('that is sent twice is one sowing', async () => {
    await act(sow);
    const once = await idsOf('sowings');
    expect(await act(sow)).toMatchObject({ value: { at: 'sowing-carrot-2027-07-20' } });
    expect(await idsOf('sowings')).toEqual(once);
  });

  test('unlike another of its crop and day gets a number behind, and replaces nothing', async () => {
    await act(sow);
    await act({ ...sow, method: 'indoors' });
    await act({ ...sow, seeds: '80' });
    expect((await idsOf('sowings')).filter((id) => id.startsWith('carrot'))).toEqual([
      'carrot-2027-07-20',
      'carrot-2027-07-20-2',
      'carrot-2027-07-20-3',
    ]);
    expect(await kept('/v1/sowings/carrot-2027-07-20')).toMatchObject({ seeds: 150, method: 'direct' });
  });

  test('whose seeds nobody counted is kept without their number', async () => {
    await act({ ...sow, seeds: '' });
    expect(await kept('/v1/sowings/carrot-2027-07-20')).toMatchObject({ seeds: null });
  });

  test.each([
    [{ bed: '' }, 'Choose the bed'],
    [{ date: '20 July' }, 'on which day'],
    [{ date: '2001-01-01' }, '2001 is over a year from today'],
    [{ seeds: 'a pinch' }, '“a pinch” is no whole number'],
    [{ bed: 'nowhere' }, 'There is no such bed'],
    [{ crop: 'mandrake' }, 'mandrake'],
  ])('that cannot be is refused: %j', async (wrong, words) => {
    expect(await detailOf({ ...sow, ...(wrong as Record<string, string>) })).toContain(words);
    expect(await idsOf('sowings')).toEqual(['north-lettuce']);
  });

  test('is changed to what is typed then, and its counts stay', async () => {
    await act(sow);
    await act({ ...count, about: 'carrot-2027-07-20' });
    const changed = { ...sow, act: 'change-sowing', about: 'carrot-2027-07-20', date: '2027-07-21', seeds: '160' };
    expect(await act(changed)).toEqual({
      value: { said: 'Changed: Carrot, sown 21 July', at: 'sowing-carrot-2027-07-20' },
    });
    expect(await kept('/v1/sowings/carrot-2027-07-20')).toMatchObject({ date: '2027-07-21', seeds: 160 });
    expect(await counts('carrot-2027-07-20')).toMatchObject([{ seedlings: 14 }]);
    expect(await detailOf({ ...changed, seeds: '1,000' })).toContain('no whole number');
    expect(await detailOf({ ...changed, about: 'nothing' })).toContain('No sowing is kept');
  });

  test('is forgotten with its counts, and forgetting it twice is harmless', async () => {
    await act(sow);
    await act({ ...count, about: 'carrot-2027-07-20' });
    const forget = { act: 'forget-sowing', about: 'carrot-2027-07-20' };
    expect(await act(forget)).toHaveProperty('value');
    expect(await idsOf('sowings')).toEqual(['north-lettuce']);
    expect(await act(forget)).toHaveProperty('value');
  });
});

describe('a plan', () => {
  test('is kept under its crop and first day, once however often it is sent, and forgotten', async () => {
    expect(await act(plan)).toEqual({ value: { said: 'Planned: Radish, 10 a week', at: 'plan-radish-2028-05-01' } });
    await act(plan);
    expect(await idsOf('plans')).toEqual(['north-summer', 'radish-2028-05-01']);
    await act({ act: 'forget-plan', about: 'radish-2028-05-01' });
    expect(await idsOf('plans')).toEqual(['north-summer']);
  });

  test.each([
    [{ bed: '' }, 'Choose the bed'],
    [{ from: '' }, 'first and the last day'],
    [{ perWeek: '' }, 'How many plants'],
    [{ to: '2028-04-01' }, 'must not be before from'],
  ])('that cannot be is refused: %j', async (wrong, words) => {
    expect(await detailOf({ ...plan, ...(wrong as Record<string, string>) })).toContain(words);
  });
});

test('a calendar gets another address, and the old one opens nothing any more', async () => {
  const address = async () => (await kept<{ calendarUrl: string }>('/v1/beds/north')).calendarUrl;
  const old = await address();
  expect(await act({ act: 'renew-calendar', about: 'north' })).toMatchObject({ value: { at: 'calendar-north' } });
  expect(await address()).not.toBe(old);
  expect((await app.inject(old)).statusCode).toBe(404);
});

test('a change that the page does not know is none', async () => {
  expect(await act({ act: 'constructor', about: 'x' })).toHaveProperty('problem');
});

describe('a bed', () => {
  const bed = {
    act: 'keep-bed',
    about: 'new',
    name: 'Süd Beet 2',
    kind: 'raised-bed',
    cover: 'mulch',
    moisture: 'moist',
    shadePercent: '20',
    roomC: '',
    place: '',
    placeName: 'Lower field',
    timeZone: 'Etc/GMT+2',
    latitude: '44,2',
    longitude: '−30',
  };
  afterEach(async () => {
    const made = (await idsOf('beds')).filter((id) => id !== 'north').map((id) => `/v1/beds/${id}?with=sowings`);
    const places = (await idsOf('places')).filter((id) => !['quillmere', 'fallow'].includes(id));
    for (const path of [...made, ...places.map((id) => `/v1/places/${id}`)]) await send({ method: 'DELETE', path });
  });

  test('is kept under its name with its place, and the question goes on with it', async () => {
    expect(await act(bed)).toMatchObject({
      value: { said: 'Kept: Süd Beet 2', at: 'bed-sud-beet-2', goesOn: { bed: 'sud-beet-2', ofBed: '' } },
    });
    expect(await kept('/v1/beds/sud-beet-2')).toMatchObject({
      place: 'lower-field',
      name: 'Süd Beet 2',
      kind: 'raised-bed',
      cover: 'mulch',
      moisture: 'moist',
      shadePercent: 20,
      roomC: null,
    });
    expect(await kept('/v1/places/lower-field')).toMatchObject({
      name: 'Lower field',
      latitude: 44.2,
      longitude: -30,
      timeZone: 'Etc/GMT+2',
    });
  });

  test('that is sent twice is one bed in one place', async () => {
    await act(bed);
    const once = [await idsOf('beds'), await idsOf('places')];
    expect(await act(bed)).toMatchObject({ value: { said: 'Kept already: Süd Beet 2', at: 'bed-sud-beet-2' } });
    expect([await idsOf('beds'), await idsOf('places')]).toEqual(once);
  });

  test('indoors is as warm as is typed, in the degrees that are read', async () => {
    await act({ ...bed, place: 'quillmere', name: 'Sill', kind: 'indoors', roomC: '68', roomUnit: 'F' });
    expect(await kept('/v1/beds/sill')).toMatchObject({ kind: 'indoors', roomC: 20 });
  });

  test('may lie in a place that is kept, or have a name in no Latin letters', async () => {
    expect(await act({ ...bed, place: 'quillmere', name: '北の畝', latitude: '' })).toMatchObject({
      value: { at: 'bed-bed' },
    });
    expect(await kept('/v1/beds/bed')).toMatchObject({ place: 'quillmere', name: '北の畝' });
  });

  test.each([
    [{ name: ' ' }, 'Give the bed a name'],
    [{ latitude: '' }, 'Where does the bed lie'],
    [{ timeZone: '' }, 'Which time zone'],
    [{ timeZone: 'Quillmere' }, 'Quillmere'],
    [{ latitude: '444' }, '90'],
    [{ latitude: 'north' }, 'number'],
    [{ kind: 'indoors' }, 'How warm is the room'],
    [{ shadePercent: '120' }, '100'],
    [{ kind: 'hole' }, 'kind'],
    [{ kind: 'indoors', roomC: '150', roomUnit: 'F' }, '150 °F'],
    [{ latitude: 'Infinity' }, 'Infinity'],
    [{ placeName: 'x'.repeat(201) }, '200 characters'],
    [{ place: 'nowhere' }, 'nowhere'],
  ])('that cannot be is refused: %j', async (wrong, words) => {
    expect(await detailOf({ ...bed, ...(wrong as Record<string, string>) })).toContain(words);
    expect(await idsOf('beds')).toEqual(['north']);
    expect(await idsOf('places')).toEqual(['fallow', 'quillmere']);
  });

  test('is changed, and so is its place, to what is typed then', async () => {
    await act(bed);
    const changed = {
      ...bed,
      act: 'change-bed',
      about: 'sud-beet-2',
      name: 'South bed',
      shadePercent: '',
      place: 'quillmere',
    };
    expect(await act(changed)).toEqual({ value: { said: 'Changed: South bed', at: 'bed-sud-beet-2' } });
    expect(await kept('/v1/beds/sud-beet-2')).toMatchObject({ name: 'South bed', shadePercent: 0, place: 'quillmere' });
    const moved = { ...bed, act: 'change-place', about: 'lower-field', placeName: 'Upper field', latitude: '-44' };
    expect(await act(moved)).toEqual({ value: { said: 'Changed: Upper field', at: 'place-lower-field' } });
    expect(await kept('/v1/places/lower-field')).toMatchObject({ name: 'Upper field', latitude: -44, longitude: -30 });
    expect(await detailOf({ ...moved, latitude: '95' })).toContain('90');
    expect(await detailOf({ ...moved, longitude: '' })).toContain('latitude and longitude');
    expect(await detailOf({ ...changed, place: 'nowhere' })).toContain('nowhere');
    await send({ method: 'PUT', path: '/v1/beds/frame', json: { place: 'lower-field', name: 'Frame' } });
    const forgotten = { act: 'forget-place', about: 'lower-field' };
    expect(await act(forgotten)).toMatchObject({ problem: { code: 'has-beds' } });
    await send({ method: 'DELETE', path: '/v1/beds/frame' });
    await act(forgotten);
    expect(await idsOf('places')).toEqual(['fallow', 'quillmere']);
  });

  test('is without what was measured on some days once that is forgotten', async () => {
    await act({ ...bed, place: 'quillmere' });
    const readings = ['2027-05-03', '2027-05-04', '2027-05-05'].map((date) => ({
      at: `${date}T12:00:00-02:00`,
      value: 11,
    }));
    await send({ method: 'POST', path: '/v1/beds/sud-beet-2/readings', json: { medium: 'soil', readings } });
    asked = await askedOf(send, 'view=growing&ofBed=');
    const some = {
      act: 'forget-readings',
      about: 'sud-beet-2',
      probe: 'medium=soil&probeDepthCm=seed',
      from: '2027-05-04',
      to: '2027-05-05',
    };
    expect(await act(some)).toEqual({
      value: { said: 'Forgotten: 2 readings, 4 May 2027 to 5 May 2027', at: 'bed-sud-beet-2' },
    });
    const left = await kept<{ series: { readings: object[] }[] }>('/v1/beds/sud-beet-2/readings');
    expect(left.series).toMatchObject([{ readings: [{ at: '2027-05-03T12:00:00-02:00' }] }]);
    const air = [{ date: '2019-01-01', min: 1, max: 2 }];
    await send({ method: 'POST', path: '/v1/places/quillmere/air', json: { medium: 'air', daily: air } });
    const ofAir = { ...some, probe: '', from: '2019-01-01', to: '2019-01-31' };
    expect(await act(ofAir)).toMatchObject({ value: { said: 'Forgotten: 1 day of air, 1 Jan 2019 to 31 Jan 2019' } });
    expect(await detailOf({ ...some, to: '' })).toContain('first and the last');
    expect(await detailOf({ ...some, probe: 'all' })).toContain('medium');
    expect(await detailOf({ ...some, from: '0027-05-04' })).toContain('with its year');
    expect(await detailOf({ ...some, to: '2027-05-01' })).toContain('comes after the last');
    expect(await act(some)).toMatchObject({ value: { said: 'Nothing was kept of those days' } });
  });

  test('is shown where one bed alone was looked at', async () => {
    const ofOne = { ...asked, question: { ...asked.question, ofBed: 'north' } };
    expect(await act(bed, ofOne)).toMatchObject({ value: { goesOn: { ofBed: 'sud-beet-2' } } });
  });

  test('is forgotten with what grows in it, and forgetting it twice is harmless', async () => {
    await act(bed);
    await act({ ...sow, bed: 'sud-beet-2' });
    const forget = { act: 'forget-bed', about: 'sud-beet-2' };
    const ofIt = { ...asked, question: { ...asked.question, bed: 'sud-beet-2', ofBed: 'sud-beet-2' } };
    expect(await act(forget, ofIt)).toEqual({
      value: { said: 'Forgotten: the bed', at: 'answer', goesOn: { bed: '', ofBed: '' } },
    });
    expect(await idsOf('beds')).toEqual(['north']);
    expect(await idsOf('sowings')).toEqual(['north-lettuce']);
    expect(await act(forget)).toHaveProperty('value');
  });
});
