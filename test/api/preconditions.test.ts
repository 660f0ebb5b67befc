import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import {
  exampleBed,
  exampleBedReadings,
  exampleComingDays,
  exampleCount,
  exampleLot,
  exampleNormals,
  examplePastAir,
  examplePlan,
  exampleSowing,
  exampleSubscription,
} from '../../src/http/question/examples.js';
import { askerOf, keepQuillmere, quillmere, startApp } from './helper.js';

// RFC 9110, 13: If-Match keeps a change from what it does not know; If-None-Match: * keeps a PUT from what is there.

const app = await startApp();
afterAll(() => app.close());
const ask = askerOf(app);

/** What can be put under an id: where it is, what to put, and a change of that. */
interface Thing {
  readonly url: string;
  readonly body: object;
  readonly changed: object;
  /** Where another of its kind would be. */
  readonly free: string;
}

const place = { name: 'Quillmere Allotment Society', ...quillmere };
const twoReadings = [
  { at: '2027-01-01T12:34:00-02:00', value: 7.5 },
  { at: '2027-01-01T12:44:00-02:00', value: 8 },
];
const plan = { ...examplePlan, crop: 'onion' };
const things: readonly Thing[] = [
  { url: '/v1/places/fallow', body: place, changed: { ...place, name: 'Other' }, free: '/v1/places/new' },
  { url: '/v1/beds/north', body: exampleBed, changed: { ...exampleBed, name: 'Other' }, free: '/v1/beds/new' },
  {
    url: '/v1/lots/onion-2026',
    body: exampleLot,
    changed: { ...exampleLot, hotLimitShiftC: 1 },
    free: '/v1/lots/new',
  },
  {
    url: '/v1/sowings/north-lettuce',
    body: exampleSowing,
    changed: { ...exampleSowing, time: '07:30' },
    free: '/v1/sowings/new',
  },
  {
    url: '/v1/plans/north-summer',
    body: plan,
    changed: { ...plan, harvest: { ...plan.harvest, perWeek: 7 } },
    free: '/v1/plans/new',
  },
  {
    url: '/v1/subscriptions/shed',
    body: exampleSubscription,
    changed: { ...exampleSubscription, events: ['frost'] },
    free: '/v1/subscriptions/new',
  },
  {
    url: '/v1/sowings/north-lettuce/counts/2027-08-03',
    body: exampleCount,
    changed: { ...exampleCount, seedlings: exampleCount.seedlings + 1 },
    free: '/v1/sowings/north-lettuce/counts/2027-08-02',
  },
  {
    url: '/v1/places/quillmere/normals',
    body: exampleNormals,
    changed: { ...exampleNormals, meanMaxC: exampleNormals.meanMaxC.map((value) => value + 1) },
    free: '/v1/places/fallow/normals',
  },
  {
    url: '/v1/places/quillmere/coming-days',
    body: exampleComingDays,
    changed: { ...exampleComingDays, daily: exampleComingDays.daily.slice(1) },
    free: '/v1/places/fallow/coming-days',
  },
];
const named = things.map((thing) => [thing.url, thing] as const);
const deletable = named.filter(([url]) => !/normals|coming-days/.test(url));

beforeEach(async () => {
  for (const { url, free } of things) {
    await ask('DELETE', free);
    if (/fallow$/.test(url)) await ask('DELETE', url);
  }
  await keepQuillmere(app);
});

const kept = async (url: string) => {
  const { statusCode, headers, body } = await ask('GET', `${url}?as=kept`);
  expect(statusCode, body).toBe(200);
  return { etag: String(headers.etag), body: JSON.parse(body) as object };
};
const failed = (answer: { statusCode: number; json(): { code?: string } }) => [answer.statusCode, answer.json().code];
const FAILED = [412, 'precondition-failed'];

