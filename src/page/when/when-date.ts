import type { WindowAnswer } from '../../contract/windows.js';
import { type Html, html } from '../shell/html.js';
import { tableOf } from '../shell/table.js';
import { day, numberText, type PageReader, spanText } from '../shell/words.js';
import { closedAt } from './when-season.js';
import { sureWord, yearsSaid } from './when-words.js';

type Quantiles = WindowAnswer['windows'][number]['halfDays'];

/** A named season, for comparison. */
export interface Named {
  readonly name: string;
  readonly season: WindowAnswer;
}

/** Past years' answer about one date, all of it known beforehand. */
export function dateWords(season: WindowAnswer, date: string, reader: PageReader, today: string): Html {
  const { say, tell } = reader;
  const one = season.dates.find((other) => other.date === date);
  const heading = html`<h3>${tell('page.when.sown-on', { date: day(date, reader, today) })}</h3>`;
  if (!one) {
    const [first, last] = [season.dates[0]!.date, season.dates.at(-1)!.date];
    const dates = { from: day(first, reader, today), to: day(last, reader, today) };
    return html`${heading}<p>${tell('page.when.looked-at', dates)}</p>`;
  }
  const closed = closedAt(season, date);
  const state = say('page.when.state', {
    state: closed === null ? 'open' : closed.why === null ? 'unsure' : 'closed',
    why: closed?.why ? say(`page.when.closed.${closed.why}`) : '',
    years: yearsSaid(season, one.sureness, reader),
    hasWord: one.sureness === null ? 'no' : 'yes',
    word: one.sureness === null ? '' : sureWord(one.sureness, reader),
    stand: standSaid(one, reader),
  });
  const row = (name: 'first' | 'half' | 'most', days: Quantiles) =>
    html`<tr><th scope="row">${say(`page.sowing.${name}`)}</th><td>${days ? say('page.when.p50-days', { count: days.p50 }) : say('page.when.never')}</td><td>${days && spanText({ from: days.p10, to: days.p90 }, reader)}</td></tr>`;
  const columns = [say('page.when.up'), say('page.when.middle-year'), say('page.when.eight-years')];
  const rows = [row('first', one.firstDays), row('half', one.halfDays), row('most', one.mostDays)];
  return html`${heading}
    <p class="state">${state}</p>
    ${tableOf(say('page.when.how-soon'), columns, rows)}`;
}

function standSaid({ stand, ifHeldAreLost }: WindowAnswer['dates'][number], { say }: PageReader): string {
  if (!stand) return say('page.when.none-up');
  const held = ifHeldAreLost && ifHeldAreLost.p50 < stand.p50 ? ifHeldAreLost.p50 : null;
  return say('page.when.stand', { stand: stand.p50, hasHeld: held === null ? 'no' : 'yes', held: held ?? 0 });
}

/** Several seasons at one date. */
export function dateTable(what: string, all: readonly Named[], date: string, reader: PageReader, today: string): Html {
  const { say, tell } = reader;
  const rows = all.map(({ name, season }) => {
    const one = season.dates.find((other) => other.date === date);
    const heading = html`<th scope="row">${name}</th>`;
    if (!one) return html`<tr>${heading}<td colspan="4">${say('page.when.not-looked-at')}</td></tr>`;
    const { sureness, halfDays, mostDays, stand, ifHeldAreLost } = one;
    const come = stand
      ? spanText({ from: Math.min(ifHeldAreLost?.p50 ?? stand.p50, stand.p50), to: stand.p50 }, reader)
      : say('page.when.none');
    const { count } = season.years;
    const good = sureness === null ? '–' : say('page.when.years-of', { good: Math.round(sureness * count), count });
    const days = (quantiles: Quantiles): string => (quantiles ? numberText(quantiles.p50, reader) : '–');
    return html`<tr>${heading}<td>${days(halfDays)}</td><td>${days(mostDays)}</td><td>${come}</td><td>${good}</td></tr>`;
  });
  const columns = [
    what,
    say('page.when.half-days'),
    say('page.when.most-days'),
    say('page.when.of-hundred'),
    say('page.when.good-years'),
  ];
  return html`<h3>${tell('page.when.sown-on', { date: day(date, reader, today) })}</h3>${tableOf(say('page.when.one-date', { what }), columns, rows)}`;
}

/** The difference between two seasons at one date; null if small. */
export function dateChanged([asIs, other]: readonly Named[], date: string, { say }: PageReader): Html | null {
  const [before, after] = [asIs, other].map((one) => one?.season.dates.find((each) => each.date === date));
  if (!other || !before?.mostDays || !after?.mostDays) return null;
  const came = before.ifHeldAreLost && after.ifHeldAreLost ? after.ifHeldAreLost.p50 - before.ifHeldAreLost.p50 : 0;
  const isSooner = Math.abs(after.mostDays.p50 - before.mostDays.p50) >= MIN_SOONER_DAYS;
  if (!isSooner && came === 0) return null;
  return html`<p>${say('page.when.changed', {
    name: other.name,
    sooner: isSooner ? 'yes' : 'no',
    after: after.mostDays.p50,
    before: before.mostDays.p50,
    both: isSooner && came !== 0 ? 'yes' : 'no',
    come: came > 0 ? 'more' : came < 0 ? 'fewer' : 'same',
    count: Math.abs(came),
  })}</p>`;
}

/** A smaller difference is within the uncertainty of the soil [d]. */
const MIN_SOONER_DAYS = 0.5;
