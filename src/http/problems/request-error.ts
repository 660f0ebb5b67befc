import { RequestError, StoppedError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import { QuotaError } from '../../garden/store/quotas.js';
import { StorageError } from '../../garden/store/storage-error.js';

/** Turns fastify's own errors, and everything else, into errors in our own words. */
export function asRequestError(error: unknown): RequestError {
  if (error instanceof RequestError) return error;
  // Nobody reads it any more, except callers who waited for the same work.
  if (error instanceof StoppedError) {
    return new RequestError('busy', requestRefusal('busy.asker-gone'));
  }
  if (error instanceof QuotaError) return quotaFull(error);
  if (error instanceof StorageError) {
    return new RequestError(error.code, requestRefusal(error.code));
  }
  const { statusCode, code, message } = error as { statusCode?: number; code?: string; message?: string };
  if (statusCode === 413) return new RequestError('too-large', requestRefusal('too-large'));
  if (statusCode === 415) return new RequestError('unsupported-media-type', requestRefusal('unsupported-media-type'));
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500) {
    const isAddress = code === 'FST_ERR_BAD_URL' || code?.includes('PARAM');
    const reason = message ?? '';
    return new RequestError(
      'bad-request',
      isAddress ? requestRefusal('bad-request.address') : requestRefusal('bad-request', { reason }),
    );
  }
  return new RequestError('internal', requestRefusal('internal'));
}

/** Reports a full quota. */
const quotaFull = ({ quota, limit, used }: QuotaError): RequestError =>
  new RequestError('quota-full', requestRefusal('quota-full', { quota, limit, used }), [], {}, { quota, limit, used });
