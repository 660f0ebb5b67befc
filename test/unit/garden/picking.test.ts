import { describe, expect, it } from 'vitest';
import { harvestPeriodOf, weeksOfHarvest } from '../../../src/garden/sowing/harvest-period.js';
import { crops } from '../../../src/germination/crops.js';
import { cropCalled } from '../germination/make.js';

describe('pickingOf', () => {
  it('lies around the middle of the published days, less the chart’s days at 20 °C', () => {
    // Head lettuce: 70 to 85 days from sowing (UC Napa), 3 days at 20 °C: 67 to 82, the middle 74.5, picked for two weeks.
    expect(harvestPeriodOf(cropCalled('head-lettuce'))).toEqual({ fromDays: 68, toDays: 82, countedFrom: 'sowing' });
    expect(harvestPeriodOf(cropCalled('onion'))).toBeNull();
  });

  it('never begins before the first of the published days', () => {
    expect(harvestPeriodOf(cropCalled('tomato'))).toEqual({ fromDays: 55, toDays: 97, countedFrom: 'planting-out' });
  });

  it('gives the intervals that are published: beans and beets every two weeks, green onions every three or four', () => {
    for (const crop of ['snap-bean', 'beet']) expect(weeksOfHarvest(harvestPeriodOf(cropCalled(crop))!)).toBe(2);
    expect(weeksOfHarvest(harvestPeriodOf(cropCalled('bunching-onion'))!)).toBe(3);
  });

  it('is told of every crop whose days to maturity are known', () => {
    for (const crop of crops.values()) expect(harvestPeriodOf(crop) !== null, crop.id).toBe(crop.maturity !== null);
  });
});
