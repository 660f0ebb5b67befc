import type { PlainDate } from '../../../basics/calendar.js';
import type { Span } from '../../../germination/crop.js';
import type { Spell } from '../../../germination/run/spells.js';
import type { RemedyText } from './remedy-facts.js';

export const remedyActions = [
  'shade',
  'keep-wet',
  'cover',
  'sow-in-evening',
  'wait',
  'start-indoors',
  'presprout-cool',
  'presprout-warm',
] as const;

const bedActions = ['shade', 'keep-wet', 'cover'] as const;

/** True if it can still be done once the seed is sown. */
export const helpsSownSeed = ({ action }: Pick<Remedy, 'action'>): boolean =>
  (bedActions as readonly string[]).includes(action);

/** Something a grower can do about a spell, and what it would do for the seed. */
export interface Remedy {
  readonly action: (typeof remedyActions)[number];
  readonly text: RemedyText;
  readonly hotHoursAvoided?: Span;
  /** Cooling of the seed at the day's peak [K]. */
  readonly coolerC?: Span;
}

/** Cooling of the seed at the day's peak, in whole degrees because more would promise too much [K]. */
export interface Cooler {
  readonly coolerK: number;
  readonly coolerFromK: number;
  readonly coolerToK: number;
}

/** A change to a bed against heat, and the warming of the seed by it, hour by hour since wetting [K]. */
export interface BedChange {
  readonly action: (typeof bedActions)[number];
  readonly textOf: (cooler: Cooler) => RemedyText;
  readonly warmerK: Float64Array;
}

/** The effect of a change is worked out, not measured, so its range is from half of it to half as much again. */
const MIN_EFFECT = 0.5;
const MAX_EFFECT = 1.5;
/** The worst of the day's heat is over by then. */
export const EVENING = '18:00';
/** Temperature of damp paper on which seed sprouts before it is sown into heat, and into cold [°C]: common practice, no source. */
const COOL_PAPER_C: Span = { from: 15, to: 20 };
const WARM_PAPER_C: Span = { from: 20, to: 25 };
/** Mean warming of soil under fleece or perforated film [K], and its depth [cm]. */
const UNDER_FLEECE_K: Span = { from: 1, to: 2.5 };
const UNDER_FLEECE_CM = 10;

/** A date from which no day is harmful for as long as most of the seed takes, and the odd harmful hours left in that time. */
export interface FreeDate {
  readonly date: PlainDate;
  readonly hoursLeft: number;
}

/** The sowing as the remedies need it. Hours since wetting. */
export interface SpellSetting {
  readonly hourlyC: Float64Array;
  readonly dayOfHour: Int32Array;
  readonly sowingTime: string;
  /** Hours from wetting to 18:00 of the same date; below 0 where sown later, or into dry soil. */
  readonly eveningH: number;
  /** The first later date that meets no such spell, as far as the temperatures reach; null where none is in sight. */
  readonly freeDate: FreeDate | null;
  readonly lastDate: PlainDate;
  /** True if the crop can be raised in trays and planted out. */
  readonly bearsMoving: boolean;
  /** Possible changes to the bed. */
  readonly bedChanges: readonly BedChange[];
}

/** Remedies against a hot spell, most useful first; one that would spare the seed no hot hour is left out. */
export function hotRemedies(spell: Spell, setting: SpellSetting): Remedy[] {
  const all: Span = { from: spell.hours, to: spell.hours };
  const remedies: Remedy[] = setting.bedChanges.map((change) => {
    const coolerC = coolerAtPeaks(spell, setting, change);
    return {
      action: change.action,
      text: change.textOf(inWholeDegrees(coolerC)),
      coolerC,
      hotHoursAvoided: hoursAvoided(spell, setting, change),
    };
  });
  const beforeEvening = setting.eveningH > 0 ? countHot(spell, setting, Math.min(setting.eveningH, spell.toH)) : 0;
  if (beforeEvening > 0) {
    remedies.push({
      action: 'sow-in-evening',
      text: { code: 'action.sow-in-evening', params: { at: EVENING, insteadOf: setting.sowingTime } },
      hotHoursAvoided: { from: beforeEvening, to: beforeEvening },
    });
  }
  const fewer = setting.freeDate && Math.max(0, spell.hours - setting.freeDate.hoursLeft);
  remedies.push({
    action: 'wait',
    text: waitText('heat', spell, setting),
    ...(fewer === null ? {} : { hotHoursAvoided: { from: fewer, to: fewer } }),
  });
  if (setting.bearsMoving) {
    remedies.push({
      action: 'start-indoors',
      text: indoorsText('heat', spell),
      hotHoursAvoided: all,
    });
  }
  remedies.push({
    action: 'presprout-cool',
    text: { code: 'action.presprout-cool', params: { fromC: COOL_PAPER_C.from, toC: COOL_PAPER_C.to } },
    ...(spell.hoursInFirstDay > 0
      ? { hotHoursAvoided: { from: spell.hoursInFirstDay, to: spell.hoursInFirstDay } }
      : {}),
  });
  return remedies.filter(({ hotHoursAvoided }) => hotHoursAvoided?.to !== 0);
}

