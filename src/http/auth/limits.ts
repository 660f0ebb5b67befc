import type { FastifyReply, FastifyRequest } from 'fastify';
import type { TakeAllowance } from '../../garden/store/allowance.js';
import type { AskedBy } from '../../worker/worker-pool.js';
import { memoryAllowances } from './allowances.js';
import { addressId, ownerId } from './caller-id.js';
import { showLimit, tooMany } from './limit-headers.js';
import { type RateLimit, rateLimit } from './rate-limit.js';
import { askerFor, type WorkPlaces } from './work-places.js';

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
  const { clock, perMinute, isOpen } = options;
  const { requests, health, places } = limitsOf(options);
  return async (request, reply) => {
    const { url } = request.routeOptions;
    const holder = request.caller?.holder;
    const address = (): string => addressId(request.ip);
    const caller = (): string => (holder && !isOpen(url) ? ownerId(holder.owner) : address());
    request.askedBy = askerFor(places, request, reply, caller);
    if (HEALTH.has(url ?? '')) {
      const allowance = await health?.(address(), clock().getTime());
      if (allowance && !allowance.isAllowed) throw tooMany('requests', HEALTH_PER_MINUTE, allowance);
      return;
    }
    if (!requests) return;
    const allowance = await requests(caller(), clock().getTime());
    showLimit(reply, places.policies, 'requests', perMinute, allowance);
    if (!allowance.isAllowed) throw tooMany('requests', perMinute, allowance);
  };
}

/** The limits of requests; undefined: unlimited. */
interface Limits {
  readonly requests: RateLimit | undefined;
  readonly health: RateLimit | undefined;
  readonly places: WorkPlaces;
}

function limitsOf({ clock, perMinute, workPerMinute, atOnce = AT_ONCE, take, waitS }: LimitOptions): Limits {
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
  const policies = [
    ...(requests ? [`"requests";q=${perMinute};w=60`] : []),
    ...(work ? [`"work";q=${workPerMinute};w=60`] : []),
    `"at-once";q=${atOnce};qu="concurrent-requests"`,
  ].join(', ');
  return {
    requests,
    health: perMinute > 0 ? rateLimit({ policy: 'health', perMinute: HEALTH_PER_MINUTE, take: local }) : undefined,
    places: { clock, atOnce, perMinute: workPerMinute, work, waitS, policies, underWay: new Map() },
  };
}
