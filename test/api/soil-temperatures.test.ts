import { describe, expect, it } from 'vitest';
import type { SoilAnswer } from '../../src/contract/soil.js';
import {
  dailySeries,
  dateAfter,
  daysTo,
  forecastOf,
  hourlySeries,
  post,
  quillmere,
  soilOf,
  startApp,
} from './helper.js';

// Soil from air, from probes at any depth, and from both: invented weather at Quillmere; what is published or measured is
// checked in test/golden and test/accuracy.

const app = await startApp();
const place = { where: { place: quillmere } };
const codes = (notes: readonly { readonly code: string }[]): string[] => notes.map(({ code }) => code);

/** Air by the day: a spring that warms, with weather in it. */
const airFrom = (start: string, days: number, { level = 8, origin }: { level?: number; origin?: string } = {}) => ({
  ...dailySeries(
    Array.from({ length: days }, (_, day) => {
      const mean = level + 0.12 * day + 3 * Math.sin(day / 2.3);
      return [Math.round(10 * (mean - 5)) / 10, Math.round(10 * (mean + 5 + Math.sin(day))) / 10] as const;
    }),
    { start },
  ),
  medium: 'air',
  ...(origin ? { origin } : {}),
});
const spring = airFrom('2027-03-01', 75);

const daysOf = ({ series }: SoilAnswer) => {
  if (!('daily' in series)) throw new Error('asked by the hour');
  return series.daily;
};
const readingsOf = ({ series }: SoilAnswer) => {
  if (!('readings' in series)) throw new Error('asked by the day');
  return series.readings;
};
const soil = (question: Record<string, unknown>, query = 'precision=full') =>
  soilOf(app, { ...place, ...question }, query);
const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

describe('air that leaves a hole around the dates asked', () => {
  it.each([
    ['years on both sides', ['1900-01-01', '2199-12-31'], '2027-08-01'],
    ['months after the last day before', ['2027-01-01', '2027-12-31'], '2027-06-20'],
  ] as const)('is refused in words, not by a fault of ours: %s', async (_, dates, from) => {
    const response = await post(app, '/v1/soil-temperatures', {
      where: { place: quillmere },
      from,
      to: from,
      temperatures: [{ medium: 'air', daily: dates.map((date) => ({ date, min: 5, max: 15 })) }],
    });
    expect(response.json()).toMatchObject({ status: 422, code: 'gap-too-long' });
  });
});

