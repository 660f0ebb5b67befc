import type { PlainDate } from '../../basics/calendar.js';
import type { Span } from '../../germination/crop.js';
import type { Spell } from '../../germination/run/spells.js';

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

/** Can it still be done once the seed is sown? */
export const helpsSownSeed = ({ action }: Pick<Remedy, 'action'>): boolean =>
  (bedActions as readonly string[]).includes(action);

/** Something a grower can do about a spell, and what it would do for the seed. */
export interface Remedy {
  readonly action: (typeof remedyActions)[number];
  readonly text: string;
  readonly hotHoursAvoided?: Span;
  /** How much cooler the seed would lie at the day's peak [K]. */
  readonly coolerC?: Span;
}

/** What is done to a bed against heat, and how much warmer the seed then lies, hour by hour since wetting [K]. */
export interface BedChange {
  readonly action: (typeof bedActions)[number];
  readonly text: (cooler: string) => string;
  readonly warmerK: Float64Array;
}

/** What a change of the bed is worth has been worked out, not measured: it is told from half of it to half as much again. */
const LEAST_OF_IT = 0.5;
const MOST_OF_IT = 1.5;
/** When the worst of the day is over. */
const EVENING = '18:00';

/** A date from which no day is harmful for as long as most of the seed takes, and the odd harmful hours left in that time. */
export interface FreeDate {
  readonly date: PlainDate;
  readonly hoursLeft: number;
}

/** What the remedies need to know of the sowing. Hours since wetting. */
export interface SpellSetting {
  readonly hourlyC: Float64Array;
  readonly dayOfHour: Int32Array;
  readonly sowingTime: string;
  /** Hours from wetting to 18:00 of the same date; below 0 where sown later, or into dry soil. */
  readonly eveningH: number;
  /** The first later date that meets no such spell, as far as the temperatures reach; null where none is in sight. */
  readonly freeDate: FreeDate | null;
  readonly lastDate: PlainDate;
  /** Can the crop be raised in trays and planted out? */
  readonly bearsMoving: boolean;
  /** What can be done to the bed. */
  readonly bedChanges: readonly BedChange[];
}

/** What can be done about a hot spell, most useful first; what would spare the seed no hot hour is left out. */
export function hotRemedies(spell: Spell, setting: SpellSetting): Remedy[] {
  const all: Span = { from: spell.hours, to: spell.hours };
  const remedies: Remedy[] = setting.bedChanges.map((change) => {
    const coolerC = coolerAtPeaks(spell, setting, change);
    return {
      action: change.action,
      text: change.text(inWords(coolerC)),
      coolerC,
      hotHoursAvoided: hoursAvoided(spell, setting, change),
    };
  });
  const beforeEvening = setting.eveningH > 0 ? countHot(spell, setting, Math.min(setting.eveningH, spell.toH)) : 0;
  if (beforeEvening > 0) {
    remedies.push({
      action: 'sow-in-evening',
      text: `Sow at ${EVENING} rather than at ${setting.sowingTime}, with cool water: the seed's first hours, when heat stops it most easily, fall in the night.`,
      hotHoursAvoided: { from: beforeEvening, to: beforeEvening },
    });
  }
  if (setting.freeDate !== null) {
    const fewer = Math.max(0, spell.hours - setting.freeDate.hoursLeft);
    remedies.push({
      action: 'wait',
      text: `Wait: a sowing on ${setting.freeDate.date} meets no such heat before most of it is up, as far as these temperatures tell.`,
      hotHoursAvoided: { from: fewer, to: fewer },
    });
  } else {
    remedies.push({
      action: 'wait',
      text: `Whether waiting helps is not in sight: these temperatures are looked at up to ${setting.lastDate}, and by then no later sowing is seen to be up and to have met no such heat.`,
    });
  }
  if (setting.bearsMoving) {
    remedies.push({
      action: 'start-indoors',
      text: `Start the seed in a tray in a cool room, below ${spell.thresholdC.toFixed(0)} °C by day and night, and plant out what stands transplanting.`,
      hotHoursAvoided: all,
    });
  }
  remedies.push({
    action: 'presprout-cool',
    text: 'Let the seed sprout on damp paper in a cool place, about 15 to 20 °C, until the first root tips show, then sow it in moist soil in the evening: seed on its way is not so easily stopped by heat. If the seed is treated, wear gloves and follow its label.',
    ...(spell.hoursInFirstDay > 0
      ? { hotHoursAvoided: { from: spell.hoursInFirstDay, to: spell.hoursInFirstDay } }
      : {}),
  });
  return remedies.filter(({ hotHoursAvoided }) => hotHoursAvoided?.to !== 0);
}

/** What can be done about cold that harms the wet seed. */
export function coldRemedies(spell: Spell, setting: SpellSetting): Remedy[] {
  return [
    {
      action: 'wait',
      text:
        setting.freeDate !== null
          ? `Wait: a sowing on ${setting.freeDate.date} lies in soil above ${spell.thresholdC} °C until most of it is up, as far as these temperatures tell.`
          : `Wait for warmer soil: these temperatures are looked at up to ${setting.lastDate}, and by then no later sowing is seen to be up and to have met no such cold.`,
    },
    {
      action: 'cover',
      text: 'Warm the bed before sowing: fleece or a perforated film over it has kept the soil at 10 cm 1 to 2.5 °C warmer on average; it is no help on clear, still frosty nights.',
    },
    {
      action: 'start-indoors',
      text: 'Start the seed in pots indoors in the warm and plant out when the soil has warmed; keep any heater to its maker’s instructions.',
    },
    {
      action: 'presprout-warm',
      text: 'Let the seed sprout on damp paper in the warm, about 20 to 25 °C, and sow it in soil above 10 °C: the first hours of drinking are when cold hurts most. If the seed is treated, wear gloves and follow its label.',
    },
  ];
}

/** Whole degrees: more would promise too much. */
const inWords = ({ from, to }: Span): string =>
  `${Math.round((from + to) / 2)} (${Math.round(from)} to ${Math.round(to)}) °C`;

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
  return { from: spell.hours - left(LEAST_OF_IT), to: spell.hours - left(MOST_OF_IT) };
}

/** How much cooler the seed would lie at the hottest hour of each of the spell's days, on average. */
function coolerAtPeaks(spell: Spell, { hourlyC, dayOfHour }: SpellSetting, { warmerK }: BedChange): Span {
  const peaks = new Map<number, number>();
  for (let hour = spell.fromH; hour < spell.toH; hour++) {
    const peak = peaks.get(dayOfHour[hour]!);
    if (peak === undefined || hourlyC[hour]! > hourlyC[peak]!) peaks.set(dayOfHour[hour]!, hour);
  }
  const hours = [...peaks.values()];
  const coolerK = hours.reduce((sum, hour) => sum - Math.min(0, warmerK[hour]!), 0) / hours.length;
  return { from: LEAST_OF_IT * coolerK, to: MOST_OF_IT * coolerK };
}
