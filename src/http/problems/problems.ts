import type { Choice, ErrorCode, Fault, RequestError } from '../../basics/errors.js';
import type { Params } from '../../basics/fact.js';
import { messagesOf, refusalText } from '../../words/refusal-text.js';
import type { Say } from '../../words/say.js';

/** What a code means over HTTP, and what its page says of cause and cure. */
interface ProblemKind {
  readonly status: number;
  readonly title: string;
  readonly cause: string;
  readonly cure: string;
}

export const problemKinds: Record<ErrorCode, ProblemKind> = {
  'bad-request': {
    status: 400,
    title: 'The request cannot be read',
    cause: 'The request line, a header or the address is not well formed.',
    cure: 'Check the address for stray % signs, and the headers for what your tool adds.',
  },
  'key-in-address': {
    status: 400,
    title: 'The address holds a key',
    cause: 'A key stands in the query. Addresses are kept in histories and in the logs of every server on the way.',
    cure: 'Send the key in the header "Authorization: Bearer", and have whoever runs the service change it.',
  },
  misdirected: {
    status: 421,
    title: 'This service does not answer for that host',
    cause:
      'The service is open to this machine alone, and the Host header names something else: a page of another site may have given its own name the address of this machine.',
    cure: 'Ask for localhost, or have the name that you use put into ALLOWED_HOSTS.',
  },
  'too-slow': {
    status: 408,
    title: 'The request came too slowly',
    cause: 'Its headers, or the next piece of its body, did not come within a minute.',
    cure: 'Send it again; a large file over a slow line in parts of fewer days.',
  },
  'not-json': {
    status: 400,
    title: 'The body is not JSON',
    cause: 'The body says it is JSON but cannot be parsed, or is empty.',
    cure: 'Check quotes, commas and brackets near the place named.',
  },
  'not-csv': {
    status: 400,
    title: 'The file is not a table of text',
    cause: 'The body is empty, an archive, a picture, a page, or lines without cells that belong together.',
    cure: 'Export the readings as CSV: one row to a line, a date and time and a temperature in each.',
  },
  'no-readings': {
    status: 422,
    title: 'No readings were found',
    cause:
      'The file is a table, but no column holds dates, or none holds temperatures, or no row holds both. Or nothing is kept yet of the bed or place that the question names.',
    cure: 'Write the date and time and the temperature into each row; "errors" says what was found instead. Of a place or bed, send its air or its readings first.',
  },
  'not-understood': {
    status: 422,
    title: 'Something in the request cannot be used',
    cause: 'A field is missing, unknown, of the wrong kind or out of range.',
    cure: 'Each entry of "errors" names a field and what it should be.',
  },
  'too-large': {
    status: 413,
    title: 'The request is too large',
    cause: 'The body is larger than this route takes.',
    cure: 'Send fewer days, or coarser readings: hourly ones are enough.',
  },
  'unsupported-media-type': {
    status: 415,
    title: 'The body is of a kind this route does not take',
    cause: 'The Content-Type is neither application/json nor, where a file is taken, text/csv.',
    cure: 'Set Content-Type to what the body is.',
  },
  'unsupported-coding': {
    status: 415,
    title: 'The body is packed',
    cause: 'The Content-Encoding header says that the body is compressed, and bodies are taken as they are.',
    cure: 'Send the body unpacked, without Content-Encoding.',
  },
  'not-acceptable': {
    status: 406,
    title: 'No answer of the kind asked for',
    cause: 'The Accept header allows nothing that this route gives.',
    cure: 'Accept application/json.',
  },
  'not-found': {
    status: 404,
    title: 'There is nothing here',
    cause: 'The address, or the thing it names, does not exist.',
    cure: 'See /docs for the addresses there are.',
  },
  'method-not-allowed': {
    status: 405,
    title: 'That cannot be done here',
    cause: 'The address exists, but not for this method.',
    cure: 'The Allow header names the methods it takes.',
  },
  unauthorized: {
    status: 401,
    title: 'A key is needed',
    cause:
      'This service was started with keys, and the request carries none of them. WWW-Authenticate says whether none came (Bearer) or a wrong one (error="invalid_token").',
    cure: 'Send "Authorization: Bearer" and your key; in a browser, give the key once and a cookie stands for it.',
  },
  'foreign-origin': {
    status: 403,
    title: 'The request comes from another site',
    cause:
      'A page of another site sent it in a browser that has a session here, or wants to begin or to end one. Or something between the browser and this service changes the Host header.',
    cure: 'Send it from a page of this service, or with "Authorization: Bearer" and your key; what stands before the service has to hand the Host header on.',
  },
  'precondition-failed': {
    status: 412,
    title: 'It is no longer as you knew it',
    cause:
      'If-Match names another state of the thing than the one that is kept, or nothing is kept; or If-None-Match says that nothing may be there, and something is.',
    cure: 'GET it, look at what has changed, and send your change again with the new ETag, or under another name.',
  },
  'has-beds': {
    status: 409,
    title: 'The place has beds',
    cause: 'A place is deleted only when no bed lies in it, so that no readings are lost by mistake.',
    cure: 'Move or delete its beds first, or send "with=beds" to delete them too.',
  },
  'has-sowings': {
    status: 409,
    title: 'It has sowings',
    cause: 'A bed or a seed lot is deleted only when no sowing names it, so that no counts are lost by mistake.',
    cure: 'Move or delete its sowings first; for a bed, "with=sowings" deletes them too.',
  },
  'quota-full': {
    status: 409,
    title: 'As much is kept as may be',
    cause: 'Whoever runs the service lets an owner keep only so many things of a kind, or so many megabytes.',
    cure: 'Delete what is not needed any more; GET /v1/usage tells what there is. Or ask whoever runs the service for more.',
  },
  'too-many-requests': {
    status: 429,
    title: 'Too many requests',
    cause: 'This owner, or this address, has asked more often than the service allows in a minute.',
    cure: 'Wait as many seconds as Retry-After says.',
  },
  'too-much-at-once': {
    status: 429,
    title: 'Too much at once',
    cause:
      'So many answers from past years are being worked out for this owner, or this address, as may be at one time.',
    cure: 'Wait until some of them have come, or as many seconds as Retry-After says.',
  },
  'storage-unavailable': {
    status: 503,
    title: 'What is kept cannot be reached',
    cause: 'The database cannot be used now; questions that bring their own temperatures are answered as ever.',
    cure: 'Send the request again after as many seconds as Retry-After says; sending it twice does no harm.',
  },
  'storage-full': {
    status: 503,
    title: 'There is no room to keep anything',
    cause: 'The disk of the database is full. Nothing was changed; questions are answered, and deleting works.',
    cure: 'Whoever runs the service has to make room. Send the request again after as many seconds as Retry-After says; sending it twice does no harm.',
  },
  'storage-damaged': {
    status: 503,
    title: 'The database is damaged',
    cause:
      'The file of the database is damaged, or was removed or replaced while the service ran. Nothing was changed; questions that bring their own temperatures are answered as ever.',
    cure: 'Waiting mends nothing. Whoever runs the service has to restart it, with a backup if need be; the log names the file.',
  },
  busy: {
    status: 503,
    title: 'Too much is being worked out already',
    cause:
      'Questions that take seconds, about past years, wait for their turn; no more may wait, or this one has waited too long.',
    cure: 'Send the request again after as many seconds as Retry-After says.',
  },
  stopping: {
    status: 503,
    title: 'The service is stopping',
    cause: 'It was told to stop, and takes on nothing more. Nothing was changed.',
    cure: 'Send the request again after as many seconds as Retry-After says: another instance, or the service once it runs again, answers it.',
  },
  'unknown-crop': {
    status: 422,
    title: 'No such crop',
    cause: 'The crop is not one of those in GET /v1/crops.',
    cure: 'Use one of their ids, or send rows of your own.',
  },
  'unknown-place': {
    status: 422,
    title: 'No such place',
    cause: 'The place is named by an id that nothing is kept under.',
    cure: 'Send the place itself: latitude, longitude and time zone.',
  },
  'unknown-bed': {
    status: 422,
    title: 'No such bed',
    cause: 'The bed is named by an id that nothing is kept under.',
    cure: 'Send the place, and the bed if it is not open ground.',
  },
  'unknown-lot': {
    status: 422,
    title: 'No such lot',
    cause: 'The seed lot is named by an id that nothing is kept under.',
    cure: 'PUT the lot first, or send what is known of the seed itself.',
  },
  'too-many-seeds': {
    status: 422,
    title: 'More seeds than could be sown',
    cause: 'So little of the seed would become plants that not even ten million give the number as surely as wanted.',
    cure: 'Ask for fewer plants or less sureness, or get better seed.',
  },
  'time-zone-needed': {
    status: 422,
    title: 'The time zone is not known',
    cause: 'Days, or stamps without an offset, mean nothing without the zone of the place.',
    cure: 'Send the zone as an IANA name such as Etc/GMT+2.',
  },
  'no-past-years': {
    status: 422,
    title: 'Too few past years are known',
    cause: 'The question needs the air of past years, and too few are sent or kept for this place.',
    cure: 'Send the air of more past years, by the day. For a forecast, or let "beyond" be seasonal-drift, repeat-last-week or refuse.',
  },
  'no-latitude': {
    status: 422,
    title: 'The latitude is not known',
    cause: 'The sun over a bed, and the drift of the season, depend on the latitude, which was not sent.',
    cure: 'Send the latitude; soil temperatures alone can do without, if "beyond" is repeat-last-week.',
  },
  'starts-after-sowing': {
    status: 422,
    title: 'The temperatures begin after the sowing',
    cause: 'Nothing is known of the soil when the seed was sown.',
    cure: 'Send earlier temperatures, or a later sowing date.',
  },
  'ends-too-early': {
    status: 422,
    title: 'The temperatures end too early',
    cause: 'They do not reach the time that the answer needs, and nothing may be supposed after them.',
    cure: 'Send more days, count earlier, or let "beyond" say what to suppose.',
  },
  'too-few-readings': {
    status: 422,
    title: 'Too few temperatures',
    cause: 'Less than a whole day is known.',
    cure: 'Send at least 24 hours in a row.',
  },
  'gap-too-long': {
    status: 422,
    title: 'The gap is too long to fill',
    cause: 'For over 14 days around the sowing nothing was measured.',
    cure: 'Send the missing days, or only what follows the gap.',
  },
  'choose-medium': {
    status: 422,
    title: 'Soil or air?',
    cause: 'Neither the column nor the query says where the thermometer was.',
    cure: 'Send "medium" with one of the choices.',
  },
  'choose-unit': {
    status: 422,
    title: 'Which unit?',
    cause: 'The temperatures do not prove whether they are °C, °F or K.',
    cure: 'Send "unit" with one of the choices.',
  },
  'choose-column': {
    status: 422,
    title: 'Which column?',
    cause: 'More than one column fits what was asked for.',
    cure: 'Send "column" or "timeColumn" with one of the choices.',
  },
  'choose-date-order': {
    status: 422,
    title: 'Day or month first?',
    cause: 'The dates could be read in more than one order, and nothing in the whole column proves which.',
    cure: 'Send "dateOrder" with one of the choices.',
  },
  'choose-clock': {
    status: 422,
    title: 'Which clock?',
    cause: 'The stamps run on unbroken where the clocks at the place change, so the logger keeps another time.',
    cure: 'Send "clock" with one of the choices.',
  },
  'choose-decimal-mark': {
    status: 422,
    title: 'Point or comma?',
    cause: 'Commas part the cells and may stand within the numbers too.',
    cure: 'Send "decimalMark" with one of the choices.',
  },
  internal: {
    status: 500,
    title: 'Something went wrong here',
    cause: 'A fault of the service, not of the request.',
    cure: 'Try again; if it stays, tell whoever runs the service the instance named.',
  },
};

