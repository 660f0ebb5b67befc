import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ScienceError } from '../../../src/basics/errors.js';
import { type ProbeDays, probeUpdate } from '../../../src/seedbed/probe/probe-update.js';
import {
  onBareGround,
  residualsWithoutRain,
  residualsWithRain,
  residualVarianceK2,
} from '../../../src/seedbed/surface/residual-model.js';

const HAIR = 1e-9;
const NONE: ProbeDays = { days: [], sun: [], residualsK: [] };

const level = (days: readonly number[], residualK: number, x = 0): ProbeDays => ({
  days,
  sun: days.map(() => x),
  residualsK: days.map(() => residualK),
});
const upTo = (n: number): number[] => Array.from({ length: n }, (_, day) => day);

const anyModel = fc
  .tuple(fc.constantFrom(residualsWithRain, residualsWithoutRain), fc.double({ min: -1, max: 1, noNaN: true }))
  .chain(([of, climate]) => fc.constantFrom(of(climate), onBareGround(of(climate))));
const anyX = fc.double({ min: -1, max: 1, noNaN: true });
const anyProbe = (most: number): fc.Arbitrary<ProbeDays> =>
  fc
    .uniqueArray(fc.tuple(fc.integer({ min: -200, max: 100 }), anyX, fc.double({ min: -6, max: 6, noNaN: true })), {
      minLength: 1,
      maxLength: most,
      selector: ([day]) => day,
    })
    .map((rows) => rows.sort(([a], [b]) => a - b))
    .map((rows) => ({
      days: rows.map(([day]) => day),
      sun: rows.map(([, x]) => x),
      residualsK: rows.map(([, , residualK]) => residualK),
    }));
const anyAsked = fc.record({ days: fc.tuple(fc.integer({ min: -300, max: 400 })), sun: fc.tuple(anyX) });

