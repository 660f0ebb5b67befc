import { afterAll, describe, expect, test } from 'vitest';
import { OPEN_OWNER } from '../../src/http/auth/owner.js';
import { openStore } from '../../src/storage/open-store.js';
import { sowing } from '../storage/make.js';
import { askerOf, quillmere, startApp } from './helper.js';

const store = await openStore('sqlite::memory:');
const app = await startApp({ store });
afterAll(async () => {
  await app.close();
  await store.close();
});
await app.inject({ method: 'PUT', url: '/v1/places/quillmere', payload: { name: 'Quillmere', ...quillmere } });

const ask = askerOf(app);

const bed = { place: 'quillmere', name: 'North bed' };
const defaults = { kind: 'open-ground', cover: 'bare', moisture: 'moist', shadePercent: 0, roomC: null };

/** A bed under an id that no other test uses. */
let lastId = 0;
async function newBed(fields: object = bed): Promise<string> {
  const url = `/v1/beds/bed-${++lastId}`;
  const { statusCode, body } = await ask('PUT', url, fields);
  if (statusCode !== 201) throw new Error(`The bed was refused: ${body}`);
  return url;
}

interface Series {
  readonly medium: string;
  readonly probeDepthCm?: number;
  readonly readings: readonly { readonly at: string; readonly value: number; readonly basis?: string }[];
}

const HOUR_MS = 3_600_000;
/** Readings each hour of a probe, from an instant on. */
const hourly = (
  n: number,
  { start = '2027-05-01T00:00:00-02:00', value = 12.25, medium = 'soil', probeDepthCm = 5 } = {},
) => ({
  medium,
  probeDepthCm,
  readings: Array.from({ length: n }, (_, i) => ({
    at: new Date(Date.parse(start) + i * HOUR_MS).toISOString(),
    value: value + (i % 24) / 8,
  })),
});

const seriesOf = async (url: string, query = ''): Promise<Series[]> =>
  (await ask('GET', `${url}/readings${query}`)).json().series;

describe('a bed', () => {
  test('is open ground, bare, kept moist, where nothing else is said', async () => {
    const url = await newBed();
    expect((await ask('GET', url)).json()).toMatchObject({ ...bed, ...defaults, id: url.split('/').at(-1) });
  });

  test('is changed field by field, and listed', async () => {
    const url = await newBed({ ...bed, kind: 'raised-bed', shadePercent: 20 });
    const changed = await ask('PATCH', url, { cover: 'mulch' });
    expect([changed.statusCode, changed.json()]).toMatchObject([
      200,
      { kind: 'raised-bed', cover: 'mulch', shadePercent: 20 },
    ]);
    const { beds } = (await ask('GET', '/v1/beds')).json();
    expect(beds).toContainEqual(expect.objectContaining({ id: url.split('/').at(-1), cover: 'mulch' }));
    expect((await ask('PATCH', url, {})).json()).toMatchObject({ cover: 'mulch' });
  });

  test('is indoors only where its room is known', async () => {
    const url = await newBed({ ...bed, kind: 'indoors', roomC: 18 });
    expect((await ask('PATCH', url, { roomC: null })).statusCode).toBe(422);
    expect((await ask('PATCH', url, { roomC: null, kind: 'pot' })).statusCode).toBe(200);
  });

  test('heeds If-Match', async () => {
    const url = await newBed();
    const headers = { 'if-match': String((await ask('GET', url)).headers.etag) };
    await ask('POST', `${url}/readings`, hourly(24));
    expect((await ask('PATCH', url, { cover: 'fleece' }, headers)).statusCode).toBe(200);
    expect((await ask('PATCH', url, { cover: 'bare' }, headers)).statusCode).toBe(412);
    expect((await ask('PUT', url, bed, headers)).statusCode).toBe(412);
  });

  test('keeps its readings when it is put again, and loses them when it is deleted', async () => {
    const url = await newBed();
    await ask('POST', `${url}/readings`, hourly(24));
    await ask('PUT', url, { ...bed, kind: 'raised-bed' });
    expect((await seriesOf(url))[0]!.readings).toHaveLength(24);
    expect((await ask('DELETE', url)).statusCode).toBe(204);
    await ask('PUT', url, bed);
    expect(await seriesOf(url)).toEqual([]);
  });
});

