import { readFileSync } from 'node:fs';
import { get } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import { keyring } from '../../src/http/auth/keys.js';
import {
  dailySeries,
  dateAfter,
  daysTo,
  forecastOf,
  hourlySeries,
  lettuceQuestion,
  mildMay,
  NOW,
  post,
  quillmere,
  startApp,
} from './helper.js';

// What a sowing's forecast promises a grower. Days and percent at constant temperatures: Harrington & Minges 1954, as
// printed in Knott's Handbook, 4th ed. 1997.

const app = await startApp();
const ask = (overrides: Record<string, unknown> = {}, query = 'precision=full') =>
  forecastOf(app, lettuceQuestion(overrides), query);
const constant = (tempC: number, days = 30, start = '2027-05-01') =>
  dailySeries(
    Array.from({ length: days }, () => [tempC, tempC] as const),
    { start },
  );
const hours = (n: number, tempC: number): number[] => new Array(n).fill(tempC);

/** An answer without what tells of the request rather than of the sowing. */
const theSowing = ({ understood: _, assumptions: __, ...rest }: ForecastAnswer) => rest;
const codes = (notes: readonly { readonly code: string }[]): string[] => notes.map(({ code }) => code);

/** Every number of an answer, by its path. */
function numbersOf(value: unknown, path = ''): [path: string, value: number][] {
  if (typeof value === 'number') return [[path, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, `${path}/${key}`));
}

const demoFile = readFileSync(new URL('../../fixtures/demo/north-bed-august.csv', import.meta.url), 'utf8');
const demoQuery = new URLSearchParams({
  crop: 'lettuce',
  sowing: '2027-08-03',
  'sowing.time': '10:00',
  seeds: '200',
  medium: 'soil',
  latitude: '44',
  longitude: '-30',
  timeZone: 'Etc/GMT+2',
}).toString();

describe('numbers', () => {
  it('are rounded for people: temperatures and days to a tenth, percent whole', async () => {
    const rounded = new Map(numbersOf(await forecastOf(app, demoFile, demoQuery)));
    const full = numbersOf(await forecastOf(app, demoFile, `${demoQuery}&precision=full`));
    expect(full.map(([path]) => path).sort()).toEqual([...rounded.keys()].sort());
    const whole = /stand|percent|Percent|AtRisk|hours|hot|rows|used|count/;
    for (const [path, value] of full) {
      const step = whole.test(path) && !/\/(days|peakC|thresholdC|half|most)$|coolerC|params/.test(path) ? 1 : 0.1;
      const said = rounded.get(path)!;
      expect(Math.abs(said - value), path).toBeLessThanOrEqual(step / 2 + 1e-9);
      expect(said * 10, path).toBeCloseTo(Math.round(said * 10), 9);
      if (step === 1) expect(Number.isInteger(said), path).toBe(true);
    }
    expect(full.filter(([, value]) => Math.abs(value * 10 - Math.round(value * 10)) > 1e-6).length).toBeGreaterThan(50);
  });

  it('are the same with precision=rounded as without it', async () => {
    expect(await ask({}, 'precision=rounded')).toEqual(await ask({}, ''));
  });
});

describe('a crop’s numbers', () => {
  it('are rounded or in full as well', async () => {
    const [rounded, full] = [
      (await app.inject('/v1/crops/lettuce')).json(),
      (await app.inject('/v1/crops/lettuce?precision=full')).json(),
    ];
    // Soil for lettuce, in °F: 35 at least, 40 to 80 at best, 85 at most. Alabama Cooperative Extension System.
    expect(rounded.soil).toEqual({ minimumC: 1.7, optimumFromC: 4.4, optimumToC: 26.7, maximumC: 29.4 });
    expect(full.soil.maximumC).toBeCloseTo((53 * 5) / 9, 12);
    expect(full.hotThresholdC).toBeCloseTo(25 + (5 * 0.1 * 99) / (99 - 12), 9);
    expect(rounded.hotThresholdC).toBe(25.6);
    expect(rounded.rows).toEqual(full.rows);
  });
});

describe('what every answer carries', () => {
  it('the model, with its sources where they are asked for, the time of issue, assumptions and warnings', async () => {
    const answer = await ask();
    expect(answer.issuedAt).toBe(NOW);
    expect(answer.model).toMatchObject({ name: expect.any(String), version: expect.stringMatching(/^\d+\.\d+\.\d+$/) });
    expect(answer.model.sources).toBeUndefined();
    const { model } = await ask({}, 'model=full');
    expect(model.sources!.join()).toContain('Harrington');
    expect((await app.inject('/v1/model')).json()).toEqual(model);
    expect(codes(answer.assumptions)).toEqual(expect.arrayContaining(['curve', 'count-day', 'depth', 'lot']));
    for (const { text } of [...answer.assumptions, ...answer.warnings]) expect(text).toMatch(/^[A-Z0-9].+[.)]$/);
  });
});

