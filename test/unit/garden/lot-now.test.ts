import { describe, expect, it } from 'vitest';
import type { PlainDate } from '../../../src/basics/calendar.js';
import { lotForQuestion, lotNow } from '../../../src/garden/lots/lot-now.js';
import type { LotFields } from '../../../src/garden/store/season-store.js';
import { lotOf } from './lots.js';

const on = (text: string): PlainDate => text as PlainDate;
const TODAY = on('2027-03-01');
const now = (fields: Partial<LotFields>, date = TODAY) => lotNow(lotOf(fields), date);
const codes = (fields: Partial<LotFields>, date = TODAY): string[] => {
  const { assumptions, warnings } = now(fields, date);
  return [...assumptions, ...warnings].map(({ code }) => code);
};
const stored = { testedOn: on('2026-03-01'), moisturePercent: 8, storeC: 20 };

describe('what a lot is worth', () => {
  it('is what a counted test found, with the range that so many seeds leave open', () => {
    expect(now({ test: { sown: 100, germinated: 88 } })).toMatchObject({ percent: 88, aged: [] });
    const { range } = now({ test: { sown: 100, germinated: 88 } });
    expect(range!.from).toBeCloseTo(83.3, 0);
    expect(range!.to).toBeCloseTo(91.6, 0);
    const few = now({ test: { sown: 10, germinated: 9 } }).range!;
    expect(few.to - few.from).toBeGreaterThan(2.5 * (range!.to - range!.from));
  });

  it('is what the packet says, as it is, without a range', () => {
    expect(now({ germinationPercent: 85 })).toMatchObject({ percent: 85, range: null });
    expect(codes({ germinationPercent: 85 })).toContain('lot-packet');
  });

  it('is not known where nobody tells', () => {
    expect(now({})).toMatchObject({ percent: null, range: null });
    expect(codes({})).toEqual(['lot-unknown', 'lot-age-unknown']);
  });
});

describe('ageing', () => {
  it('needs the date, the moisture and the store, and says which is missing', () => {
    const whole = { germinationPercent: 90, ...stored };
    expect(now(whole).aged).toHaveLength(2);
    for (const missing of ['testedOn', 'moisturePercent', 'storeC'] as const) {
      const one = { ...whole, [missing]: null };
      expect(now(one)).toMatchObject({ percent: 90, aged: [] });
      expect(codes(one)).toContain('lot-not-aged');
    }
    expect(codes({ germinationPercent: 90, testedOn: stored.testedOn })).not.toContain('lot-not-aged');
  });

  it('tells what each published set of constants leaves, and spans them', () => {
    const { percent, range, aged } = now({ germinationPercent: 90, ...stored });
    const [less, more] = aged.map((one) => one.percent).sort((a, b) => a - b);
    expect(more! - less!).toBeGreaterThan(3);
    expect(range).toEqual({ from: less, to: more });
    expect(percent).toBeGreaterThan(less!);
    expect(percent).toBeLessThan(more!);
    expect(codes({ germinationPercent: 90, ...stored })).toContain('lot-constants-differ');
  });

  it('says where the constants are those of kin', () => {
    expect(codes({ crop: 'cabbage', germinationPercent: 90, ...stored })).toContain('lot-constants-of-kin');
    expect(codes({ crop: 'pea', germinationPercent: 90, ...stored })).not.toContain('lot-constants-of-kin');
  });

  it('is refused in words where the equation does not hold, or nothing is published', () => {
    for (const fields of [{ moisturePercent: 18 }, { moisturePercent: 3 }, { storeC: -18 }, { crop: 'carrot' }]) {
      const one = { germinationPercent: 90, ...stored, ...fields };
      expect(now(one)).toMatchObject({ percent: 90, aged: [] });
      expect(codes(one)).toContain('lot-not-aged');
    }
  });

  it('takes something of a lot of which every seed germinated, and nothing on the day of the test', () => {
    const all = { crop: 'pea', test: { sown: 50, germinated: 50 }, ...stored, moisturePercent: 12, storeC: 25 };
    const later = now(all);
    expect(later.percent).toBeLessThan(99);
    expect(later.range!.to).toBeLessThan(100);
    expect(now({ ...all, test: { sown: 50, germinated: 45 } }, stored.testedOn).percent).toBeCloseTo(90, 10);
    expect(now({ ...all, test: { sown: 50, germinated: 45 } }, on('2020-01-01')).percent).toBeCloseTo(90, 10);
  });
});

describe('seed to be tested before use', () => {
  const lettuce = { crop: 'lettuce', germinationPercent: 90 };
  const flagged = (fields: Partial<LotFields>, date = TODAY) => now(fields, date).testBeforeUse;

  it("is older than the handbook's storage years, from the end of the packet's year on", () => {
    expect(flagged({ ...lettuce, packedYear: 2021 }, on('2027-12-31'))).toBe(false);
    expect(flagged({ ...lettuce, packedYear: 2021 }, on('2028-01-01'))).toBe(true);
    expect(codes({ ...lettuce, packedYear: 2020 })).toContain('test-before-use');
    expect(flagged({ crop: 'onion', packedYear: 2025 }, on('2027-01-01'))).toBe(true);
  });

  it('is counted from the test where the packet tells no year', () => {
    expect(flagged({ ...lettuce, testedOn: on('2021-02-28') })).toBe(true);
    expect(flagged({ ...lettuce, testedOn: on('2021-03-01') })).toBe(false);
  });

  it('is not seed that was tested within a year, nor seed that is aged by the equation', () => {
    expect(flagged({ ...lettuce, packedYear: 2018, testedOn: on('2026-06-01') })).toBe(false);
    expect(flagged({ ...lettuce, packedYear: 2018, testedOn: on('2026-02-01') })).toBe(true);
    expect(flagged({ ...lettuce, packedYear: 2010, ...stored, testedOn: on('2015-02-01') })).toBe(false);
  });

  it('never takes a percent off', () => {
    expect(now({ ...lettuce, packedYear: 2010 }).percent).toBe(90);
  });

  it('is not known of a crop of the grower’s own', () => {
    const rows = [
      { temperatureC: 10, days: 9, percent: 80 },
      { temperatureC: 20, days: 4, percent: 90 },
    ];
    expect(flagged({ crop: { rows }, packedYear: 1990 })).toBe(false);
  });

  it('is told to come up later too, without a number', () => {
    expect(codes({ ...lettuce, packedYear: 2024 })).toContain('older-seed-later');
    expect(codes({ ...lettuce, packedYear: 2026 })).not.toContain('older-seed-later');
  });
});

describe('a lot for a question', () => {
  it('brings what it is worth on the day of sowing, its test and its heat', () => {
    const lot = lotOf({ crop: 'pea', germinationPercent: 90, ...stored, hotLimitShiftC: 2 });
    const { germinationPercent, ...rest } = lotForQuestion(lot, TODAY);
    expect(germinationPercent).toBe(lotNow(lot, TODAY).percent);
    expect(germinationPercent).toBeLessThan(90);
    expect(rest).toEqual({ testedOn: stored.testedOn, hotLimitShiftC: 2 });
  });
});
