import fc from 'fast-check';
import { DateTime, IANAZone } from 'luxon';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  dateAt,
  dayOfYear,
  daysBetween,
  findDate,
  findStamp,
  findZone,
  fixedZone,
  HOUR_MS,
  instantAt,
  instantsAt,
  instantText,
  type PlainDate,
  startOfDay,
  type Zone,
} from '../../../src/basics/calendar.js';

const zoneCalled = (name: string): Zone => {
  const zone = findZone(name);
  if (!zone) throw new Error(`no zone is called ${name}`);
  return zone;
};
const date = (text: string): PlainDate => {
  const found = findDate(text);
  if (!found) throw new Error(`${text} is no date`);
  return found;
};
const hoursOf = (day: string, zone: Zone): number =>
  (startOfDay(addDays(date(day), 1), zone) - startOfDay(date(day), zone)) / HOUR_MS;
const utc = (text: string): number => Date.parse(text);

const berlin = zoneCalled('Europe/Berlin');
const newYork = zoneCalled('America/New_York');
const kolkata = zoneCalled('Asia/Kolkata');
const lordHowe = zoneCalled('Australia/Lord_Howe');
const twoBehind = zoneCalled('Etc/GMT+2');

const variousZones = [
  'Europe/Berlin',
  'Europe/Dublin',
  'America/New_York',
  'America/St_Johns',
  'America/Sao_Paulo',
  'Asia/Kolkata',
  'Asia/Kathmandu',
  'Africa/Casablanca',
  'Australia/Lord_Howe',
  'Pacific/Chatham',
  'Pacific/Apia',
  'Etc/GMT+2',
] as const;

describe('days at a place', () => {
  it.each([
    [berlin, '2027-03-28', 23],
    [berlin, '2027-03-27', 24],
    [berlin, '2027-10-31', 25],
    [newYork, '2027-03-14', 23],
    [newYork, '2027-11-07', 25],
    [lordHowe, '2027-04-04', 24.5],
    [lordHowe, '2027-10-03', 23.5],
    [kolkata, '2027-03-28', 24],
    [twoBehind, '2027-10-31', 24],
  ])('$0.name: $1 has $2 hours', (zone, day, hours) => {
    expect(hoursOf(day, zone)).toBe(hours);
  });

  it('start at midnight on the wall clock, half-hour zones too', () => {
    expect(startOfDay(date('2027-07-01'), kolkata)).toBe(utc('2027-06-30T18:30:00Z'));
    expect(startOfDay(date('2027-07-01'), twoBehind)).toBe(utc('2027-07-01T02:00:00Z'));
    expect(startOfDay(date('2027-07-01'), berlin)).toBe(utc('2027-06-30T22:00:00Z'));
  });

  it('start an hour late where midnight itself is skipped', () => {
    expect(startOfDay(date('2018-11-04'), zoneCalled('America/Sao_Paulo'))).toBe(utc('2018-11-04T03:00:00Z'));
    expect(hoursOf('2018-11-04', zoneCalled('America/Sao_Paulo'))).toBe(23);
  });

  it('hold no hours where the calendar skips the whole day', () => {
    expect(hoursOf('2011-12-30', zoneCalled('Pacific/Apia'))).toBe(0);
  });

  it('hold their own first instant, and not the one before it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(berlin, newYork, kolkata, lordHowe, twoBehind),
        fc.integer({ min: 0, max: 40_000 }),
        (zone, n) => {
          const day = addDays(date('1990-01-01'), n);
          const start = startOfDay(day, zone);
          expect(dateAt(start, zone)).toBe(day);
          expect(dateAt(start - 1, zone)).toBe(addDays(day, -1));
        },
      ),
    );
  });
});

