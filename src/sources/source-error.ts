/** A source that could not be asked, or whose answer could not be used, in a sentence for the owner of the place. */
export class SourceError extends Error {
  override readonly name = 'SourceError';
  /** It may go better a moment later. */
  readonly mayPass: boolean;
  /** How long the source itself asks to be left alone [ms]. */
  readonly retryAfterMs: number | undefined;

  constructor(
    message: string,
    options: { mayPass?: boolean; retryAfterMs?: number | undefined; cause?: unknown } = {},
  ) {
    super(message, { cause: options.cause });
    this.mayPass = options.mayPass ?? false;
    this.retryAfterMs = options.retryAfterMs;
  }
}
