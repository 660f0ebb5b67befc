import { describe, expect, it } from 'vitest';
import type { PlainDate } from '../../../src/basics/calendar.js';
import { lotNow } from '../../../src/garden/lots/lot-now.js';
import type { LotFields } from '../../../src/garden/store/season-store.js';
import { lotOf } from './lots.js';

const on = (text: string): PlainDate => text as PlainDate;
const codesOn = (date: string, fields: Partial<LotFields>): string[] => {
  const { assumptions, warnings } = lotNow(lotOf(fields), on(date));
  return [...assumptions, ...warnings].map(({ code }) => code);
};

describe('a lot', () => {
  // Bartlett: where all of n germinated a quarter of a seed is taken off; a packet's whole percents are those of a hundred seeds.
  it('of 100 % by its packet is aged from 99.75 %', () => {
    const fields = { crop: 'pea', germinationPercent: 100, testedOn: on('2027-03-01'), moisturePercent: 8, storeC: 20 };
    expect(lotNow(lotOf(fields), on('2027-03-01')).percent).toBeCloseTo(100 - 100 / 400, 9);
  });

  it('is older seed after a year', () => {
    const fields = { germinationPercent: 90, testedOn: on('2026-03-01') };
    expect(codesOn('2027-03-01', fields)).not.toContain('older-seed-later');
    expect(codesOn('2027-03-02', fields)).toContain('older-seed-later');
  });

  it('that has outlived its years in store is tested before use, unless a test is at most a year old', () => {
    const fields = { germinationPercent: 90, packedYear: 2023, testedOn: on('2026-03-01') };
    expect(codesOn('2027-03-01', fields)).not.toContain('test-before-use');
    expect(codesOn('2027-03-02', fields)).toContain('test-before-use');
  });
});