describe('soil from air', () => {
  it('is told for each day that the air is, at the depth asked, with how sure it is', async () => {
    const answer = await soil({ depthCm: 5, temperatures: [spring] }, '');
    const days = daysOf(answer);
    expect(days.map(({ date }) => date)).toEqual(spring.daily.map(({ date }) => date));
    expect(answer.series).toMatchObject({ medium: 'soil', probeDepthCm: 5, unit: 'C' });
    for (const { basis, plusMinus, min, mean: middle, max } of days) {
      expect(basis).toBe('modelled');
      expect(plusMinus).toBeGreaterThan(1);
      expect(min).toBeLessThan(middle);
      expect(middle).toBeLessThan(max);
    }
    expect(codes(answer.assumptions)).toEqual(expect.arrayContaining(['soil-from-air', 'soil-before']));
  });

  it('takes the depth of the sowing, of the crop, else half an inch', async () => {
    const depthOf = async (question: Record<string, unknown>) =>
      (await soil({ temperatures: [spring], to: '2027-03-04', ...question })).series.probeDepthCm;
    expect(await depthOf({ crop: 'snap-bean', sowing: { date: '2027-05-01', depthCm: 4 } })).toBe(4);
    expect(await depthOf({ crop: 'lettuce' })).toBe(0.6);
    expect(await depthOf({})).toBe(1.3);
  });

  it('is a better estimate under grass for a year of air and the annual rain', async () => {
    const grass = { cover: 'grass' };
    const years = dailySeries(
      Array.from({ length: 500 }, (_, day) => {
        const level = 10 - 9 * Math.cos((2 * Math.PI * (day - 20)) / 365.25);
        return [level - 5, level + 5] as const;
      }),
      { start: '2026-01-01' },
    );
    const ask = (annualRainMm?: number) =>
      soilOf(app, {
        where: { place: { ...quillmere, ...(annualRainMm === undefined ? {} : { annualRainMm }) }, bed: grass },
        depthCm: 5,
        from: '2026-06-10',
        to: '2026-06-20',
        temperatures: [{ ...years, medium: 'air' }],
      });
    const [unknown, dry, humid] = await Promise.all([ask(), ask(250), ask(1400)]);
    expect(codes(unknown.assumptions)).toContain('climate-unknown');
    expect(codes(humid.assumptions)).not.toContain('climate-unknown');
    const level = (answer: SoilAnswer) => mean(daysOf(answer).map((day) => day.mean));
    expect(level(dry)).toBeGreaterThan(level(humid) + 0.5);
    expect(mean(daysOf(dry).map((day) => day.plusMinus))).toBeGreaterThan(
      mean(daysOf(humid).map((day) => day.plusMinus)),
    );
  });

  it('comes from a file of air as well', async () => {
    const file = [
      'date,air min (C),air max (C)',
      ...spring.daily.map(({ date, min, max }) => `${date},${min},${max}`),
    ].join('\n');
    const query = 'latitude=44&longitude=-30&timeZone=Etc/GMT%2B2&depthCm=5&precision=full';
    const [fromFile, fromJson] = [await soilOf(app, file, query), await soil({ depthCm: 5, temperatures: [spring] })];
    expect(daysOf(fromFile)).toEqual(daysOf(fromJson));
  });

  it('differs by the bed: shade, water, covers, pots', async () => {
    const levelIn = async (bed: Record<string, unknown>) => {
      const answer = await soil({ where: { place: quillmere, bed }, temperatures: [spring], from: '2027-05-01' });
      return mean(daysOf(answer).map(({ max }) => max));
    };
    const bare = await levelIn({});
    expect(await levelIn({ shadePercent: 50 })).toBeLessThan(bare - 1);
    expect(await levelIn({ moisture: 'wet' })).toBeLessThan(bare - 1);
    expect(await levelIn({ cover: 'clear-film' })).toBeGreaterThan(bare + 1);
    expect(await levelIn({ moisture: 'dry', wettedOn: '2027-05-01' })).toBeCloseTo(
      await levelIn({ moisture: 'moist' }),
      0,
    );
  });

  it('goes on by the season after the last value, less and less sure, and not where that is refused', async () => {
    const days = daysOf(await soil({ temperatures: [spring], from: '2027-05-10', to: '2027-06-10' }));
    expect(days.slice(0, 5).every(({ basis }) => basis === 'modelled')).toBe(true);
    expect(days.slice(5).every(({ basis }) => basis === 'drift')).toBe(true);
    expect(days.at(-1)!.plusMinus).toBeGreaterThan(days[5]!.plusMinus);
    const refused = await post(app, '/v1/soil-temperatures', {
      ...place,
      temperatures: [spring],
      to: '2027-06-10',
      beyond: 'refuse',
    });
    expect(refused.json()).toMatchObject({ status: 422, code: 'ends-too-early' });
  });
});

