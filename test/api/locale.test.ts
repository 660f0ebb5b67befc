import { afterAll, describe, expect, test } from 'vitest';
import type { SowingAnswer } from '../../src/contract/sowings.js';
import type { WeekAnswer } from '../../src/contract/this-week.js';
import type { WindowReply } from '../../src/contract/windows.js';
import { askerOf, dateAfter, post, startApp } from './helper.js';

// A town's name, or a coordinate, is enough: nothing is kept or sent here. Today is 3 August 2027.

const app = await startApp();
const ask = askerOf(app);
afterAll(() => app.close());

const get = async <Answer>(url: string): Promise<Answer> => {
  const answer = await ask('GET', url);
  expect(answer.statusCode, answer.body).toBe(200);
  return answer.json();
};
const refused = async (
  url: string,
): Promise<{ code: string; errors: { parameter?: string; choices?: { value: string }[] }[] }> => {
  const answer = await ask('GET', url);
  expect(answer.statusCode, answer.body).toBe(422);
  return answer.json();
};

describe('sowing windows of a town', () => {
  test('rest on typical years, and say of which stations and how far off', async () => {
    const windows = await get<WindowReply>(
      '/v1/sowing-windows?crop=lettuce&near=Ithaca,%20New%20York,%20US&dates=false',
    );
    expect(windows.place).toMatchObject({ near: 'Ithaca, New York, US', timeZone: 'America/New_York' });
    expect(windows.climate).toMatchObject({ basis: 'climate-table', typicalYears: 30, tunedBy: null });
    expect(windows.climate!.stations.length).toBeGreaterThan(2);
    expect(windows.climate!.plusMinusC).toBeGreaterThan(0.3);
    expect(windows.years).toEqual({ from: null, to: null, count: 0 });
    expect(windows.assumptions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['climate-table', 'typical-years']),
    );
    // In August lettuce is sown for autumn in New York State (Cornell: to about mid August; common practice).
    expect(windows.spans[0]!.grade).not.toBe('poor');
    expect(windows.windows.some(({ from }) => from > '2028-03-15' && from < '2028-05-05')).toBe(true);
  });

  test('open later in spring where the grower knows of a later frost', async () => {
    const ask = (more: string) =>
      get<WindowReply>(`/v1/sowing-windows?crop=snap-bean&near=Ithaca,%20NY&dates=false&from=2028-01-01${more}`);
    const usual = await ask('');
    const late = await ask('&lastFrostAround=05-25');
    expect(late.climate!.tunedBy).toMatchObject({ lastFrostAround: '05-25' });
    expect(late.climate!.lastSpringFrost!.risk50! > usual.climate!.lastSpringFrost!.risk50!).toBe(true);
    expect(late.windows[0]!.from > usual.windows[0]!.from).toBe(true);
  });

  test('in the southern hemisphere lie half a year off', async () => {
    const { ways } = await get<WindowReply>(
      '/v1/sowing-windows?crop=sweet-corn&latitude=-33.9&longitude=18.4&dates=false',
    );
    const [direct] = ways.filter(({ method }) => method === 'direct');
    expect(direct!.sow.from >= '2027-08-15' && direct!.sow.from <= '2027-11-30', JSON.stringify(direct)).toBe(true);
  });

  test('are the same by link and by body, and the same each time', async () => {
    const body = { crop: 'carrot', where: { place: { near: 'Ithaca, NY' } }, dates: false };
    const posted = await post(app, '/v1/sowing-windows', body);
    expect(posted.statusCode, posted.body).toBe(200);
    const linked = await get<WindowReply>('/v1/sowing-windows?crop=carrot&near=Ithaca,%20NY&dates=false');
    expect({ ...posted.json(), issuedAt: '' }).toEqual({ ...linked, issuedAt: '' });
  });
});

describe('the other questions of a town', () => {
  test('forecasts rest on it, with ranges, and name the climate as the basis of each day', async () => {
    const answer = await get<{
      emergence: { half: { date: string; range: { from: string; to: string } } };
      daily: { basis: string }[];
      climate: { basis: string };
    }>('/v1/forecasts?crop=carrot&sowing=2027-08-05&near=Ithaca,%20NY');
    const { half } = answer.emergence;
    expect(half.range.from <= half.date && half.date <= half.range.to && half.range.from < half.range.to).toBe(true);
    expect(answer.climate.basis).toBe('climate-table');
    expect(new Set(answer.daily.map(({ basis }) => basis))).toEqual(new Set(['climate-table']));
  });

  test('soil temperatures of July lie above those of January, by the climate', async () => {
    const meanOf = async (from: string, to: string): Promise<number> => {
      const { series } = await get<{ series: { daily: { mean: number; basis: string }[] } }>(
        `/v1/soil-temperatures?near=Ithaca,%20NY&from=${from}&to=${to}`,
      );
      expect(series.daily.every(({ basis }) => basis === 'climate-table')).toBe(true);
      return series.daily.reduce((sum, { mean }) => sum + mean, 0) / series.daily.length;
    };
    expect(await meanOf('2027-07-01', '2027-07-31')).toBeGreaterThan(18);
    expect(await meanOf('2027-01-01', '2027-01-31')).toBeLessThan(4);
  });

  test('frost dates', async () => {
    const frost = await get<{ years: object; lastSpringFrost: { risk50: string }; climate: object }>(
      '/v1/frost-dates?near=Ithaca,%20NY',
    );
    // Ithaca's own record has its median last 0 °C in the first half of May (NOAA normals, from memory).
    expect(frost.lastSpringFrost.risk50 > '04-15' && frost.lastSpringFrost.risk50 < '05-20').toBe(true);
    expect(frost.years).toEqual({ from: null, to: null });
  });

  test('the week of a town', async () => {
    const week = await get<WeekAnswer>('/v1/this-week?near=Ithaca,%20NY&crop=lettuce,radish,tomato,spinach');
    expect(week.climate!.basis).toBe('climate-table');
    expect([...week.sow, ...week.soon, ...week.notNow].map(({ crop }) => crop).sort()).toEqual([
      'lettuce',
      'radish',
      'spinach',
      'tomato',
    ]);
    // Radish in August, and no tomato: common practice, no source.
    expect(week.sow.map(({ crop }) => crop)).toContain('radish');
    expect(week.notNow.map(({ crop }) => crop)).toContain('tomato');
  });
});

