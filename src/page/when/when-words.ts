import type { ForecastAnswer } from '../../contract/forecast.js';
import type { WindowAnswer } from '../../contract/windows.js';
import type { WhyClosed } from '../../plot/season.js';
import { explainedNumber } from '../shell/explained-number.js';
import { type Html, type HtmlPart, html } from '../shell/html.js';
import type { Told } from '../shell/say.js';
import { tableOf } from '../shell/table.js';
import { day, daysFrom, degreesOf, listed, numberText, type PageReader, span, spanText } from '../shell/words.js';
import { type ClosedSpell, gapsOf, joinedSpells, lengthOf } from './when-season.js';

/** The subject of the sentences. */
export interface Spoken {
  /** The crop in a sentence, as `lettuce`. */
  readonly cropName: string;
  /** As `in North bed`. */
  readonly where: string;
  readonly today: string;
  readonly reader: PageReader;
}

/** Longest range of weather forecasts [d]; past years have judged the days after it already. */
const FORECAST_DAYS = 10;

/**
 * The answer as a neighbour would put it: the date, what forecast weather costs it, how long sowing can go on, and when
 * not to sow.
 *
 * @param atBest The forecast for the best date, if there is one.
 */
export function whenWords(season: WindowAnswer, atBest: ForecastAnswer | null, spoken: Spoken): Html {
  const sentences = [bestSaid(season, spoken), atBest && aheadSaid(atBest, spoken), ...gapsSaid(season, spoken)];
  return html`<p class="neighbour">${sentences.map((one) => one && html`${one} `)}</p>`;
}

function bestSaid(season: WindowAnswer, { cropName: crop, where, today, reader }: Spoken): Html {
  const { best, windows, dates } = season;
  const { tell } = reader;
  if (!best) {
    const [first, last] = [dates[0]!.date, dates.at(-1)!.date];
    return tell('page.when.no-date', {
      from: day(first, reader, today),
      to: day(last, reader, today),
      crop,
      where,
      why: becauseOf(joinedSpells(season.closed), reader),
    });
  }
  const { sureness, halfDays } = dates.find(({ date }) => date === best.date)!;
  const on = day(best.date, reader, today);
  const isToday = best.date === today;
  const date = explainedNumber(
    'when-best',
    isToday ? tell('page.when.today-date', { date: on }) : on,
    reader,
    'page.when.best',
    {
      why: best.why,
      ...howSure(season),
    },
  );
  const good = explainedNumber('when-good', yearsSaid(season, sureness, reader), reader, 'page.when.good', {
    goodDate: goodDate(season),
    ...howSure(season),
  });
  if (!windows.some(({ from, to }) => from <= best.date && best.date <= to)) {
    return tell('page.when.no-week', { crop, where, date, good });
  }
  const days =
    halfDays &&
    explainedNumber(
      'when-half',
      reader.say('page.when.days-dative', { days: halfDays.p50 }),
      reader,
      'page.when.half',
      {
        count: season.years.count,
        span: spanText({ from: halfDays.p10, to: halfDays.p90 }, reader),
      },
    );
  return tell('page.when.sow', {
    crop,
    where,
    isToday: isToday ? 'yes' : 'no',
    date,
    good,
    isUsual: season.years.count === 0 ? 'yes' : 'no',
    hasHalf: days ? 'yes' : 'no',
    days,
  });
}

/** As `in 14 of 15 past years`; rounded numbers say so. */
export function yearsSaid(
  { years: { count } }: Pick<WindowAnswer, 'years'>,
  sureness: number | null,
  { say }: PageReader,
) {
  const good = Math.round((sureness ?? 0) * count);
  const kind = sureness === null || count === 0 ? 'usual' : good === count ? 'all' : good === 0 ? 'none' : 'some';
  return say('page.when.in-years', { kind, good: String(good), count: String(count) });
}

const howSure = ({ years: { count }, criteria }: WindowAnswer): Readonly<Record<string, Told>> => ({
  count,
  open: String(Math.round(100 * criteria.sureness)),
});

