import { describe, expect, test } from 'vitest';
import { tableClimate, type UnknownAir } from '../../../../src/answers/climate/table-climate.js';
import { frostDatesOfPlace } from '../../../../src/answers/windows/frost-dates.js';
import { addDays, findZone, type PlainDate } from '../../../../src/basics/calendar.js';
import { RequestError } from '../../../../src/basics/errors.js';
import { placeClimate } from '../../../../src/climate/world/place-climate.js';
import { typicalYears } from '../../../../src/climate/world/typical-years.js';
import { climateTable } from '../../../../src/climate-table.js';
import { climateSchema } from '../../../../src/contract/climate.js';
import { plainReader } from '../../../../src/words/reader.js';
import { sayer } from '../../../../src/words/say.js';

const zoneOf = (name: string) => findZone(name)!;
const INLAND: UnknownAir = { latitude: 42.44, longitude: -76.5, elevationM: 250, zone: zoneOf('America/New_York') };
const LAST_YEAR = 2025;
const asked = (place: UnknownAir) => tableClimate(climateTable(), place, LAST_YEAR);
function refusalOf(place: UnknownAir): RequestError {
  try {
    asked(place);
  } catch (error) {
    if (error instanceof RequestError) return error;
    throw error;
  }
  throw new Error('was not refused');
}
const codesOf = (facts: readonly { readonly code: string }[]) => facts.map(({ code }) => code);

describe('the climate of a place that only its coordinates are known of', () => {
  const answer = asked(INLAND);

  test('is thirty years of air, the same ones each time', () => {
    const { days, zone, origin, medium } = answer.airYears;
    expect([days[0]!.date, days.at(-1)!.date]).toEqual(['1996-01-01', '2025-12-31']);
    expect([zone.name, origin, medium]).toEqual(['America/New_York', 'measured', 'air']);
    days.forEach(({ date }, day) => {
      if (day > 0) expect(Date.parse(date) - Date.parse(days[day - 1]!.date)).toBe(86_400_000);
    });
    expect(asked({ ...INLAND }).airYears.days).toEqual(days);
  });

  test('tells its stations, its error, and frost dates that are those of its years', () => {
    const { climate } = answer;
    expect(climateSchema.parse(climate)).toEqual(climate);
    expect(climate.stations).toHaveLength(5);
    const nearest = climate.stations.find(({ id }) => id === '72515');
    expect(nearest).toMatchObject({
      name: 'Binghamton Airp./NY',
      country: 'United States of America',
      elevationM: 497,
    });
    expect(Math.abs(nearest!.km - 50)).toBeLessThan(1);
    const shares = climate.stations.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(shares.every((share) => share > 0 && share < 1)).toBe(true);
    expect(climate.plusMinusC).toBeGreaterThan(0.8);
    expect(climate.plusMinusC).toBeLessThan(1);
    const frost = frostDatesOfPlace(answer.airYears.days, 0, INLAND.latitude);
    expect(climate.lastSpringFrost!.risk50).toBe(frost.lastSpringFrost.risk50);
    expect(climate.firstAutumnFrost!.risk10).toBe(frost.firstAutumnFrost.risk10);
    expect(climate.tunedBy).toBeNull();
    expect(codesOf(answer.assumptions)).toEqual(['climate-table']);
    expect(answer.warnings).toEqual([]);
  });

  // The table tells the minima of 13 stations in open country 1.3 K too warm, whose days range over 13 K.
  test('has the nights of open country, and the days of the stations', () => {
    const stations = typicalYears(placeClimate(climateTable(), INLAND), INLAND.latitude, INLAND.longitude, LAST_YEAR);
    const { days } = answer.airYears;
    const mean = (values: ArrayLike<number>) => Array.from(values).reduce((sum, one) => sum + one, 0) / values.length;
    const of = (extreme: 'min' | 'max') => mean(days.map((day) => day[extreme]!));
    expect(Math.abs(of('max') - mean(stations.maxC))).toBeLessThan(0.03);
    const rangeK = mean(stations.maxC) - mean(stations.minC);
    expect(Math.abs(mean(stations.minC) - of('min') - (1.2 / 13) * rangeK)).toBeLessThan(0.06);
  });

  test('errs more where the height is not told, and says so', () => {
    const flat = asked({ ...INLAND, elevationM: null });
    expect(flat.climate.plusMinusC!).toBeGreaterThan(answer.climate.plusMinusC! + 0.5);
    expect(sayer(plainReader)(flat.assumptions[0]!)).toContain('hills');
  });

  test('is of its half of the world: January is warm in the south', () => {
    const south = asked({ latitude: -37.8, longitude: 145, elevationM: 30, zone: zoneOf('Australia/Melbourne') });
    const meanOf = (month: string) => {
      const some = south.airYears.days.filter(({ date }) => date.slice(5, 7) === month);
      return some.reduce((sum, { max }) => sum + max!, 0) / some.length;
    };
    expect(meanOf('01')).toBeGreaterThan(meanOf('07') + 8);
  });
});

