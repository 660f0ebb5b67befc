import type { Fact } from '../basics/fact.js';

/** A source that could not be asked, or whose answer could not be used, and why: the owner of the place will read it. */
export class SourceError extends Error {
  override readonly name = 'SourceError';
  readonly said: Fact;
  /** It may go better a moment later. */
  readonly mayPass: boolean;
  /** How long the source itself asks to be left alone [ms]. */
  readonly retryAfterMs: number | undefined;

  constructor(said: Fact, options: { mayPass?: boolean; retryAfterMs?: number | undefined; cause?: unknown } = {}) {
    super(`${said.code} ${JSON.stringify(said.params)}`, { cause: options.cause });
    this.said = said;
    this.mayPass = options.mayPass ?? false;
    this.retryAfterMs = options.retryAfterMs;
  }
}
