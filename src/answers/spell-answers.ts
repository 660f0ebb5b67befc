import type { PlainDate } from '../basics/calendar.js';
import type { Spell } from '../germination/spells.js';
import type { PlaceDays } from './place-days.js';
import type { FreeDate, Remedy } from './remedies.js';

/** A spell of heat or cold in the place's dates, with what can be done about it. */
export interface SpellAnswer {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly days: number;
  readonly hours: number;
  readonly peakC: number;
  readonly thresholdC: number;
  readonly severity: 'mild' | 'severe';
  readonly delayDays: { readonly half: number; readonly most: number } | null;
  readonly standAtRisk: number;
  readonly hoursInFirstDay: number;
  readonly remedies: readonly Remedy[];
}

/** On a date with this many harmful hours a sowing is better put off [h]. */
const HARMFUL_DAY_H = 6;
/** Even the fastest sowing is given this many days free of harm. */
const LEAST_FREE_DAYS = 2;

/** A spell in the grower's dates. */
export function spellAnswer(spell: Spell, dated: (hour: number) => PlainDate, remedies: Remedy[]): SpellAnswer {
  return {
    from: dated(spell.fromH + 0.5),
    to: dated(spell.toH - 0.5),
    days: spell.days,
    hours: spell.hours,
    peakC: spell.peakC,
    thresholdC: spell.thresholdC,
    severity: spell.severity,
    delayDays: spell.delayDays,
    standAtRisk: spell.standAtRiskPoints,
    hoursInFirstDay: spell.hoursInFirstDay,
    remedies,
  };
}

/** The first date after the sowing from which no day is harmful for as long as half the seed takes. */
export function firstFreeDate(
  days: PlaceDays,
  hourlyC: Float64Array,
  halfH: number | null,
  isHarmful: (tempC: number) => boolean,
): FreeDate | null {
  const harmfulH = new Int32Array(days.dates.length);
  for (let hour = 0; hour < hourlyC.length; hour++) {
    const day = days.dayOfHour[hour]!;
    if (day >= 0 && day < harmfulH.length && isHarmful(hourlyC[hour]!)) harmfulH[day]!++;
  }
  const needed = Math.max(LEAST_FREE_DAYS, Math.ceil((halfH ?? 0) / 24));
  let free = 0;
  for (let day = 1; day < harmfulH.length; day++) {
    free = harmfulH[day]! < HARMFUL_DAY_H ? free + 1 : 0;
    if (free > needed) {
      const from = day - needed;
      return {
        date: days.dates[from]!,
        hoursLeft: harmfulH.subarray(from, day + 1).reduce((sum, hours) => sum + hours, 0),
      };
    }
  }
  return null;
}
