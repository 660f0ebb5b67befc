/**
 * The database cannot be reached, is full, may only be read, or is held up by others: nobody's fault who asks, and it
 * may work later. What was asked did not happen, unless the connection broke while it was being confirmed; asking again
 * is harmless either way.
 */
export class StorageError extends Error {
  override readonly name = 'StorageError';
  readonly code = 'storage-unavailable';
}
