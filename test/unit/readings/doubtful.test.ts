import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsAt } from '../../../src/readings/checks/doubt-limits.js';
import { rangeTest } from '../../../src/readings/checks/doubt-range.js';
import { resolutionOf } from '../../../src/readings/checks/doubt-resolution.js';
import { spikeTest } from '../../../src/readings/checks/doubt-spike.js';
import { stepTest } from '../../../src/readings/checks/doubt-step.js';
import { stuckTest } from '../../../src/readings/checks/doubt-stuck.js';
import { verdictBook } from '../../../src/readings/checks/doubt-verdicts.js';
import { failedZeroTest } from '../../../src/readings/checks/doubt-zero.js';
import { judgeReadings, type ReadingsToJudge } from '../../../src/readings/checks/doubtful.js';
import { plainReader } from '../../../src/words/reader.js';
import { sayer } from '../../../src/words/say.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

interface Asked {
  readonly everyMs?: number;
  readonly atMs?: readonly number[];
  readonly medium?: 'soil' | 'air';
  readonly depthCm?: number | null;
  readonly rawZeroC?: number;
}

function ask(valueC: readonly number[], asked: Asked = {}): ReadingsToJudge {
  const everyMs = asked.everyMs ?? HOUR;
  return {
    atMs: Float64Array.from(asked.atMs ?? valueC.map((_, i) => i * everyMs)),
    valueC: Float64Array.from(valueC),
    count: valueC.length,
    medium: asked.medium ?? 'soil',
    probeDepthCm: asked.depthCm === undefined ? 5 : asked.depthCm,
    rawZeroC: asked.rawZeroC ?? 0,
    stepMs: everyMs,
  };
}

function finish(input: ReadingsToJudge) {
  const course = judgeReadings(input);
  let pauses = 0;
  for (;;) {
    const next = course.next();
    if (next.done) return { ...next.value, pauses };
    pauses++;
  }
}

/** The same with every test over the whole record. */
function judgePlainly(input: ReadingsToJudge) {
  const { count, medium, probeDepthCm, rawZeroC, stepMs } = input;
  const code = new Uint8Array(count);
  const book = verdictBook();
  const resolutionC = resolutionOf(input);
  const limits = limitsAt(medium, probeDepthCm, resolutionC);
  rangeTest(input, limits, book, code)(0, count);
  failedZeroTest(input, limits, rawZeroC, medium === 'air', book, code)(0, count);
  spikeTest(input, limits, book, code)(0, count);
  stepTest(input, limits, book, code)(0, count);
  stuckTest(input, { medium, probeDepthCm }, stepMs, resolutionC, book, code)(0, count);
  return { code, verdicts: book.verdicts };
}

/** One letter a reading: '.' good, '?' doubtful, 'x' dropped. */
function marks(valueC: readonly number[], asked?: Asked): string {
  const { code, verdicts } = finish(ask(valueC, asked));
  return Array.from(code, (c) => (c === 0 ? '.' : verdicts[c]!.drop ? 'x' : '?')).join('');
}

function whys(valueC: readonly number[], asked?: Asked): string[] {
  const { code, verdicts } = finish(ask(valueC, asked));
  return [...new Set(code)].filter((c) => c !== 0).map((c) => say(verdicts[c]!.why!));
}
const say = sayer(plainReader);

const round = (value: number, toC = 0.1): number => Math.round(value / toC) * toC;
const times = (n: number, value: (i: number) => number): number[] => Array.from({ length: n }, (_, i) => value(i));
/** A quiet course in tenths that changes from reading to reading. */
const quiet = (n: number): number[] => times(n, (i) => round(14 + 0.3 * Math.sin(i) + 0.1 * (i % 3)));

