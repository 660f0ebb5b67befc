import { describe, expect, it } from 'vitest';
import { stampFormOf } from '../../../src/readings/time/stamp-form.js';

describe('the form of a column of stamps', () => {
  it.each([
    ['2027-05-01T10:00:00Z', 'first'],
    ['2027/5/1 9:5:3', 'first'],
    ['2027. 05. 01. 10:00', 'first'],
    ['2027年5月1日 10:00', 'first'],
    ['01.05.2027 10:00', 'last'],
    ['5/1/2027, 2:00:00 PM', 'last'],
    ['10:00 01.05.2027', 'last'],
    ['21.04.08 10:00', 'unknown'],
  ])('%s is a calendar date with its year %s', (cell, year) => {
    expect(stampFormOf([cell])).toMatchObject({
      kind: 'calendar',
      month: 'number',
      isCompact: false,
      hasTime: true,
      year,
    });
  });

  it.each(['3 May 2027 10:00', '01-may-27 00:00', 'May 3, 2027 2:00 PM', 'Mon Aug 02 10:00:00 2027'])(
    '%s has the month as a name',
    (cell) => {
      expect(stampFormOf([cell])).toMatchObject({ kind: 'calendar', month: 'name', hasTime: true });
    },
  );

  it.each([
    ['20270501', false],
    ['2027050110', true],
    ['202705011030', true],
    ['20270501103015', true],
    ['20270501T1030Z', true],
  ])('%s is a date without separators; it has a time: %s', (cell, hasTime) => {
    expect(stampFormOf([cell])).toMatchObject({ kind: 'calendar', isCompact: true, hasTime });
  });

  it.each([
    ['1803891600', 'epoch-seconds'],
    ['1803891600.25', 'epoch-seconds'],
    ['1803891600123', 'epoch-milliseconds'],
    ['1803891600123456', 'epoch-microseconds'],
    ['1803891600123456789', 'epoch-nanoseconds'],
    ['2027 121 1300', 'day-of-year'],
    ['2027-121', 'day-of-year'],
    ['9:05', 'clock'],
    ['09:05:03', 'clock'],
    ['12:30a', 'clock'],
    ['2:00 PM', 'clock'],
    ['오후 2:00', 'clock'],
    ['0900', 'clock'],
    ['2400', 'clock'],
  ])('%s is of kind %s', (cell, kind) => {
    expect(stampFormOf([cell])?.kind).toBe(kind);
  });

  it.each(
    [
      ...['12.5', '-12.5', '45', '7', '44.05.30.1', '1.2.3', '05:30.0', '192.168.1.2', 'hello', 'May', ''],
      ...['2027-05-01 error', '2027-05', '2015.123', '99:30', '25:00', '1.013', '61', '2027-13-45', '1 2 3 4 5'],
    ].map((cell) => [cell]),
  )('"%s" is no stamp', (cell) => {
    expect(stampFormOf([cell])?.kind).toBeUndefined();
  });

  it('rising counts are none: an index, seconds since a start', () => {
    const rising = (from: number, step: number) => Array.from({ length: 100 }, (_, i) => String(from + i * step));
    expect(stampFormOf(rising(1, 1))).toBeUndefined();
    expect(stampFormOf(rising(1000, 1))).toBeUndefined();
    expect(stampFormOf(rising(0, 600))).toBeUndefined();
    expect(stampFormOf(rising(0.5, 0.25))).toBeUndefined();
  });

  it('stands where a fifth of the cells is spoilt, and falls where more is', () => {
    const cells = (spoilt: number) => [
      ...Array<string>(100 - spoilt).fill('2027-05-01 10:00'),
      ...Array<string>(spoilt).fill('ERR'),
    ];
    expect(stampFormOf(cells(20))?.kind).toBe('calendar');
    expect(stampFormOf(cells(21))).toBeUndefined();
  });

  it('does not count blank cells', () => {
    expect(stampFormOf(['', ' ', '', '2027-05-01'])).toMatchObject({ kind: 'calendar', hasTime: false });
    expect(stampFormOf(['', ' '])).toBeUndefined();
    expect(stampFormOf([])).toBeUndefined();
  });

  it('says how many stamps carry an offset, and a word of which nothing follows', () => {
    expect(stampFormOf(['2027-05-01 10:00'])).toMatchObject({ offset: 'none', zoneWord: null });
    expect(stampFormOf(['2027-05-01 10:00Z', '2027-05-01 11:00'])?.offset).toBe('some');
    expect(stampFormOf(['2027-05-01 10:00+0200', '2027-05-01 11:00+02'])?.offset).toBe('all');
    expect(stampFormOf(['2027-05-01 10:00 CEST'])).toMatchObject({ offset: 'none', zoneWord: 'CEST' });
  });

  it('has a time where any stamp has one: midnight is often written as a date alone', () => {
    expect(stampFormOf(['01.05.2027', '01.05.2027 01:00', '01.05.2027 02:00'])?.hasTime).toBe(true);
  });

  it('takes ten digits that are an hour of a day for that, not for a second of 2034', () => {
    expect(stampFormOf(['2027050122', '2027050123', '2027050200'])?.kind).toBe('calendar');
    expect(stampFormOf(['1782000000', '1782000600', '1782001200'])?.kind).toBe('epoch-seconds');
  });
});
