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

/** A way out that the caller can take: send `value` as the parameter, and it `reads` so, with this consequence. */
export interface Choice {
  readonly value: string;
  readonly reads: string;
  readonly consequence: string;
}

/** Where in the request the fault lies, and how to mend it. Paths are keys of the request body, in order. */
export interface Fault {
  readonly path?: readonly (string | number)[];
  /** The query parameter at fault, where the request has no body of ours. */
  readonly parameter?: string;
  readonly line?: number;
  readonly detail: string;
  readonly choices?: readonly Choice[];
}

/** When a request that is refused now may be sent again, and which limits refused it. */
export interface Later {
  readonly retryAfterS?: number;
  readonly violatedPolicies?: readonly string[];
}

/** A request that cannot be answered, in words that say how to mend it. */
export class RequestError extends Error {
  override readonly name = 'RequestError';
  constructor(
    readonly code: ErrorCode,
    message: string,
    readonly faults: readonly Fault[] = [],
    readonly later: Later = {},
    /** What the problem says beside its text, in members of its own. */
    readonly members: Readonly<Record<string, string | number>> = {},
  ) {
    super(message);
  }
}

/** More faults than this say nothing new. */
const MOST_FAULTS = 20;

/**
 * One error for all that was found wrong. Its message tells the first fault in full.
 *
 * @param faults Details are whole sentences, or go on from the name of the field: "must be a number; it was ...".
 * @param count  How many there are in all, where not every one is given.
 * @param isAtLeast Was the search ended early, so that there may be more?
 */
export function notUnderstood(faults: readonly Fault[], count = faults.length, isAtLeast = false): RequestError {
  const [first] = faults;
  const name = first?.parameter ?? (pathInWords(first?.path ?? []) || 'The request');
  const detail = first?.detail ?? 'cannot be used';
  const sentence = /^[a-z]/.test(detail) ? `${name} ${detail}` : detail;
  const ended = /[.?!]$/.test(sentence) ? sentence : `${sentence}.`;
  const listed = count > MOST_FAULTS ? `; the first ${MOST_FAULTS} stand under "errors"` : ' under "errors"';
  const more = count > 1 ? ` (${isAtLeast ? 'at least ' : ''}${count - 1} more${listed})` : '';
  return new RequestError('not-understood', ended + more, faults.slice(0, MOST_FAULTS));
}

/** A path as a person would write it: `temperatures[0].daily[2].max`. */
const pathInWords = (path: readonly (string | number)[]): string =>
  path.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i > 0 ? '.' : ''}${key}`)).join('');

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

/** Something the answer rests on, or something the grower should heed. */
export interface Note {
  readonly code: string;
  readonly text: string;
}