describe('a place that is not clear', () => {
  test('is asked about: which of several towns', async () => {
    const problem = await refused('/v1/sowing-windows?crop=lettuce&near=Portland&dates=false');
    expect(problem.code).toBe('choose-locality');
    const { choices, parameter } = problem.errors[0]!;
    expect(parameter).toBe('near');
    expect(choices!.map(({ value }) => value)).toContain('Portland, Maine, US');
    const chosen = await get<WindowReply>(
      `/v1/sowing-windows?crop=lettuce&near=${encodeURIComponent('Portland, Maine, US')}&dates=false`,
    );
    expect(chosen.place!.latitude).toBeCloseTo(43.66, 1);
  });

  test('or what was misspelt', async () => {
    const problem = await refused('/v1/frost-dates?near=Itaca,%20NY');
    expect(problem.code).toBe('unknown-locality');
  });

  test('a forgotten minus is warned of, and where the place would be with it', async () => {
    const { warnings } = await get<WindowReply>(
      '/v1/sowing-windows?crop=lettuce&latitude=42.4&longitude=76.5&timeZone=America/New_York&dates=false',
    );
    expect(warnings).toContainEqual(
      expect.objectContaining({
        code: 'zone-against-longitude',
        params: expect.objectContaining({ mirroredLongitude: -76.5 }),
      }),
    );
  });

  test('in the middle of an ocean has no climate', async () => {
    expect((await refused('/v1/sowing-windows?crop=lettuce&latitude=-48&longitude=-123&dates=false')).code).toBe(
      'no-climate-near',
    );
  });

  test('climate=own leaves the table out', async () => {
    const answer = await ask('GET', '/v1/sowing-windows?crop=lettuce&near=Ithaca,%20NY&climate=own');
    expect([answer.statusCode, answer.json().code]).toEqual([422, 'no-past-years']);
  });

  test.each([
    ['/v1/sowing-windows?crop=lettuce', 'near'],
    ['/v1/forecasts?crop=lettuce&sowing=2027-08-05', 'near'],
    ['/v1/soil-temperatures?depthCm=5', 'near'],
    ['/v1/frost-dates', 'near'],
    ['/v1/this-week', 'near'],
    ['/v1/sowing-windows?crop=lettuce&latitude=42', undefined],
    ['/v1/sowing-windows?crop=lettuce&near=Ithaca,%20NY&lastFrostAround=13-40', 'lastFrostAround'],
  ])('%s is refused in words', async (url, parameter) => {
    const problem = await refused(url);
    if (parameter) expect(problem.errors[0]).toMatchObject({ parameter });
  });
});

