import { describe, expect, it } from 'vitest';
import type { CheckAnswer } from '../../src/contract/readings.js';
import { startApp } from '../api/helper.js';
import { hasRecords, record, tableOf } from './records.js';

const app = await startApp();

async function check(file: Buffer, query: Record<string, string>): Promise<CheckAnswer> {
  const response = await app.inject({
    method: 'POST',
    url: `/v1/readings/check?${new URLSearchParams({ ...query, precision: 'full' })}`,
    headers: { 'content-type': 'text/csv' },
    payload: file,
  });
  if (response.statusCode !== 200) throw new Error(response.body);
  return response.json();
}

// NOAA U.S. Climate Reference Network, product daily01: the original files, and tables made of them by others.
describe.runIf(hasRecords)('a station file of fixed columns, as it comes', () => {
  const stations = [
    ['raw/CRND0103-2015-NY_Ithaca_13_E.txt', 'stations/uscrn_NY_Ithaca_13_E.csv'],
    ['raw/CRND0103-2015-CA_Merced_23_WSW.txt', 'stations/uscrn_CA_Merced_23_WSW.csv'],
  ] as const;

  it.each(stations)('%s says of soil at 5 cm what the table of it says', async (raw, table) => {
    const report = await check(record(raw), { medium: 'soil', probeDepthCm: '5' });
    const truth = tableOf(table).filter(({ date, soil5_c }) => date!.startsWith('2015') && soil5_c !== '');
    expect(report.series.daily.map(({ date, mean }) => [date, mean])).toEqual(
      truth.map(({ date, soil5_c }) => [date, Number(soil5_c)]),
    );
    expect(report).toMatchObject({ unit: 'C', probeDepthCm: 5, clock: 'standard' });
    expect(report.droppedCount).toBe(365 - truth.length);
  });

  it.each(stations)('%s says of the air, by minimum and maximum, what the table of it says', async (raw, table) => {
    const report = await check(record(raw), { medium: 'air' });
    const truth = tableOf(table).filter(
      ({ date, tmin_c, tmax_c }) => date!.startsWith('2015') && tmin_c !== '' && tmax_c !== '',
    );
    expect(report.series.daily.map(({ date, min, max }) => [date, min, max])).toEqual(
      truth.map(({ date, tmin_c, tmax_c }) => [date, Number(tmin_c), Number(tmax_c)]),
    );
  });
});

// Deutscher Wetterdienst, station 01975 (Hamburg), 2018: real soil and air, in which nothing is a fault.
describe.runIf(hasRecords)('a year of real hours', () => {
  it.each([
    ['soil', '5', 3],
    ['soil', '10', 4],
    ['soil', '20', 5],
    ['air', '', 2],
  ] as const)('of %s %s is read whole: no value is dropped, and few are doubted', async (medium, depth, column) => {
    const file = record('bare-soil/hamburg-2018-hourly.csv');
    const report = await check(file, {
      medium,
      ...(depth ? { probeDepthCm: depth } : {}),
      column: String(column),
      unit: 'C',
    });
    const values = tableOf('bare-soil/hamburg-2018-hourly.csv').filter((row) => Object.values(row)[column - 1] !== '');
    expect(report).toMatchObject({ used: values.length, timeColumn: 1, clock: 'utc', stepMinutes: 60 });
    expect(report.doubtfulCount).toBeLessThanOrEqual(3);
  });
});
