import { describe, expect, it } from 'vitest';
import { crops } from '../../../src/germination/crops.js';
import { cropsLike } from '../../../src/germination/crops-like.js';

const ids = [...crops.keys()];

describe('a name that is no id of a crop', () => {
  it.each([
    ['tomatoes', ['tomato']],
    ['beans', ['lima-bean', 'snap-bean']],
    ['French beans', ['lima-bean', 'snap-bean']],
    ['Lettuce', ['lettuce', 'head-lettuce']],
    ['lettuse', ['lettuce', 'head-lettuce']],
    ['peas', ['pea']],
    ['sweetcorn', ['sweet-corn']],
    ['spring onions', ['onion', 'bunching-onion']],
  ])('leads from %s to the crops that may be meant', (name, meant) => {
    expect(cropsLike(name, ids)).toEqual(meant);
  });

  it.each(['', 'x', 'dandelion', 'carnation'])('leads from "%s" to none', (name) => {
    expect(cropsLike(name, ids)).toEqual([]);
  });
});
