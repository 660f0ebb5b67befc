import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { crops } from '../../../src/germination/crops.js';
import { broodDates } from '../../../src/growth/pests/brood-dates.js';
import { pestRisks } from '../../../src/growth/pests/pest-risks.js';
import { pestRules } from '../../../src/growth/pests/pest-rules.js';

const FIRST = '2011-01-01' as PlainDate;
const on = (date: string): PlainDate => date as PlainDate;

/** Days from 2011 to a last date: each is `warmC` of its year above 0 °C from 1 April on, and frost before. */
function airTo(last: string, warmOf: (year: number) => number) {
  const n = daysBetween(FIRST, on(last)) + 1;
  const meanC = Float64Array.from({ length: n }, (_, day) => {
    const date = addDays(FIRST, day);
    return date.slice(5) < '04-01' ? -5 : warmOf(Number(date.slice(0, 4)));
  });
  return { firstDate: FIRST, minC: meanC.map((mean) => mean - 4), maxC: meanC.map((mean) => mean + 4) };
}

/** A hundred degree days above 0 °C: in years of 10 °C the tenth day of April reaches it. */
const brood = { baseC: 0, ceilingC: null, since: '01-01', sumCDays: 100 };

describe('a brood', () => {
  it('comes when its sum is reached: earlier in warm years, at the outer tenths and in the middle of them', () => {
    // Years of 20, 10 and 5 °C by turns: 5, 10 and 20 April.
    const air = airTo('2020-12-31', (year) => [20, 10, 5][year % 3]!);
    expect(broodDates(brood, air, 2027, 44)).toEqual({
      since: '2027-01-01',
      from: '2027-04-05',
      peak: '2027-04-10',
      to: '2027-04-20',
      soFar: null,
      inYears: 10,
      ofYears: 10,
    });
  });

  it('goes by the warmth of its own year as far as that is known', () => {
    // Sixty degrees by 6 April, in a year of 10 °C; what is missing takes 2, 4 or 8 days.
    const air = airTo('2020-04-06', (year) => (year === 2020 ? 10 : [20, 10, 5][year % 3]!));
    const { from, peak, to, soFar } = broodDates(brood, air, 2020, 44)!;
    expect(soFar).toEqual({ sumCDays: 60, on: '2020-04-06' });
    expect([from, peak, to]).toEqual(['2020-04-08', '2020-04-10', '2020-04-14']);
    const reached = broodDates(
      brood,
      airTo('2020-06-01', () => 10),
      2020,
      44,
    )!;
    expect([reached.from, reached.peak, reached.to]).toEqual(['2020-04-10', '2020-04-10', '2020-04-10']);
  });

  it('is told of three past years or more, and where half of them reach its sum', () => {
    const short = airTo('2013-12-31', () => 10);
    expect(broodDates(brood, short, 2027, 44)!.ofYears).toBe(3);
    expect(
      broodDates(
        brood,
        airTo('2012-12-31', () => 10),
        2027,
        44,
      ),
    ).toBeNull();
    const cold = (coldYears: number) => airTo('2020-12-31', (year) => (year - 2011 < coldYears ? 0 : 10));
    expect(broodDates(brood, cold(5), 2027, 44)).toMatchObject({ inYears: 5, ofYears: 10 });
    expect(broodDates(brood, cold(6), 2027, 44)).toBeNull();
    // Nine of twenty.
    const many = airTo('2030-12-31', (year) => (year - 2011 < 11 ? 0 : 10));
    expect(broodDates(brood, many, 2032, 44)).toBeNull();
  });

  it('bears ten missing days in a year, and leaves it out for more', () => {
    const holed = (days: number) => {
      const air = airTo('2014-12-31', () => 10);
      for (let day = 0; day < days; day++) air.maxC[daysBetween(FIRST, on('2012-02-01')) + day] = NaN;
      return broodDates(brood, air, 2027, 44)!.ofYears;
    };
    expect([holed(10), holed(11)]).toEqual([4, 3]);
  });

  it('comes half a year later in the south', () => {
    const north = airTo('2020-12-31', () => 10);
    const south = {
      ...north,
      minC: north.minC.map((_, day) => (monthDay(day) >= '10-01' || monthDay(day) < '07-01' ? 6 : -9)),
      maxC: north.maxC.map((_, day) => (monthDay(day) >= '10-01' || monthDay(day) < '07-01' ? 14 : -1)),
    };
    expect(broodDates(brood, south, 2026, -37)).toMatchObject({ since: '2026-07-01', peak: '2026-10-10' });
  });

  it('never comes later in a warmer year', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        (warmC, moreK) => {
          const at = (tempC: number) =>
            broodDates(
              brood,
              airTo('2014-12-31', () => tempC),
              2027,
              44,
            )!.peak;
          expect(at(warmC + moreK) <= at(warmC)).toBe(true);
        },
      ),
      { numRuns: 50 },
    );
  });
});

const monthDay = (day: number): string => addDays(FIRST, day).slice(5);

describe('pests', () => {
  it('live on crops of the handbook', () => {
    for (const { crops: eaten } of pestRules) for (const id of eaten) expect([...crops.keys()]).toContain(id);
  });

  it('are told in the order of their peaks, with the years behind them', () => {
    const air = airTo('2020-12-31', () => 15);
    const risks = pestRisks({ crop: 'onion', latitudeDeg: 44, from: on('2027-01-01'), to: on('2027-12-31') }, air);
    // 11.1 degree days a day above 3.9 °C, 10.6 above 4.4.
    expect(risks.map(({ id, peak }) => [id, peak])).toEqual([
      ['seedcorn-maggot', '2027-04-19'],
      ['onion-maggot', '2027-05-06'],
      ['seedcorn-maggot', '2027-05-25'],
      ['seedcorn-maggot', '2027-06-30'],
      ['onion-maggot', '2027-07-12'],
      ['onion-maggot', '2027-09-17'],
    ]);
    for (const { inYears, ofYears } of risks) expect([inYears, ofYears]).toEqual([10, 10]);
    expect(pestRisks({ crop: 'tomato', latitudeDeg: 44, from: on('2027-01-01'), to: on('2027-12-31') }, air)).toEqual(
      [],
    );
  });
});
