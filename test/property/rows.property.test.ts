import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { findDate } from '../../src/basics/calendar.js';
import { dailyRowSchema, dailyRowsSchema, readingRowSchema, readingRowsSchema } from '../../src/contract/series.js';

/** A value that a caller may send where another is expected. */
const anything = fc.oneof(
  fc.jsonValue(),
  fc.constantFrom(
    null,
    undefined,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    -0,
    '',
    'measured',
    '2027-02-28',
    '2027-02-30',
  ),
);
const dates = fc.oneof(
  fc
    .date({ min: new Date('1850-01-01'), max: new Date('2250-12-31'), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10)),
  fc
    .tuple(fc.integer({ min: 1890, max: 2110 }), fc.nat(14), fc.nat(33))
    .map((parts) => parts.map((part, i) => String(part).padStart(i === 0 ? 4 : 2, '0')).join('-')),
);
const temperatures = fc.double({ min: -70, max: 80, noNaN: true });
const basis = fc.constantFrom('measured', 'modelled', 'expected', 'past-years', 'guessed');

/** A row whose fields are mostly right, now and then wrong, missing, or none of its own. */
const rowOf = (fields: Readonly<Record<string, fc.Arbitrary<unknown>>>): fc.Arbitrary<unknown> => {
  const right = fc.record(fields, { requiredKeys: [] });
  const wrong = fc.record(
    Object.fromEntries([...Object.keys(fields), 'note', 'constructor', '__proto__'].map((name) => [name, anything])),
    { requiredKeys: [] },
  );
  return fc.oneof(
    { weight: 6, arbitrary: right },
    { weight: 2, arbitrary: fc.tuple(right, wrong).map(([one, other]) => ({ ...one, ...other })) },
    { weight: 1, arbitrary: anything },
  );
};
const days = rowOf({
  date: dates,
  min: temperatures,
  mean: temperatures,
  max: temperatures,
  basis,
  plusMinus: temperatures,
  readings: fc.nat(),
  complete: fc.boolean(),
});
const readings = rowOf({ at: fc.oneof(dates, fc.string({ maxLength: 60 })), value: temperatures, basis });

describe('rows read by hand', () => {
  test.each([
    ['days', days, dailyRowsSchema, z.array(dailyRowSchema).min(1).max(40_000)],
    ['readings', readings, readingRowsSchema, z.array(readingRowSchema).min(2).max(200_000)],
  ] as const)('%s are taken, and refused, just as by their schema', (_, row, byHand, bySchema) => {
    fc.assert(
      fc.property(fc.array(row, { maxLength: 12 }), (rows) => {
        const [ours, theirs] = [byHand.safeParse(rows), bySchema.safeParse(rows)];
        expect(ours.success).toBe(theirs.success);
        if (theirs.success) expect(ours.data).toEqual(theirs.data);
        // Of a list of the wrong length the rows need not be told of as well.
        else if (rows.length >= 2) expect(ours.error!.issues).toEqual(theirs.error!.issues);
      }),
      { numRuns: 2000 },
    );
  });

  test('a date exists where the calendar of another program has it', () => {
    fc.assert(
      fc.property(dates, (text) => {
        const at = new Date(`${text}T00:00:00Z`);
        const isThere = !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
        const year = Number(text.slice(0, 4));
        expect(findDate(text) !== undefined).toBe(isThere && year >= 1900 && year <= 2199);
      }),
      { numRuns: 3000 },
    );
  });
});
