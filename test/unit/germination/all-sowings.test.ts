import { describe, expect, it } from 'vitest';
import { probit } from '../../../src/basics/numerics/probit.js';
import { crops } from '../../../src/germination/crops.js';
import { germinationCurve, rateAt, shareAt } from '../../../src/germination/curve/curve.js';
import { customCrop } from '../../../src/germination/custom-crop.js';
import { allSowings } from '../../../src/germination/many/all-sowings.js';
import { COHORTS, cohortRun, germinableCohorts, type Seed } from '../../../src/germination/run/cohorts.js';
import { hourlyProgress, medianSpeed } from '../../../src/germination/run/hourly-progress.js';
import { outcomeAt } from '../../../src/germination/run/outcome.js';
import { cropCalled, days, hourly, type Part, rowsOf, seedOf } from './make.js';
import { differencesFromSlow } from './slow-sowings.js';

const hours = (n: number, meanC: number): Part => ({ hours: n, meanC });
const everyDay = (n: number, at = 0): Int32Array => Int32Array.from({ length: n }, (_, day) => 24 * day + at);
const lettuce = cropCalled('lettuce');
const snapBean = cropCalled('snap-bean');

/** A year and a half that swings as the check series of the outlook page does, some degrees warmer or colder [K]. */
const seasons = (warmerK = 0): Float64Array =>
  Float64Array.from({ length: 24 * 550 }, (_, h) => {
    const d = (h + 0.5) / 24;
    const year = 14 - 15 * Math.cos((2 * Math.PI * (d - 25)) / 365) + 4 * Math.sin((2 * Math.PI * d) / 9);
    return year + warmerK + 6 * Math.sin((2 * Math.PI * ((h % 24) + 0.5 - 8)) / 24);
  });

const sown = (seed: Seed, hourlyC: Float64Array, sowH: ArrayLike<number>, countDays: number) =>
  allSowings(seed, hourlyC, sowH, { withinH: 24 * countDays, viablePercent: 100, shares: [0.8, 0.6] });

