import { describe, expect, it } from 'vitest';
import { baseTempFit } from '../../../src/germination/curve/base-temp-fit.js';
import { germinationCurve, rateAt, shareAt, shareCells } from '../../../src/germination/curve/curve.js';
import { cropCalled, rowsOf, seedOf } from './make.js';

const curveOf = (id: string, hotLimitShiftC = 0) => seedOf(cropCalled(id), { hotLimitShiftC }).curve;
const HUNDRED_F = (100 - 32) / 1.8;

describe('the cold end of a curve', () => {
  it("falls straight from cabbage's coldest timed cell to its fitted base", () => {
    const base = baseTempFit(cropCalled('cabbage').rows)!.baseTempC;
    expect(rateAt(curveOf('cabbage'), 6)).toBeCloseTo(((6 - base) / (10 - base)) * (1 / 15), 12);
    expect(rateAt(curveOf('cabbage'), base)).toBe(0);
    expect(rateAt(curveOf('cabbage'), -20)).toBe(0);
  });

  it('ends at freezing where the fitted base lies below it, as for pea', () => {
    expect(rateAt(curveOf('pea'), 2.5)).toBeCloseTo(1 / 72, 12);
    expect(rateAt(curveOf('pea'), 0)).toBe(0);
  });

  it('is the table itself where the coldest timed cell says that none came', () => {
    expect(rateAt(curveOf('carrot'), 2.5)).toBeCloseTo(1 / 102, 12);
    expect(curveOf('carrot').rate.testedFromC).toBe(-Infinity);
  });

  it('drops to nothing below a crop that was timed at freezing', () => {
    expect(rateAt(curveOf('lettuce'), 0)).toBe(1 / 49);
    expect(rateAt(curveOf('lettuce'), -0.1)).toBe(0);
  });
});

describe('the hot end of a curve', () => {
  it("falls straight from cabbage's warmest cells to the published maximum of 100 °F", () => {
    expect(rateAt(curveOf('cabbage'), 33)).toBeCloseTo((0.25 * (HUNDRED_F - 33)) / (HUNDRED_F - 30), 12);
    expect(shareAt(curveOf('cabbage'), 33)).toBeCloseTo((HUNDRED_F - 33) / (HUNDRED_F - 25), 12);
    expect(rateAt(curveOf('cabbage'), 37.8)).toBe(0);
  });

  it('is the table itself where the warmest timed cell says that none came', () => {
    expect(rateAt(curveOf('lettuce'), 32.5)).toBeCloseTo(1 / 6, 12);
    expect(curveOf('lettuce').rate.testedToC).toBe(Infinity);
  });

  it('drops at the warmest cell where seed came above the published maximum, as asparagus did at 40 °C', () => {
    expect(rateAt(curveOf('asparagus'), 40)).toBe(1 / 28);
    expect(rateAt(curveOf('asparagus'), 40.1)).toBe(0);
  });

  it('moves with a lot that bears more heat, and the cool side stays', () => {
    const [usual, hardier] = [curveOf('lettuce'), curveOf('lettuce', 5)];
    for (const tempC of [25, 27.5, 30, 32, 35]) {
      expect(rateAt(hardier, tempC + 5)).toBeCloseTo(rateAt(usual, tempC), 12);
      expect(shareAt(hardier, tempC + 5)).toBeCloseTo(shareAt(usual, tempC), 12);
    }
    expect(rateAt(hardier, 15)).toBe(rateAt(usual, 15));
    expect(rateAt(hardier, 28)).toBe(1 / 2);
  });
});

describe('what was tested', () => {
  it('of cabbage is from 10 to 30 °C for the days and from 5 to 25 °C for the percent', () => {
    const { rate, share } = curveOf('cabbage');
    expect([rate.testedFromC, rate.testedToC, share.testedFromC, share.testedToC]).toEqual([10, 30, 5, 25]);
  });

  it('moves up with the hot limit on the hot side only', () => {
    const { rate } = curveOf('cabbage', 3);
    expect([rate.testedFromC, rate.testedToC, rate.peakC]).toEqual([10, 33, 30]);
  });
});

describe('the smoothed percent', () => {
  it.each([
    ['celery', [5, 10, 15], 182 / 3],
    ['parsnip', [5, 10], 83],
    ['snap-bean', [15, 20], 93.5],
    ['spinach', [25, 30], 30],
    ['watermelon', [20, 25], 92],
  ])('of %s is level over %s °C', (id, tempsC, percent) => {
    const { rows } = cropCalled(id);
    const best = Math.max(...rows.map((row) => row.percent ?? 0));
    const cells = shareCells(rows);
    for (const tempC of tempsC) {
      expect(cells.values[cells.tempsC.indexOf(tempC)]! * best).toBeCloseTo(percent, 9);
    }
  });

  it('rises to the warmest best cell and falls after it, for every crop', () => {
    for (const id of ['celery', 'radish', 'lettuce', 'turnip', 'spinach']) {
      const { values } = shareCells(cropCalled(id).rows);
      const peak = values.lastIndexOf(1);
      expect(values.slice(0, peak + 1)).toEqual(values.slice(0, peak + 1).toSorted((a, b) => a - b));
      expect(values.slice(peak)).toEqual(values.slice(peak).toSorted((a, b) => b - a));
    }
  });
});

describe("the caller's own rows", () => {
  it('end 5 K beyond the warmest where no maximum is known', () => {
    const curve = germinationCurve(
      rowsOf([
        [10, 20],
        [20, 8],
      ]),
      null,
    );
    expect(rateAt(curve, 22.5)).toBeCloseTo(1 / 16, 12);
    expect(rateAt(curve, 25)).toBe(0);
  });

  it('may be one row, which then reaches 5 K to both sides', () => {
    const curve = germinationCurve(rowsOf([[20, 8]]), null);
    expect([15, 17.5, 20, 22.5, 25].map((tempC) => rateAt(curve, tempC))).toEqual([0, 1 / 16, 1 / 8, 1 / 16, 0]);
    expect([15, 17.5, 20, 22.5, 25].map((tempC) => shareAt(curve, tempC))).toEqual([0, 0.5, 1, 0.5, 0]);
  });
});