/** An RFC 9457 problem, as sent. */
export interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly instance: string;
  readonly code: ErrorCode;
  /** The messages that `detail` is made of, and the parameters of all of them. */
  readonly messages?: readonly string[];
  readonly params?: Params;
  readonly errors?: readonly ProblemFault[];
  /** The limits that refused it, as RateLimit-Policy names them. */
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
  /** The message that `detail` is, and its parameters. */
  readonly code?: string;
  readonly params?: Params;
  readonly choices?: readonly (Choice & { readonly reads: string; readonly consequence: string })[];
}

/** The problem that an error is told as. */
export function problemOf(error: RequestError, instance: string, say: Say): Problem {
  const { status, title } = problemKinds[error.code];
  const { violatedPolicies, retryAfterS = waitS(error.code) } = error.later;
  const errors = error.faults.map((fault) => faultOf(fault, say));
  return {
    type: `/problems/${error.code}`,
    title,
    status,
    detail: refusalText(error.said, say),
    instance,
    code: error.code,
    ...messagesOf(error.said),
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

/** How long to wait for what is away [s]. */
const RETRY_AFTER_S = 5;

/** When a refusal that names no time of its own may be sent again [s]; undefined: waiting mends nothing. */
const waitS = (code: ErrorCode): number | undefined =>
  problemKinds[code].status === 503 && code !== 'storage-damaged' ? RETRY_AFTER_S : undefined;

/** A path in the body as a JSON pointer (RFC 6901), in the fragment form of RFC 9457. */
const pointerOf = (path: readonly (string | number)[]): string =>
  `#${path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')}`;
