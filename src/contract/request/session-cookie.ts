import { parseCookie, stringifySetCookie } from 'cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';

export const SESSION_COOKIE = 'session';
/** Lifetime of a session and of its cookie: half a year [s]. */
export const SESSION_KEPT_S = 180 * 24 * 3600;

/** The session token in a Cookie header, if there is one. */
export const sessionIn = (header: string | undefined): string | undefined =>
  header === undefined ? undefined : parseCookie(header)[SESSION_COOKIE];

/** Sets the session's cookie, or deletes it for an empty session. No script and no other site can use it. */
export function setSession({ protocol, headers }: FastifyRequest, reply: FastifyReply, session: string): void {
  const cookie = stringifySetCookie(SESSION_COOKIE, session, {
    path: '/',
    httpOnly: true,
    sameSite: 'strict',
    // A proxy in front may remove https, so the browser's own origin also counts.
    secure: protocol === 'https' || headers.origin?.startsWith('https://') === true,
    maxAge: session === '' ? 0 : SESSION_KEPT_S,
  });
  reply.header('set-cookie', cookie);
}
