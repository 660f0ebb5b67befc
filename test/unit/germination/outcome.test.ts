import { describe, expect, it } from 'vitest';
import { COHORTS, type CohortRun } from '../../../src/germination/run/cohorts.js';
import { countUpBy, outcomeAt } from '../../../src/germination/run/outcome.js';

const NEVER = Infinity;

/** Cohort j is up at hour j + 1, as far as they come; risk is told cohort by cohort. */
function runOf(
  coming: number,
  heatInducedAtH: (cohort: number) => number = () => NEVER,
  everWarmEnough = true,
): CohortRun {
  const of = (at: (cohort: number) => number) => Float64Array.from({ length: COHORTS }, (_, j) => at(j));
  return {
    upAtH: of((j) => (j < coming ? j + 1 : NEVER)),
    heatInducedAtH: of(heatInducedAtH),
    coldLoss: 0,
    killedAtH: NEVER,
    everWarmEnough,
  };
}

describe('outcomeAt', () => {
  it('tells when a tenth, half and nine tenths of those that come are up', () => {
    expect(outcomeAt(runOf(100), 1000, 90)).toMatchObject({
      firstH: 10,
      halfH: 50,
      mostH: 90,
      laboratoryPercent: 90,
      whyNone: null,
    });
  });

  it('means half of the twelve where twelve of a hundred come', () => {
    expect(outcomeAt(runOf(12), 1000, 100)).toMatchObject({ firstH: 2, halfH: 6, mostH: 11, laboratoryPercent: 12 });
  });

  it('counts what comes up in the very hour of the count, and nothing after it', () => {
    expect(outcomeAt(runOf(100), 40, 100)).toMatchObject({ halfH: 20, laboratoryPercent: 40 });
    expect(countUpBy(runOf(100), 39.9)).toBe(39);
  });

  it('leaves out of the second stand the cohorts that were at risk before they came up', () => {
    const risky = runOf(100, (j) => (j >= 80 ? j + 1 : j >= 60 ? j + 1.5 : NEVER));
    expect(outcomeAt(risky, 1000, 50)).toMatchObject({ laboratoryPercent: 50, ifHeldAreLostPercent: 40 });
  });

  it('loses the share that cold took as well', () => {
    const run = { ...runOf(10), coldLoss: 0.3 };
    expect(outcomeAt(run, 1000, 100)).toMatchObject({ laboratoryPercent: 10, ifHeldAreLostPercent: 7 });
  });

  it('says why none is up: too early to count, or never warm enough', () => {
    const none = {
      ...{ firstH: null, halfH: null, mostH: null },
      ...{ laboratoryPercent: 0, ifHeldAreLostPercent: 0, someWait: true },
    };
    expect(outcomeAt(runOf(100), 0.5, 100)).toEqual({ ...none, whyNone: 'not-by-count-day' });
    expect(
      outcomeAt(
        runOf(0, () => NEVER, false),
        1000,
        100,
      ),
    ).toEqual({ ...none, whyNone: 'not-at-this-temperature' });
  });
});
