import { get } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, describe, expect, it } from 'vitest';
import type { WindowAnswer } from '../../src/contract/windows.js';
import { dateAfter, post, quillmere, startApp } from './helper.js';

// When to sow, from past years sent with the question: invented climates. Sown seed is judged as a forecast judges it.

const app = await startApp();
afterAll(() => app.close());

/** Years of air: a yearly wave with weather in it, other each year. */
const yearsOfAir = (years: number, { mean = 11, swing = 9, start = 2017 } = {}) => ({
  medium: 'air',
  daily: Array.from({ length: Math.floor(365.25 * years) }, (_, day) => {
    const level =
      mean -
      swing * Math.cos((2 * Math.PI * (day - 25)) / 365.25) +
      2.5 * Math.sin(day / 4.3) +
      2 * Math.sin(day / 61.7);
    return { date: dateAfter(`${start}-01-01`, day), min: level - 5, max: level + 5 };
  }),
});
const past = yearsOfAir(3, { start: 2024 });

const ask = async (question: Record<string, unknown>, query = 'precision=full'): Promise<WindowAnswer> => {
  const response = await post(app, `/v1/sowing-windows?${query}`, {
    crop: 'lettuce',
    where: { place: quillmere, bed: { moisture: 'moist' } },
    temperatures: [past],
    from: '2027-02-01',
    to: '2027-10-31',
    ...question,
  });
  if (response.statusCode !== 200) throw new Error(response.body);
  return response.json();
};
const codes = (notes: readonly { readonly code: string }[]): string[] => notes.map(({ code }) => code);

