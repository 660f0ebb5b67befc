import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { describe, expect, test } from 'vitest';
import { pageDe } from '../../../src/words/page-de.js';
import { type PageCode, pageEn } from '../../../src/words/page-en.js';
import type { Language } from '../../../src/words/reader.js';

const catalogues: Readonly<Record<Language, Readonly<Record<PageCode, string>>>> = { en: pageEn, de: pageDe };
const codes = Object.keys(pageEn) as PageCode[];

/** All elements of a message, those within others too. */
const allOf = (elements: readonly MessageFormatElement[]): MessageFormatElement[] =>
  elements.flatMap((one) => [
    one,
    ...(one.type === TYPE.tag ? allOf(one.children) : []),
    ...(one.type === TYPE.plural || one.type === TYPE.select
      ? Object.values(one.options).flatMap(({ value }) => allOf(value))
      : []),
  ]);

/** Parameters and tags by their names, each with what it is. */
const namedIn = (pattern: string): string[] => [
  ...new Set(
    allOf(parse(pattern)).flatMap((one) =>
      one.type === TYPE.literal || one.type === TYPE.pound
        ? []
        : [one.type === TYPE.tag ? `<${one.value}>` : one.value],
    ),
  ),
];

describe.each(codes)('the page’s message %s', (code) => {
  test('has the same parameters and tags in every language', () => {
    expect(namedIn(pageDe[code]).sort()).toEqual(namedIn(pageEn[code]).sort());
  });

  test.each(['en', 'de'] as const)('has every plural form in %s, and another for any choice', (language) => {
    const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
    for (const one of allOf(parse(catalogues[language][code]))) {
      if (one.type === TYPE.plural) expect(Object.keys(one.options)).toEqual(expect.arrayContaining(forms));
      if (one.type === TYPE.select) expect(Object.keys(one.options)).toContain('other');
    }
  });

  test.each(['en', 'de'] as const)('chooses among the same in %s as in English', (language) => {
    const choices = (pattern: string): Record<string, string[]> =>
      Object.fromEntries(
        allOf(parse(pattern)).flatMap((one) =>
          one.type === TYPE.select ? [[one.value, Object.keys(one.options).sort()]] : [],
        ),
      );
    expect(choices(catalogues[language][code])).toEqual(choices(pageEn[code]));
  });
});