describe('a bed with sowings', () => {
  test('stays, with all that it has, unless they are to go too', async () => {
    const url = await newBed();
    const id = url.split('/').at(-1)!;
    await store.putSowing(OPEN_OWNER, `in-${id}`, { ...sowing, bed: id });
    const refused = await ask('DELETE', url);
    expect([refused.statusCode, refused.json()]).toMatchObject([409, { code: 'has-sowings' }]);
    expect(refused.json().detail).toContain('?with=sowings');
    expect((await ask('GET', url)).statusCode).toBe(200);
    expect((await ask('DELETE', `${url}?with=sowings`)).statusCode).toBe(204);
    expect(await store.sowing(OPEN_OWNER, `in-${id}`)).toBeUndefined();
  });
});

describe('the calendar of a bed', () => {
  const calendarUrl = /^\/v1\/beds\/([a-z0-9-]+)\/calendar\.ics\?token=([\w-]{43})$/;

  test('has an address of its own, told with the bed, and its token nowhere else', async () => {
    const url = await newBed();
    const id = url.split('/').at(-1)!;
    const shown = (await ask('GET', url)).json();
    const [, named, token] = calendarUrl.exec(shown.calendarUrl)!;
    expect(named).toBe(id);
    expect(await store.bedOfCalendar(id, token!)).toEqual({ owner: OPEN_OWNER });
    const answers = [
      shown,
      (await ask('PUT', url, bed)).json(),
      (await ask('PATCH', url, { cover: 'mulch' })).json(),
      (await ask('GET', '/v1/beds')).json().beds.find((one: { id: string }) => one.id === id),
    ];
    for (const answer of answers) {
      expect(answer.calendarUrl).toBe(shown.calendarUrl);
      expect(Object.keys(answer)).not.toContain('calendarToken');
    }
  });

  test('has another address once it is renewed, under the tag that GET then gives', async () => {
    const url = await newBed();
    const id = url.split('/').at(-1)!;
    const before = await ask('GET', url);
    const renewed = await ask('POST', `${url}/calendar-token`);
    expect(renewed.statusCode).toBe(200);
    const [, , old] = calendarUrl.exec(before.json().calendarUrl)!;
    const [, , token] = calendarUrl.exec(renewed.json().calendarUrl)!;
    expect(await store.bedOfCalendar(id, old!)).toBeUndefined();
    expect(await store.bedOfCalendar(id, token!)).toEqual({ owner: OPEN_OWNER });
    const after = await ask('GET', url);
    expect(after.json().calendarUrl).toBe(renewed.json().calendarUrl);
    expect(after.headers.etag).toBe(renewed.headers.etag);
    const stale = { 'if-match': String(before.headers.etag) };
    expect((await ask('PATCH', url, { cover: 'mulch' }, stale)).statusCode).toBe(412);
    const fresh = { 'if-match': String(renewed.headers.etag) };
    expect((await ask('PATCH', url, { cover: 'mulch' }, fresh)).statusCode).toBe(200);
    expect((await ask('POST', '/v1/beds/nowhere/calendar-token')).statusCode).toBe(404);
  });
});

describe('a bed with many thermometers', () => {
  test('has twenty of them; another is refused, and those it has go on', async () => {
    const url = await newBed();
    const read = (probeDepthCm: number) =>
      ask('POST', `${url}/readings`, {
        medium: 'soil',
        probeDepthCm,
        readings: [
          { at: '2027-05-01T12:00-02:00', value: 11 },
          { at: '2027-05-01T13:00-02:00', value: 12 },
        ],
      });
    for (let depth = 1; depth <= 20; depth++) expect((await read(depth)).statusCode).toBe(200);
    const refused = await read(21);
    expect(refused.json()).toMatchObject({ status: 409, code: 'quota-full', quota: 'thermometers' });
    expect((await read(20)).json()).toMatchObject({ unchanged: 2 });
  });
});

