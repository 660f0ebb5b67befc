import { describe, expect, it } from 'vitest';
import type { WindowAnswer } from '../../../src/contract/windows.js';
import { windowsInWords } from '../../../src/demo/words.js';

const quantiles = { p10: 3.2, p50: 3.9, p90: 5.5 };
const good = { grade: 'good', harvest: null } as const;
const answer: WindowAnswer = {
  crop: 'lettuce',
  years: { from: 2012, to: 2026, count: 15 },
  criteria: { judge: 'emergence', share: 0.8, shareIfHeld: 0.6, maxDays: 25, standDays: 25, sureness: 0.8 },
  best: { date: '2027-08-12', why: 'It is the surest date.', grade: 'good', reasons: [] },
  windows: [
    { from: '2027-08-10', to: '2027-09-30', sureness: 0.81, halfDays: quantiles, stand: quantiles, ...good, risks: [] },
    { from: '2028-04-16', to: '2028-06-20', sureness: 0.9, halfDays: null, stand: null, ...good, risks: [] },
  ],
  risks: [],
  closed: [
    { from: '2027-08-03', to: '2027-08-08', why: 'too-hot' },
    { from: '2027-10-01', to: '2027-10-31', why: 'frost-to-come' },
    { from: '2027-11-01', to: '2028-02-10', why: 'too-cold' },
    { from: '2028-02-12', to: '2028-04-15', why: 'frost-to-come' },
  ],
  spans: [],
  ways: [],
  instead: [],
  dates: [],
  cautions: [],
  understood: [],
  assumptions: [],
  warnings: [],
  model: { name: '', version: '', sources: [] },
  issuedAt: '2027-08-03T14:00:00Z',
};
const linesOf = (given: WindowAnswer, title: string): string[] =>
  windowsInWords(given)
    .split('\n')
    .filter((line) => line.startsWith(title));

describe('the demo’s sowing windows in words', () => {
  it('tell the years, the best date and why', () => {
    expect(linesOf(answer, 'Years')).toEqual(['Years      15, from 2012 to 2026']);
    expect(linesOf(answer, 'Best')).toEqual(['Best       2027-08-12. It is the surest date.']);
    expect(linesOf({ ...answer, best: null }, 'Best')).toEqual(['Best       no date was good in any year']);
  });

  it('tell each window with its sureness, and the days to half where they are known', () => {
    expect(linesOf(answer, 'Window')).toEqual([
      'Window     2027-08-10 to 2027-09-30, good in 81 of 100 years or more; half up in 3.9 days (3.2 to 5.5)',
      'Window     2028-04-16 to 2028-06-20, good in 90 of 100 years or more',
    ]);
  });

  it('tell the time between two windows once, with each reason in it once', () => {
    expect(linesOf(answer, 'Closed')).toEqual([
      'Closed     2027-08-03 to 2027-08-08: too hot',
      'Closed     2027-10-01 to 2028-04-15: frost would follow, too cold',
    ]);
  });
});
