import { afterAll, describe, expect, test } from 'vitest';
import { keyring } from '../../src/http/auth/keys.js';
import { askerOf, dateAfter, keepQuillmere, linkQueries, NOW, quillmere, startApp } from './helper.js';
import { type OpenApiDocument, operationsOf } from './openapi-arbitraries.js';

const app = await startApp();
afterAll(() => app.close());

const ask = askerOf(app);

const place = { name: 'Quillmere Allotment Society', ...quillmere };
const shown = { id: 'quillmere', ...place, elevationM: null, annualRainMm: null, source: null };
const source = { format: 'daily-archive-json', url: 'https://weather.example/q?lat=44', everyHours: 6 };

/** A place under an id that no other test uses. */
let lastId = 0;
async function newPlace(fields: object = place): Promise<string> {
  const url = `/v1/places/place-${++lastId}`;
  const { statusCode, body } = await ask('PUT', url, fields);
  if (statusCode !== 201) throw new Error(`The place was refused: ${body}`);
  return url;
}

const days = (n: number, { from = '2020-01-01', min = 5, max = 15 } = {}) => ({
  medium: 'air',
  daily: Array.from({ length: n }, (_, i) => ({ date: dateAfter(from, i), min, max })),
});

describe('a place', () => {
  test('is created, shown, and harmless to put again', async () => {
    const created = await ask('PUT', '/v1/places/quillmere', place);
    expect([created.statusCode, created.json()]).toMatchObject([201, shown]);
    expect(created.json()).toMatchObject({ assumptions: [], warnings: [], issuedAt: NOW });
    const again = await ask('PUT', '/v1/places/quillmere', place);
    expect([again.statusCode, again.json()]).toMatchObject([200, shown]);
    const got = await ask('GET', '/v1/places/quillmere');
    expect([got.statusCode, got.json()]).toMatchObject([200, shown]);
    expect(got.headers.etag).toBe(created.headers.etag);
    expect(got.headers.vary).toBe('Accept, Accept-Encoding, Accept-Language');
  });

  test('keeps where its air is fetched from, and loses it by null', async () => {
    const url = await newPlace({ ...place, elevationM: -3.5, annualRainMm: 800, source });
    expect((await ask('GET', url)).json()).toMatchObject({ elevationM: -3.5, annualRainMm: 800, source });
    const changed = await ask('PATCH', url, { source: null, name: 'Quillmere, south' });
    expect(changed.json()).toMatchObject({ name: 'Quillmere, south', annualRainMm: 800, source: null });
    expect((await ask('GET', url)).json()).toMatchObject({ name: 'Quillmere, south', elevationM: -3.5, source: null });
  });

  test('put again loses what is not named', async () => {
    const url = await newPlace({ ...place, annualRainMm: 800 });
    await ask('PUT', url, place);
    expect((await ask('GET', url)).json()).toMatchObject({ annualRainMm: null });
  });

  test('is known to have been seen, by its tag', async () => {
    const url = await newPlace();
    const { etag } = (await ask('GET', url)).headers;
    expect((await ask('GET', url, undefined, { 'if-none-match': String(etag) })).statusCode).toBe(304);
    await ask('PATCH', url, { name: 'Other' });
    expect((await ask('GET', url, undefined, { 'if-none-match': String(etag) })).statusCode).toBe(200);
  });

  test('is gone when deleted, and may be made again', async () => {
    const url = await newPlace();
    const deleted = await ask('DELETE', url);
    expect([deleted.statusCode, deleted.body]).toEqual([204, '']);
    expect((await ask('GET', url)).statusCode).toBe(404);
    expect((await ask('DELETE', url, undefined, { 'content-type': 'application/json' })).statusCode).toBe(404);
    expect((await ask('PUT', url, place)).statusCode).toBe(201);
    expect((await ask('GET', `${url}/air`)).json().series.daily).toEqual([]);
  });

  test('with beds stays, unless they are to go too', async () => {
    const url = await newPlace();
    const bed = { place: url.split('/').at(-1), name: 'Bed' };
    await ask('PUT', '/v1/beds/bed-to-go', bed);
    expect((await ask('DELETE', url)).json().code).toBe('has-beds');
    expect((await ask('GET', '/v1/beds/bed-to-go')).statusCode).toBe(200);
    expect((await ask('DELETE', `${url}?with=beds`)).statusCode).toBe(204);
    expect((await ask('GET', '/v1/beds/bed-to-go')).statusCode).toBe(404);
  });
});