describe('the demo: lettuce sown into three hot days', async () => {
  const answer = await forecastOf(app, demoFile, demoQuery);
  const [spell] = answer.hotSpells!;

  it('finds one severe spell that begins with the sowing', () => {
    expect(answer.hotSpells).toHaveLength(1);
    expect(spell).toMatchObject({ from: '2027-08-03', severity: 'severe' });
    // 90 % of the best still comes at 25 + 5 (99 - 0.9 * 99) / (99 - 12) °C, derived from the handbook's cells.
    expect(spell!.thresholdC).toBe(25.6);
  });

  it('counts the hours above the threshold as the file has them', () => {
    const readings = demoFile
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(','))
      .map(([at, value]) => ({ at: Date.parse(at!), value: Number(value) }));
    const thresholdC = 25 + (5 * 0.1 * 99) / (99 - 12);
    const means = readings
      .slice(1)
      .map(({ value }, i) => ({ at: readings[i]!.at, mean: (readings[i]!.value + value) / 2 }));
    const hotOn = (date: string): number =>
      means.filter(({ at, mean }) => {
        const local = new Date(at - 2 * 3_600_000).toISOString();
        return local.slice(0, 10) === date && local >= '2027-08-03T10:00' && mean > thresholdC;
      }).length;
    const hotHours = new Map(answer.daily.map((day) => [day.date, day.hotHours]));
    for (const date of ['2027-08-03', '2027-08-04', '2027-08-05']) expect(hotHours.get(date), date).toBe(hotOn(date));
    const sown = means.filter(({ at }) => at >= Date.parse('2027-08-03T10:00-02:00'));
    expect(spell!.peakC).toBeCloseTo(Math.max(...sown.map(({ mean }) => mean)), 1);
    expect(spell!.hoursInFirstDay).toBe(sown.slice(0, 24).filter(({ mean }) => mean > thresholdC).length);
  });

  it('says what the heat costs, and what can be done', () => {
    expect(spell!.delayDays!.half).toBeGreaterThan(1);
    expect(spell!.standAtRisk).toBe(answer.stand.laboratory - answer.stand.ifHeldAreLost);
    const actions = spell!.remedies.map(({ action }) => action);
    expect(actions).toEqual([
      'shade',
      'keep-wet',
      'cover',
      'sow-in-evening',
      'wait',
      'start-indoors',
      'presprout-cool',
    ]);
    for (const { hotHoursAvoided } of spell!.remedies) {
      expect(hotHoursAvoided!.from).toBeGreaterThan(0);
      expect(hotHoursAvoided!.from).toBeLessThanOrEqual(hotHoursAvoided!.to);
      expect(hotHoursAvoided!.to).toBeLessThanOrEqual(spell!.hours);
    }
  });

  it('takes longer than a chart at the mean would have it', () => {
    expect(answer.chart).toMatchObject({ days: 2, percent: 99 });
    expect(daysTo(answer.emergence.half)).toBeGreaterThan(2 * answer.chart.days!);
  });

  it('gives beds their share, and 200 seeds their seedlings', async () => {
    const { stand } = await forecastOf(app, demoFile, `${demoQuery}&precision=full`);
    // Lettuce in beds: 0.20 to 0.67 of a laboratory's stand, Bralewski & Holubowicz 2008 (abstract).
    expect(stand.field.from).toBeCloseTo(stand.ifHeldAreLost * 0.2, 9);
    expect(stand.field.to).toBeCloseTo(stand.laboratory * 0.67, 9);
    expect(stand.seedlings!.from).toBeCloseTo(2 * stand.field.from, 9);
    expect(stand.seedlings!.to).toBeCloseTo(2 * stand.field.to, 9);
  });

  it('keeps it moist until most are up in beds, and counts after three weeks', () => {
    const { most } = answer.emergence;
    expect(answer.keepMoist).toEqual({ from: '2027-08-03', to: 'inBeds' in most ? most.inBeds.to : '' });
    expect(answer.countDays).toBe(21);
    expect(answer.stand.by).toBe('2027-08-24');
  });

  it('is told day by day from the sowing to the count, with what each day rests on', () => {
    expect(answer.daily.map(({ date }) => date)).toEqual(
      Array.from({ length: 22 }, (_, day) => dateAfter('2027-08-03', day)),
    );
    expect(answer.daily.slice(0, 3).map(({ basis }) => basis)).toEqual(['measured', 'measured', 'measured']);
    expect(new Set(answer.daily.slice(4).map(({ basis }) => basis))).toEqual(new Set(['drift']));
    const up = answer.daily.map(({ emergedPercent }) => emergedPercent);
    expect(up).toEqual([...up].sort((a, b) => a - b));
    expect(up.at(-1)).toBe(answer.stand.laboratory);
  });

  it('is the same question in JSON', async () => {
    const readings = demoFile
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(','))
      .map(([at, value]) => ({ at, value: Number(value) }));
    const asked = await forecastOf(app, {
      crop: 'lettuce',
      where: { place: quillmere },
      sowing: { date: '2027-08-03', time: '10:00', seeds: 200 },
      temperatures: [{ medium: 'soil', readings }],
    });
    expect(theSowing(asked)).toEqual(theSowing(answer));
  });
});

describe('spells', () => {
  const means = (tempC: number) => ({
    medium: 'soil',
    daily: mildMay.daily.map(({ date }) => ({ date, mean: tempC })),
  });

  it('are null where only means were sent, and that is said', async () => {
    const answer = await ask({ temperatures: [means(27)] });
    expect(answer).toMatchObject({ hotSpells: null, coldSpells: null });
    expect(codes(answer.warnings)).toContain('no-swing');
  });

  it('are an empty list where nothing harms', async () => {
    const answer = await ask();
    expect(answer).toMatchObject({ hotSpells: [], coldSpells: [] });
    expect(codes(answer.warnings)).not.toContain('no-swing');
  });

  it('of cold are told of crops that chill harms, with the lowest hour for a peak', async () => {
    const cold = dailySeries(
      Array.from({ length: 40 }, (_, day) => (day < 6 ? ([5, 12] as const) : ([18, 24] as const))),
    );
    const corn = await ask({ crop: 'sweet-corn', temperatures: [cold] });
    const [spell] = corn.coldSpells!;
    expect(spell).toMatchObject({ from: '2027-05-03', thresholdC: 10 });
    expect(spell!.peakC).toBeGreaterThanOrEqual(5);
    expect(spell!.peakC).toBeLessThan(6);
    expect(spell!.remedies.map(({ action }) => action)).toEqual(['wait', 'cover', 'start-indoors', 'presprout-warm']);
    const cabbage = await ask({ crop: 'cabbage', temperatures: [cold] });
    expect(cabbage.coldSpells).toEqual([]);
  });

  it('need six hot hours on a day', async () => {
    const withHot = (n: number) => hourlySeries([...hours(84, 20), ...hours(n + 1, 30), ...hours(400, 20)]);
    const few = await ask({ temperatures: [withHot(4)] });
    const many = await ask({ temperatures: [withHot(7)] });
    expect(few.hotSpells).toEqual([]);
    expect(many.hotSpells).toHaveLength(1);
    expect(many.hotSpells![0]).toMatchObject({ from: '2027-05-04', to: '2027-05-04', days: 1, severity: 'mild' });
  });
});

