import { describe, expect, it } from 'vitest';
import { probit } from '../../../src/basics/numerics/probit.js';
import { germinationCurve } from '../../../src/germination/curve/curve.js';
import { type CohortRun, cohortRun } from '../../../src/germination/run/cohorts.js';
import { cropCalled, days, hourly, type Part, rowsOf, seedOf, sow } from './make.js';

const hours = (n: number, meanC: number): Part => ({ hours: n, meanC });
const lettuce = cropCalled('lettuce');
const snapBean = cropCalled('snap-bean');
const tomato = cropCalled('tomato');
const coming = ({ upAtH }: CohortRun): number => upAtH.filter((hour) => hour < Infinity).length;
const atRisk = (inducedAtH: Float64Array): number => inducedAtH.filter((hour) => hour < Infinity).length;

describe('seed at a constant temperature', () => {
  it('spreads by the published form: log10 of the time grows with the probit of the share', () => {
    const { upAtH } = cohortRun(seedOf(cropCalled('onion'), { sigmaLog10: 0.15 }), hourly(days(30, 20)));
    for (const j of [4, 24, 74, 94]) {
      expect(Math.log10(upAtH[j]! / upAtH[49]!)).toBeCloseTo(0.15 * (probit((j + 0.5) / 100) - probit(0.495)), 9);
    }
  });

  it('comes up one cohort after the other', () => {
    const { upAtH } = cohortRun(seedOf(lettuce), hourly(days(20, 22, 9)));
    expect([...upAtH]).toEqual([...upAtH].sort((a, b) => a - b));
    expect(upAtH[99]).toBeLessThan(Infinity);
  });

  it('only comes where its hundredth comes at all: of lettuce twelve in a hundred at 30 °C', () => {
    const comingAt = (tempC: number): number => coming(cohortRun(seedOf(lettuce), hourly(days(20, tempC))));
    expect([20, 30, 32, 35].map(comingAt)).toEqual([100, 12, 7, 0]);
  });

  it('counts a share of just half a hundredth more as one more', () => {
    const rows = rowsOf([
      [20, 5, 100],
      [30, 5, 28.5],
    ]);
    expect(coming(cohortRun(seedOf(lettuce, { curve: germinationCurve(rows, null) }), hourly(days(20, 30))))).toBe(29);
  });

  it('is up when it is due at the very end of the last warm hour, however the sum of its hours rounds', () => {
    for (let due = 1; due <= 40; due++) {
      // At 99 % of the best, cohort 50 stands at the half and takes just the chart's days.
      const seed = seedOf(lettuce, {
        curve: germinationCurve(
          rowsOf([
            [10, due, 99],
            [20, 1, 100],
          ]),
          null,
        ),
      });
      const { upAtH } = cohortRun(seed, hourly(days(due, 10), days(1, -5)));
      expect(upAtH[49], `due after ${due} days`).toBeCloseTo(24 * due, 6);
    }
  });

  it('of a lot that takes twice as long takes twice as long', () => {
    const [usual, slow] = [1, 2].map(
      (timeFactor) => cohortRun(seedOf(lettuce, { timeFactor }), hourly(days(20, 20))).upAtH,
    );
    for (const j of [0, 49, 98]) expect(slow![j]).toBeCloseTo(2 * usual![j]!, 6);
  });

  it('never moves where it is too cold for any of it, and the run says so', () => {
    const { outcome, run } = sow(cropCalled('cucumber'), hourly(days(60, 5)), 60);
    expect(run.everWarmEnough).toBe(false);
    expect(outcome).toMatchObject({ halfH: null, laboratoryPercent: 0, whyNone: 'not-at-this-temperature' });
  });

  it('that merely ran out of days says that instead', () => {
    expect(sow(cropCalled('parsnip'), hourly(days(60, 0)), 21).outcome.whyNone).toBe('not-by-count-day');
  });
});

