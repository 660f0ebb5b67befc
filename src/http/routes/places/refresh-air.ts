import { setTimeout as sleep } from 'node:timers/promises';
import type { FastifyRequest } from 'fastify';
import { RequestError } from '../../../basics/errors.js';
import { sourcesAnswerSchema } from '../../../contract/places.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import type { SourceState, Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { refuseQuery } from '../../resource/resource.js';
import { placeIn } from './places.js';
import { type AllowedSources, isAllowed, serializeSourceState } from './source-serializer.js';

/**
 * Asks a place's sources that are due.
 *
 * @returns Whether they have answered or failed by now; false: they are asked with the others that are due.
 */
export type RefreshPlace = (owner: string, place: string) => Promise<boolean>;

/** Nobody asks a source again sooner than this [min]. */
const MIN_PAUSE_MINUTES = 5;
const MIN_PAUSE_MS = MIN_PAUSE_MINUTES * 60_000;
/** The longest wait for an answer, whatever is preferred [s]. */
const MAX_WAIT_S = 30;

/** The route that asks a place's sources now. */
export const refreshAirRoutes = (
  store: Store,
  clock: () => Date,
  allowed: AllowedSources,
  refreshPlace: RefreshPlace,
): Route[] => [
  {
    method: 'POST',
    url: '/v1/places/:id/air/refresh',
    operation: {
      id: 'refreshAir',
      summary: 'Ask the sources of a place now',
      description: `The answer is 202, or with \`Prefer: wait=20\` 200 once they have answered or failed; at most ${MAX_WAIT_S} seconds are waited. A source is asked at most every ${MIN_PAUSE_MINUTES} minutes, and not before its publisher allows it.`,
      answer: { schema: sourcesAnswerSchema, mayTakeLonger: true },
      problems: ['not-found', 'no-source', 'too-soon', ...keptProblems],
    },
    async handler(request, reply) {
      refuseQuery(request);
      const owner = ownerOf(request);
      const { id, sources } = await placeIn(request, store);
      if (!sources.some((source) => isAllowed(source, allowed))) {
        const why = sources.length === 0 || allowed === 'any' ? 'none' : allowed;
        throw new RequestError('no-source', keptRefusal('no-source', { place: id, why }));
      }
      const nowMs = clock().getTime();
      refuseTooSoon(await store.sourceStates(owner, id), allowed, nowMs);
      await store.hurrySources(owner, id, nowMs, nowMs - MIN_PAUSE_MS);
      const refreshed = refreshPlace(owner, id).catch((err: unknown) => {
        request.log.error({ err }, 'the sources of a place cannot be refreshed now');
        return false;
      });
      const waitS = waitPreferred(request);
      const isDone = waitS > 0 && (await Promise.race([refreshed, sleep(waitS * 1000, false, { ref: false })]));
      if (waitS > 0) reply.header('preference-applied', `wait=${waitS}`);
      const states = await store.sourceStates(owner, id);
      const shown = states.map((state) => serializeSourceState(state, clock().getTime(), allowed));
      return reply.code(isDone ? 200 : 202).send(signed({ sources: shown }, clock()));
    },
  },
];

/** Refuses to ask where each source was asked just now, or its publisher asks to wait. */
function refuseTooSoon(states: readonly SourceState[], allowed: AllowedSources, nowMs: number): void {
  const fromMs = states
    .filter(({ source }) => isAllowed(source, allowed))
    .map(({ triedAtMs, notBeforeMs }) => Math.max((triedAtMs ?? -Infinity) + MIN_PAUSE_MS, notBeforeMs ?? -Infinity));
  const waitMs = Math.min(...fromMs) - nowMs;
  if (waitMs <= 0) return;
  const waitS = Math.ceil(waitMs / 1000);
  throw new RequestError('too-soon', keptRefusal('too-soon', { minutes: MIN_PAUSE_MINUTES, waitS }), [], {
    retryAfterS: waitS,
  });
}

/** How long the caller would wait for the answer [s] (RFC 7240, 4.3); 0: not at all. */
function waitPreferred({ headers }: FastifyRequest): number {
  const [, seconds = '0'] =
    /(?:^|[,;])\s*wait\s*=\s*"?(\d{1,4})"?\s*(?:[,;]|$)/i.exec(String(headers.prefer ?? '')) ?? [];
  return Math.min(MAX_WAIT_S, Number(seconds));
}
