import { mkdtemp, rename, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PlainDate } from '../../src/basics/calendar.js';
import { RequestError } from '../../src/basics/errors.js';
import type { SowingAnswer } from '../../src/contract/sowings.js';
import { inventedAir } from '../../src/demo/air.js';
import { chance } from '../../src/demo/chance.js';
import { exampleNormals } from '../../src/http/question/examples.js';
import { openStore } from '../../src/storage/open-store.js';
import type { WorkerPool } from '../../src/worker/worker-pool.js';
import { askerOf, dateAfter, keepQuillmere, patientPool, startApp } from './helper.js';

/** Noon at Quillmere on a date. */
const noonOn = (date: string): Date => new Date(`${date}T14:00:00Z`);

let today = noonOn('2027-05-20');
let app: FastifyInstance;
let ask: ReturnType<typeof askerOf>;

beforeAll(async () => {
  app = await startApp({ clock: () => today });
  ask = askerOf(app);
  await ask('PUT', '/v1/places/quillmere', {
    name: 'Quillmere Allotment Society',
    latitude: 44,
    longitude: -30,
    timeZone: 'Etc/GMT+2',
  });
  // A room at one temperature is the published chart's own case.
  await ask('PUT', '/v1/beds/cool-room', { place: 'quillmere', name: 'Cool room', kind: 'indoors', roomC: 15 });
  await ask('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed' });
});
afterAll(() => app.close());

const SOWN = '2027-05-03';

/** An onion sowing in the cool room: half up after 7 days by the handbook's table (Harrington and Minges 1954). */
async function sown(id: string, more: object = {}): Promise<SowingAnswer> {
  const fields = { bed: 'cool-room', crop: 'onion', date: SOWN, seeds: 200, ...more };
  const response = await ask('PUT', `/v1/sowings/${id}`, fields);
  if (response.statusCode >= 300) throw new Error(response.body);
  return response.json();
}

async function standing(id: string): Promise<SowingAnswer> {
  return (await ask('GET', `/v1/sowings/${id}`)).json();
}

/** Counts so many seedlings some days after the sowing, on that day. */
async function count(id: string, daysAfter: number, seedlings: number, more: object = {}): Promise<void> {
  const date = dateAfter(SOWN, daysAfter);
  const response = await ask('PUT', `/v1/sowings/${id}/counts/${date}`, { seedlings, ...more });
  if (response.statusCode >= 300) throw new Error(response.body);
}

describe('where a sowing should be', () => {
  test.each([
    ['2027-05-05', 'not-yet'],
    ['2027-05-10', 'due'],
    ['2027-05-20', 'due'],
    ['2027-06-10', 'past'],
  ])('on %s onion sown on 3 May in a room at 15 °C is %s', async (date, expected) => {
    today = noonOn(date);
    const { forecast, ...sowing } = await sown(`on-${date}`);
    expect(sowing.expected).toBe(expected);
    const { first, half, most } = forecast!.emergence as {
      [K in 'first' | 'half' | 'most']: { date: string; range: { from: string }; inBeds: { to: string } };
    };
    expect(half.date).toBe('2027-05-10');
    expect(expected === 'not-yet').toBe(date < first.range.from);
    expect(expected === 'past').toBe(date > most.inBeds.to);
  });

  test('a sowing whose temperatures are not known is kept all the same, and says what is missing', async () => {
    today = noonOn('2027-05-20');
    const sowing = await sown('no-air', { bed: 'north' });
    expect(sowing).toMatchObject({ forecast: null, expected: null, judgement: null, seeds: 200 });
    expect(sowing.warnings[0]!.text).toContain('/v1/places/quillmere/air');
  });
});

