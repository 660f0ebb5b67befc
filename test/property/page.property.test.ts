import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fields, linkTo, questionFrom, sources, viewNames } from '../../src/page/form/question.js';
import { html } from '../../src/page/shell/html.js';
import { readerIn } from '../unit/page/readers.js';

const KEPT = { beds: [{ id: 'north' }, { id: 'frame' }] };
const text = fc.oneof(fc.string({ maxLength: 40 }), fc.string({ unit: 'binary', maxLength: 40 }));

/** What a form may send: any text in any field, days in any number, names that there are not. */
const said = fc
  .record({
    texts: fc.dictionary(fc.constantFrom(...fields, 'view', 'source', 'degrees', 'nonsense', '__proto__'), text),
    view: fc.option(fc.constantFrom(...viewNames)),
    source: fc.option(fc.constantFrom(...sources)),
    days: fc.array(fc.tuple(text, text), { maxLength: 20 }),
  })
  .map(({ texts, view, source, days }) => {
    const query = new URLSearchParams(texts);
    if (view) query.append('view', view);
    if (source) query.append('source', source);
    for (const [min, max] of days) {
      query.append('min', min);
      query.append('max', max);
    }
    return query;
  });

describe('a link', () => {
  it('holds all of the question that was asked', () => {
    fc.assert(
      fc.property(said, (query) => {
        const question = questionFrom(query, KEPT);
        const again = questionFrom(new URLSearchParams(linkTo(question).slice('/?'.length)), KEPT);
        const isTyped = question.days.some(({ min, max }) => min !== '' || max !== '');
        expect(again).toEqual(isTyped ? question : { ...question, days: [] });
      }),
    );
  });
});

describe('markup', () => {
  it('has no element in it that a text brought along', () => {
    fc.assert(
      fc.property(text, (hostile) => {
        const told = readerIn('de').tell('page.plan.dated', {
          b: (inner) => html`<b>${inner}</b>`,
          dates: hostile,
          text: hostile,
        });
        const { markup } = html`<p title="${hostile}">${hostile}${told}</p>`;
        expect(markup.match(/[<>]/g)).toHaveLength(8);
        expect(markup.match(/"/g)).toHaveLength(2);
      }),
    );
  });
});
