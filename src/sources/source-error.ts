import type { Fact } from '../basics/fact.js';

/** A source was unreachable or its answer unusable. The owner of the place reads the reason. */
export class SourceError extends Error {
  override readonly name = 'SourceError';
  readonly fact: Fact;
  /** True when a retry a moment later may succeed. */
  readonly mayPass: boolean;
  /** The source's own `Retry-After` [ms]. */
  readonly retryAfterMs: number | undefined;

  constructor(fact: Fact, options: { mayPass?: boolean; retryAfterMs?: number | undefined; cause?: unknown } = {}) {
    super(`${fact.code} ${JSON.stringify(fact.params)}`, { cause: options.cause });
    this.fact = fact;
    this.mayPass = options.mayPass ?? false;
    this.retryAfterMs = options.retryAfterMs;
  }
}