/** Remedies against cold that harms the wet seed. */
export function coldRemedies(spell: Spell, setting: SpellSetting): Remedy[] {
  return [
    { action: 'wait', text: waitText('cold', spell, setting) },
    {
      action: 'cover',
      text: {
        code: 'action.cover',
        params: {
          about: 'cold',
          cover: 'fleece-or-film',
          changeK: (UNDER_FLEECE_K.from + UNDER_FLEECE_K.to) / 2,
          changeFromK: UNDER_FLEECE_K.from,
          changeToK: UNDER_FLEECE_K.to,
          depthCm: UNDER_FLEECE_CM,
        },
      },
    },
    { action: 'start-indoors', text: indoorsText('cold', spell) },
    {
      action: 'presprout-warm',
      text: {
        code: 'action.presprout-warm',
        params: { fromC: WARM_PAPER_C.from, toC: WARM_PAPER_C.to, thresholdC: spell.thresholdC },
      },
    },
  ];
}

const waitText = (about: 'heat' | 'cold', { thresholdC }: Spell, { freeDate, lastDate }: SpellSetting): RemedyText => ({
  code: 'action.wait',
  params: {
    about,
    freeDate: freeDate?.date ?? null,
    lookedToDate: lastDate,
    thresholdC: tenth(thresholdC),
    hoursLeft: freeDate?.hoursLeft ?? 0,
  },
});

const indoorsText = (about: 'heat' | 'cold', { thresholdC }: Spell): RemedyText => ({
  code: 'action.start-indoors',
  params: { about, thresholdC: Math.round(thresholdC) },
});

const tenth = (value: number): number => Math.round(10 * value) / 10;

const inWholeDegrees = ({ from, to }: Span): Cooler => ({
  coolerK: Math.round((from + to) / 2),
  coolerFromK: Math.round(from),
  coolerToK: Math.round(to),
});

function countHot(spell: Spell, { hourlyC }: SpellSetting, beforeH: number): number {
  let hot = 0;
  for (let hour = spell.fromH; hour < beforeH && hour < hourlyC.length; hour++) {
    if (hourlyC[hour]! > spell.thresholdC) hot++;
  }
  return hot;
}

/** Hot hours fewer in a bed so changed. */
function hoursAvoided(spell: Spell, { hourlyC }: SpellSetting, { warmerK }: BedChange): Span {
  const left = (ofIt: number): number => {
    let hot = 0;
    for (let hour = spell.fromH; hour < spell.toH; hour++) {
      if (hourlyC[hour]! + ofIt * Math.min(0, warmerK[hour]!) > spell.thresholdC) hot++;
    }
    return hot;
  };
  return { from: spell.hours - left(MIN_EFFECT), to: spell.hours - left(MAX_EFFECT) };
}

/** Mean cooling of the seed at the hottest hour of each of the spell's days. */
function coolerAtPeaks(spell: Spell, { hourlyC, dayOfHour }: SpellSetting, { warmerK }: BedChange): Span {
  const peaks = new Map<number, number>();
  for (let hour = spell.fromH; hour < spell.toH; hour++) {
    const peak = peaks.get(dayOfHour[hour]!);
    if (peak === undefined || hourlyC[hour]! > hourlyC[peak]!) peaks.set(dayOfHour[hour]!, hour);
  }
  const hours = [...peaks.values()];
  const coolerK = hours.reduce((sum, hour) => sum - Math.min(0, warmerK[hour]!), 0) / hours.length;
  return { from: MIN_EFFECT * coolerK, to: MAX_EFFECT * coolerK };
}
