import { describe, expect, it } from 'vitest';
import { defaultCountDays } from '../../../src/germination/run/count-day.js';

const always = (days: number | null) => (): number | null => days;

describe('the day to count', () => {
  it('is three weeks after wetting for a quick crop', () => {
    expect(defaultCountDays(always(4), always(20), 1)).toBe(21);
    expect(defaultCountDays(always(10.5), always(20), 1)).toBe(21);
  });

  it("is twice the chart's days for a slow one, rounded up to a whole day", () => {
    expect(defaultCountDays(always(10.6), always(20), 1)).toBe(22);
    expect(defaultCountDays(always(15), always(20), 1)).toBe(30);
  });

  it('waits longer for a grower whose seed takes longer', () => {
    expect(defaultCountDays(always(7), always(20), 2)).toBe(28);
  });

  it('comes sooner where the soil warms while the seed waits', () => {
    const chartDays = (tempC: number): number => 300 / tempC;
    const warming = (days: number): number => days / 4;
    // Twice 300 / (n / 4) is 2400 / n days, which n reaches at the root of 2400.
    expect(defaultCountDays(chartDays, warming, 1)).toBe(Math.ceil(Math.sqrt(2400)));
    expect(defaultCountDays(chartDays, always(21 / 4), 1)).toBe(Math.ceil(2400 / 21));
  });

  it('passes over means at which nothing comes up', () => {
    const chartDays = (tempC: number): number | null => (tempC < 5 ? null : 5);
    expect(defaultCountDays(chartDays, (days) => days - 25, 1)).toBe(30);
  });

  it('is not known where the soil is known for too few days', () => {
    const knownFor =
      (last: number) =>
      (days: number): number | null =>
        days > last ? null : 20;
    expect(defaultCountDays(always(15), knownFor(30), 1)).toBe(30);
    expect(defaultCountDays(always(15), knownFor(29), 1)).toBeNull();
    expect(defaultCountDays(always(5), knownFor(20), 1)).toBeNull();
  });

  it('is not known where no day within a year would do', () => {
    expect(defaultCountDays(always(183), always(1), 1)).toBe(366);
    expect(defaultCountDays(always(183.1), always(1), 1)).toBeNull();
    expect(defaultCountDays(always(null), always(1), 1)).toBeNull();
  });
});