describe('a last frost that the grower knows', () => {
  test('moves the minima alone, by seven tenths of what would make it true', () => {
    const [before, after] = [asked(INLAND), asked({ ...INLAND, lastFrostAround: '05-10' })];
    const { tunedBy } = after.climate;
    expect(tunedBy).toMatchObject({ lastFrostAround: '05-10', untuned: before.climate.lastSpringFrost!.risk50 });
    expect(tunedBy!.minimaMovedC).toBeLessThan(-1);
    const [old, now] = [before.airYears.days, after.airYears.days];
    for (const day of [0, 5000, 10_000]) {
      expect(now[day]!.max).toBe(old[day]!.max);
      expect(Math.abs(now[day]!.min! - old[day]!.min! - tunedBy!.minimaMovedC)).toBeLessThan(0.011);
    }
    const told = after.climate.lastSpringFrost!.risk50!;
    expect(told > before.climate.lastSpringFrost!.risk50! && told < '05-10').toBe(true);
    expect(codesOf(after.assumptions)).toContain('frost-date-told');
    expect(after.climate.plusMinusDays!).toBeLessThan(before.climate.plusMinusDays!);
    // Seven tenths of the whole shift: with all of it the date would be as told.
    const whole = tunedBy!.minimaMovedC / 0.7;
    const shifted = old.map((one) => ({ ...one, min: one.min! + whole }));
    const found = frostDatesOfPlace(shifted, 0, INLAND.latitude).lastSpringFrost.risk50!;
    expect(['05-09', '05-10', '05-11']).toContain(found);
  });

  test('goes with a first frost of autumn: the mean of both', () => {
    const spring = asked({ ...INLAND, lastFrostAround: '05-10' }).climate.tunedBy!.minimaMovedC;
    const autumn = asked({ ...INLAND, firstFrostAround: '09-25' }).climate.tunedBy!;
    const both = asked({ ...INLAND, lastFrostAround: '05-10', firstFrostAround: '09-25' }).climate.tunedBy!;
    expect(both.minimaMovedC).toBeCloseTo((spring + autumn.minimaMovedC) / 2, 9);
    expect(both).toMatchObject({ firstFrostAround: '09-25', untunedFirst: autumn.untunedFirst });
  });

  test('is doubted from five degrees on, and refused from eight', () => {
    const dates = Array.from({ length: 60 }, (_, day) => addDays('2001-05-01' as PlainDate, day).slice(5));
    const shifts: number[] = [];
    for (const lastFrostAround of dates) {
      try {
        const { climate, warnings } = asked({ ...INLAND, lastFrostAround });
        const shiftK = climate.tunedBy!.minimaMovedC / 0.7;
        shifts.push(shiftK);
        expect(codesOf(warnings), `${lastFrostAround}: ${shiftK} K`).toEqual(
          Math.abs(shiftK) > 5 ? ['frost-date-far'] : [],
        );
      } catch (error) {
        if (!(error instanceof RequestError)) throw error;
      }
    }
    expect(shifts.some((shiftK) => shiftK < -4.5 && shiftK > -5)).toBe(true);
    expect(shifts.some((shiftK) => shiftK < -5 && shiftK > -5.5)).toBe(true);
    expect(Math.min(...shifts)).toBeLessThan(-7.2);
    expect(Math.min(...shifts)).toBeGreaterThanOrEqual(-8);
    const refused = refusalOf({ ...INLAND, lastFrostAround: '07-20' });
    expect(refused.code).toBe('not-understood');
    expect(refused.faults[0]!.path).toEqual(['where', 'place', 'lastFrostAround']);
    expect(refusalOf({ ...INLAND, firstFrostAround: '07-28' }).faults[0]!.path).toEqual([
      'where',
      'place',
      'firstFrostAround',
    ]);
  });

  test('changes nothing where frost never comes, and that is told', () => {
    const tropics = { latitude: 1.3, longitude: 103.8, elevationM: 15, zone: zoneOf('Asia/Singapore') };
    const told = asked({ ...tropics, lastFrostAround: '03-01' });
    expect(told.climate.tunedBy).toBeNull();
    expect(told.climate.lastSpringFrost).toEqual({ risk10: null, risk50: null, risk90: null });
    expect(codesOf(told.warnings)).toEqual(['rain-rules', 'frost-date-unused']);
    expect(told.airYears.days).toEqual(asked(tropics).airYears.days);
  });
});

