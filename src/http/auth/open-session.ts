import { randomBytes, randomUUID } from 'node:crypto';
import type { FastifyBaseLogger } from 'fastify';
import { digestOf } from '../../basics/digest.js';
import { SESSION_KEPT_S } from '../../contract/request/session-cookie.js';
import type { Store } from '../../garden/store/store.js';
import type { FindOwner, KeyHolder } from './keys.js';
import { sessionLabel } from './session-label.js';

/** More browsers than one owner has; a further session ends the oldest. */
const MAX_SESSIONS = 50;
/** How often the last use of a session is stored [ms]. */
const USED_EVERY_MS = 3_600_000;
/** 256 random bits in base64url; any other token is not looked up. */
const TOKEN = /^[\w-]{43}$/;

/** The session of a request. */
export interface OpenSession {
  readonly id: string;
  readonly holder: KeyHolder;
}

/** The session of a token, if it is valid and its key is one of the service's. */
export async function openSession(
  store: Store,
  findOwner: FindOwner,
  token: string,
  now: Date,
  log: FastifyBaseLogger,
): Promise<OpenSession | undefined> {
  if (!TOKEN.test(token)) return undefined;
  const nowMs = now.getTime();
  const session = await store.session(digestOf(token), nowMs);
  const holder = session && findOwner({ token, proof: session.keyProof });
  if (!session || holder?.owner !== session.owner) return undefined;
  if (nowMs - session.usedAtMs >= USED_EVERY_MS) {
    // The request succeeds even if this cannot be stored.
    await store
      .useSession(session.owner, session.id, nowMs)
      .catch((err: unknown) => log.warn({ err }, 'the use of a session was not kept'));
  }
  return { id: session.id, holder };
}

/** Begins a session for a key and returns the token for the browser's cookie. */
export async function beginSession(
  store: Store,
  holder: KeyHolder,
  userAgent: string | undefined,
  now: Date,
): Promise<string> {
  const token = randomBytes(32).toString('base64url');
  const nowMs = now.getTime();
  const session = {
    owner: holder.owner,
    id: randomUUID(),
    keyProof: holder.proofFor(token),
    createdAtMs: nowMs,
    usedAtMs: nowMs,
    expiresAtMs: nowMs + SESSION_KEPT_S * 1000,
    label: sessionLabel(userAgent),
  };
  await store.beginSession(session, digestOf(token), MAX_SESSIONS);
  return token;
}

/** Ends the session of a token, if there is one. */
export async function endSessionOf(store: Store, token: string | undefined, now: Date): Promise<void> {
  const session = token !== undefined && TOKEN.test(token) && (await store.session(digestOf(token), now.getTime()));
  if (session) await store.endSession(session.owner, session.id);
}
