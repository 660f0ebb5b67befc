import { describe, expect, it } from 'vitest';
import { daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { frostDrafts } from '../../../src/garden/calendar/frost-events.js';
import { type BatchStart, batchesFor } from '../../../src/garden/plan/batches.js';
import { type PlanStart, plantsPerSeed } from '../../../src/garden/plan/starts.js';
import { frostEnd } from '../../../src/garden/sowing/frost-end.js';
import { cropCalled } from '../germination/make.js';
import { forecastOf, growing, northBed, on } from './seasons.js';

describe('a week of a plan', () => {
  const week = { fromDay: 100, toDay: 106 };
  const start = (reach: number, ripeDay = 103): BatchStart => ({ day: 40, isOpen: true, ripeDay, reach: () => reach });
  const isReached = (...starts: BatchStart[]): boolean => batchesFor([week], 1, [starts]).batches.length === 1;

  it('is reached where it is in half of the years', () => {
    expect(isReached(start(0.5))).toBe(true);
    expect(isReached(start(0.49))).toBe(false);
  });

  it('is served by what is made already and ripe within half a week of its middle, though another were nearer', () => {
    const isServed = (away: number): boolean => {
      const made = start(1, 103 + away);
      return batchesFor([week], 1, [[start(1)]], [made]).batches[0]!.start === made;
    };
    expect(isServed(3.5)).toBe(true);
    expect(isServed(3.6)).toBe(false);
  });
});

describe('the night that ends a crop', () => {
  const FIRST = '2001-01-01' as PlainDate;
  /** The end after twenty years with one cold night each, that of 1 November. */
  function endAt(frost: 'tender' | 'half-hardy' | 'hardy', tempC: number): PlainDate | null {
    const minC = new Float64Array(daysBetween(FIRST, '2021-01-01' as PlainDate)).fill(12);
    for (let year = 2001; year <= 2020; year++) minC[daysBetween(FIRST, `${year}-11-01` as PlainDate)] = tempC;
    return frostEnd({ firstDate: FIRST, minC }, frost, 50)(on('2027-07-01'));
  }

  it('freezes a tender one, is of -4 °C for a half-hardy one, and of -9 °C for a hardy one', () => {
    for (const [frost, limitC] of [
      ['tender', 0],
      ['half-hardy', -4],
      ['hardy', -9],
    ] as const) {
      expect(endAt(frost, limitC), frost).toBe('2027-11-01');
      expect(endAt(frost, limitC + 0.1), frost).toBeNull();
    }
  });
});

describe('plants of a seed', () => {
  it('are four of five at the least in trays, of what a laboratory gets', () => {
    const start = { method: 'indoors', stand: 90, ifHeldAreLost: 90 } as unknown as PlanStart;
    const share = plantsPerSeed(start, cropCalled('tomato'));
    expect(share.atLeast(0.9 * 0.79)).toBeCloseTo(1, 9);
    expect(share.atLeast(0.9 * 0.81)).toBeLessThan(1);
    expect(share.atLeast(0.9 * 0.9)).toBeCloseTo(0.5, 9);
  });
});

describe('a night to come', () => {
  it('is warned of 2 K above what young plants bear, 0, -2 and -5 °C: a bed under a clear sky is colder than the air', () => {
    const sown = on('2027-05-03');
    const drafts = (frost: 'tender' | 'half-hardy' | 'hardy', minC: number) => {
      const standing = growing({ forecast: forecastOf(sown) });
      const plants = { ...standing, crop: { ...standing.crop, frost } };
      return frostDrafts([plants], [{ date: on('2027-05-20'), minC }], northBed);
    };
    for (const [frost, borneC] of [
      ['tender', 0],
      ['half-hardy', -2],
      ['hardy', -5],
    ] as const) {
      expect(drafts(frost, borneC + 2), frost).toHaveLength(1);
      expect(drafts(frost, borneC + 2.1), frost).toHaveLength(0);
    }
  });
});
