import { isIPv6 } from 'node:net';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { digestOf } from '../../basics/digest.js';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/refusal-facts.js';
import type { TakeAllowance } from '../../garden/store/allowance.js';
import type { AskedBy } from '../../worker/worker-pool.js';
import { memoryAllowances } from './allowances.js';
import { type RateLimit, type RateVerdict, rateLimit } from './rate-limit.js';

export interface LimitOptions {
  readonly clock: () => Date;
  /** Requests per minute of an owner, or of an address without one; 0: unlimited. */
  readonly perMinute: number;
  /** Answers from past years per minute; 0: unlimited. */
  readonly workPerMinute: number;
  /** Concurrent answers from past years of one caller. */
  readonly atOnce?: number;
  /** Takes from allowances shared by all instances; left out: each instance has its own. */
  readonly take?: TakeAllowance | undefined;
  /** Expected wait for an answer from past years [s]. */
  readonly waitS: () => number;
  /** True if a route's requests count against the address even with a key; undefined: there is no such route. */
  readonly isOpen: (url: string | undefined) => boolean;
}

declare module 'fastify' {
  interface FastifyRequest {
    /** The requester of long work in this request; of another owner if its token opens that garden. */
    askedBy(owner?: string): AskedBy;
  }
}

/** Concurrent long answers of one caller. */
export const AT_ONCE = 8;
/** Health checks may be frequent: several load balancers, each every second. */
const HEALTH_PER_MINUTE = 6_000;
const HEALTH = new Set(['/healthz', '/readyz']);
/** A chunk of a shared allowance is one part in this many. */
const CHUNKS = 20;

/** Counts a request of a known caller and prepares its long work. @throws {RequestError} over the limit. */
export type CountRequest = (request: FastifyRequest, reply: FastifyReply) => Promise<void>;

/**
 * Limits each caller's requests per minute, answers from past years per minute, and concurrent ones. Every address of
 * the service counts, so that none can be flooded.
 */
