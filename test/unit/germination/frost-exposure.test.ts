import { describe, expect, it } from 'vitest';
import { frostExposure } from '../../../src/germination/run/frost-exposure.js';
import { cropCalled } from './make.js';

const celsius = (tempF: number): number => ((tempF - 32) * 5) / 9;
const halfHardy = { frost: 'half-hardy', maturity: null } as const;

describe('what frost means to seedlings', () => {
  it('harms half-hardy ones from a moderate freeze on, and not in a light one: 28 °F and 29 °F of the US Weather Service', () => {
    const { limitC } = frostExposure(halfHardy)!;
    expect(limitC).toBeLessThan(celsius(29));
    expect(limitC).toBeGreaterThan(celsius(28));
  });

  it('harms tender ones where water freezes, and not a degree above it', () => {
    const { limitC } = frostExposure({ frost: 'tender', maturity: null })!;
    expect(limitC).toBe(celsius(32));
  });

  it('is looked out for over the first month, and over the whole growth of a tender crop sown where it stays', () => {
    expect(frostExposure(halfHardy)!.days).toBe(30);
    const bean = cropCalled('snap-bean');
    expect(frostExposure(bean)!.days).toBe(bean.maturity!.fromDays);
    expect(frostExposure({ frost: 'hardy', maturity: null })).toBeNull();
  });
});
