import { describe, expect, test } from 'vitest';
import { readerOf } from '../../../src/words/reader.js';
import { sayer } from '../../../src/words/say.js';

describe('what a picture says', () => {
  test('ends once where a date cut short ends it', () => {
    const params = {
      tense: 'was',
      on: '7. Aug.',
      range: 'span',
      from: '7. Aug.',
      to: '8. Aug.',
      fromSeedlings: 20,
      toSeedlings: 66,
      seeds: null,
    };
    const said = sayer(readerOf('de'))({ code: 'picture.half-up', params });
    expect(said).toContain('8. Aug. ');
    expect(said).not.toContain('..');
  });
});
