import { setSession } from '../../../contract/request/session-cookie.js';
import { sessionListSchema } from '../../../contract/sessions.js';
import type { Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { idIn, refuseQuery, resourceNotFound } from '../../resource/resource.js';

const instantText = (atMs: number): string => new Date(atMs).toISOString();

/** The routes of an owner's browser sessions. */
export const sessionsRoutes = (store: Store, clock: () => Date): Route[] => [
  {
    method: 'GET',
    url: '/v1/sessions',
    operation: {
      id: 'listSessions',
      summary: 'Your sessions in browsers',
      answer: { schema: sessionListSchema },
      problems: keptProblems,
    },
    async handler(request) {
      refuseQuery(request);
      const sessions = await store.sessions(ownerOf(request), clock().getTime());
      const told = sessions.map(({ id, createdAtMs, usedAtMs, expiresAtMs, label }) => ({
        id,
        created: instantText(createdAtMs),
        lastUsed: instantText(usedAtMs),
        expires: instantText(expiresAtMs),
        label,
        isCurrent: id === request.sessionId,
      }));
      return signed({ sessions: told }, clock());
    },
  },
  {
    method: 'DELETE',
    url: '/v1/sessions/:id',
    operation: {
      id: 'deleteSession',
      summary: 'End the session of one browser at once',
      answer: 'none',
      problems: ['not-found', ...keptProblems],
    },
    async handler(request, reply) {
      refuseQuery(request);
      const id = idIn(request, 'session');
      if ((await store.endSession(ownerOf(request), id)) === 'absent') throw resourceNotFound('session', id);
      if (id === request.sessionId) setSession(request, reply, '');
      return reply.code(204).send();
    },
  },
];
