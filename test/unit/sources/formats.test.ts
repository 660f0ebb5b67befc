import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, DAY_MS, HOUR_MS, type PlainDate, zoneNamed } from '../../../src/basics/calendar.js';
import { type SourceFormat, sourceFormats } from '../../../src/garden/store/source-formats.js';
import { durationMs, intervalOf } from '../../../src/sources/iso-interval.js';
import { readAnswer } from '../../../src/sources/read-answer.js';
import type { SourceDays } from '../../../src/sources/source-days.js';
import { unitNamed } from '../../../src/sources/unit-name.js';
import { inPlainWords } from '../words/say-plainly.js';

const bytesOf = (answer: unknown): Uint8Array =>
  Buffer.from(typeof answer === 'string' ? answer : JSON.stringify(answer));

/** Reads an answer for a place in a zone; further addresses answer from a list. */
const read = (
  format: SourceFormat,
  answer: unknown,
  timeZone = 'Etc/GMT+2',
  pages: Record<string, unknown> = {},
  url = 'https://weather.example/v1.1/Datastreams(7)/Observations',
): Promise<SourceDays> =>
  inPlainWords(
    (async () =>
      readAnswer(format, answer instanceof Uint8Array ? answer : bytesOf(answer), {
        zone: zoneNamed(timeZone),
        url: new URL(url),
        ask: async ({ href }) => {
          if (!(href in pages)) throw new Error(`nobody should have asked ${href}`);
          return bytesOf(pages[href]);
        },
      }))(),
  );

const allFormats = sourceFormats;

describe('an answer of whatever format', () => {
  test.each(allFormats)('%s is refused where it is empty, a web page, or something else', async (format) => {
    await expect(read(format, '')).rejects.toThrow(/empty/);
    await expect(read(format, '<!DOCTYPE html><title>Sorry</title>')).rejects.toThrow(/web page/);
    await expect(read(format, '{"a":')).rejects.toThrow(/JSON/);
    for (const other of [{ error: 'x' }, [], 'null', '3', '"text"']) {
      await expect(read(format, other)).rejects.toMatchObject({ name: 'SourceError' });
    }
  });

  test.each(allFormats)('%s gives days or a refusal in words, whatever JSON it is', async (format) => {
    await fc.assert(
      fc.asyncProperty(fc.json(), async (json) => {
        const outcome = await read(format, json).catch((error: Error) => error.name);
        if (typeof outcome === 'string') expect(outcome).toBe('SourceError');
      }),
      { numRuns: 60 },
    );
  });
});

