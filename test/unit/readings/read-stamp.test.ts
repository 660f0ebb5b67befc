import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { type DateOrder, possibleOrders, wallOf } from '../../../src/readings/time/date-order.js';
import { stampReader } from '../../../src/readings/time/read-stamp.js';
import { stampFormOf } from '../../../src/readings/time/stamp-form.js';

const formOf = (cell: string) => {
  const form = stampFormOf([cell]);
  if (!form) throw new Error(`${cell} is no stamp`);
  return form;
};
/** The wall clock that a cell shows in the first order possible, or in one that is said. */
function wallIn(cell: string, order?: DateOrder): string {
  const form = formOf(cell);
  const wall = wallOf(stampReader(form).read(cell), order ?? possibleOrders(form)[0]!);
  return Number.isNaN(wall) ? 'none' : new Date(wall).toISOString().slice(0, -1);
}
function offsetIn(cell: string): number {
  const reader = stampReader(formOf(cell));
  reader.read(cell);
  return reader.offsetMinutes;
}
const clockIn = (cell: string): number => stampReader(formOf(cell)).read(cell) / 3_600_000;

describe('a stamp', () => {
  it.each([
    ['2027-05-01T10:00:00.123456Z', '2027-05-01T10:00:00.123'],
    ['2027-05-01 10:00:00,5', '2027-05-01T10:00:00.500'],
    ['2027/5/1 9:5:3', '2027-05-01T09:05:03.000'],
    ['2027. 05. 01. 10:00', '2027-05-01T10:00:00.000'],
    ['2027-5-1 9', '2027-05-01T09:00:00.000'],
    ['2027-05-01', '2027-05-01T00:00:00.000'],
    ['2027:05:01 10:00:00', '2027-05-01T10:00:00.000'],
    ['1.5.2027 klo 9.05', '2027-05-01T09:05:00.000'],
    ['01.05.2027 9.05', '2027-05-01T09:05:00.000'],
    ['Sa 01.05.2027 10:00', '2027-05-01T10:00:00.000'],
    ['mar 04/05/2027 10:00', '2027-05-04T10:00:00.000'],
    ['20270501 1030', '2027-05-01T10:30:00.000'],
    ['20270501103015', '2027-05-01T10:30:15.000'],
    ['2027年5月1日 10時05分', '2027-05-01T10:05:00.000'],
    ['10:00 01.05.2027', '2027-05-01T10:00:00.000'],
    ['Mon Aug 02 10:00:00 2027', '2027-08-02T10:00:00.000'],
    ['Mon Aug 02 10:00:00 CEST 2027', '2027-08-02T10:00:00.000'],
    ['01/May/2027:10:00:00 +0200', '2027-05-01T10:00:00.000'],
    ['01May2027 10:00', '2027-05-01T10:00:00.000'],
    ['May 3, 2027 2:00 PM', '2027-05-03T14:00:00.000'],
    ['am 1. Mai 2027 um 14:00', '2027-05-01T14:00:00.000'],
    ['1er août 2027 10h30', '2027-08-01T10:30:00.000'],
    ['01-may-99 00:00', '1999-05-01T00:00:00.000'],
  ])('%s shows %s', (cell, wall) => {
    expect(wallIn(cell)).toBe(wall);
  });

  it.each([
    'mai 3 maj 3 mei 3 maggio 3 mayo 3 may. 3 toukokuuta 3 května 3 maja 3 maio 3 MAY 3 Mai.',
    'märz 3 marz 3 mars 3 marzo 3 maart 3 mrt 3 março 3 marts 3 maaliskuuta 3 března 3 marca 3 bře',
    'oktober 3 octobre 3 ottobre 3 octubre 3 října 3 października 3 lokakuuta 3 outubro 3 okt. 3 paź',
  ])('reads the same month from each of %s', (names) => {
    const months = names.split(' 3 ').map((name) => wallIn(`1 ${name} 2027 10:00`).slice(0, 7));
    expect(new Set(months).size).toBe(1);
  });

  it.each([
    ['12:30a', 0.5],
    ['12:30p', 12.5],
    ['2:00 PM', 14],
    ['2:00 p.m.', 14],
    ['2:00 p. m.', 14],
    ['2:00\u202fp.\u00a0m.', 14],
    ['12:00 AM', 0],
    ['2:00 nachm.', 14],
    ['2:00 vorm.', 2],
    ['2:00 em', 14],
    ['9:00 fm', 9],
    ['下午 2:00', 14],
    ['上午 12:00', 0],
    ['오후 2:00', 14],
    ['2:00 μμ', 14],
    ['2:00 π.μ.', 2],
    ['du. 2:00', 14],
    ['de. 12:30', 0.5],
    ['2400', 24],
    ['24:00', 24],
    ['0930', 9.5],
  ])('%s is the hour %s', (cell, hours) => {
    expect(clockIn(cell)).toBe(hours);
  });

  it('reads the half of the day before and behind the time, with the date', () => {
    expect(wallIn('2027-05-01 下午2:00')).toBe('2027-05-01T14:00:00.000');
    expect(wallIn('2027. 5. 1. 오후 2:00')).toBe('2027-05-01T14:00:00.000');
    expect(wallIn('2027. 05. 01. du. 2:00')).toBe('2027-05-01T14:00:00.000');
    expect(wallIn('1 de mayo de 2027 2:00 p. m.')).toBe('2027-05-01T14:00:00.000');
  });

  it('takes 24:00 for the end of the day, also of the last of a month and a year', () => {
    expect(wallIn('2027-05-31 24:00')).toBe('2027-06-01T00:00:00.000');
    expect(wallIn('31.12.2027 24:00')).toBe('2028-01-01T00:00:00.000');
    expect(wallIn('2027 365 2400')).toBe('2028-01-01T00:00:00.000');
    expect(stampReader(formOf('2027-05-31 23:00')).read('2027-05-31 24:01')).toBeNaN();
  });

  it('counts the days of the year, leap years too', () => {
    // Day 60 is 1 March in a common year and 29 February in a leap year (the Gregorian calendar).
    expect(wallIn('2027 060 1300')).toBe('2027-03-01T13:00:00.000');
    expect(wallIn('2028 060 1300')).toBe('2028-02-29T13:00:00.000');
    expect(wallIn('2028-366')).toBe('2028-12-31T00:00:00.000');
    const reader = stampReader(stampFormOf(['2027 121 1300', '2027 121 1330'])!);
    expect(wallOf(reader.read('2027 121 0045'), 'ymd')).toBe(Date.UTC(2027, 4, 1, 0, 45));
    expect(reader.read('2027 366 1300')).toBeNaN();
  });

  it('reads counts since 1970 as instants', () => {
    expect(stampReader(formOf('1803891600')).read('1803891600')).toBe(Date.UTC(2027, 2, 1, 9));
    expect(stampReader(formOf('1803891600.25')).read('1803891600.25')).toBe(Date.UTC(2027, 2, 1, 9) + 250);
    expect(stampReader(formOf('1803891600123')).read('1803891600123')).toBe(Date.UTC(2027, 2, 1, 9) + 123);
    expect(stampReader(formOf('1803891600')).read('18038916')).toBeNaN();
  });

  it.each([
    ['2027-05-01T10:00:00Z', 0],
    ['2027-05-01 10:00 UTC', 0],
    ['2027-05-01 10:00 GMT', 0],
    ['2027-05-01 10:00 GMT+2', 120],
    ['2027-05-01 10:00+02', 120],
    ['2027-05-01 10:00-0930', -570],
    ['2027-05-01 10:00 +05:45', 345],
    ['2027-05-01T10:00+02:00[Europe/Berlin]', 120],
    ['2027-05-01 10:00', NaN],
    ['2027-05-01 10:00 CET', NaN],
    ['2027-05-01 10:00 Europe/Berlin', NaN],
  ])('%s carries the offset %s', (cell, minutes) => {
    expect(offsetIn(cell)).toBe(minutes);
  });

  it('forgets the offset of the stamp before', () => {
    const reader = stampReader(stampFormOf(['2027-05-01 10:00+02:00', '2027-05-01 11:00'])!);
    reader.read('2027-05-01 10:00+02:00');
    expect(reader.offsetMinutes).toBe(120);
    reader.read('2027-05-01 11:00');
    expect(reader.offsetMinutes).toBeNaN();
    reader.read('2027-05-01 12:00+01:00');
    reader.read('nothing');
    expect(reader.offsetMinutes).toBeNaN();
  });

  it('puts two-digit years from 70 on into the last century', () => {
    expect(wallIn('01.05.69', 'dmy')).toBe('2069-05-01T00:00:00.000');
    expect(wallIn('01.05.70', 'dmy')).toBe('1970-05-01T00:00:00.000');
    expect(wallIn('21.04.08', 'ymd')).toBe('2021-04-08T00:00:00.000');
  });

  it('is none where an interval, a list or another form stands', () => {
    const reader = stampReader(formOf('2027-05-01T10:00:00Z'));
    for (const text of [
      '2027-05-01T10:00:00Z/2027-05-01T11:00:00Z',
      '01.05.2027 10:00',
      '2027-05-01 10-00-00',
      '10:00',
    ])
      expect(reader.read(text), text).toBeNaN();
  });

  it('throws for no text, and reads none otherwise after other texts', () => {
    const samples = [
      '2027-05-01 10:00',
      '1.5.27 2:00 PM',
      '3 May 2027',
      '20270501',
      '2027 121 1300',
      '9:05',
      '1803891600',
    ];
    const piece = fc.constantFrom(
      ...' 0123456789:./-+TZ,年μ',
      'May',
      'pm',
      'de.',
      'GMT',
      '2027-05-01 ',
      '10:00',
      '(',
      '\u00a0',
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join('')),
    );
    const forms = samples.map(formOf);
    const seasoned = forms.map(stampReader);
    fc.assert(
      fc.property(text, fc.nat({ max: samples.length - 1 }), (one, n) => {
        expect(seasoned[n]!.read(one)).toEqual(stampReader(forms[n]!).read(one));
        seasoned[n]!.read(samples[n]!);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('what luxon writes', () => {
  const zones = [
    ...['Europe/Berlin', 'Europe/London', 'America/New_York', 'America/St_Johns'],
    ...['Asia/Kolkata', 'Australia/Lord_Howe', 'Pacific/Chatham', 'Etc/GMT+2'],
  ];
  const written: readonly (readonly [string, DateOrder])[] = [
    ['yyyy-MM-dd HH:mm:ss', 'ymd'],
    ["yyyy-MM-dd'T'HH:mm:ss.SSS", 'ymd'],
    ['yyyy/M/d H:m:s', 'ymd'],
    ['yyyy. MM. dd. HH:mm', 'ymd'],
    ['dd.MM.yyyy HH:mm', 'dmy'],
    ['d/M/yyyy h:mm:ss a', 'dmy'],
    ['M/d/yyyy, h:mm a', 'mdy'],
    ['dd/MM/yyyy HH.mm', 'dmy'],
    ['dd-MMM-yyyy HH:mm', 'ymd'],
    ['EEE MMM dd HH:mm:ss yyyy', 'ymd'],
    ['MMMM d, yyyy h:mm a', 'ymd'],
    ['yyyyMMddHHmmss', 'ymd'],
    ["yyyyMMdd'T'HHmm", 'ymd'],
    ['yyyy ooo HHmm', 'ymd'],
    ['HH:mm dd.MM.yyyy', 'dmy'],
    ['dd.MM.yy HH:mm', 'dmy'],
    ['yy-MM-dd HH:mm', 'ymd'],
  ];
  const instant = fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2060, 0, 1) });

  it.each(written)('as %s is read back', (format, order) => {
    fc.assert(
      fc.property(fc.array(instant, { minLength: 1, maxLength: 4 }), fc.constantFrom(...zones), (instants, zone) => {
        const times = instants.flatMap((ms) => [ms, ms + 60_000]).map((ms) => DateTime.fromMillis(ms, { zone }));
        const cells = times.map((time) => time.toFormat(format, { locale: 'en-US' }));
        const reader = stampReader(stampFormOf(cells)!);
        times.forEach((time, i) => {
          const again = DateTime.fromMillis(wallOf(reader.read(cells[i]!), order), { zone: 'utc' });
          expect(again.toFormat(format, { locale: 'en-US' })).toBe(cells[i]);
          expect(again.hasSame(time.setZone('utc', { keepLocalTime: true }), 'minute')).toBe(true);
        });
      }),
    );
  });

  it.each(['ZZ', 'ZZZ'])('with an offset as %s is the same instant', (offset) => {
    fc.assert(
      fc.property(instant, fc.constantFrom(...zones), (ms, zone) => {
        const cell = DateTime.fromMillis(ms, { zone }).toFormat(`yyyy-MM-dd HH:mm:ss.SSS${offset}`);
        const reader = stampReader(stampFormOf([cell])!);
        expect(wallOf(reader.read(cell), 'ymd') - reader.offsetMinutes * 60_000).toBe(ms);
      }),
    );
  });

  it.each(['de', 'fr', 'es', 'it', 'nl', 'sv', 'da', 'nb', 'fi', 'pl', 'cs', 'pt'])(
    'with the month names of %s is read back',
    (locale) => {
      for (let month = 1; month <= 12; month++) {
        for (const format of ['d MMM yyyy HH:mm', 'd MMMM yyyy HH:mm']) {
          const cell = DateTime.utc(2027, month, 3, 14, 5).toFormat(format, { locale });
          expect([cell, wallIn(cell)]).toEqual([cell, `2027-${String(month).padStart(2, '0')}-03T14:05:00.000`]);
        }
      }
    },
  );
});
