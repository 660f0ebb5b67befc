import { type Html, type HtmlPart, html } from '../shell/html.js';
import type { AskedQuestion } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';
import { actionForm, actionId, rejectedIn } from './action.js';

interface Fold {
  readonly act: string;
  readonly about: string;
  readonly name: HtmlPart;
  /** `add`: set apart from what stands above it, for something more to be kept. */
  readonly look?: 'add' | 'confirm';
  readonly isOpen?: boolean;
}

/** A form that is seldom wanted, folded under a name; open where what was sent by it was refused. */
export const foldedForm = (
  form: Html,
  { tried }: Pick<AskedQuestion, 'tried'>,
  { act, about, name, look = 'confirm', isOpen = false }: Fold,
): Html =>
  html`<details class="${look}" id="fold-${actionId(act, about)}"${(isOpen || rejectedIn(tried, actionId(act, about))) && html` open`}><summary>${name}</summary>${form}</details>`;

/** A name that tells who does not see where it stands what it is about. */
export const nameOf = (does: string, what: string, { tell }: PageReader): Html =>
  tell('page.beds.named', { does, what, unseen });

/** What only those are told who do not see where it stands. */
export const unseen = (text: Html): Html => html`<span class="unseen">${text}</span>`;

interface Confirmed {
  readonly act: string;
  readonly about: string;
  readonly with?: Readonly<Record<string, string>>;
  readonly question: string;
  readonly button: string;
}

/** A change that is asked for twice, with and without a script. */
export const confirmed = (name: HtmlPart, asked: AskedQuestion, { question, ...form }: Confirmed): Html =>
  foldedForm(actionForm(asked, { ...form, fields: () => html`<p>${question}</p>` }), asked, { ...form, name });
