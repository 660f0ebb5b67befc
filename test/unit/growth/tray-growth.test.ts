import { describe, expect, it } from 'vitest';
import { crops } from '../../../src/germination/crops.js';
import type { HeatHarvest } from '../../../src/germination/growth.js';
import { fromTray } from '../../../src/growth/tray-growth.js';
import { cropCalled } from '../germination/make.js';

const unitsOf = (crop: string, kinds = { early: 0.8, late: 1.2 }) => {
  const { growth, plantingOut } = cropCalled(crop);
  const left = fromTray(growth!, kinds, plantingOut!);
  const units = (left.growth.harvest as HeatHarvest).heatUnitsCDays;
  return { units, early: units * left.kinds.early, late: units * left.kinds.late };
};

describe('plants from trays', () => {
  it('have half of the heat of four weeks at 20 °C behind them: leaf lettuce 218.4 °C·d of 615', () => {
    const { units, early, late } = unitsOf('lettuce');
    expect(units).toBeCloseTo(615 - 218.4, 9);
    // Early and late kinds had as much in their trays.
    expect(early).toBeCloseTo(0.8 * 615 - 218.4, 9);
    expect(late).toBeCloseTo(1.2 * 615 - 218.4, 9);
  });

  it('need all of it where it counts from planting out: tomato 805 °C·d', () => {
    expect(unitsOf('tomato').units).toBe(805);
  });

  it('are never ripe when they go out', () => {
    for (const { id, plantingOut } of crops.values()) {
      if (plantingOut) expect(unitsOf(id, { early: 0.1, late: 1 }).early, id).toBeGreaterThan(30);
    }
  });
});
