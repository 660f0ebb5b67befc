import type { WeekAnswer } from '../../contract/this-week.js';
import { linkTo } from '../form/question.js';
import { type Html, html } from '../shell/html.js';
import { cropInSentence, cropName } from '../shell/inventory.js';
import type { AskedQuestion } from '../shell/view.js';
import { day, shortDay, span } from '../shell/words.js';

type About = Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>;

/** A week's advice: what to sow, what is to be done, what comes soon, and what not now. */
export const weekWords = (week: WeekAnswer, about: About): Html => html`
  ${lead(week, about)}
  ${
    week.sow.length > 0 &&
    html`<h2>${about.reader.say('page.week.sow')} <small>${span(week.from, week.to, about.reader)}</small></h2>${sowList(week, about)}`
  }
  ${week.ahead.length > 0 && html`<ul class="ahead">${week.ahead.map(({ text }) => html`<li>${text}</li>`)}</ul>`}
  ${listOf(
    about.reader.say('page.week.to-do'),
    week.toDo.map(({ text }) => text),
  )}
  ${listOf(
    about.reader.say('page.week.plant-out'),
    week.plantOut.map(({ text }) => text),
  )}
  ${soonList(week, about)}
  ${notNowList(week, about)}`;

/** A crop's name as a link to its whole year. */
const cropLink = (crop: string, { question, shelf, reader }: About): Html =>
  html`<a href="${linkTo({ ...question, view: 'when', crop, sowing: '' })}">${cropName(shelf, crop, reader)}</a>`;

/** The answer in one sentence. */
function lead({ sow }: WeekAnswer, { shelf, reader }: About): Html {
  const [first] = sow;
  const text = first
    ? reader.say('page.week.lead', { crops: sow.length, crop: cropInSentence(shelf, first.crop, reader) })
    : reader.say('page.week.nothing');
  return html`<p class="neighbour">${text}</p>`;
}

function sowList({ sow }: WeekAnswer, about: About): Html {
  const { say } = about.reader;
  return html`<ol class="sow">${sow.map(
    ({ crop, text, grade, reasons, lastCall }) =>
      html`<li><b>${cropLink(crop, about)}</b> <span class="mark">${say(`page.week.grade.${grade === 'good' ? 'good' : 'fair'}`)}</span>${lastCall && html` <span class="mark">${say('page.week.last-call')}</span>`}<br>${text}${reasons[0] && html` ${reasons[0].text}`}</li>`,
  )}</ol>`;
}

const listOf = (title: string, texts: readonly string[]): Html | false =>
  texts.length > 0 && html`<h2>${title}</h2><ul>${texts.map((text) => html`<li>${text}</li>`)}</ul>`;

const soonList = ({ soon }: WeekAnswer, about: About): Html | false =>
  soon.length > 0 &&
  html`<h2>${about.reader.say('page.week.soon')}</h2><ul>${soon.map(
    ({ crop, method, from }) =>
      html`<li>${cropLink(crop, about)}: ${about.reader.tell(`page.week.opens.${method}`, { date: day(from, about.reader) })}</li>`,
  )}</ul>`;

const notNowList = ({ notNow }: WeekAnswer, about: About): Html | false =>
  notNow.length > 0 &&
  html`<details><summary>${about.reader.say('page.week.not-now', { crops: notNow.length })}</summary><ul>${notNow.map(
    ({ crop, reasons, next }) =>
      html`<li>${cropLink(crop, about)}: ${reasons[0]?.text ?? ''} ${next ? about.reader.tell(`page.week.next.${next.method}`, { date: shortDay(next.from, about.reader) }) : about.reader.say('page.week.never')}</li>`,
  )}</ul></details>`;
