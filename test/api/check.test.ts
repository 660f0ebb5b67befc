import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { CheckAnswer } from '../../src/contract/readings.js';
import { dailySeries, hourlySeries, post, startApp } from './helper.js';

// What the service says of a file or a series before anything is built on it. All numbers are worked by hand.

const app = await startApp();

async function check(body: string | object, query: Record<string, string> = {}): Promise<CheckAnswer> {
  const response = await post(app, `/v1/readings/check?${new URLSearchParams(query)}`, body);
  if (response.statusCode !== 200) throw new Error(`The check was refused: ${response.body}`);
  return response.json();
}

const quillmere = { timeZone: 'Etc/GMT+2' };

/** Rows of a file, by the hour from midnight at Quillmere. */
const rowsOf = (values: readonly (number | string)[], start = '2027-05-03T00:00'): string[] =>
  hourlySeries(new Array(values.length).fill(0), { start }).readings.map(({ at }, i) => `${at},${values[i]}`);
const fileOf = (rows: readonly string[], header = 'time,soil (C)'): string => `${header}\n${rows.join('\n')}\n`;
const level = (n: number, tempC = 12): number[] => new Array(n).fill(tempC);

describe('what the caller says of a file', () => {
  const hourly = fileOf(rowsOf(level(30, 59)));

  it('wins over its header, and is told', async () => {
    const report = await check(hourly, { unit: 'F' });
    expect([report.unit, report.mean]).toEqual(['F', 15]);
    expect(report.warnings.map(({ code }) => code)).toContain('unit-against-header');
    expect((await check(fileOf(rowsOf(level(30, 12))), { unit: 'C' })).warnings).toEqual([]);
  });

  it('of its depth is asked about where the header says another; else the depth in the header is taken', async () => {
    const deep = fileOf(rowsOf(level(30, 12)), 'time,soil 10 cm (C)');
    expect((await check(deep)).probeDepthCm).toBe(10);
    const asked = await post(app, `/v1/readings/check?probeDepthCm=5`, deep);
    expect(asked.json()).toMatchObject({ code: 'choose-column', errors: [{ choices: [{ value: '2' }] }] });
    expect((await check(deep, { probeDepthCm: '5', column: '2' })).probeDepthCm).toBe(5);
    expect(await check(fileOf(rowsOf(level(30, 12))))).not.toHaveProperty('probeDepthCm');
  });
});

