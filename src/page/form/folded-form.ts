import { type Html, html, type Part } from '../shell/html.js';
import type { Asked } from '../shell/view.js';
import type { Reader } from '../shell/words.js';
import { actForm, actId, triedIn } from './act.js';

interface Fold {
  readonly act: string;
  readonly about: string;
  readonly name: Part;
  /** `add`: set apart from what stands above it, for something more to be kept. */
  readonly look?: 'add' | 'confirm';
  readonly isOpen?: boolean;
}

/** A form that is seldom wanted, folded under a name; open where what was sent by it was refused. */
export const foldedForm = (
  form: Html,
  { tried }: Pick<Asked, 'tried'>,
  { act, about, name, look = 'confirm', isOpen = false }: Fold,
): Html =>
  html`<details class="${look}" id="fold-${actId(act, about)}"${(isOpen || triedIn(tried, actId(act, about))) && html` open`}><summary>${name}</summary>${form}</details>`;

/** A name that tells who does not see where it stands what it is about. */
export const nameOf = (does: string, what: string, { tell }: Reader): Html =>
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
export const confirmed = (name: Part, asked: Asked, { question, ...form }: Confirmed): Html =>
  foldedForm(actForm(asked, { ...form, fields: () => html`<p>${question}</p>` }), asked, { ...form, name });