describe('a place that is kept by its town', () => {
  const put = async (id: string, place: object) => {
    const answer = await ask('PUT', `/v1/places/${id}`, place);
    expect(answer.statusCode, answer.body).toBeLessThan(300);
    return answer.json();
  };

  test('has the name, coordinates, height and zone of it, and answers from the climate table', async () => {
    const place = await put('ithaca', { near: 'Ithaca, New York, US' });
    expect(place).toMatchObject({ name: 'Ithaca', timeZone: 'America/New_York', lastFrostAround: null });
    expect(place.elevationM).toBeGreaterThan(100);
    await ask('PUT', '/v1/beds/plot', { place: 'ithaca', name: 'Plot' });
    const windows = await get<WindowReply>('/v1/beds/plot/sowing-windows?crop=lettuce&dates=false');
    expect(windows.climate!.basis).toBe('climate-table');
    const named = await get<WindowReply>('/v1/sowing-windows?crop=lettuce&near=Ithaca,%20New%20York,%20US&dates=false');
    expect(windows.spans).toEqual(named.spans);
    // It is edited as it is answered: GET, edit, PUT.
    const kept = (await ask('GET', '/v1/places/ithaca?as=kept')).json();
    expect(await put('ithaca', { ...kept, name: 'My plot' })).toMatchObject({
      name: 'My plot',
      latitude: kept.latitude,
    });
  });

  test('tells of a row in it when it comes up, is ripe, and until when it may be sown again', async () => {
    const sown = await ask('PUT', '/v1/sowings/radishes', {
      bed: 'plot',
      crop: 'radish',
      date: '2027-08-01',
      seeds: 100,
    });
    expect(sown.statusCode, sown.body).toBe(201);
    const row = await get<SowingAnswer>('/v1/sowings/radishes');
    expect(row.warnings.map(({ code }) => code)).not.toContain('no-readings');
    expect(row.expected).toBe('not-yet');
    expect(row.harvest!.from > '2027-08-20' && row.harvest!.from < '2027-09-30', JSON.stringify(row.harvest)).toBe(
      true,
    );
    expect(row.resowBy! > '2027-08-03' && row.resowBy! < '2027-10-01', row.resowBy!).toBe(true);
  });

  test('goes by the last frost that its grower knows', async () => {
    const before = await get<{ climate: object; lastSpringFrost: { risk50: string } }>('/v1/places/ithaca/frost-dates');
    const told = await ask('PATCH', '/v1/places/ithaca', { lastFrostAround: '05-20' });
    expect([told.statusCode, told.json().lastFrostAround]).toEqual([200, '05-20']);
    const after = await get<{ lastSpringFrost: { risk50: string } }>('/v1/places/ithaca/frost-dates');
    expect(after.lastSpringFrost.risk50 > before.lastSpringFrost.risk50).toBe(true);
    const windows = await get<WindowReply>('/v1/beds/plot/sowing-windows?crop=lettuce&dates=false');
    expect(windows.climate!.tunedBy).toMatchObject({ lastFrostAround: '05-20' });
    const untrue = await ask('PATCH', '/v1/places/ithaca', { lastFrostAround: '08-20' });
    expect([untrue.statusCode, untrue.json().errors[0].pointer]).toEqual([422, '#/lastFrostAround']);
  });

  test('has its own years tuned as well', async () => {
    const daily = Array.from({ length: 365 * 5 }, (_, day) => {
      const level = 9 - 13 * Math.cos((2 * Math.PI * (day - 20)) / 365.25) + 3 * Math.sin(day / 4.1);
      return { date: dateAfter('2022-01-01', day), min: level - 5, max: level + 5 };
    });
    await put('valley', { near: 'Ithaca, New York, US', name: 'Valley' });
    const kept = await ask('POST', '/v1/places/valley/air', { medium: 'air', unit: 'C', daily });
    expect(kept.statusCode, kept.body).toBeLessThan(300);
    const own = await get<WindowReply>('/v1/places/valley/sowing-windows?crop=snap-bean&dates=false&from=2028-01-01');
    expect(own.climate).toMatchObject({ basis: 'past-years', tunedBy: null });
    const told = await ask('PATCH', '/v1/places/valley', { lastFrostAround: '04-28' });
    expect(told.statusCode, told.body).toBe(200);
    const tuned = await get<WindowReply>('/v1/places/valley/sowing-windows?crop=snap-bean&dates=false&from=2028-01-01');
    expect(tuned.climate).toMatchObject({ basis: 'past-years', tunedBy: { lastFrostAround: '04-28' } });
    expect(tuned.climate!.tunedBy!.minimaMovedC).toBeLessThan(0);
    expect(tuned.windows[0]!.from > own.windows[0]!.from).toBe(true);
    expect(tuned.assumptions.map(({ code }) => code)).toContain('frost-date-told');
  });

  test('is brought toward a year of its own air, too short to judge by', async () => {
    const from = '2026-07-01';
    const daily = Array.from({ length: 380 }, (_, day) => {
      const level = 5 - 13 * Math.cos((2 * Math.PI * (day + 161)) / 365.25);
      return { date: dateAfter(from, day), min: level - 5, max: level + 5 };
    });
    await put('upland', { near: 'Ithaca, New York, US', name: 'Upland' });
    const before = await get<WindowReply>('/v1/places/upland/sowing-windows?crop=lettuce&dates=false&from=2028-01-01');
    const kept = await ask('POST', '/v1/places/upland/air', { medium: 'air', unit: 'C', daily });
    expect(kept.statusCode, kept.body).toBeLessThan(300);
    const after = await get<WindowReply>('/v1/places/upland/sowing-windows?crop=lettuce&dates=false&from=2028-01-01');
    expect(after.climate!.basis).toBe('climate-table');
    expect(after.assumptions.map(({ code }) => code)).toContain('climate-own-air');
    // That year was colder than Ithaca's.
    expect(after.climate!.lastSpringFrost!.risk50! > before.climate!.lastSpringFrost!.risk50!).toBe(true);
  });

  test('asks which town is meant', async () => {
    const answer = await ask('PUT', '/v1/places/portland', { near: 'Portland' });
    expect([answer.statusCode, answer.json().code, answer.json().errors[0].pointer]).toEqual([
      422,
      'choose-locality',
      '#/near',
    ]);
  });
});
