import { describe, expect, it } from 'vitest';
import { airDays } from '../../../src/answers/windows/air-days.js';
import { findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { basisCode } from '../../../src/basics/series.js';
import { type ReadSeries, readSeries } from '../../../src/readings/read-series.js';

const zone = findZone('Etc/GMT+2')!;
const of = (origin: 'measured' | 'forecast', days: readonly (readonly [string, number, number])[]): ReadSeries =>
  readSeries(
    {
      medium: 'air',
      unit: 'C',
      origin,
      daily: days.map(([date, min, max]) => ({ date: date as PlainDate, min, max })),
    },
    zone,
    [],
  );

describe('the days of the air', () => {
  it('are measured ones before forecast ones, with a hole where a day is missing', () => {
    const measured = of('measured', [
      ['2027-05-01', 4, 14],
      ['2027-05-03', 6, 16],
    ]);
    const forecast = of('forecast', [
      ['2027-05-03', 9, 19],
      ['2027-05-04', 7, 17],
    ]);
    const { firstDate, minC, maxC } = airDays([measured, forecast])!;
    expect(firstDate).toBe('2027-05-01');
    expect([...minC]).toEqual([4, NaN, 6, 7]);
    expect([...maxC]).toEqual([14, NaN, 16, 17]);
  });

  it('are none of soil, of means alone, or of what stands for days that are not known', () => {
    const means = readSeries(
      { medium: 'air', unit: 'C', daily: [{ date: '2027-05-01' as PlainDate, mean: 9 }] },
      zone,
      [],
    );
    const usual = { ...of('forecast', [['2027-05-01', 4, 14]]), dayBasis: [basisCode('past-years')] };
    const soil = { ...of('measured', [['2027-05-01', 4, 14]]), medium: 'soil' as const };
    for (const series of [[], [means], [usual], [soil]]) expect(airDays(series)).toBeNull();
  });
});
