import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inTimeOrder } from '../../../src/readings/time/time-order.js';

function ordered(rows: readonly (readonly [atMs: number, value: number])[]) {
  const [atMs, values] = [Float64Array.from(rows, ([ms]) => ms), Float64Array.from(rows, ([, value]) => value)];
  const steps = inTimeOrder(atMs, values, rows.length);
  let step = steps.next();
  while (!step.done) step = steps.next();
  const { count, rowOf, ...found } = step.value;
  const readings = Array.from({ length: count }, (_, i) => ({ atMs: atMs[i]!, value: values[i]!, row: rowOf(i) }));
  return { readings, ...found };
}

describe('inTimeOrder', () => {
  it('sorts any rows as the language does, knows the row of each, and leaves out those without an instant', () => {
    const row = fc.tuple(fc.oneof(fc.integer({ min: 0, max: 60 }), fc.constant(NaN)), fc.integer({ min: 0, max: 3 }));
    fc.assert(
      fc.property(fc.array(row, { maxLength: 80 }), (rows) => {
        const { readings, repeated, conflicts } = ordered(rows);
        let differing = 0;
        const known = rows.filter(([ms]) => !Number.isNaN(ms));
        const instants = [...new Set(known.map(([ms]) => ms))].sort((a, b) => a - b);
        expect(readings.map(({ atMs }) => atMs)).toEqual(instants);
        expect(repeated).toBe(known.length - instants.length);
        for (const { atMs, value, row: from } of readings) {
          const values = [...new Set(known.filter(([ms]) => ms === atMs).map(([, one]) => one))];
          expect(rows[from]![0]).toBe(atMs);
          expect(value).toBeCloseTo(values.reduce((sum, one) => sum + one, 0) / values.length, 12);
          if (values.length > 1) differing++;
        }
        expect(conflicts).toBe(differing);
      }),
      { numRuns: 300 },
    );
  });

  it('turns a file with its newest row first round', () => {
    expect(
      ordered([
        [3, 30],
        [2, 20],
        [1, 10],
      ]).readings,
    ).toEqual([
      { atMs: 1, value: 10, row: 2 },
      { atMs: 2, value: 20, row: 1 },
      { atMs: 3, value: 30, row: 0 },
    ]);
  });
});
