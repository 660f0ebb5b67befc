import { type Fact, type FactKinds, factsOf, type Params } from './fact.js';

/** Every way in which a request can fail. `http/problems.ts` says what each means over HTTP. */
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
  'too-many-seeds',
  'time-zone-needed',
  'no-past-years',
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
  'internal',
] as const;

export type ErrorCode = (typeof errorCodes)[number];

/** What is told: a fact, or a sentence where a room has not been brought to facts yet. */
export type FactText = Fact | string;

/**
 * A way out that the caller can take: to send `value` as the parameter. How the request then reads, and what follows, are
 * the messages `<code>.reads` and `<code>.consequence`.
 */
export interface Choice {
  readonly value: string;
  readonly code: string;
  readonly params: Params;
}

/** Where in the request the fault lies, and how to mend it. Paths are keys of the request body, in order. */
export interface Fault {
  readonly path?: readonly (string | number)[];
  /** The query parameter at fault, where the request has no body of ours. */
  readonly parameter?: string;
  readonly line?: number;
  /** Whole sentences, or words that go on from the name of the field: "must be a number; it was ...". */
  readonly detail: FactText;
  readonly choices?: readonly Choice[];
}

/** A sentence of a refusal. A fault stands for its detail, with the name of its field in front where it goes on from it. */
export type Sentence = FactText | Fault;

/** When a request that is refused now may be sent again, and which limits refused it. */
export interface Later {
  readonly retryAfterS?: number;
  readonly violatedPolicies?: readonly string[];
}

/** A request that cannot be answered: why, as facts whose sentences say how to mend it. */
export class RequestError extends Error {
  override readonly name = 'RequestError';
  /** What is told of it, in this order. */
  readonly said: readonly Sentence[];
  constructor(
    readonly code: ErrorCode,
    said: FactText | readonly Sentence[],
    readonly faults: readonly Fault[] = [],
    readonly later: Later = {},
    /** What the problem says beside its text, in members of its own. */
    readonly members: Readonly<Record<string, string | number>> = {},
  ) {
    const sentences = Array.isArray(said) ? (said as readonly Sentence[]) : [said as FactText];
    super(sentences.map(inShort).join('; '));
    this.said = sentences;
  }
}

/** A sentence as logs have it. */
const inShort = (sentence: Sentence): string => {
  if (typeof sentence === 'string') return sentence;
  if (!isFault(sentence)) return `${sentence.code} ${JSON.stringify(sentence.params)}`;
  return [fieldOf(sentence), inShort(sentence.detail)].filter(Boolean).join(' ');
};

export const isFault = (sentence: Sentence): sentence is Fault => typeof sentence !== 'string' && 'detail' in sentence;

/** More faults than this say nothing new. */
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
 * One error for all that was found wrong. It tells the first fault in full.
 *
 * @param count  How many there are in all, where not every one is given.
 * @param isAtLeast Was the search ended early, so that there may be more?
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

/** The field of a fault as a person would write it, `temperatures[0].daily[2].max`; '' where it is of none. */
export const fieldOf = ({ parameter, path = [] }: Fault): string =>
  parameter ?? path.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i > 0 ? '.' : ''}${key}`)).join('');

/** A numerical function called outside what it is defined for: our mistake, never the caller's. */
export class ScienceError extends Error {
  override readonly name = 'ScienceError';
  constructor(
    readonly code: 'out-of-range' | 'empty',
    message: string,
  ) {
    super(message);
  }
}

/** Long work that was ended because nobody waits for its answer any more. No answer and no fault: it is never shown. */
export class StoppedError extends Error {
  override readonly name = 'StoppedError';
  constructor() {
    super('the work was ended before it was done');
  }
}

/** Something the answer rests on, or something the grower should heed; or a refusal that a part of an answer met. */
export type Note = Fact | { readonly code: string; readonly text: string | readonly Sentence[] };