test('a year of own air moves the typical years toward it', () => {
  const n = 365;
  const ownAir = {
    firstDate: '2025-01-01' as PlainDate,
    minC: new Float64Array(n).fill(2),
    maxC: new Float64Array(n).fill(12),
  };
  const moved = asked({ ...INLAND, ownAir });
  const meanMax = ({ airYears }: { airYears: { days: readonly { max: number | null }[] } }) =>
    airYears.days.reduce((sum, { max }) => sum + max!, 0) / airYears.days.length;
  expect(Math.abs(meanMax(moved) - (meanMax(asked(INLAND)) + 12) / 2)).toBeLessThan(0.15);
  expect(moved.assumptions[1]).toEqual({ code: 'climate-own-air', params: { days: 365 } });
});

describe('a place that the table cannot tell of, or hardly', () => {
  /** So far north of Bermuda, which no other station is near [km]. */
  const offBermuda = (km: number): UnknownAir => ({
    latitude: 32.37 + km / 111.195,
    longitude: -64.68,
    elevationM: 0,
    zone: zoneOf('Atlantic/Bermuda'),
  });

  test('is refused where no station is within 400 km', () => {
    const refused = refusalOf(offBermuda(405));
    expect(refused.code).toBe('no-climate-near');
    expect(refused.sentences[0]).toEqual({ code: 'no-climate-near', params: { nearestKm: 405, maxKm: 400 } });
    expect(asked(offBermuda(395)).climate.stations[0]!.name).toContain('Wade');
  });

  test('is warned of where the stations are far from it, over land or in height', () => {
    expect(codesOf(asked(offBermuda(245)).warnings)).toEqual([]);
    expect(codesOf(asked(offBermuda(255)).warnings)).toEqual(['climate-far']);
    // The nearest station lies at 497 m.
    expect(codesOf(asked({ ...INLAND, elevationM: 1480 }).warnings)).toEqual([]);
    expect(codesOf(asked({ ...INLAND, elevationM: 1510 }).warnings)).toEqual(['climate-far']);
  });

  test('is asked about where its clock and its longitude disagree', () => {
    const { warnings } = asked({
      latitude: 42.44,
      longitude: 76.5,
      elevationM: 1600,
      zone: zoneOf('America/New_York'),
    });
    expect(warnings[0]).toEqual({
      code: 'zone-against-longitude',
      params: { timeZone: 'America/New_York', longitude: 76.5, mirroredLongitude: -76.5 },
    });
  });
});
