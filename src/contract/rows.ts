import { z } from 'zod';

/** Maximum reported faults: a list of wrong rows can have hundreds of thousands. */
export const MAX_ROW_FAULTS = 100;

/**
 * A list of rows. Plain rows are checked by hand and others by their schema, because a schema takes 4 µs for a row, and
 * overflows the stack if all of 100,000 rows are wrong.
 *
 * @param row     Schema of a row.
 * @param isPlain True only for rows that the schema accepts unchanged; it may be false for any row.
 */
export function rowsOf<Row extends z.ZodType>(
  row: Row,
  isPlain: (sent: object) => boolean,
  { min, max }: { readonly min: number; readonly max: number },
) {
  const { $schema: _, ...items } = z.toJSONSchema(row, { io: 'input', target: 'draft-2020-12' });
  return z
    .array(z.unknown())
    .min(min)
    .max(max)
    .meta({ items })
    .transform((sent, context): z.output<Row>[] => {
      const rows: z.output<Row>[] = [];
      for (let i = 0; i < sent.length && context.issues.length < MAX_ROW_FAULTS; i++) {
        const one = sent[i];
        if (one !== null && typeof one === 'object' && isPlain(one)) {
          rows.push(one as z.output<Row>);
          continue;
        }
        const read = row.safeParse(one);
        if (read.success) rows.push(read.data);
        for (const issue of read.error?.issues ?? []) {
          context.issues.push({ ...issue, input: one, path: [i, ...issue.path] } as z.core.$ZodRawIssue);
        }
      }
      return rows;
    });
}

/** True if a row has only these fields, each optional and with a value that fits. */
export function hasOnly(row: object, fits: Readonly<Record<string, (value: unknown) => boolean>>): boolean {
  for (const key in row) {
    // The schema judges inherited fields, and fields with names that every object has.
    if (!Object.hasOwn(fits, key) || !fits[key]!((row as Record<string, unknown>)[key])) return false;
  }
  return true;
}
