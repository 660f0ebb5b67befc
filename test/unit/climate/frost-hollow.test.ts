import { describe, expect, it } from 'vitest';
import { daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { isFrostHollow } from '../../../src/climate/frost-hollow.js';

const FIRST = '2015-01-01' as PlainDate;

/** Eight years of nights of 9 °C but for frosts on these dates. */
function recordWith(...frosts: readonly string[]) {
  const minC = new Float64Array(8 * 365).fill(9);
  for (const date of frosts) minC[daysBetween(FIRST, date as PlainDate)] = 0;
  return { firstDate: FIRST, minC };
}

describe('a frost hollow', () => {
  it('has had frost in all three months of summer, in one year or another', () => {
    expect(isFrostHollow(recordWith('2015-06-30', '2019-07-01', '2020-08-31'), 47)).toBe(true);
    expect(isFrostHollow(recordWith('2015-06-30', '2019-08-01', '2020-08-31'), 47)).toBe(false);
    expect(isFrostHollow(recordWith('2015-05-31', '2019-07-01', '2020-09-01'), 47)).toBe(false);
  });

  it('is sought half a year later in the south', () => {
    const northern = recordWith('2015-06-30', '2019-07-01', '2020-08-31');
    const southern = recordWith('2015-12-30', '2019-01-01', '2020-02-28');
    expect(isFrostHollow(northern, -37)).toBe(false);
    expect(isFrostHollow(southern, -37)).toBe(true);
    expect(isFrostHollow(southern, 37)).toBe(false);
  });
});
