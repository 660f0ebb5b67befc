import { speech } from '../../../src/page/server/messages.js';
import type { PageReader } from '../../../src/page/shell/words.js';
import { type Language, readerOf } from '../../../src/words/reader.js';

/** A reader of the page, as the service makes one. */
export function readerIn(language: Language, degrees: 'C' | 'F' = 'C', today?: string): PageReader {
  const { locale } = readerOf(undefined, language);
  return { ...speech(language, locale), language, locale, degrees, ...(today !== undefined && { today }) };
}

export const english = readerIn('en');
export const german = readerIn('de');