describe('a climate station file', () => {
  /** A line of USCRN daily01: Riley, Oregon, 2019-01-01, as archived by NOAA NCEI; the columns are those of its readme. */
  const riley =
    '04128 20190101  2.622 -119.69   43.47     0.3   -14.0    -6.9    -6.8     0.0     7.26 C     1.4   -13.8    -7.2    87.1    41.0    70.9 -99.000 -99.000   0.102   0.113   0.098    -2.4    -0.4     0.8     3.1     3.2';

  test('of the U.S. Climate Reference Network has its maximum in columns 39 to 45 and leaves out missing days', async () => {
    const missing = riley
      .replace('20190101', '20190102')
      .replace('    0.3   -14.0    -6.9    -6.8', '-9999.0 -9999.0 -9999.0 -9999.0');
    const next = riley.replace('20190101', '20190103');
    const { measured, forecast } = await read('station-day-file', `${[riley, missing, next].join('\n')}\n`);
    expect(forecast).toEqual([]);
    expect(measured.map(({ date }) => date)).toEqual(['2019-01-01', '2019-01-03']);
    expect(missing.slice(38, 45)).toBe('-9999.0');
    expect(measured[0]).toEqual({ date: '2019-01-01', min: -14, mean: -6.8, max: 0.3 });
  });

  test.each([
    ['34-uscrn-daily01.txt', 40],
    ['36-ghcn-daily.dly', 60],
    ['38-ghcn-by-station.csv', 60],
  ])('as the readings read it: %s', async (file, days) => {
    const bytes = readFileSync(new URL(`../../../fixtures/logger-files/${file}`, import.meta.url));
    const { measured } = await read('station-day-file', new Uint8Array(bytes));
    expect(measured).toHaveLength(days);
  });

  /** Rows of GHCN-Daily by station: tenths of °C (NOAA NCEI, readme by_station). */
  const row = (date: PlainDate, element: string, tenths: number, quality = '') =>
    `XQ000099001,${date.replaceAll('-', '')},${element},${tenths},,${quality},a,0700`;

  test('of GHCN-Daily is read in tenths, and a value that failed a check is not used', async () => {
    const day = (n: number) => addDays('2027-05-01' as PlainDate, n);
    const rows = Array.from({ length: 10 }, (_, n) => [
      row(day(n), 'TMAX', 171 + n, n === 4 ? 'S' : ''),
      row(day(n), 'TMIN', 62 + n),
      row(day(n), 'PRCP', 3),
    ]);
    const { measured } = await read('station-day-file', `${rows.flat().join('\n')}\n`);
    expect(measured[0]).toEqual({ date: '2027-05-01', min: 6.2, mean: null, max: 17.1 });
    expect(measured.map(({ date }) => date)).not.toContain(day(4));
    expect(measured).toHaveLength(9);
  });

  test('that begins with years of rain alone is read all the same', async () => {
    const first = '2019-01-01' as PlainDate;
    const rows = Array.from({ length: 2000 }, (_, n) => {
      const date = addDays(first, n);
      const warm = n < 1500 ? [] : [row(date, 'TMAX', 150), row(date, 'TMIN', 50)];
      return [row(date, 'PRCP', 0), ...warm, ...(n < 1900 ? [] : [row(date, 'TAVG', 90)])];
    });
    const { measured } = await read('station-day-file', `${rows.flat().join('\n')}\n`);
    expect(measured).toHaveLength(500);
    expect(measured[0]).toEqual({ date: addDays(first, 1500), min: 5, mean: null, max: 15 });
    expect(measured.at(-1)).toEqual({ date: addDays(first, 1999), min: 5, mean: 9, max: 15 });
  });

  test('of rain alone, or that does not say what it holds, is refused in words for an owner, not a sender', async () => {
    const rain = Array.from({ length: 9 }, (_, n) => row(addDays('2027-05-01' as PlainDate, n), 'PRCP', n));
    await expect(read('station-day-file', `${rain.join('\n')}\n`)).rejects.toThrow(/no air temperatures/);
    const soil = 'time,soil temperature (°C)\n2027-05-01 10:00,12\n2027-05-01 11:00,13\n2027-05-01 12:00,14\n';
    await expect(read('station-day-file', soil)).rejects.toThrow(/^The source’s file cannot be used: (?!.*Send)/);
  });
});

