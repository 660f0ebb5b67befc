import { describe, expect, it } from 'vitest';
import { crops } from '../../../src/germination/crops.js';
import { customCrop } from '../../../src/germination/custom-crop.js';

const own = customCrop({
  rows: [
    { temperatureC: 10, days: 12, percent: null },
    { temperatureC: 20, days: 6, percent: null },
  ],
});

/** The value that stands in the middle of those of the handbook's crops. */
function middleOf(of: (crop: typeof own) => number | null): number {
  const known = [...crops.values()].map(of).filter((value) => value !== null);
  return known.sort((a, b) => a - b)[known.length >> 1]!;
}

// Whatever nobody tells of a crop is as in the middle one of the handbook's.
describe('a crop of the caller’s own rows', () => {
  it('gives in beds what the middle crop gives, and takes as long', () => {
    expect(own.field).toEqual({ from: middleOf(({ field }) => field.from), to: middleOf(({ field }) => field.to) });
    expect(own.bedTimeFactor).toEqual({
      from: middleOf(({ bedTimeFactor }) => bedTimeFactor.from),
      to: middleOf(({ bedTimeFactor }) => bedTimeFactor.to),
    });
  });

  it('is kept in trays, and picked, for as long as the middle crop', () => {
    expect(own.weeksInTrays).toBe(middleOf(({ weeksInTrays }) => weeksInTrays));
    expect(own.pickingDays).toBe(middleOf(({ pickingDays }) => pickingDays));
  });

  it('is worth a sowing as long as most crops are that are given the longest usual time, three weeks to half', () => {
    // 1.25 times 21 days.
    expect(own.maxDays).toBe(26);
    const counted = [...crops.values()].filter(({ maxDays }) => maxDays === own.maxDays).length;
    for (const other of [25, 24, 23, 20, 15, 30]) {
      expect([...crops.values()].filter(({ maxDays }) => maxDays === other).length).toBeLessThan(counted);
    }
  });
});
