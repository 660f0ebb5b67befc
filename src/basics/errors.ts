/** Every way in which a request can fail. `http/problems.ts` says what each means over HTTP. */
export const errorCodes = [
  'not-json',
  'not-csv',
  'not-understood',
  'too-large',
  'unsupported-media-type',
  'not-acceptable',
  'bad-request',
  'not-found',
  'method-not-allowed',
  'unauthorized',
  'unknown-crop',
  'unknown-place',
  'unknown-bed',
  'air-not-yet',
  'time-zone-needed',
  'no-past-years',
  'no-latitude',
  'starts-after-sowing',
  'ends-too-early',
  'too-few-readings',
  'gap-too-long',
  'depths-differ',
  'choose-medium',
  'choose-unit',
  'choose-column',
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

/** A request that cannot be answered, in words that say how to mend it. */
export class RequestError extends Error {
  override readonly name = 'RequestError';
  constructor(
    readonly code: ErrorCode,
    message: string,
    readonly faults: readonly Fault[] = [],
  ) {
    super(message);
  }
}

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

/** Something the answer rests on, or something the grower should heed. */
export interface Note {
  readonly code: string;
  readonly text: string;
}