describe('places are listed', () => {
  test('by id, page by page, each once', async () => {
    const ids = Array.from({ length: 7 }, (_, i) => `list-${i}`);
    for (const id of ids) await ask('PUT', `/v1/places/${id}`, place);
    const seen: string[] = [];
    let after: string | null = 'list';
    for (let pages = 0; after !== null && pages < 9; pages++) {
      const { places, next }: { places: { id: string }[]; next: string | null } = (
        await ask('GET', `/v1/places?limit=3&after=${after}`)
      ).json();
      expect(places.length).toBeLessThanOrEqual(3);
      seen.push(...places.map(({ id }) => id));
      after = next;
    }
    expect(seen.filter((id) => id.startsWith('list-'))).toEqual(ids);
    expect(seen).toEqual(seen.toSorted());
  });
});

describe('If-Match', () => {
  test('lets a change pass that knows the thing as it is, by any of its tags, and no other', async () => {
    const url = await newPlace();
    const etag = String((await ask('GET', url)).headers.etag);
    const first = await ask('PATCH', url, { name: 'One' }, { 'if-match': `"other", ${etag}` });
    expect(first.statusCode).toBe(200);
    const late = await ask('PATCH', url, { name: 'Two' }, { 'if-match': etag });
    expect([late.statusCode, late.json().code]).toEqual([412, 'precondition-failed']);
    expect((await ask('PUT', url, place, { 'if-match': etag })).statusCode).toBe(412);
    expect((await ask('GET', url)).json().name).toBe('One');
    const next = await ask('PUT', url, place, { 'if-match': String(first.headers.etag) });
    expect(next.statusCode).toBe(200);
    expect((await ask('PATCH', url, { name: 'Any' }, { 'if-match': '*' })).statusCode).toBe(200);
  });

  test('does not mind that air was added meanwhile', async () => {
    const url = await newPlace();
    const etag = String((await ask('GET', url)).headers.etag);
    await ask('POST', `${url}/air`, days(3));
    expect((await ask('PATCH', url, { name: 'One' }, { 'if-match': etag })).statusCode).toBe(200);
  });

  test('lets one of many through who change the same at once', async () => {
    const url = await newPlace();
    const etag = String((await ask('GET', url)).headers.etag);
    const names = Array.from({ length: 8 }, (_, i) => `Name ${i}`);
    const answers = await Promise.all(names.map((name) => ask('PATCH', url, { name }, { 'if-match': etag })));
    expect(answers.map(({ statusCode }) => statusCode).toSorted()).toEqual([200, ...new Array(7).fill(412)]);
    const winner = answers.find(({ statusCode }) => statusCode === 200)!.json();
    expect((await ask('GET', url)).json().name).toBe(winner.name);
  });

  test('left out, changes of other fields at once are all kept', async () => {
    const url = await newPlace();
    const changes = [{ name: 'Both' }, { annualRainMm: 700 }, { elevationM: 40 }, { longitude: -31 }];
    const answers = await Promise.all(changes.map((change) => ask('PATCH', url, change)));
    expect(answers.map(({ statusCode }) => statusCode)).toEqual([200, 200, 200, 200]);
    expect((await ask('GET', url)).json()).toMatchObject(Object.assign({}, ...changes));
  });

  test('guards normals and coming days too', async () => {
    const url = await newPlace();
    const normals = { meanMaxC: new Array(12).fill(15), meanMinC: new Array(12).fill(5) };
    const created = await ask('PUT', `${url}/normals`, normals);
    expect(created.statusCode).toBe(201);
    const headers = { 'if-match': String(created.headers.etag) };
    expect(
      (await ask('PUT', `${url}/normals`, { ...normals, meanMinC: new Array(12).fill(4) }, headers)).statusCode,
    ).toBe(200);
    expect((await ask('PUT', `${url}/normals`, normals, headers)).statusCode).toBe(412);
    const coming = await ask('PUT', `${url}/coming-days`, days(2, { from: '2027-08-04' }));
    expect(coming.statusCode).toBe(201);
    expect(coming.headers.etag).toBe((await ask('GET', `${url}/coming-days`)).headers.etag);
  });
});

