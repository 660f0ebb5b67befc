import type { ForecastAnswer } from '../../contract/forecast.js';
import { figure } from '../shell/figure.js';
import { type Html, html, type Part } from '../shell/html.js';
import { day, daysFrom, degreesOf, plural, type Reader, span, spanText } from '../shell/words.js';

type Milestone = Exclude<ForecastAnswer['emergence']['half'], { why: string }>;
export type Spell = NonNullable<ForecastAnswer['hotSpells']>[number];

/** What a neighbour would say of it; each number explains itself. */
export const neighbourWords = (forecast: ForecastAnswer, cropName: string, reader: Reader, today: string): Html =>
  html`<p class="neighbour">${[standSaid(forecast, cropName.toLowerCase()), halfSaid(forecast, reader, today), moistSaid(forecast, reader), ...spellsSaid(forecast, reader)].map((one) => html`${one} `)}</p>`;

function standSaid({ sowing, stand, emergence }: ForecastAnswer, cropName: string): Html {
  const seeds = sowing.seeds ?? 'a hundred';
  const { from, to } = stand.seedlings ?? stand.field;
  if (to === 0) {
    const why = 'why' in emergence.half && emergence.half.why === 'not-at-this-temperature';
    return html`Of ${seeds} seeds expect nothing${why ? ': none comes up at these temperatures' : ' by the day of the count'}.`;
  }
  const held =
    stand.ifHeldAreLost < stand.laboratory
      ? `, ${stand.ifHeldAreLost} if the seed that heat or cold holds too long is lost`
      : '';
  return html`Of ${seeds} seeds expect ${figure('stand', spanText({ from, to }), {
    what: `How many seedlings of ${cropName} stand, of ${seeds} seeds, when you count.`,
    from: `In a laboratory ${stand.laboratory} of a hundred would come up at these temperatures${held}. Beds give less: this is the share of it that beds have given.`,
    sure: 'From a poor bed to a good one. Old seed, crusted soil, slugs and drought can leave fewer still.',
  })} seedlings.`;
}

function halfSaid({ emergence: { half }, stand }: ForecastAnswer, reader: Reader, today: string): Html | null {
  if ('why' in half) {
    if (half.why === 'not-at-this-temperature') return null;
    return html`Not even half of what comes is up by the count on ${day(stand.by, reader, today)}.`;
  }
  const { from, to } = half.range;
  const isOver = to !== null && to < today;
  const when = to === null ? html`after ${span(from, from, reader)}` : span(from, to, reader);
  return html`Half of those ${isOver ? 'were up' : 'are up'} ${figure('half', when, {
    what: 'The days on which half of what comes up is up.',
    from: `The crop’s response to constant temperatures, added up hour by hour at the temperature of the seed: ${plural(half.days, 'day')} after sowing.`,
    sure: 'Eight times in ten the day lies in this range, as far as weather and soil go. Seed, seedbed and drought come on top.',
  })}${laterInBeds(half, reader)}.`;
}

/** Beds take longer than laboratories. */
function laterInBeds({ range, date, inBeds }: Milestone, reader: Reader): Part {
  if (daysFrom(range.to ?? date, inBeds.to) < 1) return null;
  return html`, in a slow bed as late as ${figure('slow', span(inBeds.to, inBeds.to, reader), {
    what: 'How late half may be in a slow bed.',
    from: 'How many times longer than a laboratory beds have taken; or, where you counted in this bed, what those counts taught.',
    sure: 'Few beds are slower; a crust on the soil or a dry spell can do it.',
  })}`;
}

function moistSaid({ keepMoist, emergence: { half, most }, stand }: ForecastAnswer, reader: Reader): Html {
  const isLateAfter = !('why' in most) && keepMoist.to < stand.by;
  const mayHalfComeLater = 'why' in half || half.range.to === null || half.range.to > keepMoist.to;
  return html`Keep it moist until ${figure('moist', span(keepMoist.to, keepMoist.to, reader), {
    what: 'The day until which the seedbed must not dry out.',
    from: isLateAfter
      ? 'By then nine tenths of what comes is up, in a slow bed too.'
      : 'It is the day of the count: what is not up by then is not waited for.',
    sure: 'The whole forecast supposes moist soil: seed that dries out waits, and every date moves with it. Where watering is restricted, keep to the local rules.',
  })}${isLateAfter && !mayHalfComeLater && '; a row still bare after that is late'}.`;
}

const spellsSaid = ({ hotSpells, coldSpells }: ForecastAnswer, reader: Reader): Html[] => [
  ...(hotSpells ?? []).map((spell, i) => spellSaid(spell, 'hot', `hot-${i}`, reader)),
  ...(coldSpells ?? []).map((spell, i) => spellSaid(spell, 'cold', `cold-${i}`, reader)),
];

function spellSaid(spell: Spell, kind: 'hot' | 'cold', id: string, reader: Reader): Html {
  const { from, to, days, hours, peakC, thresholdC, delayDays, standAtRisk } = spell;
  const cost = [
    delayDays && delayDays.half > 0 ? `half comes ${plural(delayDays.half, 'day')} later for that` : '',
    standAtRisk > 0
      ? `${standAtRisk} of a hundred seeds ${standAtRisk === 1 ? 'is' : 'are'} at risk`
      : 'hardly any seed is at risk',
  ].filter((one) => one !== '');
  const count = figure(id, plural(days, `${kind} day`), {
    what: `Days on which the seed lies ${kind === 'hot' ? 'above' : 'below'} ${degreesOf(thresholdC, reader)} for hours, ${plural(hours, 'hour')} in all; ${kind === 'hot' ? 'up' : 'down'} to ${degreesOf(peakC, reader)}.`,
    from: 'The temperature at the depth of the seed, measured, worked out or expected. The limit is the crop’s own.',
    sure: 'Kinds of a crop differ by some degrees in what they bear. Held seed often comes later; at risk is what is lost if it does not.',
  });
  return html`${count}, ${span(from, to, reader)}: ${cost.join(', and ')}.`;
}
