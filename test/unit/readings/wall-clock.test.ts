import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { findZone, type Zone } from '../../../src/basics/calendar.js';
import { standardOffsetMs } from '../../../src/readings/time/clock-spans.js';
import { instantsOfWallClock, type WallClockResult } from '../../../src/readings/time/wall-clock.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const zoneCalled = (name: string): Zone => {
  const zone = findZone(name);
  if (!zone) throw new Error(`no zone is called ${name}`);
  return zone;
};

function turn(walls: readonly number[], zone: string, clock: 'local' | 'standard' = 'local') {
  const instants = Float64Array.from(walls);
  const turning = instantsOfWallClock(instants, walls.length, zoneCalled(zone), clock);
  for (;;) {
    const step = turning.next();
    if (step.done) return { instants: [...instants], ...(step.value as WallClockResult) };
  }
}
/** Wall clocks of one day, from times of day. */
const on = (date: string, ...times: string[]): number[] => times.map((time) => Date.parse(`${date}T${time}Z`));
const texts = (instants: readonly number[]): string[] =>
  instants.map((ms) => (Number.isNaN(ms) ? 'none' : new Date(ms).toISOString().slice(11, 16)));
/** What a clock at the place shows, by luxon. */
const shown = (ms: number, zone: string): number => ms + DateTime.fromMillis(ms, { zone }).offset * MINUTE;
const stretch = (from: string, to: string, step: number): number[] => {
  const [first, last] = [Date.parse(from), Date.parse(to)];
  return Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, i) => first + i * step);
};

