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
  /** Requests a minute of an owner, or of an address without one; 0: any number. */
  readonly perMinute: number;
  /** Answers a minute that are worked out from years; 0: any number. */
  readonly workPerMinute: number;
  /** Such answers of one caller that may be under way at one time. */
  readonly atOnce?: number;
  /** Takes from allowances that all instances share; left out: each instance has its own. */
  readonly take?: TakeAllowance | undefined;
  /** In how many seconds an answer from years is probably there. */
  readonly waitS: () => number;
  /** Does a route count against the address, whoever asks? By the route's pattern; undefined: there is no such route. */
  readonly isOpen: (url: string | undefined) => boolean;
}

declare module 'fastify' {
  interface FastifyRequest {
    /** Who asks for long work by this request; of another owner where its token opens that garden. */
    askedBy(owner?: string): AskedBy;
  }
}

/** Long answers of one caller under way at one time. */
export const AT_ONCE = 8;
/** Whoever asks whether the service lives may do so often: several balancers, each every second. */
const HEALTH_PER_MINUTE = 6_000;
const HEALTH = new Set(['/healthz', '/readyz']);
/** A chunk of an allowance that lies in a database is this share of it. */
const CHUNKS = 20;

/** Counts a request whose caller is known, and prepares what it may ask. @throws {RequestError} where it is one too many. */
export type CountRequest = (request: FastifyRequest, reply: FastifyReply) => Promise<void>;

/**
 * Limits what each caller may ask: requests a minute, answers a minute that are worked out from years, and how many of
 * those at a time. Every address of the service counts, so that none can be asked without end.
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

/** The limits of requests; each is undefined where any number is allowed. */
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