/** Forecast weather that would reach the seed, and the date that avoids all of it. */
function aheadSaid({ hotSpells, coldSpells }: ForecastAnswer, { today, reader }: Spoken): Html | null {
  const costs = [
    ...(hotSpells ?? []).map((spell) => ({ ...spell, kind: 'hot' })),
    ...(coldSpells ?? []).map((spell) => ({ ...spell, kind: 'cold' })),
  ]
    .filter(({ from }) => daysFrom(today, from) <= FORECAST_DAYS)
    .map((spell) => ({ ...spell, cost: costOf(spell, reader) }));
  const spell = costs.find(({ cost }) => cost !== null);
  if (!spell?.cost) return null;
  const { kind, from, to, hours, peakC, thresholdC, cost, remedies } = spell;
  const wait = remedies.find(({ action }) => action === 'wait');
  const freeDate = spell.freeDate?.date ?? null;
  return reader.tell('page.when.ahead', {
    kind,
    dates: span(from, to, reader),
    cost: cost.does,
    number: explainedNumber('when-ahead', cost.number, reader, 'page.when.met', {
      kind,
      hours,
      threshold: degreesOf(thresholdC, reader),
      peak: degreesOf(peakC, reader),
    }),
    atRisk: cost.atRiskBesides,
    hasFree: freeDate === null ? 'no' : 'yes',
    hoursLeft: spell.freeDate?.hotHoursLeft ?? 0,
    free:
      freeDate !== null &&
      explainedNumber('when-free', day(freeDate, reader, today), reader, 'page.when.free', {
        kind,
        why: wait?.text ?? '',
      }),
  });
}

interface Cost {
  readonly does: 'half' | 'last' | 'risk';
  readonly number: string;
  /** Further seeds of a hundred that are at risk. */
  readonly atRiskBesides: number;
}

function costOf(
  { delayDays, standAtRisk }: NonNullable<ForecastAnswer['hotSpells']>[number],
  { say }: PageReader,
): Cost | null {
  const [half, most] = [delayDays?.half ?? 0, delayDays?.most ?? 0];
  if (half > 0) return { does: 'half', number: say('page.of.days', { days: half }), atRiskBesides: standAtRisk };
  if (most > 0) return { does: 'last', number: say('page.of.days', { days: most }), atRiskBesides: standAtRisk };
  return standAtRisk > 0
    ? { does: 'risk', number: say('page.when.seeds-at-risk', { count: standAtRisk }), atRiskBesides: 0 }
    : null;
}

/** The service's criterion for a good date. */
const goodDate = ({ assumptions }: WindowAnswer): string =>
  assumptions.find(({ code }) => code === 'good-date' || code === 'harvest-judged')?.text ?? '';

/** Windows reported in words; the table has all. */
const MAX_TOLD = 3;

/** How long sowing can go on, when not to sow, and why. */
function gapsSaid(season: WindowAnswer, { reader }: Spoken): HtmlPart[] {
  const { windows, dates, best } = season;
  if (windows.length === 0 || !best) return [];
  const { tell } = reader;
  const [first, last] = [dates[0]!.date, dates.at(-1)!.date];
  const gaps = gapsOf(season);
  const on = (date: string): Html => span(date, date, reader);
  const opening = gaps.find(({ from }) => from === first);
  return [
    opening && tell('page.when.until', { date: on(opening.to), why: becauseOf(opening.spells, reader) }),
    ...windows.slice(0, MAX_TOLD).map(({ from, to }, i) => {
      const gap = gaps.find((one) => one.from > to);
      if (!gap && i > 0) return tell('page.when.again-on', { from: on(from) });
      if (!gap) {
        return tell('page.when.any-time', { isFirst: from === first ? 'yes' : 'no', from: on(from), to: on(to) });
      }
      const why = becauseOf(gap.spells, reader);
      return tell('page.when.window', {
        start: i > 0 ? 'again' : best.date > to ? 'first' : 'on',
        from: on(from),
        until: explainedNumber(`when-last-${i}`, on(to), reader, 'page.when.last', { count: season.years.count, why }),
        why,
        hasEnd: gap.to < last ? 'yes' : 'no',
        end: on(gap.to),
      });
    }),
  ];
}