describe('a clock time at a place', () => {
  it('that comes twice is the first of the two', () => {
    expect(instantAt(date('2027-10-31'), '02:30', berlin)).toBe(utc('2027-10-31T02:30:00+02:00'));
    expect(instantAt(date('2027-11-07'), '01:30', newYork)).toBe(utc('2027-11-07T01:30:00-04:00'));
    expect(instantAt(date('2027-04-04'), '01:45', lordHowe)).toBe(utc('2027-04-04T01:45:00+11:00'));
  });

  it('that is skipped is the instant that the clock before the change would have called so', () => {
    expect(instantAt(date('2027-03-28'), '02:30', berlin)).toBe(utc('2027-03-28T03:30:00+02:00'));
    expect(instantAt(date('2027-03-14'), '02:15', newYork)).toBe(utc('2027-03-14T03:15:00-04:00'));
    expect(instantAt(date('2027-10-03'), '02:15', lordHowe)).toBe(utc('2027-10-03T02:45:00+11:00'));
  });

  it.each(variousZones)('on many days in turn is what it is on each, in %s', (name) => {
    for (const time of ['00:00', '02:30', '23:50']) {
      const each = Array.from({ length: 800 }, (_, n) =>
        instantAt(addDays(date('2026-12-20'), n), time, zoneCalled(name)),
      );
      expect([...instantsAt(date('2026-12-20'), 800, time, zoneCalled(name))]).toEqual(each);
    }
  });

  it('is the same instant that luxon finds, outside the hours that change', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...variousZones),
        fc.integer({ min: 0, max: 30_000 }),
        fc.integer({ min: 4, max: 23 }),
        (name, n, hour) => {
          const day = addDays(date('2012-01-01'), n);
          const time = `${String(hour).padStart(2, '0')}:20`;
          expect(instantAt(day, time, zoneCalled(name))).toBe(
            DateTime.fromISO(`${day}T${time}`, { zone: name }).toMillis(),
          );
        },
      ),
    );
  });
});

describe('offsets', () => {
  const instants = fc.integer({ min: Date.UTC(1960, 0, 1), max: Date.UTC(2190, 0, 1) });

  it.each(variousZones)('of %s are those of luxon at any instant', (name) => {
    const [zone, luxon] = [zoneCalled(name), IANAZone.create(name)];
    fc.assert(
      fc.property(instants, (ms) => {
        expect(zone.offsetMs(ms)).toBe(luxon.offset(ms) * 60_000);
      }),
      { numRuns: 60 },
    );
  });

  it.each(variousZones)('of %s show the wall clock that the platform shows', (name) => {
    const zone = zoneCalled(name);
    const platform = new Intl.DateTimeFormat('sv-SE', { timeZone: name, dateStyle: 'short', timeStyle: 'medium' });
    fc.assert(
      fc.property(instants, (ms) => {
        const wallClock = new Date(ms + zone.offsetMs(ms)).toISOString();
        expect(wallClock.slice(0, 19).replace('T', ' ')).toBe(platform.format(ms));
      }),
      { numRuns: 60 },
    );
  });

  it('change at the very millisecond of the change', () => {
    const change = utc('2027-03-28T01:00:00Z');
    expect([change - 1, change].map((ms) => berlin.offsetMs(ms) / HOUR_MS)).toEqual([1, 2]);
    const half = utc('2027-10-02T15:30:00Z');
    expect([half - 1, half].map((ms) => lordHowe.offsetMs(ms) / HOUR_MS)).toEqual([10.5, 11]);
  });

  it('behind UTC carry the sign that the name turns round', () => {
    expect(twoBehind.offsetMs(0)).toBe(-2 * HOUR_MS);
  });
});

describe('zones', () => {
  it('are found by name, and not found where there are none of that name', () => {
    expect(findZone('Europe/Berlin')?.name).toBe('Europe/Berlin');
    expect(findZone('Europe/Atlantis')).toBeUndefined();
    expect(findZone('')).toBeUndefined();
  });

  it('of a fixed offset keep it all year and are named by it', () => {
    const zone = fixedZone(-210);
    expect(zone.name).toBe('UTC-03:30');
    expect([utc('2027-01-01T00:00:00Z'), utc('2027-07-01T00:00:00Z')].map(zone.offsetMs)).toEqual([
      -210 * 60_000,
      -210 * 60_000,
    ]);
    expect(fixedZone(0).name).toBe('UTC');
  });
});

describe('findDate', () => {
  it.each(['2027-02-28', '2028-02-29', '1900-01-01', '2199-12-31', '2000-02-29'])('finds %s', (text) => {
    expect(findDate(text)).toBe(text);
  });

  it.each([
    ['2026-02-30', 'February is never so long'],
    ['2027-02-29', 'no leap year'],
    ['1900-02-29', 'no leap year, being a whole century'],
    ['2026-04-31', 'April has thirty days'],
    ['2026-13-01', 'no such month'],
    ['2026-00-10', 'no such month'],
    ['2026-01-00', 'no such day'],
    ['2026-1-5', 'digits left out'],
    ['26-01-05', 'years left out'],
    ['1899-12-31', 'before the calendar begins'],
    ['2200-01-01', 'after it ends'],
    ['2026-01-05T00:00', 'more than a date'],
    [' 2026-01-05', 'a space before it'],
    ['2026/01/05', 'slashes'],
    ['', 'nothing'],
  ])('refuses "%s": %s', (text) => {
    expect(findDate(text)).toBeUndefined();
  });
});

