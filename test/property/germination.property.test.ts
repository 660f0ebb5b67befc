import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { celsiusFrom, type TemperatureUnit } from '../../src/basics/units.js';
import { crops } from '../../src/germination/crops.js';
import { bestPercent, rateAt, shareAt, shareCells } from '../../src/germination/curve/curve.js';
import { COHORTS, cohortRun, type Seed } from '../../src/germination/run/cohorts.js';
import { countUpBy, outcomeAt } from '../../src/germination/run/outcome.js';
import { coldSpells, hotSpells } from '../../src/germination/run/spells.js';
import { constantFor, seedOf, sow } from '../unit/germination/make.js';
import { anyCrop, anyHourlyC, anyLot, anyWarming, handbookCrops, harshHourlyC, helpfulUpToC } from './arbitraries.js';

const HAIR = 1e-9;

/** Half at a constant temperature [d], and when the cohort before half was up; null where nothing comes. */
function halfAt(seed: Seed, tempC: number): { days: number; daysOfCohortBefore: number } | null {
  const rate = rateAt(seed.curve, tempC);
  if (rate === 0) return null;
  // A pace of two days to half, whatever the temperature: the run stays short, and times are scaled back.
  const hourlyC = constantFor(2, tempC);
  const run = cohortRun({ ...seed, timeFactor: 2 * rate }, hourlyC);
  const up = countUpBy(run, hourlyC.length);
  const half = Math.ceil(up / 2);
  const daysOf = (cohort: number): number => (cohort === 0 ? 0 : run.upAtH[cohort - 1]! / 24 / (2 * rate));
  return up === 0 ? null : { days: daysOf(half), daysOfCohortBefore: daysOf(half - 1) };
}

describe('at a constant temperature', () => {
  it('every cell of the handbook comes out of the cohorts: half within 2 % of its days, the stand within a point', () => {
    let cells = 0;
    for (const crop of handbookCrops) {
      const seed = seedOf(crop);
      const best = bestPercent(crop.rows);
      const smoothed = shareCells(crop.rows);
      for (const { temperatureC, days, percent } of crop.rows) {
        if (days === null || !percent) continue;
        cells++;
        const hourlyC = constantFor(days, temperatureC);
        const { halfH, laboratoryPercent } = outcomeAt(cohortRun(seed, hourlyC), hourlyC.length, best);
        const where = `${crop.id} at ${temperatureC} °C`;
        expect(Math.abs(halfH! / 24 / days - 1), where).toBeLessThanOrEqual(0.02);
        const stand = best * smoothed.values[smoothed.tempsC.indexOf(temperatureC)]!;
        expect(Math.abs(laboratoryPercent - stand), where).toBeLessThanOrEqual(1);
      }
    }
    expect(cells).toBe(137);
  });

  it('half a degree warmer is never later, up to both peaks, for any crop', () => {
    let pairs = 0;
    for (const crop of crops.values()) {
      const seed = seedOf(crop);
      const steps = Math.floor(2 * (helpfulUpToC(seed.curve) + 2));
      const halves = Array.from({ length: steps + 1 }, (_, i) => halfAt(seed, i / 2 - 2)).filter(
        (half) => half !== null,
      );
      for (let i = 1; i < halves.length; i++, pairs++) {
        expect(halves[i]!.days, `${crop.id}, step ${i}`).toBeLessThanOrEqual(halves[i - 1]!.days * (1 + HAIR));
      }
    }
    expect(pairs).toBeGreaterThan(900);
  });

  it('warmer by however little is never later, up to both peaks, but for one more cohort that moves the half', () => {
    const cases = fc.tuple(
      anyCrop,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(cases, anyLot, ([crop, a, b], { sigmaLog10 }) => {
        const seed = seedOf(crop, { sigmaLog10 });
        const topC = helpfulUpToC(seed.curve);
        const [cool, warm] = [a, b].sort((x, y) => x - y).map((share) => halfAt(seed, -2 + share * (topC + 2)));
        if (cool) expect(warm!.daysOfCohortBefore).toBeLessThanOrEqual(cool.days * (1 + HAIR));
      }),
    );
  });

  it('seed that takes k times as long takes k times as long for every cohort', () => {
    const factor = fc.double({ min: 0.5, max: 3, noNaN: true });
    fc.assert(
      fc.property(anyCrop, fc.integer({ min: 8, max: 30 }), factor, (crop, tempC, timeFactor) => {
        const days = 1 / rateAt(seedOf(crop).curve, tempC);
        fc.pre(days < 60);
        const hourlyC = constantFor(3 * days, tempC);
        const usual = cohortRun(seedOf(crop), hourlyC).upAtH;
        cohortRun(seedOf(crop, { timeFactor }), hourlyC).upAtH.forEach((upAtH, j) => {
          if (usual[j] === Infinity) expect(upAtH).toBe(Infinity);
          else expect(Math.abs(upAtH / (timeFactor * usual[j]!) - 1)).toBeLessThan(1e-6);
        });
      }),
      { numRuns: 50 },
    );
  });
});

