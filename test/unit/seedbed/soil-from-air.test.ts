import { describe, expect, it } from 'vitest';
import type { BedMake } from '../../../src/seedbed/bed.js';
import { annualHarmonic, annualHarmonicAt, annualProfile } from '../../../src/seedbed/conduction/annual-start.js';
import { conduct } from '../../../src/seedbed/conduction/conduct.js';
import { dampingDepthCm } from '../../../src/seedbed/conduction/damping.js';
import { soilFromAir } from '../../../src/seedbed/conduction/soil-from-air.js';
import { downwardPropagation } from '../../../src/seedbed/probe/downward-propagation.js';
import { AIR_DAY_SHAPE } from '../../../src/seedbed/sun/day-curve.js';
import { fillDays } from '../../../src/seedbed/sun/fill-days.js';
import { hourlyFromDays } from '../../../src/seedbed/sun/hourly-from-days.js';
import { extraterrestrialMJ } from '../../../src/seedbed/sun/sun.js';
import { climateNumbers } from '../../../src/seedbed/surface/climate-numbers.js';
import { DEEP_CM, diffusivityOf, gradedDepthsCm, nodeAt } from '../../../src/seedbed/surface/ground.js';
import { solAirC, surfaceOf } from '../../../src/seedbed/surface/surface.js';
import { surfaceForcing } from '../../../src/seedbed/surface/surface-forcing.js';

const open: BedMake = { kind: 'open-ground', cover: 'bare', moisture: 'rain', shadePercent: 0 };
const DAYS = 40;

/** Summer days at 44° N: the air of our invented place. */
function summer(extremesC: (day: number) => readonly [min: number, max: number] = () => [15, 28]) {
  const days = Array.from({ length: DAYS }, (_, day) => {
    const [minC, maxC] = extremesC(day);
    return {
      startH: 24 * day,
      endH: 24 * day + 24,
      sunriseH: 24 * day + 4.6,
      sunsetH: 24 * day + 19.4,
      minC,
      maxC,
      extraterrestrialMJ: extraterrestrialMJ(44, 172 + day),
    };
  });
  const noted = days.map((day) => ({ ...day, meanC: null }));
  return { hourlyC: hourlyFromDays(noted, 24 * DAYS, AIR_DAY_SHAPE), days };
}
const flat = (meanC: number) => ({ wave: { meanC, cosineK: 0, sineK: 0 }, day: 0 });
const changing = (day: number): [number, number] => [13 + 4 * Math.sin(day / 3), 24 + 6 * Math.sin(day / 3 + 0.4)];

const soilAt = (
  bed: Partial<BedMake>,
  depthsCm: readonly number[],
  air = summer(changing),
): readonly Float64Array[] => {
  const make = { ...open, ...bed };
  return soilFromAir(air, surfaceOf(make, null), make.kind, depthsCm, flat(22)).hourlyC;
};
const dayOf = (hourlyC: Float64Array, day: number) => {
  const hours = hourlyC.subarray(24 * day, 24 * day + 24);
  return {
    mean: hours.reduce((sum, tempC) => sum + tempC, 0) / 24,
    max: Math.max(...hours),
    swing: Math.max(...hours) - Math.min(...hours),
    peakH: hours.indexOf(Math.max(...hours)),
  };
};
const lastDays = Array.from({ length: DAYS - 10 }, (_, i) => 10 + i);