describe('indoors', () => {
  const room = { where: { place: { timeZone: 'Etc/GMT+2' }, bed: { kind: 'indoors', roomC: 19 } } };

  it('stays at the room’s temperature, without any series, by day and by hour', async () => {
    const dates = { from: '2027-03-01', to: '2027-03-05' };
    const days = daysOf(await soilOf(app, { ...room, ...dates }));
    expect(days).toHaveLength(5);
    for (const day of days) expect(day).toMatchObject({ min: 19, mean: 19, max: 19, basis: 'modelled' });
    const hours = readingsOf(await soilOf(app, { ...room, ...dates, step: 'hour' }));
    expect(hours).toHaveLength(5 * 24 + 1);
    expect(hours.every(({ value }) => value === 19)).toBe(true);
  });

  it('takes no air from outside', async () => {
    const answer = await soilOf(app, { ...room, temperatures: [spring], from: '2027-03-10', to: '2027-03-12' });
    expect(daysOf(answer).every(({ min, max }) => min === 19 && max === 19)).toBe(true);
    expect(codes(answer.warnings)).toContain('air-not-used');
  });

  it('brings a sowing up as the chart has it', async () => {
    // Lettuce at 20 °C: 3 days. Knott's Handbook, 4th ed. (1997), after Harrington and Minges (1954).
    const where = { place: { timeZone: 'Etc/GMT+2' }, bed: { kind: 'indoors', roomC: 20 } };
    const answer = await forecastOf(app, { crop: 'lettuce', where, sowing: { date: '2027-02-01' } }, 'precision=full');
    expect(daysTo(answer.emergence.half)).toBeCloseTo(3, 1);
  });

  it('needs the dates, and the zone, where no temperatures say them', async () => {
    const noDates = await post(app, '/v1/soil-temperatures', room);
    expect(noDates.json()).toMatchObject({ status: 422, errors: [{ pointer: '#/from' }] });
    const noZone = await post(app, '/v1/soil-temperatures', {
      where: { place: {}, bed: { kind: 'indoors', roomC: 19 } },
      from: '2027-03-01',
      to: '2027-03-02',
    });
    expect(noZone.json()).toMatchObject({ status: 422, code: 'time-zone-needed' });
  });
});

describe('a probe', () => {
  const swinging = (days: number, swingC: number, level = 14) =>
    hourlySeries(
      Array.from({ length: 24 * days }, (_, hour) => level + swingC * Math.sin((2 * Math.PI * (hour - 9)) / 24)),
      { start: '2027-05-01T00:00' },
    );

  it('at the depth asked is told back as it was read', async () => {
    const probe = { ...swinging(6, 4), probeDepthCm: 5 };
    const days = daysOf(await soil({ depthCm: 5, temperatures: [probe] }));
    expect(days[1]).toMatchObject({ basis: 'measured', min: 10, max: 18 });
    expect(days[1]!.plusMinus).toBeLessThan(0.5);
  });

  it('is carried down, losing swing, and up, gaining it, about the same mean', async () => {
    const probe = { ...swinging(10, 4), probeDepthCm: 8 };
    const at = async (depthCm: number) => daysOf(await soil({ depthCm, temperatures: [probe] }))[6]!;
    const [up, same, down] = [await at(2), await at(8), await at(20)];
    const swing = ({ min, max }: { min: number; max: number }): number => max - min;
    expect(swing(up)).toBeGreaterThan(1.3 * swing(same));
    expect(swing(down)).toBeLessThan(0.6 * swing(same));
    expect(up.mean).toBeCloseTo(same.mean, 0);
    // In a spring that warms, the ground below lags a little.
    expect(Math.abs(down.mean - same.mean)).toBeLessThan(0.8);
    expect(up.basis).toBe('measured');
  });

  it('too deep for its swing gives its mean, and a usual day’s swing, and says so', async () => {
    const probe = { ...swinging(10, 0.5), probeDepthCm: 30 };
    const answer = await soil({ depthCm: 1.3, temperatures: [probe] });
    expect(codes(answer.warnings)).toContain('probe-too-deep');
    const day = daysOf(answer)[6]!;
    expect(day.basis).toBe('modelled');
    expect(day.mean).toBeCloseTo(14, 0);
    expect(day.max - day.min).toBeGreaterThan(5);
  });

  it('of under two days is used as it is, and says so', async () => {
    const answer = await soil({
      depthCm: 1.3,
      temperatures: [{ ...swinging(1.5, 4), probeDepthCm: 5 }],
      to: '2027-05-01',
    });
    expect(codes(answer.warnings)).toContain('depth-not-moved');
  });

  it('near the depth asked wins over one far from it', async () => {
    const [near, far] = [
      { ...swinging(8, 3, 15), probeDepthCm: 5 },
      { ...swinging(8, 1, 10), probeDepthCm: 12 },
    ];
    for (const temperatures of [
      [near, far],
      [far, near],
    ]) {
      expect(daysOf(await soil({ depthCm: 5, temperatures }))[4]!.mean).toBeCloseTo(15, 1);
    }
  });
});