describe('how a sowing stands', () => {
  test('without a count nothing is guessed: it waits, and once due it asks for a count', async () => {
    today = noonOn('2027-05-05');
    expect((await sown('uncounted')).judgement).toMatchObject({ verdict: 'wait', odds: null });
    today = noonOn('2027-05-14');
    const { judgement, observed, toDo } = await standing('uncounted');
    expect([judgement!.verdict, judgement!.odds, observed]).toEqual(['count-now', null, null]);
    expect(toDo[0]!.task).toBe('count');
  });

  test('rows that stay bare are late first, and lost only when hardly any slow one would be as bare', async () => {
    today = noonOn('2027-06-30');
    await sown('bare');
    const verdicts: string[] = [];
    for (let day = 4; day <= 40; day += 4) {
      today = noonOn(dateAfter(SOWN, day));
      await count('bare', day, 0);
      verdicts.push((await standing('bare')).judgement!.verdict);
    }
    expect(verdicts.slice(0, 4)).not.toContain('lost');
    expect(verdicts.at(-1)).toBe('lost');
    const { toDo, forecast, judgement } = await standing('bare');
    expect(toDo[0]!.task).toBe('sow-again');
    expect(judgement!.odds!.lost).toBeGreaterThanOrEqual(0.95);
    expect(forecast!.stand.field.to).toBe(0);
  });

  test('a row is not called lost before the day on which most were looked for, however bare it is', async () => {
    for (const crop of ['onion', 'parsley', 'carrot', 'pepper']) {
      const id = `early-${crop}`;
      today = noonOn(SOWN);
      const { most } = (await sown(id, { crop, bed: 'cool-room' })).forecast!.emergence as {
        most: { date: string };
      };
      for (let day = 4; dateAfter(SOWN, day) <= most.date; day += 2) {
        today = noonOn(dateAfter(SOWN, day));
        await count(id, day, 0);
        expect((await standing(id)).judgement!.verdict, `${crop} on day ${day}`).not.toBe('lost');
      }
    }
  });

  test('a row that was full and is bare now was eaten, and does not wait for more', async () => {
    today = noonOn('2027-05-28');
    await sown('eaten');
    await count('eaten', 18, 110);
    await count('eaten', 24, 6);
    const { judgement } = await standing('eaten');
    expect(judgement!.verdict).toBe('thin');
    expect(judgement!.text).toMatch(
      /^6 seedlings were counted on 27 May 2027, and 110 on 21 May 2027\. Something has taken them/,
    );
  });

  test('enough seedlings are good, a third of the least that beds give is thin', async () => {
    today = noonOn('2027-05-28');
    await sown('many');
    await count('many', 20, 90);
    expect(await standing('many')).toMatchObject({ observed: 'enough', judgement: { verdict: 'good' } });
    // Lettuce beds give a fifth of a laboratory's stand at least (Bralewski and Holubowicz 2008).
    await sown('few', { crop: 'lettuce' });
    for (const day of [16, 20, 25]) await count('few', day, 12);
    expect(await standing('few')).toMatchObject({ observed: 'some', judgement: { verdict: 'thin' } });
  });

  test('what heat leaves is not good because heat let nothing be hoped for', async () => {
    today = noonOn('2027-05-23');
    await ask('PUT', '/v1/beds/hot-room', { place: 'quillmere', name: 'Hot room', kind: 'indoors', roomC: 35 });
    await sown('hot', { bed: 'hot-room', crop: 'lettuce' });
    for (const day of [6, 12, 20]) await count('hot', day, 1);
    const { forecast, observed, judgement } = await standing('hot');
    expect(forecast!.stand.laboratory).toBe(0);
    expect([observed, judgement!.verdict === 'good']).toEqual(['some', false]);
  });

  test('one wild count among right ones changes little', async () => {
    today = noonOn('2027-05-28');
    for (const [id, wild] of [
      ['calm', 60],
      ['wild', 199],
    ] as const) {
      await sown(id);
      for (const [day, seedlings] of [
        [9, 2],
        [13, 25],
        [17, 55],
        [21, wild],
        [25, 61],
      ] as const)
        await count(id, day, seedlings);
    }
    const [calm, wild] = [(await standing('calm')).learned!, (await standing('wild')).learned!];
    expect(wild.standFactor!.middle).toBeCloseTo(calm.standFactor!.middle, 1);
    expect(wild.timeFactor!.middle).toBeCloseTo(calm.timeFactor!.middle, 0);
  });

  test('after thinning by an unknown number a count is a lower bound', async () => {
    today = noonOn('2027-05-28');
    await sown('thinned');
    await count('thinned', 18, 100);
    await count('thinned', 25, 30, { thinned: true });
    const { observed, learned } = await standing('thinned');
    expect(observed).toBe('enough');
    expect(learned!.standFactor!.middle).toBeGreaterThan(0.4);
  });

  test.each([
    ['that', 70],
    ['an unknown number', true],
  ])('who thins once by %s need not say so with each later count', async (_, thinned) => {
    today = noonOn('2027-06-12');
    const id = `thinned-${thinned}`;
    await sown(id);
    await count(id, 14, 100);
    await count(id, 18, 30, { thinned });
    const { learned } = await standing(id);
    for (const day of [22, 30, 40]) await count(id, day, 30);
    const later = await standing(id);
    expect(Math.abs(later.learned!.timeFactor!.middle - learned!.timeFactor!.middle)).toBeLessThan(0.1);
    expect(later.learned!.standFactor!.middle).toBeGreaterThan(learned!.standFactor!.middle - 0.05);
    expect(later.judgement!.text).toContain('with those pulled out');
    expect(later.toDo.map(({ task }) => task)).not.toContain('thin');
  });

  test('what is not yet due is not called late, however wide its odds', async () => {
    today = noonOn(dateAfter(SOWN, 3));
    const rows = [
      { temperatureC: 10, days: 9, percent: 80 },
      { temperatureC: 20, days: 4, percent: 90 },
    ];
    // Beds that never took longer than the chart: any delay is more than they have taken.
    await sown('early', { crop: { name: 'Own', rows, bedTimeFactor: { from: 1, to: 1 } } });
    await count('early', 1, 0);
    await count('early', 3, 0);
    const { expected, judgement } = await standing('early');
    expect([expected, judgement!.verdict]).toEqual(['not-yet', 'wait']);
    expect(judgement!.odds!.late).toBeGreaterThan(0.5);
  });

  test('no date jumps back where the odds of life sink below a half, and none is told to be kept moist until a day gone by', async () => {
    today = noonOn('2027-06-12');
    await sown('fading');
    let last = '';
    for (const day of [4, 8, 12, 16]) {
      today = noonOn(dateAfter(SOWN, day));
      await count('fading', day, 0);
      const { forecast } = await standing('fading');
      const { to } = forecast!.keepMoist;
      expect(to >= last, `${to} after ${last}`).toBe(true);
      last = to;
    }
    today = noonOn('2027-08-01');
    await ask('PUT', '/v1/beds/bare-room', { place: 'quillmere', name: 'Bare room', kind: 'indoors', roomC: 15 });
    await sown('single', { bed: 'bare-room' });
    await count('single', 60, 0);
    today = noonOn(dateAfter(SOWN, 61));
    const { judgement } = await standing('single');
    expect(judgement!.verdict).not.toBe('lost');
    expect(judgement!.text).not.toContain('Keep it moist');
  });
});