describe('sowing windows', () => {
  it('tell the years, the sure dates, the best of them, and why the others are closed', async () => {
    const answer = await ask({ crop: 'snap-bean' });
    expect(answer.years).toEqual({ from: 2024, to: 2026, count: 3 });
    expect(answer.dates).toHaveLength(273);
    expect(answer.dates[0]).toMatchObject({ date: '2027-02-01', sureness: 0 });
    const [window] = answer.windows;
    expect(window!.sureness).toBeGreaterThanOrEqual(0.8);
    expect(window!.from > '2027-04-01' && window!.from < '2027-06-15').toBe(true);
    expect(answer.best!.date >= window!.from && answer.best!.date <= window!.to).toBe(true);
    expect(answer.best!.why).toMatch(/of 3 years/);
    expect(answer.closed[0]).toMatchObject({ from: '2027-02-01', why: 'too-cold' });
    const isOpen = (date: string): boolean => answer.windows.some(({ from, to }) => from <= date && date <= to);
    for (const { from, to } of answer.closed) expect(isOpen(from) || isOpen(to)).toBe(false);
  });

  it('open when the soil suits the crop: lettuce long before beans, and onion long before tomato', async () => {
    const opens = async (crop: string) => (await ask({ crop, judge: 'emergence' })).windows[0]!.from;
    expect((await opens('lettuce')) < (await opens('snap-bean'))).toBe(true);
    expect((await opens('onion')) < (await opens('tomato'))).toBe(true);
  });

  it('close in the heat of a hot summer for lettuce, and say so', async () => {
    const answer = await ask({
      temperatures: [yearsOfAir(3, { mean: 21, swing: 13, start: 2024 })],
      shareIfHeld: 0.8,
      judge: 'emergence',
    });
    expect(answer.closed.some(({ why, from }) => why === 'too-hot' && from > '2027-04-15' && from < '2027-09-01')).toBe(
      true,
    );
    expect(answer.windows.length).toBeGreaterThanOrEqual(2);
  });

  it('keep tender crops from frost to come: none within 30 days of the first seedling, as a rule', async () => {
    const cold = yearsOfAir(3, { mean: 8, swing: 12, start: 2024 });
    const [bean, lastFrost] = [
      await ask({ crop: 'snap-bean', temperatures: [cold], maxDays: 60, judge: 'emergence' }),
      lastFrostOf(cold.daily),
    ];
    expect(bean.windows.length).toBeGreaterThan(0);
    for (const { from, firstDays } of bean.windows.map((window) => ({
      ...window,
      firstDays: bean.dates.find(({ date }) => date === window.from)!.firstDays!,
    }))) {
      expect(dateAfter(from, firstDays.p50) > lastFrost).toBe(true);
    }
    const whys = bean.spans.flatMap(({ reasons }) => reasons.map(({ code }) => code));
    expect(whys).toContain('frost-to-come');
  });

  it('are wider for looser criteria, and narrower for stricter ones', async () => {
    const openDays = async (criteria: Record<string, number>) =>
      (
        await ask({ crop: 'pepper', from: '2027-04-01', to: '2027-07-01', judge: 'emergence', ...criteria })
      ).dates.filter(({ sureness }) => sureness! >= 0.8).length;
    const usual = await openDays({});
    expect(await openDays({ maxDays: 40 })).toBeGreaterThan(usual);
    expect(await openDays({ share: 0.9 })).toBeLessThanOrEqual(usual);
    expect((await ask({ crop: 'pepper', prefer: 'surest', judge: 'emergence' })).best!.why).toContain('surest');
  });

  it('end where no harvest is had before frost, and run on where coming up is enough', async () => {
    const [toHarvest, up] = [await ask({ crop: 'carrot' }), await ask({ crop: 'carrot', judge: 'emergence' })];
    const lastGood = ({ windows }: WindowAnswer) => windows.filter(({ grade }) => grade === 'good').at(-1)!.to;
    expect(lastGood(toHarvest) < lastGood(up)).toBe(true);
    expect(toHarvest.closed.map(({ why }) => why)).toContain('too-late');
    expect(codes(toHarvest.assumptions)).toContain('harvest-judged');
    expect([toHarvest.criteria.standDays, up.criteria.standDays]).toEqual([60, up.criteria.maxDays]);
  });

  it('wait for ground that can be worked, and say that they do not where coming up is enough', async () => {
    const spring = { crop: 'pea', from: '2027-01-10', to: '2027-06-30' };
    const [toHarvest, up] = [await ask(spring), await ask({ ...spring, judge: 'emergence' })];
    const reasons = ({ spans }: WindowAnswer) => spans.flatMap((span) => span.reasons.map(({ code }) => code));
    const isLeftOut = ({ assumptions }: WindowAnswer) =>
      assumptions.some(({ text }) => text.includes('Whether the ground can be worked is left out'));
    expect([reasons(toHarvest).includes('ground-wet'), isLeftOut(toHarvest)]).toEqual([true, false]);
    expect([reasons(up).includes('ground-wet'), isLeftOut(up)]).toEqual([false, true]);
    expect(toHarvest.assumptions.find(({ code }) => code === 'past-years')!.text).toMatch(
      /rain and pests are left out/,
    );
  });

  it('count a crop that is raised in trays from its tray on: sown in place, peppers have no season here', async () => {
    const { best, spans } = await ask({ crop: 'pepper' });
    expect(best).toBeNull();
    expect(spans.flatMap(({ reasons }) => reasons.map(({ code }) => code))).toContain('too-late');
  });

  it('put every date into exactly one span, of a week or more but at the ends, with reasons where it is not good', async () => {
    for (const crop of ['lettuce', 'spinach', 'onion', 'watermelon', 'parsnip', 'asparagus']) {
      const { spans, dates, best } = await ask({
        crop,
        from: '2027-02-01',
        to: '2028-01-30',
        temperatures: [yearsOfAir(5, { start: 2022 })],
      });
      expect(spans[0]!.from).toBe('2027-02-01');
      expect(spans.at(-1)!.to).toBe('2028-01-30');
      spans.slice(1).forEach(({ from }, i) => {
        expect(from).toBe(dateAfter(spans[i]!.to, 1));
      });
      for (const { from, to } of spans.slice(1, -1)) expect(to >= dateAfter(from, 6), `${crop} ${from}`).toBe(true);
      for (const { grade, reasons, harvest } of spans) {
        expect(reasons.length > 0).toBe(grade !== 'good');
        for (const { text, params } of reasons) expect([text.length > 10, typeof params]).toEqual([true, 'object']);
        if (grade === 'poor') expect(harvest).toBeNull();
      }
      for (const { date, grade } of dates) {
        expect(grade).toBe(spans.find(({ from, to }) => from <= date && date <= to)!.grade);
      }
      if (best) expect(dates.find(({ date }) => date === best.date)!.grade).toBe(best.grade);
    }
  });

  it('name no best date where none is good or fair, and say until when to wait', async () => {
    const autumn = { crop: 'snap-bean', from: '2027-10-01', temperatures: [yearsOfAir(5, { start: 2022 })] };
    const { best, windows, instead, spans } = await ask({ ...autumn, to: '2027-12-31' });
    expect([best, windows, instead]).toEqual([null, [], []]);
    expect(spans.every(({ grade }) => grade === 'poor')).toBe(true);
    const ahead = await ask({ ...autumn, to: '2028-09-29' });
    expect(ahead.instead).toMatchObject([{ action: 'wait', grade: 'good', from: ahead.windows[0]!.from }]);
    expect(ahead.best!.date >= ahead.windows[0]!.from).toBe(true);
    expect(ahead.ways[0]).toMatchObject({ method: 'direct', sow: { best: ahead.best!.date } });
  });

  it('leave the dates out where they are not wanted, by body and by link alike', async () => {
    const { dates, ...rest } = await ask({});
    expect(dates.length).toBeGreaterThan(200);
    const without = await ask({ dates: false });
    expect(without).toEqual({ ...rest, issuedAt: without.issuedAt });
  });

  it('speak German where German is asked for', async () => {
    const { best, spans } = await ask({ crop: 'onion' }, 'lang=de');
    expect(best).not.toBeNull();
    expect(spans.flatMap(({ reasons }) => reasons.map(({ text }) => text)).join(' ')).toMatch(/Boden|Tage/);
  });

  it('agree with a forecast made over the same year’s air', async () => {
    const answer = await ask({
      crop: 'carrot',
      from: '2027-05-10',
      to: '2027-05-10',
      temperatures: [yearsOfAir(3.6, { start: 2024 })],
    });
    const halves = await Promise.all(
      [2024, 2025, 2026, 2027].map(async (year) => {
        const forecast = await post(app, '/v1/forecasts?precision=full', {
          crop: 'carrot',
          where: { place: quillmere, bed: { moisture: 'moist' } },
          sowing: { date: `${year}-05-10` },
          countDays: answer.criteria.maxDays,
          temperatures: [yearsOfAir(3.6, { start: 2024 })],
        });
        return forecast.json().emergence.half.days as number;
      }),
    );
    expect(answer.years.count).toBe(halves.length);
    const [low, high] = [Math.min(...halves), Math.max(...halves)];
    expect(answer.dates[0]!.halfDays!.p10).toBeGreaterThan(low - 0.1);
    expect(answer.dates[0]!.halfDays!.p90).toBeLessThan(high + 0.1);
    expect(answer.dates[0]!.halfDays!.p50).toBeCloseTo(
      [...halves]
        .sort((a, b) => a - b)
        .slice(1, 3)
        .reduce((a, b) => a + b) / 2,
      0,
    );
  });

  it('say that few years are thin, that soil tells no frost, and refuse fewer than three', async () => {
    expect(codes((await ask({ temperatures: [yearsOfAir(3, { start: 2024 })] })).warnings)).toContain('thin-years');
    const soil = { ...past, medium: 'soil' };
    expect(codes((await ask({ crop: 'tomato', temperatures: [soil] })).warnings)).toContain('frost-unknown');
    const refused = await post(app, '/v1/sowing-windows', {
      crop: 'lettuce',
      where: { place: quillmere },
      temperatures: [yearsOfAir(2)],
    });
    expect(refused.json()).toMatchObject({
      status: 422,
      code: 'no-past-years',
      errors: [{ pointer: '#/temperatures' }],
    });
  });

  it('begin today and reach a year, unless told otherwise; refuse dates that run backwards', async () => {
    const { dates } = await ask({ from: undefined, to: undefined });
    expect([dates[0]!.date, dates.length]).toEqual(['2027-08-03', 365]);
    const refused = await post(app, '/v1/sowing-windows', {
      crop: 'lettuce',
      where: { place: quillmere },
      from: '2027-05-02',
      to: '2027-05-01',
      temperatures: [past],
    });
    expect(refused.json()).toMatchObject({ status: 422, errors: [{ pointer: '#/to' }] });
  });

  it('come from a file of years as well', async () => {
    const file = [
      'date,air min (C),air max (C)',
      ...past.daily.map(({ date, min, max }) => `${date},${min.toFixed(2)},${max.toFixed(2)}`),
    ].join('\n');
    const query =
      'crop=lettuce&latitude=44&longitude=-30&timeZone=Etc/GMT%2B2&from=2027-02-01&to=2027-10-31&where.bed.moisture=moist';
    const response = await post(app, `/v1/sowing-windows?${query}`, file);
    expect(response.statusCode, response.body).toBe(200);
    expect(response.json().windows[0].from).toBe((await ask({}, '')).windows[0]!.from);
  });
});

