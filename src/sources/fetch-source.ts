import { setTimeout as pause } from 'node:timers/promises';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import { type Dispatcher, request } from 'undici';
import { followedBy } from '../basics/fact.js';
import { AddressRefused } from '../egress/address-refused.js';
import { type ConnectionFault, connectionFault } from '../egress/connection-fault.js';
import { guardedAgent, type Resolve } from '../egress/guarded-agent.js';
import { discard, expiresMs, headerOf, retryAfterMs } from '../egress/response.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { addressFault } from '../garden/store/source-url.js';
import { SourceError } from './source-error.js';

/** Validators of the previous answer, for a conditional request. */
export interface Validators {
  readonly etag: string | null;
  readonly lastModified: string | null;
}

export interface Answer extends Validators {
  /** null: not modified since the validators. */
  readonly bytes: Uint8Array | null;
  /** How long it holds, as its host says [ms]. */
  readonly expiresMs?: number | undefined;
}

export interface FetchLimits {
  readonly connectMs: number;
  readonly headersMs: number;
  readonly silenceMs: number;
  /** Time-out of one attempt, from the first redirect to the last byte. */
  readonly wholeMs: number;
  readonly maxBytes: number;
  readonly attempts: number;
  /** Pauses between attempts are random between 0 and this, twice this, and so on up to the longest. */
  readonly firstPauseMs: number;
  readonly longestPauseMs: number;
}

export const DEFAULT_LIMITS: FetchLimits = {
  connectMs: 10_000,
  headersMs: 30_000,
  silenceMs: 20_000,
  wholeMs: 90_000,
  maxBytes: 32 * 1024 * 1024,
  attempts: 3,
  firstPauseMs: 1000,
  longestPauseMs: 20_000,
};

export interface FetcherSettings {
  readonly userAgent: string;
  readonly isAllowed: (address: string) => boolean;
  /** Returns a number from 0 to below 1. */
  readonly random: () => number;
  readonly resolve?: Resolve;
  readonly limits?: Partial<FetchLimits>;
}

export interface AskOptions {
  readonly previous?: Validators | undefined;
  /** Pause after a 429 that names none [ms]; null: one ends it. Left out: as after any passing fault. */
  readonly tooOftenPauseMs?: number | null | undefined;
  /** Aborts the request. */
  readonly signal?: AbortSignal | undefined;
}

export interface Fetcher {
  /** @throws {SourceError} with the reason. */
  ask(url: URL, options?: AskOptions): Promise<Answer>;
  close(): Promise<void>;
}

const MAX_REDIRECTS = 5;
const REDIRECTS = [301, 302, 303, 307, 308];
const BUSY = [408, 425, 429, 500, 502, 503, 504];
const unzip = promisify(gunzip);

/** A client that requests sources over HTTP, within limits, and only from allowed addresses. */
export function sourceFetcher({ userAgent, isAllowed, random, resolve, ...settings }: FetcherSettings): Fetcher {
  const limits = { ...DEFAULT_LIMITS, ...settings.limits };
  const agent = guardedAgent({ isAllowed, ...limits, ...(resolve && { resolve }) });

  async function attempt(url: URL, { previous, signal }: AskOptions): Promise<Answer> {
    const headers = {
      'user-agent': userAgent,
      accept: '*/*',
      'accept-encoding': 'gzip',
      ...(previous?.etag && { 'if-none-match': previous.etag }),
      ...(previous?.lastModified && { 'if-modified-since': previous.lastModified }),
    };
    const whole = AbortSignal.timeout(limits.wholeMs);
    const either = signal ? AbortSignal.any([signal, whole]) : whole;
    try {
      let at = url;
      for (let redirects = 0; ; redirects++) {
        const response = await request(at, { dispatcher: agent, headers, signal: either });
        const location = REDIRECTS.includes(response.statusCode) ? headerOf(response, 'location') : null;
        if (location === null) return await answerOf(response, previous, limits.maxBytes);
        discard(response);
        if (redirects === MAX_REDIRECTS) {
          throw new SourceError(sourceFact('source.redirects', { maxRedirects: MAX_REDIRECTS }));
        }
        at = redirectedTo(location, at);
      }
    } catch (error) {
      throw asSourceError(error, whole.aborted, limits);
    }
  }

  return {
    async ask(url, options = {}) {
      refuseUrl(url.href);
      for (let n = 1; ; n++) {
        try {
          return await attempt(url, options);
        } catch (error) {
          if (!(error instanceof SourceError) || !error.mayPass || n >= limits.attempts) throw error;
          const isTooOften = error.fact.code === 'source.too-often';
          if (isTooOften && options.tooOftenPauseMs === null) throw error;
          const retryAfterMs = error.retryAfterMs ?? (isTooOften ? (options.tooOftenPauseMs ?? undefined) : undefined);
          if (retryAfterMs !== undefined && retryAfterMs > limits.longestPauseMs) throw error;
          const backOffMs = Math.min(limits.longestPauseMs, limits.firstPauseMs * 2 ** (n - 1));
          await pause(retryAfterMs ?? random() * backOffMs, undefined, { signal: options.signal });
        }
      }
    },
    close: () => agent.destroy(),
  };
}