describe('soil from air', () => {
  it('has a smaller amplitude and a longer lag the deeper it is', () => {
    const depths = [0.5, 1.3, 5, 10, 20, 30];
    const soil = soilAt({}, depths, summer());
    for (let i = 1; i < depths.length; i++) {
      for (const day of lastDays) {
        const [above, below] = [dayOf(soil[i - 1]!, day), dayOf(soil[i]!, day)];
        expect(below.swing).toBeLessThan(above.swing);
        // At 30 cm the peak comes after midnight: counted on from the same day.
        expect((below.peakH + 24 - 12) % 24).toBeGreaterThanOrEqual((above.peakH + 24 - 12) % 24);
      }
    }
  });

  it('is never warmer, on any day of summer, in mean or maximum, for shade or water', () => {
    for (const cover of ['bare', 'grass', 'mulch', 'black-film'] as const) {
      for (const kind of ['open-ground', 'raised-bed', 'pot', 'tray'] as const) {
        const asIs = soilAt({ cover, kind }, [1.3])[0]!;
        for (const change of [
          { shadePercent: 30 },
          { shadePercent: 100 },
          { moisture: 'moist' },
          { moisture: 'wet' },
        ] as const) {
          const changed = soilAt({ cover, kind, ...change }, [1.3])[0]!;
          for (const day of lastDays) {
            expect(dayOf(changed, day).mean).toBeLessThanOrEqual(dayOf(asIs, day).mean + 1e-9);
            expect(dayOf(changed, day).max).toBeLessThanOrEqual(dayOf(asIs, day).max + 1e-9);
          }
        }
      }
    }
  });

  it('is warmer under film and fleece, and its afternoons cooler under mulch', () => {
    const mean = (bed: Partial<BedMake>): number => dayOf(soilAt(bed, [5], summer())[0]!, 30).mean;
    const max = (bed: Partial<BedMake>): number => dayOf(soilAt(bed, [1], summer())[0]!, 30).max;
    // Lamont (1993), from a copy: black film +2 to +3 K at 5 cm, clear film +4 to +8; fleece and a raised bed some tenths to 1 K.
    expect(mean({ cover: 'black-film' }) - mean({})).toBeGreaterThan(1.5);
    expect(mean({ cover: 'black-film' }) - mean({})).toBeLessThan(3);
    expect(mean({ cover: 'clear-film' }) - mean({})).toBeGreaterThan(3);
    expect(mean({ cover: 'fleece' }) - mean({})).toBeGreaterThan(0.5);
    expect(mean({ kind: 'raised-bed' }) - mean({})).toBeGreaterThan(0.3);
    expect(max({}) - max({ cover: 'mulch' })).toBeGreaterThan(4);
  });

  it('follows the air more closely in a pot than in the ground', () => {
    const cold = summer((day) => (day < 30 ? [18, 28] : [8, 16]));
    const fall = (kind: BedMake['kind']): number => {
      const soil = soilAt({ kind }, [5], cold)[0]!;
      return dayOf(soil, 29).mean - dayOf(soil, 30).mean;
    };
    expect(fall('pot')).toBeGreaterThan(fall('open-ground'));
    expect(fall('tray')).toBeGreaterThan(fall('pot'));
  });

  it('lies near freezing under snow, whatever the air', () => {
    const winter = summer((day) => (day < 35 ? [-20, -6] : [4, 12]));
    const bare = soilFromAir(winter, surfaceOf({ ...open, cover: 'grass' }, null), 'open-ground', [5], flat(2))
      .hourlyC[0]!;
    expect(dayOf(bare, 34).mean).toBeGreaterThan(-5);
    // The snow outlasts the first mild days.
    expect(dayOf(bare, 36).mean).toBeLessThan(1);
  });
});

describe('surfaceForcing', () => {
  it('keeps the mean of each day: the curve of the air, the sun and the constants add up to the day’s sol-air', () => {
    const air = summer(changing);
    const surface = surfaceOf({ ...open, cover: 'grass' }, null);
    const { solAirC: hourly } = surfaceForcing(air, surface);
    air.days.forEach(({ minC, maxC, extraterrestrialMJ: above }, day) => {
      expect(dayOf(hourly, day).mean).toBeCloseTo(solAirC(surface, (minC + maxC) / 2, maxC - minC, above), 6);
    });
  });
});

describe('the start of a record', () => {
  it('starts as years of the same harmonic would leave it', () => {
    const ground = { depthsCm: gradedDepthsCm([5, 100], DEEP_CM), conductivity: 1.2, heatCapacity: 2e6 };
    const wave = { meanC: 10, cosineK: -11, sineK: -4 };
    const profileC = annualProfile(ground, wave, 0, 5);
    const before = profileC.slice();
    const hours = Math.round(365.2425 * 24);
    const tempC = Float64Array.from({ length: hours }, (_, hour) => annualHarmonicAt(wave, (hour + 0.5) / 24));
    conduct(ground, profileC, { top: { conductance: tempC.map(() => 5), tempC } }, [], { freezes: false });
    for (const depth of [5, 100]) {
      expect(profileC[nodeAt(ground, depth)]).toBeCloseTo(before[nodeAt(ground, depth)]!, 1);
    }
  });

  it('fits the annual harmonic to a year of days, and assumes it from less, north and south', () => {
    const days = Float64Array.from({ length: 730 }, (_, day) => (day % 365) + 1);
    const values = days.map((day) => 9 + 8 * Math.cos((2 * Math.PI * (day - 200)) / 365.2425));
    const fitted = annualHarmonic(days, values, 44);
    expect(fitted.meanC).toBeCloseTo(9, 1);
    expect(Math.hypot(fitted.cosineK, fitted.sineK)).toBeCloseTo(8, 1);
    for (const latitude of [44, -44]) {
      const supposed = annualHarmonic(days.subarray(120, 150), new Float64Array(30).fill(12), latitude);
      const mean =
        Array.from({ length: 30 }, (_, day) => annualHarmonicAt(supposed, 120 + day)).reduce((a, b) => a + b) / 30;
      expect(mean).toBeCloseTo(12, 6);
      expect(Math.sign(annualHarmonicAt(supposed, 200) - annualHarmonicAt(supposed, 20))).toBe(Math.sign(latitude));
    }
  });
});

