import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import {
  dailySeries,
  dateAfter,
  daysTo,
  forecastOf,
  hourlySeries,
  keepQuillmere,
  lettuceQuestion,
  post,
  quillmere,
  soilOf,
  startApp,
} from './helper.js';

// The hours behind a forecast, in the one shape that series have.

const app = await startApp();
afterAll(() => app.close());

const HOUR_MS = 3_600_000;

type Hourly = NonNullable<ForecastAnswer['hourly']>;
type Reading = Hourly['readings'][number];

function hourlyOf({ hourly }: ForecastAnswer): Hourly {
  if (!hourly) throw new Error(`The hours are ${hourly}`);
  return hourly;
}

/** Is each an hour after the one before, and none left out? */
const areAnHourApart = (readings: readonly Reading[]): boolean =>
  readings.every(({ at }, i) => i === 0 || Date.parse(at) - Date.parse(readings[i - 1]!.at) === HOUR_MS);

/** An invented warm spring of air. */
const spring = {
  ...dailySeries(
    Array.from({ length: 95 }, (_, day) => [4 + day / 10 + 2 * Math.sin(day), 14 + day / 9 + 3 * Math.sin(day)]),
    { start: '2027-03-01' },
  ),
  medium: 'air',
};

describe('the hours of a forecast', () => {
  it('are left out unless they are asked for', async () => {
    for (const query of ['', 'hourly=false']) {
      expect(await forecastOf(app, lettuceQuestion(), query)).not.toHaveProperty('hourly');
    }
    const { hourly, issuedAt: _, ...rest } = await forecastOf(app, lettuceQuestion(), 'hourly=true');
    const { issuedAt: __, ...without } = await forecastOf(app, lettuceQuestion());
    expect(rest).toEqual(without);
    expect(hourly).toMatchObject({ medium: 'soil', probeDepthCm: without.sowing.depthCm, unit: 'C' });
  });

  it('reach from the midnight before the sowing to the end of the last day, with each day’s own temperatures', async () => {
    const { sowing, daily, ...answer } = await forecastOf(app, lettuceQuestion(), 'hourly=true&precision=full');
    const { readings } = hourlyOf({ sowing, daily, ...answer });
    expect(readings[0]!.at).toBe(`${sowing.date}T00:00:00-02:00`);
    expect(readings.at(-1)!.at).toBe(`${dateAfter(daily.at(-1)!.date, 1)}T00:00:00-02:00`);
    expect(areAnHourApart(readings)).toBe(true);
    expect(readings).toHaveLength(24 * daily.length + 1);
    daily.forEach(({ mean, basis }, day) => {
      const own = readings.slice(24 * day, 24 * day + 25);
      const trapezoid = own.slice(1).reduce((sum, { value }, i) => sum + (value + own[i]!.value) / 2, 0) / 24;
      expect(trapezoid).toBeCloseTo(mean, 2);
      expect(own[12]!.basis).toBe(basis);
    });
  });

  it('are rounded to a tenth, or in full', async () => {
    const values = async (query: string) =>
      hourlyOf(await forecastOf(app, lettuceQuestion({ temperatures: [spring] }), query)).readings;
    const [rounded, full] = [await values('hourly=true'), await values('hourly=true&precision=full')];
    expect(rounded.map(({ value }) => value)).toEqual(full.map(({ value }) => Math.round(10 * value) / 10));
    expect(full.some(({ value }) => Math.round(10 * value) / 10 !== value)).toBe(true);
  });

  it('are those that a question about the soil gives of the same days and depth', async () => {
    const question = { where: { place: quillmere }, temperatures: [spring] };
    const sowing = { date: '2027-05-03', time: '00:00', depthCm: 2 };
    const answer = await forecastOf(app, { ...question, crop: 'lettuce', sowing }, 'hourly=true');
    const dates = { from: sowing.date, to: answer.daily.at(-1)!.date };
    const { series } = await soilOf(app, { ...question, ...dates, depthCm: 2, step: 'hour' });
    // Where the record ends nothing is known of the next hour: the last two readings may differ.
    const inner = ({ readings, ...rest }: Hourly) => ({ ...rest, readings: readings.slice(0, -2) });
    expect(inner(hourlyOf(answer))).toEqual(inner(series as Hourly));
  });

  it('can be sent back as temperatures, and say the same of the sowing', async () => {
    for (const temperatures of [[spring], undefined]) {
      const question = lettuceQuestion(temperatures ? { temperatures } : {});
      const first = await forecastOf(app, question, 'hourly=true&precision=full');
      const again = await forecastOf(app, { ...question, temperatures: [first.hourly] }, 'hourly=true&precision=full');
      expect(daysTo(again.emergence.half)).toBeCloseTo(daysTo(first.emergence.half), 1);
      expect(again.stand.laboratory).toBeCloseTo(first.stand.laboratory, 0);
      expect(again.daily.map(({ basis }) => basis)).toEqual(first.daily.map(({ basis }) => basis));
      again.daily.forEach(({ mean }, day) => {
        expect(Math.abs(mean - first.daily[day]!.mean)).toBeLessThan(0.05);
      });
    }
  });

  it('are null where only means of days are known', async () => {
    const daily = Array.from({ length: 30 }, (_, day) => ({ date: dateAfter('2027-05-01', day), mean: 15 }));
    const answer = await forecastOf(app, lettuceQuestion({ temperatures: [{ medium: 'soil', daily }] }), 'hourly=true');
    expect(answer.hourly).toBeNull();
  });

  it('are numbers from the first one on, where the readings begin on the day of the sowing', async () => {
    const noon = hourlySeries(
      Array.from({ length: 24 * 25 }, (_, hour) => 15 + 5 * Math.sin(hour / 3.8)),
      { start: '2027-05-03T09:00' },
    );
    const { readings } = hourlyOf(await forecastOf(app, lettuceQuestion({ temperatures: [noon] }), 'hourly=true'));
    expect(readings.every(({ value }) => Number.isFinite(value))).toBe(true);
    expect(areAnHourApart(readings)).toBe(true);
  });

  it('are 25 on a day that is an hour longer, and begin at the minute of the sowing', async () => {
    const where = { place: { latitude: 52, longitude: 13, timeZone: 'Europe/Berlin' } };
    const temperatures = [
      dailySeries(
        Array.from({ length: 40 }, () => [8, 16] as const),
        { start: '2027-10-20' },
      ),
    ];
    const ask = (time: string) =>
      forecastOf(app, { crop: 'radish', where, sowing: { date: '2027-10-30', time }, temperatures }, 'hourly=true');
    const { readings } = hourlyOf(await ask('12:00'));
    expect(areAnHourApart(readings)).toBe(true);
    const dayOf = (date: string) => readings.filter(({ at }) => at.startsWith(date)).length;
    expect([dayOf('2027-10-30'), dayOf('2027-10-31'), dayOf('2027-11-01')]).toEqual([24, 25, 24]);
    expect(readings[24]!.at).toBe('2027-10-31T00:00:00+02:00');
    expect(readings[49]!.at).toBe('2027-11-01T00:00:00+01:00');
    expect(hourlyOf(await ask('18:20')).readings[1]!.at).toBe('2027-10-30T01:20:00+02:00');
  });

  it('go with a file as well', async () => {
    const file = `time,soil (C)\n${hourlySeries(
      Array.from({ length: 24 * 20 }, (_, hour) => 15 + 5 * Math.sin(hour / 3.8)),
      { start: '2027-05-02T00:00' },
    )
      .readings.map(({ at, value }) => `${at},${value.toFixed(2)}`)
      .join('\n')}\n`;
    const query = 'crop=lettuce&sowing=2027-05-03&medium=soil&latitude=44&timeZone=Etc/GMT%2B2';
    const { readings } = hourlyOf(await forecastOf(app, file, `${query}&hourly=true`));
    expect(readings[0]).toMatchObject({ at: '2027-05-03T00:00:00-02:00', basis: 'measured' });
  });

  it.each(['maybe', '1', ''])('are refused where it is not said whether they are wanted: "%s"', async (hourly) => {
    const refused = await post(app, `/v1/forecasts?hourly=${hourly}`, lettuceQuestion());
    expect(refused.statusCode).toBe(422);
    expect(refused.json()).toMatchObject({ code: 'not-understood', errors: [{ parameter: 'hourly' }] });
    expect(refused.json().detail).toContain('hourly must be one of true, false');
  });
});