describe('what no thermometer can have met', () => {
  it('is dropped by depth and medium: -35 to 75 °C at the seed, -30 to 60 deeper, -80 to 60 in air', () => {
    // Judged defaults of the science notes, section 7; for air the WMO's range for automatic stations.
    const rangeOf = (medium: 'soil' | 'air', depthCm: number | null) => {
      const { coldestC, hottestC } = limitsAt(medium, depthCm, 0);
      return [coldestC, hottestC];
    };
    expect(rangeOf('soil', null)).toEqual([-35, 75]);
    expect(rangeOf('soil', 2)).toEqual([-35, 75]);
    expect(rangeOf('soil', 5)).toEqual([-30, 60]);
    expect(rangeOf('air', null)).toEqual([-80, 60]);
    expect(marks([14.1, 60.5, 14.3, -30.5, 14.2])).toBe('.x.x.');
    expect(marks([14.1, Number.NaN, 14.3])).toBe('.x.');
  });

  it('is told by name where it is a power-on or a no-answer value, alone or in a short run', () => {
    expect(marks([14.1, 85, 14.3, -127, -127, 14.2], { everyMs: MINUTE })).toBe('.x.xx.');
    expect(whys([14.1, 85, 14.3])[0]).toContain('switched on');
    expect(whys([14.1, -127, 14.3])[0]).toContain('does not answer');
  });
});

describe('a zero', () => {
  it('is dropped where a failed probe left it, alone or for hours', () => {
    expect(marks([14.1, 14.2, 0, 14.4, 14.3], { everyMs: 10 * MINUTE })).toBe('..x..');
    expect(marks([14.1, ...times(100, () => 0), 14.4], { everyMs: 10 * MINUTE })).toBe(`.${'x'.repeat(100)}.`);
    expect(marks([8.1, 8.2, 0, 0, 8.4], { everyMs: 10 * MINUTE, depthCm: null })).toBe('..xx.');
    expect(marks([14.1, 14.2, 0, 0, 85, 0, 14.4])).toBe('..xxxx.');
  });

  it('is dropped at either end of the record by the one side that is known', () => {
    expect(marks([0, 0, 14.2, 14.1])).toBe('xx..');
    expect(marks([14.2, 14.1, 0])).toBe('..x');
    expect(marks([0, 0, 0])).toBe('...');
  });

  it('stays where soil freezes and thaws slowly, however long it stands at 0.0', () => {
    const freezing = [2.1, 1.2, 0.6, 0.2, ...times(200, () => 0), 0.1, 0.5, 1.4, 2.6];
    expect(marks(freezing)).toBe('.'.repeat(freezing.length));
  });

  it('stays where the ground came to it slowly and left it fast: only the step is told', () => {
    expect(marks([1.5, 0.7, 0.2, 0, 0, 0, 9.1, 9.2])).toBe('......?.');
  });

  it('is looked for as the file writes it: 0 °F is -17.78 °C, in single precision too', () => {
    const rawZeroC = -32 / 1.8;
    expect(marks([12.2, 12.3, rawZeroC, 12.4], { rawZeroC })).toBe('..x.');
    const input = ask([12.2, 12.3, rawZeroC, rawZeroC, 12.4], { rawZeroC });
    const { code } = finish({ ...input, valueC: Float32Array.from(input.valueC) });
    expect([...code].map((c) => c > 0)).toEqual([false, false, true, true, false]);
  });

  it('is dropped in a record of one reading a day, where it is ten degrees away', () => {
    expect(marks([14.1, 13.2, 0, 15.3, 14.6], { everyMs: 24 * HOUR })).toBe('..x..');
    expect(marks([6.1, 4.2, 0, 3.3, 4.6], { everyMs: 24 * HOUR })).toBe('.....');
  });

  it('stays between night and day readings, which differ by themselves', () => {
    expect(marks([18.2, 0, 19.3, 0, 18.8], { everyMs: 12 * HOUR, medium: 'air' })).toBe('.....');
  });
});

