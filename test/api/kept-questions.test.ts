import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, type PlainDate } from '../../src/basics/calendar.js';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import type { SoilAnswer } from '../../src/contract/soil.js';
import type { WindowAnswer } from '../../src/contract/windows.js';
import type { AirDay, BedFields, PlaceFields, Store } from '../../src/garden/store/store.js';
import { keyring } from '../../src/http/auth/keys.js';
import { openStore } from '../../src/storage/open-store.js';
import { daysTo, NOW, post, quillmere, startApp } from './helper.js';

const TODAY = NOW.slice(0, 10) as PlainDate;
const OWNER = 'gardener';

const place: PlaceFields = {
  name: 'Quillmere',
  latitude: quillmere.latitude,
  longitude: quillmere.longitude,
  elevationM: null,
  timeZone: quillmere.timeZone,
  annualRainMm: 800,
  lastFrostAround: null,
  firstFrostAround: null,
  sources: [],
};
const bed: BedFields = {
  place: 'quillmere',
  name: 'North bed',
  kind: 'open-ground',
  cover: 'bare',
  moisture: 'moist',
  shadePercent: 0,
  roomC: null,
};

/** Invented weather of some years up to a date: seasons, with swings of days and weeks in them that differ from year to year. */
function inventedAir(years: number, until: PlainDate = TODAY): AirDay[] {
  const n = Math.round(365.25 * years);
  return Array.from({ length: n }, (_, i) => {
    const date = addDays(until, i - n);
    const day = Math.round((Date.parse(date) - Date.parse('2000-01-01')) / 86_400_000);
    const mean =
      11 - 8 * Math.cos((2 * Math.PI * (day - 25)) / 365.25) + 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 17.9);
    return { date, min: mean - 5, mean: null, max: mean + 5 };
  });
}

