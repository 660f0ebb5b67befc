import type { Note } from '../../basics/errors.js';
import type { Fact, Say } from '../../basics/fact.js';
import { messagesOf, refusalText } from '../../words/refusal-text.js';

/** Fields in which a fact becomes a sentence, with its code and parameters beside it. */
const SENTENCES = ['text', 'why', 'detail'] as const;
/** Names of codes that messages are named after, such as `task.thin`: a fact beside its own code needs no second. */
const CODES = ['task', 'action', 'verdict', 'do'] as const;

/** An answer before it is worded: facts for notes, and a fact or a sentence in a single field. */
export type Unworded<T> = T extends { readonly code: string; readonly text: string }
  ? Omit<T, 'code' | 'text' | 'params' | 'also'> & (Note | { readonly code: string; readonly text: Fact })
  : T extends readonly (infer One)[]
    ? readonly Unworded<One>[]
    : T extends object
      ? { [K in keyof T]: K extends (typeof SENTENCES)[number] ? T[K] | Fact : Unworded<T[K]> }
      : T;

/**
 * Words an answer: adds `text` to a fact's `code` and `params`, and replaces a fact in a field `text`, `why` or
 * `detail` by its sentence, with code and parameters beside it. A fact that follows it stands there as `also`. A fact with
 * an empty `text` of its own is worded in its place.
 */
export function worded(content: unknown, say: Say): unknown {
  if (Array.isArray(content)) return content.every(isFlat) ? content : content.map((one) => worded(one, say));
  if (!isRecord(content)) return content;
  // A part worded earlier has its text, under a code that may not be a message's.
  const isUnsaid = isFact(content) && typeof (content as { text?: unknown }).text !== 'string';
  const said: Record<string, unknown> = isUnsaid ? { code: content.code, text: say(content) } : {};
  for (const [name, value] of Object.entries(content)) {
    if (name === 'text' && isUnsaid) continue;
    if (name === 'text' && Array.isArray(value)) {
      // A refusal of a part of the answer, reported in its place.
      Object.assign(said, { text: refusalText(value, say), ...messagesOf(value) });
    } else if (isFact(value) && !('text' in value) && SENTENCES.some((one) => one === name)) {
      const { code, params, also } = value;
      const isCoded = 'code' in content || CODES.some((one) => code === `${one}.${String(content[one])}`);
      Object.assign(said, {
        [name]: say(value),
        ...(isCoded ? {} : { code }),
        params,
        ...(also && { also: worded(also, say) }),
      });
    } else said[name] = name === 'params' ? value : worded(value, say);
  }
  return said;
}

/** True for a row of numbers and texts without facts: most of an answer is such rows, which stay as they are. */
function isFlat(row: unknown): boolean {
  if (typeof row !== 'object' || row === null) return true;
  for (const value of Object.values(row)) if (typeof value === 'object' && value !== null) return false;
  return true;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !(value instanceof Date);

const isFact = (value: unknown): value is Fact =>
  isRecord(value) && typeof value.code === 'string' && isRecord(value.params);
