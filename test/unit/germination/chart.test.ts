import { describe, expect, it } from 'vitest';
import { chartOf } from '../../../src/germination/curve/chart.js';
import { thermoinhibitionThreshold } from '../../../src/germination/curve/thermoinhibition-threshold.js';
import { cropCalled, rowsOf } from './make.js';

describe('chartOf', () => {
  it('reads the printed cell at a printed temperature', () => {
    expect(chartOf(cropCalled('onion'))(20)).toEqual({ meanC: 20, days: 5, percent: 99 });
  });

  it('has no days where nothing comes up', () => {
    expect(chartOf(cropCalled('lettuce'))(40)).toEqual({ meanC: 40, days: null, percent: 0 });
  });

  it('keeps the contradiction of the print: celery at 25 °C has a percent and no days', () => {
    expect(chartOf(cropCalled('celery'))(25)).toEqual({ meanC: 25, days: null, percent: 65 });
  });

  it('reads the raw percent, not the smoothed one', () => {
    expect(chartOf(cropCalled('celery'))(15).percent).toBe(40);
  });
});

describe('thermoinhibitionThreshold', () => {
  it('lies where the line between two cells crosses nine tenths of the best', () => {
    expect(
      thermoinhibitionThreshold(
        rowsOf([
          [20, 5, 100],
          [30, 5, 80],
        ]),
      ),
    ).toBeCloseTo(25, 12);
  });

  it('takes the fall from the warmest best cell, not a dip before it', () => {
    expect(
      thermoinhibitionThreshold(
        rowsOf([
          [10, 9, 90],
          [15, 7, 40],
          [20, 5, 90],
          [30, 5, 0],
        ]),
      ),
    ).toBeCloseTo(21, 12);
  });

  it('is unknown where the counted cells never fall below nine tenths', () => {
    expect(
      thermoinhibitionThreshold(
        rowsOf([
          [20, 5, 80],
          [30, 5, 90],
        ]),
      ),
    ).toBeNull();
    expect(
      thermoinhibitionThreshold(
        rowsOf([
          [20, 5, 100],
          [30, 5, 90],
        ]),
      ),
    ).toBeNull();
  });
});
