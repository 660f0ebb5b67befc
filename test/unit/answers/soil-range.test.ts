import { describe, expect, it } from 'vitest';
import { aheadSdK } from '../../../src/answers/ahead/ahead-sd.js';
import { rangeOf } from '../../../src/answers/range.js';
import { soilRanges } from '../../../src/answers/soil/soil-range.js';
import { cohortRun } from '../../../src/germination/run/cohorts.js';
import { outcomeAt } from '../../../src/germination/run/outcome.js';
import { residualsWithRain } from '../../../src/seedbed/surface/residual-model.js';
import { cropCalled, seedOf } from '../germination/make.js';

const seed = seedOf(cropCalled('onion'));
const COUNT_H = 40 * 24;
const ranges = (tempC: number, sdK: number) => {
  const hourlyC = new Float64Array(COUNT_H).fill(tempC);
  const run = cohortRun(seed, hourlyC);
  const outcome = outcomeAt(run, COUNT_H, 100);
  const spans = soilRanges(seed, hourlyC, new Float64Array(COUNT_H).fill(sdK), residualsWithRain(0), run, outcome);
  return { outcome, spans };
};

describe('soilRanges', () => {
  it('leave nothing open where the soil was measured', () => {
    expect(ranges(14, 0.2).spans).toBeNull();
  });

  it('hold the estimate, and widen with its doubt and in the cold', () => {
    const width = ({ fromH, toH }: { fromH: number; toH: number }): number => toH - fromH;
    const { outcome, spans } = ranges(14, 1);
    expect(spans!.half.fromH).toBeLessThan(outcome.halfH!);
    expect(spans!.half.toH).toBeGreaterThan(outcome.halfH!);
    expect(width(ranges(14, 2).spans!.half)).toBeGreaterThan(width(spans!.half));
    expect(width(ranges(9, 1).spans!.half)).toBeGreaterThan(width(spans!.half));
  });

  it('are open where colder soil would bring nothing up by the count', () => {
    // Onion at 5 °C takes 31 days, at 0 °C 136: Knott's Handbook, 4th ed. (1997).
    expect(ranges(5, 3).spans!.most.toH).toBe(Infinity);
  });
});

describe('rangeOf', () => {
  it('adds the soil’s doubt to the weather’s as independent errors add', () => {
    const weather = rangeOf(20 * 24, 5 * 24, 'seasonal-drift');
    const both = rangeOf(20 * 24, 5 * 24, 'seasonal-drift', { fromH: 17 * 24, toH: 24 * 24 });
    expect(20 * 24 - both.fromH).toBeCloseTo(Math.hypot(20 * 24 - weather.fromH, 3 * 24), 6);
    expect(both.toH - 20 * 24).toBeCloseTo(Math.hypot(weather.toH - 20 * 24, 4 * 24), 6);
  });
});

describe('aheadSdK', () => {
  it('grows with the days ahead, is wider in spring, and widest for a week repeated', () => {
    for (let day = 0; day < 60; day++) {
      expect(aheadSdK('seasonal-drift', day + 1, false)).toBeGreaterThan(aheadSdK('seasonal-drift', day, false));
      expect(aheadSdK('seasonal-drift', day, true)).toBeGreaterThan(aheadSdK('seasonal-drift', day, false));
      expect(aheadSdK('repeat-last-week', day + 1, true)).toBeGreaterThan(aheadSdK('seasonal-drift', day + 1, true));
    }
  });
});
