import { LRUCache } from 'lru-cache';
import type { Say } from '../../basics/fact.js';
import type { Reader } from '../../words/reader.js';
import { sayer } from '../../words/say.js';
import { readerKey } from './reader.js';

/** Some thousand sentences: the cautions of all crops in a few languages, and the notes of some hundred answers. */
const MAX_CHARS = 1_000_000;

const sentences = new LRUCache<string, string>({
  maxSize: MAX_CHARS,
  sizeCalculation: (text, key) => text.length + key.length,
});

/** Caches the sentences of `sayer`: most repeat, and making one takes ten times as long as looking it up. */
export function cachedSayer(reader: Reader): Say {
  const say = sayer(reader);
  const of = readerKey(reader);
  return (fact) => {
    const key = `${of} ${JSON.stringify([fact.code, fact.params, fact.also])}`;
    const known = sentences.get(key);
    if (known !== undefined) return known;
    const text = say(fact);
    sentences.set(key, text);
    return text;
  };
}
