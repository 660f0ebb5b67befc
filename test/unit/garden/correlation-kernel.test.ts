import { describe, expect, it } from 'vitest';
import { addDays, type PlainDate } from '../../../src/basics/calendar.js';
import { correlationKernel } from '../../../src/garden/learning/correlation-kernel.js';

const sown = '2027-05-01' as PlainDate;
/** Two sowings so many days apart, of one lot or of two. */
const kernelAt = (days: number, lot: string | null = 'a'): number =>
  correlationKernel({ date: sown, lot: 'a' }, { date: addDays(sown, days), lot });

describe('what two sowings of a bed have in common', () => {
  it('is seven tenths on one day, as three tenths are each sowing’s own', () => {
    expect(kernelAt(0)).toBeCloseTo(0.7, 9);
  });

  it('halves in two years, as beds are dug, limed and dunged', () => {
    expect(kernelAt(730) / kernelAt(0)).toBeCloseTo(0.5, 3);
    expect(kernelAt(1461) / kernelAt(0)).toBeCloseTo(0.25, 3);
  });

  it('is three fifths as much in the other season: 0.8 less 0.2 of a wave of a year', () => {
    const HALF_YEAR = 183;
    const fadedBy = 2 ** (-HALF_YEAR / 730);
    expect(kernelAt(HALF_YEAR) / (kernelAt(0) * fadedBy)).toBeCloseTo(0.6, 3);
  });

  it('is four fifths as much for seed of another lot, and whole where a lot is unknown', () => {
    expect(kernelAt(0, 'b') / kernelAt(0)).toBeCloseTo(0.8, 9);
    expect(kernelAt(0, null)).toBeCloseTo(0.7, 9);
  });
});
