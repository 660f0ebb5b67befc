import { describe, expect, it } from 'vitest';
import { addDays } from '../../../src/basics/calendar.js';
import { windowNews } from '../../../src/garden/alerts/window-news.js';
import { growthOf } from '../../../src/garden/sowing/harvest.js';
import { DEFAULT_ROOM_C, daysInRoom, indoorsOf } from '../../../src/garden/sowing/indoors.js';
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
      const now = {
        bed: 'north',
        crop: tomato,
        today,
        windows: [window],
        comingMinC: [],
        firstUp: null,
      } as unknown as WindowsNow;
      return windowNews(now, told)!.data !== null;
    };
    expect(isNew(7)).toBe(false);
    expect(isNew(8)).toBe(true);
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