describe('probeUpdate', () => {
  it('without a reading corrects nothing, and is as unsure as the prior', () => {
    fc.assert(
      fc.property(anyModel, anyAsked, (model, asked) => {
        const { correctionK, sdK } = probeUpdate(model, NONE, asked);
        expect([...correctionK]).toEqual([0]);
        expect(sdK[0]).toBeCloseTo(Math.sqrt(residualVarianceK2(model, asked.sun[0])), 12);
      }),
    );
  });

  it('is never less sure for another reading', () => {
    fc.assert(
      fc.property(anyModel, anyProbe(60), anyAsked, fc.nat(), (model, probe, asked, which) => {
        const left = which % probe.days.length;
        const without = (values: ArrayLike<number>): number[] => Array.from(values).filter((_, i) => i !== left);
        const fewer = {
          days: without(probe.days),
          sun: without(probe.sun),
          residualsK: without(probe.residualsK),
        };
        const [more, less] = [probe, fewer].map((readings) => probeUpdate(model, readings, asked).sdK[0]!);
        expect(more).toBeLessThanOrEqual(less! + HAIR);
        expect(more).toBeGreaterThanOrEqual(Math.sqrt(model.scale * model.noiseK2) - HAIR);
      }),
    );
  });

  it('grows in proportion to what was read, and is the same for a calendar that starts elsewhere', () => {
    fc.assert(
      fc.property(anyModel, anyProbe(40), anyAsked, (model, probe, asked) => {
        const [once] = probeUpdate(model, probe, asked).correctionK;
        const twice = { ...probe, residualsK: Array.from(probe.residualsK, (residualK) => 2 * residualK) };
        expect(probeUpdate(model, twice, asked).correctionK[0]).toBeCloseTo(2 * once!, 9);
        const later = { ...probe, days: Array.from(probe.days, (day) => day + 3000) };
        const askedLater = { ...asked, days: asked.days.map((day) => day + 3000) };
        expect(probeUpdate(model, later, askedLater).correctionK[0]).toBeCloseTo(once!, 9);
      }),
    );
  });

  it('on a day with a reading comes close to it, and fades from there to what it says about the place', () => {
    const model = residualsWithRain(0);
    const days = [29, 30, 35, 60, 120, 400, 5000];
    const { correctionK } = probeUpdate(model, level(upTo(30), 2), { days, sun: days.map(() => 0) });
    expect(correctionK[0]).toBeGreaterThan(1.9);
    for (let i = 1; i < days.length; i++) expect(correctionK[i]).toBeLessThan(correctionK[i - 1]!);
    // Far off only δ is left: P00 times the sum of K⁻¹ r. Between neither all nor nothing of the two kelvin.
    expect(correctionK[5]).toBeCloseTo(correctionK[6]!, 1);
    expect(correctionK[6]).toBeGreaterThan(0.5);
    expect(correctionK[6]).toBeLessThan(1.2);
  });

  it('far off is the site part exactly, reckoned with two readings by hand', () => {
    const model = { ...residualsWithRain(0), scale: 1 };
    // k = 0.87 + fast + slow + noise on the diagonal, 100 days apart off it; far off 0.87 (1, 1).
    const own = 0.87 + 0.75 + 0.7 + 0.05;
    const apart = 0.87 + 0.75 * Math.exp(-100 / 2.2) + 0.7 * Math.exp(-100 / 80);
    const { correctionK, sdK } = probeUpdate(model, level([0, 100], 1), { days: [1e5], sun: [0] });
    expect(correctionK[0]).toBeCloseTo((0.87 * 2) / (own + apart), 12);
    expect(sdK[0]).toBeCloseTo(Math.sqrt(own - (0.87 ** 2 * 2) / (own + apart)), 12);
  });

  it('carries a residual on sunny days over to sunny days, less to dull ones', () => {
    const model = residualsWithRain(0);
    const { correctionK } = probeUpdate(model, level(upTo(14), 2, 0.5), { days: [200, 200], sun: [0.5, -0.5] });
    expect(correctionK[0]).toBeGreaterThan(2 * correctionK[1]!);
  });

  it('after years of readings is not far from what sixty days and a thinned year say, and stays quick', () => {
    const model = residualsWithRain(0);
    const probe = level(upTo(4000), 1.5);
    const asked = { days: [4000, 4060], sun: [0, 0] };
    const all = probeUpdate(model, probe, asked);
    const ofYear = probeUpdate(model, level(upTo(4000).slice(-366), 1.5), asked);
    expect([...all.correctionK]).toEqual([...ofYear.correctionK]);
    const short = probeUpdate(model, level(upTo(4000).slice(-60), 1.5), asked);
    expect(all.correctionK[0]).toBeCloseTo(short.correctionK[0]!, 1);
    expect(all.sdK[1]).toBeLessThan(short.sdK[1]!);
  });

  it('heeds the last sixty readings, and of older ones the first of every three days for a year', () => {
    const model = residualsWithRain(0);
    const heeded = (days: readonly number[]): number[] => {
      const asked = { days: [days.at(-1)! + 1], sun: [0] };
      const correctionWith = (odd: number): number =>
        probeUpdate(model, { ...level(days, 1), residualsK: days.map((day) => (day === odd ? 5 : 1)) }, asked)
          .correctionK[0]!;
      const usual = correctionWith(Number.NaN);
      return days.filter((day) => correctionWith(day) !== usual);
    };
    expect(heeded(upTo(120))).toEqual(upTo(120).filter((day) => day >= 60 || day % 3 === 0));
    const everyThird = upTo(100).map((i) => 3 * i);
    expect(heeded(everyThird)).toEqual(everyThird);
    const weekly = upTo(70).map((week) => 7 * week);
    expect(heeded(weekly)).toEqual(weekly.slice(-60));
  });

  it('keeps errors for longer on bare ground', () => {
    const asked = { days: [10], sun: [0] };
    const grass = residualsWithRain(0);
    const [covered, bare] = [grass, onBareGround(grass)].map((model) => probeUpdate(model, level([0], 1), asked));
    expect(bare!.sdK[0]).toBeGreaterThan(covered!.sdK[0]!);
    expect(onBareGround(grass)).toMatchObject({ fastK2: 1.4, fastDays: 5, slowK2: 0.7, noiseK2: 0.05 });
  });

  it('refuses a reading that is no number, and lists of different lengths', () => {
    const model = residualsWithRain(0);
    const asked = { days: [1], sun: [0] };
    const broken: ProbeDays[] = [
      level([0], Number.NaN),
      level([0], Infinity),
      level([0], 1, Number.NaN),
      { days: [0, 1], sun: [0], residualsK: [1, 1] },
      { days: [0], sun: [0], residualsK: [] },
    ];
    for (const probe of broken) expect(() => probeUpdate(model, probe, asked)).toThrow(ScienceError);
    expect(() => probeUpdate(model, NONE, { days: [0], sun: [] })).toThrow(ScienceError);
  });
});
