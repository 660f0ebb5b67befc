import { type ApiRequest, type ProblemBody, type Send, wordedFor } from '../shell/api.js';
import { readerNow } from './speaking.js';

type Came = Awaited<ReturnType<Send>>;

/** Sends a request to the service that served the page. */
export const send: Send = (request) => sendUntil(new AbortController().signal)(request);

/** The same, aborted when the answer is no longer wanted. */
export const sendUntil =
  (signal: AbortSignal): Send =>
  async (request) => {
    if (request.file) return upload(request, request.file as Blob, signal);
    const { method, path, json, isNew } = request;
    const response = await fetch(wordedFor(path, readerNow()), {
      method,
      signal,
      headers: {
        ...(json === undefined ? {} : { 'content-type': 'application/json' }),
        ...(isNew ? { 'if-none-match': '*' } : {}),
      },
      ...(json === undefined ? {} : { body: JSON.stringify(json) }),
    });
    return { status: response.status, body: bodyOf(await response.text()) };
  };

const bodyOf = (text: string): unknown => (text === '' ? undefined : JSON.parse(text));

/** Progress of all uploads under way [bytes]. */
export interface Sending {
  readonly sentBytes: number;
  readonly allBytes: number;
}

interface Upload {
  readonly bytes: number;
  sentBytes: number;
  readonly stop: () => void;
}

const uploads = new Set<Upload>();
let heed: (sending: Sending | null) => void = () => {};

/** Reports the progress of uploads repeatedly; null: none is under way. */
export function whileSending(tell: (sending: Sending | null) => void): void {
  heed = tell;
}

export function stopSending(): void {
  for (const { stop } of uploads) stop();
}

function tell(): void {
  const all = [...uploads];
  const sum = (of: (one: Upload) => number): number => all.reduce((total, one) => total + of(one), 0);
  heed(
    all.length === 0
      ? null
      : {
          sentBytes: sum(({ sentBytes }) => sentBytes),
          allBytes: sum(({ bytes }) => bytes),
        },
  );
}

/** Uploads a file. Only XMLHttpRequest reports upload progress. */
function upload({ method, path }: ApiRequest, file: Blob, signal: AbortSignal): Promise<Came> {
  return new Promise((done, fail) => {
    const request = new XMLHttpRequest();
    const stop = (): void => {
      done(refused('stopped'));
      request.abort();
    };
    const one: Upload = { bytes: file.size, sentBytes: 0, stop };
    request.upload.onprogress = ({ loaded }) => {
      one.sentBytes = loaded;
      tell();
    };
    request.onload = () => {
      try {
        done({ status: request.status, body: bodyOf(request.responseText) });
      } catch (error) {
        fail(error);
      }
    };
    request.onerror = async () => ((await isReadable(file)) ? fail(new Error('no answer')) : done(GONE));
    request.onabort = () => fail(new Error('not wanted any more'));
    request.onloadend = () => {
      uploads.delete(one);
      tell();
    };
    if (signal.aborted) return fail(signal.reason);
    signal.addEventListener('abort', () => request.abort(), { once: true });
    uploads.add(one);
    tell();
    request.open(method, wordedFor(path, readerNow()));
    request.setRequestHeader('content-type', 'text/csv');
    request.send(file);
  });
}

/** False for a file that changed on disk since it was chosen: the browser no longer reads it. */
const isReadable = (file: Blob): Promise<boolean> =>
  file
    .slice(0, 1)
    .arrayBuffer()
    .then(
      () => true,
      () => false,
    );

const refused = (code: string): Came => {
  const body: Omit<ProblemBody, 'status'> = { code, title: '', detail: '' };
  return { status: 400, body };
};

const GONE = refused('file-gone');
