import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import { harvestInYears } from '../../../src/garden/sowing/harvest-in-years.js';
import { cropCalled } from '../germination/make.js';

const plain = (date: string): PlainDate => date as PlainDate;
const FIRST = plain('2020-01-01');

/** Seven years of air that keep one mean in summer and freeze hard in winter. */
function airOf(summerC: number, lastDate: string, changes: (date: PlainDate) => number | undefined = () => undefined) {
  const n = daysBetween(FIRST, plain(lastDate)) + 1;
  const means = Float64Array.from({ length: n }, (_, day) => {
    const date = addDays(FIRST, day);
    const isWinter = date.slice(5) >= '11-01' || date.slice(5) < '04-01';
    return changes(date) ?? (isWinter ? -15 : summerC);
  });
  return { firstDate: FIRST, minC: means.map((meanC) => meanC - 4), maxC: means.map((meanC) => meanC + 4) };
}
const up = (half: string) => ({ half: plain(half), plantedOut: null });

describe('the harvest of a crop that stands', () => {
  it('is when the heat units of its early, and of its late kinds have come together, in past years', () => {
    // Leaf lettuce: 615 °C·d above 4.4 °C, so 46 days of 18 °C for middling kinds, from 40 to 55 days from sowing.
    const { harvest } = harvestInYears(cropCalled('lettuce'), up('2027-05-01'), airOf(18, '2026-12-31'), 44)!;
    expect(daysBetween(plain('2027-05-01'), harvest!.from)).toBeLessThan(46);
    expect(daysBetween(plain('2027-05-01'), harvest!.to)).toBeGreaterThan(46);
    const cooler = harvestInYears(cropCalled('lettuce'), up('2027-05-01'), airOf(14, '2026-12-31'), 44)!.harvest!;
    expect(cooler.from > harvest!.from && cooler.slowed).toBe(true);
  });

  it('comes later after a cool spring that has been measured this year', () => {
    const isThisMay = (date: PlainDate) => date >= '2027-05-01' && date <= '2027-05-31';
    const cool = airOf(18, '2027-05-31', (date) => (isThisMay(date) ? 8 : undefined));
    const usual = airOf(18, '2027-05-31');
    const from = (air: typeof usual) => harvestInYears(cropCalled('lettuce'), up('2027-05-01'), air, 44)!.harvest!.from;
    expect(daysBetween(from(usual), from(cool))).toBeGreaterThan(15);
  });

  it('is none where frost ends it in half of the years or more, and says when', () => {
    const bean = harvestInYears(cropCalled('snap-bean'), up('2027-09-15'), airOf(18, '2026-12-31'), 44)!;
    expect(bean.harvest).toBeNull();
    expect(bean.why).toEqual({ code: 'frost-before-harvest', params: { crop: 'snap-bean', endDate: '2027-11-01' } });
  });

  it('never comes before planting out, and is not told of fewer than three years, nor of a crop without growth', () => {
    const planted = { half: plain('2027-04-01'), plantedOut: plain('2027-06-01') };
    const tomato = harvestInYears(cropCalled('tomato'), planted, airOf(20, '2026-12-31'), 44)!;
    expect(tomato.harvest!.from > '2027-07-15').toBe(true);
    expect(harvestInYears(cropCalled('tomato'), up('2027-04-01'), airOf(20, '2026-12-31'), 44)).toBeNull();
    expect(harvestInYears(cropCalled('lettuce'), up('2022-05-01'), airOf(18, '2021-12-31'), 44)).toBeNull();
    expect(harvestInYears(cropCalled('asparagus'), up('2027-05-01'), airOf(18, '2026-12-31'), 44)).toBeNull();
  });
});