describe('a lost row', () => {
  test('is sown again while the season lasts, and not when it is over', async () => {
    const own = await startApp({ clock: () => today });
    try {
      today = noonOn('2027-09-01');
      await keepQuillmere(own);
      const asked = askerOf(own);
      await asked('PUT', '/v1/beds/roots', { place: 'quillmere', name: 'Root bed' });
      // Sown in September radishes are still had before winter; beans would have to be sown in July.
      const fields = { bed: 'roots', crop: 'radish', date: '2027-07-15', seeds: 200 };
      await asked('PUT', '/v1/sowings/radishes', fields);
      for (const date of ['2027-08-05', '2027-08-15', '2027-08-25'])
        await asked('PUT', `/v1/sowings/radishes/counts/${date}`, { seedlings: 0 });
      const inTime = (await asked('GET', '/v1/sowings/radishes')).json();
      expect(inTime.judgement.verdict).toBe('lost');
      expect(inTime.resowBy).toMatch(/^2027-09/);
      expect(inTime.toDo[0]).toMatchObject({
        task: 'sow-again',
        text: expect.stringMatching(/^Sow again\. There is time until \d+ September 2027\.$/),
        params: { isTooLate: 'no', from: null, by: inTime.resowBy },
      });
      const german = (await asked('GET', '/v1/sowings/radishes?lang=de')).json();
      expect(german.toDo[0].text).toMatch(/^Neu säen\. Zeit ist bis zum \d+\. September 2027\.$/);
      expect(german.toDo[0].params).toEqual(inTime.toDo[0].params);
      expect(german.judgement).toMatchObject({
        verdict: 'lost',
        text: expect.stringMatching(/ Neu säen\.$/),
        params: inTime.judgement.params,
      });
      today = noonOn('2027-10-05');
      const after = (await asked('GET', '/v1/sowings/radishes')).json();
      expect(after.resowBy).toBeNull();
      expect(after.toDo[0]).toMatchObject({ task: 'sow-again', text: 'It is too late this season to sow again.' });
    } finally {
      await own.close();
    }
  });
});

