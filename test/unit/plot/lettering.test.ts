import { describe, expect, it } from 'vitest';
import { cut, inRows, TYPE, widthOf, wrapped } from '../../../src/plot/lettering.js';

describe('lettering', () => {
  it('wraps words into lines that fit, and cuts a word that cannot', () => {
    const lines = wrapped(`a row of carrots sown late ${'x'.repeat(80)}`, 120);
    expect(lines.every((line) => widthOf(line) <= 120)).toBe(true);
    expect(lines.at(-1)!.endsWith('…')).toBe(true);
    expect(cut('short', 120)).toBe('short');
  });

  it('lays no label over another, and none over the edge', () => {
    const labels = inRows(
      [0, 10, 20, 300, 395].map((x) => ({ x, text: 'today 3 Aug' })),
      { from: 0, to: 400 },
    );
    const boxes = labels.map(({ middle, row, text }) => {
      const half = widthOf(text, TYPE.small) / 2;
      return { left: middle - half, right: middle + half, row };
    });
    expect(new Set(boxes.map(({ row }) => row)).size).toBe(3);
    boxes.forEach((one, i) => {
      expect(one.left >= 0 && one.right <= 400).toBe(true);
      for (const other of boxes.slice(i + 1)) {
        expect(one.row !== other.row || one.right <= other.left || other.right <= one.left).toBe(true);
      }
    });
  });
});
