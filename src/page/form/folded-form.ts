import { type Html, type HtmlPart, html } from '../shell/html.js';
import type { AskedQuestion } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';
import { actionForm, actionId, rejectedIn } from './action.js';

interface Fold {
  readonly act: string;
  readonly about: string;
  readonly name: HtmlPart;
  /** `add`: set apart from the content above, to store something more. */
  readonly look?: 'add' | 'confirm';
  readonly isOpen?: boolean;
}

/** A rarely used form, folded under a name; open after a rejected submission. */
export const foldedForm = (
  form: Html,
  { tried }: Pick<AskedQuestion, 'tried'>,
  { act, about, name, look = 'confirm', isOpen = false }: Fold,
): Html =>
  html`<details class="${look}" id="fold-${actionId(act, about)}"${(isOpen || rejectedIn(tried, actionId(act, about))) && html` open`}><summary>${name}</summary>${form}</details>`;

/** A name that also says what it is about, for readers who cannot see its surroundings. */
export const nameOf = (does: string, what: string, { tell }: PageReader): Html =>
  tell('page.beds.named', { does, what, unseen });

/** Text for screen readers alone. */
export const unseen = (text: Html): Html => html`<span class="unseen">${text}</span>`;

interface Confirmed {
  readonly act: string;
  readonly about: string;
  readonly with?: Readonly<Record<string, string>>;
  readonly question: string;
  readonly button: string;
}

/** An action that asks for confirmation, with and without a script. */
export const confirmed = (name: HtmlPart, asked: AskedQuestion, { question, ...form }: Confirmed): Html =>
  foldedForm(actionForm(asked, { ...form, fields: () => html`<p>${question}</p>` }), asked, { ...form, name });
