import type { Query, Value } from './database.js';

/** Rows in one statement: enough to make the way to the server short, few enough for what either kind takes. */
const MAX_ROWS = 200;

/**
 * Inserts rows, many with each statement.
 *
 * @param into Table and columns, such as `normals (owner, place)`.
 * @param onConflict What to do with a row whose key is there; no key may be twice among the rows.
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
