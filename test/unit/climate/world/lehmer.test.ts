import { describe, expect, test } from 'vitest';
import { lehmer, seedOfPlace } from '../../../../src/climate/world/lehmer.js';

describe('lehmer', () => {
  // ISO/IEC 14882 [rand.predef]: "The 10000th consecutive invocation of a default-constructed object of type minstd_rand produces 399268537".
  test('gives the 10,000th number that the C++ standard demands of minstd_rand', () => {
    const random = lehmer(1);
    for (let i = 1; i < 10_000; i++) random();
    expect(Math.round(random() * (2 ** 31 - 1))).toBe(399_268_537);
  });
});

describe('the seed of a place', () => {
  test('is the same within a hundredth of a degree, another beside it, and one that the generator takes', () => {
    expect(seedOfPlace(44.001, -30.004)).toBe(seedOfPlace(44, -30));
    expect(seedOfPlace(44.01, -30)).not.toBe(seedOfPlace(44, -30));
    expect(seedOfPlace(44, -30.01)).not.toBe(seedOfPlace(44, -30));
    for (const [latitude, longitude] of [
      [-90, -180],
      [90, 180],
      [0, 0],
    ] as const) {
      const seed = seedOfPlace(latitude, longitude);
      expect(Number.isInteger(seed) && seed >= 1 && seed <= 2 ** 31 - 2).toBe(true);
    }
  });
});
