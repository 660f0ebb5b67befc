import { describe, expect, it } from 'vitest';
import { resowingIn } from '../../../src/garden/sowing/resowing.js';
import { date } from '../../storage/make.js';

const windows = (...spans: readonly (readonly [from: string, to: string])[]) =>
  spans.map(([from, to]) => ({ from: date(from), to: date(to), halfDays: null }));

describe('when a row can be sown again', () => {
  it('is from today to the end of the season, whatever heat shuts within it', () => {
    const lettuce = windows(['2027-06-20', '2027-07-06'], ['2027-08-14', '2027-10-31'], ['2028-03-20', '2028-06-18']);
    expect(resowingIn(lettuce, date('2027-06-20'))).toEqual({ from: '2027-06-20', by: '2027-10-31' });
  });

  it('is until the very last day of a window, and not after it', () => {
    const beans = windows(['2027-08-28', '2027-09-04'], ['2028-05-08', '2028-08-25']);
    expect(resowingIn(beans, date('2027-09-04'))).toEqual({ from: '2027-09-04', by: '2027-09-04' });
    expect(resowingIn(beans, date('2027-09-05'))).toBe('too-late');
  });

  it('is from the first good date on where that is still to come', () => {
    const coming = windows(['2028-03-20', '2028-10-31']);
    expect(resowingIn(coming, date('2028-02-01'))).toEqual({ from: '2028-03-20', by: '2028-10-31' });
  });

  it('is too late in autumn: next year is another season', () => {
    expect(resowingIn(windows(['2028-05-08', '2028-09-04']), date('2027-09-20'))).toBe('too-late');
    expect(resowingIn([], date('2027-09-20'))).toBe('too-late');
  });
});
