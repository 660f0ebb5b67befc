import type { PlainDate } from '../basics/calendar.js';
import type { Span } from '../germination/crop.js';
import type { Spell } from '../germination/spells.js';

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

/** Something a grower can do about a spell, and what it would do for the seed. */
export interface Remedy {
  readonly action: (typeof remedyActions)[number];
  readonly text: string;
  readonly hotHoursAvoided?: Span;
  /** How much cooler the seed would lie at the day's peak [K]. */
  readonly coolerC?: Span;
}

/** The afternoon's peak at 1 cm under shade, and in soil kept wet, below the same soil moist and bare [K]: modelled,
 * no seedbed under shade cloth or after watering has been measured at that depth. Wet against dry soil was measured
 * to differ by 4 K on average at the surface. */
const SHADE_COOLER_C: Span = { from: 2, to: 6 };
const WET_COOLER_C: Span = { from: 2, to: 6 };
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
}

/** What can be done about a hot spell, most useful first; what would spare the seed no hot hour is left out. */
export function hotRemedies(spell: Spell, setting: SpellSetting): Remedy[] {
  const all: Span = { from: spell.hours, to: spell.hours };
  const remedies: Remedy[] = [
    {
      action: 'shade',
      text: `Shade the row through the hot hours: about ${inWords(SHADE_COOLER_C)} cooler at the seed in the afternoon. These degrees are worked out, not measured in a seedbed. Take the shade off once seedlings show.`,
      coolerC: SHADE_COOLER_C,
      hotHoursAvoided: hoursAvoided(spell, setting, SHADE_COOLER_C),
    },
    {
      action: 'keep-wet',
      text: `Keep the surface wet through the hot hours: wet soil is about ${inWords(WET_COOLER_C)} cooler in the afternoon than soil left to dry; the evidence is thin. Water lightly and often, and follow local rules where watering is restricted.`,
      coolerC: WET_COOLER_C,
      hotHoursAvoided: hoursAvoided(spell, setting, WET_COOLER_C),
    },
  ];
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
      text: `Waiting does not help within sight: every sowing up to ${setting.lastDate} meets such heat, as far as these temperatures tell.`,
    });
  }
  remedies.push(
    {
      action: 'start-indoors',
      text: `Start the seed in a tray in a cool room, below ${spell.thresholdC.toFixed(0)} °C by day and night, and plant out what stands transplanting.`,
      hotHoursAvoided: all,
    },
    {
      action: 'presprout-cool',
      text: 'Let the seed sprout on damp paper in a cool place, about 15 to 20 °C, until the first root tips show, then sow it in moist soil in the evening: seed on its way is not so easily stopped by heat. If the seed is treated, wear gloves and follow its label.',
      ...(spell.hoursInFirstDay > 0
        ? { hotHoursAvoided: { from: spell.hoursInFirstDay, to: spell.hoursInFirstDay } }
        : {}),
    },
  );
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
          : `Wait for warmer soil: up to ${setting.lastDate} no sowing is free of such cold, as far as these temperatures tell.`,
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

const inWords = ({ from, to }: Span): string => `${(from + to) / 2} (${from} to ${to}) °C`;

function countHot(spell: Spell, { hourlyC }: SpellSetting, beforeH: number): number {
  let hot = 0;
  for (let hour = spell.fromH; hour < beforeH && hour < hourlyC.length; hour++) {
    if (hourlyC[hour]! > spell.thresholdC) hot++;
  }
  return hot;
}

/** Hot hours fewer if the day's peak is cooler by so much and its coolest hour is left as it is. */
function hoursAvoided(spell: Spell, setting: SpellSetting, cooler: Span): Span {
  const extremes = extremesByDay(spell, setting);
  const left = (coolerC: number): number => {
    let hot = 0;
    for (let hour = spell.fromH; hour < spell.toH; hour++) {
      const { minC, maxC } = extremes.get(setting.dayOfHour[hour]!)!;
      const tempC = setting.hourlyC[hour]!;
      const share = maxC > minC ? (tempC - minC) / (maxC - minC) : 1;
      if (tempC - coolerC * share > spell.thresholdC) hot++;
    }
    return hot;
  };
  return { from: spell.hours - left(cooler.from), to: spell.hours - left(cooler.to) };
}

function extremesByDay(
  spell: Spell,
  { hourlyC, dayOfHour }: SpellSetting,
): Map<number, { minC: number; maxC: number }> {
  const extremes = new Map<number, { minC: number; maxC: number }>();
  const [firstDay, lastDay] = [dayOfHour[spell.fromH]!, dayOfHour[spell.toH - 1]!];
  hourlyC.forEach((tempC, hour) => {
    const day = dayOfHour[hour]!;
    if (day < firstDay || day > lastDay) return;
    const { minC, maxC } = extremes.get(day) ?? { minC: tempC, maxC: tempC };
    extremes.set(day, { minC: Math.min(minC, tempC), maxC: Math.max(maxC, tempC) });
  });
  return extremes;
}