describe('a file', () => {
  const sixHourly = fileOf(
    [
      '2027-05-03T00:00-02:00,10.0,3.1',
      '2027-05-03T06:00-02:00,14.0,3.1',
      '2027-05-03T12:00-02:00,22.0,3.0',
      '2027-05-03T18:00-02:00,18.0,3.1',
      '2027-05-04T00:00-02:00,12.0,3.1',
      '2027-05-04T06:00-02:00,12.0,3.1',
      '2027-05-04T12:00-02:00,20.0,3.0',
    ],
    'time,soil (C),battery (V)',
  );

  it('is told as it is laid out', async () => {
    expect(await check(sixHourly, { ...quillmere, column: '2' })).toMatchObject({
      delimiter: ',',
      decimalMark: '.',
      encoding: 'utf-8',
      headerLine: 1,
      timeColumn: 1,
      column: 2,
      columns: [
        { index: 1, name: 'time', looksLike: 'time' },
        { index: 2, name: 'soil (C)', looksLike: 'temperature', unit: 'C' },
        { index: 3, name: 'battery (V)', looksLike: 'battery' },
      ],
      medium: 'soil',
      unit: 'C',
      timeZone: 'Etc/GMT+2',
      dateOrder: 'ymd',
      stepMinutes: 360,
      rows: 7,
      used: 7,
      from: '2027-05-03T00:00:00-02:00',
      to: '2027-05-04T12:00:00-02:00',
      min: 10,
      max: 22,
      dropped: [],
      droppedCount: 0,
      gaps: [],
    });
  });

  it('has its days by the trapezoid rule, and says which are whole', async () => {
    const { series } = await check(sixHourly, { ...quillmere, column: '2', precision: 'full' });
    expect(series).toEqual({
      medium: 'soil',
      unit: 'C',
      daily: [
        // (12 + 18 + 20 + 15) / 4, the fall to the next midnight being part of the day.
        { date: '2027-05-03', min: 10, mean: 16.25, max: 22, readings: 4, complete: true },
        // (12 + 16) / 2, of half a day.
        { date: '2027-05-04', min: 12, mean: 14, max: 20, readings: 3, complete: false },
      ],
    });
  });

  it('has a mean over its time: half a day counts half', async () => {
    const { mean } = await check(sixHourly, { ...quillmere, column: '2', precision: 'full' });
    expect(mean).toBeCloseTo((16.25 * 24 + 14 * 12) / 36, 9);
  });

  it('is rounded for people', async () => {
    const { series } = await check(sixHourly, { ...quillmere, column: '2' });
    expect(series.daily[0]!.mean).toBe(16.3);
  });

  it('is read in its own unit and told in Celsius', async () => {
    const report = await check(fileOf(rowsOf([50, 50, 59, 59]), 'time,soil (F)'), quillmere);
    expect(report).toMatchObject({ unit: 'F', min: 10, max: 15, mean: 12.5, series: { unit: 'C' } });
    const kelvin = await check(fileOf(rowsOf([283.15, 288.15]), 'time,soil'), { ...quillmere, unit: 'K' });
    expect(kelvin).toMatchObject({ unit: 'K', min: 10, max: 15, mean: 12.5 });
  });

  it('says the unit and the medium of its column where the name does', async () => {
    for (const [name, unit] of [
      ['soil °F', 'F'],
      ['soil temp [C]', 'C'],
      ['soil_temp_K', 'K'],
      ['Soil deg C', 'C'],
    ]) {
      const values = { C: [10, 11], F: [50, 52], K: [283, 284] }[unit!]!;
      expect(await check(fileOf(rowsOf(values), `time,${name}`), quillmere), name).toMatchObject({
        unit,
        medium: 'soil',
      });
    }
    expect(await check(fileOf(rowsOf([10, 11]), 'time,air (C)'), quillmere)).toMatchObject({ medium: 'air' });
  });

  it('tells each value left out, by its line, and why', async () => {
    const good = rowsOf(level(60));
    const bad = [
      '2027-05-05T12:00-02:00,',
      '2027-05-05T13:00-02:00,n/a',
      '',
      'not a time,11',
      '2027-05-05T14:00-02:00,-9999',
      '2027-02-30T14:00-02:00,12',
      '2027-05-05T15:00-02:00,12',
    ];
    const report = await check(fileOf([...good, ...bad]), quillmere);
    expect(report.dropped).toEqual([
      { line: 62, value: '', why: 'holds no value', code: 'row.empty', params: {} },
      { line: 63, value: 'n/a', why: 'says that there is no value', code: 'row.says-missing', params: {} },
      { line: 65, value: 'not a time', why: 'holds no date and time', code: 'row.no-stamp', params: {} },
      { line: 66, value: '-9999', why: 'is a mark for "no value"', code: 'row.missing-mark', params: {} },
      { line: 67, value: '12', why: 'stands on a date that does not exist', code: 'row.no-such-date', params: {} },
    ]);
    expect(report).toMatchObject({ rows: 66, used: 61, droppedCount: 5, min: 12, max: 12 });
  });

  it('tells the first hundred left out, and how many there are', async () => {
    const rows = rowsOf([...level(2000), ...new Array(150).fill('none')]);
    const { dropped, droppedCount } = await check(fileOf(rows), quillmere);
    expect(dropped).toHaveLength(100);
    expect(droppedCount).toBe(150);
    expect(dropped[0]).toMatchObject({ line: 2002, value: 'none', why: 'says that there is no value' });
  });

  it('is the same with Windows line ends, a byte order mark and quotation marks', async () => {
    const rows = rowsOf([10, 12, 14]);
    const plain = await check(fileOf(rows), quillmere);
    const dressed = `\uFEFF"time","soil (C)"\r\n${rows.map((row) => `"${row.replace(',', '","')}"`).join('\r\n')}\r\n`;
    expect(await check(dressed, quillmere)).toEqual(plain);
  });

  it('is the same whatever the order of its rows, and with rows repeated', async () => {
    const rows = rowsOf([10, 14, 11, 17, 12]);
    const plain = await check(fileOf(rows), quillmere);
    const mixed = await check(fileOf([...rows].reverse().concat(rows[2]!)), quillmere);
    expect(mixed).toEqual({ ...plain, rows: 6 });
  });

  it('without a zone has its days at the offset of its stamps', async () => {
    const late = fileOf(['2027-05-03T22:00-02:00,10', '2027-05-03T23:00-02:00,11']);
    const { timeZone, clock, series } = await check(late);
    expect(timeZone).toBe('UTC-02:00');
    expect(clock).toBe('offset');
    expect(series.daily.map(({ date }) => date)).toEqual(['2027-05-03']);
    const elsewhere = await check(late, { timeZone: 'Europe/Berlin' });
    expect(elsewhere.series.daily.map(({ date }) => date)).toEqual(['2027-05-04']);
  });

  it('of local stamps is read on the clock of the zone sent', async () => {
    const { from, to } = await check(fileOf(['2027-03-28 01:30,10', '2027-03-28 03:30,11']), {
      timeZone: 'Europe/Berlin',
    });
    expect([from, to]).toEqual(['2027-03-28T01:30:00+01:00', '2027-03-28T03:30:00+02:00']);
  });
});