describe('what is kept answers', () => {
  let store: Store;
  let app: FastifyInstance;
  const get = (url: string, headers = {}) => app.inject({ url, headers });

  beforeAll(async () => {
    store = await openStore('sqlite::memory:');
    app = await startApp({ store });
    await store.putPlace(OWNER, 'quillmere', place);
    await store.putBed(OWNER, 'north', bed);
    await store.putAir(OWNER, 'quillmere', inventedAir(6));
  });
  afterAll(async () => {
    await app.close();
    await store.close();
  });

  it('a forecast as a link, from past years and today’s soil; the same as the same question posted', async () => {
    const link = await get('/v1/beds/north/forecast?crop=carrot&sowing=2027-08-04&seeds=200');
    expect(link.statusCode, link.body).toBe(200);
    const posted = await post(app, '/v1/forecasts', {
      crop: 'carrot',
      where: { bed: 'north' },
      sowing: { date: '2027-08-04', seeds: 200 },
    });
    const { issuedAt: _, ...answer } = link.json<ForecastAnswer>();
    expect(posted.json()).toMatchObject(answer);
    expect(answer.daily.at(-1)!.basis).toBe('past-years');
    expect(answer.assumptions.map(({ code }) => code)).toContain('past-years');
    // Last winter's snow is of no concern in August.
    expect(answer.warnings.map(({ code }) => code)).not.toContain('snow-supposed');
    const { half } = answer.emergence;
    if ('why' in half) throw new Error(half.why);
    expect(half.range.from < half.date && half.date < half.range.to!).toBe(true);
  });

  it('sowing windows of a bed and of a place described as that bed, alike', async () => {
    const query = 'crop=lettuce&from=2027-08-03&to=2027-12-01';
    const [ofBed, ofPlace] = await Promise.all([
      get(`/v1/beds/north/sowing-windows?${query}`),
      get(`/v1/places/quillmere/sowing-windows?${query}&where.bed.moisture=moist`),
    ]);
    const [bedAnswer, placeAnswer] = [ofBed.json<WindowAnswer>(), ofPlace.json<WindowAnswer>()];
    expect(ofBed.statusCode, ofBed.body).toBe(200);
    expect(placeAnswer.windows).toEqual(bedAnswer.windows);
    expect(bedAnswer.years.count).toBeGreaterThanOrEqual(5);
    expect(bedAnswer.best).not.toBeNull();
  });

  it('how warm the soil is, with the doubt of the weather ahead', async () => {
    const response = await get('/v1/beds/north/soil-temperatures?depthCm=2&from=2027-07-30&to=2027-08-20');
    const { series } = response.json<SoilAnswer>();
    if (!('daily' in series)) throw new Error('no days');
    const [now, later] = [series.daily[2]!, series.daily.at(-1)!];
    expect(later.basis).toBe('past-years');
    expect(later.plusMinus).toBeGreaterThan(now.plusMinus);
  });

  it('under a tag that holds until something is kept anew, another question is asked, or the day is over', async () => {
    const url = '/v1/beds/north/forecast?crop=radish&sowing=2027-08-04';
    const first = await get(url);
    const tag = first.headers.etag as string;
    expect((await get(url, { 'if-none-match': tag })).statusCode).toBe(304);
    expect((await get(`${url}&seeds=10`, { 'if-none-match': tag })).statusCode).toBe(200);
    await store.putAir(OWNER, 'quillmere', [{ date: addDays(TODAY, -1), min: 20, mean: null, max: 30 }]);
    const anew = await get(url, { 'if-none-match': tag });
    expect(anew.statusCode).toBe(200);
    expect(anew.headers.etag).not.toBe(tag);
  });

  it('with what is sent laid over it: a probe that reads warmer than the air tells, and all comes sooner', async () => {
    const question = { crop: 'onion', where: { bed: 'north' }, sowing: { date: '2027-08-03' } };
    const plain = (await post(app, '/v1/forecasts', question)).json<ForecastAnswer>();
    const measured = plain.daily[0]!;
    const daily = Array.from({ length: 7 }, (_, back) => ({
      date: addDays(TODAY, back - 7),
      min: measured.min + 3,
      max: measured.max + 3,
    }));
    const warmer = (
      await post(app, '/v1/forecasts', { ...question, temperatures: [{ medium: 'soil', daily }] })
    ).json<ForecastAnswer>();
    expect(daysTo(warmer.emergence.half)).toBeLessThan(daysTo(plain.emergence.half));
  });

  it('readings that the bed keeps teach its model as those sent do', async () => {
    await store.putBed(OWNER, 'south', { ...bed, name: 'South bed' });
    const hours = Float64Array.from(
      { length: 24 * 7 },
      (_, hour) => Date.parse(`${addDays(TODAY, -7)}T02:00Z`) + hour * 3_600_000,
    );
    const valueC = hours.map((_, hour) => 24 + 4 * Math.sin((2 * Math.PI * (hour - 9)) / 24));
    await store.putReadings(
      OWNER,
      'south',
      { medium: 'soil', probeDepthCm: 5 },
      { atMs: hours, valueC, basis: new Uint8Array(hours.length) },
    );
    const kept = (await get('/v1/beds/south/forecast?crop=onion&sowing=2027-08-03')).json<ForecastAnswer>();
    const sent = (
      await post(app, '/v1/forecasts', {
        crop: 'onion',
        where: { bed: 'north' },
        sowing: { date: '2027-08-03' },
        temperatures: [
          {
            medium: 'soil',
            probeDepthCm: 5,
            readings: [...hours].map((at, i) => ({ at: new Date(at).toISOString(), value: valueC[i]! })),
          },
        ],
      })
    ).json<ForecastAnswer>();
    expect(kept.emergence).toEqual(sent.emergence);
  });

  it('a refusal without the tag of the answer it stands for, however often it is asked', async () => {
    const url = '/v1/beds/north/forecast?crop=radish&sowing=1990-01-01';
    const refused = await get(url);
    expect([refused.statusCode, refused.headers.etag]).toEqual([422, undefined]);
    const good = await get('/v1/beds/north/forecast?crop=radish&sowing=2027-08-04');
    expect((await get(url, { 'if-none-match': '*' })).statusCode).toBe(422);
    expect(good.headers.etag).toMatch(/^W\//);
  });

  it('from past years though the coming days lie too far off to follow on them', async () => {
    await store.putPlace(OWNER, 'gap', place);
    await store.putBed(OWNER, 'gap', { ...bed, place: 'gap' });
    await store.putAir(OWNER, 'gap', inventedAir(6));
    const urls = [
      '/v1/beds/gap/soil-temperatures',
      '/v1/beds/gap/forecast?crop=carrot&sowing=2027-08-04',
      '/v1/beds/gap/sowing-windows?crop=carrot&from=2027-08-03&to=2027-10-01',
    ];
    const without = await Promise.all(urls.map((url) => get(url)));
    for (const far of ['2027-10-20', '2029-05-01', '2199-12-31'] as PlainDate[]) {
      await store.putComingDays(OWNER, 'gap', { atMs: 0, days: [{ date: far, min: 9, mean: null, max: 19 }] });
      for (const [i, url] of urls.entries()) {
        const { statusCode, body } = await get(url);
        expect(statusCode, body).toBe(200);
        expect(JSON.parse(body)).toMatchObject({ assumptions: without[i]!.json().assumptions });
      }
    }
  });

  it('nothing of what is not there, or is another owner’s', async () => {
    expect((await get('/v1/beds/nowhere/forecast?crop=onion&sowing=2027-08-03')).json()).toMatchObject({
      status: 404,
      code: 'not-found',
    });
    expect((await get('/v1/places/nowhere/sowing-windows?crop=onion')).json()).toMatchObject({ status: 404 });
    const unknown = await post(app, '/v1/forecasts', {
      crop: 'onion',
      where: { bed: 'nowhere' },
      sowing: { date: '2027-08-03' },
    });
    expect(unknown.json()).toMatchObject({ status: 422, code: 'unknown-bed', errors: [{ pointer: '#/where/bed' }] });
    const keyed = await startApp({ store, findOwner: keyring(new Map([['theirs', 'neighbour']])) });
    const theirs = await keyed.inject({
      url: '/v1/beds/north/forecast?crop=onion&sowing=2027-08-03',
      headers: { authorization: 'Bearer theirs' },
    });
    expect(theirs.statusCode).toBe(404);
    await keyed.close();
  });

  it('a place of which nothing is kept says what to send; with normals it answers, and says how little that is', async () => {
    await store.putPlace(OWNER, 'bare', { ...place, name: 'Bare' });
    const nothing = await get('/v1/places/bare/sowing-windows?crop=lettuce');
    expect(nothing.json()).toMatchObject({ status: 422, code: 'no-readings' });
    expect(nothing.json().detail).toContain('/v1/places/bare/air');
    const meanMinC = [0, 0, 2, 4, 8, 11, 13, 13, 10, 7, 3, 1];
    await store.putNormals(OWNER, 'bare', { meanMinC, meanMaxC: meanMinC.map((low) => low + 9) });
    // A bean, which is tender and still ready before frost; a tomato sown in place would not be, under these normals.
    const windows = (
      await get('/v1/places/bare/sowing-windows?crop=snap-bean&from=2028-01-01&to=2028-12-30')
    ).json<WindowAnswer>();
    expect(windows.years).toEqual({ from: null, to: null, count: 0 });
    expect(windows.windows[0]!.sureness).toBeNull();
    expect(windows.dates.every(({ sureness }) => sureness === null)).toBe(true);
    expect(windows.windows[0]!.from > '2028-04-15').toBe(true);
    expect(windows.assumptions.map(({ code }) => code)).toContain('normals');
    for (const from of ['1900-01-01', '2199-06-01']) {
      const far = await get(`/v1/places/bare/sowing-windows?crop=lettuce&from=${from}&to=${from.slice(0, 4)}-12-20`);
      expect(far.statusCode, far.body).toBe(200);
    }
    const forecast = await post(app, '/v1/forecasts', {
      crop: 'lettuce',
      where: { place: 'bare' },
      sowing: { date: '2027-08-10' },
    });
    expect(forecast.statusCode, forecast.body).toBe(200);
    expect(forecast.json<ForecastAnswer>().assumptions.map(({ code }) => code)).toContain('normals');
  });
});
