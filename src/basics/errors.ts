import { type Fact, type FactKinds, factsOf, type Params } from './fact.js';

/** Every way in which a request can fail. `http/problems.ts` maps each to its HTTP status. */
export const errorCodes = [
  'not-json',
  'not-csv',
  'no-readings',
  'not-understood',
  'too-large',
  'unsupported-media-type',
  'unsupported-coding',
  'not-acceptable',
  'bad-request',
  'key-in-address',
  'misdirected',
  'too-slow',
  'not-found',
  'method-not-allowed',
  'unauthorized',
  'foreign-origin',
  'precondition-failed',
  'has-beds',
  'has-sowings',
  'quota-full',
  'too-many-requests',
  'too-much-at-once',
  'storage-unavailable',
  'storage-full',
  'storage-damaged',
  'busy',
  'stopping',
  'unknown-crop',
  'unknown-place',
  'unknown-bed',
  'unknown-lot',
  'unknown-locality',
  'too-many-seeds',
  'time-zone-needed',
  'no-past-years',
  'no-climate-near',
  'no-latitude',
  'starts-after-sowing',
  'ends-too-early',
  'too-few-readings',
  'gap-too-long',
  'choose-medium',
  'choose-unit',
  'choose-column',
  'choose-date-order',
  'choose-clock',
  'choose-decimal-mark',
  'choose-locality',
  'internal',
] as const;

export type ErrorCode = (typeof errorCodes)[number];

/** A fact; or a ready sentence, in rooms that do not use facts yet. */
export type FactText = Fact | string;

/**
 * A correction that the caller can choose: send `value` as the parameter. The messages `<code>.reads` and
 * `<code>.consequence` say how the request then reads and what follows.
 */
export interface Choice {
  readonly value: string;
  readonly code: string;
  readonly params: Params;
}

/** Location of the fault in the request, and how to mend it. Paths are keys of the request body, in order. */
export interface Fault {
  readonly path?: readonly (string | number)[];
  /** The query parameter at fault, when the fault is not in a JSON body. */
  readonly parameter?: string;
  readonly line?: number;
  /** Whole sentences, or words that go on from the name of the field: "must be a number; it was ...". */
  readonly detail: FactText;
  readonly choices?: readonly Choice[];
}

/**
 * A sentence of a refusal. A fault stands for its detail, prefixed with the field's name when the detail continues it.
 */
export type Sentence = FactText | Fault;

/** Time to wait before a refused request may be sent again, and the limits that refused it. */
export interface Later {
  readonly retryAfterS?: number;
  readonly violatedPolicies?: readonly string[];
}

/** A request that cannot be answered, with the facts whose sentences say why and how to mend it. */
export class RequestError extends Error {
  override readonly name = 'RequestError';
  /** The sentences of the refusal, in order. */
  readonly sentences: readonly Sentence[];
  constructor(
    readonly code: ErrorCode,
    sentences: FactText | readonly Sentence[],
    readonly faults: readonly Fault[] = [],
    readonly later: Later = {},
    /** Extra members of the problem document. */
    readonly members: Readonly<Record<string, string | number>> = {},
  ) {
    const all = Array.isArray(sentences) ? (sentences as readonly Sentence[]) : [sentences as FactText];
    super(all.map(inShort).join('; '));
    this.sentences = all;
  }
}

/** A sentence in the form that logs use. */
const inShort = (sentence: Sentence): string => {
  if (typeof sentence === 'string') return sentence;
  if (!isFault(sentence)) return `${sentence.code} ${JSON.stringify(sentence.params)}`;
  return [fieldOf(sentence), inShort(sentence.detail)].filter(Boolean).join(' ');
};

export const isFault = (sentence: Sentence): sentence is Fault => typeof sentence !== 'string' && 'detail' in sentence;

/** Faults reported at most; more would tell the caller nothing new. */
const MAX_FAULTS = 20;

export const errorFacts = {
  'not-understood.request': {},
  'not-understood.field': {},
  'busy.queue': {},
  'busy.deadline': {},
  'stopping.worker': {},
  'not-understood.more': { more: 'count', isAtLeast: ['yes', 'no'], shown: 'count?' },
} as const satisfies FactKinds;
export const errorFact = factsOf(errorFacts);

/**
 * Combines all faults into one error. Its text gives the first fault in full.
 *
 * @param count  Total number of faults, when not all are given.
 * @param isAtLeast True when the search stopped early, so that there may be more.
 */
export function notUnderstood(faults: readonly Fault[], count = faults.length, isAtLeast = false): RequestError {
  const first: Sentence = faults[0] ?? errorFact('not-understood.request');
  const more = errorFact('not-understood.more', {
    more: count - 1,
    isAtLeast: isAtLeast ? 'yes' : 'no',
    shown: count > MAX_FAULTS ? MAX_FAULTS : null,
  });
  return new RequestError('not-understood', count > 1 ? [first, more] : [first], faults.slice(0, MAX_FAULTS));
}

/** The field of a fault as a person would write it, `temperatures[0].daily[2].max`; '' when the fault has no field. */
export const fieldOf = ({ parameter, path = [] }: Fault): string =>
  parameter ?? path.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i > 0 ? '.' : ''}${key}`)).join('');

/** A numerical function called outside its domain: a bug of ours, never the caller's fault. */
export class ScienceError extends Error {
  override readonly name = 'ScienceError';
  constructor(
    readonly code: 'out-of-range' | 'empty',
    message: string,
  ) {
    super(message);
  }
}

/**
 * Long work that stopped because nobody waits for its answer any more. It is neither answer nor fault and is never
 * shown.
 */
export class StoppedError extends Error {
  override readonly name = 'StoppedError';
  constructor() {
    super('the work was ended before it was done');
  }
}

/** Something that the answer rests on or that the grower should heed; or the refusal of one part of an answer. */
export type Note = Fact | { readonly code: string; readonly text: string | readonly Sentence[] };