describe('all sowings at once', () => {
  it.each([...crops.keys()])('of %s are what each of them is by itself, on every day of the year', (id) => {
    const hourlyC = seasons();
    // Every third day, by turns at nine and at ten.
    const sowH = Int32Array.from({ length: 130 }, (_, i) => 24 * 3 * i + 9 + (i % 2));
    const seed = seedOf(cropCalled(id));
    expect(differencesFromSlow(seed, hourlyC, sowH, { withinH: 24 * 45, viablePercent: 83 })).toEqual([]);
  });

  it('in a record by the hundredth of a degree, where the same temperatures come again', () => {
    const inHundredths = seasons().map((tempC) => Math.round(100 * tempC) / 100);
    const extremes = Float64Array.of(-41, -40, -39.99, 79.99, 80, 80.01, 90, NaN, 12.34, 12.345, 12.34, 12.345);
    for (const crop of [lettuce, snapBean]) {
      const seed = seedOf(crop);
      const counting = { withinH: 24 * 45, viablePercent: 83 };
      expect(differencesFromSlow(seed, inHundredths, everyDay(130, 9), counting), crop.id).toEqual([]);
      for (const record of [inHundredths, extremes]) {
        const { germinable, progressPerHour } = hourlyProgress(seed, record, 0, record.length);
        const alone = [...record].map((tempC) => hourlyProgress(seed, Float64Array.of(tempC), 0, 1));
        expect([...germinable]).toEqual(alone.map((one) => one.germinable[0]));
        expect([...progressPerHour]).toEqual(alone.map((one) => one.progressPerHour[0]));
      }
    }
  });

  it('of one lot after another: slow, even, mixed, borne or not by the heat', () => {
    const hourlyC = seasons(4);
    for (const own of [
      { timeFactor: 2.3 },
      { timeFactor: 0.5, sigmaLog10: 0.05 },
      { sigmaLog10: 0.2, hotLimitShiftC: -8 },
      { hotLimitShiftC: 8 },
    ]) {
      for (const crop of [lettuce, snapBean, cropCalled('onion')]) {
        const of = `${crop.id}, ${JSON.stringify(own)}`;
        const counting = { withinH: 24 * 30 + 5, viablePercent: 61.3 };
        expect(differencesFromSlow(seedOf(crop, own), hourlyC, everyDay(200, 24 * 60 + 7), counting), of).toEqual([]);
      }
    }
  });

  it('of the grower’s own rows', () => {
    const crop = customCrop({
      rows: [
        { temperatureC: 8, days: 20, percent: 40 },
        { temperatureC: 16, days: 9, percent: 91 },
        { temperatureC: 24, days: 4, percent: 70 },
        { temperatureC: 31, days: null, percent: 0 },
      ],
      hotThresholdC: 22,
      chillingSensitive: true,
    });
    expect(
      differencesFromSlow(seedOf(crop), seasons(), everyDay(420, 9), { withinH: 24 * 40, viablePercent: 91 }),
    ).toEqual([]);
  });

  it('at any hours: twice a day, an hour earlier from some day on, one sowing twice', () => {
    const sowH = [3, 9, 9, 20, 33, 56, 80, 104, 127, 151, 2000, 2000, 2001, 4000, 12000];
    expect(differencesFromSlow(seedOf(lettuce), seasons(), sowH, { withinH: 500, viablePercent: 99 })).toEqual([]);
  });

  it('over years: sums that start anew change nothing', () => {
    const year = seasons().subarray(0, 24 * 365);
    const hourlyC = Float64Array.from({ length: 3 * year.length }, (_, h) => year[h % year.length]!);
    const sowH = Int32Array.from({ length: 260 }, (_, i) => 24 * 4 * i + 11);
    for (const crop of [lettuce, snapBean]) {
      expect(differencesFromSlow(seedOf(crop), hourlyC, sowH, { withinH: 24 * 50, viablePercent: 99 })).toEqual([]);
    }
  });

  it('none of them tells nothing', () => {
    expect(sown(seedOf(lettuce), seasons(), [], 30).up).toHaveLength(0);
  });
});

describe('what is due on the edge of an hour', () => {
  it.each([99, 61, 15, 11])(
    'at the very end of the last warm hour is up in it, however the sums round: %i %%',
    (percent) => {
      for (let due = 1; due <= 25; due++) {
        // With so many in a hundred, the cohort in the middle of them stands at the half and takes just the chart's days.
        const rows = rowsOf([
          [10, due, percent],
          [20, 1, 100],
        ]);
        const seed = seedOf(lettuce, { curve: germinationCurve(rows, null) });
        const hourlyC = hourly(days(100, 20), ...Array.from({ length: 5 }, () => [days(due, 10), days(2, -5)]).flat());
        const sowH = [0, ...Array.from({ length: 4 }, (_, i) => 24 * (100 + i * (due + 2)))];
        const counting = { withinH: 24 * (due + 1), viablePercent: 100, shares: [(percent + 1) / 200] };
        const { up, sharesH } = allSowings(seed, hourlyC, sowH, counting);
        expect([...up].slice(1), `due after ${due} days`).toEqual(Array(4).fill((percent + 1) / 2));
        for (const hour of sharesH[0]!.subarray(1)) expect(hour).toBeCloseTo(24 * due, 6);
      }
    },
  );

  it('of heat that ends just before the last of it comes', () => {
    for (let warmH = 40; warmH <= 110; warmH++) {
      const hourlyC = hourly(hours(warmH, 20), hours(25, 35), days(3, 20));
      const counting = { withinH: warmH + 26, viablePercent: 99 };
      expect(differencesFromSlow(seedOf(lettuce), hourlyC, [0], counting), `after ${warmH} h`).toEqual([]);
    }
  });

  it('of a day of heat is borne, and an hour more is not', () => {
    const heldFor = (n: number) =>
      sown(seedOf(lettuce), hourly(days(2, 20), hours(n, 35), days(20, 20)), [24, 36, 48], 20);
    expect([...heldFor(24).upUnheld]).toEqual([100, 100, 100]);
    const [a, b, c] = heldFor(25).upUnheld;
    expect([b, c]).toEqual([0, 0]);
    // A day of 20 °C brings nothing up yet either.
    expect(a).toBe(0);
  });

  it('of heat before the sowing never counts', () => {
    const hourlyC = hourly(hours(60, 35), days(20, 20));
    const { upUnheld } = sown(seedOf(lettuce), hourlyC, [0, 30, 35, 36, 60], 15);
    expect([...upUnheld].map((n) => n > 0)).toEqual([false, false, false, true, true]);
  });

  it('of killing heat: forty hours above 45 °C since the sowing spare the seed, the next kills it', () => {
    const hourlyC = hourly(hours(41, 46), days(20, 20));
    const { up } = sown(seedOf(lettuce), hourlyC, [0, 1, 2], 15);
    expect([...up].map((n) => n > 0)).toEqual([false, true, true]);
    const afternoons = hourly(days(3, 20), ...Array.from({ length: 8 }, () => [hours(7, 46), hours(17, 19)]).flat());
    expect(differencesFromSlow(seedOf(lettuce), hourlyC, [0, 1, 2, 40], { withinH: 300, viablePercent: 99 })).toEqual(
      [],
    );
    expect(differencesFromSlow(seedOf(lettuce), afternoons, everyDay(8), { withinH: 72, viablePercent: 99 })).toEqual(
      [],
    );
  });
});

