import { type ProblemBody, unusable } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { mayPass, refusalSaid } from '../shell/refusal-words.js';
import type { ActionOf, AskedQuestion, FileGiven, Rejected } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';
import { hidden } from './fields.js';
import { linkTo } from './question.js';

export interface ActionForm {
  readonly act: string;
  /** The id of its object; together with `act` it identifies the form. */
  readonly about: string;
  /** Further hidden fields. */
  readonly with?: Readonly<Record<string, string>>;
  /** The fields to fill in, given what was typed before. */
  readonly fields?: (typed: Typed) => Html;
  /** Optional fields, below the button. */
  readonly more?: (typed: Typed) => Html;
  readonly button: string;
}

/** The `about` of a form that creates something. */
export const NEW = 'new';

/** The typed value of a field, or `usual` if nothing was typed. */
export type Typed = (name: string, usual?: string) => string;

export const actionId = (act: string, about: string): string => `${act}-${about}`;

/** A form within an answer that changes stored data and then shows the same question's answer again. */
export function actionForm(
  { question, tried, reader }: Pick<AskedQuestion, 'question' | 'tried' | 'reader'>,
  { act, about, fields, more, button, with: unseen = {} }: ActionForm,
): Html {
  const id = actionId(act, about);
  const mine = rejectedIn(tried, id);
  const typed: Typed = (name, usual = '') => (mine ? (mine.said.get(name) ?? '') : usual);
  return html`<form class="act act-${act}" id="${id}" method="post" action="/" enctype="multipart/form-data" novalidate>
    ${hidden('asked', linkTo(question))}${hidden('act', act)}${hidden('about', about)}${Object.entries(unseen).map(([name, value]) => hidden(name, value))}
    <div class="refused">${mine && refusedNote(mine.problem, reader)}</div>
    ${fields?.(typed)}
    <p><button type="submit">${button}</button></p>
    ${more?.(typed)}
  </form>`;
}

/** The rejected submission, if it was this form's. */
export const rejectedIn = (tried: Rejected | undefined, id: string): Rejected | undefined =>
  tried && idOf(tried) === id ? tried : undefined;

const idOf = ({ said }: Rejected): string => actionId(said.get('act') ?? '', said.get('about') ?? '');

/** Explains inside the form why the action was refused. */
export const refusedNote = (problem: ProblemBody, reader: PageReader): Html =>
  html`<div class="problem" role="alert" tabindex="-1" autofocus>${refusalSaid(problem, reader).map((one) => html`<p>${one}</p>`)}${mayPass(problem) && html`<p><button type="submit">${reader.say('page.refused.try-again')}</button></p>`}</div>`;

/** The answer, preceded by the rejected submission if the answer does not contain its form. */
export const withRejected = (shown: Html | undefined, tried: Rejected, reader: PageReader): Html =>
  shown?.markup.includes(html` id="${idOf(tried)}"`.markup)
    ? shown
    : html`${sendAgain(tried, reader, refusedNote({ ...tried.problem, status: 422 }, reader))}${shown}`;

/** All submitted fields, to be sent once more. */
export const sendAgain = ({ said, file }: Pick<Rejected, 'said' | 'file'>, reader: PageReader, note?: Html): Html =>
  html`<form class="act" method="post" action="/" enctype="multipart/form-data">${note}
    ${[...said].map(([name, value]) => hidden(name, value))}${file && fileAgain(file, reader)}<p><button type="submit">${reader.say('page.refused.send-entered')}</button></p></form>`;

/** The submitted file without a script: as text, or to be chosen again. */
export const fileAgain = ({ text }: FileGiven, { say }: PageReader): Html =>
  text === undefined
    ? html`<noscript><label class="field"><span>${say('page.refused.file-chosen-again')}</span><input type="file" name="file"></label></noscript>`
    : hidden('pasted', text);

/** Runs the action that a form names. */
export const actionOf =
  (acts: ReadonlyMap<string, ActionOf>): ActionOf =>
  async (said, asked) =>
    acts.get(said.get('act') ?? '')?.(said, asked) ?? unusable(asked.reader.say('page.refused.unknown-act'));

/** The question that a posted form comes from. */
export const askedIn = (said: URLSearchParams): URLSearchParams =>
  new URLSearchParams(said.get('asked')?.split('?').slice(1).join('?') ?? '');
