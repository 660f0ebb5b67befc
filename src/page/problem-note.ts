import type { Choice, Problem } from './api.js';
import { type Html, html } from './html.js';

/** A refusal in place: what is wrong, how to mend it, and where there are several ways to read something, each with what it means. */
export function problemNote({ status, detail, errors = [] }: Problem): Html {
  const asked = errors.filter(({ choices }) => choices && choices.length > 0);
  const told = errors.filter(({ choices }) => !choices || choices.length === 0);
  return html`<div class="problem" role="alert">
    <h2>${asked.length > 0 ? 'One thing to settle' : status === 0 || status >= 500 ? 'No answer yet' : 'That cannot be answered yet'}</h2>
    <p>${detail}</p>
    ${told.length > 0 && html`<ul>${told.map(({ detail: one, line }) => html`<li>${line !== undefined && `Line ${line}: `}${one}</li>`)}</ul>`}
    ${asked.map(({ parameter, pointer, detail: one, choices }) => choiceOf(fieldNamed(parameter ?? pointer ?? ''), one, choices!))}
    ${(status === 0 || status >= 500) && html`<p><button type="submit" form="ask">Try again</button></p>`}
  </div>`;
}

/** The form's field of a query parameter, which may be named in full. */
const fieldNamed = (parameter: string): string => parameter.split(/[./]/).at(-1)!;

/** Each way to read it is a button that sends the same form again, settled so. */
const choiceOf = (field: string, detail: string, choices: readonly Choice[]): Html =>
  html`<fieldset class="choices"><legend>${detail}</legend>${choices.map(
    ({ value, reads, consequence }) =>
      html`<button type="submit" form="ask" name="${field}" value="${value}" class="choice"><b>${reads}</b><span>${consequence}</span></button>`,
  )}</fieldset>`;
