import fc from 'fast-check';
import type { Crop } from '../../src/germination/crop.js';
import { crops } from '../../src/germination/crops.js';
import type { GerminationCurve } from '../../src/germination/curve/curve.js';

/** Any crop there is. */
export const anyCrop: fc.Arbitrary<Crop> = fc.constantFrom(...crops.values());

/** The 24 crops of the handbook's own table: bunching onion only borrows onion's rows. */
export const handbookCrops: readonly Crop[] = [...crops.values()].filter((crop) => crop.id !== 'bunching-onion');

/** Up to this temperature warmth only helps: the cooler of the rate's and the percent's peak [°C]. */
export const helpfulUpToC = ({ rate, share }: GerminationCurve): number => Math.min(rate.peakC, share.peakC);

/** What differs from lot to lot and grower to grower. */
export const anyLot = fc.record({
  sigmaLog10: fc.double({ min: 0.05, max: 0.2, noNaN: true }),
  timeFactor: fc.double({ min: 0.5, max: 3, noNaN: true }),
  hotLimitShiftC: fc.double({ min: -8, max: 8, noNaN: true }),
});

const weatherOf = (coldestC: number, warmestC: number) =>
  fc
    .array(
      fc.record({
        hours: fc.integer({ min: 6, max: 120 }),
        meanC: fc.double({ min: coldestC, max: warmestC, noNaN: true }),
        swingC: fc.double({ min: 0, max: 15, noNaN: true }),
      }),
      { minLength: 1, maxLength: 8 },
    )
    .map((spans) =>
      Float64Array.from(
        spans.flatMap(({ hours, meanC, swingC }) =>
          Array.from({ length: hours }, (_, h) => meanC + swingC * Math.sin((2 * Math.PI * (h - 7.5)) / 24)),
        ),
      ),
    );

/** Hourly temperatures at the seed: spans of steady or swinging weather, from frost to what kills [°C]. */
export const anyHourlyC: fc.Arbitrary<Float64Array> = weatherOf(-5, 45);

/** Weather that harms: hot afternoons and hot days for some crops, chill for others [°C]. */
export const harshHourlyC: fc.Arbitrary<Float64Array> = fc.oneof(weatherOf(18, 38), weatherOf(3, 16));

/** How much warmer each hour of a second series is [K]; many hours not at all. */
export const anyWarming: fc.Arbitrary<readonly number[]> = fc.array(
  fc.oneof(fc.constant(0), fc.double({ min: 0, max: 12, noNaN: true })),
  { minLength: 1, maxLength: 50 },
);
