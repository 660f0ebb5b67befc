import type { WeekAnswer } from '../../contract/this-week.js';
import { actionForm, actionOf } from '../form/action.js';
import { get, isFailure } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed } from '../shell/inventory.js';
import { notes } from '../shell/notes.js';
import { problemNote } from '../shell/problem-note.js';
import type { AnsweredView, AskedQuestion, View } from '../shell/view.js';
import { keepTown } from './keep-town.js';
import { weekAsked, weekForm } from './week-form.js';
import { weekRequest } from './week-request.js';
import { weekWords } from './week-words.js';

/** The view of what to sow now, of a stored bed or of a town: the first that a newcomer sees. */
export const weekView: View = {
  name: 'week',
  title: 'page.week.title',
  fileName: 'week',
  form: weekForm,
  summary: weekAsked,
  answer,
  runAction: actionOf(new Map([['keep-town', keepTown]])),
};

async function answer(asked: AskedQuestion): Promise<AnsweredView | null> {
  const { question, shelf, send, reader } = asked;
  const request = weekRequest(question, shelf);
  if (!request) return null;
  const got = await get<WeekAnswer>(send, request);
  if (isFailure(got)) return { shown: problemNote(got.problem, reader) };
  const week = got.value;
  const isKept = bedNamed(shelf, question.bed) !== undefined;
  return {
    shown: html`${weekWords(week, asked)}
      ${notes(reader.say('page.sowing.take-heed'), week.warnings)}
      ${notes(reader.say('page.sowing.rests-on'), week.assumptions)}
      ${!isKept && keepIt(asked, week)}`,
    link: question,
  };
}

/** Shown to a newcomer in place of an answer. */
export const welcome = ({ say }: AskedQuestion['reader']): Html =>
  html`<p class="welcome">${say('page.week.welcome')}</p><p>${say('page.week.offline')}</p>`;

/** Keeps the town as a place with a bed, so that sowings, counts and readings have a home. */
function keepIt(asked: AskedQuestion, { place }: WeekAnswer): Html | false {
  if (!place) return false;
  const { near = '', latitude, longitude, timeZone, elevationM } = place;
  const { say } = asked.reader;
  return html`<section class="keeping"><h2>${say('page.week.keep')}</h2><p>${say('page.week.keep-why')}</p>
    ${actionForm(asked, {
      act: 'keep-town',
      about: 'town',
      with: {
        town: near,
        latitude: String(latitude),
        longitude: String(longitude),
        timeZone,
        elevationM: elevationM === null ? '' : String(elevationM),
      },
      button: say('page.week.keep-button'),
    })}</section>`;
}
