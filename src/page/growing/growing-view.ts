import { isFailure } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed } from '../shell/inventory.js';
import { problemNote } from '../shell/problem-note.js';
import type { AnsweredView, AskedQuestion, View } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';
import { forecastToKeep } from '../sowing/forecast-picture.js';
import { growingAction } from './growing-actions.js';
import { growingAnswer } from './growing-answer.js';
import { bedForm } from './growing-bed-forms.js';
import { placesAndBeds } from './growing-beds.js';
import { growingForm, growingSummary } from './growing-form.js';
import { findGrowing } from './growing-found.js';
import { growingTable } from './growing-table.js';
import { thingsToDo } from './growing-to-do.js';

/** The view of what grows and what to do about it. */
export const growingView: View = {
  name: 'growing',
  title: 'page.growing.title',
  fileName: 'sowings',
  form: growingForm,
  summary: growingSummary,
  answer,
  runAction: growingAction,
};

async function answer(asked: AskedQuestion): Promise<AnsweredView | null> {
  const { question, shelf } = asked;
  if (shelf.beds.length === 0) return { shown: noBed(asked), link: question };
  if (question.ofBed !== '' && !bedNamed(shelf, question.ofBed)) return { shown: gone(asked.reader) };
  const got = await findGrowing(asked);
  if (isFailure(got)) return { shown: problemNote(got.problem, asked.reader) };
  const { sowings } = got.value;
  const drawn = sowings.flatMap(({ got: one }) => (!isFailure(one) && one.value.forecast ? [one.value] : []))[0];
  return {
    shown: growingAnswer(got.value, thingsToDo(got.value, asked.reader), asked),
    ...(drawn?.forecast && {
      picture: () =>
        forecastToKeep(
          { ...drawn.forecast!, model: drawn.model, issuedAt: drawn.issuedAt },
          { ...asked, question: { ...question, bed: drawn.bed } },
        ),
    }),
    table: () => growingTable(got.value, asked.reader),
    link: question,
  };
}

function noBed(asked: AskedQuestion): Html {
  const { say } = asked.reader;
  return html`<p class="neighbour">${say('page.growing.no-bed')}</p>
  <section class="keeping"><h2>${say('page.growing.keep-bed')}</h2>
    <p>${say('page.growing.keep-bed-why')}</p>
    ${bedForm(asked)}
  </section>
  ${asked.shelf.places.length > 0 && html`<section><h2>${say('page.growing.places')}</h2>${placesAndBeds(asked, new Map())}</section>`}`;
}

const gone = ({ say }: PageReader): Html =>
  html`<p class="neighbour">${say('page.growing.gone')}</p><p>${say('page.growing.choose-other')}</p>`;
