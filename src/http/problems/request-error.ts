import { type ErrorCode, RequestError, StoppedError } from '../../basics/errors.js';
import { QuotaError, type QuotaName } from '../../garden/store/quotas.js';
import { StorageError, type StorageErrorKind } from '../../garden/store/storage-error.js';

const STORAGE_DETAILS: Record<StorageErrorKind, string> = {
  unavailable: 'What is kept cannot be reached now. Try again in a few seconds: sending a request twice does no harm.',
  full: 'The disk is full, so nothing was kept. Deleting still works. Try again once whoever runs this service has made room.',
  damaged:
    'The database file is damaged, gone or replaced, so nothing can be kept. Whoever runs this service has to mend it; its log says more.',
};

/** What fastify itself found wrong, and everything else, in our own words. */
export function asRequestError(error: unknown): RequestError {
  if (error instanceof RequestError) return error;
  // Nobody is left to read it, but one who waited for the same work.
  if (error instanceof StoppedError) {
    return new RequestError('busy', 'Whoever asked this first went before it was worked out. Ask again.');
  }
  if (error instanceof QuotaError) return quotaFull(error);
  if (error instanceof StorageError) {
    return new RequestError(error.code, STORAGE_DETAILS[error.kind]);
  }
  const { statusCode, code, message } = error as { statusCode?: number; code?: string; message?: string };
  const said = (ours: ErrorCode, detail: string): RequestError => new RequestError(ours, detail);
  if (statusCode === 413)
    return said(
      'too-large',
      'The body is larger than this route takes: 4 MB of JSON, 256 MB of CSV, 16 kB of a form. Send fewer days or hourly readings.',
    );
  if (statusCode === 415)
    return said('unsupported-media-type', 'Set Content-Type to application/json, or to text/csv for a logger’s file.');
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500) {
    const isAddress = code === 'FST_ERR_BAD_URL' || code?.includes('PARAM');
    return said(
      'bad-request',
      isAddress
        ? 'The address cannot be read: a part of it is too long, or a % in it is not followed by two hex digits.'
        : `The request cannot be read: ${message}.`,
    );
  }
  return said('internal', 'Something went wrong here; the instance below finds it in the log.');
}

const QUOTA_WORDS: Record<QuotaName, string> = {
  places: 'places are kept',
  beds: 'beds are kept',
  sowings: 'sowings are kept',
  lots: 'seed lots are kept',
  plans: 'plans are kept',
  subscriptions: 'subscriptions are kept',
  thermometers: 'thermometers have readings in this bed',
  devices: 'devices belong to this bed',
  megabytes: 'megabytes of readings and air would be kept',
};

/** A full quota, as callers are told of it. */
const quotaFull = ({ quota, limit, used }: QuotaError): RequestError =>
  new RequestError(
    'quota-full',
    `${used} ${QUOTA_WORDS[quota]}, and there may be ${limit}. Delete what is not needed any more, and send this again.`,
    [],
    {},
    { quota, limit, used },
  );
