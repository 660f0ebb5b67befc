/** A request of the page to the service, from the browser or the server. */
export interface ApiRequest {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly path: string;
  readonly json?: unknown;
  /** A file instead of JSON. */
  readonly file?: Blob | Uint8Array;
  /** A PUT that must not replace anything. */
  readonly isNew?: true;
}

/** Sends a request and returns the response, its body parsed as JSON (undefined if empty). */
export type Send = (request: ApiRequest) => Promise<{ readonly status: number; readonly body: unknown }>;

/** One of several ways to read the caller's data. */
export interface ProblemChoice {
  readonly value: string;
  readonly reads: string;
  readonly consequence: string;
}

/** A refusal (RFC 9457) in the service's words. The page's own refusals have a code instead of a detail. */
export interface ProblemBody {
  /** 0: the service was not reached. */
  readonly status: number;
  readonly code: string;
  readonly title: string;
  readonly detail: string;
  /** Seconds until it may be sent again; left out: waiting does not help. */
  readonly retryAfterS?: number;
  readonly errors?: readonly {
    readonly pointer?: string;
    readonly parameter?: string;
    readonly detail: string;
    readonly line?: number;
    readonly choices?: readonly ProblemChoice[];
  }[];
}

/** The value of a response, or the reason for having none. */
export type Result<T> = { readonly value: T } | Failure;

export interface Failure {
  readonly problem: ProblemBody;
}

/** A failure for input that cannot be sent as typed. */
export const unusable = (detail: string): Failure => ({
  problem: { status: 422, code: 'not-understood', title: '', detail },
});

export const isFailure = (got: Result<unknown>): got is Failure => 'problem' in got;

/** Sends a request; the caller knows the type of the answer. */
export async function get<T>(send: Send, request: ApiRequest): Promise<Result<T>> {
  let came: Awaited<ReturnType<Send>>;
  try {
    came = await send(request);
  } catch {
    return { problem: UNREACHED };
  }
  const { status, body } = came;
  if (status < 400) return { value: body as T };
  const said = body as Partial<ProblemBody> | undefined;
  return typeof said?.detail === 'string' && typeof said.code === 'string'
    ? { problem: { title: '', ...said, status } as ProblemBody }
    : { problem: { ...UNREACHED, status } };
}

const UNREACHED: ProblemBody = {
  status: 0,
  code: 'unreached',
  title: '',
  detail: '',
};

/** The reader for whom the service words its answers. */
export interface WordsFor {
  readonly language: string;
  readonly degrees: string;
}

/** The address of a request whose answer is worded for the page's reader. */
export const wordedFor = (path: string, { language, degrees }: WordsFor): string =>
  `${path}${path.includes('?') ? '&' : '?'}lang=${language}&textUnit=${degrees}`;

/** An address with a query of the non-empty values. */
export function pathWith(path: string, query: Readonly<Record<string, string>>): string {
  const said = Object.entries(query).filter(([, value]) => value !== '');
  return said.length === 0 ? path : `${path}?${new URLSearchParams(said)}`;
}