/** Why a time is closed, the reason of most days first. */
export function becauseOf(spells: readonly ClosedSpell[], reader: PageReader): Html {
  const days = new Map<WhyClosed, number>();
  for (const spell of spells) days.set(spell.why, (days.get(spell.why) ?? 0) + lengthOf(spell));
  const whys = [...days].sort(([, a], [, b]) => b - a).map(([why]) => reader.say(`page.when.why.${why}`));
  return whys.length === 0 ? html`${reader.say('page.when.why.mixed')}` : listed(whys, reader, 'disjunction');
}

/** The probability of success in a word or two. */
export function sureWord(sureness: number, { say }: PageReader): string {
  if (sureness >= 0.95) return say('page.when.sureness.certain');
  if (sureness >= 0.9) return say('page.when.sureness.very');
  if (sureness >= 0.8) return say('page.when.sureness.enough');
  if (sureness >= 0.5) return say('page.when.sureness.gamble');
  return say(sureness > 0 ? 'page.when.sureness.seldom' : 'page.when.sureness.never');
}

/** Tables of open times, and of closed times with reasons. */
export function seasonTables(season: WindowAnswer, reader: PageReader): Html {
  const { say, tell } = reader;
  const open = season.windows.map(({ from, to, grade, sureness, halfDays, stand }) => {
    const sure =
      sureness === null
        ? say('page.when.not-known')
        : grade === 'fair'
          ? say('page.when.second-best')
          : say('page.when.or-more', { percent: Math.round(100 * sureness), word: sureWord(sureness, reader) });
    const half = halfDays
      ? say('page.when.days', { span: spanText({ from: halfDays.p10, to: halfDays.p90 }, reader) })
      : '–';
    return html`<tr><th scope="row">${span(from, to, reader)}</th><td>${sure}</td><td>${half}</td><td>${stand ? numberText(stand.p50, reader) : '–'}</td></tr>`;
  });
  const closed = gapsOf(season).flatMap((gap): readonly (Omit<ClosedSpell, 'why'> & { why: WhyClosed | null })[] =>
    gap.spells.length > 0 ? gap.spells : [{ from: gap.from, to: gap.to, why: null, isMixed: false }],
  );
  const closedSaid = (why: WhyClosed | null, isMixed: boolean): string => {
    if (why === null) return say('page.when.why.mixed');
    const alone = say(`page.when.closed.${why}`);
    return isMixed ? say('page.when.mostly', { why: alone }) : alone;
  };
  const columns = [
    say('page.when.open'),
    say('page.when.how-sure'),
    say('page.when.half-in'),
    say('page.when.of-hundred'),
  ];
  const b = (text: Html): Html => html`<b>${text}</b>`;
  return html`<section><h2>${say('page.when.open-and-closed')}</h2>
    ${open.length > 0 && tableOf(say('page.when.open-to-sowing'), columns, open)}
    ${closed.length > 0 && html`<ul class="closed">${closed.map(({ from, to, why, isMixed }) => html`<li>${tell('page.when.closed-spell', { dates: span(from, to, reader), why: closedSaid(why, isMixed) })}</li>`)}</ul>`}
    <details><summary>${say('page.when.numbers')}</summary><ul>
      <li>${tell('page.when.numbers.sure', { b, sure: tell('page.when.best.sure', howSure(season)) })}</li>
      <li>${tell('page.when.numbers.half', { b, count: season.years.count })}</li>
      <li>${tell('page.when.numbers.come', { b })}</li>
      <li>${tell('page.when.numbers.good', { b, goodDate: goodDate(season) })}</li></ul></details></section>`;
}
