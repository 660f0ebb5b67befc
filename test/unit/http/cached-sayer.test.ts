import { describe, expect, it } from 'vitest';
import { cachedSayer } from '../../../src/http/negotiation/cached-sayer.js';
import { plainReader, readerOf } from '../../../src/words/reader.js';
import { sayer } from '../../../src/words/say.js';

const readers = [plainReader, readerOf('en-US'), readerOf(undefined, 'de'), readerOf(undefined, 'en', 'F')];
const facts = [25, 25.5].flatMap((thresholdC) => {
  const heat = { code: 'task.mind-heat', params: { thresholdC } };
  const others = [
    { code: 'task.count', params: {} },
    { code: 'as-said', params: { words: 'Water first.' } },
    { code: 'gap.too-late', params: { crop: 'carrot' } },
    { code: 'hot-first-day', params: { hours: 1, hotThresholdC: thresholdC } },
    { code: 'hot-first-day', params: { hours: 2, hotThresholdC: thresholdC } },
  ];
  return [heat, ...others, ...others.map((also) => ({ ...heat, also }))];
});

describe('what was said before', () => {
  it('is said again in the same words, to each reader in theirs', () => {
    const all = readers.flatMap((reader) => facts.map((fact) => ({ reader, fact, text: sayer(reader)(fact) })));
    expect(new Set(all.map(({ text }) => text)).size).toBeGreaterThan(35);
    for (let time = 0; time < 2; time++) {
      for (const { reader, fact, text } of all) expect(cachedSayer(reader)(fact)).toBe(text);
    }
  });

  it('leaves what is no fact a fault', () => {
    for (let time = 0; time < 2; time++) {
      expect(() => cachedSayer(plainReader)({ code: 'nothing-of-the-kind', params: {} })).toThrow(
        'nothing-of-the-kind',
      );
    }
  });
});