describe('readings', () => {
  test('are kept by thermometer and instant: the last sent counts, and what is the same is counted', async () => {
    const url = await newBed();
    const first = (await ask('POST', `${url}/readings`, hourly(24))).json();
    expect(first).toMatchObject({ added: 24, unchanged: 0, replaced: 0, understood: [{ rows: 24, used: 24 }] });
    const again = hourly(25);
    again.readings[3]!.value = 30;
    expect((await ask('POST', `${url}/readings`, again)).json()).toMatchObject({
      added: 1,
      unchanged: 23,
      replaced: 1,
    });
    const [series] = await seriesOf(url);
    expect(series!.readings).toHaveLength(25);
    expect(series!.readings[3]).toEqual({ at: '2027-05-01T03:00:00-02:00', value: 30 });
  });

  test('are given as they came, one series of each thermometer, and can be sent back', async () => {
    const url = await newBed();
    const sent = [
      hourly(4),
      hourly(4, { probeDepthCm: 10, value: 9.0625 }),
      { ...hourly(4, { value: 14 }), probeDepthCm: undefined },
      { ...hourly(4, { medium: 'air', value: 17 }), probeDepthCm: undefined },
    ];
    for (const one of sent) expect((await ask('POST', `${url}/readings`, one)).statusCode).toBe(200);
    const series = await seriesOf(url);
    expect(series.map(({ medium, probeDepthCm }) => [medium, probeDepthCm])).toEqual([
      ['air', undefined],
      ['soil', undefined],
      ['soil', 5],
      ['soil', 10],
    ]);
    expect(series[3]!.readings.map(({ value }) => value)).toEqual([9.0625, 9.1875, 9.3125, 9.4375]);
    for (const one of series) {
      expect((await ask('POST', `${url}/readings`, one)).json()).toMatchObject({ added: 0, unchanged: 4, replaced: 0 });
    }
    expect(await seriesOf(url)).toEqual(series);
  });

  test('are chosen by medium, depth, the seed, and dates at the place', async () => {
    const url = await newBed();
    await ask('POST', `${url}/readings`, hourly(72));
    await ask('POST', `${url}/readings`, { ...hourly(72), probeDepthCm: undefined });
    await ask('POST', `${url}/readings`, hourly(72, { medium: 'air' }));
    const depths = async (query: string) =>
      (await seriesOf(url, query)).map(({ medium, probeDepthCm }) => [medium, probeDepthCm]);
    expect(await depths('?medium=soil')).toEqual([
      ['soil', undefined],
      ['soil', 5],
    ]);
    expect(await depths('?medium=soil&probeDepthCm=5')).toEqual([['soil', 5]]);
    expect(await depths('?medium=soil&probeDepthCm=seed')).toEqual([['soil', undefined]]);
    expect(await depths('?probeDepthCm=7')).toEqual([]);
    const [day] = await seriesOf(url, '?from=2027-05-02&to=2027-05-02&probeDepthCm=5');
    expect([day!.readings.length, day!.readings[0]!.at, day!.readings.at(-1)!.at]).toEqual([
      24,
      '2027-05-02T00:00:00-02:00',
      '2027-05-02T23:00:00-02:00',
    ]);
  });

  test('come as a file too', async () => {
    const url = await newBed();
    const csv = `time,soil 5 cm (F)\n${[50, 59, 68].map((value, hour) => `2027-05-01T0${hour}:00,${value}`).join('\n')}\n`;
    expect((await ask('POST', `${url}/readings`, csv)).json()).toMatchObject({
      added: 3,
      understood: [{ timeZone: 'Etc/GMT+2', unit: 'F', probeDepthCm: 5 }],
    });
    const [series] = await seriesOf(url, '?precision=rounded');
    expect(series!.readings).toEqual([
      { at: '2027-05-01T00:00:00-02:00', value: 10 },
      { at: '2027-05-01T01:00:00-02:00', value: 15 },
      { at: '2027-05-01T02:00:00-02:00', value: 20 },
    ]);
  });

  test('keep saying what they rest on', async () => {
    const url = await newBed();
    const { readings, ...shape } = hourly(2);
    const sent = { ...shape, readings: [{ ...readings[0]!, basis: 'corrected' }, readings[1]!] };
    await ask('POST', `${url}/readings`, sent);
    expect((await seriesOf(url))[0]!.readings.map(({ basis }) => basis)).toEqual(['corrected', undefined]);
  });

  test('are given page by page, each once, of all thermometers', async () => {
    const url = await newBed();
    const [hours, quarter] = [hourly(240), hourly(240)];
    await ask('POST', `${url}/readings`, hours);
    await ask('POST', `${url}/readings`, {
      ...quarter,
      probeDepthCm: 10,
      readings: quarter.readings.filter((_, i) => i % 6 === 0),
    });
    const seen: Record<string, string[]> = { 5: [], 10: [] };
    let query = '?limit=60';
    let pages = 0;
    for (; pages < 20; pages++) {
      const { series, next }: { series: Series[]; next: string | null } = (
        await ask('GET', `${url}/readings${query}`)
      ).json();
      for (const { probeDepthCm, readings } of series) {
        expect(readings.length).toBeLessThan(60 + 24);
        seen[probeDepthCm!]!.push(...readings.map(({ at }) => at));
      }
      if (next === null) break;
      query = `?limit=60&after=${encodeURIComponent(next)}`;
    }
    expect(pages).toBeGreaterThanOrEqual(3);
    expect([seen[5]!.length, seen[10]!.length]).toEqual([240, 40]);
    expect(seen[5]!.map((at) => Date.parse(at))).toEqual(hours.readings.map(({ at }) => Date.parse(at)));
  });

  test('are deleted from a date to a date, of one thermometer or of all', async () => {
    const url = await newBed();
    await ask('POST', `${url}/readings`, hourly(72));
    await ask('POST', `${url}/readings`, hourly(72, { probeDepthCm: 10 }));
    const deleted = async (query: string) => (await ask('DELETE', `${url}/readings${query}`)).json().deleted;
    expect(await deleted('?from=2027-05-02&to=2027-05-02&probeDepthCm=5')).toBe(24);
    expect(await deleted('?from=2027-05-03')).toBe(48);
    expect(await deleted('')).toBe(24 + 48);
    expect(await seriesOf(url)).toEqual([]);
  });

  test('are told by thermometer: how many, from when to when at the place', async () => {
    const url = await newBed();
    const told = async () => (await ask('GET', `${url}/thermometers`)).json().thermometers;
    expect(await told()).toEqual([]);
    await ask('POST', `${url}/readings`, hourly(72));
    await ask('POST', `${url}/readings`, { medium: 'soil', readings: hourly(24).readings });
    expect(await told()).toEqual([
      { medium: 'soil', readings: 24, from: '2027-05-01', to: '2027-05-01' },
      { medium: 'soil', probeDepthCm: 5, readings: 72, from: '2027-05-01', to: '2027-05-03' },
    ]);
    const { headers } = await ask('GET', `${url}/thermometers`);
    const again = await app.inject({
      url: `${url}/thermometers`,
      headers: { 'if-none-match': headers.etag as string },
    });
    expect(again.statusCode).toBe(304);
    expect((await ask('GET', '/v1/beds/nowhere/thermometers')).statusCode).toBe(404);
  });

  test('of a year by the minute are taken in pieces, all of them', async () => {
    const url = await newBed();
    const start = Date.parse('2026-01-01T02:00Z');
    const rows = Array.from(
      { length: 365 * 1440 },
      (_, i) => `${new Date(start + i * 60_000).toISOString().slice(0, 16)}Z,${(10 + (i % 7) / 10).toFixed(1)}`,
    );
    const sent = await ask('POST', `${url}/readings`, `time,soil 5 cm (C)\n${rows.join('\n')}\n`);
    expect(sent.json()).toMatchObject({ added: 365 * 1440, unchanged: 0, replaced: 0 });
    expect((await seriesOf(url, '?from=2026-12-31'))[0]!.readings).toHaveLength(1440);
  });

  test('stay what they were when the place has another zone, and fall on its dates', async () => {
    await ask('PUT', '/v1/places/moving', { name: 'Moving', ...quillmere });
    const url = await newBed({ ...bed, place: 'moving' });
    await ask('POST', `${url}/readings`, hourly(24));
    await ask('PATCH', '/v1/places/moving', { timeZone: 'Etc/GMT-10' });
    const [series] = await seriesOf(url, '?from=2027-05-01&to=2027-05-01');
    expect(series!.readings).toHaveLength(12);
    expect(series!.readings[0]).toEqual({ at: '2027-05-01T12:00:00+10:00', value: 12.25 });
  });
});
