import type { FastifyReply } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import type { RateVerdict } from './rate-limit.js';

/**
 * Reports the rest of a limit in the answer's headers.
 *
 * @param policies All limits, in the syntax of the header that lists them.
 */
export function showLimit(
  reply: FastifyReply,
  policies: string,
  policy: string,
  limit: number,
  { remaining, nextInS }: Pick<RateVerdict, 'remaining' | 'nextInS'>,
): void {
  reply.headers({
    'ratelimit-policy': policies,
    ratelimit: `"${policy}";r=${remaining};t=${nextInS}`,
    'ratelimit-limit': limit,
    'ratelimit-remaining': remaining,
    'ratelimit-reset': nextInS,
  });
}

/** True if less is left of this allowance than of the one in the headers. */
export function isNearer(reply: FastifyReply, { remaining }: RateVerdict, limit: number): boolean {
  const shown = {
    limit: Number(reply.getHeader('ratelimit-limit')),
    remaining: Number(reply.getHeader('ratelimit-remaining')),
  };
  return !(shown.limit > 0) || remaining / limit < shown.remaining / shown.limit;
}

export function tooMany(policy: string, perMinute: number, { nextInS }: RateVerdict): RequestError {
  return new RequestError(
    'too-many-requests',
    requestRefusal('too-many-requests', {
      perMinute,
      policy: policy === 'work' ? 'work' : 'requests',
      waitS: nextInS,
    }),
    [],
    { retryAfterS: nextInS, violatedPolicies: [policy] },
  );
}
