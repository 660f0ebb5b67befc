import Negotiator from 'negotiator';

/** The languages with a catalogue; the first is the default. */
export const languages = ['en', 'de'] as const;
export type Language = (typeof languages)[number];

/** The reader whom words are for. */
export interface Reader {
  readonly language: Language;
  /** BCP 47 tag of the language, for the format of dates and numbers. */
  readonly locale: string;
  readonly textUnit: 'C' | 'F';
}

/** Locale of each language without a country. */
const DEFAULT_LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de-DE' };
/** Only the country changes the format of dates and numbers here; the rest of a locale would only fill caches. */
const LOCALE = /^([a-z]{2})(?:-[a-z]{4})?-([a-z]{2})\b/i;

export const plainReader: Reader = { language: 'en', locale: DEFAULT_LOCALES.en, textUnit: 'C' };

/**
 * The reader of a request.
 *
 * @param acceptLanguage The header of that name; its most welcome language with a catalogue counts (RFC 9110, 12.5.4),
 *                     otherwise English.
 * @param language Overrides the header.
 */
export function readerOf(
  acceptLanguage: string | undefined,
  language?: Language,
  textUnit: Reader['textUnit'] = 'C',
): Reader {
  if (acceptLanguage !== undefined && acceptLanguage.length > MAX_KNOWN_LENGTH) {
    return readerFor(acceptLanguage, language, textUnit);
  }
  const key = `${language} ${textUnit} ${acceptLanguage}`;
  const reader = known.get(key) ?? readerFor(acceptLanguage, language, textUnit);
  if (known.size < MAX_KNOWN) known.set(key, reader);
  return reader;
}

/** Browsers repeat a few headers, and parsing one takes longer than looking it up. */
const known = new Map<string, Reader>();
const MAX_KNOWN = 500;
const MAX_KNOWN_LENGTH = 100;

function readerFor(
  acceptLanguage: string | undefined,
  language: Language | undefined,
  textUnit: Reader['textUnit'],
): Reader {
  const wanted = new Negotiator({ headers: { 'accept-language': acceptLanguage } }).languages();
  const localeIn = (one: Language): string | undefined => {
    const [, , country] =
      wanted.map((range) => LOCALE.exec(range)).find((found) => found?.[1]?.toLowerCase() === one) ?? [];
    return country && `${one}-${country.toUpperCase()}`;
  };
  const chosen = language ?? wanted.map(languageOf).find((one) => one !== undefined) ?? languages[0];
  return { language: chosen, locale: localeIn(chosen) ?? DEFAULT_LOCALES[chosen], textUnit };
}

const languageOf = (range: string): Language | undefined =>
  languages.find((one) => range.toLowerCase().split('-')[0] === one);
