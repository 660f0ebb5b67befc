/** A value of a column. Whole numbers up to 2^53 may stand in `bigint` columns. */
export type Value = string | number | null | Uint8Array;

/** Queries of a database. Parameters are `$1`, `$2` and so on in both kinds; the SQL is the same for both. */
export interface Query {
  /** Runs a statement and returns the number of rows it changed. */
  run(sql: string, values?: readonly Value[]): Promise<number>;
  /** Returns all rows of a statement. The type `Row` is not checked. */
  all<Row>(sql: string, values?: readonly Value[]): Promise<Row[]>;
}

/** An SQL database, as far as the store needs it. All its calls throw a StorageError when it is unavailable. */
export interface Database {
  /** Reads committed rows, outside any transaction. */
  all: Query['all'];
  /**
   * Runs work that succeeds as a whole or not at all, and is on disk once this resolves. The work may run again when
   * the database was in use by others or its disk was full, so it must do nothing but query the database.
   */
  transaction<T>(work: (query: Query) => Promise<T>): Promise<T>;
  /**
   * The same database for the work of one owner. Owners take turns, so that none holds up the others. Its transactions
   * may query it only through their own `query`.
   *
   * @param frees The transactions delete, so on a full disk they may use the reserved space.
   */
  for(owner: string, frees?: 'frees'): Database;
  /** Resolves when a write would succeed, or would have succeeded a moment ago. */
  probe(): Promise<void>;
  close(): Promise<void>;
  /** Rewrites the whole database, so that no overwritten data stays in its file; only files need that. */
  scrub?(): Promise<void>;
  /** The column type of ids and dates, which compares byte by byte whatever the server's language. */
  readonly keyType: string;
  /** Statements that make other instances wait with their migrations until the end of the transaction. */
  readonly migrationLock: readonly string[];
}