describe('days on the calendar', () => {
  it('go over the end of February, leap year or not', () => {
    expect(addDays(date('2028-02-28'), 1)).toBe('2028-02-29');
    expect(addDays(date('2028-02-29'), 366)).toBe('2029-03-01');
    expect(addDays(date('2027-02-28'), 1)).toBe('2027-03-01');
    expect(addDays(date('2028-03-01'), -1)).toBe('2028-02-29');
    expect(addDays(date('2027-12-31'), 1)).toBe('2028-01-01');
  });

  it('are counted between the dates that adding goes between', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60_000 }), fc.integer({ min: -20_000, max: 20_000 }), (from, n) => {
        const start = addDays(date('1960-01-01'), from);
        expect(daysBetween(start, addDays(start, n))).toBe(n);
      }),
    );
  });

  it('are numbered from 1 January', () => {
    expect(
      ['2027-01-01', '2027-03-01', '2028-03-01', '2027-12-31', '2028-12-31'].map((text) => dayOfYear(date(text))),
    ).toEqual([1, 60, 61, 365, 366]);
  });
});

describe('findStamp', () => {
  it.each([
    ['2027-08-03T12:00-02:00', '2027-08-03T14:00:00Z', -120],
    ['2027-08-03 12:00+05:30', '2027-08-03T06:30:00Z', 330],
    ['2027-08-03T12:00:30Z', '2027-08-03T12:00:30Z', 0],
    ['2027-08-03t12:00:30.250z', '2027-08-03T12:00:30.250Z', 0],
    ['2027-08-03T12:00:00+0200', '2027-08-03T10:00:00Z', 120],
    ['2027-08-03T23:59:59.999-14:00', '2027-08-04T13:59:59.999Z', -840],
    ['2027-01-01T00:00+13:45', '2026-12-31T10:15:00Z', 825],
  ])('reads %s by its own offset, whatever the place', (text, instant, offsetMinutes) => {
    expect(findStamp(text, berlin)).toEqual({ ms: utc(instant), offsetMinutes });
    expect(findStamp(text)).toEqual({ ms: utc(instant), offsetMinutes });
  });

  it('reads a stamp without an offset by the wall clock of the place', () => {
    expect(findStamp('2027-07-01T12:00', berlin)).toEqual({ ms: utc('2027-07-01T10:00:00Z'), offsetMinutes: 120 });
    expect(findStamp('2027-01-01T12:00:15', berlin)).toEqual({ ms: utc('2027-01-01T11:00:15Z'), offsetMinutes: 60 });
    expect(findStamp('2027-07-01T12:00', kolkata)).toEqual({ ms: utc('2027-07-01T06:30:00Z'), offsetMinutes: 330 });
  });

  it('cannot read a stamp without an offset where no place is named', () => {
    expect(findStamp('2027-07-01T12:00')).toBeUndefined();
  });

  it.each([
    '2027-02-29T12:00Z',
    '2027-08-03T24:00Z',
    '2027-08-03T12:60Z',
    '2027-08-03T12:00:60Z',
    '2027-08-03T12:00+15:00',
    '2027-08-03T12:00+02:60',
    '2027-08-03T12:00+2',
    '2027-08-03T12Z',
    '2027-08-03',
    '2027-08-03T12:00 Z',
    '03.08.2027 12:00',
    '2027-8-3T12:00Z',
    '1899-12-31T12:00Z',
    '1785931200',
    '',
  ])('refuses "%s"', (text) => {
    expect(findStamp(text, berlin)).toBeUndefined();
  });

  it('gives back the instant of the text that instantText writes', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(berlin, newYork, kolkata, lordHowe, twoBehind),
        fc.integer({ min: Date.UTC(1970, 0, 2) / 1000, max: Date.UTC(2190, 0, 1) / 1000 }),
        (zone, seconds) => {
          const text = instantText(seconds * 1000, zone);
          expect(findStamp(text)?.ms).toBe(seconds * 1000);
          expect(Date.parse(text)).toBe(seconds * 1000);
        },
      ),
    );
  });
});

describe('dates by arithmetic', () => {
  it('are those of the language’s own calendar, for every day that is served', () => {
    const DAY = 86_400_000;
    let date = '1890-01-01' as PlainDate;
    for (let ms = Date.UTC(1890, 0, 1); ms < Date.UTC(2211, 0, 1); ms += DAY) {
      const text = new Date(ms).toISOString().slice(0, 10);
      if (date !== text || startOfDay(date, fixedZone(0)) !== ms) expect(date).toBe(text);
      date = addDays(date, 1);
    }
    expect(date).toBe('2211-01-01');
    expect(dateAt(Date.UTC(1969, 11, 31, 23, 59), fixedZone(0))).toBe('1969-12-31');
  });
});
