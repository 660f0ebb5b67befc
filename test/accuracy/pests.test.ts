import { describe, expect, it } from 'vitest';
import { daysBetween, type PlainDate } from '../../src/basics/calendar.js';
import { broodDates } from '../../src/growth/pests/brood-dates.js';
import { type PestId, pestRules } from '../../src/growth/pests/pest-rules.js';
import { hasRecords } from './records.js';
import { stationAir } from './station-air.js';

/** Days of the year on which a tenth, half and nine tenths of the years have a brood, from published sums by an independent program. */
const WORKED: readonly (readonly [station: string, PestId, brood: number, p10: string, p50: string, p90: string])[] = [
  ['IL_Champaign_9_SW', 'seedcorn-maggot', 1, '04-04', '04-15', '04-24'],
  ['IL_Champaign_9_SW', 'seedcorn-maggot', 2, '05-17', '05-23', '05-29'],
  ['IL_Champaign_9_SW', 'seedcorn-maggot', 3, '06-10', '06-17', '06-21'],
  ['IL_Champaign_9_SW', 'cabbage-maggot', 1, '04-08', '04-19', '04-29'],
  ['IL_Champaign_9_SW', 'onion-maggot', 1, '05-01', '05-07', '05-16'],
  ['IL_Champaign_9_SW', 'carrot-rust-fly', 1, '05-04', '05-06', '05-09'],
  ['IL_Champaign_9_SW', 'carrot-rust-fly', 2, '07-04', '07-09', '07-14'],
  ['NY_Ithaca_13_E', 'seedcorn-maggot', 1, '04-29', '05-09', '05-14'],
  ['NY_Ithaca_13_E', 'seedcorn-maggot', 2, '06-10', '06-16', '06-18'],
  ['NY_Ithaca_13_E', 'cabbage-maggot', 1, '05-08', '05-16', '05-25'],
  ['NY_Ithaca_13_E', 'onion-maggot', 1, '05-25', '05-30', '06-05'],
  ['NY_Ithaca_13_E', 'carrot-rust-fly', 1, '05-18', '05-22', '05-29'],
  ['NY_Ithaca_13_E', 'carrot-rust-fly', 2, '08-01', '08-06', '08-11'],
];
/** The middle within two days; the outer tenths hang on two of some twenty years, and on how a quantile is taken. */
const [MIDDLE_DAYS, OUTER_DAYS] = [2, 6];

describe.runIf(hasRecords)('dates of pests at two stations of the U.S. Climate Reference Network', () => {
  it.each(WORKED)('%s: %s, brood %i', (station, id, brood, p10, p50, p90) => {
    const { air, latitude } = stationAir(station);
    const rule = pestRules.find((one) => one.id === id)!;
    const { from, peak, to, ofYears } = broodDates(rule.broods[brood - 1]!, air, 2027, latitude)!;
    const off = (date: PlainDate, worked: string) => Math.abs(daysBetween(`2027-${worked}` as PlainDate, date));
    expect(ofYears).toBeGreaterThanOrEqual(17);
    expect(off(peak, p50), `half: ${peak}`).toBeLessThanOrEqual(MIDDLE_DAYS);
    expect(off(from, p10), `a tenth: ${from}`).toBeLessThanOrEqual(OUTER_DAYS);
    expect(off(to, p90), `nine tenths: ${to}`).toBeLessThanOrEqual(OUTER_DAYS);
  });
});
