import { expect, it } from 'vitest';
import { type PastSoil, yearsBefore } from '../../../src/answers/ahead/past-soil.js';
import { usualCriteria } from '../../../src/answers/windows/dates-in-years.js';
import { yearsOfDates } from '../../../src/answers/windows/years-of-dates.js';
import { addDays, findZone, HOUR_MS, instantAt, type PlainDate, startOfDay } from '../../../src/basics/calendar.js';

const zone = findZone('Atlantic/Azores')!;
const FIRST = '2015-01-01' as PlainDate;
const N_DATES = 200;
const past: PastSoil = {
  startMs: startOfDay(FIRST, zone),
  hourlyC: new Float64Array(24 * 365 * 9).fill(12),
  course: null,
  years: 9,
  comingC: new Float64Array(),
  air: null,
  isUsual: false,
  sdK: null,
  assumptions: [],
  warnings: [],
};

// From a leap year to years without its day, and from a year without it to leap years; over both changes of the clock.
it.each(['2024-02-10', '2024-02-29', '2023-02-20', '2023-09-15', '2023-12-30'] as PlainDate[])(
  'dates from %s on are sown at their own clock time in each year',
  (from) => {
    const asked = { site: { zone, latitude: 38, longitude: -27, annualRainMm: null }, from, time: '00:30' };
    const years = yearsOfDates(past, { ...asked, criteria: { ...usualCriteria, maxDays: 20 } }, N_DATES);
    expect(years.length).toBeGreaterThan(6);
    for (const { year, sowH } of years) {
      const back = Number(from.slice(0, 4)) - year;
      const startMs = startOfDay(yearsBefore(from, back), zone);
      const sown = Array.from({ length: N_DATES }, (_, day) => {
        const date = yearsBefore(addDays(from, day), back);
        return Math.round((instantAt(date, '00:30', zone) - startMs) / HOUR_MS);
      });
      expect([...sowH], String(year)).toEqual(sown);
    }
  },
);