describe('the air of a place', () => {
  test('is kept by date: the last sent counts, and what is the same is counted', async () => {
    const url = await newPlace();
    const first = (await ask('POST', `${url}/air`, days(3))).json();
    expect(first).toMatchObject({ added: 3, unchanged: 0, replaced: 0 });
    expect(first.understood).toHaveLength(1);
    const daily = [
      { date: '2020-01-03', min: 1, max: 2 },
      { date: '2020-01-02', min: 5, max: 15 },
      { date: '2020-01-09', mean: 4 },
    ];
    expect((await ask('POST', `${url}/air`, { medium: 'air', daily })).json()).toMatchObject({
      added: 1,
      unchanged: 1,
      replaced: 1,
    });
    const { series, next } = (await ask('GET', `${url}/air`)).json();
    expect(next).toBeNull();
    expect(series).toEqual({
      medium: 'air',
      unit: 'C',
      daily: [{ date: '2020-01-01', min: 5, max: 15 }, daily[1], daily[0], daily[2]],
    });
  });

  test('comes as a file too, in its unit, and goes back as it came', async () => {
    const url = await newPlace();
    const csv = 'date,TMIN (F),TMAX (F)\n2020-01-01,41,59\n2020-01-02,32,50\n2020-01-03,-4,23\n';
    const sent = (await ask('POST', `${url}/air`, csv)).json();
    expect(sent).toMatchObject({ added: 3, understood: [{ unit: 'F', medium: 'air' }] });
    const { series } = (await ask('GET', `${url}/air`)).json();
    expect(series.daily.map(({ min, max }: { min: number; max: number }) => [min, max])).toEqual([
      [5, 15],
      [0, 10],
      [-20, -5],
    ]);
    expect((await ask('POST', `${url}/air`, series)).json()).toMatchObject({ added: 0, unchanged: 3, replaced: 0 });
  });

  test('sent as readings is kept by whole days at the place, and says which it left out', async () => {
    const url = await newPlace({ ...place, timeZone: 'Europe/Berlin' });
    const start = Date.parse('2027-03-27T23:00Z');
    const readings = Array.from({ length: 3 * 24 }, (_, hour) => ({
      at: new Date(start + hour * 3_600_000).toISOString(),
      value: hour < 23 ? 10 : 20,
    }));
    const { added, warnings } = (await ask('POST', `${url}/air`, { medium: 'air', readings })).json();
    // 28 March 2027 has 23 hours in Berlin, where summer time begins.
    expect(added).toBe(3);
    expect(warnings).toEqual([expect.objectContaining({ code: 'incomplete-days' })]);
    const { daily } = (await ask('GET', `${url}/air`)).json().series;
    expect(daily.map(({ date, min, max }: Record<string, unknown>) => [date, min, max])).toEqual([
      ['2027-03-28', 10, 10],
      ['2027-03-29', 20, 20],
      ['2027-03-30', 20, 20],
    ]);
  });

  test('is given a range and a page at a time, each day once', async () => {
    const url = await newPlace();
    await ask('POST', `${url}/air`, days(400));
    const seen: string[] = [];
    let query = 'from=2020-01-11&to=2020-12-31&limit=50';
    for (let pages = 0; pages < 20; pages++) {
      const { series, next } = (await ask('GET', `${url}/air?${query}`)).json();
      seen.push(...series.daily.map(({ date }: { date: string }) => date));
      if (next === null) break;
      query = `from=2020-01-11&to=2020-12-31&limit=50&after=${next}`;
    }
    expect(seen).toEqual(Array.from({ length: 356 }, (_, i) => dateAfter('2020-01-11', i)));
  });

  test('is deleted from a date to a date', async () => {
    const url = await newPlace();
    await ask('POST', `${url}/air`, days(10));
    const range = 'from=2020-01-03&to=2020-01-05';
    expect((await ask('DELETE', `${url}/air?${range}`)).json()).toMatchObject({ deleted: 3 });
    expect((await ask('DELETE', `${url}/air?${range}`)).json()).toMatchObject({ deleted: 0 });
    expect((await ask('DELETE', `${url}/air`)).json()).toMatchObject({ deleted: 7 });
  });

  test('of a century is taken', async () => {
    const url = await newPlace();
    expect((await ask('POST', `${url}/air`, days(36_524, { from: '1925-01-01' }))).json()).toMatchObject({
      added: 36_524,
    });
    const { series, next } = (await ask('GET', `${url}/air?limit=40000`)).json();
    expect([series.daily.length, next]).toEqual([36_524, null]);
  });

  test('is rounded only where that is asked', async () => {
    const url = await newPlace();
    await ask('POST', `${url}/air`, { medium: 'air', daily: [{ date: '2020-01-01', mean: 5.123 }] });
    const meanOf = async (query: string) => (await ask('GET', `${url}/air${query}`)).json().series.daily[0].mean;
    expect([await meanOf(''), await meanOf('?precision=full'), await meanOf('?precision=rounded')]).toEqual([
      5.123, 5.123, 5.1,
    ]);
  });
});