export function requestLimits(options: LimitOptions): CountRequest {
  const { clock, perMinute, workPerMinute, atOnce = AT_ONCE, take, waitS, isOpen } = options;
  const local = memoryAllowances();
  const limitOf = (policy: string, limit: number): RateLimit | undefined =>
    limit > 0
      ? rateLimit({
          policy,
          perMinute: limit,
          take: take ?? local,
          chunk: take ? Math.max(1, Math.floor(limit / CHUNKS)) : 1,
        })
      : undefined;
  const requests = limitOf('requests', perMinute);
  const work = limitOf('work', workPerMinute);
  const health = perMinute > 0 ? rateLimit({ policy: 'health', perMinute: HEALTH_PER_MINUTE, take: local }) : undefined;
  const policies = [
    ...(requests ? [`"requests";q=${perMinute};w=60`] : []),
    ...(work ? [`"work";q=${workPerMinute};w=60`] : []),
    `"at-once";q=${atOnce};qu="concurrent-requests"`,
  ].join(', ');
  const underWay = new Map<string, number>();

  const count: CountRequest = async (request, reply) => {
    const { url } = request.routeOptions;
    const holder = request.caller?.holder;
    const address = (): string => callerId('address', addressOf(request.ip));
    const caller = (): string => (holder && !isOpen(url) ? callerId('owner', holder.owner) : address());
    request.askedBy = asker(request, reply, caller);
    if (HEALTH.has(url ?? '')) {
      const allowance = await health?.(address(), clock().getTime());
      if (allowance && !allowance.isAllowed) throw tooMany('requests', HEALTH_PER_MINUTE, allowance);
      return;
    }
    if (!requests) return;
    const allowance = await requests(caller(), clock().getTime());
    tell(reply, 'requests', perMinute, allowance);
    if (!allowance.isAllowed) throw tooMany('requests', perMinute, allowance);
  };

  const tell = (reply: FastifyReply, policy: string, limit: number, { remaining, nextInS }: RateVerdict): void => {
    reply.headers({
      'ratelimit-policy': policies,
      ratelimit: `"${policy}";r=${remaining};t=${nextInS}`,
      'ratelimit-limit': limit,
      'ratelimit-remaining': remaining,
      'ratelimit-reset': nextInS,
    });
  };

  /** The requester of a request: it takes one place, and one long answer of the allowance, however much it asks. */
  const asker = (request: FastifyRequest, reply: FastifyReply, requester: () => string) => {
    let signal: AbortSignal | undefined;
    let hasPlace = false;
    let admitted: Promise<void> | undefined;
    return (owner = request.owner): AskedBy => {
      signal ??= endOf(reply);
      const caller = owner === request.owner ? requester() : callerId('owner', owner);
      const takePlace = (): void => {
        if (!hasPlace) takePlaceOf(reply, caller, signal!);
        hasPlace = true;
      };
      const admit = async (): Promise<void> => {
        takePlace();
        admitted ??= takeWork(reply, caller);
        return admitted;
      };
      return { owner, caller, signal, takePlace, admit };
    };
  };

  const takePlaceOf = (reply: FastifyReply, caller: string, signal: AbortSignal): void => {
    const before = underWay.get(caller) ?? 0;
    if (before >= atOnce) {
      const nextInS = waitS();
      tell(reply, 'at-once', atOnce, { isAllowed: false, remaining: 0, nextInS });
      throw new RequestError('too-much-at-once', requestRefusal('too-much-at-once', { atOnce }), [], {
        retryAfterS: nextInS,
        violatedPolicies: ['at-once'],
      });
    }
    if (signal.aborted) return;
    underWay.set(caller, before + 1);
    signal.addEventListener('abort', () => leave(caller), { once: true });
  };

  const takeWork = async (reply: FastifyReply, caller: string): Promise<void> => {
    if (!work) return;
    const allowance = await work(caller, clock().getTime());
    if (!allowance.isAllowed || isNearer(reply, allowance, workPerMinute))
      tell(reply, 'work', workPerMinute, allowance);
    if (!allowance.isAllowed) throw tooMany('work', workPerMinute, allowance);
  };

  const leave = (caller: string): void => {
    const left = (underWay.get(caller) ?? 1) - 1;
    if (left > 0) underWay.set(caller, left);
    else underWay.delete(caller);
  };
  return count;
}

/** Aborted once the answer has been sent or its reader is gone. */
function endOf({ raw }: FastifyReply): AbortSignal {
  const ended = new AbortController();
  // A caller who left during the database query has closed it already, and no second event follows.
  if (raw.destroyed) ended.abort();
  raw.once('finish', () => ended.abort());
  raw.once('close', () => ended.abort());
  return ended.signal;
}

/** True if less is left of this allowance than of the one already reported. */
function isNearer(reply: FastifyReply, { remaining }: RateVerdict, limit: number): boolean {
  const told = {
    limit: Number(reply.getHeader('ratelimit-limit')),
    remaining: Number(reply.getHeader('ratelimit-remaining')),
  };
  return !(told.limit > 0) || remaining / limit < told.remaining / told.limit;
}

function tooMany(policy: string, perMinute: number, { nextInS }: RateVerdict): RequestError {
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

/** Callers are stored as digests, so that nobody can read addresses from them. */
const callerId = (kind: 'owner' | 'address', name: string): string => digestOf(`${kind} ${name}`, 22);

/** An address; of IPv6 its first 64 bits, as one caller has all the rest. */
function addressOf(ip: string): string {
  if (!isIPv6(ip)) return ip;
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(ip)?.[1];
  if (mapped) return mapped;
  const [head = '', tail] = ip.split('%')[0]!.split('::');
  const first = head === '' ? [] : head.split(':');
  const last = tail === undefined || tail === '' ? [] : tail.split(':');
  const groups = [...first, ...Array<string>(Math.max(0, 8 - first.length - last.length)).fill('0'), ...last];
  return groups
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':');
}
