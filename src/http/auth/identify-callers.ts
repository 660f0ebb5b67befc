import type { FastifyInstance } from 'fastify';
import type { Store } from '../../garden/store/store.js';
import type { Route } from '../openapi/route.js';
import { refuseMisconduct } from './conduct.js';
import type { FindOwner } from './keys.js';
import { type LimitOptions, requestLimits } from './limits.js';
import { openSession } from './open-session.js';
import { OPEN_OWNER } from './owner.js';
import { shownBy } from './shown-by.js';

export interface IdentifyOptions extends Omit<LimitOptions, 'isOpen'> {
  readonly store: Store;
  readonly routes: readonly Route[];
  /** Left out: no key is needed. */
  readonly findOwner: FindOwner | undefined;
  /** Hosts to serve besides this machine's own names; left out: any. */
  readonly hosts: readonly string[] | undefined;
}

/**
 * Finds out who asks, counts the request against them, and refuses those over a limit. The hook runs for every request:
 * routes, the page's files, the documentation, and addresses that do not exist.
 */
export function identifyCallers(
  app: FastifyInstance,
  { store, routes, findOwner, hosts, clock, ...limits }: IdentifyOptions,
): void {
  app.decorateRequest('owner', OPEN_OWNER);
  app.decorateRequest('caller', null);
  app.decorateRequest('sessionId', null);
  app.decorateRequest('askedBy');
  const keyed = new Set(routes.filter(({ open }) => !open).map(({ url }) => url));
  const isOpen = (url: string | undefined): boolean => url === undefined || !keyed.has(url);
  const countRequest = requestLimits({ ...limits, clock, isOpen });
  app.addHook('onRequest', async (request, reply) => {
    const shown = shownBy(request);
    const { url } = request.routeOptions;
    // Query the database only where a session opens something, so that other requests can neither flood it nor fail
    // while it is down.
    const session =
      findOwner && shown && 'session' in shown && (url === '/' || !isOpen(url))
        ? await openSession(store, findOwner, shown.session, clock(), request.log)
        : undefined;
    const holder = shown && 'key' in shown ? findOwner?.({ key: shown.key }) : session?.holder;
    request.sessionId = session?.id ?? null;
    request.caller = { shown, holder, isStranger: findOwner !== undefined && holder === undefined };
    await countRequest(request, reply);
    refuseMisconduct(request, reply, hosts, findOwner);
  });
}
