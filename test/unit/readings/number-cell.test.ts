import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNumber } from '../../../src/readings/text/number-cell.js';

describe('readNumber', () => {
  it('reads every decimal number as the language itself does, with point or comma', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9_999_999, max: 9_999_999 }), fc.nat(6), (digits, places) => {
        const text = (digits / 10 ** places).toFixed(places);
        expect(readNumber(text)).toBe(Number(text) || 0);
        expect(readNumber(text.replace('.', ','))).toBe(Number(text) || 0);
      }),
    );
  });

  it('passes over a unit, blanks and the several kinds of minus sign', () => {
    const cells: [string, number][] = [
      ['12,8 °C', 12.8],
      ['12.8°C', 12.8],
      ['55.04°F', 55.04],
      ['-3 C', -3],
      ['\u22123.5', -3.5],
      ['\u20133.5', -3.5],
      [' +7 ', 7],
      ['7.', 7],
      ['.5', 0.5],
      ['2.15E+01', 21.5],
      ['21.5℃', 21.5],
      ['12,8\u00a0°C', 12.8],
      ['23.600000000000001', 23.6],
    ];
    for (const [cell, value] of cells) expect([cell, readNumber(cell)]).toEqual([cell, value]);
  });

  it('finds no number in what is none', () => {
    for (const cell of [
      '',
      ' ',
      '-',
      'NaN',
      '1.2.3',
      '12:30',
      '2027-05-01',
      '1 2',
      '5 lambs',
      'e5',
      '1,234.5',
      '--5',
    ]) {
      expect([cell, readNumber(cell)]).toEqual([cell, NaN]);
    }
  });
});
