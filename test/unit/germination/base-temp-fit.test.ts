import { describe, expect, it } from 'vitest';
import type { CropRow } from '../../../src/germination/crop.js';
import { baseTempFit } from '../../../src/germination/curve/base-temp-fit.js';
import { rowsOf } from './make.js';

describe('baseTempFit', () => {
  it('takes only the first of several cells with the highest rate', () => {
    const flatTop = baseTempFit(
      rowsOf([
        [10, 20],
        [20, 5],
        [25, 5],
        [30, 5],
      ]),
    );
    expect(flatTop).toEqual(
      baseTempFit(
        rowsOf([
          [10, 20],
          [20, 5],
        ]),
      ),
    );
    expect(flatTop!.n).toBe(2);
  });

  it('leaves out cells below 5 °C, cells never timed and cells where none came', () => {
    const none: CropRow = { temperatureC: 7, tested: true, days: null, percent: 0 };
    const never: CropRow = { temperatureC: 8, tested: false, days: null, percent: 50 };
    const [cold, ...rest] = rowsOf([
      [0, 136],
      [10, 20],
      [20, 5],
    ]);
    expect(baseTempFit([cold!, none, never, ...rest])).toEqual(baseTempFit(rest));
  });

  it('knows no base where fewer than two cells were timed, or where warmth only slows', () => {
    expect(baseTempFit([])).toBeNull();
    expect(baseTempFit(rowsOf([[20, 5]]))).toBeNull();
    expect(
      baseTempFit(
        rowsOf([
          [10, 5],
          [20, 8],
        ]),
      ),
    ).toBeNull();
  });
});