describe('a probe and the air together', () => {
  const measuredFrom = '2027-04-20';
  const coming = airFrom('2027-05-04', 10, { level: 14, origin: 'forecast' });
  const past = airFrom('2027-03-01', 64);

  /** A probe at 5 cm that reads this much above the model, over a week. */
  const probeAbove = async (aboveK: number) => {
    const modelled = readingsOf(
      await soil({ depthCm: 5, temperatures: [past], from: measuredFrom, to: '2027-04-27', step: 'hour' }),
    );
    return {
      medium: 'soil',
      probeDepthCm: 5,
      readings: modelled.map(({ at, value }) => ({ at, value: value + aboveK })),
    };
  };

  it('teach the model: the days after the probe come out as much above it, less and less', async () => {
    const probe = await probeAbove(2);
    const alone = daysOf(await soil({ depthCm: 5, temperatures: [past, coming] }));
    const taught = daysOf(await soil({ depthCm: 5, temperatures: [past, coming, probe] }));
    const above = (date: string): number =>
      taught.find((day) => day.date === date)!.mean - alone.find((day) => day.date === date)!.mean;
    expect(above('2027-04-24')).toBeCloseTo(2, 1);
    expect(above('2027-04-29')).toBeGreaterThan(1.2);
    expect(above('2027-05-13')).toBeGreaterThan(0.7);
    expect(above('2027-05-13')).toBeLessThan(above('2027-04-29'));
    const of = (date: string) => taught.find((day) => day.date === date)!;
    expect([of('2027-04-24'), of('2027-04-30'), of('2027-05-06'), of('2027-04-10')].map(({ basis }) => basis)).toEqual([
      'measured',
      'corrected',
      'forecast',
      'corrected',
    ]);
    expect(of('2027-04-30').plusMinus).toBeLessThan(alone.find(({ date }) => date === '2027-04-30')!.plusMinus);
    expect(of('2027-05-12').plusMinus).toBeGreaterThan(of('2027-05-05').plusMinus);
  });

  // Ground that is kept moist is too cold in this spring for all tomatoes, whose range then has no end; peas have one.
  it('narrow the range of a forecast', async () => {
    const ask = async (temperatures: readonly object[]) => {
      const { emergence } = await forecastOf(app, {
        crop: 'parsnip',
        ...place,
        sowing: { date: '2027-04-28', depthCm: 5 },
        temperatures,
      });
      const widths = [emergence.first, emergence.half, emergence.most].map((one) => {
        if ('why' in one || one.range.to === null) throw new Error('some may not come');
        return (Date.parse(one.range.to) - Date.parse(one.range.from)) / 86_400_000;
      });
      return widths.reduce((sum, days) => sum + days, 0);
    };
    expect(await ask([past, coming, await probeAbove(0)])).toBeLessThan(await ask([past, coming]));
  });

  it('go on from last week’s probe with next week’s weather alone', async () => {
    const probe = await probeAbove(1.5);
    const next = airFrom('2027-04-28', 8, { level: 12, origin: 'forecast' });
    const days = daysOf(await soil({ depthCm: 5, temperatures: [probe, next], from: '2027-04-26' }));
    expect(days.map(({ basis }) => basis).slice(0, 4)).toEqual(['measured', 'measured', 'forecast', 'forecast']);
    // The soil does not jump where the probe ends, and is surer at first than a week on.
    expect(Math.abs(days[2]!.mean - days[1]!.mean)).toBeLessThan(2.5);
    expect(days[2]!.plusMinus).toBeLessThan(days.at(-1)!.plusMinus);
  });

  it('fill gaps by their length, and tell how much was filled', async () => {
    const { readings, ...probe } = await probeAbove(1);
    const without = (fromH: number, toH: number) => ({
      ...probe,
      readings: readings.filter((_, hour) => hour < fromH || hour >= toH),
    });
    const basisOf = async (fromH: number, toH: number) => {
      const answer = await soil({
        depthCm: 5,
        temperatures: [past, without(fromH, toH)],
        from: measuredFrom,
        to: '2027-04-27',
        step: 'hour',
      });
      return readingsOf(answer).map(({ basis, value }, hour) => ({
        basis,
        errorK: Math.abs(value - readings[hour]!.value),
      }));
    };
    for (const [fromH, toH] of [
      [50, 60],
      [40, 110],
    ] as const) {
      const hours = await basisOf(fromH, toH);
      expect(hours[fromH + 2]!.basis).toBe('filled');
      expect(hours[fromH - 3]!.basis).toBe('measured');
      expect(Math.max(...hours.slice(fromH, toH).map(({ errorK }) => errorK))).toBeLessThan(0.4);
    }
    const forecast = await forecastOf(app, {
      crop: 'onion',
      ...place,
      sowing: { date: '2027-04-21', depthCm: 5 },
      temperatures: [past, without(50, 60)],
    });
    expect(forecast.warnings.find(({ code }) => code === 'hours-filled')?.text).toMatch(
      /\d+ hours, \d+ % of those asked about/,
    );
  });

  it('doubt readings that nothing in the air explains, and learn nothing from them', async () => {
    const probe = await probeAbove(0.5);
    const pulledOut = {
      ...probe,
      readings: probe.readings.map((reading, hour) =>
        hour >= 80 && hour < 90 ? { ...reading, value: reading.value + 15 } : reading,
      ),
    };
    const honest = await soil({ depthCm: 5, temperatures: [past, coming, probe] });
    const spoilt = await soil({ depthCm: 5, temperatures: [past, coming, pulledOut] });
    expect(codes(honest.warnings)).not.toContain('unlike-the-air');
    expect(spoilt.warnings.find(({ code }) => code === 'unlike-the-air')).toMatchObject({
      params: { firstDate: '2027-04-23' },
      text: expect.stringContaining('first on 23 April 2027 at '),
    });
    const [a, b] = [honest, spoilt].map((answer) => daysOf(answer).find(({ date }) => date === '2027-05-02')!.mean);
    expect(Math.abs(a! - b!)).toBeLessThan(0.3);
  });

  it('take daily means of a probe for the level, and the swing from the air', async () => {
    const means = daysOf(await soil({ depthCm: 10, temperatures: [past], from: measuredFrom, to: '2027-04-27' }));
    const probe = {
      medium: 'soil',
      probeDepthCm: 10,
      daily: means.map(({ date, mean: middle }) => ({ date, mean: middle + 2 })),
    };
    const alone = daysOf(await soil({ depthCm: 2, temperatures: [past] }));
    const taught = daysOf(await soil({ depthCm: 2, temperatures: [past, probe] }));
    const day = (days: typeof alone) => days.find(({ date }) => date === '2027-04-24')!;
    expect(day(taught).mean - day(alone).mean).toBeCloseTo(2, 0);
    expect(day(taught).max - day(taught).min).toBeCloseTo(day(alone).max - day(alone).min, 0);
  });
});

