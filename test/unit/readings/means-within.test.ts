import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meansWithin } from '../../../src/readings/daily/means-within.js';

const HOUR = 3_600_000;
const readings = (rows: readonly (readonly [number, number])[]) => ({
  atMs: Float64Array.from(rows, ([hour]) => hour * HOUR),
  valueC: Float64Array.from(rows, ([, value]) => value),
  basis: new Uint8Array(rows.length),
});
const hours = (...edges: number[]) =>
  [
    Float64Array.from(edges.slice(0, -1), (hour) => hour * HOUR),
    Float64Array.from(edges.slice(1), (hour) => hour * HOUR),
  ] as const;

describe('meansWithin', () => {
  it('follows the trapezoid rule between readings', () => {
    const { meanC, coveredMs } = meansWithin(
      readings([
        [0, 10],
        [1, 20],
        [3, 16],
      ]),
      ...hours(0, 1, 2, 3),
      3 * HOUR,
    );
    expect([...meanC]).toEqual([15, 19, 17]);
    expect([...coveredMs]).toEqual([HOUR, HOUR, HOUR]);
  });

  it('covers nothing across a gap, and the covered part of an hour only', () => {
    const { meanC, coveredMs } = meansWithin(
      readings([
        [0, 10],
        [0.5, 12],
        [5, 30],
        [6, 32],
      ]),
      ...hours(0, 1, 2, 6),
      3 * HOUR,
    );
    expect(meanC[0]).toBe(11);
    expect(coveredMs[0]).toBe(HOUR / 2);
    expect(meanC[1]).toBeNaN();
    expect(meanC[2]).toBe(31);
  });

  it('gives the same mean for a day as for its hours together', () => {
    const row = fc.tuple(
      fc.integer({ min: 0, max: 24 * 60 }).map((minute) => minute / 60),
      fc.double({ min: -10, max: 40, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 40 }), (rows) => {
        const inOrder = [...new Map(rows.map((one) => [one[0], one])).values()].sort((a, b) => a[0] - b[0]);
        const given = readings(inOrder);
        const byHour = meansWithin(given, ...hours(...Array.from({ length: 25 }, (_, hour) => hour)), 24 * HOUR);
        const byDay = meansWithin(given, ...hours(0, 24), 24 * HOUR);
        const sum = byHour.meanC.reduce(
          (total, mean, i) => total + (byHour.coveredMs[i]! > 0 ? mean * byHour.coveredMs[i]! : 0),
          0,
        );
        if (byDay.coveredMs[0]! > HOUR) expect(sum / byDay.coveredMs[0]!).toBeCloseTo(byDay.meanC[0]!, 6);
      }),
    );
  });

  it('comes to the same as each line cut at each interval by itself', () => {
    const row = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.double({ min: -10, max: 40, noNaN: true }));
    const interval = fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 1, max: 12 }));
    fc.assert(
      fc.property(
        fc.array(row, { maxLength: 40 }),
        fc.array(interval, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 9 }),
        (steps, parts, longest) => {
          let hour = 3;
          const rows = steps.map(([step, value]): [number, number] => {
            hour += (step + 1) / 8;
            return [hour, value];
          });
          let edge = 0;
          const intervals = parts.map(([gap, length]): [number, number] => {
            const from = edge + gap;
            edge = from + length;
            return [from, edge];
          });
          const { meanC, coveredMs } = meansWithin(
            readings(rows),
            Float64Array.from(intervals, ([from]) => from * HOUR),
            Float64Array.from(intervals, ([, to]) => to * HOUR),
            longest * HOUR,
          );
          intervals.forEach(([start, end], i) => {
            let [sum, covered] = [0, 0];
            for (let k = 1; k < rows.length; k++) {
              const [[left, leftC], [right, rightC]] = [rows[k - 1]!, rows[k]!];
              const [from, to] = [Math.max(left, start), Math.min(right, end)];
              if (right - left > longest || to <= from) continue;
              const at = (time: number): number => leftC + ((rightC - leftC) * (time - left)) / (right - left);
              sum += ((at(from) + at(to)) / 2) * (to - from);
              covered += to - from;
            }
            expect(coveredMs[i]).toBeCloseTo(covered * HOUR, 3);
            if (covered === 0) expect(meanC[i]).toBeNaN();
            else expect(meanC[i]).toBeCloseTo(sum / covered, 9);
          });
        },
      ),
      { numRuns: 300 },
    );
  });
});
