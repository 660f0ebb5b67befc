import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Delimiter, recordsIn, rowReader } from '../../../src/readings/text/records.js';

/** All records of a text that comes in pieces of this length, each with its line. */
function readAll(text: string, delimiter: Delimiter, piece = text.length || 1): { rows: string[][]; lines: number[] } {
  const reader = rowReader(delimiter);
  const [rows, lines]: [string[][], number[]] = [[], []];
  for (let from = 0; from < Math.max(1, text.length); from += piece) {
    reader.read(text.slice(from, from + piece), from + piece >= text.length, (row, line) => {
      rows.push([...row]);
      lines.push(line);
    });
  }
  return { rows, lines };
}

const cell = fc.string({ unit: fc.constantFrom('a', '1', '.', ',', ';', '"', '\n', ' ', '°'), maxLength: 6 });
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

describe('rowReader', () => {
  it('splits quoted cells as an independent parser does, however the text is cut', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 }),
        fc.constantFrom<Delimiter>(',', ';', '\t'),
        fc.integer({ min: 1, max: 30 }),
        (table, delimiter, piece) => {
          const text = `${table.map((row) => row.map(quoted).join(delimiter)).join('\n')}\n`;
          // csv-parse is the other parser: it shares no code with the one in use.
          const truth = parse(text, { delimiter, relax_column_count: true }) as unknown as string[][];
          expect(recordsIn(text, delimiter).rows).toEqual(truth);
          const isOneToALine = !truth.some((row) => row.some((cell) => cell.includes('\n')));
          if (isOneToALine) expect(readAll(text, delimiter, piece).rows).toEqual(truth);
        },
      ),
    );
  });

  it('splits bare cells as an independent parser does, and leaves out those that are not wanted', () => {
    const bare = fc.string({ unit: fc.constantFrom('a', '1', '.', ' ', '°'), minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(
        fc.array(fc.array(bare, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 }),
        fc.constantFrom<Delimiter>(',', ';', '\t', '|'),
        fc.integer({ min: 1, max: 30 }),
        fc.nat(4),
        (table, delimiter, piece, lastColumn) => {
          const text = `${table.map((row) => row.join(delimiter)).join('\n')}\n`;
          const truth = parse(text, { delimiter, relax_column_count: true, quote: null }) as unknown as string[][];
          expect(readAll(text, delimiter, piece).rows).toEqual(truth);
          const reader = rowReader(delimiter, lastColumn);
          const rows: string[][] = [];
          reader.read(text, true, (row) => rows.push([...row]));
          expect(rows).toEqual(truth.map((row) => row.slice(0, lastColumn + 1)));
        },
      ),
    );
  });

  it('knows the line that each record begins on, over quoted line breaks', () => {
    expect(recordsIn('a,"b\nc"\nd,e\n', ',')).toEqual({
      rows: [
        ['a', 'b\nc'],
        ['d', 'e'],
      ],
      lines: [1, 3],
    });
  });

  it('lets a quotation mark that never closes spoil its own line only', () => {
    const lines = Array.from({ length: 400 }, (_, i) => (i === 5 ? `2027,"${i}` : `2027,${i}`));
    const { rows } = readAll(`${lines.join('\n')}\n`, ',', 500);
    expect(rows).toHaveLength(400);
    expect(rows.filter(([, value], i) => value !== String(i))).toEqual([['2027', '"5']]);
  });

  it('is not slowed down without end by a quotation mark on every line', () => {
    const text = '"open\n'.repeat(20_000);
    const before = performance.now();
    expect(readAll(text, ',', 65_536).rows).toHaveLength(20_000);
    expect(performance.now() - before).toBeLessThan(3000);
  });

  it('takes a run of blanks as one', () => {
    expect(readAll('  64758  20270501   -0.5\n', ' ').rows).toEqual([['64758', '20270501', '-0.5']]);
  });

  it('refuses a line without end', () => {
    const reader = rowReader(',');
    expect(() => {
      for (let i = 0; i < 200; i++) reader.read('1'.repeat(10_000), false, () => {});
    }).toThrow('not-csv.long-line {"line":1}');
  });
});