describe('a spike', () => {
  it('is doubtful at 5 cm from 3 K beyond its nearer neighbour', () => {
    // Science notes, section 7: {14.3, 19.0, 14.5} stands out by 4.5 K against a limit of 3.
    expect(marks([14.3, 19, 14.5])).toBe('.?.');
    expect(whys([14.3, 19, 14.5])).toEqual(['stands out from its neighbours by 4 °C']);
    expect(marks([14.3, 17.4, 14.5])).toBe('...');
  });

  it('is dropped from three times that, and the readings beside it stay', () => {
    expect(marks([14.3, 14.4, 24, 14.5, 14.6])).toBe('..x..');
    expect(marks([14.3, 14.4, 3, 14.5, 14.6], { everyMs: MINUTE })).toBe('..x..');
  });

  it('has a limit by depth: larger at the seed and in air, smaller deep down', () => {
    expect(limitsAt('soil', 5, 0).spikeK).toBeCloseTo(3, 12);
    expect(limitsAt('soil', null, 0).spikeK).toBeCloseTo(6, 12);
    expect(limitsAt('air', null, 0).spikeK).toBeCloseTo(6, 12);
    expect(limitsAt('soil', 20, 0).spikeK).toBeCloseTo(0.9, 12);
    expect(marks([14.3, 19, 14.5], { depthCm: null })).toBe('...');
    expect(marks([14.3, 15.5, 14.5], { depthCm: 20 })).toBe('.?.');
  });

  it('is not looked for between readings more than three hours apart, nor beside a gap', () => {
    expect(marks([4.3, 29.1, 4.5, 28.2], { everyMs: 6 * HOUR })).toBe('....');
    expect(marks([14.3, 19, 14.5], { atMs: [0, HOUR, 9 * HOUR] })).toBe('...');
  });

  it('is not the top of a day in readings three hours apart', () => {
    expect(
      marks(
        times(80, (i) => round(18 + 10 * Math.sin((Math.PI * i) / 4))),
        { everyMs: 3 * HOUR },
      ),
    ).toBe('.'.repeat(80));
  });

  it('is not one count of a thermometer that writes whole degrees', () => {
    expect(marks([14, 14, 15, 14, 14, 13, 14], { depthCm: 20 })).toBe('.......');
  });
});

describe('a step', () => {
  it('is told once, at its first reading, and never dropped', () => {
    expect(marks([14, 14.1, 20.2, 20.3, 20.2], { everyMs: 10 * MINUTE })).toBe('..?..');
    expect(marks([14, 14.1, 54.2, 54.3, 54.2], { everyMs: 10 * MINUTE })).toBe('..?..');
    expect(whys([14.1, 20.2, 20.3])).toEqual(['comes after a jump of 6 °C']);
  });

  it('is told once where the probe was out of the bed for half an hour', () => {
    expect(marks([14, 14.1, 24.2, 24.3, 24.2, 14.2, 14.1], { everyMs: 10 * MINUTE })).toBe('..?....');
  });

  it('is told again for a second jump after an hour of quiet', () => {
    const twice = times(30, (i) => (i < 10 ? 14.1 : i < 19 ? 20.2 : 26.3));
    expect(marks(twice, { everyMs: 10 * MINUTE }).replace(/\./g, '')).toBe('??');
  });

  it('is found in minutes too, where no two readings differ by it', () => {
    const sliding = [...times(30, () => 14), ...times(40, (i) => 14 + 0.2 * i), ...times(90, () => 21.8)];
    expect([...marks(sliding, { everyMs: MINUTE })].filter((mark) => mark === '?')).toHaveLength(1);
  });

  it('has the limits of the depth: 10, 5, 3, 1.5 K in an hour at 1, 5, 10, 20 cm', () => {
    // Judged defaults of the science notes, section 7; in air the published 10 °C/h of network quality control.
    const limits = [1, 5, 10, 20].map((depthCm) => limitsAt('soil', depthCm, 0).stepK);
    for (const [i, limit] of [10, 5, 3, 1.5].entries()) expect(limits[i]).toBeCloseTo(limit, 12);
    expect(limitsAt('soil', 7.5, 0).stepK).toBeCloseTo(Math.sqrt(5 * 3), 12);
    expect(limitsAt('air', null, 0).stepK).toBe(10);
  });

  it('is neither a count of half a degree in a minute nor the cold water of a can', () => {
    expect(marks([14, 14.5, 14, 14.5, 15, 14.5], { everyMs: MINUTE, depthCm: 20 })).toBe('......');
    expect(marks([26, 26.1, 22, 18.1, 18.4, 18.8], { everyMs: 10 * MINUTE, depthCm: null })).toBe('......');
  });

  it('is not looked for across a gap', () => {
    expect(marks([14.1, 14.2, 25.2, 25.1], { atMs: [0, HOUR, 9 * HOUR, 10 * HOUR] })).toBe('....');
  });
});

