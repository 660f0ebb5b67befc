import { describe, expect, it } from 'vitest';
import { talliesOf } from '../../../src/garden/learning/tally.js';
import { date } from '../../storage/make.js';

type Said = readonly [seedlings: number, thinned?: boolean | number, ofSeeds?: number];

/** What came by counts on days one after the other; a lower bound with a plus. */
const came = (...counts: Said[]): string =>
  talliesOf(
    counts.map(([seedlings, thinned = false, ofSeeds], day) => ({
      date: date(`2027-05-${10 + day}`),
      seedlings,
      thinned,
      ofSeeds: ofSeeds ?? null,
    })),
  )
    .map((tally) => `${tally.came}${tally.isAtLeast ? '+' : ''}`)
    .join(' ');

describe('what had come by each count', () => {
  it('is what stands, and what was pulled out', () => {
    expect(came([20], [100])).toBe('20 100');
    expect(came([30, 70])).toBe('100');
    expect(came([30, true])).toBe('30+');
    expect(came([0, 0])).toBe('0');
  });

  it('what was pulled out is missing at later counts as well, until one says better', () => {
    expect(came([100], [30, 70], [31], [29])).toBe('100 100 101 99');
    expect(came([100], [30, true], [31])).toBe('100 30+ 31+');
    expect(came([30, true], [31], [20, 90])).toBe('30+ 31+ 110');
  });

  it('how much of it is missing of another stretch nobody knows', () => {
    expect(came([30, 70], [8, false, 50], [30])).toBe('100 8+ 100');
  });
});
