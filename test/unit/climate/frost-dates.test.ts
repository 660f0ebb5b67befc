import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { type DailyMinima, frostDates } from '../../../src/climate/frost-dates.js';

const plain = (text: string): PlainDate => text as PlainDate;

/** A record without frosts but on these dates, and with days missing on those. */
function recordWith(from: string, to: string, frosts: readonly string[], missing: readonly string[] = []): DailyMinima {
  const firstDate = plain(from);
  const minC = new Float64Array(daysBetween(firstDate, plain(to)) + 1).fill(8);
  for (const date of frosts) minC[daysBetween(firstDate, plain(date))] = -1;
  for (const date of missing) minC[daysBetween(firstDate, plain(date))] = NaN;
  return { firstDate, minC };
}

const daysFrom = (date: string, n: number): string[] => Array.from({ length: n }, (_, i) => addDays(plain(date), i));
const everyYear = (from: number, n: number, monthDay: (i: number) => string): string[] =>
  Array.from({ length: n }, (_, i) => `${from + i}-${monthDay(i)}`);
const may = (day: number): string => `05-${String(day).padStart(2, '0')}`;

const LAST_FROSTS = ['05-11', '05-06', '05-01', '05-27', '05-19', '05-23', '05-20', '05-09', '05-14', '05-10', '05-27'];

describe('the days at which a risk of frost is left', () => {
  it('are those of a station with eleven springs: by half 14 May, by a tenth 27 May', () => {
    // USCRN, state of New York, 2010-2023: the soil notes' section 6 (fixtures/golden/frost-weibull-days.json).
    const record = recordWith('2000-08-10', '2011-12-31', [
      ...everyYear(2001, 11, (i) => LAST_FROSTS[i]!),
      ...everyYear(2001, 11, () => '10-05'),
      ...everyYear(2001, 11, () => '11-20'),
    ]);
    const { spring, autumn } = frostDates(record, 0, 42);
    expect(spring).toEqual({
      risk10: '05-27',
      risk50: '05-14',
      // Position 1.2 of twelve: a fifth of the way from 1 to 6 May.
      risk90: '05-02',
      seasons: 11,
      seasonsWithFrost: 11,
    });
    expect(autumn).toEqual({ risk10: '10-05', risk50: '10-05', risk90: '10-05', seasons: 11, seasonsWithFrost: 11 });
  });

  it('come from the normal distribution of twenty frosts, and from their places among nineteen', () => {
    // Nineteen or twenty springs, one of them far out: it widens the normal spread, but not the middle place.
    const springs = (n: number) =>
      frostDates(
        recordWith(
          '2000-01-01',
          `${2000 + n}-07-23`,
          everyYear(2001, n, (i) => (i === 0 ? '06-29' : may(10))),
        ),
        0,
        50,
      ).spring;
    expect(springs(19)).toMatchObject({ risk50: '05-10', risk90: '05-10', seasonsWithFrost: 19 });
    // Mean 10 May + 50/20 d, s 11.18 d: 12.5 May, and 1.2816 s to either side.
    expect(springs(20)).toMatchObject({ risk10: '05-27', risk50: '05-13', risk90: '04-28', seasonsWithFrost: 20 });
  });

  it('are not said where the risk is never so great: half of the springs had no frost', () => {
    const record = recordWith(
      '2000-01-01',
      '2020-07-23',
      everyYear(2001, 10, (i) => may(1 + 2 * i)),
    );
    expect(frostDates(record, 0, 50).spring).toMatchObject({
      risk50: null,
      risk90: null,
      seasons: 20,
      seasonsWithFrost: 10,
    });
    // A fifth of the springs with a frost is a tenth of all: position 0.8 · 11 of 1, 3, ... 19 May.
    expect(frostDates(record, 0, 50).spring.risk10).toBe('05-17');
  });

  it('are not extrapolated from a few springs: four give no tenth', () => {
    const record = recordWith(
      '2000-01-01',
      '2004-07-23',
      everyYear(2001, 4, (i) => may(10 + i)),
    );
    expect(frostDates(record, 0, 50).spring).toMatchObject({ risk10: null, risk50: '05-12', risk90: null });
  });

  it('are null without a frost, without a whole season, and without a record', () => {
    const none = { risk10: null, risk50: null, risk90: null, seasonsWithFrost: 0 };
    const warm = frostDates(recordWith('2000-01-01', '2009-12-31', []), 0, 20);
    // The first spring has half a year before the record, the last autumn half a year after it.
    expect(warm).toEqual({ spring: { ...none, seasons: 9 }, autumn: { ...none, seasons: 9 } });
    const short = frostDates(recordWith('2000-02-01', '2000-06-30', []), 0, 50);
    expect(short).toEqual({ spring: { ...none, seasons: 0 }, autumn: { ...none, seasons: 0 } });
    expect(frostDates({ firstDate: plain('2000-01-01'), minC: [] }, 0, 50)).toEqual(short);
  });
});