describe('after the last value', () => {
  const meanOn = (answer: ForecastAnswer, date: string): number => answer.daily.find((day) => day.date === date)!.mean;
  const april = constant(15, 30, '2027-04-01');
  const laterOn = (place: Record<string, unknown>, beyond?: string) =>
    ask({
      where: { place: { ...quillmere, ...place } },
      sowing: { date: '2027-04-20' },
      temperatures: [april],
      countDays: 60,
      beyond,
    });

  it('the season drifts on: warmer in a northern May, cooler in a southern one', async () => {
    const [north, south] = [await laterOn({ latitude: 44 }), await laterOn({ latitude: -44 })];
    expect(meanOn(north, '2027-04-30')).toBeCloseTo(15, 9);
    expect(meanOn(north, '2027-05-30')).toBeGreaterThan(17);
    expect(meanOn(south, '2027-05-30')).toBeLessThan(13);
    expect(north.daily.at(-1)!.basis).toBe('drift');
  });

  it('the last week comes again where no latitude was sent, and a slow crop is warned of it', async () => {
    const answer = await laterOn({ latitude: undefined });
    expect(answer.daily.at(-1)).toMatchObject({ mean: 15, basis: 'repeated' });
    const slow = await ask({
      crop: 'parsnip',
      where: { place: { timeZone: 'Etc/GMT+2' } },
      temperatures: [constant(8, 10, '2027-04-28')],
    });
    expect(codes(slow.warnings)).toContain('held-week');
  });

  it('nothing is supposed with refuse, where the days reach the count', async () => {
    const answer = await ask({ beyond: 'refuse', countDays: 20 });
    expect(new Set(answer.daily.map(({ basis }) => basis))).toEqual(new Set(['measured']));
    const { half } = answer.emergence;
    expect('range' in half && half.range.to).toBe(dateAfter('2027-05-03', Math.round(daysTo(half) + 0.5)));
  });

  it('a sowing weeks after the last value is forecast from what is supposed', async () => {
    const answer = await ask({ sowing: { date: '2027-06-20' } });
    expect(new Set(answer.daily.map(({ basis }) => basis))).toEqual(new Set(['drift']));
    expect(daysTo(answer.emergence.half)).toBeLessThan(daysTo((await ask()).emergence.half));
    expect(answer.daily[0]!.mean).toBeGreaterThan(15);
  });

  it('the range grows with what is supposed, and is open where it passes the count', async () => {
    const known = await ask({ crop: 'parsley', temperatures: [constant(15)], countDays: 60 });
    const supposed = await ask({ crop: 'parsley', temperatures: [constant(15, 3)], countDays: 60 });
    const width = ({ emergence: { half } }: ForecastAnswer): number =>
      'range' in half ? Date.parse(half.range.to!) - Date.parse(half.range.from) : Number.NaN;
    expect(width(known)).toBe(86_400_000);
    expect(width(supposed)).toBeGreaterThan(width(known));
    const tight = await ask({ crop: 'onion', temperatures: [constant(15, 3)], countDays: 7 });
    expect(tight.emergence.most).toMatchObject({ range: { to: null } });
  });
});

describe('the grower’s own knowledge', () => {
  const onion = (overrides: Record<string, unknown>) =>
    ask({ crop: 'onion', temperatures: [constant(15)], ...overrides });

  it('a time factor of 2 doubles the days, and leaves nothing for the beds to add', async () => {
    const [plain, doubled] = [await onion({ countDays: 60 }), await onion({ countDays: 60, timeFactor: 2 })];
    for (const which of ['first', 'half', 'most'] as const) {
      expect(daysTo(doubled.emergence[which])).toBeCloseTo(2 * daysTo(plain.emergence[which]), 1);
      const one = doubled.emergence[which];
      expect('inBeds' in one && one.inBeds).toEqual({ from: 'date' in one && one.date, to: 'date' in one && one.date });
    }
    // Onion in beds: up to 2.3 times the chart's days; derived from Bierhuizen & Wagenvoort 1974, from memory.
    const { half } = plain.emergence;
    expect('inBeds' in half && half.inBeds.from).toBe('date' in half && half.date);
    expect('inBeds' in half && half.inBeds.to).toBe(dateAfter('2027-05-03', Math.floor(0.5 + 2.3 * daysTo(half))));
  });

  it('a stand factor replaces the crop’s share, as one number or as two', async () => {
    const { stand } = await onion({ standFactor: 0.5, sowing: { date: '2027-05-03', seeds: 1000 } });
    expect(stand.field.from).toBeCloseTo(0.5 * stand.ifHeldAreLost, 9);
    expect(stand.field.to).toBeCloseTo(0.5 * stand.laboratory, 9);
    expect(stand.seedlings!.to).toBeCloseTo(10 * stand.field.to, 9);
    const between = await onion({ standFactor: { from: 0.25, to: 0.75 } });
    expect(between.stand.field.from).toBeCloseTo(0.25 * between.stand.ifHeldAreLost, 9);
    expect(between.stand.field.to).toBeCloseTo(0.75 * between.stand.laboratory, 9);
  });

  it('a lot’s own test stands for the table’s best cell', async () => {
    const at15 = await ask({ temperatures: [constant(15)], lot: { germinationPercent: 88 } });
    const at30 = await ask({ temperatures: [constant(30)], lot: { germinationPercent: 88 } });
    expect(at15.stand.laboratory).toBe(88);
    expect(at30.stand.laboratory).toBeCloseTo((88 * 12) / 99, 0);
    expect(codes(at15.assumptions)).not.toContain('lot');
  });

  it('a lot that bears 5 K more comes at 30 °C as others do at 25 °C', async () => {
    const [usual, hardy] = [
      await ask({ temperatures: [constant(30)] }),
      await ask({ temperatures: [constant(30)], lot: { hotLimitShiftC: 5 } }),
    ];
    expect(usual.stand.laboratory).toBeCloseTo(12, 0);
    expect(hardy.stand.laboratory).toBeCloseTo(99, 0);
    expect(hardy.hotSpells).toEqual([]);
  });

  it('an old test is warned of', async () => {
    const tested = (testedOn: string) => ask({ lot: { germinationPercent: 88, testedOn } });
    expect(codes((await tested('2025-01-10')).warnings)).toContain('old-test');
    expect(codes((await tested('2027-01-10')).warnings)).not.toContain('old-test');
  });

  it('no seeds, no seedlings', async () => {
    const answer = await ask();
    expect(answer.stand).not.toHaveProperty('seedlings');
    expect(answer.sowing).toEqual({ date: '2027-05-03', time: '12:00', depthCm: expect.any(Number) });
  });

  it('a depth is taken as said, and warned of where it is more than twice the usual', async () => {
    const deep = await ask({ sowing: { date: '2027-05-03', depthCm: 5 } });
    expect(deep.sowing.depthCm).toBe(5);
    expect(codes(deep.warnings)).toContain('deep');
    expect(codes(deep.assumptions)).not.toContain('depth');
  });
});

