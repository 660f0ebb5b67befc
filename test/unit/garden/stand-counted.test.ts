import { describe, expect, test } from 'vitest';
import type { PlainDate } from '../../../src/basics/calendar.js';
import { standCounted } from '../../../src/garden/learning/stand-counted.js';
import type { Count } from '../../../src/garden/store/season-store.js';

const stand = {
  by: '2027-08-24' as PlainDate,
  laboratory: 96,
  ifHeldAreLost: 96,
  field: { from: 5, to: 40 },
  seedlings: { from: 10, to: 80 },
};
const count = (seedlings: number, more: Partial<Count> = {}): Count => ({
  date: '2027-08-03' as PlainDate,
  seedlings,
  ofSeeds: null,
  thinned: false,
  ...more,
});

describe('the stand after a count', () => {
  test('is no smaller than what stood there last', () => {
    expect(standCounted(stand, [count(0), count(20)], 200)).toMatchObject({
      field: { from: 10, to: 40 },
      seedlings: { from: 20, to: 80 },
    });
    expect(standCounted(stand, [count(120)], 200).seedlings).toEqual({ from: 120, to: 120 });
  });

  test('is as it was where fewer stood, only a stretch was counted, or some were pulled out', () => {
    for (const counts of [[], [count(4)], [count(20, { ofSeeds: 50 })], [count(40), count(20, { thinned: 15 })]]) {
      expect(standCounted(stand, counts, 200)).toEqual(stand);
    }
  });

  test('is never larger than the sowing', () => {
    expect(standCounted(stand, [count(500)], 200).seedlings).toEqual({ from: 200, to: 200 });
  });
});
