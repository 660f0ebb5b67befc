import { scaleLinear, scaleUtc } from 'd3-scale';
import { describe, expect, it } from 'vitest';
import { dateScale, dateTicks, dateWords, dayOf } from '../../../src/plot/dates.js';
import { degreeScale, degrees, degreesSpan } from '../../../src/plot/degrees.js';

const words = dateWords('en-GB');

describe('the axis of dates', () => {
  it('names the firsts of months that d3’s own scale of time names', () => {
    const [from, to] = ['2027-09-10', '2028-06-20'];
    const ticks = dateTicks(dateScale(dayOf(from), dayOf(to), 0, 800), words);
    const d3 = scaleUtc()
      .domain([new Date(from), new Date(to)])
      .range([0, 800])
      .ticks(9);
    expect(ticks.map(({ day }) => day)).toEqual(d3.map((date) => date.getTime() / 86_400_000));
    expect(ticks.map(({ text }) => text)).toEqual(['Oct', 'Nov', 'Dec', 'Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun']);
  });

  it('puts days where d3’s own scale of time puts them', () => {
    const [from, to] = ['2027-05-03', '2027-05-25'];
    const scale = dateScale(dayOf(from), dayOf(to), 60, 400);
    const d3 = scaleUtc()
      .domain([new Date(from), new Date(to)])
      .range([60, 400]);
    for (const date of ['2027-05-03', '2027-05-11', '2027-05-25']) {
      expect(scale(dayOf(date))).toBeCloseTo(d3(new Date(date)), 9);
    }
  });

  it('names every day, every other, or every week from the first on, as there is room', () => {
    const days = (widthPx: number): string[] =>
      dateTicks(dateScale(dayOf('2027-05-28'), dayOf('2027-06-18'), 0, widthPx), words).map(({ text }) => text);
    expect(days(2000)).toHaveLength(21);
    expect(days(700).slice(0, 4)).toEqual(['28 May', '30 May', '1 Jun', '3 Jun']);
    expect(days(260)).toEqual(['28 May', '4 Jun', '11 Jun']);
  });

  it('speaks the reader’s language', () => {
    const german = dateWords('de-DE');
    expect(german.long('2027-05-03')).toBe('3. Mai 2027');
    expect(dateWords('en-US').long('2027-05-03')).toBe('May 3, 2027');
  });
});

describe('the axis of degrees', () => {
  it('is d3’s own scale over the same range made round', () => {
    const scale = degreeScale([3.2, 28.9], 'C', 200, 0);
    const d3 = scaleLinear().domain([3.2, 28.9]).nice(5).range([200, 0]);
    expect(scale.domain()).toEqual(d3.domain());
    expect(scale(17)).toBe(d3(17));
  });

  it('has a range even where the temperature never changes, or is not known', () => {
    expect(degreeScale([20, 20], 'C', 200, 0)(20)).toBeCloseTo(100, 0);
    expect(degreeScale([], 'C', 200, 0).domain()).toEqual([0, 30]);
  });

  it('turns °C into °F', () => {
    expect(degrees(100, 'F')).toBe('212 °F');
    expect(degrees(-40, 'F')).toBe('-40 °F');
    expect(degreesSpan(0, 37, 'F')).toEqual({ from: '32', to: '99 °F' });
  });
});
