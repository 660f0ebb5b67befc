import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { grownOn, growthOf, harvestOf } from '../../../src/garden/sowing/harvest.js';
import { cropCalled } from '../germination/make.js';

const plain = (date: string): PlainDate => date as PlainDate;
const upOn = (half: string) => ({ half: plain(half), plantedOut: null });

describe('harvestOf', () => {
  it('counts days from sowing from half emergence, less those the chart gives at 20 °C', () => {
    // Carrot: 60 to 85 days from sowing (UC Napa), 7 days to half at 20 °C (Harrington & Minges 1954): 53 to 78.
    expect(harvestOf(cropCalled('carrot'), upOn('2027-05-20'), 44)).toEqual({
      from: '2027-07-12',
      to: '2027-08-06',
      slowed: false,
    });
  });

  it('is none before planting out: what is ripe in its tray is not yet in the garden', () => {
    const lettuce = cropCalled('lettuce');
    const sownInPlace = harvestOf(lettuce, upOn('2027-04-08'), null)!;
    const plantedOut = addDays(sownInPlace.from, 6);
    expect(harvestOf(lettuce, { half: plain('2027-04-08'), plantedOut }, null)).toMatchObject({
      from: plantedOut,
      to: sownInPlace.to,
    });
  });

  it('counts days from planting out from there, and tells nothing without one', () => {
    const tomato = cropCalled('tomato');
    const planted = { half: plain('2027-04-08'), plantedOut: plain('2027-05-20') };
    expect(harvestOf(tomato, planted, 44)).toEqual({ from: '2027-07-14', to: '2027-08-13', slowed: false });
    expect(harvestOf(tomato, upOn('2027-04-08'), 44)).toBeNull();
  });

  it('is not known of crops whose days to maturity are not', () => {
    expect(harvestOf(cropCalled('onion'), upOn('2027-04-08'), 44)).toBeNull();
    expect(growthOf(cropCalled('asparagus'))).toBeNull();
  });

  it('comes later in autumn, by about the two weeks that are usually allowed', () => {
    // McDaniel (Virginia Tech, 2011): "80 days where a packet says 65", for autumn crops; Virginia lies at 37 to 38°.
    const days = daysBetween(plain('2027-08-20'), grownOn(plain('2027-08-20'), 65, 37));
    expect(days).toBeGreaterThanOrEqual(77);
    expect(days).toBeLessThanOrEqual(83);
    const carrot = cropCalled('carrot');
    expect(harvestOf(carrot, upOn('2027-08-15'), 44)!.slowed).toBe(true);
    expect(harvestOf(carrot, upOn('2027-08-15'), null)).toEqual({
      from: '2027-10-07',
      to: '2027-11-01',
      slowed: false,
    });
  });

  it('is slowed in the southern autumn as in the northern, half a year apart', () => {
    // Both come up 32 days before the equinox of their autumn, 23 September and 21 March.
    const north = daysBetween(plain('2027-08-22'), grownOn(plain('2027-08-22'), 65, 44));
    const south = daysBetween(plain('2027-02-17'), grownOn(plain('2027-02-17'), 65, -44));
    expect(Math.abs(north - south)).toBeLessThanOrEqual(3);
    expect(north).toBeGreaterThan(75);
  });

  it('never comes earlier for what is up later, nor sooner than the published days', () => {
    const half = fc.integer({ min: 0, max: 400 });
    const latitude = fc.double({ min: -66, max: 66, noNaN: true });
    fc.assert(
      fc.property(
        half,
        fc.integer({ min: 1, max: 60 }),
        latitude,
        fc.integer({ min: 0, max: 120 }),
        (at, later, lat, n) => {
          const start = addDays(plain('2026-12-01'), at);
          const [first, second] = [start, addDays(start, later)].map((date) => grownOn(date, n, lat));
          expect(daysBetween(start, first!)).toBeGreaterThanOrEqual(n);
          expect(daysBetween(start, first!)).toBeLessThanOrEqual(2 * n);
          // The 366 days of a day count put the law off by a day at a year's end.
          expect(daysBetween(first!, second!)).toBeGreaterThanOrEqual(-1);
        },
      ),
    );
  });
});
