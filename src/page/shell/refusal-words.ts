import { fieldLabel, refusalCode } from '../form/form-names.js';
import type { ProblemBody } from './api.js';
import { type Html, html } from './html.js';
import type { PageReader } from './words.js';

/** A refusal as sentences, in the page's words. */
export function refusalSaid({ code, detail, errors = [] }: ProblemBody, { say }: PageReader): Html[] {
  const plain = refusalCode(code);
  if (plain) return [html`${say(plain)}`];
  return errors.length > 0 ? errors.map((fault) => faultSaid(fault, { say }, 'act')) : [html`${detail}`];
}

/** A fault, after its field's label. */
export function faultSaid(fault: WordedFault, { say }: Pick<PageReader, 'say'>, form: 'ask' | 'act'): Html {
  const label = fieldLabel(fieldOf(fault), form);
  return label === undefined ? html`${fault.detail}` : html`<b>${say(label)}</b> ${fault.detail}`;
}

export type WordedFault = NonNullable<ProblemBody['errors']>[number];

/** True if the same request may succeed later. */
export const mayPass = ({ status }: Pick<ProblemBody, 'status'>): boolean =>
  status === 0 || status === 429 || status >= 500;

/** The form's field of a query parameter, which may have its full name. */
export const fieldOf = ({ parameter, pointer }: WordedFault): string =>
  (parameter ?? pointer ?? '').split(/[./]/).at(-1)!;