describe('the hours of a link', () => {
  beforeAll(() => keepQuillmere(app));

  it.each([
    ['from past years', 'radish'],
    ['with what counts have taught', 'lettuce'],
  ])('come back from the thread for long work: %s', async (_, crop) => {
    const response = await app.inject(`/v1/beds/north/forecast?crop=${crop}&sowing=2027-08-04&hourly=true`);
    expect(response.statusCode, response.body).toBe(200);
    const answer = response.json<ForecastAnswer>();
    const { readings, probeDepthCm } = hourlyOf(answer);
    expect(probeDepthCm).toBe(answer.sowing.depthCm);
    expect(readings).toHaveLength(24 * answer.daily.length + 1);
    expect(readings.at(-1)!.basis).toBe('past-years');
    const back = await post(app, '/v1/forecasts', {
      crop,
      where: { place: quillmere },
      sowing: { date: '2027-08-04' },
      temperatures: [answer.hourly],
    });
    expect(back.statusCode, back.body).toBe(200);
  });

  it('have a tag of their own, and make no other picture', async () => {
    const url = '/v1/beds/north/forecast?crop=radish&sowing=2027-08-04';
    const [plain, hourly] = [await app.inject(url), await app.inject(`${url}&hourly=true`)];
    expect(plain.json()).not.toHaveProperty('hourly');
    expect(hourly.headers.etag).not.toBe(plain.headers.etag);
    const ask = (more: string, tag: string | undefined, accept = 'application/json') =>
      app.inject({ url: url + more, headers: { accept, ...(tag ? { 'if-none-match': tag } : {}) } });
    expect((await ask('&hourly=true', plain.headers.etag)).statusCode).toBe(200);
    expect((await ask('&hourly=true', hourly.headers.etag)).statusCode).toBe(304);
    const pictures = [await ask('', undefined, 'image/svg+xml'), await ask('&hourly=true', undefined, 'image/svg+xml')];
    expect(pictures.map(({ statusCode }) => statusCode)).toEqual([200, 200]);
    expect(pictures[1]!.body).toBe(pictures[0]!.body);
  });
});
