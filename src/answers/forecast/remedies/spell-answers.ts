import type { PlainDate } from '../../../basics/calendar.js';
import type { Spell } from '../../../germination/run/spells.js';
import type { PlaceDays } from '../../soil/place-days.js';
import type { FreeDate, Remedy, SpellSetting } from './remedies.js';

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
  /** The first later date whose sowing meets no such spell; null: none up to `lookedTo`. */
  readonly freeDate: FreeDate | null;
  readonly lookedTo: PlainDate;
  readonly remedies: readonly Remedy[];
}

/** On a date with this many harmful hours a sowing is better put off [h]. */
const HARMFUL_DAY_H = 6;
/** Even the fastest sowing is given this many days free of harm. */
const MIN_FREE_DAYS = 2;

/** A spell in the grower's dates. */
export function spellAnswer(
  spell: Spell,
  dated: (hour: number) => PlainDate,
  remedies: Remedy[],
  { freeDate, lastDate }: Pick<SpellSetting, 'freeDate' | 'lastDate'>,
): SpellAnswer {
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
    freeDate,
    lookedTo: lastDate,
    remedies,
  };
}

/** Criteria of a later sowing. */
export interface LaterSowing {
  /** The first day that may do, counted from the sowing's own. */
  readonly fromDay: number;
  /** Hours from midnight to the sowing. */
  readonly sowingH: number;
  /** Progress in an hour at a temperature towards the end of emergence [1/h]. */
  readonly progressAt: (tempC: number) => number;
  readonly isHarmful: (tempC: number) => boolean;
}

/** The first later date whose sowing meets no harmful day until most of it is up, as far as the temperatures reach. */
export function firstFreeDate(
  days: PlaceDays,
  hourlyC: Float64Array,
  { fromDay, sowingH, progressAt, isHarmful }: LaterSowing,
): FreeDate | null {
  const harmfulH = new Int32Array(days.dates.length);
  const startH = new Int32Array(days.dates.length).fill(-1);
  const progress = new Float64Array(hourlyC.length + 1);
  for (let hour = 0; hour < hourlyC.length; hour++) {
    progress[hour + 1] = progress[hour]! + progressAt(hourlyC[hour]!);
    const day = days.dayOfHour[hour]!;
    if (day < 0 || day >= harmfulH.length) continue;
    if (startH[day] === -1) startH[day] = hour;
    if (isHarmful(hourlyC[hour]!)) harmfulH[day]!++;
  }
  let upH = 0;
  let lastHarmful = -1;
  let seen = -1;
  for (let day = Math.max(1, fromDay); day < harmfulH.length && startH[day]! >= 0; day++) {
    const sownH = startH[day]! + sowingH;
    while (upH < hourlyC.length && progress[upH + 1]! - progress[Math.min(sownH, upH)]! < 1) upH++;
    if (upH >= hourlyC.length) return null;
    const upDay = Math.max(days.dayOfHour[upH]!, day + MIN_FREE_DAYS);
    for (; seen < upDay && seen + 1 < harmfulH.length; seen++) {
      if (harmfulH[seen + 1]! >= HARMFUL_DAY_H) lastHarmful = seen + 1;
    }
    if (upDay >= harmfulH.length) return null;
    if (lastHarmful < day) {
      return {
        date: days.dates[day]!,
        hoursLeft: harmfulH.subarray(day, upDay + 1).reduce((sum, hours) => sum + hours, 0),
      };
    }
  }
  return null;
}