/** The latest day before July on which it freezes, as a date of 2027, in the second latest of the years. */
function lastFrostOf(daily: readonly { readonly date: string; readonly min: number }[]): string {
  const last = new Map<string, string>();
  for (const { date, min } of daily) {
    if (min <= 0 && date.slice(5) < '07-01') last.set(date.slice(0, 4), `2027${date.slice(4)}`);
  }
  return [...last.values()].sort().at(-2)!;
}

describe('when many ask the same at once', () => {
  it('as many as may are answered, and the others are told to come again', async () => {
    const service = await startApp();
    const question = {
      crop: 'lettuce',
      where: { place: quillmere },
      from: '2027-04-01',
      to: '2027-04-20',
      temperatures: [yearsOfAir(3.6, { start: 2024 })],
    };
    const answers = await Promise.all(Array.from({ length: 20 }, () => post(service, '/v1/sowing-windows', question)));
    const refused = answers.filter(({ statusCode }) => statusCode !== 200);
    expect(refused).toHaveLength(20 - 8);
    for (const one of refused) {
      expect(one.json()).toMatchObject({ status: 429, code: 'too-much-at-once' });
      expect(one.headers['retry-after']).toMatch(/^[1-9][0-9]*$/);
    }
    await service.close();
  });
});

describe('when the service stops', () => {
  it('whoever waits for a long answer is told so, and the stop does not hang', async () => {
    const service = await startApp();
    const question = {
      crop: 'lettuce',
      where: { place: quillmere },
      from: '2027-02-01',
      temperatures: [yearsOfAir(8, { start: 2019 })],
    };
    const asked = Promise.all(Array.from({ length: 6 }, () => post(service, '/v1/sowing-windows', question)));
    await new Promise((resolve) => setTimeout(resolve, 200));
    const started = performance.now();
    const [answers] = await Promise.all([asked, service.close()]);
    expect(performance.now() - started).toBeLessThan(3000);
    expect(answers.every(({ statusCode }) => statusCode === 200 || statusCode === 503)).toBe(true);
    expect(answers.at(-1)!.json()).toMatchObject({ code: 'stopping' });
  });
});

