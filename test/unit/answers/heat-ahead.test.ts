import { describe, expect, it } from 'vitest';
import { heatAhead } from '../../../src/answers/windows/heat-ahead.js';

/** Two days at 15 °C, with so many hours at a heat on the second. */
const year = (hotHours: number, tempC = 31): Float64Array =>
  Float64Array.from({ length: 48 }, (_, hour) => (hour >= 24 && hour < 24 + hotHours ? tempC : 15));
const told = (...members: Float64Array[]): boolean => heatAhead(members, 30, 48, members.length).length > 0;

describe('heat in past years', () => {
  it('is a quarter of a day above what the seed bears', () => {
    expect(told(year(6))).toBe(true);
    expect(told(year(5))).toBe(false);
  });

  it('is none at the very limit, which still bears it', () => {
    expect(told(year(24, 30))).toBe(false);
  });

  it('is told from one year in ten on', () => {
    const calm = (n: number) => Array.from({ length: n }, () => year(0));
    expect(told(year(8), ...calm(9))).toBe(true);
    expect(told(year(8), ...calm(10))).toBe(false);
  });
});
