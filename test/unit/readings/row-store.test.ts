import { describe, expect, it } from 'vitest';
import { rowStore } from '../../../src/readings/text/row-store.js';

/** A store of so many rows, whose stamps count them and whose values are tenths of it; every seventh line has none. */
function filled(rows: number, expectedRows: number) {
  const store = rowStore(expectedRows);
  const [stamps, values] = [new Float64Array(6), new Float64Array(6)];
  for (let row = 0; row < rows; row += 6) {
    const count = Math.min(6, rows - row);
    for (let i = 0; i < count; i++) {
      stamps[i] = row + i;
      values[i] = (row + i) / 10;
    }
    store.pushRows(stamps, values, count, 2 + (row / 6) * 7);
  }
  store.close();
  return store;
}

describe('rowStore', () => {
  it.each([
    [3, 0],
    [5000, 0],
    [5000, 6000],
    [70_000, 0],
    [70_000, 65_000],
    [1_050_000, 0],
  ])('keeps %i rows and their lines, where %i were expected', (rows, expected) => {
    const store = filled(rows, expected);
    expect(store.count).toBe(rows);
    expect(store.stamps()).toHaveLength(rows);
    expect(store.stamps().every((stamp, row) => stamp === row)).toBe(true);
    expect(store.values().every((value, row) => value === row / 10)).toBe(true);
    for (const row of [0, 1, rows >> 1, rows - 1]) expect(store.lineOf(row)).toBe(2 + row + Math.floor(row / 6));
  });

  it('keeps seven digits of the values of very long files', () => {
    const rows = 4_000_100;
    const store = filled(rows, 0);
    expect(store.stamps()).toHaveLength(rows);
    expect(store.stamps()[rows - 1]).toBe(rows - 1);
    expect(store.values()[12_345]).toBe(Math.fround(1234.5));
    expect(store.values()[rows - 1]).toBe(Math.fround((rows - 1) / 10));
  });
});
