import { describe, expect, it } from 'vitest';
import { containerOf } from '../../../src/seedbed/bed.js';

describe('a container', () => {
  it('that is a pot holds three litres', () => {
    const { depthCm, radiusCm } = containerOf('pot')!;
    const litres = (Math.PI * radiusCm! ** 2 * depthCm) / 1000;
    expect(Math.abs(litres - 3)).toBeLessThan(0.15);
    // Wider than deep by a little: pots of three litres are sold as 16 to 18 cm wide and 14 to 16 cm deep.
    expect(2 * radiusCm!).toBeGreaterThanOrEqual(16);
    expect(2 * radiusCm!).toBeLessThan(18);
  });

  it('that is a tray of cells is 1.75 to 2.25 inches deep, as lists of such trays have it', () => {
    expect(containerOf('tray')!.depthCm).toBeGreaterThan(1.75 * 2.54);
    expect(containerOf('tray')!.depthCm).toBeLessThan(2.25 * 2.54);
  });
});