/** Target of a redirect. @throws {SourceError} when it must not be followed. */
export function redirectedTo(location: string, from: URL): URL {
  if (!URL.canParse(location, from.href)) throw new SourceError(sourceFact('source.redirect-nowhere'));
  const to = new URL(location, from);
  if (from.protocol === 'https:' && to.protocol !== 'https:') {
    throw new SourceError(sourceFact('source.redirect-unencrypted'));
  }
  refuseUrl(to.href);
  return to;
}

function refuseUrl(url: string): void {
  const fault = addressFault(url);
  if (fault !== null) throw new SourceError(followedBy(sourceFact('source.address'), fault));
}

async function answerOf(
  response: Dispatcher.ResponseData,
  previous: Validators | undefined,
  maxBytes: number,
): Promise<Answer> {
  const { statusCode: status } = response;
  const validators = { etag: headerOf(response, 'etag'), lastModified: headerOf(response, 'last-modified') };
  if (status === 304 && (previous?.etag || previous?.lastModified)) {
    discard(response);
    return {
      bytes: null,
      etag: validators.etag ?? previous.etag,
      lastModified: validators.lastModified ?? previous.lastModified,
      expiresMs: expiresMs(response),
    };
  }
  if (status !== 200) {
    discard(response);
    throw refusedWith(status, retryAfterMs(response));
  }
  return { bytes: await bodyOf(response, maxBytes), ...validators, expiresMs: expiresMs(response) };
}

function refusedWith(status: number, retryAfterMs: number | undefined): SourceError {
  const mayPass = BUSY.includes(status);
  if (status === 429) {
    return new SourceError(sourceFact('source.too-often'), { mayPass, retryAfterMs });
  }
  const reason =
    status === 404 || status === 410
      ? 'missing'
      : status === 401 || status === 403
        ? 'refusing'
        : status >= 500
          ? 'troubled'
          : 'unknown';
  return new SourceError(sourceFact('source.status', { status, reason }), { mayPass, retryAfterMs });
}

/** The whole body, unpacked from gzip, whether as content coding or as a packed file. */
async function bodyOf(response: Dispatcher.ResponseData, maxBytes: number): Promise<Uint8Array> {
  const encoding = headerOf(response, 'content-encoding')?.trim().toLowerCase() ?? 'identity';
  if (!['identity', 'gzip', 'x-gzip', ''].includes(encoding)) {
    discard(response);
    throw new SourceError(sourceFact('source.coding'));
  }
  if (Number(headerOf(response, 'content-length') ?? 0) > maxBytes) {
    discard(response);
    throw tooLarge(maxBytes);
  }
  const pieces: Uint8Array[] = [];
  let received = 0;
  for await (const piece of response.body) {
    const bytes = piece as Uint8Array;
    received += bytes.length;
    if (received > maxBytes) throw tooLarge(maxBytes);
    pieces.push(bytes);
  }
  let bytes: Uint8Array = Buffer.concat(pieces);
  // A packed file may be packed again in transit.
  for (let layer = 0; layer < 2 && isGzip(bytes); layer++) bytes = await unpacked(bytes, maxBytes);
  return bytes;
}

const isGzip = (bytes: Uint8Array): boolean => bytes[0] === 0x1f && bytes[1] === 0x8b;

async function unpacked(bytes: Uint8Array, maxBytes: number): Promise<Uint8Array> {
  try {
    return await unzip(bytes, { maxOutputLength: maxBytes });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') throw tooLarge(maxBytes);
    throw new SourceError(sourceFact('source.damaged'), { mayPass: true, cause: error });
  }
}

const tooLarge = (maxBytes: number): SourceError =>
  new SourceError(sourceFact('source.too-large', { megabytes: Math.round(maxBytes / 1024 / 1024) }));

function asSourceError(error: unknown, tookTooLong: boolean, limits: FetchLimits): unknown {
  if (error instanceof SourceError) return error;
  if (error instanceof AddressRefused) {
    return new SourceError(sourceFact('source.private', { host: error.hostname }));
  }
  const saying = (fault: ConnectionFault) =>
    new SourceError(sourceFact('source.connection', { ...fault }), { mayPass: true, cause: error });
  if (tookTooLong) return saying({ fault: 'slow', seconds: limits.wholeMs / 1000, errorCode: null });
  // The caller aborted.
  if ((error as Error).name === 'AbortError') return error;
  return saying(connectionFault(error, limits.headersMs));
}