describe('what is to come', () => {
  test('is replaced whole, and says when it was put', async () => {
    const url = await newPlace();
    await ask('PUT', `${url}/coming-days`, days(5, { from: '2027-08-04' }));
    const put = await ask('PUT', `${url}/coming-days`, { ...days(2, { from: '2027-08-05' }), origin: 'forecast' });
    expect(put.statusCode).toBe(200);
    expect((await ask('GET', `${url}/coming-days`)).json()).toMatchObject({
      at: NOW,
      series: { origin: 'forecast', daily: [{ date: '2027-08-05' }, { date: '2027-08-06' }] },
    });
  });

  test('and normals of a place are shown as they were put', async () => {
    const url = await newPlace();
    const normals = {
      meanMaxC: Array.from({ length: 12 }, (_, i) => 10 + i),
      meanMinC: Array.from({ length: 12 }, (_, i) => 2.25 + i),
    };
    await ask('PUT', `${url}/normals`, normals);
    expect((await ask('GET', `${url}/normals`)).json()).toMatchObject(normals);
  });
});

describe('frost dates', () => {
  /** Years without frost but on one day of spring and one of autumn. */
  async function frosty(springDays: readonly number[], autumnDays: readonly number[]): Promise<string> {
    const url = await newPlace();
    const first = 2001;
    const daily = springDays.flatMap((spring, i) => {
      const start = `${first + i}-01-01`;
      const length = (Date.parse(`${first + i + 1}-01-01`) - Date.parse(start)) / 86_400_000;
      // Days of an ordinary year: after February a leap year is one ahead.
      const leap = length - 365;
      return Array.from({ length }, (_, day) => ({
        date: dateAfter(start, day),
        min: day + 1 - leap === spring || day + 1 - leap === autumnDays[i] ? -1 : 6,
        max: 16,
      }));
    });
    const { statusCode, body } = await ask('POST', `${url}/air`, { medium: 'air', daily });
    if (statusCode !== 200) throw new Error(body);
    return url;
  }

  // Vestal (1971), the worked example of `riskDay`: 11 springs, half of them without a frost after day 134, 14 May.
  const springs = [121, 126, 129, 130, 131, 134, 139, 140, 143, 147, 147];
  const autumns = [270, 272, 275, 280, 281, 283, 284, 290, 291, 292, 300];

  test('are the median of eleven years at even odds, earlier and later at others', async () => {
    const url = await frosty(springs, autumns);
    const { lastSpringFrost, firstAutumnFrost, years, thresholdC, assumptions } = (
      await ask('GET', `${url}/frost-dates`)
    ).json();
    expect(lastSpringFrost).toMatchObject({ risk50: '05-14', seasons: 11, seasonsWithFrost: 11 });
    // The sixth of eleven, day 283.
    expect(firstAutumnFrost).toMatchObject({ risk50: '10-10', seasons: 11 });
    expect(lastSpringFrost.risk90 < '05-14' && '05-14' < lastSpringFrost.risk10).toBe(true);
    expect(firstAutumnFrost.risk10 < '10-10' && '10-10' < firstAutumnFrost.risk90).toBe(true);
    expect([years, thresholdC]).toEqual([{ from: 2001, to: 2011 }, 0]);
    expect(assumptions.length).toBeGreaterThan(0);
  });

  test('of five years are told at even odds alone, and the answer says why', async () => {
    const url = await frosty(springs.slice(0, 5), autumns.slice(0, 5));
    const { lastSpringFrost, assumptions } = (await ask('GET', `${url}/frost-dates`)).json();
    expect(lastSpringFrost).toMatchObject({ risk10: null, risk90: null, seasons: 5 });
    expect(assumptions.map(({ code }: { code: string }) => code)).toContain('frost-left-out');
  });

  test('are not moved by one wrong reading among mild nights, which is told when it comes and with them', async () => {
    const url = await frosty(springs, autumns);
    const right = (await ask('GET', `${url}/frost-dates`)).json();
    expect(right.warnings).toEqual([]);
    // Nine days of August whose nights have 14 °C, and in its middle a 0.0 that no afternoon bears out.
    const daily = Array.from({ length: 9 }, (_, day) => ({
      date: dateAfter('2004-08-06', day),
      min: day === 4 ? 0 : 14,
      max: 27 + (day % 3),
    }));
    const kept = (await ask('POST', `${url}/air`, { medium: 'air', daily })).json();
    const told = {
      code: 'doubtful-minimum',
      params: { days: 1, date: '2004-08-10', minC: 0 },
    };
    expect(kept.warnings).toMatchObject([told]);
    const wrong = (await ask('GET', `${url}/frost-dates`)).json();
    expect(wrong.firstAutumnFrost).toEqual(right.firstAutumnFrost);
    expect(wrong.warnings).toMatchObject([told]);
  });

  test('a wrong reading of a file is told as well when it comes, and when the file is only looked at', async () => {
    const url = await newPlace();
    const rows = Array.from({ length: 7 }, (_, day) => `${dateAfter('2027-05-01', day)},${day === 3 ? 0 : 14},25`);
    const csv = `date,air min (C),air max (C)\n${rows.join('\n')}\n`;
    const told = { code: 'doubtful-minimum', params: { days: 1, date: '2027-05-04', minC: 0 } };
    const kept = await ask('POST', `${url}/air`, csv, { 'content-type': 'text/csv' });
    expect([kept.statusCode, kept.json().added]).toEqual([200, 7]);
    expect(kept.json().warnings).toMatchObject([told]);
    const looked = await ask('POST', '/v1/readings/check?timeZone=Etc/GMT%2B2', csv, { 'content-type': 'text/csv' });
    expect(looked.json().warnings).toMatchObject([told]);
  });

  test('of a thermometer with frost in June, July and August come with a warning', async () => {
    const url = await frosty(springs, autumns);
    const cold = ['2003-06-10', '2005-07-02', '2009-08-20'].map((date) => ({
      date,
      min: -1,
      max: 12,
    }));
    await ask('POST', `${url}/air`, { medium: 'air', daily: cold.slice(0, 2) });
    expect((await ask('GET', `${url}/frost-dates`)).json().warnings).toEqual([]);
    await ask('POST', `${url}/air`, { medium: 'air', daily: cold });
    expect((await ask('GET', `${url}/frost-dates`)).json().warnings).toMatchObject([
      { code: 'frost-hollow', params: { summer: 'north' } },
    ]);
  });

  test('depend on the threshold', async () => {
    const url = await frosty(springs, autumns);
    const { lastSpringFrost, thresholdC } = (await ask('GET', `${url}/frost-dates?threshold=-2`)).json();
    expect([thresholdC, lastSpringFrost.risk50, lastSpringFrost.seasonsWithFrost]).toEqual([-2, null, 0]);
  });
});