describe('what comes back can be sent on', () => {
  const crops = ['onion', 'lettuce', 'tomato'] as const;
  const warm = airFrom('2027-04-01', 80, { level: 12 });

  it('by the hour and in full it forecasts the same, within 0.05 days; by the day within 5 %', async () => {
    const sowing = { date: '2027-05-10', depthCm: 2 };
    const asked = { ...place, depthCm: 2, from: '2027-05-01', temperatures: [warm] };
    const hourly = await soilOf(app, { ...asked, step: 'hour' }, 'precision=full');
    const daily = await soilOf(app, asked, 'precision=full');
    for (const crop of crops) {
      const half = async (temperatures: readonly object[]) =>
        daysTo((await forecastOf(app, { crop, ...place, sowing, temperatures }, 'precision=full')).emergence.half);
      const atOnce = await half([warm]);
      expect(Math.abs((await half([hourly.series])) - atOnce), crop).toBeLessThan(0.05);
      expect(Math.abs((await half([daily.series])) / atOnce - 1), crop).toBeLessThan(0.05);
    }
  });

  it('keeps its basis on the way', async () => {
    const answer = await soil({ depthCm: 2, from: '2027-05-01', to: '2027-05-09', temperatures: [warm] });
    const again = await soil({ depthCm: 2, temperatures: [answer.series] });
    expect(daysOf(again).map(({ basis }) => basis)).toEqual(daysOf(answer).map(({ basis }) => basis));
  });
});

