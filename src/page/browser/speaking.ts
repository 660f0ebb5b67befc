import type { Language } from '../../words/reader.js';
import { type Messages, speechIn } from '../shell/say.js';
import type { PageReader } from '../shell/words.js';
import { one } from './elements.js';

const { default: messages } = (await import(one<HTMLLinkElement>('#messages')!.href)) as { default: Messages };
const locale = document.documentElement.lang;

/** Messages in the language that the page came in. */
export const speaking: Omit<PageReader, 'degrees' | 'today'> = {
  ...speechIn(messages, locale),
  language: locale.slice(0, 2) as Language,
  locale,
};

export const { say } = speaking;

/** The reader, with the form's present choices. */
export const readerNow = (): Omit<PageReader, 'today'> => ({
  ...speaking,
  degrees: one<HTMLInputElement>('[name="degrees"]:checked')?.value === 'F' ? 'F' : 'C',
});
