import { parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { LRUCache } from 'lru-cache';
import { pageDe } from '../../words/page-de.js';
import { pageEn } from '../../words/page-en.js';
import type { Language } from '../../words/reader.js';
import { catalogues } from '../../words/say.js';
import { type Message, type Messages, type Speech, speechIn } from '../shell/say.js';

/** The fact messages that the page needs: names of crops, and texts of pictures. */
const OF_FACTS = /^(crop|picture)\./;

/** Parses a pattern; one without parameters stays plain text. */
function read(code: string, pattern: string): Message {
  const elements = parse(pattern, { ignoreTag: OF_FACTS.test(code) });
  const [first, second] = elements;
  return first?.type === TYPE.literal && second === undefined ? first.value : elements;
}

const readAll = (language: Language, own: Readonly<Record<string, string>>): Messages => {
  const ofFacts = Object.entries(catalogues[language]).filter(([code]) => OF_FACTS.test(code));
  return Object.fromEntries([...ofFacts, ...Object.entries(own)].map(([code, pattern]) => [code, read(code, pattern)]));
};

/** All messages of the page, by language. */
export const messages: Readonly<Record<Language, Messages>> = {
  en: readAll('en', pageEn),
  de: readAll('de', pageDe),
};

/** The messages of a language as a module for the page's script. */
export const messagesModule = (language: Language): string => `export default ${JSON.stringify(messages[language])};\n`;

/** Maximum cached speeches: readers choose the locale, and one speech grows to half a megabyte. */
const MAX_SPEECHES = 10;
const speeches = new LRUCache<string, Speech>({ max: MAX_SPEECHES });

/** The page's messages in a language, with numbers formatted for its locale. */
export function speech(language: Language, locale: string): Speech {
  const known = speeches.get(locale);
  if (known) return known;
  const made = speechIn(messages[language], locale);
  speeches.set(locale, made);
  return made;
}
