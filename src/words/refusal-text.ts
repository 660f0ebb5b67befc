import { errorFact, type FactText, type Fault, fieldOf, isFault, type Sentence } from '../basics/errors.js';
import type { Params } from '../basics/fact.js';
import type { Say } from './say.js';

/** What a refusal says, sentence by sentence. */
export const refusalText = (said: readonly Sentence[], say: Say): string =>
  said.map((sentence) => (isFault(sentence) ? faultText(sentence, say) : inWords(sentence, say))).join(' ');

/** The messages that it is made of, and the parameters of all of them; nothing where it came as text. */
export function messagesOf(said: readonly Sentence[]): {
  readonly messages?: readonly string[];
  readonly params?: Params;
} {
  const facts = said.map((one) => (isFault(one) ? one.detail : one)).filter((one) => typeof one !== 'string');
  if (facts.length === 0) return {};
  return { messages: facts.map(({ code }) => code), params: Object.assign({}, ...facts.map(({ params }) => params)) };
}

const inWords = (words: FactText, say: Say): string => (typeof words === 'string' ? words : say(words));

/** A fault as a sentence: with the name of its field where its words go on from it. */
function faultText(fault: Fault, say: Say): string {
  const detail = inWords(fault.detail, say);
  const goesOn = /^\p{Ll}/u.test(detail);
  const sentence = goesOn ? `${fieldOf(fault) || say(errorFact('not-understood.field'))} ${detail}` : detail;
  return /[.?!]$/.test(sentence) ? sentence : `${sentence}.`;
}
