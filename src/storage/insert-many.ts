import type { Query, Value } from './database.js';

/** Rows in one statement: enough to save round trips, and within the parameter limits of both kinds. */
const MAX_ROWS = 200;

/**
 * Inserts rows, many with each statement.
 *
 * @param into Table and columns, such as `normals (owner, place)`.
 * @param onConflict Clause for a row whose key exists; no key may be twice among the rows.
 */
export async function insertMany(
  query: Query,
  into: string,
  rows: readonly (readonly Value[])[],
  onConflict = '',
): Promise<void> {
  for (let from = 0; from < rows.length; from += MAX_ROWS) {
    const some = rows.slice(from, from + MAX_ROWS);
    let parameter = 0;
    const places = some.map((row) => `(${row.map(() => `$${++parameter}`).join(', ')})`);
    await query.run(`insert into ${into} values ${places.join(', ')} ${onConflict}`, some.flat());
  }
}
