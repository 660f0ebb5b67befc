import { describe, expect, it } from 'vitest';
import { hoursAtSeed } from '../../../src/answers/forecast/hours-at-seed.js';
import { placeDays } from '../../../src/answers/soil/place-days.js';
import { instantAt, type PlainDate, zoneNamed } from '../../../src/basics/calendar.js';

/** Hours from a wall clock on, each as warm as its number. */
function hoursFrom(clock: string, nHours: number, date: PlainDate, nDays: number, zoneName: string) {
  const zone = zoneNamed(zoneName);
  const startMs = instantAt(clock.slice(0, 10) as PlainDate, clock.slice(11), zone);
  const hourlyC = Float64Array.from({ length: nHours }, (_, hour) => hour);
  const temperature = { startMs, hourlyC, basis: new Uint8Array(nHours), sdK: new Float64Array(nHours) };
  return hoursAtSeed(placeDays(startMs, nHours, date, nDays, zone), temperature);
}

describe('the hours at the seed', () => {
  it('begin with the midnight of the sowing and end with the last day, each in the middle of its hour', () => {
    const { startMs, atDay, tempC, basis } = hoursFrom(
      '2027-05-01T12:00',
      200,
      '2027-05-03' as PlainDate,
      3,
      'Etc/GMT+2',
    );
    expect(atDay).toHaveLength(72);
    expect([tempC.length, basis.length]).toEqual([72, 72]);
    expect(tempC[0]).toBe(36);
    expect(new Date(startMs).toISOString()).toBe('2027-05-03T02:00:00.000Z');
    expect(atDay[0]).toBeCloseTo(0.5 / 24, 12);
    expect(atDay[36]).toBeCloseTo(1.5 + 0.5 / 24, 12);
    expect(atDay[71]).toBeCloseTo(3 - 0.5 / 24, 12);
  });

  it('keep to their days where clocks are changed: 23 hours in spring, 25 in autumn', () => {
    for (const [date, hours] of [
      ['2027-03-28', 23],
      ['2027-10-31', 25],
    ] as const) {
      const { atDay } = hoursFrom(`${date}T00:00`, 60, date as PlainDate, 2, 'Europe/Berlin');
      expect(atDay.filter((at) => at < 1)).toHaveLength(hours);
      expect(atDay[hours - 1]).toBeCloseTo(1 - 0.5 / hours, 12);
      expect(atDay[hours]).toBeCloseTo(1 + 0.5 / 24, 12);
    }
  });

  it('are none where the record does not reach the sowing', () => {
    expect(hoursFrom('2027-05-01T00:00', 20, '2027-05-03' as PlainDate, 3, 'Etc/GMT+2').atDay).toHaveLength(0);
  });
});
