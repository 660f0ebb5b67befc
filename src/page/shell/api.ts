/** A request to the service, as the page makes it wherever it runs. */
export interface ApiRequest {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly path: string;
  readonly json?: unknown;
  /** A file instead of JSON. */
  readonly file?: Blob | Uint8Array;
  /** A PUT that replaces nothing: it is refused where something is kept there. */
  readonly isNew?: true;
}

/** Sends a request and gives what came back, its body read as JSON (undefined where there is none). */
export type Send = (request: ApiRequest) => Promise<{ readonly status: number; readonly body: unknown }>;

/** One of several ways to take what a caller sent. */
export interface ProblemChoice {
  readonly value: string;
  readonly reads: string;
  readonly consequence: string;
}

/** A refusal (RFC 9457), as the service words it; one of the page's own is worded by its code, and has no detail. */
export interface ProblemBody {
  /** 0: the service was not reached. */
  readonly status: number;
  readonly code: string;
  readonly title: string;
  readonly detail: string;
  /** In how many seconds it may be sent again; left out: waiting mends nothing. */
  readonly retryAfterS?: number;
  readonly errors?: readonly {
    readonly pointer?: string;
    readonly parameter?: string;
    readonly detail: string;
    readonly line?: number;
    readonly choices?: readonly ProblemChoice[];
  }[];
}

/** What came of a request: its answer, or why there is none. */
export type Result<T> = { readonly value: T } | Failure;

export interface Failure {
  readonly problem: ProblemBody;
}

/** What cannot be asked for as it is typed. */
export const unusable = (detail: string): Failure => ({
  problem: { status: 422, code: 'not-understood', title: '', detail },
});

export const isFailure = (got: Result<unknown>): got is Failure => 'problem' in got;

/** Asks the service. Whoever calls knows which answer the address gives. */
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

/** Whom the service words its answers for. */
export interface WordsFor {
  readonly language: string;
  readonly degrees: string;
}

/** The address of a request whose answer is worded for the page's reader. */
export const wordedFor = (path: string, { language, degrees }: WordsFor): string =>
  `${path}${path.includes('?') ? '&' : '?'}lang=${language}&textUnit=${degrees}`;

/** An address with a query of what is not empty. */
export function pathWith(path: string, query: Readonly<Record<string, string>>): string {
  const said = Object.entries(query).filter(([, value]) => value !== '');
  return said.length === 0 ? path : `${path}?${new URLSearchParams(said)}`;
}
