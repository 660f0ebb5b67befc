import { describe, expect, it } from 'vitest';
import { addDays, type PlainDate } from '../../../src/basics/calendar.js';
import { pestRisks } from '../../../src/growth/pests/pest-risks.js';
import { sayPlainly } from './say-plainly.js';

const date = (text: string): PlainDate => text as PlainDate;

describe('a sentence beside its numbers', () => {
  it('says that some hot hours are left on a later date, and not that it meets none', () => {
    const wait = (hoursLeft: number) =>
      sayPlainly({
        code: 'action.wait',
        params: { about: 'heat', freeDate: '2027-08-17', lookedToDate: '2027-09-01', thresholdC: 25.6, hoursLeft },
      });
    expect(wait(0)).toContain('meets no such heat');
    expect(wait(26)).toContain('only 26 such hours');
    expect(wait(26)).not.toContain('no such heat');
  });

  it('tells one date of a pest once where all years have the same', () => {
    const firstDate = date('2020-01-01');
    const minC = Float64Array.from({ length: 7 * 365 + 2 }, (_, day) => {
      const month = Number(addDays(firstDate, day).slice(5, 7));
      return month >= 4 && month <= 10 ? 10 : -10;
    });
    const air = { firstDate, minC, maxC: minC.map((tempC) => tempC + 10) };
    const asked = { crop: 'cabbage', latitudeDeg: 44, from: date('2027-04-01'), to: date('2027-09-30') } as const;
    const risks = pestRisks(asked, air).filter(({ id }) => id === 'cabbage-maggot');
    expect(risks.length).toBeGreaterThan(0);
    for (const { from, to, text } of risks) {
      const years = sayPlainly(text).match(/2027/g)!;
      expect(years).toHaveLength(from === to ? 1 : 3);
    }
    expect(risks.some(({ from, to }) => from === to)).toBe(true);
  });
});