describe('belowProbe', () => {
  it('propagates a diurnal wave down as the analytic solution does', () => {
    const ground = { depthsCm: gradedDepthsCm([10], DEEP_CM), conductivity: 1.2, heatCapacity: 2e6 };
    const hourlyC = Float64Array.from(
      { length: 24 * 20 },
      (_, hour) => 15 + 6 * Math.sin((2 * Math.PI * (hour + 0.5)) / 24),
    );
    const still = { meanC: 15, cosineK: 0, sineK: 0 };
    const below = downwardPropagation(ground, hourlyC, nodeAt(ground, 10), still, 0);
    const depths = 10 / dampingDepthCm(diffusivityOf(ground), 24);
    for (let hour = 24 * 5; hour < 24 * 19; hour++) {
      const truth = 15 + 6 * Math.exp(-depths) * Math.sin((2 * Math.PI * (hour + 0.5)) / 24 - depths);
      expect(Math.abs(below.hourlyC[hour]! - truth)).toBeLessThan(0.06);
    }
    expect(below.profileC).toHaveLength(ground.depthsCm.length);
  });
});

describe('fillDays', () => {
  const days = Float64Array.from({ length: 800 }, (_, day) => (day % 365) + 1);
  const course = days.map((day) => 10 - 9 * Math.cos((2 * Math.PI * (day - 20)) / 365.2425));

  it('bridges short gaps straight, and holds the ends', () => {
    expect([...fillDays([1, 2, 3, 4, 5, 6], [NaN, 2, NaN, NaN, 5, NaN])]).toEqual([2, 2, 3, 4, 5, 5]);
  });

  it('follows the year through a long gap where the record has one', () => {
    const gapped = course.slice();
    gapped.fill(NaN, 400, 520);
    const filled = fillDays(days, gapped);
    expect(Math.max(...filled.map((value, day) => Math.abs(value - course[day]!)))).toBeLessThan(0.5);
  });

  it('changes nothing that is known', () => {
    const gapped = course.map((value, day) => (day % 17 < 4 ? NaN : value));
    fillDays(days, gapped).forEach((value, day) => {
      if (!Number.isNaN(gapped[day])) expect(value).toBe(gapped[day]);
    });
  });
});

describe('climateNumbers', () => {
  const dayOfYear = Float64Array.from({ length: 730 }, (_, day) => (day % 365) + 1);
  const wave = (peak: number) => dayOfYear.map((day) => Math.cos((2 * Math.PI * (day - peak)) / 365.2425));
  const yearsOf = (peak: number) => {
    const season = wave(peak);
    return {
      dayOfYear,
      minC: season.map((one) => 6 + 9 * one - 1.5 * one),
      maxC: season.map((one) => 16 + 9 * one + 1.5 * one),
    };
  };

  it('are the same in the south as in the north, half a year apart', () => {
    const north = climateNumbers(yearsOf(200), 44, 800)!;
    const south = climateNumbers(yearsOf(200 - 365.2425 / 2), -44, 800)!;
    expect(north.continentality).toBeCloseTo((9 - 11) / 10, 2);
    expect(south.continentality).toBeCloseTo(north.continentality, 6);
    expect(south.rangeSeason).toBeCloseTo(north.rangeSeason, 2);
    expect(south.logAridity).toBeCloseTo(north.logAridity!, 1);
    // The swing is 3 K wider in summer, and its wave peaks on 19 July.
    expect(north.rangeSeason).toBeGreaterThan(0.1);
  });

  it('say nothing from many days of one season', () => {
    const { minC, maxC } = yearsOf(200);
    const summers = minC.map((low, i) => (dayOfYear[i]! > 100 && dayOfYear[i]! < 270 ? low : NaN));
    expect(
      climateNumbers({ dayOfYear, minC: summers, maxC: maxC.map((high, i) => high + 0 * summers[i]!) }, 44, 800),
    ).toBeNull();
  });

  it('rise in humidity with the rain, and say nothing from less than a year', () => {
    const humid = (rain: number | null) => climateNumbers(yearsOf(200), 44, rain)!.logAridity;
    expect(humid(null)).toBeNull();
    expect(humid(400)!).toBeLessThan(humid(800)!);
    const short = {
      dayOfYear: dayOfYear.subarray(0, 345),
      minC: new Float64Array(345),
      maxC: new Float64Array(345).fill(9),
    };
    expect(climateNumbers(short, 44, 800)).toBeNull();
  });
});
