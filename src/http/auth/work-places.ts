import type { FastifyReply, FastifyRequest } from 'fastify';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import type { AskedBy } from '../../worker/worker-pool.js';
import { ownerId } from './caller-id.js';
import { isNearer, showLimit, tooMany } from './limit-headers.js';
import type { RateLimit } from './rate-limit.js';

/** Answers from past years under way, by caller, and their limits. */
export interface WorkPlaces {
  readonly clock: () => Date;
  /** Concurrent answers from past years of one caller. */
  readonly atOnce: number;
  readonly perMinute: number;
  /** The allowance of such answers per minute; undefined: unlimited. */
  readonly work: RateLimit | undefined;
  /** Expected wait for such an answer [s]. */
  readonly waitS: () => number;
  readonly policies: string;
  /** Number of answers by caller. */
  readonly underWay: Map<string, number>;
}

/**
 * The requester of a request: it takes one place, and one long answer of the allowance, however much it asks.
 *
 * @param callerId The id of the request's own caller.
 */
export function askerFor(places: WorkPlaces, request: FastifyRequest, reply: FastifyReply, callerId: () => string) {
  let signal: AbortSignal | undefined;
  let hasPlace = false;
  let admitted: Promise<void> | undefined;
  return (owner = request.owner): AskedBy => {
    signal ??= endOf(reply);
    const caller = owner === request.owner ? callerId() : ownerId(owner);
    const takePlace = (): void => {
      if (!hasPlace) takePlaceOf(places, reply, caller, signal!);
      hasPlace = true;
    };
    const admit = async (): Promise<void> => {
      takePlace();
      admitted ??= takeWork(places, reply, caller);
      return admitted;
    };
    return { owner, caller, signal, takePlace, admit };
  };
}

function takePlaceOf(places: WorkPlaces, reply: FastifyReply, caller: string, signal: AbortSignal): void {
  const { atOnce, policies, underWay } = places;
  const before = underWay.get(caller) ?? 0;
  if (before >= atOnce) {
    const nextInS = places.waitS();
    showLimit(reply, policies, 'at-once', atOnce, { remaining: 0, nextInS });
    throw new RequestError('too-much-at-once', requestRefusal('too-much-at-once', { atOnce }), [], {
      retryAfterS: nextInS,
      violatedPolicies: ['at-once'],
    });
  }
  if (signal.aborted) return;
  underWay.set(caller, before + 1);
  signal.addEventListener('abort', () => leave(underWay, caller), { once: true });
}

function leave(underWay: Map<string, number>, caller: string): void {
  const left = (underWay.get(caller) ?? 1) - 1;
  if (left > 0) underWay.set(caller, left);
  else underWay.delete(caller);
}

async function takeWork(places: WorkPlaces, reply: FastifyReply, caller: string): Promise<void> {
  const { work, perMinute, policies } = places;
  if (!work) return;
  const allowance = await work(caller, places.clock().getTime());
  if (!allowance.isAllowed || isNearer(reply, allowance, perMinute)) {
    showLimit(reply, policies, 'work', perMinute, allowance);
  }
  if (!allowance.isAllowed) throw tooMany('work', perMinute, allowance);
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
