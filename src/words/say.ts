import { TYPE } from '@formatjs/icu-messageformat-parser';
import { IntlMessageFormat } from 'intl-messageformat';
import type { ParamKind, Say } from '../basics/fact.js';
import { de } from './de.js';
import { en } from './en.js';
import { type Catalogue, type FactCode, factKinds } from './facts.js';
import { pictureText } from './picture-text.js';
import type { Language, Reader } from './reader.js';
import { valueFor } from './value.js';

export const catalogues: Readonly<Record<Language, Catalogue>> = { en, de };

export type { Say };

const OF_PICTURES = 'picture.';

/** Words facts in a reader's language, units and dates. */
export const sayer =
  (reader: Reader): Say =>
  ({ code, params, also }) => {
    const kinds = factKinds[code as FactCode] as Readonly<Record<string, ParamKind>> | undefined;
    if (!kinds) throw new Error(`no fact is called ${code}`);
    const values = Object.fromEntries(
      Object.entries(kinds).map(([name, kind]) => [name, wordFor(kind, params[name] ?? null, reader)]),
    );
    const format = formatOf(reader.language, code as FactCode);
    const said = format.format(values) as string;
    const isLed = format.getAst()[0]?.type === TYPE.argument;
    const text = code.startsWith(OF_PICTURES) ? pictureText(said, reader.locale) : isLed ? capital(said, reader) : said;
    return also ? `${text} ${sayer(reader)(also)}` : text;
  };

const wordFor = (kind: ParamKind, value: string | number | null, reader: Reader): string | number =>
  (kind === 'crop' || kind === 'crops') && value !== null
    ? String(value)
        .split('\n')
        .map((crop) => cropName(crop, reader.language))
        .join(', ')
    : valueFor(kind, value, reader);

/** A crop's name within a sentence; a custom response curve has the name that the caller gave it. */
export const cropName = (crop: string, language: Language): string =>
  (catalogues[language] as Readonly<Record<string, string>>)[`crop.${crop}`] ?? crop;

/** Capitalizes a sentence, which may begin with a parameter such as a crop. */
const capital = (text: string, { locale }: Reader): string => text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);

/** Caches parsed patterns: parsing one takes longer than making a hundred sentences with it. */
const formats = new Map<string, IntlMessageFormat>();

function formatOf(language: Language, code: FactCode): IntlMessageFormat {
  const key = `${language} ${code}`;
  const known = formats.get(key);
  if (known) return known;
  const made = new IntlMessageFormat(catalogues[language][code], language, undefined, { ignoreTag: true });
  formats.set(key, made);
  return made;
}
