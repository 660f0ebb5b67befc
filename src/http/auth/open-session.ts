import { randomBytes, randomUUID } from 'node:crypto';
import type { FastifyBaseLogger } from 'fastify';
import { digestOf } from '../../basics/digest.js';
import { SESSION_KEPT_S } from '../../contract/session-cookie.js';
import type { Store } from '../../garden/store/store.js';
import type { FindOwner, KeyHolder } from './keys.js';
import { sessionLabel } from './session-label.js';

/** More browsers than one owner has; the oldest session ends where one more begins. */
const MAX_SESSIONS = 50;
/** How often it is written down that a session is used [ms]. */
const USED_EVERY_MS = 3_600_000;
/** 256 bits of chance, as base64url writes them: nothing else is looked up. */
const TOKEN = /^[\w-]{43}$/;

/** A session that a request has. */
export interface OpenSession {
  readonly id: string;
  readonly holder: KeyHolder;
}

/** The session of a token, while it lasts and its key is one of the service's. */
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
    // A request need not fail because this cannot be written down.
    await store
      .useSession(session.owner, session.id, nowMs)
      .catch((err: unknown) => log.warn({ err }, 'the use of a session was not kept'));
  }
  return { id: session.id, holder };
}

/** Begins a session of a key, and gives the token that the browser's cookie is to carry. */
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
