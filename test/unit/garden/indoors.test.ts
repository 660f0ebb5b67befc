import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { indoorsOf, nightsBear } from '../../../src/garden/sowing/indoors.js';
import { cropCalled } from '../germination/make.js';

const plain = (date: string): PlainDate => date as PlainDate;
const always = (): boolean => true;

/** Ten years of nights that warm from -4 °C in January to 16 °C in July, smoothly. */
const firstDate = plain('2015-01-01');
const years = Float64Array.from({ length: 3652 }, (_, day) => 6 - 10 * Math.cos((2 * Math.PI * (day - 15)) / 365.25));

describe('indoorsOf', () => {
  it('follows a tray: up by the chart, weeks until it is fit, a week of hardening off, planted out', () => {
    // Tomato: 8 days at 20 °C (Harrington & Minges 1954); five weeks in the tray.
    expect(indoorsOf(cropCalled('tomato'), plain('2027-04-01'), 20, always)).toEqual({
      half: '2027-04-09',
      hardenOff: { from: '2027-05-06', to: '2027-05-13' },
      plantOut: '2027-05-14',
    });
  });

  it('comes up sooner in a warmer room, and not at all where the chart has none', () => {
    const pepper = cropCalled('pepper');
    // 25 days at 15 °C, 13 at 20, 8 at 25, none at 10.
    expect(indoorsOf(pepper, plain('2027-03-01'), 25, always)!.half).toBe('2027-03-09');
    expect(indoorsOf(pepper, plain('2027-03-01'), 15, always)!.half).toBe('2027-03-26');
    expect(indoorsOf(pepper, plain('2027-03-01'), 8, always)).toBeNull();
  });

  it('keeps plants in until nights bear them', () => {
    const from20May = (date: PlainDate): boolean => date.slice(5) >= '05-20';
    const { half, plantOut, hardenOff } = indoorsOf(cropCalled('tomato'), plain('2027-04-01'), 20, from20May)!;
    expect(half).toBe('2027-04-09');
    expect(plantOut).toBe('2027-05-20');
    expect(hardenOff).toEqual({ from: '2027-05-12', to: '2027-05-19' });
    expect(indoorsOf(cropCalled('tomato'), plain('2027-04-01'), 20, () => false)).toBeNull();
  });

  it('moves no crop whose root is eaten whole', () => {
    for (const crop of ['carrot', 'parsnip', 'radish', 'turnip'])
      expect(indoorsOf(cropCalled(crop), plain('2027-03-01'), 20, always)).toBeNull();
  });
});

describe('nightsBear', () => {
  const firstOf = (frost: 'tender' | 'half-hardy' | 'hardy', minC: Float64Array): PlainDate => {
    const bears = nightsBear({ firstDate, minC }, frost);
    const dates = Array.from({ length: 200 }, (_, day) => addDays(plain('2027-01-20'), day));
    return dates.find(bears)!;
  };

  it('lets hardy crops out first and tender ones last', () => {
    // By the curve nights pass -2 °C on 22 February (day 53) and 8 °C on 27 April (day 117).
    expect(firstOf('hardy', years)).toBe('2027-01-20');
    expect(Math.abs(daysBetween(plain('2027-02-22'), firstOf('half-hardy', years)))).toBeLessThanOrEqual(2);
    // The mean of the week is that of its fourth day.
    expect(Math.abs(daysBetween(plain('2027-04-24'), firstOf('tender', years)))).toBeLessThanOrEqual(2);
  });

  it('waits for a frost that came in two years of ten, and not for one that came in one', () => {
    const withFrosts = (inYears: readonly string[]): Float64Array => {
      const minC = years.slice();
      for (const year of inYears) minC[daysBetween(firstDate, plain(`${year}-05-10`))] = -1;
      return minC;
    };
    expect(firstOf('tender', withFrosts(['2016']))).toBe(firstOf('tender', years));
    expect(firstOf('tender', withFrosts(['2016', '2021']))).toBe('2027-05-11');
  });

  it('keeps plants in where a frost comes within a month in autumn', () => {
    const bears = nightsBear({ firstDate, minC: years }, 'tender');
    expect(bears(plain('2027-09-15'))).toBe(true);
    expect(bears(plain('2027-11-10'))).toBe(false);
  });

  it('takes every night as borne where none is known', () => {
    expect(nightsBear(null, 'tender')(plain('2027-01-10'))).toBe(true);
    // A spring of air alone says nothing of June.
    const bears = nightsBear({ firstDate, minC: years.subarray(0, 100) }, 'tender');
    expect(bears(plain('2027-02-10'))).toBe(false);
    expect(bears(plain('2027-06-10'))).toBe(true);
  });
});
