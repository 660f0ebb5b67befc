import type { ForecastAnswer } from '../http/schemas/forecast.js';
import { figure } from './figure.js';
import { type Html, html, type Part } from './html.js';
import { day, daysFrom, degreesOf, plural, type Reader, shortDay, spanText } from './words.js';

type Milestone = ForecastAnswer['emergence']['half'];
export type Spell = NonNullable<ForecastAnswer['hotSpells']>[number];

const RANGE_SURE =
  'Eight times in ten the day lies in this range, as far as weather and soil are concerned. Seed, seedbed and drought come on top.';

/** What a neighbour would say of it; each number explains itself. */
export const neighbourWords = (forecast: ForecastAnswer, reader: Reader, today: string): Html =>
  html`<p class="neighbour">${[standSaid(forecast), halfSaid(forecast, reader, today), moistSaid(forecast, reader), ...spellsSaid(forecast, reader)].map((one) => html`${one} `)}</p>`;

function standSaid({ crop, sowing, stand, emergence }: ForecastAnswer): Html {
  const seeds = sowing.seeds ?? 100;
  const { from, to } = stand.seedlings ?? stand.field;
  const name = crop.replaceAll('-', ' ');
  if (to === 0)
    return html`Of ${sowing.seeds ?? 'a hundred'} seeds expect nothing${'why' in emergence.half && emergence.half.why === 'not-at-this-temperature' ? ': no seed comes up at these temperatures' : ' by the day of the count'}.`;
  const number = figure('stand', spanText({ from, to }), {
    what: `Seedlings of ${seeds} seeds of ${name} that stand when you count.`,
    from: `In a laboratory ${stand.laboratory} of a hundred would come up at these temperatures${
      stand.ifHeldAreLost < stand.laboratory
        ? `, ${stand.ifHeldAreLost} if what heat or cold holds too long is lost`
        : ''
    }. Beds have given less, and this is the share of it that they have given.`,
    sure: 'A range from poor beds to good ones. Old seed, crusted soil, slugs and drought can give fewer still.',
  });
  return html`Of ${sowing.seeds ?? 'a hundred'} seeds expect ${number} seedlings.`;
}

function halfSaid({ emergence: { half, most }, stand }: ForecastAnswer, reader: Reader, today: string): Html | null {
  if ('why' in half) {
    return half.why === 'not-at-this-temperature'
      ? null
      : html`Not even half of what comes is up by the count on ${day(stand.by, reader, today)}.`;
  }
  const { from, to } = half.range;
  const isOver = to !== null && to < today;
  const when =
    to === null
      ? html`after ${day(from, reader, today)}, perhaps not before the count`
      : from === to
        ? html`${isOver ? 'on' : 'about'} ${day(from, reader, today)}`
        : html`between ${day(from, reader, today)} and ${day(to, reader, today)}`;
  const slow = 'why' in most ? null : laterInBeds(half, reader);
  return html`Half of those ${isOver ? 'were up' : 'will be up'} ${figure('half', when, {
    what: 'The days on which half of what comes up is up.',
    from: `The crop’s response to constant temperatures, added up hour by hour at the temperature of the seed: ${half.days} days after sowing.`,
    sure: RANGE_SURE,
  })}${slow}.`;
}

/** Beds take longer than laboratories. */
function laterInBeds(half: Exclude<Milestone, { why: string }>, reader: Reader): Part {
  const { to } = half.inBeds;
  if (daysFrom(half.range.to ?? half.date, to) < 1) return null;
  return html`, in a slow bed ${figure('slow', html`as late as ${day(to, reader, half.date)}`, {
    what: 'How late half may be in a slow bed.',
    from: 'Beds have taken so many times longer than the laboratory, or what your own counts taught of this bed.',
    sure: 'Few beds are slower; a crust on the soil or a dry spell can do it.',
  })}`;
}

const moistSaid = ({ keepMoist }: ForecastAnswer, reader: Reader): Html =>
  html`Keep it moist until ${figure('moist', day(keepMoist.to, reader, keepMoist.from), {
    what: 'The day until which the seedbed must not dry out.',
    from: 'By then nine tenths of what comes is up, in a slow bed too; or else the day of the count.',
    sure: 'The whole forecast supposes moist soil: seed that dries out waits, and every date moves with it. Where watering is restricted, keep to the local rules; a board or damp cloth keeps a row moist with little water.',
  })}.`;

const spellsSaid = ({ hotSpells, coldSpells }: ForecastAnswer, reader: Reader): Html[] => [
  ...(hotSpells ?? []).map((spell, i) => spellSaid(spell, 'hot', `hot-${i}`, reader)),
  ...(coldSpells ?? []).map((spell, i) => spellSaid(spell, 'cold', `cold-${i}`, reader)),
];

function spellSaid(spell: Spell, kind: 'hot' | 'cold', id: string, reader: Reader): Html {
  const { from, to, hours, peakC, thresholdC, delayDays, standAtRisk } = spell;
  const dates =
    from === to ? html`On ${shortDay(from, reader)}` : html`From ${shortDay(from, reader)} to ${shortDay(to, reader)}`;
  const cost = [
    delayDays && delayDays.half > 0 ? `holds half back by ${plural(delayDays.half, 'day')}` : '',
    standAtRisk > 0 ? `puts ${standAtRisk} of a hundred seeds at risk` : '',
  ].filter((one) => one !== '');
  return html`${dates} ${kind === 'hot' ? 'heat' : 'cold'} of up to ${figure(id, degreesOf(peakC, reader), {
    what: `${plural(hours, 'hour')} ${kind === 'hot' ? 'above' : 'below'} ${degreesOf(thresholdC, reader)} at the seed; this is the ${kind === 'hot' ? 'hottest' : 'coldest'} of them.`,
    from: 'The temperature at the depth of the seed, worked out or measured; the limit is the crop’s own.',
    sure: 'Kinds of one crop differ by some degrees in what they bear. Seed that is held often comes later; the risk is what is lost if it does not.',
  })} ${cost.length > 0 ? cost.join(' and ') : 'may hold back the tail'}.`;
}
