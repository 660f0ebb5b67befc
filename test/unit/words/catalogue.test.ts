import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ParamKind } from '../../../src/basics/fact.js';
import { crops } from '../../../src/germination/crops.js';
import { factKinds } from '../../../src/words/facts.js';
import { publishedMessages } from '../../../src/words/published.js';
import { languages, plainReader, readerOf } from '../../../src/words/reader.js';
import { catalogues, sayer } from '../../../src/words/say.js';
import { selectorOf } from '../../../src/words/value.js';

const facts = Object.entries(factKinds) as [keyof typeof factKinds, Readonly<Record<string, ParamKind>>][];
const messages = languages.flatMap((language) => facts.map(([code, kinds]) => ({ language, code, kinds })));

/** Every element of a message, those of its plural and select forms too. */
const elementsOf = (elements: readonly MessageFormatElement[]): MessageFormatElement[] =>
  elements.flatMap((one) => [
    one,
    ...('options' in one ? Object.values(one.options).flatMap(({ value }) => elementsOf(value)) : []),
  ]);
const named = (elements: readonly MessageFormatElement[]): string[] => [
  ...new Set(
    elementsOf(elements).flatMap((one) => (one.type === TYPE.literal || one.type === TYPE.pound ? [] : [one.value])),
  ),
];

/** What a message names whatever is selected in it. */
const alwaysNamed = (elements: readonly MessageFormatElement[]): string[] =>
  elements.flatMap((one) =>
    one.type === TYPE.argument
      ? [one.value]
      : one.type === TYPE.plural
        ? Object.values(one.options).flatMap(({ value }) => alwaysNamed(value))
        : [],
  );

/** Values that a parameter may have, where it is not missing. */
function valuesOf(kind: ParamKind): fc.Arbitrary<string | number | null> {
  if (typeof kind !== 'string') return fc.constantFrom(...kind);
  if (kind.endsWith('?')) return valuesOf(kind.slice(0, -1) as ParamKind);
  if (kind === 'date') return fc.constantFrom('2027-05-03', '2028-02-29');
  if (kind === 'crop') return fc.constantFrom('lettuce', 'my own kale');
  if (kind === 'crops') return fc.constantFrom('lettuce', 'carrot\nmy own kale');
  if (kind === 'text') return fc.constantFrom('Quillmere', '{odd} text');
  return kind === 'count' ? fc.nat({ max: 400 }) : fc.double({ min: -40, max: 400, noNaN: true });
}

describe.each(languages)('the catalogue in %s', (language) => {
  test('has a message for every fact, and no other but the names of crops', () => {
    const codes = Object.keys(catalogues[language]).filter((code) => !code.startsWith('crop.'));
    expect(codes.sort()).toEqual(Object.keys(factKinds).sort());
  });
});

describe.each(messages)('$code in $language', ({ language, code, kinds }) => {
  const elements = parse(catalogues[language][code], { ignoreTag: true });

  test('names all of its parameters, and no others', () => {
    // Where there is one kind of question only, nothing turns on which it is.
    const needed = Object.keys(kinds).filter((name) => name !== 'about' || kinds.about!.length > 1);
    expect(named(elements).sort()).toEqual(needed.sort());
  });

  test('has no unit of its own: a reader’s unit comes with the parameter', () => {
    const literals = elementsOf(elements).flatMap((one) => (one.type === TYPE.literal ? [one.value] : []));
    // Units alone may be talked of: "in °C, °F or K".
    for (const literal of literals) expect(literal).not.toMatch(/(?:\d|^ )°[CF]|\d (?:°[CF]|cm|mm)\b/);
  });

  test('has every plural form of the language', () => {
    const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
    for (const one of elementsOf(elements)) {
      if (one.type === TYPE.plural) expect(Object.keys(one.options)).toEqual(expect.arrayContaining(forms));
    }
  });

  test('has a form for every code that a parameter can be, and for none', () => {
    for (const one of elementsOf(elements)) {
      if (one.type !== TYPE.select) continue;
      const kind = kinds[one.value]!;
      const possible = typeof kind === 'string' ? ['none'] : kind.map(selectorOf);
      for (const option of Object.keys(one.options)) expect([...possible, 'other']).toContain(option);
      expect(Object.keys(one.options)).toContain('other');
      if (String(kind).endsWith('?')) expect(Object.keys(one.options)).toContain('none');
    }
  });

  test('names what may be missing only where something is selected', () => {
    for (const name of alwaysNamed(elements)) expect(String(kinds[name])).not.toMatch(/\?$/);
  });

  test('makes a sentence of any of its parameters, for any reader', () => {
    const params = fc.record(Object.fromEntries(Object.entries(kinds).map(([name, kind]) => [name, valuesOf(kind)])));
    fc.assert(
      fc.property(params, fc.constantFrom('C', 'F'), (one, textUnit) => {
        const text = sayer(readerOf(undefined, language, textUnit as 'C' | 'F'))({ code, params: one });
        expect(text).toMatch(/\S/);
        expect(text).not.toMatch(/undefined|NaN|\bnone\b/);
      }),
      { numRuns: 30 },
    );
  });
});

