import { actForm, actId, triedIn } from './act.js';
import { type Html, html, type Part } from './html.js';
import type { Asked } from './view.js';

interface Confirmed {
  readonly act: string;
  readonly about: string;
  readonly with?: Readonly<Record<string, string>>;
  readonly question: string;
  readonly button: string;
}

/** A change that is asked for twice, with and without a script. */
export const confirmed = (name: Part, asked: Asked, { question, ...form }: Confirmed): Html =>
  foldedIn(
    'confirm',
    name,
    form.act,
    form.about,
    actForm(asked, { ...form, fields: () => html`<p>${question}</p>` }),
    asked,
  );

/** A form that is seldom wanted, named for what it does and to what. */
export const unfolding = (
  act: string,
  about: string,
  [does, what]: readonly [string, string],
  form: Html,
  asked: Asked,
): Html => foldedIn('unfold', html`${does}<span class="unseen">: ${what}</span>`, act, about, form, asked);

/** Open where what was sent by it was refused. */
const foldedIn = (how: string, name: Part, act: string, about: string, form: Html, { tried }: Asked): Html =>
  html`<details class="confirm" id="${how}-${actId(act, about)}"${triedIn(tried, actId(act, about)) && html` open`}><summary>${name}</summary>${form}</details>`;
