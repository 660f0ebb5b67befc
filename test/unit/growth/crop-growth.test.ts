import { describe, expect, it } from 'vitest';
import { crops } from '../../../src/germination/crops.js';
import type { HeatHarvest } from '../../../src/germination/growth.js';
import { cropCalled } from '../germination/make.js';

const heatOf = (id: string): HeatHarvest => cropCalled(id).growth!.harvest as HeatHarvest;
const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

describe('the growth of a crop', () => {
  // Lists of varieties count days in the field: from emergence, six tenths of the way from early to late kinds, at the mean
  // temperature of the season in which they are grown.
  it.each([
    ['beet', 18],
    ['lettuce', 18],
    ['head-lettuce', 18],
    ['turnip', 18],
    ['celery', 18],
    ['cabbage', 19],
    ['carrot', 20],
    ['lima-bean', 20],
    ['bunching-onion', 20],
    ['pea', 16],
    ['muskmelon', 21],
    ['watermelon', 21],
    ['tomato', 21],
    ['pepper', 21],
    ['eggplant', 21],
  ])('needs the heat of its listed days: %s at %d °C', (id, seasonC) => {
    const { maturity, rows } = cropCalled(id);
    const { fromDays, toDays, countedFrom } = maturity!;
    const upDays = countedFrom === 'sowing' ? Math.min(...rows.map(({ days }) => days ?? Infinity)) : 0;
    const days = fromDays + 0.6 * (toDays - fromDays) - upDays;
    const { heatUnitsCDays, baseTempC } = heatOf(id);
    const ratio = heatUnitsCDays / (days * (seasonC - baseTempC));
    expect(ratio).toBeGreaterThan(0.95);
    expect(ratio).toBeLessThan(1.05);
  });

  // Peet, North Carolina State University: 40 °F for crops of cool seasons, 50 °F for beans and maize.
  it.each([
    ['turnip', 40],
    ['cabbage', 40],
    ['pea', 40],
    ['snap-bean', 50],
    ['sweet-corn', 50],
  ])('of %s begins above %d °F', (id, baseF) => {
    expect(heatOf(id).baseTempC).toBeCloseTo(celsius(baseF), 1);
  });

  // Knott's Handbook, 4th ed. 1997: the highest monthly mean for quality, 75 °F for crops of cool seasons, 80 °F for beans.
  it.each([
    ['cabbage', 75],
    ['cauliflower', 75],
    ['lettuce', 75],
    ['pea', 75],
    ['radish', 75],
    ['turnip', 75],
    ['snap-bean', 80],
    ['lima-bean', 80],
  ])('of %s is spoilt by harvests above %d °F', (id, hotF) => {
    expect(Math.abs(heatOf(id).hotHarvestC! - celsius(hotF))).toBeLessThan(0.5);
  });

  // Knott's Handbook, 60 °F for beans and maize; Texas A&M AgriLife Extension, 65 °F for cucumber, melons and okra.
  it.each([
    ['snap-bean', 60],
    ['lima-bean', 60],
    ['sweet-corn', 60],
    ['cucumber', 65],
    ['muskmelon', 65],
    ['watermelon', 65],
    ['okra', 65],
  ])('of %s begins in soil of %d °F', (id, soilF) => {
    expect(cropCalled(id).growth!.leastSoilC).toBeCloseTo(celsius(soilF), 1);
  });

  it('bears no frost where the crop is tender, and some where it is not', () => {
    for (const { id, frost, growth } of crops.values()) {
      if (frost === 'tender') expect(growth!.seedlingFrostC, id).toBe(0);
      else if (growth) expect(growth.seedlingFrostC, id).toBeLessThan(0);
    }
  });
});