describe.each(named)('%s', (_, { url, body, changed, free }) => {
  test('is told as it is kept, under its revision, and that can be put back', async () => {
    const { etag, body: fields } = await kept(url);
    expect(etag).toMatch(/^"\d+"$/);
    expect(`"${(await ask('GET', url)).json().revision}"`).toBe(etag);
    const put = await ask('PUT', url, fields, { 'if-match': etag });
    expect(put.statusCode, put.body).toBe(200);
    expect((await kept(url)).body).toEqual(fields);
    expect((await ask('GET', `${url}?as=kept`, undefined, { 'if-none-match': etag })).statusCode).toBe(
      /normals|coming-days/.test(url) ? 200 : 304,
    );
  });

  test('is replaced at the revision that is known, and at no other', async () => {
    const { etag } = await kept(url);
    const first = await ask('PUT', url, changed, { 'if-match': etag });
    expect(first.statusCode, first.body).toBe(200);
    expect(`"${first.json().revision}"`).toBe((await kept(url)).etag);
    expect(failed(await ask('PUT', url, body, { 'if-match': etag }))).toEqual(FAILED);
    expect((await kept(url)).etag).toBe(`"${first.json().revision}"`);
    for (const name of [`"${first.json().revision}-gzip"`, `"x", "${first.json().revision}"`, '*']) {
      expect((await ask('PUT', url, changed, { 'if-match': name })).statusCode, name).toBe(200);
      if (/normals|coming-days/.test(url)) break;
    }
  });

  test('is not overwritten under If-None-Match: *, and created once of two at once', async () => {
    const before = await kept(url);
    expect(failed(await ask('PUT', url, changed, { 'if-none-match': '*' }))).toEqual(FAILED);
    expect(await kept(url)).toEqual(before);
    const both = await Promise.all(
      [body, changed].map((one) => ask('PUT', free, one, { 'if-none-match': '*' }).then((put) => put.statusCode)),
    );
    expect(both.toSorted()).toEqual([201, 412]);
  });

  test('takes If-Match before If-None-Match, and another fault before both', async () => {
    const stale = { 'if-match': '"0"', 'if-none-match': '*' };
    expect((await ask('PUT', url, changed, stale)).json().detail).toContain('has been changed');
    expect((await ask('PUT', url, { colour: 'green' }, stale)).statusCode).toBe(422);
    expect((await ask('PUT', url, changed, { 'if-match': '1' })).json().detail).toContain('send "1" with its quotes');
  });
});

describe.each(deletable)('%s', (_, { url, changed, body }) => {
  test('is deleted at the revision that is known, and at no other', async () => {
    if (url === '/v1/beds/north') await ask('DELETE', '/v1/sowings/north-lettuce');
    const { etag } = await kept(url);
    const weak = String((await ask('GET', url)).headers.etag);
    expect((await ask('PUT', url, changed)).statusCode).toBe(200);
    for (const stale of [etag, weak, '"0"', 'W/"old"']) {
      expect(failed(await ask('DELETE', url, undefined, { 'if-match': stale }))).toEqual(FAILED);
    }
    expect(failed(await ask('DELETE', url, undefined, { 'if-none-match': '*' }))).toEqual(FAILED);
    const now = await kept(url);
    expect((await ask('DELETE', url, undefined, { 'if-match': now.etag })).statusCode).toBe(204);
    // Without the precondition there would be a 404, so it is ignored.
    expect((await ask('DELETE', url, undefined, { 'if-match': now.etag })).statusCode).toBe(404);
    expect((await ask('PUT', url, body)).statusCode).toBe(201);
  });

  test('takes back what a GET gave, edited', async () => {
    const got = (await ask('GET', url)).json();
    const put = await ask('PUT', url, { ...got, ...changed });
    expect(put.statusCode, put.body).toBe(200);
    const refused = await ask('PUT', url, { ...got, colour: 'green' });
    expect([refused.statusCode, refused.json().errors]).toMatchObject([422, [{ pointer: '#/colour' }]]);
  });
});

test.each(deletable.filter(([url]) => !/counts/.test(url)))(
  'the list that %s is in tells its revision',
  async (url) => {
    const kind = url.split('/')[2]!;
    const listed: { id: string; revision: number }[] = (await ask('GET', `/v1/${kind}`)).json()[kind];
    expect(`"${listed.find(({ id }) => url.endsWith(id))!.revision}"`).toBe((await kept(url)).etag);
  },
);

describe('what would be refused anyhow is refused for that', () => {
  test.each([
    ['DELETE', '/v1/places/quillmere', undefined, 'has-beds'],
    ['DELETE', '/v1/beds/north', undefined, 'has-sowings'],
    ['PUT', '/v1/beds/north', { ...exampleBed, place: 'nowhere' }, 'unknown-place'],
    ['PUT', '/v1/sowings/north-lettuce', { ...exampleSowing, bed: 'nowhere' }, 'unknown-bed'],
    ['PATCH', '/v1/places/nowhere', { name: 'New' }, 'not-found'],
  ] as const)('%s %s: %s %s', async (method, url, payload, code) => {
    expect((await ask(method, url, payload, { 'if-match': '"0"' })).json().code).toBe(code);
  });
});