describe('when the grower counts', () => {
  const onionAt = (tempC: number, overrides: Record<string, unknown> = {}) =>
    ask({
      crop: 'onion',
      where: { place: { timeZone: 'Etc/GMT+2' } },
      temperatures: [constant(tempC)],
      ...overrides,
    });

  it('is after 21 days, or twice the chart’s days where that is longer', async () => {
    expect((await onionAt(15)).countDays).toBe(21);
    expect((await onionAt(5)).countDays).toBe(62);
    expect((await onionAt(15, { timeFactor: 5 })).countDays).toBe(70);
    expect((await onionAt(40)).countDays).toBe(21);
  });

  it('is when the grower says, and what comes later does not count', async () => {
    const early = await onionAt(15, { countDays: 5 });
    const late = await onionAt(15, { countDays: 30 });
    expect(early.stand.by).toBe('2027-05-08');
    expect(early.stand.laboratory).toBeLessThan(0.2 * late.stand.laboratory);
    const none = await onionAt(15, { countDays: 2 });
    expect(none.emergence.half).toEqual({ why: 'not-by-count-day' });
    expect(none.stand.laboratory).toBe(0);
    expect(none.keepMoist.to).toBe('2027-05-05');
  });
});

describe('seed in dry soil', () => {
  const dry = (wettedOn: string, time = '12:00') =>
    ask({
      crop: 'onion',
      where: { place: quillmere, bed: { moisture: 'dry', wettedOn } },
      sowing: { date: '2027-05-03', time },
      temperatures: [constant(15)],
      countDays: 30,
    });

  it('waits, and its clock starts at noon of the day it is watered', async () => {
    const answer = await dry('2027-05-10');
    expect(daysTo(answer.emergence.half)).toBeCloseTo(7 + 7, 1);
    expect(answer.keepMoist.from).toBe('2027-05-10');
    expect(answer.daily.find(({ date }) => date === '2027-05-10')!.emergedPercent).toBe(0);
  });

  it('waits from the morning to noon of the same day', async () => {
    const [morning, noon] = [await dry('2027-05-03', '06:00'), await dry('2027-05-03', '12:00')];
    expect(daysTo(morning.emergence.half)).toBeCloseTo(daysTo(noon.emergence.half) + 0.25, 9);
  });

  it('does not start before it is sown', async () => {
    const [evening, noon] = [await dry('2027-05-03', '18:00'), await dry('2027-05-03', '12:00')];
    expect(daysTo(evening.emergence.half)).toBeCloseTo(daysTo(noon.emergence.half), 9);
  });
});

describe('how the temperatures are written changes nothing', () => {
  const swinging = mildMay.daily;
  const inUnit = (unit: string, convert: (tempC: number) => number) => ({
    medium: 'soil',
    unit,
    daily: swinging.map(({ date, min, max }) => ({ date, min: convert(min), max: convert(max) })),
  });

  it('not the unit', async () => {
    const [celsius, fahrenheit, kelvin] = [
      await ask({ temperatures: [inUnit('C', (tempC) => tempC)] }),
      await ask({ temperatures: [inUnit('F', (tempC) => (tempC * 9) / 5 + 32)] }),
      await ask({ temperatures: [inUnit('K', (tempC) => tempC + 273.15)] }),
    ];
    expect(theSowing(fahrenheit)).toEqual(theSowing(celsius));
    expect(theSowing(kelvin)).toEqual(theSowing(celsius));
    expect(fahrenheit.understood[0]).toMatchObject({ unit: 'F', min: 10, max: 20, series: { unit: 'C' } });
  });

  it('not the order of the days, nor a day sent twice', async () => {
    const plain = await ask();
    const shuffled = [...swinging].sort((a, b) => (a.date.slice(-1) + a.date < b.date.slice(-1) + b.date ? 1 : -1));
    expect(shuffled).not.toEqual(swinging);
    const mixed = await ask({ temperatures: [{ medium: 'soil', daily: [...shuffled, ...swinging.slice(3, 9)] }] });
    expect(theSowing(mixed)).toEqual(theSowing(plain));
    expect(mixed.understood[0]).toMatchObject({ rows: 36, used: 30 });
  });

  it('not the order of the readings, nor a reading sent twice', async () => {
    const { readings } = hourlySeries(Array.from({ length: 300 }, (_, i) => 15 - 5 * Math.cos((Math.PI * i) / 12)));
    const plain = await ask({ temperatures: [{ medium: 'soil', readings }] });
    const mixed = await ask({
      temperatures: [{ medium: 'soil', readings: [...readings].reverse().concat(readings.slice(20, 50)) }],
    });
    expect(theSowing(mixed)).toEqual(theSowing(plain));
  });

  it('not in how many series they come', async () => {
    const { medium, daily } = mildMay;
    const halves = [
      { medium, daily: daily.slice(15) },
      { medium, daily: daily.slice(0, 15) },
    ];
    const [one, two] = [await ask(), await ask({ temperatures: halves })];
    expect(two.daily.map(({ date, min, max, basis }) => [date, min, max, basis])).toEqual(
      one.daily.map(({ date, min, max, basis }) => [date, min, max, basis]),
    );
    expect(daysTo(two.emergence.half)).toBeCloseTo(daysTo(one.emergence.half), 9);
  });

  it('not the offset in which an instant is written', async () => {
    const values = Array.from({ length: 300 }, (_, i) => 15 - 5 * Math.cos((Math.PI * i) / 12));
    const [local, utc] = [
      await ask({ temperatures: [hourlySeries(values, { start: '2027-05-01T00:00', offset: '-02:00' })] }),
      await ask({ temperatures: [hourlySeries(values, { start: '2027-05-01T02:00', offset: 'Z' })] }),
    ];
    expect(theSowing(utc)).toEqual(theSowing(local));
  });
});

