import type { ForecastAnswer } from '../http/schemas/forecast.js';
import { type Html, html } from './html.js';
import { neighbourWords, type Spell } from './neighbour-words.js';
import { todayAt } from './shelf.js';
import { understoodNote } from './understood-words.js';
import type { Asked } from './view.js';
import { day, degreesMore, degreesOf, type Reader, spanText } from './words.js';

type About = Pick<Asked, 'question' | 'shelf' | 'reader'>;

/** The answer to a sowing: the sentence, the picture, the dates, what can be done, and what it all rests on. */
export function sowingAnswer(forecast: ForecastAnswer, { question, shelf, reader }: About, pictures: Html): Html {
  const today = todayAt(shelf, question.bed, question.timeZone);
  const spells = [...(forecast.hotSpells ?? []), ...(forecast.coldSpells ?? [])];
  return html`
    ${neighbourWords(forecast, reader, today)}
    ${forecast.hotSpells === null && html`<p class="aside">Hot hours cannot be told from means alone.</p>`}
    ${pictures}
    ${milestones(forecast, reader)}
    ${spells.length > 0 && remedies(spells, reader)}
    ${notes('Take heed', forecast.warnings, true)}
    ${forecast.understood.length > 0 && html`<section><h2>What was read</h2>${forecast.understood.map((report) => understoodNote(report, reader))}</section>`}
    ${notes('What this rests on', forecast.assumptions, false)}
    <details><summary>The days in numbers</summary>${dailyTable(forecast, reader)}</details>`;
}

const NAMES = { first: 'The first tenth', half: 'Half', most: 'Nine tenths' } as const;

function milestones({ emergence, stand, chart }: ForecastAnswer, reader: Reader): Html {
  const rows = (['first', 'half', 'most'] as const).map((name) => {
    const one = emergence[name];
    if ('why' in one) {
      const why = one.why === 'not-by-count-day' ? 'not by the count' : 'not at these temperatures';
      return html`<tr><th scope="row">${NAMES[name]}</th><td colspan="3">${why}</td></tr>`;
    }
    const { from, to } = one.range;
    return html`<tr><th scope="row">${NAMES[name]}</th><td>${day(one.date, reader)}</td><td>${from === to ? 'that day' : html`${day(from, reader)} to ${to === null ? 'after the count' : day(to, reader)}`}</td><td>${day(one.inBeds.to, reader)}</td></tr>`;
  });
  return html`<section><h2>When they are up</h2><div class="scroll" tabindex="0" role="region" aria-label="When they are up"><table>
    <thead><tr><th scope="col">Of all that come</th><th scope="col">Likely</th><th scope="col">Eight times in ten</th><th scope="col">In a slow bed by</th></tr></thead>
    <tbody>${rows}</tbody></table></div>
    <p class="aside">Count on ${day(stand.by, reader)}. The printed chart, for a constant ${degreesOf(chart.meanC, reader)}, says ${chart.days === null ? 'that none come' : `${chart.days} days and ${chart.percent} of a hundred`}.</p></section>`;
}

/** What can be done, once for all spells: the first that says it says how much it helps. */
function remedies(spells: readonly Spell[], reader: Reader): Html {
  const all = new Map<string, Spell['remedies'][number]>();
  for (const spell of spells)
    for (const remedy of spell.remedies) if (!all.has(remedy.action)) all.set(remedy.action, remedy);
  return html`<section><h2>What you can do</h2><ul>${[...all.values()].map(
    ({ text, hotHoursAvoided, coolerC }) =>
      html`<li>${text}${hotHoursAvoided && hotHoursAvoided.to > 0 && html` <span class="gain">${spanText(hotHoursAvoided)} hot hours fewer</span>`}${
        coolerC &&
        html` <span class="gain">${degreesMore(coolerC.from, reader)} to ${degreesMore(coolerC.to, reader)} cooler at the seed</span>`
      }</li>`,
  )}</ul></section>`;
}

/** Notes, open or folded away. */
export const notes = (title: string, all: readonly { readonly text: string }[], isOpen: boolean): Html | false =>
  all.length > 0 &&
  (isOpen
    ? html`<section><h2>${title}</h2><ul>${all.map(({ text }) => html`<li>${text}</li>`)}</ul></section>`
    : html`<details><summary>${title}</summary><ul>${all.map(({ text }) => html`<li>${text}</li>`)}</ul></details>`);

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
  html`<div class="scroll" tabindex="0" role="region" aria-label="The days in numbers"><table class="numbers">
    <thead><tr><th scope="col">Date</th><th scope="col">Lowest</th><th scope="col">Mean</th><th scope="col">Highest</th><th scope="col">Known how</th><th scope="col">Up in the laboratory</th><th scope="col">Hot hours</th></tr></thead>
    <tbody>${daily.map(
      ({ date, min, mean, max, basis, emergedPercent, hotHours }) =>
        html`<tr><th scope="row">${day(date, reader)}</th><td>${degreesOf(min, reader)}</td><td>${degreesOf(mean, reader)}</td><td>${degreesOf(max, reader)}</td><td>${BASIS[basis]}</td><td>${emergedPercent} %</td><td>${hotHours}</td></tr>`,
    )}</tbody></table></div>`;
