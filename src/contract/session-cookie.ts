import { parseCookie, stringifySetCookie } from 'cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';

export const SESSION_COOKIE = 'session';
/** So long a session lasts, and a browser keeps its cookie: half a year [s]. */
export const SESSION_KEPT_S = 180 * 24 * 3600;

/** What a Cookie header says of the session, if it says anything. */
export const sessionIn = (header: string | undefined): string | undefined =>
  header === undefined ? undefined : parseCookie(header)[SESSION_COOKIE];

/** Has the browser carry the session, or, of an empty one, forget it. No script can read it, and no other site use it. */
export function setSession({ protocol, headers }: FastifyRequest, reply: FastifyReply, session: string): void {
  const cookie = stringifySetCookie(SESSION_COOKIE, session, {
    path: '/',
    httpOnly: true,
    sameSite: 'strict',
    // What stands before the service may take https off; the browser says what it sees.
    secure: protocol === 'https' || headers.origin?.startsWith('https://') === true,
    maxAge: session === '' ? 0 : SESSION_KEPT_S,
  });
  reply.header('set-cookie', cookie);
}
