import { z } from 'zod';

/** More faults than this are not looked for: a list of wrong rows can have hundreds of thousands. */
export const MAX_ROW_FAULTS = 100;

/**
 * A list of rows, read by hand where they are as they should be and by their schema where not: a schema takes 4 µs for a
 * row, and overflows the stack where every one of 100,000 rows is wrong.
 *
 * @param row     What a row is.
 * @param isPlain Is a row one that its schema takes as it is? It may say no of any row, and yes only of such.
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

/** Has a row no fields but these, each of which may be left out, with a value that fits? */
export function hasOnly(row: object, fits: Readonly<Record<string, (value: unknown) => boolean>>): boolean {
  for (const key in row) {
    // What is inherited, or has a name of every object's, is for the schema to judge.
    if (!Object.hasOwn(fits, key) || !fits[key]!((row as Record<string, unknown>)[key])) return false;
  }
  return true;
}