describe('a daily archive', () => {
  /** The shape of NASA POWER's daily point answer: its service's documentation, and the header of a published answer. */
  const archive = (parameter: object, units = 'C', header: object = { fill_value: -999 }) => ({
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [-30, 44, 12.1] },
    properties: { parameter },
    header: { title: 'Daily Data', api: { name: 'Daily API' }, start: '20270501', end: '20270503', ...header },
    messages: [],
    parameters: Object.fromEntries(Object.keys(parameter).map((name) => [name, { units, longname: name }])),
    times: { data: 1, process: 0.1 },
  });

  test('has minimum, mean and maximum by date, in order, without those that are filled up', async () => {
    const { measured } = await read(
      'daily-archive-json',
      archive({
        T2M_MAX: { '20270502': 17.4, '20270501': 18.3, '20270503': -999, '20270504': -999 },
        T2M_MIN: { '20270501': 7.7, '20270502': 8.1, '20270503': 6.5, '20270504': -999 },
        T2M: { '20270501': 12.9, '20270502': 12.2, '20270503': 11.8, '20270504': -999 },
        PRECTOTCORR: { '20270501': 0.2 },
      }),
    );
    expect(measured).toEqual([
      { date: '2027-05-01', min: 7.7, mean: 12.9, max: 18.3 },
      { date: '2027-05-02', min: 8.1, mean: 12.2, max: 17.4 },
      { date: '2027-05-03', min: null, mean: 11.8, max: null },
    ]);
  });

  test('says its unit and its fill value, and is believed', async () => {
    const kelvin = { T2M_MAX: { '20270501': 291.45 }, T2M_MIN: { '20270501': 280.85 } };
    const day = { date: '2027-05-01', min: 7.7, mean: null, max: 18.3 };
    expect((await read('daily-archive-json', archive(kelvin, 'K'))).measured).toEqual([day]);
    const filled = { T2M_MAX: { '20270501': 18.3, '20270502': -99 }, T2M_MIN: { '20270501': 7.7, '20270502': -99 } };
    expect((await read('daily-archive-json', archive(filled, 'C', { fill_value: -99 }))).measured).toEqual([day]);
    await expect(read('daily-archive-json', archive(kelvin, 'mm/day'))).rejects.toThrow('mm/day');
    const { parameters: _, ...silent } = archive(kelvin);
    await expect(read('daily-archive-json', silent)).rejects.toThrow('parameters');
  });

  test('by the hour, or by the month, is another thing', async () => {
    for (const key of ['2027050100', 'JAN', '20270230']) {
      await expect(read('daily-archive-json', archive({ T2M: { [key]: 10 } }))).rejects.toThrow('no date');
    }
  });
});