describe('several series', () => {
  it('let what was measured win over what was forecast, in either order', async () => {
    const measured = constant(15, 10);
    const forecast = { ...constant(25), origin: 'forecast' };
    for (const temperatures of [
      [measured, forecast],
      [forecast, measured],
    ]) {
      const { daily } = await ask({ temperatures });
      expect(daily.find(({ date }) => date === '2027-05-10')).toMatchObject({ mean: 15, basis: 'measured' });
      expect(daily.find(({ date }) => date === '2027-05-11')).toMatchObject({ mean: 25, basis: 'forecast' });
    }
  });

  it('are each told back as they were understood', async () => {
    const { understood } = await ask({ temperatures: [constant(15, 10), constant(16, 10, '2027-05-11')] });
    expect(understood.map(({ from, to, mean }) => [from, to, mean])).toEqual([
      ['2027-05-01', '2027-05-10', 15],
      ['2027-05-11', '2027-05-20', 16],
    ]);
  });
});

describe('readings that come later', () => {
  it('never change what was up before them', async () => {
    const weather = Array.from({ length: 24 * 16 }, (_, i) => 14 + (i % 100) / 20 - 4 * Math.cos((Math.PI * i) / 12));
    const until = (days: number) =>
      ask({ crop: 'radish', temperatures: [hourlySeries(weather.slice(0, 24 * days + 1))], countDays: 21 });
    const all = await until(16);
    for (const days of [4, 7, 9, 12]) {
      const last = dateAfter('2027-05-01', days);
      const earlier = (answer: ForecastAnswer) =>
        answer.daily.filter(({ date }) => date < last).map(({ date, emergedPercent }) => [date, emergedPercent]);
      const known = earlier(await until(days));
      expect(known).toHaveLength(days - 2);
      expect(known).toEqual(earlier(all));
    }
    const upAtLast = all.daily.filter(({ date }) => date < '2027-05-13').at(-1)!.emergedPercent;
    expect(upAtLast).toBeGreaterThan(20);
  });

  it('never change it by the day either', async () => {
    const until = (days: number) => ask({ temperatures: [constant(15, days)], countDays: 21 });
    const [some, more] = [await until(8), await until(20)];
    const earlier = (answer: ForecastAnswer) => answer.daily.filter(({ date }) => date <= '2027-05-08');
    expect(earlier(some)).toEqual(earlier(more));
  });
});

describe('days of 23 and 25 hours', () => {
  // Clocks in Berlin go forward on 28 March 2027 at 2:00 and back on 31 October at 3:00: the rule of the European Union.
  const berlin = (date: string, time: string, tempC: number, crop = 'turnip') =>
    ask({
      crop,
      where: { place: { latitude: 52, longitude: 13, timeZone: 'Europe/Berlin' } },
      sowing: { date, time },
      temperatures: [constant(tempC, 30, dateAfter(date, -5))],
    });

  it('leave elapsed days alone: turnip at 25 °C is half up after 24 hours', async () => {
    for (const date of ['2027-03-27', '2027-10-30', '2027-06-01']) {
      expect(Math.abs(daysTo((await berlin(date, '12:00', 25)).emergence.half) - 1)).toBeLessThan(0.02);
    }
  });

  it('move the date on where a day is short: 24 hours after 23:45 it is past midnight', async () => {
    expect((await berlin('2027-03-27', '23:45', 25)).emergence.half).toMatchObject({ date: '2027-03-29' });
    expect((await berlin('2027-06-01', '23:45', 25)).emergence.half).toMatchObject({ date: '2027-06-02' });
  });

  it('hold the date where a day is long: 24 hours after 0:30 it is still the same day', async () => {
    expect((await berlin('2027-10-31', '00:30', 25)).emergence.half).toMatchObject({ date: '2027-10-31' });
    expect((await berlin('2027-06-01', '00:30', 25)).emergence.half).toMatchObject({ date: '2027-06-02' });
  });

  it('have 23 and 25 hot hours', async () => {
    const hotOn = ({ daily }: ForecastAnswer, date: string) => daily.find((day) => day.date === date)!.hotHours;
    const spring = await berlin('2027-03-26', '12:00', 30, 'lettuce');
    expect(hotOn(spring, '2027-03-27')).toBe(24);
    expect(hotOn(spring, '2027-03-28')).toBe(23);
    const autumn = await berlin('2027-10-29', '12:00', 30, 'lettuce');
    expect(hotOn(autumn, '2027-10-31')).toBe(25);
    expect(hotOn(autumn, '2027-11-01')).toBe(24);
  });
});