describe('a value that does not change', () => {
  const among = (flat: readonly number[]) => [...quiet(30), ...flat, ...quiet(30)];
  const flatPart = (flat: readonly number[], asked?: Asked) => marks(among(flat), asked).slice(30, 30 + flat.length);

  it('is doubtful after a day and dropped after three, in hourly tenths', () => {
    expect(flatPart(times(24, () => 14.2))).toBe('.'.repeat(24));
    expect(flatPart(times(25, () => 14.2))).toBe('?'.repeat(25));
    expect(flatPart(times(73, () => 14.2))).toBe('x'.repeat(73));
    expect(whys(among(times(73, () => 14.2)))).toEqual(['has not changed for 3 days']);
    expect(marks(among(times(73, () => 14.2))).replace(/x/g, '')).toBe('.'.repeat(60));
  });

  it('says nothing deeper than 10 cm, or at 0.0 ± 0.3 °C', () => {
    expect(
      flatPart(
        times(200, () => 14.2),
        { depthCm: 15 },
      ),
    ).toBe('.'.repeat(200));
    const frozen = [1.4, 1.1, 0.8, 0.5, ...times(200, () => 0.2), 0.5, 0.8, 1.1];
    expect(marks(frozen)).toBe('.'.repeat(frozen.length));
  });

  it('is not dropped near freezing, where snow keeps the ground even', () => {
    const snow = [1.4, 1.2, ...times(100, () => 0.8), 1.1];
    expect(marks(snow)).toBe(`..${'?'.repeat(100)}.`);
    expect(marks(snow, { medium: 'air' })).toBe(`..${'x'.repeat(100)}.`);
  });

  it('is given twice the time in half degrees and is never dropped in whole ones', () => {
    const halves = (n: number) => [14, 14.5, 15, 14.5, ...times(n, () => 14), 14.5, 15];
    expect(marks(halves(40))).not.toMatch(/[?x]/);
    expect(marks(halves(60))).toContain('?');
    expect(marks(halves(160))).toContain('x');
    expect(marks([15, ...times(1000, () => 24), 25])).not.toContain('x');
  });

  it('needs five readings to be doubted and twelve to be dropped in a daily record', () => {
    const daily = (n: number) => marks([13.1, ...times(n, () => 14.2), 15.3], { everyMs: 24 * HOUR });
    expect(daily(4)).toBe('......');
    expect(daily(5)).toBe('.?????.');
    expect(daily(12)).toBe(`.${'x'.repeat(12)}.`);
  });

  it('goes on past a dropped reading and ends at a gap', () => {
    expect(flatPart([...times(15, () => 14.2), 85, ...times(15, () => 14.2)])).toBe(
      `${'?'.repeat(15)}x${'?'.repeat(15)}`,
    );
    const atMs = times(40, (i) => (i < 20 ? i : i + 10) * HOUR);
    expect(marks([13.1, ...times(38, () => 14.2), 13.3], { atMs })).toBe('.'.repeat(40));
  });
});

describe('resolutionOf', () => {
  const of = (valueC: readonly number[]) => resolutionOf(ask(valueC));
  it('tells whole degrees of either unit and halves from finer steps', () => {
    expect(of([12, 13, 13, 15])).toBe(1);
    expect(of([54, 55, 57].map((tempF) => (tempF - 32) / 1.8))).toBeCloseTo(5 / 9, 12);
    expect(of([12, 12.5, 12.5, 13])).toBe(0.5);
    expect(of([12.1, 12.5, 12.6, 13])).toBe(0);
    expect(of([12.1, 12.5, 12.6, ...times(1000, () => 13)])).toBe(0);
    expect(of(times(100, () => 13))).toBe(1);
  });
});

/** Days of a smooth course at 5 cm, in tenths, at steps of 1 to 60 minutes; never flat for long, well above 0. */
const smooth = fc
  .record({
    meanC: fc.double({ min: 14, max: 22, noNaN: true }),
    swingC: fc.double({ min: 2, max: 8, noNaN: true }),
    startH: fc.double({ min: 0, max: 24, noNaN: true }),
    everyMin: fc.constantFrom(1, 5, 10, 15, 30, 60),
    n: fc.integer({ min: 200, max: 600 }),
  })
  .map(({ meanC, swingC, startH, everyMin, n }) => ({
    everyMs: everyMin * MINUTE,
    valueC: times(n, (i) => round(meanC + swingC * Math.sin(((startH + (i * everyMin) / 60) * Math.PI) / 12))),
  }));