describe('what is not known', () => {
  const withGap = (at: number): Float64Array => hourly(days(60, 20)).fill(NaN, at, at + 3);

  it('is not told: a sowing whose seed still waits when a gap begins', () => {
    const seed = seedOf(lettuce);
    // At 20 °C all lettuce is up within six days of a sowing.
    const { known, laboratoryPercent, halfH, up } = sown(seed, withGap(24 * 20), everyDay(30), 10);
    const told = [...known];
    expect(told.slice(0, 14)).toEqual(Array(14).fill(1));
    expect(told.slice(15, 21)).toEqual(Array(6).fill(0));
    expect(told.slice(21)).toEqual(Array(9).fill(1));
    expect([laboratoryPercent[18], halfH[18], up[18]]).toEqual([NaN, NaN, 0]);
  });

  it('does not matter where all seed was up before, or the count over', () => {
    const seed = seedOf(lettuce);
    const whole = sown(seed, hourly(days(60, 20)), [0], 40);
    const gapped = sown(seed, withGap(24 * 20), [0], 40);
    expect(gapped).toEqual(whole);
    expect(sown(seed, withGap(240), [0], 10).known[0]).toBe(1);
  });

  it('of hours after the record is unknown, not a low stand, unless all is up', () => {
    const { known, up, laboratoryPercent } = sown(seedOf(lettuce), hourly(days(10, 20)), everyDay(10), 10);
    expect([known[0], known[1], known[7], known[9]]).toEqual([1, 1, 0, 0]);
    expect(laboratoryPercent[9]).toBeNaN();
    expect(up[1]).toBe(COHORTS);
  });

  it('before and after the record nothing is told', () => {
    expect([...sown(seedOf(lettuce), hourly(days(20, 20)), [-24, -1, 0, 480, 999], 10).known]).toEqual([0, 0, 1, 0, 0]);
  });
});