describe('seed that heat holds', () => {
  it('keeps its progress: two days at 35 °C put lettuce off by two days', () => {
    const undisturbed = sow(lettuce, hourly(days(40, 20)), 40).outcome;
    const held = sow(lettuce, hourly(days(1, 20), days(2, 35), days(40, 20)), 43).outcome;
    expect(undisturbed.halfH! / 24).toBeCloseTo(2.99, 2);
    expect(held.halfH! / 24).toBeCloseTo(4.99, 2);
    expect(held.laboratoryPercent).toBeCloseTo(99, 9);
    expect(held.ifHeldAreLostPercent).toBe(0);
  });

  it('bears a day of it, and is at risk in the hour after', () => {
    const riskAfter = (n: number) =>
      cohortRun(seedOf(lettuce), hourly(days(1, 20), hours(n, 35), days(20, 20))).heatInducedAtH;
    expect(atRisk(riskAfter(24))).toBe(0);
    expect(new Set(riskAfter(25))).toEqual(new Set([49]));
  });

  it('forgets half an hour of it with every hour of relief', () => {
    const risk = (...rest: Part[]) =>
      atRisk(cohortRun(seedOf(lettuce), hourly(hours(24, 35), ...rest, hours(24, 5))).heatInducedAtH);
    expect(risk(hours(2, 5), hours(1, 35))).toBe(0);
    expect(risk(hours(2, 5), hours(2, 35))).toBe(100);
    expect(risk(hours(48, 5), hours(24, 35))).toBe(0);
    expect(risk(hours(90, 5), hours(25, 35))).toBe(100);
  });

  it('is only that part of it which the heat stops: at 32 °C seven in a hundred go on', () => {
    const { heatInducedAtH } = cohortRun(seedOf(lettuce), hourly(days(3, 32)));
    expect(atRisk(heatInducedAtH.subarray(0, 7))).toBe(0);
    expect(atRisk(heatInducedAtH.subarray(7))).toBe(93);
  });
});

describe('killing heat', () => {
  const killed = (...parts: Part[]) => sow(lettuce, hourly(...parts, days(20, 20)), 30);

  it('spares the seed for forty hours above 45 °C and kills it in the forty-first', () => {
    expect(killed(hours(40, 46)).run.killedAtH).toBe(Infinity);
    expect(killed(hours(40, 46)).outcome.laboratoryPercent).toBeCloseTo(99, 9);
    expect(killed(hours(41, 46)).run.killedAtH).toBe(41);
    expect(killed(hours(41, 46)).outcome).toMatchObject({ halfH: null, laboratoryPercent: 0, ifHeldAreLostPercent: 0 });
  });

  it('is hotter than 45 °C itself', () => {
    expect(killed(hours(60, 45)).run.killedAtH).toBe(Infinity);
  });

  it('adds up over afternoons', () => {
    const afternoons = Array.from({ length: 6 }, () => [hours(7, 46), hours(17, 0)]).flat();
    expect(killed(...afternoons).run.killedAtH).toBe(5 * 24 + 6);
  });

  it('takes nothing from what is up already', () => {
    const { outcome } = killed(hours(72, 20), hours(41, 46));
    expect(outcome.laboratoryPercent).toBeGreaterThan(40);
    expect(outcome.laboratoryPercent).toBeLessThan(60);
  });
});

describe('seed that cold holds', () => {
  const lossAfter = (...parts: readonly Part[]) => cohortRun(seedOf(snapBean), hourly(...parts)).coldLoss;

  // Iowa State University Extension: under 7 °C within the first 6 to 24 h harms; after 24 h seed bears 2 to 4 °C.
  it('of a crop that chill harms is lost in part to the first day of it, and to no later one', () => {
    expect(lossAfter(hours(24, 6.9), days(30, 20))).toBeCloseTo(0.3, 9);
    expect(lossAfter(hours(6, 6.9), days(30, 20))).toBeCloseTo(0.075, 9);
    expect(lossAfter(hours(24, 20), days(5, 3), days(30, 20))).toBe(0);
  });

  it('is not harmed at 7 °C, only below', () => {
    expect(lossAfter(days(5, 7), days(30, 20))).toBe(0);
  });

  it('of tomato only waits', () => {
    const { run, outcome } = sow(tomato, hourly(days(10, 5), days(30, 25)), 40);
    expect(run.coldLoss).toBe(0);
    expect(outcome.halfH! / 24).toBeCloseTo(16, 1);
    expect(outcome.ifHeldAreLostPercent).toBe(outcome.laboratoryPercent);
  });

  it('costs no snap bean that waits for a month at 9 °C: at Corvallis beans sown so stood', () => {
    const { outcome } = sow(snapBean, hourly(days(30, 9, 3), days(30, 18, 5)), 60);
    expect(outcome.halfH! / 24).toBeCloseTo(42.9, 1);
    expect(outcome.laboratoryPercent).toBeCloseTo(93.12, 9);
    expect(outcome.ifHeldAreLostPercent).toBeGreaterThan(0.9 * outcome.laboratoryPercent);
  });
});