describe('where and when', () => {
  const kolkata = { latitude: 22.5, longitude: 88.4, timeZone: 'Asia/Kolkata' };

  it('a zone of half hours has days of 24 hours, from its own midnight', async () => {
    const hot = hourlySeries(
      Array.from({ length: 24 * 10 + 1 }, (_, i) => (i >= 72 && i <= 96 ? 30 : 20)),
      { start: '2027-05-01T00:00', offset: '+05:30' },
    );
    const answer = await ask({ where: { place: kolkata }, temperatures: [hot], sowing: { date: '2027-05-03' } });
    const day = (date: string) => answer.daily.find((one) => one.date === date)!;
    expect(day('2027-05-04')).toMatchObject({ min: 30, max: 30, mean: 30 });
    expect(day('2027-05-04').hotHours).toBeGreaterThanOrEqual(23);
    expect(day('2027-05-04').hotHours).toBeLessThanOrEqual(24);
    expect(day('2027-05-06')).toMatchObject({ min: 20, max: 20, hotHours: 0 });
    const onion = await ask({ crop: 'onion', where: { place: kolkata }, temperatures: [constant(15)] });
    expect(daysTo(onion.emergence.half)).toBeCloseTo(7, 1);
  });

  it('a sowing without a time is at noon', async () => {
    const said = await ask({ sowing: { date: '2027-05-03', time: '12:00' } });
    expect(await ask()).toEqual(said);
    const evening = await ask({ sowing: { date: '2027-05-03', time: '18:00' } });
    expect(daysTo(evening.emergence.half)).not.toBeCloseTo(daysTo(said.emergence.half), 3);
  });

  it('without a where, the stamps’ own offset serves', async () => {
    const series = hourlySeries(Array.from({ length: 24 * 20 }, (_, i) => 15 - 5 * Math.cos((Math.PI * i) / 12)));
    const nowhere = await ask({ where: undefined, temperatures: [series] });
    const somewhere = await ask({ where: { place: { timeZone: 'Etc/GMT+2' } }, temperatures: [series] });
    expect(theSowing(nowhere)).toEqual(theSowing(somewhere));
    expect(codes(nowhere.assumptions)).toContain('zone-from-stamps');
    expect(codes(somewhere.assumptions)).not.toContain('zone-from-stamps');
  });

  it('the grower’s own crop may stand wherever a crop’s id may: a crop’s rows sent back give its days', async () => {
    const { rows } = (await app.inject('/v1/crops/onion')).json();
    for (const tempC of [10, 15, 20]) {
      const [own, onion] = [
        await ask({ crop: { rows }, temperatures: [constant(tempC)] }),
        await ask({ crop: 'onion', temperatures: [constant(tempC)] }),
      ];
      expect(daysTo(own.emergence.half) / daysTo(onion.emergence.half)).toBeCloseTo(1, 2);
      expect(own.stand.laboratory).toBe(onion.stand.laboratory);
      expect(own.crop).toBe('own-rows');
    }
  });

  it('own rows without any percent give every seed', async () => {
    const rows = [
      { temperatureC: 20, days: 5, percent: null },
      { temperatureC: 10, days: 10, percent: null },
    ];
    const answer = await ask({ crop: { name: 'Quillmere cress', rows }, temperatures: [constant(15)] });
    // 1/days runs straight between 1/10 and 1/5.
    expect(Math.abs(daysTo(answer.emergence.half) * 0.15 - 1)).toBeLessThan(0.02);
    expect(answer.stand.laboratory).toBe(100);
    expect(codes(answer.assumptions)).toContain('own-rows');
  });

  it('bunching onion answers as onion does, and says so', async () => {
    const [bunching, onion] = [await ask({ crop: 'bunching-onion' }), await ask({ crop: 'onion' })];
    expect(bunching.emergence).toEqual(onion.emergence);
    expect(bunching.stand).toEqual(onion.stand);
    expect(bunching.warnings.map(({ text }) => text).join(' ')).toMatch(/onion/);
    expect(bunching.warnings).not.toEqual(onion.warnings);
  });
});

describe('what the service answers can be sent back to it', () => {
  it('a file, once understood, as a series by the day', async () => {
    const answer = await forecastOf(app, demoFile, demoQuery);
    const { series } = answer.understood[0]!;
    const again = await forecastOf(app, {
      crop: 'lettuce',
      where: { place: quillmere },
      sowing: { date: '2027-08-03', time: '10:00', seeds: 200 },
      temperatures: [series],
    });
    expect(Math.abs(daysTo(again.emergence.first) - daysTo(answer.emergence.first))).toBeLessThan(1);
    expect(again.daily.slice(0, 3).map(({ min, mean, max }) => [min, mean, max])).toEqual(
      answer.daily.slice(0, 3).map(({ min, mean, max }) => [min, mean, max]),
    );
    // The morning of 6 August is no whole day, and is not taken for one.
    expect(again.understood[0]!.to).toBe('2027-08-05');
  });

  it('a series by the day comes back as it went, and answers the same', async () => {
    const first = await ask();
    const again = await ask({ temperatures: [first.understood[0]!.series] });
    expect(theSowing(again)).toEqual(theSowing(first));
    expect(again.understood[0]!.series).toEqual(first.understood[0]!.series);
  });
});

describe('GET /v1/crops', () => {
  const tagged = (etag: string) => app.inject({ method: 'GET', url: '/v1/crops', headers: { 'if-none-match': etag } });

  it('carries a weak tag, the same again, and is not sent twice', async () => {
    const first = await app.inject('/v1/crops');
    const etag = String(first.headers.etag);
    expect(etag).toMatch(/^W\/"[^"]+"$/);
    expect(first.headers.vary).toBe('Accept, Accept-Encoding, Accept-Language');
    const second = await tagged(etag);
    expect(second.statusCode).toBe(304);
    expect(second.body).toBe('');
    expect(second.headers.etag).toBe(etag);
    expect((await tagged('W/"another"')).statusCode).toBe(200);
    expect((await tagged(`W/"another", ${etag}`)).statusCode).toBe(304);
    // Weak comparison, RFC 9110, 8.8.3.2: a cache may have dropped the W/.
    expect((await tagged(etag.slice(2))).statusCode).toBe(304);
  });

  it('has a tag that does not change with the time of issue, but with the content', async () => {
    const later = await startApp({ clock: () => new Date('2027-09-01T00:00:00Z') });
    const [now, then] = [await app.inject('/v1/crops'), await later.inject('/v1/crops')];
    expect(then.json().issuedAt).not.toBe(now.json().issuedAt);
    expect(then.headers.etag).toBe(now.headers.etag);
    expect((await app.inject('/v1/crops?limit=3')).headers.etag).not.toBe(now.headers.etag);
  });

  it('lists 26 crops, all at once or page by page', async () => {
    const all = (await app.inject('/v1/crops')).json();
    expect(all.crops).toHaveLength(26);
    expect(all.next).toBeNull();
    const paged: unknown[] = [];
    let after = '';
    for (let page = 0; page < 4; page++) {
      const { crops, next } = (await app.inject(`/v1/crops?limit=8${after}`)).json();
      paged.push(...crops);
      after = `&after=${next}`;
    }
    expect(paged).toEqual(all.crops);
  });

  it('gives one crop as the list has it', async () => {
    const { crops } = (await app.inject('/v1/crops')).json();
    for (const crop of crops) expect((await app.inject(`/v1/crops/${crop.id}`)).json()).toMatchObject(crop);
  });
});

