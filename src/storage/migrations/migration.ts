import type { Query } from '../database.js';

/**
 * One step of the schema's history, never changed once it is released. Both kinds of database have its column types:
 * `text`, `double precision`, `bigint`, `integer`, `bytea`.
 */
export interface Migration {
  readonly name: string;
  /** Statements in order; `key` is the column type of ids and dates. */
  statements(key: string): readonly string[];
  /** Converts rows in a way that SQL cannot, after the statements and in the same transaction. */
  carryOver?(query: Query): Promise<void>;
}
