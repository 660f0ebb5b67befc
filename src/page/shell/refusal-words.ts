import { ACT_LABELS, LABELS, refusalInWords } from '../form/form-names.js';
import type { Problem } from './api.js';
import type { Html } from './html.js';
import { saidText } from './said-text.js';
import type { Reader } from './words.js';

/** A refusal in sentences, in the page's words. */
export function refusalSaid({ code, detail, errors = [] }: Problem, reader: Reader): Html[] {
  const plain = refusalInWords(code);
  const sentences = plain ? [plain] : errors.length > 0 ? errors.map(faultSaid) : [detail];
  return sentences.map((one) => saidText(one, reader));
}

/** A fault says of a field what it must be; here by the name that the field has on the page. */
function faultSaid(fault: Fault): string {
  const field = fieldOf(fault);
  const told = fault.detail.replaceAll('ofSeeds', ACT_LABELS.ofSeeds!);
  const sentence = /^\p{Ll}/u.test(told) ? `${ACT_LABELS[field] ?? LABELS[field] ?? field} ${told}` : told;
  return /[.?!]$/.test(sentence) ? sentence : `${sentence}.`;
}

export type Fault = NonNullable<Problem['errors']>[number];

/** Will the same be taken later? */
export const mayPass = ({ status }: Pick<Problem, 'status'>): boolean =>
  status === 0 || status === 429 || status >= 500;

/** The form's field of a query parameter, which may be named in full. */
export const fieldOf = ({ parameter, pointer }: Fault): string => (parameter ?? pointer ?? '').split(/[./]/).at(-1)!;