describe('through changing temperature', () => {
  it('when every hour is warmer, and none passes a peak, no cohort is later and no count is smaller', () => {
    fc.assert(
      fc.property(anyCrop, anyHourlyC, anyWarming, anyLot, (crop, hourlyC, warming, { sigmaLog10, timeFactor }) => {
        const seed = seedOf(crop, { sigmaLog10, timeFactor });
        const topC = helpfulUpToC(seed.curve);
        const coolC = hourlyC.map((tempC) => Math.min(tempC, topC));
        const warmC = coolC.map((tempC, hour) => Math.min(tempC + warming[hour % warming.length]!, topC));
        const [cool, warm] = [cohortRun(seed, coolC), cohortRun(seed, warmC)];
        for (let j = 0; j < COHORTS; j++) {
          if (cool.upAtH[j]! < Infinity) expect(warm.upAtH[j]!).toBeLessThanOrEqual(cool.upAtH[j]! + HAIR);
        }
        for (let hour = 0; hour <= hourlyC.length; hour += 7) {
          expect(countUpBy(warm, hour + HAIR)).toBeGreaterThanOrEqual(countUpBy(cool, hour));
        }
      }),
      { numRuns: 150 },
    );
  });

  it('first is not after half, half not after most, and most not after the count', () => {
    fc.assert(
      fc.property(anyCrop, anyHourlyC, anyLot, fc.integer({ min: 1, max: 30 }), (crop, hourlyC, lot, countDays) => {
        const { firstH, halfH, mostH, laboratoryPercent } = sow(crop, hourlyC, countDays, lot).outcome;
        const times = [0, firstH, halfH, mostH, 24 * countDays].map((hour) => hour ?? 0);
        if (laboratoryPercent > 0) expect(times).toEqual(times.toSorted((a, b) => a - b));
        else expect([firstH, halfH, mostH]).toEqual([null, null, null]);
      }),
    );
  });

  it('the stand without held seed lies between nothing and the laboratory’s, and that below a hundred', () => {
    fc.assert(
      fc.property(anyCrop, harshHourlyC, anyLot, (crop, hourlyC, lot) => {
        const { laboratoryPercent, ifHeldAreLostPercent } = sow(crop, hourlyC, 40, lot).outcome;
        expect(ifHeldAreLostPercent).toBeGreaterThanOrEqual(0);
        expect(ifHeldAreLostPercent).toBeLessThanOrEqual(laboratoryPercent);
        expect(laboratoryPercent).toBeLessThanOrEqual(100);
      }),
    );
  });

  it('a later count lowers neither stand', () => {
    const hours = fc.integer({ min: 0, max: 1000 });
    fc.assert(
      fc.property(anyCrop, harshHourlyC, anyLot, hours, hours, (crop, hourlyC, lot, a, b) => {
        const run = cohortRun(seedOf(crop, lot), hourlyC);
        const [earlier, later] = [Math.min(a, b), Math.max(a, b)].map((countH) => outcomeAt(run, countH, 100));
        expect(later!.laboratoryPercent).toBeGreaterThanOrEqual(earlier!.laboratoryPercent);
        expect(later!.ifHeldAreLostPercent).toBeGreaterThanOrEqual(earlier!.ifHeldAreLostPercent);
      }),
    );
  });

  it('what comes after changes nothing of what came before', () => {
    fc.assert(
      fc.property(anyCrop, anyHourlyC, anyHourlyC, anyLot, (crop, before, after, lot) => {
        const seed = seedOf(crop, lot);
        const shorter = cohortRun(seed, before);
        const longer = cohortRun(seed, Float64Array.of(...before, ...after));
        for (const times of ['upAtH', 'heatInducedAtH'] as const) {
          expect(longer[times].map((hour) => (hour <= before.length ? hour : Infinity))).toEqual(shorter[times]);
        }
      }),
    );
  });

  it('°C, °F and K give the same run, to the bit', () => {
    const written: Record<TemperatureUnit, (tempC: number) => number> = {
      C: (tempC) => tempC,
      F: (tempC) => Number((tempC * 1.8 + 32).toFixed(2)),
      K: (tempC) => Number((tempC + 273.15).toFixed(2)),
    };
    fc.assert(
      fc.property(anyCrop, anyHourlyC, anyLot, (crop, hourlyC, lot) => {
        const tenths = hourlyC.map((tempC) => Number(tempC.toFixed(1)));
        const seed = seedOf(crop, lot);
        const runIn = (unit: TemperatureUnit) =>
          cohortRun(
            seed,
            tenths.map((tempC) => celsiusFrom[unit](written[unit](tempC))),
          );
        expect(runIn('F')).toEqual(runIn('C'));
        expect(runIn('K')).toEqual(runIn('C'));
      }),
      { numRuns: 50 },
    );
  });

  it('neither the temperatures nor the seed are changed by a run', () => {
    fc.assert(
      fc.property(anyCrop, anyHourlyC, (crop, hourlyC) => {
        const [seed, copy] = [seedOf(crop), hourlyC.slice()];
        const { sowing, run, outcome } = sow(crop, hourlyC, 30);
        hotSpells(sowing, run, outcome);
        expect(hourlyC).toEqual(copy);
        expect(sowing.seed).toEqual(seed);
      }),
      { numRuns: 30 },
    );
  });
});