describe('a bed', () => {
  test('is changed under its revision though readings have come since', async () => {
    const { etag } = await kept('/v1/beds/north');
    const readings = twoReadings;
    const posted = await ask('POST', '/v1/beds/north/readings', { medium: 'soil', probeDepthCm: 5, readings });
    expect(posted.json()).toMatchObject({ added: 2 });
    expect((await ask('PATCH', '/v1/beds/north', { name: 'Renamed' }, { 'if-match': etag })).statusCode).toBe(200);
    expect(failed(await ask('PATCH', '/v1/beds/north', { name: 'Again' }, { 'if-match': etag }))).toEqual(FAILED);
  });

  test('that is deleted and changed at once under one revision is either', async () => {
    await ask('DELETE', '/v1/sowings/north-lettuce');
    const { etag } = await kept('/v1/beds/north');
    const headers = { 'if-match': etag };
    const answers = await Promise.all([
      ask('PATCH', '/v1/beds/north', { name: 'Renamed' }, headers),
      ask('DELETE', '/v1/beds/north', undefined, headers),
      ask('PATCH', '/v1/beds/north', { cover: 'mulch' }, headers),
    ]);
    expect(answers.filter(({ statusCode }) => statusCode < 300)).toHaveLength(1);
  });
});

describe.each([
  ['/v1/places/quillmere/air', examplePastAir, { ...examplePastAir, daily: [{ date: '2020-02-01', min: 1, max: 9 }] }],
  ['/v1/beds/north/readings', exampleBedReadings, { ...exampleBedReadings, readings: twoReadings }],
])('%s', (url, body, more) => {
  const RANGE = '?from=2019-01-01&to=2027-12-31';
  beforeEach(async () => {
    await ask('DELETE', url);
    expect((await ask('POST', url, body)).statusCode).toBe(200);
  });

  test.each(['', RANGE])('are deleted as they are known%s, and not otherwise', async (range) => {
    const before = await ask('GET', `${url}${range}`);
    const strong = (await kept(url)).etag;
    expect(strong).toBe(`"${before.json().revision}"`);
    await ask('POST', url, more);
    const now = (await ask('GET', url)).json().series;
    for (const stale of [String(before.headers.etag), strong]) {
      expect(failed(await ask('DELETE', `${url}${range}`, undefined, { 'if-match': stale }))).toEqual(FAILED);
      expect(failed(await ask('POST', url, more, { 'if-match': stale }))).toEqual(FAILED);
    }
    expect((await ask('GET', url)).json().series).toEqual(now);
    const tag = String((await ask('GET', `${url}${range}`)).headers.etag);
    expect((await ask('DELETE', `${url}${range}`, undefined, { 'if-match': tag })).json().deleted).toBeGreaterThan(0);
    expect(failed(await ask('DELETE', `${url}${range}`, undefined, { 'if-match': tag }))).toEqual(FAILED);
  });

  test('are added to as they are known, by one of two at once', async () => {
    const headers = { 'if-match': (await kept(url)).etag };
    const answers = await Promise.all([ask('POST', url, more, headers), ask('DELETE', url, undefined, headers)]);
    expect(answers.map(({ statusCode }) => statusCode).toSorted()).toEqual([200, 412]);
  });

  test('come as kept in the form in which they are sent', async () => {
    const { body: series } = await kept(url);
    await ask('DELETE', url);
    expect((await ask('POST', url, series)).statusCode).toBe(200);
    expect((await kept(url)).body).toEqual(series);
  });
});

test('readings as kept are of one thermometer, and a bed with several asks which', async () => {
  const readings = twoReadings;
  await ask('POST', '/v1/beds/north/readings', { medium: 'air', readings });
  const several = await ask('GET', '/v1/beds/north/readings?as=kept');
  expect([several.statusCode, several.json().detail]).toMatchObject([422, expect.stringContaining('medium=air')]);
  const one = await ask('GET', '/v1/beds/north/readings?as=kept&medium=air');
  expect(one.json()).toEqual({ medium: 'air', unit: 'C', readings });
  await ask('DELETE', '/v1/beds/north/readings?medium=air');
});
