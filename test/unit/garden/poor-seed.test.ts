import { describe, expect, it } from 'vitest';
import { seedsNeeded } from '../../../src/garden/lots/seeds-needed.js';
import { cropCalled } from '../germination/make.js';
import { lotOf } from './lots.js';
import { on } from './seasons.js';

/** Is seed of which so many of a hundred germinate called poor? */
const isPoor = (germinationPercent: number): boolean =>
  seedsNeeded(
    { crop: cropCalled('onion'), plants: 10, sureness: 0.9, lot: lotOf({ germinationPercent }), field: null },
    on('2027-04-01'),
  ).warnings.some(({ code }) => code === 'poor-seed');

describe('poor seed', () => {
  it('is what would have to be sown more than three times as thickly: less than 3 in 10 germinate', () => {
    expect(isPoor(29)).toBe(true);
    expect(isPoor(30)).toBe(false);
  });
});
