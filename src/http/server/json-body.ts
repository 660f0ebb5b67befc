import { RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';

/** Maximum nesting of lists and objects: the deepest question has 7 (RFC 8259 §9 lets a reader set such limits). */
const MAX_DEPTH = 64;
/** Maximum fields of one object: the largest has 30. */
const MAX_FIELDS = 1000;
/** Maximum values in all: 4 MB of the shortest readings, at 20 bytes and two values each, have 420,000. */
const MAX_VALUES = 500_000;

const QUOTE = 0x22;
const COMMA = 0x2c;
const BACKSLASH = 0x5c;
const OPEN_LIST = 0x5b;
const CLOSE_LIST = 0x5d;
const OPEN_OBJECT = 0x7b;
const CLOSE_OBJECT = 0x7d;

/** Parses JSON, or reports where it breaks off; refuses what would take long to parse before parsing it. */
export function parseJson(body: Buffer): unknown {
  refuseBoundless(body);
  const text = body.toString();
  if (text.trim() === '') throw new RequestError('not-json', requestRefusal('not-json.empty'));
  try {
    return JSON.parse(text);
  } catch (error) {
    const position = Number(/position (\d+)/.exec(String(error))?.[1] ?? text.length);
    const before = text.slice(0, position).split('\n');
    throw new RequestError(
      'not-json',
      requestRefusal('not-json.broken', { line: before.length, character: before.at(-1)!.length + 1 }),
    );
  }
}

/** One pass over bytes that may not be JSON: it only counts brackets and commas outside of strings. */
function refuseBoundless(body: Uint8Array): void {
  const fields = new Uint32Array(MAX_DEPTH + 1);
  const isObject = new Uint8Array(MAX_DEPTH + 1);
  let depth = 0;
  let values = 0;
  for (let i = 0; i < body.length; i++) {
    const byte = body[i];
    if (byte === QUOTE) {
      for (i++; i < body.length && body[i] !== QUOTE; i++) if (body[i] === BACKSLASH) i++;
    } else if (byte === COMMA) {
      if (isObject[depth] && ++fields[depth]! >= MAX_FIELDS) {
        refuse(requestRefusal('not-understood.many-fields', { maxFields: MAX_FIELDS }));
      }
      if (++values >= MAX_VALUES) {
        refuse(requestRefusal('not-understood.many-values', { maxValues: MAX_VALUES }));
      }
    } else if (byte === OPEN_LIST || byte === OPEN_OBJECT) {
      if (++depth > MAX_DEPTH) {
        refuse(requestRefusal('not-understood.deep', { maxDepth: MAX_DEPTH }));
      }
      fields[depth] = 0;
      isObject[depth] = byte === OPEN_OBJECT ? 1 : 0;
    } else if ((byte === CLOSE_LIST || byte === CLOSE_OBJECT) && depth > 0) {
      depth--;
    }
  }
}

function refuse(fact: Fact): never {
  throw new RequestError('not-understood', fact);
}
