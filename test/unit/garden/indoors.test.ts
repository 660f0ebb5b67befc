import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { bearsPlants, indoorsOf } from '../../../src/garden/sowing/indoors.js';
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

describe('dates that bear young plants', () => {
  const site = { latitudeDeg: null };
  const days = (minC: Float64Array) => ({ firstDate, minC, maxC: minC.map((low) => low + 12), soilC: null });
  const firstOf = (crop: string, minC: Float64Array): PlainDate => {
    const bears = bearsPlants(cropCalled(crop), days(minC), site);
    const dates = Array.from({ length: 200 }, (_, day) => addDays(plain('2027-01-20'), day));
    return dates.find(bears)!;
  };

  it('let hardy crops out first and tender ones last', () => {
    // By the curve nights are of 10 °C on the 130th day, and the mean of a fortnight so from a week before: 5 May.
    expect(firstOf('cabbage', years)).toBe('2027-01-20');
    expect(Math.abs(daysBetween(plain('2027-05-05'), firstOf('tomato', years)))).toBeLessThanOrEqual(2);
    expect(firstOf('pepper', years) > firstOf('tomato', years)).toBe(true);
  });

  it('wait for a frost that came in three years of ten, and not for one that came in two', () => {
    const withFrosts = (inYears: readonly string[]): Float64Array => {
      const minC = years.slice();
      for (const year of inYears) minC[daysBetween(firstDate, plain(`${year}-05-20`))] = -1;
      return minC;
    };
    expect(firstOf('tomato', withFrosts(['2016', '2018']))).toBe(firstOf('tomato', years));
    expect(firstOf('tomato', withFrosts(['2016', '2018', '2021']))).toBe('2027-05-21');
  });

  it('are none where nothing is known: not 12 January, nor any other day', () => {
    const unknown = bearsPlants(cropCalled('tomato'), null, site);
    const shortly = bearsPlants(cropCalled('tomato'), days(years.subarray(0, 100)), site);
    for (const date of ['2027-01-12', '2027-06-10', '2027-07-20']) {
      expect(unknown(plain(date))).toBe(false);
      expect(shortly(plain(date))).toBe(false);
    }
  });
});
