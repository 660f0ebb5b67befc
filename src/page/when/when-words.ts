import type { ForecastAnswer } from '../../contract/forecast.js';
import type { WindowAnswer } from '../../contract/windows.js';
import type { WhyClosed } from '../../plot/season-strip.js';
import { figure } from '../shell/figure.js';
import { type Html, html, type Part } from '../shell/html.js';
import { saidText } from '../shell/said-text.js';
import { tableOf } from '../shell/table.js';
import { day, daysFrom, degreesOf, listed, plural, type Reader, span, spanText } from '../shell/words.js';
import { type ClosedSpell, gapsOf, joinedSpells, lengthOf } from './when-season.js';
import { WHY_WORDS } from './why-words.js';

/** What the sentence is about. */
export interface Spoken {
  /** The crop in a sentence, as `lettuce`. */
  readonly cropName: string;
  /** As `in North bed`. */
  readonly where: string;
  readonly today: string;
  readonly reader: Reader;
}

/** So far ahead weather is forecast, if at all [d]: what comes after has been judged by past years already. */
const FORECAST_DAYS = 10;

/**
 * What a neighbour would say: the date, what it costs if weather lies ahead of it, how long one can go on, and when not.
 *
 * @param atBest The forecast for the best date, where there is one.
 */
export function whenWords(season: WindowAnswer, atBest: ForecastAnswer | null, spoken: Spoken): Html {
  const sentences = [bestSaid(season, spoken), atBest && aheadSaid(atBest, spoken), ...gapsSaid(season, spoken)];
  return html`<p class="neighbour">${sentences.map((one) => one && html`${one} `)}</p>`;
}

function bestSaid(season: WindowAnswer, { cropName, where, today, reader }: Spoken): Html {
  const { best, windows, dates } = season;
  if (!best) {
    const [first, last] = [dates[0]!.date, dates.at(-1)!.date];
    const why = becauseOf(joinedSpells(season.closed));
    return html`No date from ${day(first, reader, today)} to ${day(last, reader, today)} is good for ${cropName} ${where}: ${why}.`;
  }
  const { sureness, halfDays } = dates.find(({ date }) => date === best.date)!;
  const date = figure(
    'when-best',
    best.date === today ? html`today, ${day(best.date, reader, today)}` : day(best.date, reader, today),
    {
      what: 'The best date to sow, of all that were looked at.',
      from: saidText(best.why, reader),
      sure: surenessNote(season),
    },
  );
  const good = figure('when-good', yearsSaid(season, sureness), {
    what: 'In how many years the date was good, taken over the week around it.',
    from: saidText(goodDate(season), reader),
    sure: surenessNote(season),
  });
  const on = best.date === today ? '' : 'on ';
  if (!windows.some(({ from, to }) => from <= best.date && best.date <= to)) {
    return html`No week is sure enough for ${cropName} ${where}; the surest date is ${date}, good ${good}.`;
  }
  const half =
    halfDays &&
    html`, half of it in ${figure('when-half', plural(halfDays.p50, 'day'), {
      what: 'Days from sowing until half of what comes up is up.',
      from: `The crop’s response to temperature, run through the soil of ${pastYears(season)} from this date on.`,
      sure: `In eight years of ten it took ${spanText({ from: halfDays.p10, to: halfDays.p90 })} days. Beds can take longer than the laboratory that this comes from.`,
    })}`;
  return html`Sow ${cropName} ${where} ${on}${date}: ${good} enough of it ${season.years.count === 0 ? 'comes' : 'came'} up in time${half}.`;
}

/** As `in 14 of 15 past years`; what is rounded says so. */
export const yearsSaid = ({ years: { count } }: Pick<WindowAnswer, 'years'>, sureness: number | null): string => {
  if (sureness === null || count === 0) return 'in a usual year';
  const good = Math.round(sureness * count);
  return good === count
    ? `in all ${count} past years`
    : good === 0
      ? `in none of ${count} past years`
      : `in about ${good} of ${count} past years`;
};

const pastYears = ({ years: { count } }: WindowAnswer): string =>
  count === 0 ? 'a usual year' : `${count} past years`;

