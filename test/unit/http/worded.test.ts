import { describe, expect, test } from 'vitest';
import { worded } from '../../../src/http/negotiation/worded.js';
import { readerOf } from '../../../src/words/reader.js';
import { sayer } from '../../../src/words/say.js';
import { sayPlainly } from '../words/say-plainly.js';

const heat = { code: 'task.mind-heat', params: { thresholdC: 25 } };
const count = { code: 'task.count', params: {} };

describe('a text with words in it', () => {
  test('has the parameters beside it, and its code only where another names it', () => {
    expect(worded({ task: 'mind-heat', text: heat }, sayPlainly)).toEqual({
      task: 'mind-heat',
      text: 'Heat above 25 °C at the seed.',
      params: { thresholdC: 25 },
    });
    expect(worded({ why: 'too-late', text: { code: 'gap.too-late', params: { crop: 'carrot' } } }, sayPlainly)).toEqual(
      {
        why: 'too-late',
        text: 'Carrot for these weeks would have had to be sown before today.',
        code: 'gap.too-late',
        params: { crop: 'carrot' },
      },
    );
    expect(
      worded({ task: 'count', text: { code: 'verdict.lost', params: { lostPercent: 97 } } }, sayPlainly),
    ).toMatchObject({
      code: 'verdict.lost',
    });
  });

  test('goes on with what is said after it, which stands beside it by itself too', () => {
    const german = sayer(readerOf('de', undefined, 'F'));
    const also = { ...count, text: 'Zählen, was aufgegangen ist, auch wenn nichts zu sehen ist.' };
    expect(worded({ task: 'mind-heat', text: { ...heat, also: count } }, german)).toEqual({
      task: 'mind-heat',
      text: `Hitze über 77 °F an der Saat. ${also.text}`,
      params: { thresholdC: 25 },
      also,
    });
    expect(worded([{ ...heat, also: count }], german)).toEqual([
      { code: 'task.mind-heat', text: `Hitze über 77 °F an der Saat. ${also.text}`, params: { thresholdC: 25 }, also },
    ]);
  });
});