describe('a question about the soil', () => {
  const refusal = async (question: Record<string, unknown>) =>
    (await post(app, '/v1/soil-temperatures', { ...place, temperatures: [spring], ...question })).json();

  it('is refused in words where it cannot be answered', async () => {
    expect(await refusal({ from: '2027-02-01' })).toMatchObject({ errors: [{ pointer: '#/from' }] });
    expect(await refusal({ from: '2027-04-02', to: '2027-04-01' })).toMatchObject({ errors: [{ pointer: '#/to' }] });
    expect(await refusal({ to: '2029-04-01' })).toMatchObject({ code: 'ends-too-early' });
    expect(await refusal({ step: 'minute' })).toMatchObject({ errors: [{ pointer: '#/step' }] });
    expect(await refusal({ depthCm: 31 })).toMatchObject({ errors: [{ pointer: '#/depthCm' }] });
    expect(await refusal({ temperatures: [], where: { place: { timeZone: 'Etc/GMT+2' } } })).toMatchObject({
      errors: [{ pointer: '#/temperatures' }],
    });
    expect(await refusal({ where: { place: { timeZone: 'Etc/GMT+2' } } })).toMatchObject({
      code: 'no-latitude',
      errors: [{ pointer: '#/where/place/latitude' }],
    });
    const years = {
      ...dailySeries(
        Array.from({ length: 1000 }, () => [5, 15] as const),
        { start: '2024-01-01' },
      ),
      medium: 'air',
    };
    expect(await refusal({ temperatures: [years], step: 'hour' })).toMatchObject({ errors: [{ pointer: '#/to' }] });
  });

  it('has days of 23 and 25 hours where clocks change', async () => {
    const air = { ...airFrom('2027-03-01', 45), medium: 'air' };
    const where = { place: { latitude: 52, longitude: 13, timeZone: 'Europe/Berlin' } };
    const count = async (date: string, temperatures: readonly object[]) =>
      readingsOf(await soilOf(app, { where, from: date, to: date, step: 'hour', temperatures })).length - 1;
    expect(await count('2027-03-28', [air])).toBe(23);
    expect(await count('2027-03-29', [air])).toBe(24);
    expect(await count('2027-10-31', [{ ...airFrom('2027-10-01', 45), medium: 'air' }])).toBe(25);
  });

  it('says no more than the day before of a last day that is cut short', async () => {
    const hours = Array.from({ length: 24 * 20 + 10 }, (_, hour) => 10 + 5 * Math.sin((2 * Math.PI * (hour - 9)) / 24));
    const air = { ...hourlySeries(hours, { start: '2027-05-01T00:00' }), medium: 'air' };
    const days = daysOf(await soil({ temperatures: [air] }));
    expect(days.at(-1)!.date).toBe(dateAfter('2027-05-01', 20));
  });
});

describe('two probes by the hour', () => {
  it('tell how fast warmth spreads in the bed, and so what a third depth is', async () => {
    // A wave in soil of 8e-7 m²/s, a third faster than bare ground is taken to be: 10, 7.5 and 5.6 K at 2, 6 and 10 cm.
    const dampingCm = 100 * Math.sqrt((8e-7 * 86_400) / Math.PI);
    const at = (depthCm: number) => ({
      ...hourlySeries(
        Array.from(
          { length: 24 * 12 },
          (_, hour) =>
            18 +
            10 *
              Math.exp((2 - depthCm) / dampingCm) *
              Math.sin((2 * Math.PI * (hour - 9)) / 24 - (depthCm - 2) / dampingCm),
        ),
        { start: '2027-06-01T00:00' },
      ),
      probeDepthCm: depthCm,
    });
    const swingAt = async (temperatures: readonly object[]) => {
      const { min, max } = daysOf(await soil({ depthCm: 2, temperatures }))[6]!;
      return max - min;
    };
    const truth = 20;
    const [both, one] = [await swingAt([at(10), at(6)]), await swingAt([at(6)])];
    expect(Math.abs(both - truth)).toBeLessThan(Math.abs(one - truth));
    expect(both).toBeCloseTo(truth, 0);
  });
});
