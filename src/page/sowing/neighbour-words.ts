import type { ForecastAnswer } from '../../contract/forecast.js';
import { explainedNumber } from '../shell/explained-number.js';
import { type Html, html } from '../shell/html.js';
import { day, daysFrom, degreesOf, numberText, type PageReader, span, spanText } from '../shell/words.js';

type Milestone = Exclude<ForecastAnswer['emergence']['half'], { why: string }>;
export type ToldSpell = NonNullable<ForecastAnswer['hotSpells']>[number];

/**
 * The forecast as a neighbour would put it, in explained numbers.
 *
 * @param cropName The crop within a sentence, as `lettuce`.
 */
export const neighbourWords = (forecast: ForecastAnswer, cropName: string, reader: PageReader, today: string): Html =>
  html`<p class="neighbour">${[standSaid(forecast, cropName, reader), halfSaid(forecast, reader, today), moistSaid(forecast, reader), ...spellsSaid(forecast, reader)].map((one) => html`${one} `)}</p>`;

/** The number of seeds in the sentence: a hundred if none are given. */
export const seedsSaid = (seeds: number | null | undefined, reader: PageReader): string =>
  seeds == null ? reader.say('page.sowing.hundred') : numberText(seeds, reader);

/** Plural value for nothing to report. */
const NOTHING = -1;

function standSaid({ sowing, stand, emergence }: ForecastAnswer, crop: string, reader: PageReader): Html {
  const seeds = seedsSaid(sowing.seeds, reader);
  const { from, to } = stand.seedlings ?? stand.field;
  if (to === 0) {
    const isCold = 'why' in emergence.half && emergence.half.why === 'not-at-this-temperature';
    return reader.tell('page.sowing.nothing', { seeds, why: isCold ? 'temperature' : 'count' });
  }
  const seedlings = explainedNumber('stand', spanText({ from, to }, reader), reader, 'page.sowing.stand', {
    crop,
    seeds,
    laboratory: stand.laboratory,
    held: stand.ifHeldAreLost < stand.laboratory ? stand.ifHeldAreLost : NOTHING,
  });
  return reader.tell('page.sowing.expect', { seeds, seedlings });
}

function halfSaid({ emergence: { half }, stand }: ForecastAnswer, reader: PageReader, today: string): Html | null {
  if ('why' in half) {
    return half.why === 'not-at-this-temperature'
      ? null
      : reader.tell('page.sowing.not-half', { date: day(stand.by, reader) });
  }
  const { from, to } = half.range;
  const on = (date: string): Html => span(date, date, reader);
  const when = to === null ? reader.tell('page.sowing.after', { date: on(from) }) : span(from, to, reader);
  const slow = slowDate(half);
  return reader.tell('page.sowing.half-up', {
    isOver: to !== null && to < today ? 'yes' : 'no',
    isAfter: to === null ? 'yes' : 'no',
    when: explainedNumber('half', when, reader, 'page.sowing.half', { days: half.days }),
    hasSlow: slow === null ? 'no' : 'yes',
    slow: slow !== null && explainedNumber('slow', on(slow), reader, 'page.sowing.slow'),
  });
}

/** The date in a slow bed; null if that is not a day later. */
const slowDate = ({ range, date, inBeds }: Milestone): string | null =>
  daysFrom(range.to ?? date, inBeds.to) < 1 ? null : inBeds.to;

function moistSaid({ keepMoist, emergence: { half, most }, stand }: ForecastAnswer, reader: PageReader): Html {
  const isBefore = !('why' in most) && keepMoist.to < stand.by;
  const mayHalfComeLater = 'why' in half || half.range.to === null || half.range.to > keepMoist.to;
  return reader.tell('page.sowing.moist', {
    date: explainedNumber('moist', span(keepMoist.to, keepMoist.to, reader), reader, 'page.sowing.keep-moist', {
      isBefore: isBefore ? 'yes' : 'no',
    }),
    isLate: isBefore && !mayHalfComeLater ? 'yes' : 'no',
  });
}

const spellsSaid = ({ hotSpells, coldSpells }: ForecastAnswer, reader: PageReader): Html[] => [
  ...(hotSpells ?? []).map((spell, i) => spellSaid(spell, 'hot', `hot-${i}`, reader)),
  ...(coldSpells ?? []).map((spell, i) => spellSaid(spell, 'cold', `cold-${i}`, reader)),
];

function spellSaid(spell: ToldSpell, kind: 'hot' | 'cold', id: string, reader: PageReader): Html {
  const { from, to, days, hours, peakC, thresholdC, delayDays, standAtRisk } = spell;
  return reader.tell('page.sowing.spell', {
    count: explainedNumber(id, reader.say('page.sowing.spell-days', { kind, days }), reader, 'page.sowing.held', {
      kind,
      hours,
      threshold: degreesOf(thresholdC, reader),
      peak: degreesOf(peakC, reader),
    }),
    dates: span(from, to, reader),
    later: Math.max(0, delayDays?.half ?? 0),
    atRisk: standAtRisk,
  });
}