const surenessNote = ({ years: { count }, criteria }: WindowAnswer): string =>
  count === 0
    ? ONE_YEAR
    : `Each of ${plural(count, 'year')} is taken to be as likely to come again; a date is open if ${Math.round(100 * criteria.sureness)} of a hundred were good. Rain, pests and whether the ground can be worked are left out.`;

const ONE_YEAR = 'One usual year stands for all, so how often a date fails is not known.';

/** Weather that is forecast and that the seed would meet, and the date that meets none of it. */
function aheadSaid({ hotSpells, coldSpells }: ForecastAnswer, { today, reader }: Spoken): Html | null {
  const costs = [
    ...(hotSpells ?? []).map((spell) => ({ ...spell, name: 'heat' })),
    ...(coldSpells ?? []).map((spell) => ({ ...spell, name: 'cold' })),
  ]
    .filter(({ from }) => daysFrom(today, from) <= FORECAST_DAYS)
    .map((spell) => ({ ...spell, cost: costSaid(spell) }));
  const spell = costs.find(({ cost }) => cost !== null);
  if (!spell?.cost) return null;
  const { name, from, to, hours, peakC, thresholdC, cost, remedies } = spell;
  const wait = remedies.find(({ action }) => action === 'wait');
  const freeDate = spell.freeDate?.date;
  const spent = figure('when-ahead', cost.number, {
    what: `What ${name} ahead of a sowing on that date costs: ${plural(hours, 'hour')} ${name === 'heat' ? 'above' : 'below'} ${degreesOf(thresholdC, reader)} at the seed, ${name === 'heat' ? 'up' : 'down'} to ${degreesOf(peakC, reader)}.`,
    from: 'The weather that is forecast, the temperature of the soil worked out from it, and past years after that.',
    sure: 'As sure as the weather forecast. Kinds of a crop differ by some degrees in what they bear.',
  });
  return html`The ${name} of ${span(from, to, reader)} ${cost.does} ${spent}${cost.besides}${
    freeDate !== undefined &&
    html`; sown on ${figure('when-free', day(freeDate, reader, today), {
      what: `The first date from which a sowing meets no such ${name} before most of it is up.`,
      from: saidText(wait!.text, reader),
      sure: 'It is told from the weather forecast and, after that, from the middle of past years: a year can be otherwise.',
    })} it meets none`
  }.`;
}

function costSaid({
  delayDays,
  standAtRisk,
}: NonNullable<ForecastAnswer['hotSpells']>[number]): { does: string; number: string; besides: string } | null {
  const [half, most] = [delayDays?.half ?? 0, delayDays?.most ?? 0];
  const risk = `${standAtRisk} of a hundred seeds`;
  const besides = standAtRisk > 0 ? ` and puts ${risk} at risk` : '';
  if (half > 0) return { does: 'holds half back by', number: plural(half, 'day'), besides };
  if (most > 0) return { does: 'holds the last of it back by', number: plural(most, 'day'), besides };
  return standAtRisk > 0 ? { does: 'puts at risk', number: risk, besides: '' } : null;
}

/** What makes a date good, as the service says it. */
const goodDate = ({ assumptions }: WindowAnswer): string =>
  assumptions.find(({ code }) => code === 'good-date')?.text ?? '';

/** So many windows are told in words; the table has all. */
const MOST_TOLD = 3;

