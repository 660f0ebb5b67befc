import { describe, expect, it } from 'vitest';
import { ScienceError } from '../../../src/basics/errors.js';
import { crops } from '../../../src/germination/crops.js';
import { agedShare, daysPerProbit } from '../../../src/germination/storage/viability.js';

const [onion] = crops.get('onion')!.viability;

describe('the viability equation', () => {
  it('answers only where it holds', () => {
    for (const [moisturePercent, storeC] of [
      [4.9, 20],
      [15.1, 20],
      [8, -14],
      [8, 51],
      [Number.NaN, 20],
    ] as const) {
      expect(() => daysPerProbit(onion!, moisturePercent, storeC)).toThrow(ScienceError);
    }
    expect(() => agedShare(1.2, 1)).toThrow(ScienceError);
  });

  it('takes a lot from 84 to 50 %, and from 50 to 16 %, in one probit', () => {
    expect(agedShare(0.8413447, 1)).toBeCloseTo(0.5, 6);
    expect(agedShare(0.5, 1)).toBeCloseTo(0.1586553, 6);
  });

  it('lets seed of every crop that has constants live longer where it is drier, and where it is cooler', () => {
    for (const { id: crop, viability } of crops.values()) {
      for (const set of viability) {
        for (const storeC of [-10, 0, 10, 20, 30]) {
          for (const moisturePercent of [5, 8, 11, 14]) {
            const days = daysPerProbit(set, moisturePercent, storeC);
            expect(daysPerProbit(set, moisturePercent + 1, storeC), crop).toBeLessThan(days);
            expect(daysPerProbit(set, moisturePercent, storeC + 1), crop).toBeLessThan(days);
          }
        }
      }
    }
  });

  it('has no constants for crops of which none can be relied on', () => {
    for (const id of ['carrot', 'spinach', 'celery', 'parsnip', 'radish', 'eggplant', 'bunching-onion']) {
      expect(crops.get(id)!.viability, id).toEqual([]);
    }
  });
});
