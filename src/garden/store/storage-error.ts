/**
 * Why the database cannot be used. `unavailable`: it cannot be reached, may only be read, or is held up by others.
 * `full`: its disk is. `damaged`: its file is damaged, gone or replaced, and waiting mends nothing.
 */
export type StorageErrorKind = 'unavailable' | 'full' | 'damaged';

/**
 * The database cannot be used now, through no fault of the caller. Nothing has changed, unless the connection broke
 * while the change was being confirmed; sending the request again is harmless either way.
 */
export class StorageError extends Error {
  override readonly name = 'StorageError';
  readonly kind: StorageErrorKind;
  readonly code: `storage-${StorageErrorKind}`;

  /** @param message What happened, for the person who runs the service: it may name a file or a server. */
  constructor(message: string, { kind = 'unavailable', ...options }: ErrorOptions & { kind?: StorageErrorKind } = {}) {
    super(message, options);
    this.kind = kind;
    this.code = `storage-${kind}`;
  }
}
