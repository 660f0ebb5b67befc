import { expect, test } from 'vitest';
import { greatCircleKm } from '../../../../src/climate/world/great-circle-km.js';

test('a quarter of the equator, and across the pole and the date line', () => {
  expect(greatCircleKm(0, 0, 0, 90)).toBeCloseTo((Math.PI / 2) * 6371, 6);
  expect(greatCircleKm(80, 0, 80, 180)).toBeCloseTo((20 / 180) * Math.PI * 6371, 6);
  expect(greatCircleKm(0, 179.5, 0, -179.5)).toBeCloseTo((1 / 180) * Math.PI * 6371, 6);
  expect(greatCircleKm(10, 20, -10, -160)).toBeCloseTo(Math.PI * 6371, 3);
});

test('nothing between a place and itself', () => {
  expect(greatCircleKm(44, -30, 44, -30)).toBe(0);
});
