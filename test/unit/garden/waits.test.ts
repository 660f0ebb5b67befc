import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { windowNews } from '../../../src/garden/alerts/window-news.js';
import { growthOf } from '../../../src/garden/sowing/harvest.js';
import { DEFAULT_ROOM_C, daysInRoom, indoorsOf, nightsBear } from '../../../src/garden/sowing/indoors.js';
import type { WindowsNow } from '../../../src/garden/sowing/known-now.js';
import { resowingIn } from '../../../src/garden/sowing/resowing.js';
import { crops } from '../../../src/germination/crops.js';
import { cropCalled } from '../germination/make.js';
import { on } from './seasons.js';

const tomato = cropCalled('tomato');
const sown = on('2027-02-01');
const roomC = 20;
const fit = addDays(sown, Math.round(daysInRoom(tomato, roomC)!) + 7 * tomato.weeksInTrays!);

describe('plants that wait in their trays', () => {
  it('stand in a room as warm as heated dwellings are made for: 20 °C of EN 16798-1, category II', () => {
    expect(DEFAULT_ROOM_C).toBe(20);
  });

  it('wait half a year at most, from one solstice to the other', () => {
    const half = 183;
    const nights = (wait: number) => (date: string) => date >= addDays(fit, wait);
    expect(indoorsOf(tomato, sown, roomC, nights(half))!.plantOut).toBe(addDays(fit, half));
    expect(indoorsOf(tomato, sown, roomC, nights(half + 1))).toBeNull();
  });
});

describe('windows', () => {
  const from = on('2027-04-01');
  const window = (first: number, last: number) => ({
    from: addDays(from, first),
    to: addDays(from, last),
    halfDays: null,
  });

  it('are of one season up to a quarter of a year apart', () => {
    expect(resowingIn([window(0, 10), window(100, 110)], from)).toEqual({ from, by: addDays(from, 110) });
    expect(resowingIn([window(0, 10), window(101, 111)], from)).toEqual({ from, by: addDays(from, 10) });
  });
});

describe('a window that opens again', () => {
  it('within a week of the end that was told is the same, whose end has moved, and is not told anew', () => {
    const today = on('2027-05-10');
    const isNew = (daysSinceEnd: number): boolean => {
      const told = JSON.stringify({ from: on('2027-04-01'), to: addDays(today, -daysSinceEnd) });
      const window = { from: today, to: addDays(today, 20) };
      const now = { bed: 'north', crop: tomato, today, windows: [window] } as unknown as WindowsNow;
      return windowNews(now, told)!.data !== null;
    };
    expect(isNew(7)).toBe(false);
    expect(isNew(8)).toBe(true);
  });
});

describe('nights that bear young plants', () => {
  const putOut = on('2027-05-20');
  const FIRST = '2001-01-01' as PlainDate;
  const YEARS = 20;

  /** Is the date borne, after twenty years whose nights are these by the days since it, in so many of them? */
  function bears(frost: 'tender' | 'half-hardy' | 'hardy', night: (day: number) => number, inYears = YEARS): boolean {
    const minC = new Float64Array(daysBetween(FIRST, '2021-01-01' as PlainDate)).fill(12);
    for (let year = 0; year < YEARS; year++) {
      const at = daysBetween(FIRST, `${2001 + year}-05-20` as PlainDate);
      for (let day = 0; day < 60; day++) minC[at + day] = year < inYears ? night(day) : 12;
    }
    return nightsBear({ firstDate: FIRST, minC }, frost)(putOut);
  }
  const one = (onDay: number, tempC: number) => (day: number) => (day === onDay ? tempC : 12);

  it('have no frost for a month of thirty days', () => {
    expect(bears('tender', one(29, -3))).toBe(false);
    expect(bears('tender', one(30, -3))).toBe(true);
  });

  it('are above freezing for tender plants, a degree or not', () => {
    expect(bears('tender', one(20, 0.1))).toBe(true);
    expect(bears('tender', one(20, 0))).toBe(false);
  });

  it('are above -2 °C for half-hardy and above -5 °C for hardy ones', () => {
    expect(bears('half-hardy', one(20, -1.95))).toBe(true);
    expect(bears('half-hardy', one(20, -2.05))).toBe(false);
    expect(bears('hardy', one(20, -4.8))).toBe(true);
    expect(bears('hardy', one(20, -5.2))).toBe(false);
  });

  it('are of 8 °C on the mean of a tender plant’s first week, within the 7 to 10 °C that lists give', () => {
    expect(bears('tender', () => 8)).toBe(true);
    expect(bears('tender', (day) => (day < 7 ? 7.9 : 12))).toBe(false);
    expect(bears('tender', (day) => (day < 6 ? 7.5 : 12))).toBe(true);
  });

  it('are so in 17 years of 20, and not in 16', () => {
    expect(bears('tender', one(20, -3), 3)).toBe(true);
    expect(bears('tender', one(20, -3), 4)).toBe(false);
  });
});

describe('published days from sowing', () => {
  it('are those from half emergence and those that the handbook gives the seed at 20 °C', () => {
    const told = [...crops.values()].filter(({ maturity }) => maturity?.countedFrom === 'sowing');
    expect(told.length).toBeGreaterThan(8);
    for (const crop of told) {
      const days = crop.rows.find(({ temperatureC }) => temperatureC === 20)!.days!;
      expect(growthOf(crop)!.fromDays, crop.id).toBe(Math.round(crop.maturity!.fromDays - days));
    }
  });
});