describe('a smooth course', () => {
  it('is good throughout', () => {
    fc.assert(
      fc.property(smooth, ({ valueC, everyMs }) => {
        expect(marks(valueC, { everyMs })).toBe('.'.repeat(valueC.length));
      }),
    );
  });

  it('loses the fault that was planted in it and nothing else', () => {
    const fault = fc.oneof(
      fc.record({ value: fc.constantFrom(85, -127, 0), long: fc.integer({ min: 1, max: 20 }) }),
      fc.record({ value: fc.constantFrom(45, 52.3, -12.4), long: fc.constant(1) }),
    );
    fc.assert(
      fc.property(smooth, fault, fc.nat(170), ({ valueC, everyMs }, { value, long }, from) => {
        const at = from + 1;
        const planted = valueC.map((good, i) => (i >= at && i < at + long ? value : good));
        const expected = valueC.map((_, i) => (i >= at && i < at + long ? 'x' : '.')).join('');
        expect(marks(planted, { everyMs })).toBe(expected);
      }),
    );
  });

  it('shows a small spike as doubtful and leaves its neighbours', () => {
    fc.assert(
      fc.property(
        smooth,
        fc.nat(190),
        fc.double({ min: 5.6, max: 8.5, noNaN: true }),
        fc.boolean(),
        (s, from, byK, up) => {
          const at = from + 1;
          // The side on which the course itself is: a spike is measured from the nearer neighbour.
          const [p, n] = [s.valueC[at - 1]!, s.valueC[at + 1]!];
          const value = up ? Math.max(p, n) + byK : Math.min(p, n) - byK;
          const planted = s.valueC.map((good, i) => (i === at ? value : good));
          expect(marks(planted, { everyMs: s.everyMs })).toBe(s.valueC.map((_, i) => (i === at ? '?' : '.')).join(''));
        },
      ),
    );
  });

  it('loses the days in which the probe was stuck', () => {
    fc.assert(
      fc.property(smooth, fc.nat(150), fc.integer({ min: 73, max: 120 }), ({ valueC, everyMs }, at, hours) => {
        const long = Math.ceil((hours * HOUR) / everyMs) + 1;
        // The course goes on where it stood, so only the standing still is wrong; at a crest it may itself have
        // stood on that tenth, and those readings belong to the run.
        const stuckC = valueC[at]!;
        const planted = [...valueC.slice(0, at), ...times(long, () => stuckC), ...valueC.slice(at)];
        let [first, last] = [at, at];
        while (planted[first - 1] === stuckC) first--;
        while (planted[last + 1] === stuckC) last++;
        const expected = planted.map((_, i) => (i >= first && i <= last ? 'x' : '.')).join('');
        expect(marks(planted, { everyMs })).toBe(expected);
      }),
    );
  });
});

describe('a hot bed that is watered', () => {
  it('loses nothing: 20 K of swing at 1 cm, 8 K down in 20 minutes, read every ten', () => {
    const bed = times(20 * 144, (i) => {
      const sinceMin = ((i + 60 * 144) % 144) * 10 - 14 * 60;
      const wetK = sinceMin < 0 ? 0 : sinceMin < 20 ? (8 * sinceMin) / 20 : 8 * Math.exp(-(sinceMin - 20) / 180);
      return round(22 + 20 * Math.sin((2 * Math.PI * (i - 48)) / 144) - wetK);
    });
    expect(marks(bed, { everyMs: 10 * MINUTE, depthCm: null })).not.toContain('x');
  });
});