describe('gaps', () => {
  it('of over three hours between hourly readings are told, shorter ones joined', async () => {
    const rows = rowsOf(level(20));
    const report = await check(fileOf(rows.filter((_, hour) => ![3, 4, 9, 10, 11].includes(hour))), quillmere);
    expect(report.gaps).toEqual([{ from: '2027-05-03T08:00:00-02:00', to: '2027-05-03T12:00:00-02:00', hours: 4 }]);
    expect(report.stepMinutes).toBe(60);
  });

  it('are rounded to a tenth of an hour, or told in full', async () => {
    const file = fileOf([...rowsOf(level(3)), '2027-05-03T06:20-02:00,12', ...rowsOf(level(3), '2027-05-03T07:00')]);
    const hoursOf = async (query: Record<string, string>) =>
      (await check(file, { ...quillmere, ...query })).gaps[0]!.hours;
    expect(await hoursOf({})).toBe(4.3);
    expect(await hoursOf({ precision: 'full' })).toBeCloseTo(4 + 1 / 3, 9);
  });

  it('are not covered: what lies in them counts for no mean', async () => {
    const rows = rowsOf([...level(6, 10), ...level(6, 99), ...level(12, 20)]).filter((row) => !row.endsWith(',99'));
    const { series } = await check(fileOf(rows), { ...quillmere, precision: 'full' });
    // Five hours at 10 and eleven at 20; the seven between the readings are not known.
    expect(series.daily[0]).toMatchObject({ mean: (5 * 10 + 11 * 20) / 16, complete: false, readings: 18 });
  });

  it('in days are told by their dates', async () => {
    const { daily } = dailySeries(
      [
        [10, 20],
        [10, 20],
        [10, 20],
        [10, 20],
        [10, 20],
      ],
      { start: '2027-05-01' },
    );
    const { gaps } = await check({ medium: 'soil', daily: daily.filter((_, day) => day !== 2 && day !== 3) });
    expect(gaps).toEqual([{ from: '2027-05-03', to: '2027-05-04', hours: 48 }]);
  });
});

