import type { ForecastAnswer } from '../../contract/forecast.js';
import { figure } from '../shell/figure.js';
import { type Html, html, type Part } from '../shell/html.js';
import { notes } from '../shell/notes.js';
import { saidText } from '../shell/said-text.js';
import { cropName, todayAt } from '../shell/shelf.js';
import { tableOf } from '../shell/table.js';
import type { Asked } from '../shell/view.js';
import { day, degreesOf, plural, type Reader, spanText, weekdayAndDay } from '../shell/words.js';
import { neighbourWords, type Spell } from './neighbour-words.js';
import { understoodNote } from './understood-words.js';

type About = Pick<Asked, 'question' | 'shelf' | 'reader'>;

/** The answer to a sowing: the sentence, the picture, the dates, what can be done, and what it all rests on. */
export function sowingAnswer(forecast: ForecastAnswer, { question, shelf, reader }: About, pictures: Html): Html {
  const today = todayAt(shelf, question.bed, question.timeZone);
  const spells = [...(forecast.hotSpells ?? []), ...(forecast.coldSpells ?? [])];
  return html`
    ${neighbourWords(forecast, cropName(shelf, forecast.crop), reader, today)}
    ${forecast.warnings.filter(({ code }) => code === 'far-ahead').map(({ text }) => html`<p class="aside">${saidText(text, reader)}</p>`)}
    ${forecast.hotSpells === null && html`<p class="aside">Hot hours cannot be told from means alone.</p>`}
    ${pictures}
    ${milestones(forecast, reader)}
    ${spells.length > 0 && remedies(spells, reader)}
    ${notes(
      'Take heed',
      forecast.warnings.filter(({ code }) => code !== 'far-ahead'),
      reader,
      true,
    )}
    ${forecast.understood.length > 0 && html`<section><h2>What was read</h2>${forecast.understood.map((report) => understoodNote(report, reader))}</section>`}
    ${notes('What this rests on', forecast.assumptions, reader)}
    <details><summary>The days in numbers</summary>${dailyTable(forecast, reader)}</details>`;
}

const NAMES = { first: 'The first tenth', half: 'Half', most: 'Nine tenths' } as const;

const MILESTONE_COLUMNS: readonly Part[] = [
  'Of all that come',
  figure('likely', 'Likely', {
    what: 'The likeliest day for so many of them to be up.',
    from: 'A laboratory’s days at constant temperatures, added up hour by hour over the temperature of the seed.',
    sure: 'The middle of what the weather may do; the next column has the range.',
  }),
  figure('range', 'Eight times in ten', {
    what: 'From when to when they are up in the middle eight of ten cases.',
    from: 'What past years’ weather, or the drift of the season, may still do; how well the soil is known; and your counts, where there are any.',
    sure: 'It leaves out the seed, the seedbed and drought.',
  }),
  figure('in-beds', 'In a slow bed by', {
    what: 'How late it may be in a bed that is slower than a laboratory.',
    from: 'How many times longer beds have taken with this crop; what you counted in this bed narrows it.',
    sure: 'For some crops it rests on few trials; “What this rests on” says more.',
  }),
];

function milestones({ emergence, stand, chart }: ForecastAnswer, reader: Reader): Html {
  const short = (date: string): Html => weekdayAndDay(date, reader);
  const rows = (['first', 'half', 'most'] as const).map((name) => {
    const one = emergence[name];
    if ('why' in one) {
      const why = one.why === 'not-by-count-day' ? 'not by the count' : 'not at these temperatures';
      return html`<tr><th scope="row">${NAMES[name]}</th><td colspan="3">${why}</td></tr>`;
    }
    const { from, to } = one.range;
    const range = from === to ? 'that day' : html`${short(from)} to ${to === null ? 'after the count' : short(to)}`;
    return html`<tr><th scope="row">${NAMES[name]}</th><td>${short(one.date)}</td><td>${range}</td><td>${short(one.inBeds.to)}</td></tr>`;
  });
  const charted =
    chart.days === null ? 'that none come' : `${plural(chart.days, 'day')} and ${chart.percent} of a hundred`;
  const chartedFigure = figure('chart', charted, {
    what: 'What the printed chart has for a constant temperature, in a laboratory.',
    from: `The chart’s cells on both sides of the mean from sowing to half, ${degreesOf(chart.meanC, reader)}.`,
    sure: 'Good as long as the soil stays near that mean. It knows nothing of nights, hot afternoons or beds.',
  });
  return html`<section><h2>When they are up</h2>${tableOf('When they are up', MILESTONE_COLUMNS, rows)}
    <p class="aside">Count on ${day(stand.by, reader)}. A chart for one constant temperature, at ${degreesOf(chart.meanC, reader)}, says ${chartedFigure}.</p></section>`;
}

/** What can be done, once for all spells: the first that says it says how much it helps. */
function remedies(spells: readonly Spell[], reader: Reader): Html {
  const all = new Map<string, Spell['remedies'][number]>();
  for (const { remedies: some } of spells)
    for (const remedy of some) if (!all.has(remedy.action)) all.set(remedy.action, remedy);
  return html`<section><h2>What you can do</h2><ul>${[...all.values()].map(
    ({ action, text, hotHoursAvoided }) =>
      html`<li>${saidText(text, reader)}${hotHoursAvoided && hotHoursAvoided.to > 0 && html` <span class="gain">${gain(action, hotHoursAvoided)}</span>`}</li>`,
  )}</ul></section>`;
}

const gain = (action: string, hours: { readonly from: number; readonly to: number }): Html =>
  figure(`gain-${action}`, `${spanText(hours)} hot hours fewer`, {
    what: 'How many of the spell’s hours above the crop’s limit this spares the seed.',
    from: 'The same soil, worked out once more with the help in place, or from the later hour or date.',
    sure: 'Worked out, and hardly measured in seedbeds: take it as more or less.',
  });

const BASIS: Readonly<Record<ForecastAnswer['daily'][number]['basis'], string>> = {
  measured: 'measured',
  corrected: 'worked out, and put right by the probe',
  modelled: 'worked out from the air',
  filled: 'gap filled',
  repeated: 'last week again',
  drift: 'as the season goes',
  forecast: 'from the weather forecast',
  'past-years': 'as in past years',
};

const dailyTable = ({ daily }: ForecastAnswer, reader: Reader): Html =>
  tableOf(
    'The days in numbers',
    ['Date', 'Lowest', 'Mean', 'Highest', 'Known how', 'Up in the laboratory', 'Hot hours'],
    daily.map(
      ({ date, min, mean, max, basis, emergedPercent, hotHours }) =>
        html`<tr><th scope="row">${weekdayAndDay(date, reader)}</th><td>${degreesOf(min, reader)}</td><td>${degreesOf(mean, reader)}</td><td>${degreesOf(max, reader)}</td><td>${BASIS[basis]}</td><td>${emergedPercent} %</td><td>${hotHours}</td></tr>`,
    ),
  );