describe('what counts teach', () => {
  test('seedlings that come late make the chart’s days longer, in this sowing and in the next', async () => {
    today = noonOn('2027-05-28');
    await ask('PUT', '/v1/beds/slow-room', { place: 'quillmere', name: 'Slow room', kind: 'indoors', roomC: 15 });
    const before = await sown('slow', { bed: 'slow-room' });
    for (const [day, seedlings] of [
      [8, 0],
      [12, 20],
      [14, 60],
      [18, 105],
      [22, 110],
    ] as const)
      await count('slow', day, seedlings);
    const after = await standing('slow');
    expect(before.learned).toBeNull();
    // Half of the 110 were up after some 14 days, twice the chart's 7.
    expect(after.learned!.timeFactor!.middle).toBeGreaterThan(1.7);
    expect(after.learned!.timeFactor!.middle).toBeLessThan(2.3);
    expect(after.learned!.text).toMatch(/^From 5 counts of this sowing: onion takes 2 times as long/);
    expect(after.forecast!.assumptions.map(({ code }) => code)).toContain('counts');

    const next = await sown('next', { bed: 'slow-room', date: '2027-05-25' });
    expect(next.learned!.timeFactor!.middle).toBeGreaterThan(1.55);
    const asked = await ask('POST', '/v1/forecasts', {
      crop: 'onion',
      where: { bed: 'slow-room' },
      sowing: { date: '2027-05-25' },
    });
    expect(asked.json().emergence.half.days).toBeCloseTo((next.forecast!.emergence.half as { days: number }).days, 1);
    const own = await ask('POST', '/v1/forecasts', {
      crop: 'onion',
      where: { bed: 'slow-room' },
      sowing: { date: '2027-05-25' },
      timeFactor: 1,
      standFactor: 0.5,
    });
    expect(own.json().emergence.half.days).toBeCloseTo(7, 1);
    expect(own.json().assumptions.map(({ code }: { code: string }) => code)).not.toContain('counts');
    await ask('PUT', '/v1/beds/other-room', { place: 'quillmere', name: 'Other room', kind: 'indoors', roomC: 15 });
    const elsewhere = await sown('elsewhere', { bed: 'other-room', date: '2027-05-25' });
    expect(elsewhere.learned?.timeFactor ?? null).toBeNull();
  });

  test('the same count twice changes nothing, and another one is another answer', async () => {
    today = noonOn('2027-05-28');
    await sown('same');
    await count('same', 12, 20);
    const first = await ask('GET', '/v1/sowings/same');
    await count('same', 12, 20);
    const tag = { 'if-none-match': first.headers.etag as string };
    expect((await ask('GET', '/v1/sowings/same', undefined, tag)).statusCode).toBe(304);
    await count('same', 12, 21);
    expect((await ask('GET', '/v1/sowings/same', undefined, tag)).statusCode).toBe(200);
  });

  test('a lot that turns out worse changes what its sowing has taught the bed’s others', async () => {
    today = noonOn('2027-05-28');
    await ask('PUT', '/v1/beds/lot-room', { place: 'quillmere', name: 'Lot room', kind: 'indoors', roomC: 15 });
    await ask('PUT', '/v1/lots/packet', { crop: 'onion', germinationPercent: 95 });
    await sown('of-packet', { bed: 'lot-room', lot: 'packet' });
    for (const day of [14, 18, 22]) await count('of-packet', day, 80);
    const first = await sown('beside', { bed: 'lot-room', date: '2027-05-25' });
    const { headers } = await ask('GET', '/v1/sowings/beside');
    await ask('PUT', '/v1/lots/packet', { crop: 'onion', germinationPercent: 50 });
    const then = await ask('GET', '/v1/sowings/beside', undefined, { 'if-none-match': headers.etag as string });
    expect(then.statusCode).toBe(200);
    // As many seedlings of half the seed that could come: a better bed.
    expect(then.json().learned.standFactor.middle).toBeGreaterThan(first.learned!.standFactor!.middle + 0.1);
  });
});

