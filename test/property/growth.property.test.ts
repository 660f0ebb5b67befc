import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crops } from '../../src/germination/crops.js';
import type { HeatHarvest } from '../../src/germination/growth.js';
import { growthInYear } from '../../src/growth/growth-in-year.js';
import { longDays } from '../../src/growth/long-days.js';
import { seasonDayOf } from '../../src/growth/season-day.js';
import { growthPlainly } from '../unit/growth/growth-plainly.js';

const N_DAYS = 700;
const KINDS = { early: 0.8, late: 1.2 };
const UP_TO = 365;

/** Air of a year and more: a wave of the seasons with weather in it, from a day of the year on. */
const airOf = (meanC: number, swingC: number, weather: number, firstDayOfYear = 1, latitudeDeg = 45) => {
  const day = (i: number): number =>
    meanC -
    swingC * Math.cos((2 * Math.PI * (i + firstDayOfYear - 1 - (latitudeDeg < 0 ? 200 : 18))) / 365) +
    weather * Math.sin(i / 4.3) +
    weather * Math.sin(i / 17.9);
  const meanAt = Float64Array.from({ length: N_DAYS }, (_, i) => day(i));
  return { meanC: meanAt, minC: meanAt.map((tempC) => tempC - 6), firstDayOfYear, latitudeDeg };
};
const anyAir = fc
  .record({
    meanC: fc.double({ min: 5, max: 20, noNaN: true }),
    swingC: fc.double({ min: 3, max: 15, noNaN: true }),
    weather: fc.double({ min: 0, max: 4, noNaN: true }),
  })
  .map(({ meanC, swingC, weather }) => airOf(meanC, swingC, weather));
const heatCrops = [...crops.values()].filter(({ growth }) => growth?.harvest?.by === 'heat');
const anyCrop = fc.constantFrom(...heatCrops);
const withFrost = fc.constantFrom(
  ...heatCrops.filter(({ growth }) => (growth!.harvest as HeatHarvest).endFrostC !== null),
);

type Air = ReturnType<typeof airOf>;
const fates = (crop: (typeof heatCrops)[number], air: Air, growth = crop.growth!) => {
  const long = growth.boltingDayLengthH === null ? null : longDays(air.latitudeDeg, growth.boltingDayLengthH);
  const fate = growthInYear(growth, air, KINDS, long);
  return Array.from({ length: UP_TO }, (_, up) => ({ ...fate(up, up) }));
};
/** Days that are not known, and frosts out of season. */
const anyTrouble = fc.array(fc.record({ at: fc.nat(N_DAYS - 1), isFrost: fc.boolean() }), { maxLength: 3 });
const anyKnownCrop = fc.constantFrom(...[...crops.values()].filter(({ growth }) => growth !== null));

const isGood = ({ why }: { readonly why: unknown }): boolean => why === null;

