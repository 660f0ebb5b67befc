/** What a column takes and gives. Whole numbers up to 2^53 may stand in `bigint` columns. */
export type Value = string | number | null | Uint8Array;

/** Ways to ask a database. Parameters are `$1`, `$2` and so on in both kinds; the SQL is the same for both. */
export interface Query {
  /** Runs a statement; gives how many rows it changed. */
  run(sql: string, values?: readonly Value[]): Promise<number>;
  /** All rows that a statement gives. `Row` is taken at its word. */
  all<Row>(sql: string, values?: readonly Value[]): Promise<Row[]>;
}

/** An SQL database, as much of it as the store needs. All its calls throw a StorageError where it cannot be used now. */
export interface Database {
  /** What has been committed, outside any transaction. */
  all: Query['all'];
  /**
   * Runs work that happens as a whole or not at all, and is on disk once this resolves. Where the database was in use
   * by others, or its disk was full, the work may be begun again: it must do nothing but ask the database.
   */
  transaction<T>(work: (query: Query) => Promise<T>): Promise<T>;
  /**
   * The same database for the work of one owner: owners take turns, so none holds up the others. Its transactions must
   * not ask it for anything but by their own `query`.
   *
   * @param frees The transactions delete: on a full disk they may use the space held in reserve for that.
   */
  for(owner: string, frees?: 'frees'): Database;
  /** Resolves where a write would succeed now, or would have succeeded a moment ago. */
  probe(): Promise<void>;
  close(): Promise<void>;
  /** Writes the whole database anew, so that nothing of what was overwritten is left in it; where a file needs that. */
  scrub?(): Promise<void>;
  /** The column type of ids and dates, which are compared byte by byte whatever the server's language. */
  readonly keyType: string;
  /** Statements that make others that migrate at the same time wait until the transaction's end. */
  readonly migrationLock: readonly string[];
}
