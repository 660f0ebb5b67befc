import { errorFact, type FactText, type Fault, fieldOf, isFault, type Sentence } from '../basics/errors.js';
import type { Params } from '../basics/fact.js';
import type { Say } from './say.js';

/** A refusal as text. */
export const refusalText = (said: readonly Sentence[], say: Say): string =>
  said.map((sentence) => (isFault(sentence) ? faultText(sentence, say) : inWords(sentence, say))).join(' ');

/** The codes of its messages and the parameters of all of them; empty for a refusal that came as text. */
export function messagesOf(said: readonly Sentence[]): {
  readonly messages?: readonly string[];
  readonly params?: Params;
} {
  const facts = said.map((one) => (isFault(one) ? one.detail : one)).filter((one) => typeof one !== 'string');
  if (facts.length === 0) return {};
  return { messages: facts.map(({ code }) => code), params: Object.assign({}, ...facts.map(({ params }) => params)) };
}

const inWords = (words: FactText, say: Say): string => (typeof words === 'string' ? words : say(words));

/** A fault as a sentence, after the name of its field if its words continue from it. */
function faultText(fault: Fault, say: Say): string {
  const detail = inWords(fault.detail, say);
  const goesOn = /^\p{Ll}/u.test(detail);
  const sentence = goesOn ? `${fieldOf(fault) || say(errorFact('not-understood.field'))} ${detail}` : detail;
  return /[.?!]$/.test(sentence) ? sentence : `${sentence}.`;
}
