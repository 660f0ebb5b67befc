/** A browser that was given a cookie for a key. */
export interface Session {
  readonly owner: string;
  readonly id: string;
  /** Proves, together with the cookie alone, for which key it was given. */
  readonly keyProof: string;
  readonly createdAtMs: number;
  /** When it was last seen to be used [ms], to the hour. */
  readonly usedAtMs: number;
  /** From when on it opens nothing [ms]. */
  readonly expiresAtMs: number;
  /** Short name of the browser, from its User-Agent. */
  readonly label: string;
}

/** Sessions that browsers have. Of what a cookie carries only a digest is kept. All as `Store` says. */
export interface SessionStore {
  /** Begins a session. Of an owner's sessions those that have expired, and beyond `most` the oldest, are ended. */
  beginSession(session: Session, tokenDigest: string, most: number): Promise<void>;
  /** The session of a cookie, until it expires: names no owner, as whoever brings the cookie need not be known. */
  session(tokenDigest: string, nowMs: number): Promise<Session | undefined>;
  /** Keeps when a session was used. */
  useSession(owner: string, id: string, nowMs: number): Promise<void>;
  /** An owner's sessions that have not expired, the latest first. */
  sessions(owner: string, nowMs: number): Promise<Session[]>;
  /** From then on it opens nothing, on any instance. */
  endSession(owner: string, id: string): Promise<'deleted' | 'absent'>;
}