describe('what is ready', () => {
  test('is not promised after the frost that ends it, and nothing is sown again for it', async () => {
    const air = inventedAir('2017-05-20' as PlainDate, 3652, chance(7));
    const place = { name: 'Frosty', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
    await ask('PUT', '/v1/places/frosty', place);
    await ask('POST', '/v1/places/frosty/air', { medium: 'air', unit: 'C', daily: air });
    await ask('PUT', '/v1/beds/frosty', { place: 'frosty', name: 'Frosty bed' });
    today = noonOn('2027-05-20');
    const early = await sown('spring-lettuce', { bed: 'frosty', crop: 'head-lettuce', date: '2027-05-15' });
    expect(early.harvest!.from > '2027-07-15' && early.harvest!.to < '2027-09-01').toBe(true);
    // Lettuce of October stands over the winter: by windows alone it would still be sown then.
    expect(early.resowBy! > '2027-07-15' && early.resowBy! < '2027-09-20').toBe(true);
    const late = await sown('autumn-tomato', { bed: 'frosty', crop: 'tomato', date: '2027-07-25', method: 'indoors' });
    expect(late.harvest).toBeNull();
    expect(late.warnings.map(({ code }) => code)).toContain('frost-before-harvest');
  });

  test('is told as ever where a logger with a wrong year has sent readings of days to come', async () => {
    const before = await standing('spring-lettuce');
    const to = {
      medium: 'soil',
      probeDepthCm: 5,
      readings: [0, 6, 12].map((h) => ({ at: `2028-05-0${h / 6 + 1}T12:00:00-02:00`, value: 14 })),
    };
    expect((await ask('POST', '/v1/beds/frosty/readings', to)).statusCode).toBe(200);
    expect(
      (await ask('POST', '/v1/places/frosty/air', { medium: 'air', daily: [{ date: '2027-12-01', min: 1, max: 9 }] }))
        .statusCode,
    ).toBe(200);
    const { forecast } = await standing('spring-lettuce');
    expect(forecast!.emergence).toEqual(before.forecast!.emergence);
    expect(forecast!.warnings.find(({ code }) => code === 'readings-to-come')!.text).toContain('up to 3 May 2028');
  });
});

describe('a bed of which nothing but days to come is kept', () => {
  test('says so, and not that nothing is kept', async () => {
    today = noonOn('2027-05-20');
    await ask('PUT', '/v1/places/ahead', { name: 'Ahead', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' });
    await ask('PUT', '/v1/beds/ahead', { place: 'ahead', name: 'Ahead' });
    const readings = [0, 6].map((h) => ({ at: `2028-05-0${h / 6 + 1}T12:00:00-02:00`, value: 14 }));
    await ask('POST', '/v1/beds/ahead/readings', { medium: 'soil', probeDepthCm: 5, readings });
    const { detail } = (await ask('GET', '/v1/beds/ahead/forecast?crop=lettuce&sowing=2027-05-20')).json();
    expect(detail).toContain('No temperatures up to today are kept');
    expect(detail).toContain('Readings of days to come, up to 2 May 2028, are kept of this bed and left out');
  });
});

describe('what cannot be', () => {
  const refused = async (
    method: 'PUT' | 'PATCH',
    url: string,
    body: object,
    status: number,
    detail: RegExp,
  ): Promise<void> => {
    const response = await ask(method, url, body);
    expect([response.statusCode, response.json().detail]).toEqual([status, expect.stringMatching(detail)]);
  };

  test('a count before the sowing, to come, of more than was sown, or of nobody knows how many', async () => {
    today = noonOn('2027-05-20');
    await sown('checked');
    await sown('unnumbered', { seeds: null });
    const counts = '/v1/sowings/checked/counts';
    await refused('PUT', `${counts}/2027-05-01`, { seedlings: 1 }, 422, /before the sowing, on 3 May 2027/);
    await refused('PUT', `${counts}/2027-05-21`, { seedlings: 1 }, 422, /today is 20 May 2027/);
    await refused('PUT', `${counts}/2027-05-20`, { seedlings: 201 }, 422, /more than the 200 seeds/);
    await refused(
      'PUT',
      `${counts}/2027-05-20`,
      { seedlings: 150, thinned: 51 },
      422,
      /those pulled out among them; it was 201/,
    );
    await refused('PUT', `${counts}/2027-05-20`, { seedlings: -1 }, 422, /seedlings must be at least 0/);
    await sown('long-ago', { date: '2019-05-03' });
    await refused('PUT', '/v1/sowings/long-ago/counts/2027-05-20', { seedlings: 0 }, 422, /by 3 May 2020/);
    await refused('PUT', `${counts}/2027-02-30`, { seedlings: 1 }, 422, /must be a date/);
    await refused('PUT', '/v1/sowings/unnumbered/counts/2027-05-20', { seedlings: 3 }, 422, /of how many are these/);
    await refused('PUT', '/v1/sowings/nowhere/counts/2027-05-20', { seedlings: 3 }, 404, /No sowing is kept/);
    expect((await ask('PUT', '/v1/sowings/unnumbered/counts/2027-05-20', { seedlings: 0 })).statusCode).toBe(201);
    expect((await ask('GET', `${counts}/2027-05-20`)).statusCode).toBe(404);
  });

  test('a change after which what was counted could not have come of it', async () => {
    today = noonOn('2027-06-10');
    await sown('changed');
    await count('changed', 12, 20);
    await count('changed', 20, 110);
    const patch = (changes: object, detail: RegExp) => refused('PATCH', '/v1/sowings/changed', changes, 422, detail);
    await patch({ date: '2027-05-16' }, /not be after the first count, on 15 May 2027/);
    await patch({ date: '2026-05-01' }, /within 366 days of the last count, on 23 May 2027/);
    await patch({ seeds: 109 }, /not be fewer than the 110 seedlings/);
    await patch({ seeds: null }, /not be fewer than the 110 seedlings/);
    expect((await ask('PATCH', '/v1/sowings/changed', { date: '2027-05-14', seeds: 110 })).statusCode).toBe(200);
  });

  test('a sowing in a bed, of a crop or of a lot that there is not, or of another crop’s lot', async () => {
    const fields = { bed: 'cool-room', crop: 'onion', date: SOWN };
    await refused('PUT', '/v1/sowings/x', { ...fields, bed: 'nowhere' }, 422, /No bed is kept under "nowhere"/);
    await refused('PUT', '/v1/sowings/x', { ...fields, crop: 'unions' }, 422, /onion/);
    await refused('PUT', '/v1/sowings/x', { ...fields, lot: 'nowhere' }, 422, /No lot is kept under "nowhere"/);
    await ask('PUT', '/v1/lots/carrots', { crop: 'carrot', germinationPercent: 80 });
    await refused('PUT', '/v1/sowings/x', { ...fields, lot: 'carrots' }, 422, /seed of carrot/);
    await refused('PATCH', '/v1/sowings/x', { seeds: 10 }, 404, /No sowing is kept/);
    expect((await ask('GET', '/v1/sowings/x')).statusCode).toBe(404);
  });
});

describe('keeping sowings', () => {
  test('they are listed by bed, changed under If-Match, and go with their counts', async () => {
    today = noonOn('2027-05-20');
    await ask('PUT', '/v1/beds/shelf', { place: 'quillmere', name: 'Shelf', kind: 'indoors', roomC: 20 });
    await sown('shelf-a', { bed: 'shelf' });
    await sown('shelf-b', {
      bed: 'shelf',
      crop: {
        name: 'Own',
        rows: [
          { temperatureC: 10, days: 9, percent: 80 },
          { temperatureC: 20, days: 4, percent: 90 },
        ],
      },
    });
    const list = (await ask('GET', '/v1/sowings?bed=shelf')).json();
    expect(list.sowings.map(({ id }: { id: string }) => id)).toEqual(['shelf-a', 'shelf-b']);

    const { headers } = await ask('GET', '/v1/sowings/shelf-a');
    const match = { 'if-match': headers.etag as string };
    const changed = await ask('PATCH', '/v1/sowings/shelf-a', { seeds: 150 }, match);
    expect([changed.statusCode, changed.json().seeds, changed.json().date]).toEqual([200, 150, SOWN]);
    expect((await ask('PATCH', '/v1/sowings/shelf-a', { seeds: 160 }, match)).statusCode).toBe(412);
    const full = (await ask('GET', '/v1/sowings/shelf-a?precision=full')).headers.etag as string;
    expect((await ask('PATCH', '/v1/sowings/shelf-a', { seeds: 160 }, { 'if-match': full })).statusCode).toBe(200);

    await count('shelf-a', 8, 30);
    expect((await ask('DELETE', '/v1/beds/shelf')).statusCode).toBe(409);
    expect((await ask('DELETE', '/v1/sowings/shelf-a')).statusCode).toBe(204);
    await sown('shelf-a', { bed: 'shelf' });
    expect((await standing('shelf-a')).counts).toEqual([]);
    expect((await ask('DELETE', '/v1/beds/shelf?with=sowings')).statusCode).toBe(204);
    expect((await ask('GET', '/v1/sowings/shelf-b')).statusCode).toBe(404);
  });

  test('trays are as warm as the room they are said to stand in, and are hardened off before they are planted out', async () => {
    // Four years that swing from 1 to 21 °C.
    const daily = Array.from({ length: 1460 }, (_, day) => {
      const level = 11 - 10 * Math.cos((2 * Math.PI * (day - 20)) / 365);
      return { date: dateAfter('2023-01-01', day), min: level - 4, max: level + 6 };
    });
    await ask('PUT', '/v1/places/terrace', { name: 'Terrace', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' });
    await ask('POST', '/v1/places/terrace/air', { medium: 'air', daily });
    await ask('PUT', '/v1/beds/terrace', { place: 'terrace', name: 'Terrace' });
    const { forecast, indoors, resowBy, warnings } = await sown('trays', {
      bed: 'terrace',
      crop: 'tomato',
      method: 'indoors',
      roomC: 25,
    });
    // Tomato at 25 °C: six days (Harrington and Minges 1954).
    expect((forecast!.emergence.half as { date: string }).date).toBe('2027-05-09');
    expect(indoors!.half).toBe('2027-05-09');
    expect(indoors!.hardenOff.to < indoors!.plantOut).toBe(true);
    expect(resowBy).toBeNull();
    expect(warnings.map(({ code }) => code)).not.toContain('planting-out-unknown');
  });

  test('trays are planted out on no date where nobody knows the nights: wait for the last frost', async () => {
    const { indoors, warnings } = await sown('waiting', { bed: 'north', crop: 'tomato', method: 'indoors', roomC: 25 });
    expect(indoors).toBeNull();
    expect(warnings).toContainEqual(
      expect.objectContaining({ code: 'planting-out-unknown', params: { crop: 'tomato' } }),
    );
  });
});

describe('while the database goes away right after something was kept', () => {
  test('a sowing and a plan are told to be kept, with what is known of them', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'kept-'));
    const file = join(folder, 'data.db');
    const store = await openStore(`sqlite:${file}`);
    const withoutFile = async <Done>(done: Promise<Done>): Promise<Done> => {
      const put = await done;
      await rename(file, `${file}-away`);
      return put;
    };
    const app = await startApp({
      clock: () => noonOn('2027-05-20'),
      store: {
        ...store,
        putSowing: (...put) => withoutFile(store.putSowing(...put)),
        putPlan: (...put) => withoutFile(store.putPlan(...put)),
      },
    });
    const asked = askerOf(app);
    const found = () => rename(`${file}-away`, file);
    const place = { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
    await asked('PUT', '/v1/places/quillmere', place);
    await asked('PUT', '/v1/places/quillmere/normals', exampleNormals);
    await asked('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed' });

    const fields = { bed: 'north', crop: 'onion', date: SOWN, seeds: 200 };
    const kept = await asked('PUT', '/v1/sowings/onions', fields);
    expect(kept.statusCode).toBe(201);
    expect(kept.json()).toMatchObject({ ...fields, id: 'onions', counts: [], forecast: null, toDo: [] });
    expect(kept.json().warnings).toMatchObject([
      { code: 'storage-damaged', text: expect.stringMatching(/^It is kept\. /) },
    ]);
    expect(kept.headers.etag).toBeUndefined();
    expect((await asked('GET', '/v1/sowings/onions')).statusCode).toBe(503);
    await found();
    const later = (await asked('GET', '/v1/sowings/onions')).json();
    expect([later.revision, later.forecast]).toEqual([kept.json().revision, expect.any(Object)]);
    await asked('PUT', '/v1/sowings/onions/counts/2027-05-19', { seedlings: 3 });
    const again = await asked('PUT', '/v1/sowings/onions', { ...fields, seeds: 300 });
    expect([again.statusCode, again.json().counts[0].seedlings]).toEqual([200, 3]);
    await found();

    const plan = { bed: 'north', crop: 'lettuce', harvest: { from: '2027-07-01', to: '2027-08-01', perWeek: 5 } };
    const planned = await asked('PUT', '/v1/plans/summer', plan);
    expect([planned.statusCode, planned.json().sowings.length > 0]).toEqual([201, true]);
    await found();
    expect((await asked('GET', '/v1/plans/summer')).json().sowings).toEqual(planned.json().sowings);
    await app.close();
    await store.close();
    await rm(folder, { recursive: true });
  });
});

describe('while the service has too much to work out', () => {
  test('a sowing is kept all the same, and says that how it stands is not known yet; only then would a refusal be true', async () => {
    const calm = patientPool();
    let isBusy = true;
    const work: WorkerPool = {
      ...calm,
      ask: (...asked) =>
        isBusy
          ? Promise.reject(new RequestError('busy', 'Too much waits. Ask again in a little while.'))
          : calm.ask(...asked),
    };
    const busy = await startApp({ clock: () => noonOn('2027-05-20'), work });
    const asked = askerOf(busy);
    await asked('PUT', '/v1/places/quillmere', {
      name: 'Quillmere',
      latitude: 44,
      longitude: -30,
      timeZone: 'Etc/GMT+2',
    });
    await asked('PUT', '/v1/beds/cool-room', { place: 'quillmere', name: 'Cool room', kind: 'indoors', roomC: 15 });
    const fields = { bed: 'cool-room', crop: 'onion', date: SOWN, seeds: 200 };
    const kept = await asked('PUT', '/v1/sowings/onions', fields);
    expect([kept.statusCode, kept.json().forecast, kept.json().warnings[0].code]).toEqual([201, null, 'busy']);
    const refused = await asked('GET', '/v1/sowings/onions');
    expect([refused.statusCode, refused.json().code]).toEqual([503, 'busy']);
    await asked('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed' });
    await asked('PUT', '/v1/places/quillmere/normals', exampleNormals);
    const plan = { bed: 'north', crop: 'lettuce', harvest: { from: '2027-07-01', to: '2027-08-01', perWeek: 5 } };
    expect((await asked('PUT', '/v1/plans/summer', plan)).statusCode).toBe(503);
    expect((await asked('GET', '/v1/plans')).json().plans).toEqual([]);
    isBusy = false;
    expect((await asked('GET', '/v1/sowings/onions')).json().forecast.emergence.half.days).toBeGreaterThan(5);
    await busy.close();
  });
});
