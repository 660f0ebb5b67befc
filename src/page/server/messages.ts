import { parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { LRUCache } from 'lru-cache';
import { pageDe } from '../../words/page-de.js';
import { pageEn } from '../../words/page-en.js';
import type { Language } from '../../words/reader.js';
import { catalogues } from '../../words/say.js';
import { type Message, type Messages, type Speech, speechIn } from '../shell/say.js';

/** What the page needs of the catalogue of facts: what crops are called, and what pictures say. */
const OF_FACTS = /^(crop|picture)\./;

/** Reads a pattern; one without parameters is left as the text that it is. */
function read(code: string, pattern: string): Message {
  const elements = parse(pattern, { ignoreTag: OF_FACTS.test(code) });
  const [first, second] = elements;
  return first?.type === TYPE.literal && second === undefined ? first.value : elements;
}

const readAll = (language: Language, own: Readonly<Record<string, string>>): Messages => {
  const ofFacts = Object.entries(catalogues[language]).filter(([code]) => OF_FACTS.test(code));
  return Object.fromEntries([...ofFacts, ...Object.entries(own)].map(([code, pattern]) => [code, read(code, pattern)]));
};

/** All that is said on the page, in each language. */
export const messages: Readonly<Record<Language, Messages>> = {
  en: readAll('en', pageEn),
  de: readAll('de', pageDe),
};

/** The messages of a language as a module that the page's script imports. */
export const messagesModule = (language: Language): string => `export default ${JSON.stringify(messages[language])};\n`;

/** Which locales there are is for readers to choose; what is kept for one grows to half a megabyte. */
const MAX_SPEECHES = 10;
const speeches = new LRUCache<string, Speech>({ max: MAX_SPEECHES });

/** The page's messages in a language, with numbers as a locale of it writes them. */
export function speech(language: Language, locale: string): Speech {
  const known = speeches.get(locale);
  if (known) return known;
  const made = speechIn(messages[language], locale);
  speeches.set(locale, made);
  return made;
}