describe('judgeReadings', () => {
  it('pauses at least every 100,000 readings, and where it pauses changes nothing', () => {
    const n = 230_000;
    const valueC = times(n, (i) => round(15 + 5 * Math.sin(i / 229)));
    for (const at of [49_999, 50_000, 99_999, 150_000]) valueC[at] = 0;
    for (let i = 199_990; i < 200_010; i++) valueC[i] = 0;
    const { code, pauses } = finish(ask(valueC, { everyMs: MINUTE }));
    expect(pauses).toBeGreaterThanOrEqual(Math.ceil(n / 100_000));
    const bad = [...code.keys()].filter((i) => code[i] !== 0);
    expect(bad).toEqual([...code.keys()].filter((i) => valueC[i] === 0));
    expect(bad).toHaveLength(24);
  });

  it('sees a day of one value between minutes that change, wherever the day begins', () => {
    for (const before of [10, 45, 75]) {
      const course = [...quiet(before), ...times(24 * 60 + 1, () => 15.5), ...quiet(30)];
      expect(
        marks(course, { everyMs: MINUTE })
          .match(/\?+/g)
          ?.map((run) => run.length),
      ).toEqual([24 * 60 + 1]);
    }
  });

  it('sees a step of 40 minutes, wherever it lies', () => {
    for (const before of [5, 20, 40, 50]) {
      const course = times(160, (i) => round(14 + 0.14 * Math.min(40, Math.max(0, i - before)), 0.01));
      expect(marks(course, { everyMs: MINUTE }).replaceAll('.', '')).toBe('?');
    }
  });

  it('takes an empty record and one of a single reading', () => {
    expect(finish(ask([])).code).toHaveLength(0);
    expect(marks([14.2])).toBe('.');
  });

  it('keeps its verdicts within a byte, whatever comes', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -150, max: 150 }), { maxLength: 2000 }),
        fc.constantFrom(MINUTE, HOUR, 2 * HOUR, 24 * HOUR),
        fc.constantFrom(null, 1, 5, 12),
        (valueC, everyMs, depthCm) => {
          const { code, verdicts } = finish(ask(valueC, { everyMs, depthCm }));
          expect(verdicts.length).toBeLessThan(256);
          expect(code.every((c) => c < verdicts.length)).toBe(true);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('doubts what every test in turn would doubt, though it looks for what may be there alone', () => {
    const course = fc.record({
      everyMinutes: fc.constantFrom(1, 7, 10, 30, 60, 90, 180, 1440),
      jitter: fc.boolean(),
      depthCm: fc.constantFrom(null, 1, 5, 15),
      medium: fc.constantFrom('soil' as const, 'air' as const),
      rawZeroC: fc.constantFrom(0, -17.78),
      toC: fc.constantFrom(0.01, 0.1, 0.5, 1),
      meanC: fc.constantFrom(0.5, 3, 14, 55),
      swingK: fc.constantFrom(0, 0.2, 3, 9),
      count: fc.integer({ min: 1, max: 700 }),
      /** A stretch that changes by so much, or stands still at 0 [K]. */
      events: fc.array(
        fc.record({
          at: fc.nat(),
          length: fc.integer({ min: 1, max: 500 }),
          byK: fc.constantFrom(0, 2, 2.9, 3.1, 6, 40),
        }),
        { maxLength: 3 },
      ),
      oddValues: fc.array(fc.tuple(fc.nat(), fc.constantFrom(0, -17.78, 85, Number.NaN, -40, 18)), { maxLength: 2 }),
    });
    fc.assert(
      fc.property(course, ({ count, everyMinutes, jitter, toC, meanC, swingK, events, oddValues, ...place }) => {
        const atMs = times(
          count,
          (i) => (i * everyMinutes + (jitter ? 0.4 * everyMinutes * Math.sin(i * i) : 0)) * MINUTE,
        );
        const valueC = atMs.map((ms) => round(meanC + swingK * Math.sin((2 * Math.PI * ms) / (24 * HOUR)), toC));
        for (const { at, length, byK } of events) {
          const from = at % count;
          for (let i = from; i < Math.min(count, from + length); i++)
            valueC[i] = byK === 0 ? valueC[from]! : valueC[i]! + byK;
        }
        for (const [at, odd] of oddValues) valueC[at % count] = odd;
        const input = ask(valueC, { ...place, atMs, everyMs: everyMinutes * MINUTE });
        const { code, verdicts } = finish(input);
        const all = judgePlainly(input);
        expect(Array.from(code, (c) => verdicts[c]!.why)).toEqual(Array.from(all.code, (c) => all.verdicts[c]!.why));
      }),
      { numRuns: 500 },
    );
  });
});