describe('a forecast grid', () => {
  const layer = (values: readonly (readonly [string, number | null])[], uom = 'wmoUnit:degC') => ({
    uom,
    values: values.map(([validTime, value]) => ({ validTime, value })),
  });
  /**
   * From a published answer of the U.S. National Weather Service: grid SGX/18,33, updated 2021-06-18T09:45:32Z.
   * Its first two days.
   */
  const published = {
    properties: {
      temperature: layer([
        ['2021-06-18T03:00:00+00:00/PT1H', 16.666666666666668],
        ['2021-06-18T04:00:00+00:00/PT4H', 16.11111111111111],
        ['2021-06-18T08:00:00+00:00/PT1H', 15.555555555555555],
        ['2021-06-18T09:00:00+00:00/PT8H', 16.11111111111111],
        ['2021-06-18T17:00:00+00:00/PT4H', 16.666666666666668],
        ['2021-06-18T21:00:00+00:00/PT1H', 17.22222222222222],
        ['2021-06-18T22:00:00+00:00/PT1H', 16.666666666666668],
        ['2021-06-18T23:00:00+00:00/PT3H', 17.22222222222222],
        ['2021-06-19T02:00:00+00:00/PT8H', 16.666666666666668],
        ['2021-06-19T10:00:00+00:00/PT1H', 16.11111111111111],
        ['2021-06-19T11:00:00+00:00/PT1H', 16.666666666666668],
        ['2021-06-19T12:00:00+00:00/PT2H', 16.11111111111111],
        ['2021-06-19T14:00:00+00:00/PT1H', 16.666666666666668],
        ['2021-06-19T15:00:00+00:00/PT2H', 16.11111111111111],
        ['2021-06-19T17:00:00+00:00/PT1H', 16.666666666666668],
        ['2021-06-19T18:00:00+00:00/PT1H', 16.11111111111111],
        ['2021-06-19T19:00:00+00:00/PT12H', 16.666666666666668],
      ]),
      maxTemperature: layer([
        ['2021-06-18T15:00:00+00:00/PT12H', 18.333333333333332],
        ['2021-06-19T15:00:00+00:00/PT12H', 17.77777777777778],
      ]),
      minTemperature: layer([
        ['2021-06-18T03:00:00+00:00/PT15H', 15.555555555555555],
        ['2021-06-19T03:00:00+00:00/PT15H', 15.555555555555555],
      ]),
    },
  };

  test('as it was published gives the date that it covers whole, no part of one', async () => {
    const { forecast, measured } = await read('forecast-grid-json', published, 'America/Los_Angeles');
    expect(measured).toEqual([]);
    // A date begins at 07:00 UTC. What there is of 17 June is no whole one.
    expect(forecast.map(({ date }) => date)).toEqual(['2021-06-18', '2021-06-19']);
    const [day] = forecast;
    expect([day!.min, day!.max]).toEqual([15.555555556, 18.333333333]);
    // The mean of its 24 hours by hand, in °F: 61, 60, 8 x 61, 4 x 62, 63, 62, 3 x 63, 5 x 62.
    const meanF = (61 + 60 + 8 * 61 + 4 * 62 + 63 + 62 + 3 * 63 + 5 * 62) / 24;
    expect(day!.mean).toBeCloseTo(((meanF - 32) * 5) / 9, 6);
  });

  test('is read alike without its wrapping, in °F, and with a start and an end', async () => {
    const hours = (uom: string, of: (n: number) => number) =>
      layer(
        Array.from({ length: 30 }, (_, n) => {
          const at = (h: number) => new Date(Date.UTC(2027, 7, 3, h)).toISOString();
          return [`${at(n)}/${n % 2 ? at(n + 1) : 'PT1H'}`, of(10 + n / 3)] as const;
        }),
        uom,
      );
    const celsius = await read('forecast-grid-json', { temperature: hours('unit:degC', (c) => c) });
    const fahrenheit = { temperature: hours('wmoUnit:degF', (c) => (c * 9) / 5 + 32) };
    expect(celsius.forecast).toHaveLength(1);
    expect(celsius.forecast[0]).toMatchObject({ date: '2027-08-03', min: expect.closeTo(10.6667, 3) as number });
    expect((await read('forecast-grid-json', fahrenheit)).forecast[0]!.max).toBeCloseTo(celsius.forecast[0]!.max!, 6);
  });

  test('with an hour missing, or null, does not cover the date', async () => {
    const day = (values: [string, number | null][]) => read('forecast-grid-json', { temperature: layer(values) });
    expect((await day([['2027-08-03T02:00:00Z/PT24H', 20]])).forecast).toHaveLength(1);
    expect(
      (
        await day([
          ['2027-08-03T02:00:00Z/PT10H', 20],
          ['2027-08-03T13:00:00Z/PT13H', 21],
        ])
      ).forecast,
    ).toEqual([]);
    const holed = await day([
      ['2027-08-03T02:00:00Z/PT10H', 20],
      ['2027-08-03T12:00:00Z/PT1H', null],
      ['2027-08-03T13:00:00Z/PT13H', 21],
    ]);
    expect(holed.forecast).toEqual([]);
  });

  test('of extremes alone takes the two whose middles lie in one date', async () => {
    const { forecast } = await read('forecast-grid-json', {
      maxTemperature: layer([
        ['2027-08-03T09:00:00Z/PT13H', 27],
        ['2027-08-04T09:00:00Z/PT13H', 25],
      ]),
      minTemperature: layer([['2027-08-03T21:00:00Z/PT14H', 14]]),
    });
    expect(forecast).toEqual([{ date: '2027-08-04', min: 14, mean: null, max: 25 }]);
  });

  test('on the day that the clocks change covers 23 hours, or 25', async () => {
    const answer = { temperature: layer([['2027-03-27T23:00:00Z/PT23H', 8]]) };
    expect((await read('forecast-grid-json', answer, 'Europe/Berlin')).forecast).toMatchObject([
      { date: '2027-03-28' },
    ]);
    const autumn = { temperature: layer([['2027-10-30T22:00:00Z/P1D', 8]]) };
    expect((await read('forecast-grid-json', autumn, 'Europe/Berlin')).forecast).toEqual([]);
  });

  test('without a unit, with an unknown one, or with a time that is none is refused', async () => {
    const hour = [['2027-08-03T02:00:00Z/PT1H', 20]] as const;
    await expect(read('forecast-grid-json', { temperature: layer(hour, 'wmoUnit:percent') })).rejects.toThrow(
      'percent',
    );
    await expect(read('forecast-grid-json', { temperature: { values: layer(hour).values } })).rejects.toThrow(
      'no unit',
    );
    await expect(read('forecast-grid-json', { temperature: layer([['NOW/PT1H', 20]]) })).rejects.toThrow('NOW/PT1H');
  });
});

