import { describe, expect, it } from 'vitest';
import { defaultBed } from '../../../src/answers/question.js';
import { addDays, findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { growing } from '../../../src/garden/sowing/growing.js';
import { airOfYears } from '../answers/make-air.js';
import { cropCalled } from '../germination/make.js';

const zone = findZone('Etc/GMT+2')!;
const air = airOfYears('2025-01-01' as PlainDate, 2, zone);
const last = air.days.at(-1)!.date;

describe('a bare row', () => {
  /** The odds that it is lost, a fortnight after so many seeds were sown; null: nobody said how many. */
  const lostOf = (seeds: number | null): number =>
    growing({
      site: { zone, latitude: 44, longitude: -30, annualRainMm: 800 },
      bed: defaultBed,
      series: [air],
      understood: [],
      normals: null,
      crop: cropCalled('radish'),
      lot: null,
      sowing: { date: addDays(last, -100), time: '12:00', depthCm: null, seeds },
      countDays: null,
      timeFactor: null,
      standFactor: null,
      learned: null,
      beyond: 'seasonal-drift',
      zoneFromStamps: false,
      judgesDate: false,
      lotId: null,
      counts: [{ date: addDays(last, -85), seedlings: 0, ofSeeds: null, thinned: false }],
      others: [],
    }).posterior!.dead;

  it('of which nobody said how many seeds were sown counts as one of fifty, the fewest of a short drill', () => {
    expect(lostOf(null)).toBe(lostOf(50));
    expect(lostOf(null)).not.toBe(lostOf(55));
    expect(lostOf(20)).toBeLessThan(lostOf(50));
  });
});