describe('the share that a window asks for', () => {
  it('is up when that cohort is, and not at all where it is not by the count', () => {
    const seed = seedOf(cropCalled('spinach'));
    const hourlyC = seasons();
    const { up, sharesH } = sown(seed, hourlyC, everyDay(300), 26);
    let missed = 0;
    for (let day = 0; day < 300; day += 7) {
      const run = cohortRun(seed, hourlyC.subarray(24 * day, 24 * (day + 26)));
      if (up[day]! < 80) {
        missed++;
        expect(sharesH[0]![day]).toBeNaN();
      } else expect(sharesH[0]![day]).toBeCloseTo(run.upAtH[79]!, 6);
      expect(up[day]! / COHORTS < 0.8).toBe(Number.isNaN(sharesH[0]![day]!));
    }
    expect(missed).toBeGreaterThan(5);
    expect(missed).toBeLessThan(40);
  });

  it('of 7 in a hundred is the seventh cohort, of nothing the sowing itself', () => {
    const hourlyC = hourly(days(30, 20));
    const run = cohortRun(seedOf(lettuce), hourlyC);
    const counting = { withinH: 700, viablePercent: 99, shares: [0, 0.07, 0.29, 1] };
    const { sharesH } = allSowings(seedOf(lettuce), hourlyC, [0], counting);
    expect(sharesH[0]![0]).toBe(0);
    expect(sharesH[1]![0]).toBeCloseTo(run.upAtH[6]!, 6);
    expect(sharesH[2]![0]).toBeCloseTo(run.upAtH[28]!, 6);
    expect(sharesH[3]![0]).toBeCloseTo(run.upAtH[99]!, 6);
    expect(outcomeAt(run, 700, 99).mostH).toBeCloseTo(run.upAtH[89]!, 12);
  });
});

describe('the pace of all hours at once', () => {
  it('is that of each hour, for every crop: as many germinable at any temperature, and as fast', () => {
    const sweep = Float64Array.from({ length: 600 }, (_, i) => -5 + i / 10);
    for (const crop of crops.values()) {
      for (const hotLimitShiftC of [-8, -1.3, 0, 4]) {
        const seed = seedOf(crop, { hotLimitShiftC });
        const bends = Object.values(seed.curve).flatMap((curve) =>
          typeof curve === 'number' ? [] : [...curve.rising.tempsC, ...curve.falling.tempsC],
        );
        const hourlyC = Float64Array.of(...sweep, ...bends);
        const rates = hourlyC.map((tempC) => rateAt(seed.curve, tempC));
        const shares = hourlyC.map((tempC) => shareAt(seed.curve, tempC));
        const germinable = Uint8Array.from(rates, (rate, h) => germinableCohorts(rate, shares[h]!));
        const progressPerHour = rates.map((rate, h) =>
          germinable[h]! > 0 ? (rate * 10 ** (seed.sigmaLog10 * probit(shares[h]! / 2))) / 24 : 0,
        );
        const fast = hourlyProgress(seed, hourlyC, 0, hourlyC.length);
        expect(fast.germinable, `${crop.id}, ${hotLimitShiftC} K`).toEqual(germinable);
        expect(Math.max(...fast.progressPerHour.map((way, h) => Math.abs(way - progressPerHour[h]!)))).toBeLessThan(
          1e-12,
        );
      }
    }
  });

  it('is still where nothing is known, and outside the hours that are asked for', () => {
    const { germinable, progressPerHour } = hourlyProgress(seedOf(lettuce), Float64Array.of(20, 20, NaN, 20, 20), 1, 4);
    expect([...germinable]).toEqual([0, 100, 0, 100, 0]);
    expect([...progressPerHour].map((way) => way > 0)).toEqual([false, true, false, true, false]);
  });
});

describe('the speed of the seed that half is timed by', () => {
  it('is that of the middle of the share that comes, to a few parts in 10^11', () => {
    for (const sigmaLog10 of [0.05, 0.1, 0.2]) {
      const speed = medianSpeed(sigmaLog10);
      for (let share = 0.005; share <= 1; share += 0.00173) {
        const exact = 10 ** (sigmaLog10 * probit(share / 2));
        expect(Math.abs(speed(share) / exact - 1)).toBeLessThan(2e-11);
      }
      expect(speed(1)).toBeCloseTo(1, 14);
    }
  });
});