describe('what becomes of a crop', () => {
  it('is what each question by itself says, for every day, whatever was asked before', () => {
    const setting = fc.record({
      firstDayOfYear: fc.integer({ min: 1, max: 365 }),
      latitudeDeg: fc.constantFrom(45, 60, 5, -44),
      days: fc.integer({ min: 1, max: N_DAYS }),
      early: fc.double({ min: 0.5, max: 1, noNaN: true }),
      late: fc.double({ min: 1, max: 1.6, noNaN: true }),
    });
    fc.assert(
      fc.property(
        anyKnownCrop,
        anyAir,
        setting,
        anyTrouble,
        fc.integer({ min: 0, max: 40 }),
        (crop, air, where, trouble, upAfter) => {
          const { firstDayOfYear, latitudeDeg, days, early, late } = where;
          const own = { minC: air.minC.slice(0, days), meanC: air.meanC.slice(0, days), firstDayOfYear, latitudeDeg };
          for (const { at, isFrost } of trouble) {
            if (isFrost) own.minC[at % days] = -15;
            else own.minC[at % days] = own.meanC[at % days] = NaN;
          }
          const growth = crop.growth!;
          const long = growth.boltingDayLengthH === null ? null : longDays(latitudeDeg, growth.boltingDayLengthH);
          const [fast, plain] = [growthInYear, growthPlainly].map((of) => of(growth, own, { early, late }, long));
          for (let sown = -2; sown < days + 2; sown += 1.25) {
            expect({ ...fast!(sown, sown + upAfter) }, `${crop.id} ${sown}`).toEqual(plain!(sown, sown + upAfter));
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('never opens earlier for a later last frost of spring', () => {
    fc.assert(
      fc.property(anyCrop, anyAir, fc.integer({ min: 1, max: 60 }), (crop, air, later) => {
        // The last day of spring with a frost that harms, and the same frost on the days after it.
        const limitC = crop.growth!.seedlingFrostC;
        const last = air.minC.slice(0, 200).findLastIndex((tempC) => tempC <= limitC);
        const minC = air.minC.slice();
        minC.fill(limitC, Math.max(0, last), Math.max(0, last) + later);
        const [as, colder] = [fates(crop, air), fates(crop, { ...air, minC })];
        const firstOf = (all: ReturnType<typeof fates>) => all.slice(0, 200).findIndex(isGood);
        if (firstOf(colder) >= 0) expect(firstOf(colder)).toBeGreaterThanOrEqual(firstOf(as));
        colder.forEach((one, up) => {
          if (isGood(one)) expect(isGood(as[up]!)).toBe(true);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('never ends earlier in an autumn of warmer nights, where frost ends the crop', () => {
    fc.assert(
      fc.property(withFrost, anyAir, fc.double({ min: 0, max: 8, noNaN: true }), (crop, air, warmerK) => {
        const minC = air.minC.map((tempC, day) => (day >= 200 && day < 400 ? tempC + warmerK : tempC));
        const [as, warmer] = [fates(crop, air), fates(crop, { ...air, minC })];
        as.forEach((one, up) => {
          if (isGood(one)) expect(isGood(warmer[up]!), `${crop.id} ${up}`).toBe(true);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('never loses a day for a hardier seedling', () => {
    fc.assert(
      fc.property(anyCrop, anyAir, fc.double({ min: 0, max: 6, noNaN: true }), (crop, air, hardierK) => {
        const growth = crop.growth!;
        const [as, hardier] = [
          fates(crop, air),
          fates(crop, air, { ...growth, seedlingFrostC: growth.seedlingFrostC - hardierK }),
        ];
        // What frost spared before is spared still; a tender crop that has become hardy may then stand over winter.
        as.forEach((one, up) => {
          if (isGood(one)) expect([null, 'over-winter']).toContain(hardier[up]!.why);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('is picked later by later kinds, and no sooner for being up later', () => {
    fc.assert(
      fc.property(anyCrop, anyAir, (crop, air) => {
        let before = -Infinity;
        for (const { harvestDay, earlyDay, lateDay } of fates(crop, air)) {
          if (Number.isNaN(harvestDay)) continue;
          expect([earlyDay, harvestDay, lateDay]).toEqual([earlyDay, harvestDay, lateDay].sort((a, b) => a - b));
          expect(harvestDay).toBeGreaterThanOrEqual(before);
          before = harvestDay;
        }
      }),
      { numRuns: 60 },
    );
  });

  it('mirrors in the south what is in the north, half a year later', () => {
    fc.assert(
      fc.property(anyCrop, fc.double({ min: 8, max: 18, noNaN: true }), (crop, meanC) => {
        const north = airOf(meanC, 10, 2);
        // The same days, said to begin in the middle of the calendar's year.
        const south = { ...north, firstDayOfYear: 183, latitudeDeg: -45 };
        const long = crop.growth!.boltingDayLengthH !== null;
        expect(seasonDayOf(south.firstDayOfYear, -45)).toBe(seasonDayOf(north.firstDayOfYear, 45));
        const [here, there] = [fates(crop, north), fates(crop, south)];
        const differing = here.filter((one, up) => one.why !== there[up]!.why).length;
        // The sun’s year is not quite as long on either side.
        expect(differing).toBeLessThanOrEqual(long ? 8 : 2);
      }),
      { numRuns: 40 },
    );
  });
});