describe('a spell', () => {
  it('never gains time or stand, lasts six hours on some day, and its hours are those beyond the threshold', () => {
    let spellsSeen = 0;
    fc.assert(
      fc.property(anyCrop, harshHourlyC, anyLot, fc.integer({ min: 3, max: 40 }), (crop, hourlyC, lot, countDays) => {
        const { sowing, run, outcome } = sow(crop, hourlyC, countDays, lot);
        const hot = hotSpells(sowing, run, outcome).map((spell) => ({ ...spell, sign: 1 }));
        const cold = coldSpells(sowing, run, outcome).map((spell) => ({ ...spell, sign: -1 }));
        for (const spell of [...hot, ...cold]) {
          spellsSeen++;
          const harmful = Array.from({ length: spell.toH - spell.fromH }, (_, i) => spell.fromH + i).filter(
            (hour) => spell.sign * (hourlyC[hour]! - spell.thresholdC) > 0,
          );
          const perDay = new Map<number, number>();
          for (const hour of harmful) perDay.set(Math.floor(hour / 24), (perDay.get(Math.floor(hour / 24)) ?? 0) + 1);
          expect(harmful.length).toBe(spell.hours);
          expect(perDay.size).toBe(spell.days);
          expect(Math.max(...perDay.values())).toBeGreaterThanOrEqual(6);
          expect(spell.sign * (spell.peakC - spell.thresholdC)).toBeGreaterThan(0);
          expect(spell.hoursInFirstDay).toBe(harmful.filter((hour) => hour < 24).length);
          expect(spell.standAtRiskPoints).toBeGreaterThanOrEqual(0);
          expect(spell.standAtRiskPoints).toBeLessThanOrEqual(100);
          if (outcome.halfH === null) expect(spell.delayDays).toBeNull();
          if (spell.delayDays) {
            expect(spell.delayDays.half).toBeGreaterThanOrEqual(0);
            expect(spell.delayDays.half).toBeLessThanOrEqual(outcome.halfH! / 24);
            expect(spell.delayDays.most).toBeGreaterThanOrEqual(0);
            expect(spell.delayDays.most).toBeLessThanOrEqual(outcome.mostH! / 24);
          }
        }
      }),
      { numRuns: 150 },
    );
    expect(spellsSeen).toBeGreaterThan(50);
  });

  it('comes after the spell before it, a day or more apart', () => {
    fc.assert(
      fc.property(anyCrop, harshHourlyC, (crop, hourlyC) => {
        const { sowing, run, outcome } = sow(crop, hourlyC, 40);
        for (const spells of [hotSpells(sowing, run, outcome), coldSpells(sowing, run, outcome)]) {
          spells.slice(1).forEach((spell, i) => {
            expect(spell.fromH - spells[i]!.toH).toBeGreaterThanOrEqual(24);
          });
        }
      }),
    );
  });

  it('of cold is never told of a crop that chill does not harm', () => {
    const chillProof = fc.constantFrom(...[...crops.values()].filter((crop) => !crop.chillingSensitive));
    fc.assert(
      fc.property(chillProof, harshHourlyC, (crop, hourlyC) => {
        const { sowing, run, outcome } = sow(crop, hourlyC, 40);
        expect(coldSpells(sowing, run, outcome)).toEqual([]);
        expect(run.coldLoss).toBe(0);
      }),
    );
  });
});

describe('a hot limit', () => {
  it('that is higher lowers neither share nor rate at any temperature, and a lower one raises neither', () => {
    const shift = fc.double({ min: 0, max: 8, noNaN: true });
    fc.assert(
      fc.property(anyCrop, shift, fc.double({ min: -10, max: 60, noNaN: true }), (crop, shiftC, tempC) => {
        const [lower, usual, higher] = [-shiftC, 0, shiftC].map(
          (hotLimitShiftC) => seedOf(crop, { hotLimitShiftC }).curve,
        );
        for (const valueAt of [rateAt, shareAt]) {
          expect(valueAt(higher!, tempC)).toBeGreaterThanOrEqual(valueAt(usual!, tempC) - 1e-12);
          expect(valueAt(lower!, tempC)).toBeLessThanOrEqual(valueAt(usual!, tempC) + 1e-12);
        }
      }),
      { numRuns: 500 },
    );
  });
});