describe('a day is complete', () => {
  const lastDay = async (n: number) => {
    const { series } = await check(fileOf(rowsOf(level(n + 1))), quillmere);
    return series.daily[0]!.complete;
  };

  it('with 18 of its 24 hours covered, and not with 17', async () => {
    expect(await lastDay(18)).toBe(true);
    expect(await lastDay(17)).toBe(false);
  });

  it('with all of its 23 or 25 hours where the clocks change', async () => {
    // European Union: forward on the last Sunday of March, back on the last Sunday of October.
    for (const [start, date, readings] of [
      ['2027-03-27T23:00', '2027-03-28', 23],
      ['2027-10-30T22:00', '2027-10-31', 25],
    ] as const) {
      const series = hourlySeries(level(30), { start, offset: 'Z' });
      const report = await check(series, { timeZone: 'Europe/Berlin' });
      expect(report.series.daily[0]).toEqual({ date, min: 12, mean: 12, max: 12, readings, complete: true });
    }
  });
});

describe('a series in JSON', () => {
  it('of readings is told as it is', async () => {
    const series = { ...hourlySeries([10, 12, 20]), probeDepthCm: 5 };
    const report = await check(series, { ...quillmere, precision: 'full' });
    expect(report).toMatchObject({
      medium: 'soil',
      probeDepthCm: 5,
      unit: 'C',
      timeZone: 'Etc/GMT+2',
      stepMinutes: 60,
      rows: 3,
      used: 3,
      from: '2027-05-01T00:00:00-02:00',
      to: '2027-05-01T02:00:00-02:00',
      min: 10,
      // (11 + 16) / 2
      mean: 13.5,
      max: 20,
      droppedCount: 0,
      series: {
        medium: 'soil',
        probeDepthCm: 5,
        unit: 'C',
        daily: [{ date: '2027-05-01', min: 10, mean: 13.5, max: 20, readings: 3, complete: false }],
      },
    });
    expect(report).not.toHaveProperty('delimiter');
  });

  it('of days is told as it is, with no means made up', async () => {
    const report = await check(
      {
        medium: 'air',
        unit: 'F',
        daily: [
          { date: '2027-05-01', min: 50, max: 68 },
          { date: '2027-05-02', mean: 59 },
        ],
      },
      quillmere,
    );
    expect(report).toMatchObject({
      medium: 'air',
      unit: 'F',
      from: '2027-05-01',
      to: '2027-05-02',
      stepMinutes: 24 * 60,
    });
    expect(report).toMatchObject({ rows: 2, used: 2, min: 10, mean: 15, max: 20 });
    expect(report.series.daily).toEqual([
      { date: '2027-05-01', min: 10, max: 20, complete: true },
      { date: '2027-05-02', mean: 15, complete: true },
    ]);
  });

  it('with two values at one instant has their mean, and a warning', async () => {
    const { readings } = hourlySeries([10, 12]);
    const report = await check({ medium: 'soil', readings: [...readings, { at: readings[1]!.at, value: 16 }] });
    expect(report).toMatchObject({ used: 2, min: 10, max: 14, mean: 12 });
    expect(report.warnings.map(({ code }) => code)).toEqual(['two-values-at-once']);
  });

  it('what was understood can be checked again, and says the same', async () => {
    const report = await check(hourlySeries(level(49, 14)), quillmere);
    const again = await check(report.series, quillmere);
    expect(again.series.daily).toEqual(
      report.series.daily.filter(({ complete }) => complete).map(({ readings: _, ...day }) => day),
    );
  });
});

describe('a long file that is refused at its beginning', () => {
  it('is taken to its end, as a browser sends it all before it listens', async () => {
    const listening = await startApp();
    onTestFinished(() => listening.close());
    await listening.listen({ port: 0, host: '127.0.0.1' });
    const { port } = listening.server.address() as AddressInfo;
    const prose = Buffer.from('It rained on the beds all night.\n'.repeat(500_000));
    const status = await new Promise((done, fail) => {
      const headers = { 'content-type': 'text/csv', 'content-length': prose.length };
      const sent = request({
        host: '127.0.0.1',
        port,
        path: '/v1/readings/check',
        method: 'POST',
        headers,
        agent: false,
      });
      const answered = new Promise<number | undefined>((has) =>
        sent.on('response', (response) => has(response.resume().statusCode)),
      );
      sent.on('error', fail).on('finish', () => done(answered));
      sent.end(prose);
    });
    expect(status).toBe(400);
  });
});
