import { LABELS, refusalInWords } from '../form/form-names.js';
import type { Choice, Problem } from './api.js';
import { type Html, html } from './html.js';
import { type Fault, fieldOf, mayPass } from './refusal-words.js';
import { saidText } from './said-text.js';
import type { Reader } from './words.js';

/** A refusal in place: what is wrong, how to mend it, and where there are several ways to read something, each with what it means. */
export function problemNote({ status, code, detail, errors = [] }: Problem, reader: Reader): Html {
  const asked = errors.filter(({ choices }) => choices && choices.length > 0);
  const plain = refusalInWords(code);
  const others = errors.filter(({ choices }) => !choices || choices.length === 0);
  // What is told of fields under their own names is not told once more by the names of parameters.
  const isOfFields = others.length > 0 && others.every((one) => labelOf(one) && /^\p{Ll}/u.test(one.detail));
  const told = isOfFields ? others : plain ? [] : others.filter((one) => !detail.includes(one.detail));
  const isPassing = mayPass({ status }) || code === 'stopped';
  return html`<div class="problem" role="alert">
    <h2>${asked.length > 0 ? 'One thing to settle' : isPassing ? 'No answer yet' : 'That cannot be answered yet'}</h2>
    ${asked.length === 0 && !isOfFields && html`<p>${plain ?? saidText(detail, reader)}</p>`}
    ${told.length > 0 && html`<ul>${told.map((one) => html`<li>${one.line !== undefined && `Line ${one.line}: `}${isOfFields && html`<b>${labelOf(one)}</b> `}${saidText(one.detail, reader)}</li>`)}</ul>`}
    ${asked.map((one) => choiceOf(fieldOf(one), one.detail, one.choices!, reader))}
    ${isPassing && html`<p><button type="submit" form="ask">${code === 'stopped' ? 'Send it again' : 'Try again'}</button></p>`}
  </div>`;
}

const labelOf = (fault: Fault): string | undefined => LABELS[fieldOf(fault)];

/** Each way to read it is a button that sends the same form again, settled so. */
const choiceOf = (field: string, detail: string, choices: readonly Choice[], reader: Reader): Html =>
  html`<fieldset class="choices"><legend>${saidText(detail, reader)}</legend>${choices.map(
    ({ value, reads, consequence }) =>
      html`<button type="submit" form="ask" name="${field}" value="${value}" class="choice"><b>${saidText(reads, reader)}</b> <span>${saidText(consequence, reader)}</span></button>`,
  )}</fieldset>`;