describe('keys', async () => {
  const keyed = await startApp({ findOwner: keyring(new Map([['s3cret', 'quillmere']])) });

  it('let in who has one, and nobody else', async () => {
    const request = { method: 'POST', url: '/v1/forecasts', payload: lettuceQuestion() } as const;
    expect((await keyed.inject(request)).statusCode).toBe(401);
    const admitted = await keyed.inject({ ...request, headers: { authorization: 'Bearer s3cret' } });
    expect(admitted.statusCode).toBe(200);
    expect(admitted.json()).toEqual(await ask({}, ''));
    const wrong = await keyed.inject({ ...request, headers: { authorization: 'Bearer s3cre' } });
    expect(wrong.statusCode).toBe(401);
  });

  it('are not asked for where a route is open', async () => {
    for (const url of ['/healthz', '/readyz', '/openapi.json', '/docs', '/problems/not-json']) {
      expect((await keyed.inject(url)).statusCode, url).toBe(200);
    }
    expect((await keyed.inject('/')).statusCode).toBeLessThan(400);
  });

  it('are asked for however the address is written: in full, or with letters in disguise', async () => {
    const listening = await startApp({ findOwner: keyring(new Map([['s3cret', 'quillmere']])) });
    onTestFinished(() => listening.close());
    await listening.listen({ port: 0, host: '127.0.0.1' });
    const { port } = listening.server.address() as AddressInfo;
    const statusOf = (path: string): Promise<number | undefined> =>
      new Promise((resolve, reject) => {
        get({ host: '127.0.0.1', port, path }, (response) => {
          response.resume();
          resolve(response.statusCode);
        }).on('error', reject);
      });
    for (const path of ['/v1/crops', 'http://quillmere.example/v1/crops', '/%76%31/crops', '/v1/%63rops']) {
      expect(await statusOf(path), path).toBe(401);
    }
  });

  it('are asked for before anything is said of the request', async () => {
    const response = await post(keyed, '/v1/forecasts', { nonsense: true });
    expect(response.statusCode).toBe(401);
    expect(response.body).not.toContain('nonsense');
  });
});

describe('waiting', () => {
  const waitOf = (answer: ForecastAnswer) =>
    answer.hotSpells!.flatMap(({ remedies }) => remedies).find(({ action }) => action === 'wait')!;
  /** July at 15 °C by day and night, but for three hot days. */
  const threeHotDays = hourlySeries(
    Array.from({ length: 60 * 24 }, (_, hour) =>
      hour >= 10 * 24 && hour < 13 * 24 && hour % 24 >= 8 && hour % 24 < 20 ? 38 : 15,
    ),
    { start: '2027-07-01T00:00' },
  );

  it.each(['onion', 'lettuce', 'spinach', 'carrot'])(
    'for %s names a date whose sowing meets no such spell',
    async (crop) => {
      const question = { crop, temperatures: [threeHotDays], beyond: 'refuse', countDays: 25 };
      const answer = await ask({ ...question, sowing: { date: '2027-07-10' } });
      const [{ freeDate, lookedTo }] = answer.hotSpells! as [NonNullable<ForecastAnswer['hotSpells']>[number]];
      expect([freeDate, lookedTo]).toEqual([{ date: '2027-07-14', hotHoursLeft: 0 }, '2027-08-04']);
      expect(waitOf(answer).text).toContain('a sowing on 14 July 2027 meets no such heat');
      expect(waitOf(answer).params).toMatchObject({ freeDate: '2027-07-14', lookedToDate: '2027-08-04' });
      const { date } = freeDate!;
      expect((await ask({ ...question, sowing: { date } })).hotSpells).toEqual([]);
      expect((await ask({ ...question, sowing: { date: '2027-07-12' } })).hotSpells).not.toEqual([]);
    },
  );

  it('stands among remedies that are worded for the reader, with the numbers beside them as they are', async () => {
    const question = { crop: 'lettuce', temperatures: [threeHotDays], beyond: 'refuse', countDays: 25 };
    const [english, german] = await Promise.all([
      ask({ ...question, sowing: { date: '2027-07-10' } }),
      ask({ ...question, sowing: { date: '2027-07-10' } }, 'lang=de&textUnit=F'),
    ]);
    const indoors = (answer: ForecastAnswer) =>
      answer.hotSpells![0]!.remedies.find(({ action }) => action === 'start-indoors')!;
    expect(indoors(english)).toMatchObject({
      text: expect.stringContaining('in a cool room, below 26 °C by day and night'),
      params: { about: 'heat', thresholdC: 26 },
    });
    expect(indoors(german)).toMatchObject({
      text: expect.stringContaining('in einem kühlen Raum vor, Tag und Nacht unter 79 °F'),
      params: { about: 'heat', thresholdC: 26 },
    });
    const caution = (answer: ForecastAnswer) => answer.warnings.find(({ code }) => code === 'stopped-by-heat')!;
    expect(caution(english).text).toContain('99 seedlings in a hundred seeds at 25 °C, 12 at 30 °C');
    expect(caution(german).text).toContain('99 Sämlinge aus hundert Samen bei 77 °F, 12 bei 86 °F');
    expect(caution(german).source).toMatch(/Harrington/);
    for (const answer of [english, german]) {
      const said = answer.hotSpells!.flatMap(({ remedies }) => remedies.map(({ text }) => text));
      expect(said.join(' ')).not.toContain(answer === german ? '°C' : '°F');
    }
  });

  it('in dry soil begins with the wetting, and the hour of sowing is no remedy', async () => {
    const where = { place: quillmere, bed: { moisture: 'dry', wettedOn: '2027-07-11' } };
    const answer = await ask({
      crop: 'lettuce',
      where,
      temperatures: [threeHotDays],
      sowing: { date: '2027-07-02', time: '10:00' },
    });
    expect(answer.hotSpells).not.toEqual([]);
    expect(answer.hotSpells![0]!.freeDate!.date > '2027-07-11').toBe(true);
    expect(answer.hotSpells![0]!.remedies.map(({ action }) => action)).not.toContain('sow-in-evening');
  });

  it('is not promised where heat goes on as far as is known', async () => {
    const july = dailySeries(
      Array.from({ length: 60 }, () => [24, 38] as const),
      { start: '2027-07-01' },
    );
    const answer = await ask({
      crop: 'lettuce',
      temperatures: [july],
      beyond: 'refuse',
      countDays: 21,
      sowing: { date: '2027-07-05' },
    });
    expect(answer.hotSpells![0]).toMatchObject({ freeDate: null, lookedTo: '2027-07-26' });
    expect(waitOf(answer).text).toContain('Whether waiting helps is not in sight');
  });
});

