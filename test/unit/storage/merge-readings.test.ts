import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Readings } from '../../../src/readings/readings.js';
import { mergeReadings } from '../../../src/storage/merge-readings.js';

type Rows = ReadonlyMap<number, string>;

/** Readings at few instants, with few values, so that many meet. */
const rows = fc
  .array(fc.tuple(fc.nat(30), fc.nat(2), fc.nat(1)), { maxLength: 30 })
  .map((list): Rows => new Map(list.map(([at, value, basis]) => [at, `${value} ${basis}`])));

function readingsOf(of: Rows): Readings {
  const sorted = [...of].sort(([a], [b]) => a - b);
  return {
    atMs: Float64Array.from(sorted, ([at]) => at),
    valueC: Float64Array.from(sorted, ([, text]) => Number(text.split(' ')[0])),
    basis: Uint8Array.from(sorted, ([, text]) => Number(text.split(' ')[1])),
  };
}

test('new readings replace stored ones at the same instant, as entries of a map do, and are counted', () => {
  fc.assert(
    fc.property(rows, rows, (before, coming) => {
      const { merged, changes } = mergeReadings(readingsOf(before), readingsOf(coming));
      expect(merged).toEqual(readingsOf(new Map([...before, ...coming])));
      const there = [...coming].filter(([at]) => before.has(at));
      const unchanged = there.filter(([at, text]) => before.get(at) === text).length;
      const added = coming.size - there.length;
      expect(changes).toEqual({ added, unchanged, replaced: there.length - unchanged });
    }),
  );
});

test('the same twice changes nothing', () => {
  fc.assert(
    fc.property(rows, (of) => {
      const { merged, changes } = mergeReadings(readingsOf(of), readingsOf(of));
      expect(merged).toEqual(readingsOf(of));
      expect(changes).toEqual({ added: 0, unchanged: of.size, replaced: 0 });
    }),
  );
});