describe('observations', () => {
  const stream = {
    '@iot.id': 7,
    unitOfMeasurement: { name: 'degree Celsius', symbol: '°C', definition: 'http://qudt.org/vocab/unit/DEG_C' },
  };
  const start = Date.UTC(2027, 4, 1, 2);
  /** Hours from the start of 1 May at the place, a sine between 10 and 20 °C. */
  const hours = (from: number, to: number, more: object = {}) =>
    Array.from({ length: to - from }, (_, i) => ({
      '@iot.id': from + i,
      phenomenonTime: new Date(start + (from + i) * HOUR_MS).toISOString(),
      result: 15 + 5 * Math.sin((Math.PI * (from + i)) / 12),
      resultTime: null,
      ...more,
    }));
  const whole = [
    { date: '2027-05-01', min: 10, max: 20 },
    { date: '2027-05-02', min: 10, max: 20 },
  ];

  test('come page by page, with the unit beside them, and make days where the hours cover them', async () => {
    const next = 'https://weather.example/v1.1/Datastreams(7)/Observations?$skip=30';
    const answer = { value: hours(0, 30, { Datastream: stream }), '@iot.nextLink': next };
    const pages = { [next]: { value: hours(30, 52, { Datastream: stream }) } };
    const { measured } = await read('observations-api', answer, 'Etc/GMT+2', pages);
    expect(measured).toMatchObject(whole);
    expect(measured).toHaveLength(2);
    expect(measured[0]!.mean).toBeCloseTo(15, 1);
  });

  test('whose unit is not beside them have it at the Datastream in their address', async () => {
    const pages = { 'https://weather.example/v1.1/Datastreams(7)': { ...stream, name: 'Air' } };
    expect((await read('observations-api', { value: hours(0, 48) }, 'Etc/GMT+2', pages)).measured).toMatchObject(whole);
    const elsewhere = read(
      'observations-api',
      { value: hours(0, 9) },
      'Etc/GMT+2',
      {},
      'https://weather.example/Observations',
    );
    await expect(elsewhere).rejects.toThrow('$expand=Datastream');
  });

  test('over an hour count at its middle; in any order, twice, or without a result they say the same', async () => {
    const halfHourMs = HOUR_MS / 2;
    const told = hours(0, 48, { Datastream: stream }).map((one) => {
      const at = Date.parse(one.phenomenonTime);
      const of = (ms: number) => new Date(ms).toISOString();
      return { ...one, phenomenonTime: `${of(at - halfHourMs)}/${of(at + halfHourMs)}` };
    });
    const shuffled = [
      ...told.reverse(),
      told[3]!,
      { ...told[5]!, result: null, phenomenonTime: '2027-05-01T07:12:00Z' },
    ];
    const plain = await read('observations-api', { value: hours(0, 48, { Datastream: stream }) });
    expect(await read('observations-api', { value: shuffled })).toEqual(plain);
  });

  test('of several Datastreams, of another host, in a circle or in a unit of something else are refused', async () => {
    const here = 'https://weather.example/v1.1/Datastreams(7)/Observations';
    const humid = {
      ...stream,
      unitOfMeasurement: { name: 'Percentage', symbol: '%', definition: 'http://unitsofmeasure.org' },
    };
    const one = { value: hours(0, 2, { Datastream: stream }) };
    const cases: [object, string][] = [
      [{ value: [...one.value, ...hours(2, 3, { Datastream: { ...stream, '@iot.id': 8 } })] }, 'several'],
      [{ ...one, '@iot.nextLink': 'https://other.example/Observations' }, 'another host'],
      [{ ...one, '@iot.nextLink': 'http://weather.example/v1.1/' }, 'another host'],
      [{ ...one, '@iot.nextLink': here }, 'circle'],
      [{ value: hours(0, 2, { Datastream: humid }) }, '%'],
      [{ value: [] }, 'no observations'],
    ];
    for (const [answer, why] of cases) await expect(read('observations-api', answer)).rejects.toThrow(why);
  });

  test('without end are given up', async () => {
    const base = 'https://weather.example/v1.1/Datastreams(7)/Observations';
    const page = (n: number) => ({
      value: hours(n, n + 1, { Datastream: stream }),
      '@iot.nextLink': `${base}?$skip=${n + 1}`,
    });
    const pages = Object.fromEntries(Array.from({ length: 300 }, (_, n) => [`${base}?$skip=${n}`, page(n)]));
    await expect(read('observations-api', page(0), 'Etc/GMT+2', pages)).rejects.toThrow('more than 200 pages');
  });
});