describe('a wall clock that is changed', () => {
  it('shows 01:30 twice in London on 2024-10-27, first in summer time', () => {
    // Python's zoneinfo: 2024-10-27 01:30 Europe/London is 00:30Z with fold=0 and 01:30Z with fold=1.
    const { instants, repeatedHours } = turn(
      on('2024-10-27', '00:30', '01:00', '01:30', '01:00', '01:30', '02:00'),
      'Europe/London',
    );
    expect(texts(instants)).toEqual(['23:30', '00:00', '00:30', '01:00', '01:30', '02:00']);
    expect(repeatedHours).toBe(1);
  });

  it('never shows 01:30 in London on 2024-03-31', () => {
    // Python's zoneinfo: 2024-03-31 01:30 Europe/London does not come back from UTC.
    const { instants, missing } = turn(on('2024-03-31', '00:30', '01:30', '02:30'), 'Europe/London');
    expect(texts(instants)).toEqual(['00:30', 'none', '01:30']);
    expect(missing).toEqual([1]);
  });

  it('shows the same time twice where rows are an hour apart', () => {
    const hourly = on('2024-10-27', '00:00', '01:00', '01:00', '02:00');
    expect(texts(turn(hourly, 'Europe/London').instants)).toEqual(['23:00', '00:00', '01:00', '02:00']);
  });

  it('is not taken to repeat because two sensors take turns', () => {
    const rows = on('2024-10-27', '00:00', '00:00', '01:00', '01:00', '01:00', '01:00', '02:00', '02:00');
    expect(texts(turn(rows, 'Europe/London').instants)).toEqual([
      '23:00',
      '23:00',
      '00:00',
      '00:00',
      '01:00',
      '01:00',
      '02:00',
      '02:00',
    ]);
  });

  it('gives a time that is passed once to the rows that it joins on to', () => {
    const before = turn(on('2024-10-27', '00:40', '00:50', '01:00', '01:10', '05:00', '05:10'), 'Europe/London');
    expect(texts(before.instants).slice(2, 4)).toEqual(['00:00', '00:10']);
    const after = turn(on('2024-10-27', '00:00', '00:10', '01:40', '01:50', '02:00', '02:10'), 'Europe/London');
    expect(texts(after.instants).slice(2, 4)).toEqual(['01:40', '01:50']);
    expect([...before.steadyThrough, ...after.steadyThrough]).toEqual([]);
  });

  it('leaves rows without a stamp as they are', () => {
    const [first, second] = on('2024-10-27', '01:30', '01:30');
    expect(turn([NaN, first!, NaN, second!, NaN], 'Europe/London').instants).toEqual([
      NaN,
      Date.UTC(2024, 9, 27, 0, 30),
      NaN,
      Date.UTC(2024, 9, 27, 1, 30),
      NaN,
    ]);
  });

  const zones = [
    ...['Europe/Berlin', 'Europe/London', 'Europe/Dublin', 'America/New_York', 'America/St_Johns', 'Australia/Sydney'],
    ...['Australia/Lord_Howe', 'Pacific/Chatham', 'Asia/Kolkata', 'America/Sao_Paulo', 'Etc/GMT+2'],
  ];
  const steps = [1, 5, 10, 15, 30, 60].map((minutes) => minutes * MINUTE);

  it('is turned back into the instants it was read at, oldest or newest first', () => {
    const year = fc.integer({ min: 2000, max: 2035 });
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.constantFrom(...steps),
        year,
        fc.boolean(),
        (zone, step, y, isNewestFirst) => {
          const instants = stretch(`${y}-01-01T00:00Z`, `${y}-12-31T00:00Z`, Math.max(step, 30 * MINUTE));
          if (isNewestFirst) instants.reverse();
          const walls = instants.map((ms) => shown(ms, zone));
          const result = turn(walls, zone);
          expect(result.missing).toEqual([]);
          expect(result.steadyThrough).toEqual([]);
          const wrong = result.instants.filter((ms, i) => ms !== instants[i]).length;
          expect(wrong).toBe(0);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('in Lord Howe is changed by half an hour', () => {
    // IANA: Australia/Lord_Howe goes from +11 to +10:30 at 15:00Z on 2027-04-03, and back at 15:30Z on 2027-10-02.
    const autumn = turn(on('2027-04-04', '01:20', '01:30', '01:50', '01:30', '01:50', '02:00'), 'Australia/Lord_Howe');
    expect(texts(autumn.instants)).toEqual(['14:20', '14:30', '14:50', '15:00', '15:20', '15:30']);
    const spring = turn(on('2027-10-03', '01:50', '02:10', '02:30'), 'Australia/Lord_Howe');
    expect(texts(spring.instants)).toEqual(['15:20', 'none', '15:30']);
  });
});

describe('a clock that is never changed', () => {
  it.each([10 * MINUTE, 30 * MINUTE, HOUR])('runs on through the changes, rows %s ms apart', (step) => {
    const walls = stretch('2027-03-01T00:00Z', '2027-11-30T00:00Z', step);
    const { missing, repeatedHours, steadyThrough } = turn(walls, 'Europe/Berlin');
    expect(steadyThrough).toEqual(['2027-03-28', '2027-10-31']);
    expect(missing.length).toBe(HOUR / step);
    expect(repeatedHours).toBe(0);
    expect(turn([...walls].reverse(), 'Europe/Berlin').steadyThrough).toEqual(['2027-03-28', '2027-10-31']);
  });

  it('is not proved by one spoilt row in the skipped hour, nor by rows hours apart', () => {
    const instants = stretch('2027-03-27T00:00Z', '2027-03-29T00:00Z', 10 * MINUTE);
    const walls = instants.map((ms) => shown(ms, 'Europe/Berlin'));
    walls[walls.indexOf(Date.UTC(2027, 2, 28, 3, 30))] = Date.UTC(2027, 2, 28, 2, 30);
    const { missing, steadyThrough } = turn(walls, 'Europe/Berlin');
    expect([missing.length, steadyThrough]).toEqual([1, []]);
    expect(turn(stretch('2027-03-01T02:30Z', '2027-11-30T02:30Z', 3 * HOUR), 'Europe/Berlin').steadyThrough).toEqual(
      [],
    );
  });

  it('keeps the standard offset all year', () => {
    const walls = on('2027-07-01', '12:00').concat(on('2027-12-01', '12:00'), on('2027-03-28', '02:30'));
    expect(texts(turn(walls, 'Europe/Berlin', 'standard').instants)).toEqual(['11:00', '11:00', '01:30']);
    expect(texts(turn(walls, 'Australia/Lord_Howe', 'standard').instants)).toEqual(['01:30', '01:30', '16:00']);
  });

  it.each([
    ['Europe/Berlin', 1],
    ['Europe/Dublin', 0],
    ['America/New_York', -5],
    ['Australia/Sydney', 10],
    ['Australia/Lord_Howe', 10.5],
    ['Asia/Kolkata', 5.5],
    ['Etc/GMT+2', -2],
  ])('in %s is %s hours ahead of UTC', (zone, hours) => {
    // IANA time zone database; the smaller of the year's offsets.
    expect(standardOffsetMs(zoneCalled(zone), 2027)).toBe(hours * HOUR);
  });
});
