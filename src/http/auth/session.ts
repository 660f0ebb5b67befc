import { z } from 'zod';
import { RequestError } from '../../basics/errors.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import { requireSameOrigin } from '../../contract/request/same-origin.js';
import { sessionIn, setSession } from '../../contract/request/session-cookie.js';
import type { Store } from '../../garden/store/store.js';
import type { Route } from '../openapi/route.js';
import { read } from '../question/read.js';
import { refuseQuery } from '../resource/resource.js';
import { isForm } from '../server/form-body.js';
import type { FindOwner } from './keys.js';
import { beginSession, endSessionOf } from './open-session.js';

const keySchema = z.strictObject({
  key: z
    .string()
    .trim()
    .describe('One of the keys that the service was started with. A form without one ends the session.'),
  asked: z.string().optional().describe('In a form: where the page continues, as `/?` and a query.'),
});

/** The address on the page where a form continues; never outside the page. */
function placeOf(asked: string | undefined, isRefused: boolean): string {
  const query = new URLSearchParams(asked?.startsWith('/?') ? asked.slice(2) : '');
  query.delete('key');
  if (isRefused) query.set('key', 'refused');
  return query.size === 0 ? '/' : `/?${query}`;
}

/**
 * A browser sends the key once; from then on a cookie stands for it.
 *
 * @param findOwner Left out: no key is needed, and no cookie is set.
 */
export const sessionRoutes = (store: Store, clock: () => Date, findOwner: FindOwner | undefined): Route[] => [
  {
    method: 'POST',
    url: '/session',
    open: 'by-token',
    operation: {
      id: 'beginSession',
      summary: 'Give a browser a cookie that stands for your key',
      description:
        'For pages: other callers send the key itself with each request. The cookie (`Set-Cookie`; HttpOnly, SameSite=Strict) is valid for 180 days, while the service has the key, and until the session ends. A form, for pages without scripts, is redirected to `/`, or with a wrong key to `/?key=refused`; without a key it ends the session. A service without keys sets no cookie.',
      json: { schema: keySchema, example: { key: 'a-long-secret' } },
      form: true,
      answer: 'none',
      problems: [
        'not-json',
        'not-understood',
        'too-large',
        'unsupported-media-type',
        'foreign-origin',
        'storage-unavailable',
      ],
    },
    async handler(request, reply) {
      requireSameOrigin(request);
      refuseQuery(request);
      const { key, asked } = read(keySchema, request.body);
      const isEnd = isForm(request) && key === '';
      const holder = isEnd ? undefined : findOwner?.({ key });
      const isRefused = findOwner !== undefined && !isEnd && holder === undefined;
      if (isRefused && !isForm(request)) refuseKey();
      // The browser forgets its old session, so nobody could end it later.
      if (holder || isEnd) await endSessionOf(store, sessionIn(request.headers.cookie), clock());
      if (isEnd) setSession(request, reply, '');
      if (holder) {
        setSession(request, reply, await beginSession(store, holder, request.headers['user-agent'], clock()));
      }
      return isForm(request) ? reply.redirect(placeOf(asked, isRefused), 303) : reply.code(204).send();
    },
  },
  {
    method: 'DELETE',
    url: '/session',
    open: 'by-token',
    operation: {
      id: 'endSession',
      summary: 'End the session of this browser at once, also for copies of its cookie',
      answer: 'none',
      problems: ['foreign-origin', 'not-understood', 'storage-unavailable'],
    },
    async handler(request, reply) {
      requireSameOrigin(request);
      refuseQuery(request);
      await endSessionOf(store, sessionIn(request.headers.cookie), clock());
      setSession(request, reply, '');
      return reply.code(204).send();
    },
  },
];

function refuseKey(): never {
  throw new RequestError('unauthorized', requestRefusal('unauthorized.unknown-key'));
}
