import { describe, expect, it } from 'vitest';
import {
  celsiusDeltaFromFahrenheit,
  celsiusFrom,
  celsiusFromFahrenheit,
  celsiusFromKelvin,
} from '../../../src/basics/units.js';

const tenths = Array.from({ length: 1801 }, (_, i) => (i - 600) / 10);

describe('temperature units', () => {
  it('agree on the fixed points', () => {
    expect([-40, 32, 212].map(celsiusFromFahrenheit)).toEqual([-40, 0, 100]);
    expect([0, 273.15, 373.15].map(celsiusFromKelvin)).toEqual([-273.15, 0, 100]);
  });

  it('give the same number, to the bit, for every tenth of a degree from -60 to 120 °C', () => {
    for (const tempC of tenths) {
      const asPrinted = Number(tempC.toFixed(1));
      expect(celsiusFrom.C(asPrinted)).toBe(asPrinted);
      expect(celsiusFrom.F(Number((tempC * 1.8 + 32).toFixed(2)))).toBe(asPrinted);
      expect(celsiusFrom.K(Number((tempC + 273.15).toFixed(2)))).toBe(asPrinted);
    }
  });

  it('keep what a fine logger writes: hundred-thousandths of a degree pass through', () => {
    expect(celsiusFrom.C(21.30469)).toBe(21.30469);
    expect(celsiusFrom.F(70.348_442)).toBeCloseTo(21.30469, 9);
  });

  it('turn a difference of 9 °F into 5 K, with no offset', () => {
    expect(celsiusDeltaFromFahrenheit(9)).toBe(5);
    expect(celsiusDeltaFromFahrenheit(0)).toBe(0);
    expect(celsiusDeltaFromFahrenheit(-18)).toBe(-10);
  });
});
