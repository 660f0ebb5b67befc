import type { WindowAnswer } from '../../contract/windows.js';
import { type Html, html } from '../shell/html.js';
import { tableOf } from '../shell/table.js';
import { day, type Reader, spanText } from '../shell/words.js';
import { closedAt } from './when-season.js';
import { sureWord, yearsSaid } from './when-words.js';
import { WHY_WORDS } from './why-words.js';

type Quantiles = WindowAnswer['windows'][number]['halfDays'];

/** A season under a name, beside others. */
export interface Named {
  readonly name: string;
  readonly season: WindowAnswer;
}

/** What past years say of one date, all of it known beforehand. */
export function dateWords(season: WindowAnswer, date: string, reader: Reader, today: string): Html {
  const one = season.dates.find((other) => other.date === date);
  const heading = html`<h3>Sown on ${day(date, reader, today)}</h3>`;
  if (!one) {
    const [first, last] = [season.dates[0]!.date, season.dates.at(-1)!.date];
    return html`${heading}<p>Past years are looked at for dates from ${day(first, reader, today)} to ${day(last, reader, today)}.</p>`;
  }
  const closed = closedAt(season, date);
  const state = closed === null ? 'Open' : closed.why === null ? 'Not sure enough' : `Closed, ${WHY_WORDS[closed.why]}`;
  const sure = one.sureness === null ? '' : `, ${sureWord(one.sureness)}`;
  const row = (name: string, days: Quantiles) =>
    html`<tr><th scope="row">${name}</th><td>${days ? `${days.p50} days` : 'never'}</td><td>${days && spanText({ from: days.p10, to: days.p90 })}</td></tr>`;
  return html`${heading}
    <p class="state">${state}: good ${yearsSaid(season, one.sureness)}${sure}. ${standSaid(one)}</p>
    ${tableOf('How soon it is up', ['Up', 'In the middle year', 'Eight years of ten'], [row('The first tenth', one.firstDays), row('Half', one.halfDays), row('Nine tenths', one.mostDays)])}`;
}

function standSaid({ stand, ifHeldAreLost }: WindowAnswer['dates'][number]): string {
  if (!stand) return 'None comes up.';
  const held =
    ifHeldAreLost && ifHeldAreLost.p50 < stand.p50
      ? `, ${ifHeldAreLost.p50} if the seed that heat or cold holds too long is lost`
      : '';
  return `Of a hundred seeds ${stand.p50} come up in a laboratory${held}; a bed gives fewer.`;
}

/** Several seasons at one date. */
export function dateTable(what: string, all: readonly Named[], date: string, reader: Reader, today: string): Html {
  const rows = all.map(({ name, season }) => {
    const one = season.dates.find((other) => other.date === date);
    if (!one) return html`<tr><th scope="row">${name}</th><td colspan="4">not looked at</td></tr>`;
    const { sureness, halfDays, mostDays, stand, ifHeldAreLost } = one;
    const come = stand
      ? spanText({ from: Math.min(ifHeldAreLost?.p50 ?? stand.p50, stand.p50), to: stand.p50 })
      : 'none';
    const { count } = season.years;
    const good = sureness === null ? '–' : `${Math.round(sureness * count)}\u00a0of\u00a0${count}`;
    return html`<tr><th scope="row">${name}</th><td>${halfDays?.p50 ?? '–'}</td><td>${mostDays?.p50 ?? '–'}</td><td>${come}</td><td>${good}</td></tr>`;
  });
  return html`<h3>Sown on ${day(date, reader, today)}</h3>${tableOf(`${what}, sown on one date`, [what, 'Half up (days)', 'Nine tenths (days)', 'Of 100 come', 'Good years'], rows)}`;
}

/** What the second of two seasons changes at one date; null where that is little. */
export function dateChanged([asIs, other]: readonly Named[], date: string): Html | null {
  const [before, after] = [asIs, other].map((one) => one?.season.dates.find((each) => each.date === date));
  if (!other || !before?.mostDays || !after?.mostDays) return null;
  const came = before.ifHeldAreLost && after.ifHeldAreLost ? after.ifHeldAreLost.p50 - before.ifHeldAreLost.p50 : 0;
  const sooner = Math.abs(after.mostDays.p50 - before.mostDays.p50) >= LEAST_SOONER_DAYS;
  if (!sooner && came === 0) return null;
  return html`<p>${other.name} ${[
    sooner ? `nine tenths are up in ${after.mostDays.p50} days rather than ${before.mostDays.p50}` : '',
    came !== 0
      ? `${Math.abs(came)} of a hundred ${came > 0 ? 'more' : 'fewer'} come even if the seed held too long is lost`
      : '',
  ]
    .filter((one) => one !== '')
    .join(', and ')}.</p>`;
}

/** Less than this is within the doubt of the soil [d]. */
const LEAST_SOONER_DAYS = 0.5;