describe('while many years are computed', () => {
  it('others are answered', async () => {
    const server = await startApp();
    await server.listen({ port: 0, host: '127.0.0.1' });
    const { port } = server.server.address() as AddressInfo;
    const ping = (): Promise<number> => {
      const started = performance.now();
      return new Promise((resolve, reject) => {
        get({ port, path: '/healthz' }, (response) => {
          response.resume();
          response.on('end', () => resolve(performance.now() - started));
        }).on('error', reject);
      });
    };
    const question = {
      crop: 'lettuce',
      where: { place: quillmere },
      from: '2027-02-01',
      temperatures: [yearsOfAir(8, { start: 2019 })],
    };
    let isDone = false;
    const answered = fetch(`http://127.0.0.1:${port}/v1/sowing-windows`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(question),
    }).then(async (response) => {
      isDone = true;
      return response.json() as Promise<WindowAnswer>;
    });
    const times: number[] = [];
    while (!isDone) times.push(await ping());
    const { years } = await answered;
    await server.close();
    expect(years.count).toBe(8);
    const sorted = times.sort((a, b) => a - b);
    // Reading the question itself, a large body of JSON, is done between two of them.
    expect(sorted[Math.floor(0.97 * sorted.length)]!).toBeLessThan(100);
    expect(times.length).toBeGreaterThan(20);
  });
});