describe('a time of ISO 8601', () => {
  test.each([
    ['PT3H', 3 * HOUR_MS],
    ['P1DT6H', 30 * HOUR_MS],
    ['P7DT22H', 7 * DAY_MS + 22 * HOUR_MS],
    ['P2W', 14 * DAY_MS],
    ['PT90M', 1.5 * HOUR_MS],
    ['PT0S', 0],
  ])('lasts %s', (text, ms) => expect(durationMs(text)).toBe(ms));

  test.each(['P', 'PT', 'P1DT', 'P1M', 'P1Y', '3H', 'PT-1H', 'PT1.5H', ''])('does not last "%s"', (text) =>
    expect(durationMs(text)).toBeUndefined(),
  );

  test('is an interval by two of its start, its end and how long it lasts', () => {
    const said = [
      '2027-08-03T14:00:00+00:00/PT3H',
      'PT3H/2027-08-03T17:00:00Z',
      '2027-08-03T12:00-02:00/2027-08-03T17:00Z',
    ];
    const interval = { fromMs: Date.UTC(2027, 7, 3, 14), toMs: Date.UTC(2027, 7, 3, 17) };
    for (const text of said) expect(intervalOf(text)).toEqual(interval);
    for (const text of ['2027-08-03T14:00:00Z', 'PT1H/PT2H', '2027-08-03T17:00Z/2027-08-03T14:00Z', '2027-08-03/PT3H'])
      expect(intervalOf(text)).toBeUndefined();
  });
});

describe('a unit', () => {
  test.each([
    [
      'C',
      [
        'degC',
        '°C',
        'C',
        'Cel',
        'celsius',
        'degree Celsius',
        'wmoUnit:degC',
        'http://qudt.org/vocab/unit/DEG_C',
        'http://qudt.org/vocab/unit#DegreeCelsius',
      ],
    ],
    ['F', ['degF', '°F', '[degF]', 'wmoUnit:degF', 'http://qudt.org/vocab/unit/DEG_F']],
    ['K', ['K', 'kelvin', 'wmoUnit:K']],
    [undefined, ['%', 'm/s', 'http://unitsofmeasure.org', 'cm', 'degrees', '']],
  ])('%s has these names', (unit, names) => {
    for (const name of names) expect(unitNamed(name), name).toBe(unit);
  });
});