describe('the last frost of a spring and the first of an autumn', () => {
  /** Of one season each: the middle day of one is the day. */
  const datesOf = (record: DailyMinima, thresholdC = 0, latitudeDeg = 50) => {
    const { spring, autumn } = frostDates(record, thresholdC, latitudeDeg);
    return { spring: spring.risk50, autumn: autumn.risk50, springs: spring.seasons, autumns: autumn.seasons };
  };

  it('are those nearest to 24 July in the north', () => {
    const frosts = ['2001-03-02', '2001-04-30', '2001-10-09', '2001-11-01'];
    expect(datesOf(recordWith('2000-10-01', '2001-12-31', frosts))).toMatchObject({ spring: '04-30', autumn: '10-09' });
    const inSummer = ['2001-07-23', '2001-07-24'];
    expect(datesOf(recordWith('2000-10-01', '2001-12-31', inSummer))).toMatchObject({
      spring: '07-23',
      autumn: '07-24',
    });
  });

  it('are those nearest to 24 January in the south', () => {
    const frosts = ['2001-05-20', '2001-07-01', '2001-10-12'];
    expect(datesOf(recordWith('2001-01-01', '2002-03-01', frosts), 0, -36)).toEqual({
      spring: '10-12',
      autumn: '05-20',
      springs: 1,
      autumns: 1,
    });
  });

  it('may come in another year than the season: December for the spring, February for the autumn', () => {
    const record = recordWith('2000-08-10', '2002-07-01', ['2000-12-20', '2002-02-11']);
    expect(datesOf(record)).toMatchObject({ spring: '12-20', autumn: '02-11' });
  });

  it('stand in order across the turn of the year', () => {
    const record = recordWith('2000-08-10', '2003-07-23', ['2000-12-28', '2002-01-02', '2003-01-07']);
    expect(datesOf(record).spring).toBe('01-02');
  });

  it('count a day at the threshold as frost, and none above it', () => {
    const firstDate = plain('2001-01-01');
    const at = (tempC: number) => {
      const minC = new Float64Array(300).fill(8);
      minC[daysBetween(firstDate, plain('2001-05-05'))] = tempC;
      return datesOf({ firstDate, minC }).spring;
    };
    expect(at(0)).toBe('05-05');
    expect(at(0.1)).toBeNull();
  });

  it('keep their date in leap years', () => {
    const both = recordWith('2003-08-01', '2005-07-23', ['2004-05-10', '2005-05-10']);
    expect(datesOf(both).spring).toBe('05-10');
    expect(datesOf(recordWith('2003-08-01', '2004-07-23', ['2004-02-29'])).spring).toBe('03-01');
  });

  it('are void with ten days missing between them and the split, and not with nine', () => {
    const spring = (missing: readonly string[]) =>
      datesOf(recordWith('2000-08-01', '2001-07-23', ['2001-05-01'], missing));
    expect(spring(daysFrom('2001-05-02', 9))).toMatchObject({ spring: '05-01', springs: 1 });
    expect(spring(daysFrom('2001-05-02', 10))).toMatchObject({ spring: null, springs: 0 });
    expect(spring(daysFrom('2001-04-01', 30))).toMatchObject({ spring: '05-01', springs: 1 });
    const autumn = (missing: readonly string[]) =>
      datesOf(recordWith('2001-07-24', '2001-12-31', ['2001-10-01'], missing));
    expect(autumn(daysFrom('2001-09-22', 9))).toMatchObject({ autumn: '10-01', autumns: 1 });
    expect(autumn(daysFrom('2001-09-21', 10))).toMatchObject({ autumn: null, autumns: 0 });
  });

  it('are not taken from a record that ends in spring: the last frost may be still to come', () => {
    expect(datesOf(recordWith('2000-08-01', '2001-04-20', ['2001-04-15']))).toMatchObject({ spring: null, springs: 0 });
  });
});