/** Until when one can go on, when not to sow, and why. */
function gapsSaid(season: WindowAnswer, { reader }: Spoken): Part[] {
  const { windows, dates, best } = season;
  if (windows.length === 0 || !best) return [];
  const [first, last] = [dates[0]!.date, dates.at(-1)!.date];
  const gaps = gapsOf(season);
  const on = (date: string): Html => span(date, date, reader);
  const opening = gaps.find(({ from }) => from === first);
  return [
    opening && html`Until ${on(opening.to)} ${becauseOf(opening.spells)}.`,
    ...windows.slice(0, MOST_TOLD).map(({ from, to }, i) => {
      const gap = gaps.find((one) => one.from > to);
      if (!gap)
        return i === 0
          ? html`It can be sown at any time ${from === first ? '' : html`from ${on(from)} on`} until ${on(to)}.`
          : html`Sow again from ${on(from)} on.`;
      const until = figure(`when-last-${i}`, on(to), {
        what: 'The last date of a time that is open to sowing.',
        from: `Sown later, in too many of ${pastYears(season)} ${becauseOf(gap.spells)}.`,
        sure: 'Give or take some days; where few years are known, a week.',
      });
      const start =
        i > 0
          ? html`Sow again from ${on(from)}`
          : best.date > to
            ? html`A first time is open from ${on(from)}`
            : 'Go on';
      return html`${start} until ${until}; then ${becauseOf(gap.spells)}${gap.to < last && html` until ${on(gap.to)}`}.`;
    }),
  ];
}

const WHY: Readonly<Record<WhyClosed, string>> = {
  'too-cold': 'it is too cold',
  'too-hot': 'it is too hot',
  'too-slow': 'it comes up too slowly',
  'frost-to-come': 'frost comes too soon after it',
};
const NOT_SURE = 'too many years fail, now for one reason, now for another';

/** Why a time is closed, the reason of most days first. */
export function becauseOf(spells: readonly ClosedSpell[]): string {
  const days = new Map<WhyClosed, number>();
  for (const spell of spells) days.set(spell.why, (days.get(spell.why) ?? 0) + lengthOf(spell));
  const whys = [...days].sort(([, a], [, b]) => b - a).map(([why]) => WHY[why]);
  return whys.length === 0 ? NOT_SURE : listed(whys, 'or');
}

/** How sure a date is, in a word or two. */
export function sureWord(sureness: number): string {
  if (sureness >= 0.95) return 'all but certain';
  if (sureness >= 0.9) return 'very sure';
  if (sureness >= 0.8) return 'sure enough';
  if (sureness >= 0.5) return 'a gamble';
  return sureness > 0 ? 'seldom good' : 'never good';
}

/** The times that are open, and those that are not and why. */
export function seasonTables(season: WindowAnswer, reader: Reader): Html {
  const open = season.windows.map(
    ({ from, to, sureness, halfDays, stand }) =>
      html`<tr><th scope="row">${span(from, to, reader)}</th><td>${sureness === null ? 'not known' : html`${Math.round(100 * sureness)} % or more, ${sureWord(sureness)}`}</td><td>${halfDays ? `${spanText({ from: halfDays.p10, to: halfDays.p90 })} days` : '–'}</td><td>${stand ? stand.p50 : '–'}</td></tr>`,
  );
  const closed = gapsOf(season).flatMap((gap): readonly (Omit<ClosedSpell, 'why'> & { why: WhyClosed | null })[] =>
    gap.spells.length > 0 ? gap.spells : [{ from: gap.from, to: gap.to, why: null, isMixed: false }],
  );
  return html`<section><h2>Open and closed</h2>
    ${open.length > 0 && tableOf('Open to sowing', ['Open', 'How sure', 'Half up in', 'Of 100 come'], open)}
    ${closed.length > 0 && html`<ul class="closed">${closed.map(({ from, to, why, isMixed }) => html`<li>${span(from, to, reader)}: ${why === null ? NOT_SURE : `${isMixed ? 'mostly ' : ''}${WHY_WORDS[why]}`}</li>`)}</ul>`}
    <details><summary>What these numbers are</summary><ul>
      <li><b>How sure</b>: ${surenessNote(season)}</li>
      <li><b>Half up</b>: days from sowing until half of what comes up is up, in eight years of ten; the middle year where one number stands. They come from the crop’s response to temperature, run through the soil of ${pastYears(season)}. Beds can take longer.</li>
      <li><b>Of 100 come</b>: seedlings of a hundred seeds in a laboratory at these temperatures; from what comes if the seed that heat or cold holds too long is lost to what comes if it only waits. Beds give fewer.</li>
      <li><b>Good years</b>: ${saidText(goodDate(season), reader)}</li></ul></details></section>`;
}