describe('what the answer does not pass over', () => {
  it('heat that holds part of the seed to the count, though most of the rest is up', async () => {
    const cool = Array.from({ length: 94 }, () => 15);
    const answer = await ask({
      crop: 'lettuce',
      sowing: { date: '2027-05-01', time: '00:00' },
      temperatures: [hourlySeries([...cool, ...Array.from({ length: 30 * 24 }, () => 35)])],
    });
    expect(answer.stand.laboratory).toBeLessThan(90);
    expect(answer.hotSpells).not.toEqual([]);
  });

  it('a few hot hours in the seed’s first day, which make no spell', async () => {
    const hours = Array.from({ length: 30 * 24 }, (_, hour) => (hour >= 2 * 24 + 12 && hour < 2 * 24 + 17 ? 36 : 18));
    const answer = await ask({
      crop: 'lettuce',
      sowing: { date: '2027-05-03', time: '12:00' },
      temperatures: [hourlySeries(hours)],
    });
    expect(answer.hotSpells).toEqual([]);
    expect(codes(answer.warnings)).toContain('hot-first-day');
  });

  it('a bed that changes nothing in what was measured, a distant sowing, and a share sent for a percent', async () => {
    const bed = { kind: 'indoors', roomC: 21, cover: 'fleece' };
    expect(codes((await ask({ where: { place: quillmere, bed } })).assumptions)).toContain('bed-as-measured');
    // Where nothing is said of a bed it is kept moist; of one left to the rain something was said.
    expect(codes((await ask()).assumptions)).not.toContain('bed-as-measured');
    const rained = { moisture: 'rain' };
    expect(codes((await ask({ where: { place: quillmere, bed: rained } })).assumptions)).toContain('bed-as-measured');
    expect(codes((await ask({ sowing: { date: '2028-05-10' } })).warnings)).toContain('far-ahead');
    expect(codes((await ask({ lot: { germinationPercent: 0.9 } })).warnings)).toContain('share-for-percent');
  });

  it('a unit that makes soil colder or hotter than soil is', async () => {
    const codesOf = async (unit: string, minMax: readonly [number, number]) =>
      codes((await ask({ temperatures: [{ ...dailySeries(new Array(30).fill(minMax)), unit }] })).warnings);
    expect(await codesOf('F', [12, 20])).toContain('unit-doubtful');
    expect(await codesOf('C', [32, 40])).toContain('unit-doubtful');
    expect(await codesOf('C', [12, 20])).not.toContain('unit-doubtful');
    expect(await codesOf('F', [50, 68])).not.toContain('unit-doubtful');
  });

  it('that a gap was filled, without calling its days known by their mean', async () => {
    const days = dailySeries(new Array(30).fill([10, 20]));
    const gap = { ...days, daily: days.daily.filter((_, day) => day !== 8) };
    const warned = codes((await ask({ temperatures: [gap] })).warnings);
    expect(warned).toContain('hours-filled');
    expect(warned).not.toContain('some-days-without-swing');
  });

  it('on what each day rests: half measured, half forecast is not measured', async () => {
    const measured = hourlySeries(new Array(5 * 24 + 12).fill(15));
    const forecast = {
      ...dailySeries(new Array(25).fill([25, 35]), { start: '2027-05-06' }),
      origin: 'forecast',
    };
    const answer = await ask({ temperatures: [measured, forecast] });
    const day = answer.daily.find(({ date }) => date === '2027-05-06')!;
    expect(day).toMatchObject({ basis: 'forecast', min: 15 });
    expect(answer.daily.find(({ date }) => date === '2027-05-05')!.basis).toBe('measured');
  });
});

describe('the day between its minimum and maximum', () => {
  /** The warmest hour after noon by which a hot spell of a clear day begins and ends moves with the sun. */
  const hotHours = async (place: Record<string, unknown>) => {
    const days = dailySeries(new Array(30).fill([10, 30]), { start: '2027-06-01' });
    const answer = await ask(
      {
        crop: 'lettuce',
        where: { place: { ...quillmere, ...place } },
        sowing: { date: '2027-06-05', time: '15:00' },
        temperatures: [days],
      },
      'precision=full',
    );
    return answer.daily[0]!.hotHours;
  };

  it('comes later by the clock in the west of a zone', async () => {
    const inTheMiddle = await hotHours({});
    expect(await hotHours({ longitude: -52 })).toBeGreaterThan(inTheMiddle);
    expect(await hotHours({ longitude: -8 })).toBeLessThan(inTheMiddle);
  });

  it('is longer in June in the north than in the south', async () => {
    expect(await hotHours({ latitude: 60 })).toBeGreaterThan(await hotHours({ latitude: -60 }));
  });
});
