import { describe, expect, it } from 'vitest';
import { pickingOf, weeksOfPicking } from '../../../src/garden/sowing/picking.js';
import { crops } from '../../../src/germination/crops.js';
import { cropCalled } from '../germination/make.js';

describe('pickingOf', () => {
  it('lies around the middle of the published days, less the chart’s days at 20 °C', () => {
    // Head lettuce: 70 to 85 days from sowing (UC Napa), 3 days at 20 °C: 67 to 82, the middle 74.5, picked for two weeks.
    expect(pickingOf(cropCalled('head-lettuce'))).toEqual({ fromDays: 68, toDays: 82, countedFrom: 'sowing' });
    expect(pickingOf(cropCalled('onion'))).toBeNull();
  });

  it('never begins before the first of the published days', () => {
    expect(pickingOf(cropCalled('tomato'))).toEqual({ fromDays: 55, toDays: 97, countedFrom: 'planting-out' });
  });

  it('gives the intervals that are published: beans and beets every two weeks, green onions every three or four', () => {
    for (const crop of ['snap-bean', 'beet']) expect(weeksOfPicking(pickingOf(cropCalled(crop))!)).toBe(2);
    expect(weeksOfPicking(pickingOf(cropCalled('bunching-onion'))!)).toBe(3);
  });

  it('is told of every crop whose days to maturity are known', () => {
    for (const crop of crops.values()) expect(pickingOf(crop) !== null, crop.id).toBe(crop.maturity !== null);
  });
});
