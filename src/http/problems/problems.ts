import type { Choice, ErrorCode, Fault, RequestError } from '../../basics/errors.js';
import type { Params } from '../../basics/fact.js';
import { problemFact } from '../../contract/problem-facts.js';
import { messagesOf, refusalText } from '../../words/refusal-text.js';
import type { Say } from '../../words/say.js';

/** The HTTP status of each error code. */
export const problemStatuses: Readonly<Record<ErrorCode, number>> = {
  'bad-request': 400,
  'key-in-address': 400,
  misdirected: 421,
  'too-slow': 408,
  'not-json': 400,
  'not-csv': 400,
  'no-readings': 422,
  'not-understood': 422,
  'too-large': 413,
  'unsupported-media-type': 415,
  'unsupported-coding': 415,
  'not-acceptable': 406,
  'not-found': 404,
  'method-not-allowed': 405,
  unauthorized: 401,
  'foreign-origin': 403,
  'precondition-failed': 412,
  'has-beds': 409,
  'has-sowings': 409,
  'quota-full': 409,
  'too-many-requests': 429,
  'too-much-at-once': 429,
  'storage-unavailable': 503,
  'storage-full': 503,
  'storage-damaged': 503,
  busy: 503,
  stopping: 503,
  'unknown-crop': 422,
  'unknown-place': 422,
  'unknown-bed': 422,
  'unknown-lot': 422,
  'unknown-locality': 422,
  'too-many-seeds': 422,
  'time-zone-needed': 422,
  'no-past-years': 422,
  'no-climate-near': 422,
  'no-latitude': 422,
  'starts-after-sowing': 422,
  'ends-too-early': 422,
  'too-few-readings': 422,
  'gap-too-long': 422,
  'choose-medium': 422,
  'choose-unit': 422,
  'choose-column': 422,
  'choose-date-order': 422,
  'choose-clock': 422,
  'choose-decimal-mark': 422,
  'choose-locality': 422,
  internal: 500,
};

/** An RFC 9457 problem, as sent. */
export interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly instance: string;
  readonly code: ErrorCode;
  /** The codes of the messages in `detail`, and the parameters of all of them. */
  readonly messages?: readonly string[];
  readonly params?: Params;
  readonly errors?: readonly ProblemFault[];
  /** The exceeded limits, as RateLimit-Policy names them. */
  readonly 'violated-policies'?: readonly string[];
  /** As the Retry-After header. */
  readonly retryAfterS?: number;
  readonly [member: string]: unknown;
}

export interface ProblemFault {
  readonly pointer?: string;
  readonly parameter?: string;
  readonly line?: number;
  readonly detail: string;
  /** The code and parameters of the message in `detail`. */
  readonly code?: string;
  readonly params?: Params;
  readonly choices?: readonly (Choice & { readonly reads: string; readonly consequence: string })[];
}

/** Turns an error into a problem. */
export function problemOf(error: RequestError, instance: string, say: Say): Problem {
  const { violatedPolicies, retryAfterS = waitS(error.code) } = error.later;
  const errors = error.faults.map((fault) => faultOf(fault, say));
  return {
    type: `/problems/${error.code}`,
    title: say(problemFact(`title.${error.code}`)),
    status: problemStatuses[error.code],
    detail: refusalText(error.sentences, say),
    instance,
    code: error.code,
    ...messagesOf(error.sentences),
    ...error.members,
    ...(errors.length > 0 ? { errors } : {}),
    ...(violatedPolicies ? { 'violated-policies': violatedPolicies } : {}),
    ...(retryAfterS === undefined ? {} : { retryAfterS }),
  };
}

function faultOf({ path, parameter, line, detail, choices }: Fault, say: Say): ProblemFault {
  const where = parameter !== undefined ? { parameter } : path ? { pointer: pointerOf(path) } : {};
  return {
    ...where,
    ...(line === undefined ? {} : { line }),
    detail: typeof detail === 'string' ? detail : say(detail),
    ...(typeof detail === 'string' ? {} : detail),
    ...(choices ? { choices: choices.map((choice) => choiceOf(choice, say)) } : {}),
  };
}

const choiceOf = ({ value, code, params }: Choice, say: Say) => ({
  value,
  reads: say({ code: `${code}.reads`, params }),
  consequence: say({ code: `${code}.consequence`, params }),
  code,
  params,
});

/** Retry-After while a dependency is down [s]. */
const RETRY_AFTER_S = 5;

/** Retry-After of a refusal that names no time of its own [s]; undefined: waiting does not help. */
const waitS = (code: ErrorCode): number | undefined =>
  problemStatuses[code] === 503 && code !== 'storage-damaged' ? RETRY_AFTER_S : undefined;

/** A path in the body as a JSON pointer (RFC 6901), in the fragment form of RFC 9457. */
const pointerOf = (path: readonly (string | number)[]): string =>
  `#${path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')}`;