describe('nothing of one owner is seen or changed with the key of another', () => {
  test('on any route', async () => {
    const keys = new Map([
      ['mine-1', 'mine'],
      ['mine-2', 'mine'],
      ['theirs-1', 'theirs'],
    ]);
    const shared = await startApp({ findOwner: keyring(keys) });
    const as = (key: string) => {
      const inject = (asked: object) =>
        shared.inject({
          ...asked,
          headers: { ...(asked as { headers?: object }).headers, authorization: `Bearer ${key}` },
        });
      return { ...shared, inject } as unknown as typeof app;
    };
    const [mine, theirs] = [as('mine-1'), as('theirs-1')];
    await keepQuillmere(mine);
    const urls = ['/v1/places', '/v1/beds', '/v1/beds/north/readings'].concat(
      ['', '/air', '/normals', '/coming-days', '/frost-dates'].map((part) => `/v1/places/quillmere${part}`),
    );
    const everything = async () => {
      const answers = [];
      for (const url of urls) answers.push((await as('mine-2').inject({ method: 'GET', url })).json());
      return answers;
    };
    const before = await everything();
    const document: OpenApiDocument = (await shared.inject('/openapi.json')).json();
    const operations = operationsOf(document).filter(({ path }) => /^\/v1\/(places|beds)/.test(path));
    expect(operations.length).toBeGreaterThanOrEqual(20);
    // Beds come last: to put one needs a place.
    for (const { method, path, operationId, requestBody } of operations) {
      const url = path.replace('{id}', path.startsWith('/v1/places') ? 'quillmere' : 'north');
      const payload = requestBody?.content['application/json']?.example as object | undefined;
      const query = linkQueries[operationId] ?? '';
      const { statusCode, body } = await theirs.inject({ method, url: url + query, ...(payload ? { payload } : {}) });
      if (operationId === 'putPlace' || operationId === 'putBed') {
        expect([operationId, statusCode]).toEqual([operationId, operationId === 'putPlace' ? 201 : 422]);
        await theirs.inject({ method: 'DELETE', url });
      } else if (operationId === 'listPlaces') expect(JSON.parse(body).places).toEqual([]);
      else if (operationId === 'listBeds') expect(JSON.parse(body).beds).toEqual([]);
      else expect([operationId, statusCode]).toEqual([operationId, 404]);
    }
    expect(await everything()).toEqual(before);
    await shared.close();
  });
});
