import type { ForecastAnswer } from '../../contract/forecast.js';
import { explainedNumber } from '../shell/explained-number.js';
import { type Html, type HtmlPart, html } from '../shell/html.js';
import { cropInSentence, todayAt } from '../shell/inventory.js';
import { notes } from '../shell/notes.js';
import { tableOf } from '../shell/table.js';
import type { AskedQuestion } from '../shell/view.js';
import { day, degreesOf, numberText, type PageReader, spanText, weekdayAndDay } from '../shell/words.js';
import { neighbourWords, type ToldSpell } from './neighbour-words.js';
import { understoodNote } from './understood-words.js';

type About = Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>;

/** The answer about a sowing: sentence, picture, dates, remedies, and the basis of it all. */
export function sowingAnswer(forecast: ForecastAnswer, { question, shelf, reader }: About, pictures: Html): Html {
  const { say } = reader;
  const today = todayAt(shelf, question.bed, question.timeZone);
  const spells = [...(forecast.hotSpells ?? []), ...(forecast.coldSpells ?? [])];
  const heeded = forecast.warnings.filter(({ code }) => code !== 'far-ahead');
  return html`
    ${neighbourWords(forecast, cropInSentence(shelf, forecast.crop, reader), reader, today)}
    ${forecast.warnings.filter(({ code }) => code === 'far-ahead').map(({ text }) => html`<p class="aside">${text}</p>`)}
    ${forecast.hotSpells === null && html`<p class="aside">${say('page.sowing.no-hot-hours')}</p>`}
    ${pictures}
    ${milestones(forecast, reader)}
    ${spells.length > 0 && remedies(spells, reader)}
    ${notes(say('page.sowing.take-heed'), heeded, true)}
    ${forecast.understood.length > 0 && html`<section><h2>${say('page.sowing.was-read')}</h2>${forecast.understood.map((report) => understoodNote(report, reader))}</section>`}
    ${notes(say('page.sowing.rests-on'), forecast.assumptions)}
    <details><summary>${say('page.sowing.days-in-numbers')}</summary>${dailyTable(forecast, reader)}</details>`;
}

function milestones({ emergence, stand, chart }: ForecastAnswer, reader: PageReader): Html {
  const { say, tell } = reader;
  const short = (date: string): Html => weekdayAndDay(date, reader);
  const columns = [
    say('page.sowing.of-all'),
    explainedNumber('likely', say('page.sowing.likely'), reader, 'page.sowing.likely'),
    explainedNumber('range', say('page.sowing.range'), reader, 'page.sowing.range'),
    explainedNumber('in-beds', say('page.sowing.in-beds'), reader, 'page.sowing.in-beds'),
  ];
  // Beans and peas come up sooner in beds than the chart has them: a slow bed is none that comes before the likely day.
  const inBeds = ({ date, inBeds: { from, to } }: { date: string; inBeds: { from: string; to: string } }): HtmlPart =>
    to >= date ? short(to) : tell('page.sowing.sooner-in-beds', { from: short(from), to: short(to) });
  const rows = (['first', 'half', 'most'] as const).map((name) => {
    const one = emergence[name];
    const heading = html`<th scope="row">${say(`page.sowing.${name}`)}</th>`;
    if ('why' in one) {
      const why = one.why === 'not-by-count-day' ? 'not-by-count' : 'not-here';
      return html`<tr>${heading}<td colspan="3">${say(`page.sowing.${why}`)}</td></tr>`;
    }
    const { from, to } = one.range;
    const end = to === null ? say('page.sowing.after-count') : short(to);
    const range = from === to ? say('page.sowing.that-day') : tell('page.of.date-span', { from: short(from), to: end });
    return html`<tr>${heading}<td>${short(one.date)}</td><td>${range}</td><td>${inBeds(one)}</td></tr>`;
  });
  const mean = degreesOf(chart.meanC, reader);
  const charted = say('page.sowing.charted', { days: chart.days ?? -1, percent: numberText(chart.percent, reader) });
  const title = say('page.sowing.when-up');
  return html`<section><h2>${title}</h2>${tableOf(title, columns, rows)}
    <p class="aside">${tell('page.sowing.count-on', {
      date: day(stand.by, reader),
      mean,
      charted: explainedNumber('chart', charted, reader, 'page.sowing.chart', { mean }),
    })}</p></section>`;
}

/** Remedies, one for all spells: the first spell that has it says how much it helps. */
function remedies(spells: readonly ToldSpell[], reader: PageReader): Html {
  const all = new Map<string, ToldSpell['remedies'][number]>();
  for (const { remedies: some } of spells)
    for (const remedy of some) if (!all.has(remedy.action)) all.set(remedy.action, remedy);
  return html`<section><h2>${reader.say('page.sowing.can-do')}</h2><ul>${[...all.values()].map(
    ({ action, text, hotHoursAvoided }) =>
      html`<li>${text}${hotHoursAvoided && hotHoursAvoided.to > 0 && html` <span class="gain">${gain(action, hotHoursAvoided, reader)}</span>`}</li>`,
  )}</ul></section>`;
}

const gain = (action: string, hours: { readonly from: number; readonly to: number }, reader: PageReader): Html =>
  explainedNumber(
    `gain-${action}`,
    reader.say('page.sowing.gain', { hours: spanText(hours, reader) }),
    reader,
    'page.sowing.spared',
  );

function dailyTable({ daily }: ForecastAnswer, reader: PageReader): Html {
  const { say } = reader;
  const columns = [
    say('page.daily.date'),
    say('page.file.lowest'),
    say('page.daily.mean'),
    say('page.file.highest'),
    say('page.daily.basis'),
    say('page.daily.up'),
    say('page.daily.hot-hours'),
  ];
  const rows = daily.map(
    ({ date, min, mean, max, basis, emergedPercent, hotHours }) =>
      html`<tr><th scope="row">${weekdayAndDay(date, reader)}</th><td>${degreesOf(min, reader)}</td><td>${degreesOf(mean, reader)}</td><td>${degreesOf(max, reader)}</td><td>${say(`page.basis.${basis}`)}</td><td>${say('page.of.percent', { count: emergedPercent })}</td><td>${hotHours !== null && numberText(hotHours, reader)}</td></tr>`,
  );
  return tableOf(say('page.sowing.days-in-numbers'), columns, rows);
}
