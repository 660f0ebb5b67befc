import { fieldLabel, refusalCode } from '../form/form-names.js';
import type { ProblemBody, ProblemChoice } from './api.js';
import { type Html, html } from './html.js';
import { faultSaid, fieldOf, mayPass } from './refusal-words.js';
import type { PageReader } from './words.js';

/** A refusal in place: what is wrong, how to mend it, and the ways to read an ambiguous file with their meanings. */
export function problemNote({ status, code, detail, errors = [] }: ProblemBody, { say, tell }: PageReader): Html {
  const asked = errors.filter(({ choices }) => choices && choices.length > 0);
  const plain = refusalCode(code);
  const others = errors.filter(({ choices }) => !choices || choices.length === 0);
  // A fault listed under its field's own name is not repeated under the parameter's name.
  const isOfFields =
    !plain && others.length > 0 && others.every((one) => fieldLabel(fieldOf(one), 'ask') !== undefined);
  const told = isOfFields ? others : plain ? [] : others.filter((one) => !detail.includes(one.detail));
  const isPassing = mayPass({ status }) || code === 'stopped';
  const title = asked.length > 0 ? 'one-thing' : isPassing ? 'no-answer' : 'not-yet';
  return html`<div class="problem" role="alert">
    <h2>${say(`page.refused.${title}`)}</h2>
    ${asked.length === 0 && !isOfFields && html`<p>${plain ? say(plain) : detail}</p>`}
    ${
      told.length > 0 &&
      html`<ul>${told.map((one) => {
        const text = faultSaid(one, { say }, 'ask');
        return html`<li>${one.line === undefined ? text : tell('page.refused.line', { line: one.line, text })}</li>`;
      })}</ul>`
    }
    ${asked.map((one) => choiceOf(fieldOf(one), one.detail, one.choices!))}
    ${isPassing && html`<p><button type="submit" form="ask">${say(code === 'stopped' ? 'page.refused.send-again' : 'page.refused.try-again')}</button></p>`}
  </div>`;
}

const choiceOf = (field: string, detail: string, choices: readonly ProblemChoice[]): Html =>
  html`<fieldset class="choices"><legend>${detail}</legend>${choices.map(
    ({ value, reads, consequence }) =>
      html`<button type="submit" form="ask" name="${field}" value="${value}" class="choice"><b>${field === 'near' ? `${value}: ${reads}` : reads}</b> <span>${consequence}</span></button>`,
  )}</fieldset>`;