describe.each(languages)('what is known of crops, in %s', (language) => {
  test.each([...crops.values()])('$id has a name, and its cautions are whole sentences', ({ id, cautions }) => {
    expect(catalogues[language]).toHaveProperty([`crop.${id}`]);
    for (const textUnit of ['C', 'F'] as const) {
      for (const caution of cautions) {
        const text = sayer(readerOf(undefined, language, textUnit))(caution);
        expect(text).toMatch(/[.]$/);
        expect(text).not.toMatch(/\bnone\b|undefined/);
        if (textUnit === 'F') expect(text).not.toContain('°C');
      }
    }
  });
});

describe('a parameter', () => {
  test.each(facts)('of %s has a name that ends in its unit', (_, kinds) => {
    const endings: Readonly<Record<string, RegExp>> = {
      celsius: /C$/,
      kelvin: /K$/,
      cm: /Cm$/,
      mm: /Mm$/,
      date: /Date$|On$|^(from|to|by|on|date)$/,
    };
    for (const [name, kind] of Object.entries(kinds)) {
      const ending = endings[String(kind).replace('?', '')];
      if (ending) expect(name).toMatch(ending);
    }
  });
});

describe('a published message', () => {
  test('has the unit of a plain number in it', () => {
    expect(publishedMessages('en').deep).toBe(
      '{depthCm} cm is more than twice the usual {usualCm} cm: seedlings come later and weaker, or not at all.',
    );
    expect(publishedMessages('de')['hot-first-day']).toContain('über {hotThresholdC} °C;');
  });
});

describe('a reader', () => {
  const params = { hours: 1, hotThresholdC: 24.8 };

  test.each([
    ['en-US,en;q=0.9', 'C', 'In its first day the seed lies 1 hour above 24.8 °C'],
    ['en-US', 'F', 'In its first day the seed lies 1 hour above 76.6 °F'],
    ['fr, de;q=0.7, en;q=0.3', 'C', 'Am ersten Tag liegt die Saat 1 Stunde über 24,8 °C'],
    ['fr', 'C', 'In its first day the seed lies 1 hour above 24.8 °C'],
    ['*', 'C', 'In its first day the seed lies 1 hour above 24.8 °C'],
    ['de;q=0, en;q=0.1', 'C', 'In its first day the seed lies 1 hour above 24.8 °C'],
  ] as const)('who asks for %s in °%s gets: %s', (header, unit, text) => {
    expect(sayer(readerOf(header, undefined, unit))({ code: 'hot-first-day', params })).toContain(text);
  });

  test.each([
    [undefined, '3 May 2027'],
    ['en-US', 'May 3, 2027'],
    ['de-AT', '3. Mai 2027'],
    ['en-u-ca-buddhist', '3 May 2027'],
    ['x'.repeat(4000), '3 May 2027'],
  ])('of %s is told a date as %s', (header, date) => {
    expect(sayer(readerOf(header))({ code: 'old-test', params: { testedOn: '2027-05-03' } })).toContain(date);
  });

  test('in °F is told 12 kelvin more as 22 °F more, and a depth in inches', () => {
    const say = sayer({ ...plainReader, textUnit: 'F' });
    expect(say({ code: 'own-rows', params: { hotThresholdC: 25, marginK: 12 } })).toMatch(/within 22 °F.*above 77 °F/);
    expect(say({ code: 'deep', params: { depthCm: 5, usualCm: 1.3 } })).toContain(
      '2 in is more than twice the usual 0.5 in',
    );
  });
});

test.each([
  ['en', '20 May'],
  ['en-US', 'May 20'],
  ['de', '20. Mai'],
])('a day of each year is told without a year: %s, %s', (header, day) => {
  const unused = { code: 'frost-date-unused', params: { side: 'spring', aroundOn: '05-20' } };
  expect(sayer(readerOf(header))(unused)).toContain(`${day} `);
});

describe('a date that is none', () => {
  test('is told as it came', () => {
    const params = { from: 'June', was: '2028-07-31', wasKind: 'value' };
    expect(sayer(plainReader)({ code: 'field.before-from', params })).toContain('June');
  });
});
