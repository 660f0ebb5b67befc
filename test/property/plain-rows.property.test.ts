/*
 * Files of plain rows, spoilt here and there, are read straight from bytes where they can be. The same text in UTF-16 has
 * no plain rows, so all of it is read as text: both have to come to the same. PROPERTY_RUNS=2000 looks longer.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findZone } from '../../src/basics/calendar.js';
import { RequestError } from '../../src/basics/errors.js';
import { fileReader } from '../../src/readings/read-file.js';
import { type FileHints, noHints } from '../../src/readings/text/rows-read.js';

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 60), seed: Number(process.env.PROPERTY_SEED ?? 1130) };

const MINUTE_MS = 60_000;
const two = (n: number): string => String(n).padStart(2, '0');

/** A row's cells, from the numbers of its wall clock. */
interface Style {
  readonly delimiter: string;
  readonly names: readonly string[];
  readonly stamp: (at: Date) => string;
  readonly value: (tempC: number) => string;
  readonly valuesBeside: boolean;
}
const isoDay = (at: Date): string => at.toISOString().slice(0, 10);
const hhmm = (at: Date): string => at.toISOString().slice(11, 16);
const twelve = (at: Date): string =>
  `${at.getUTCHours() % 12 || 12}:${two(at.getUTCMinutes())} ${at.getUTCHours() < 12 ? 'AM' : 'PM'}`;
const point = (tempC: number): string => tempC.toFixed(2);
const comma = (tempC: number): string => tempC.toFixed(1).replace('.', ',');
const styles: readonly Style[] = [
  {
    delimiter: ',',
    names: ['time', 'soil temperature 5 cm (°C)'],
    stamp: (at) => `${isoDay(at)} ${hhmm(at)}`,
    value: point,
    valuesBeside: false,
  },
  {
    delimiter: ';',
    names: ['Datum', 'Bodentemperatur 5 cm (°C)'],
    stamp: (at) => `${two(at.getUTCDate())}.${two(at.getUTCMonth() + 1)}.${at.getUTCFullYear()} ${hhmm(at)}:00`,
    value: comma,
    valuesBeside: true,
  },
  {
    delimiter: ',',
    names: ['Date', 'soil temp 10 cm [°F]'],
    stamp: (at) => `${at.getUTCMonth() + 1}/${at.getUTCDate()}/${at.getUTCFullYear()} ${twelve(at)}`,
    value: (tempC) => (tempC * 1.8 + 32).toFixed(1),
    valuesBeside: true,
  },
  {
    delimiter: '|',
    names: ['Date', 'soil temp 10 cm (°C)'],
    stamp: (at) => `${isoDay(at)} ${twelve(at).padStart(8, '0')}`,
    value: point,
    valuesBeside: false,
  },
  {
    delimiter: '\t',
    names: ['stamp', 'soil temperature (K)'],
    stamp: (at) => `${isoDay(at)}${hhmm(at)}00`.replace(/[-:]/g, ''),
    value: (tempC) => (tempC + 273.15).toFixed(2),
    valuesBeside: false,
  },
  {
    delimiter: ',',
    names: ['time', 'soil temperature 5 cm (°C)'],
    stamp: (at) => at.toISOString(),
    value: point,
    valuesBeside: true,
  },
  {
    delimiter: ';',
    names: ['time', 'soil temperature 5 cm (°C)'],
    stamp: (at) => `${isoDay(at)}T${hhmm(at)}:00+01:00`,
    value: (tempC) => ` ${point(tempC)} `,
    valuesBeside: false,
  },
];

const FIRST = 'First probe';
const SECOND = 'Second probe';

type Spoil = (cells: string[], valueAt: number) => void;
const value =
  (text: string): Spoil =>
  (cells, valueAt) => {
    cells[valueAt] = text;
  };
const stamp =
  (change: (text: string) => string): Spoil =>
  (cells) => {
    cells[cells.length > 2 ? 1 : 0] = change(cells[cells.length > 2 ? 1 : 0]!);
  };
/** Ways to spoil a row, or to write it in a way that is not plain; some do both by the delimiter. */
const spoils: Readonly<Record<string, Spoil>> = {
  'no value': value(''),
  'a word for no value': value('NaN'),
  'a mark for no value': value('-999.9'),
  'a mark for no value, near': value('-99'),
  'a spike': value('55.5'),
  'far too hot': value('1234.5'),
  'twenty digits': value('12.34567890123456789'),
  'fewer digits': value('12'),
  'an exponent': value('1.25e1'),
  'no digit behind the mark': value('12.'),
  'no digit before the mark': value('.5'),
  'two marks': value('1.2.5'),
  'a decimal comma': value('12,5'),
  'a minus zero': value('-0.0'),
  'a plus': value('+12.5'),
  'a unit': value('12.5 °C'),
  'a digit that is none': value('１２'),
  quoted: (cells, valueAt) => {
    cells[valueAt] = `"${cells[valueAt]}"`;
  },
  'a quotation mark that does not close': value('"12.5'),
  'a quoted stamp': stamp((text) => `"${text}"`),
  'a quoted cell beside': (cells) => {
    cells.push(`"${cells.pop()},;|\t0"`);
  },
  'a cell too many': (cells) => {
    cells.push('7');
  },
  'a cell too few': (cells) => {
    cells.pop();
  },
  'a line return': value('12.5\r'),
  'two line returns': value('12.5\r\r'),
  'a remark': (cells) => {
    cells.splice(0, cells.length, '# the bed was watered');
  },
  'a title': (cells) => {
    cells.splice(0, cells.length, SECOND);
  },
  'an empty line': (cells) => {
    cells.splice(0, cells.length, '');
  },
  'no stamp': stamp(() => ''),
  'an hour too late': stamp((text) => text.replace(/([T ])\d?\d:/, '$125:')),
  'a sixtieth minute': stamp((text) => text.replace(/:\d\d/, ':60')),
  'the end of the day': stamp((text) => text.replace(/([T ])\d\d:\d\d/, '$124:00')),
  'one digit for the hour': stamp((text) => text.replace(/([T ])0(\d:)/, '$1$2')),
  'a blank in front': stamp((text) => ` ${text}`),
  'a zone behind': stamp((text) => `${text}Z`),
  'other seconds': stamp((text) => text.replace(/:\d\d(?=:\d\d|Z|\+)/, ':07')),
};

interface Made {
  readonly style: Style;
  readonly lineEnd: '\n' | '\r\n';
  readonly hasBom: boolean;
  readonly startMinute: number;
  readonly stepMinutes: number;
  readonly count: number;
  /** Rows beyond the first thousand, from which the layout is told; -1 is the last row. */
  readonly spoilt: readonly (readonly [row: number, how: string])[];
  /** Rows that change places with the one so far behind them. */
  readonly swapped: readonly (readonly [row: number, by: number])[];
  readonly isNewestFirst: boolean;
  /** The rows stand under titles. */
  readonly hasTitles: boolean;
  /** So many characters are missing at the end. */
  readonly cutOff: number;
}

const made: fc.Arbitrary<Made> = fc.record({
  style: fc.constantFrom(...styles),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  hasBom: fc.boolean(),
  // Days before and after the clocks change in both halves of the world.
  startMinute: fc
    .tuple(
      fc.constantFrom(Date.UTC(2026, 2, 27), Date.UTC(2026, 9, 23), Date.UTC(2027, 0, 9), Date.UTC(2026, 11, 30)),
      fc.integer({ min: 0, max: 2000 }),
    )
    .map(([dayMs, minute]) => dayMs / MINUTE_MS + minute),
  stepMinutes: fc.constantFrom(1, 5, 15, 60),
  count: fc.integer({ min: 1300, max: 2600 }),
  spoilt: fc.array(
    fc.tuple(fc.oneof(fc.nat(), fc.integer({ min: -3, max: -1 })), fc.constantFrom(...Object.keys(spoils))),
    { maxLength: 25 },
  ),
  swapped: fc.array(fc.tuple(fc.nat(), fc.integer({ min: 1, max: 90 })), { maxLength: 4 }),
  isNewestFirst: fc.integer({ min: 0, max: 6 }).map((n) => n === 0),
  hasTitles: fc.boolean(),
  cutOff: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 12 })),
});

function textOf({
  style,
  lineEnd,
  startMinute,
  stepMinutes,
  count,
  spoilt,
  swapped,
  isNewestFirst,
  hasTitles,
  cutOff,
}: Made) {
  const { names, delimiter, valuesBeside } = style;
  const rows = Array.from({ length: count }, (_, i) => {
    const at = new Date((startMinute + i * stepMinutes) * MINUTE_MS);
    const hours = (startMinute + i * stepMinutes) / 60;
    const tempC = 9 + 6 * Math.sin((2 * Math.PI * hours) / 24) + 3 * Math.sin((2 * Math.PI * hours) / 131);
    const cells = [style.stamp(at), style.value(tempC)];
    return valuesBeside ? [String(i + 1), ...cells, String(60 + (i % 31))] : cells;
  });
  if (isNewestFirst) rows.reverse();
  for (const [row, by] of swapped) {
    const [a, b] = [row % count, (row + by) % count];
    [rows[a], rows[b]] = [rows[b]!, rows[a]!];
  }
  for (const [row, how] of spoilt) {
    const at = row < 0 ? count + row : 1000 + (row % (count - 1000));
    spoils[how]!(rows[at]!, valuesBeside ? 2 : 1);
  }
  const header = valuesBeside ? ['No.', ...names, 'Humidity'] : names;
  const lines = [header, ...rows].map((cells) => cells.join(delimiter));
  const text = (hasTitles ? [FIRST, ...lines] : lines).join(lineEnd) + lineEnd;
  return text.slice(0, text.length - cutOff);
}

/** All that comes of a file, as one text; numbers of readings bit by bit. */
function outcomeOf(bytes: Uint8Array, cuts: readonly number[], hints: FileHints, zone: string): string {
  const reader = fileReader(hints, findZone(zone));
  try {
    const places = [0, ...cuts.map((cut) => cut % (bytes.length + 1)).sort((a, b) => a - b), bytes.length];
    for (let i = 1; i < places.length; i++) reader.push(bytes.subarray(places[i - 1], places[i]));
    const rest = reader.finish();
    for (;;) {
      const { done, value: read } = rest.next();
      if (!done) continue;
      const { readings, zone: at, ...series } = read.series;
      const bits = (numbers: Float64Array | Float32Array): string =>
        Buffer.from(numbers.buffer, numbers.byteOffset, numbers.byteLength).toString('base64');
      return JSON.stringify([
        { ...read.file, encoding: null },
        read.rows,
        { ...series, zone: at.name },
        readings && [bits(readings.atMs), bits(readings.valueC)],
      ]);
    }
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    return JSON.stringify([error.code, error.message, error.faults]);
  }
}

const hints: fc.Arbitrary<FileHints> = fc
  .record({
    dateOrder: fc.constantFrom(null, null, 'dmy' as const, 'mdy' as const),
    column: fc.constantFrom(null, null, SECOND),
    clock: fc.constantFrom(null, 'local' as const, 'standard' as const, 'utc' as const),
  })
  .map((said) => ({ ...noHints, medium: 'soil' as const, ...said }));

describe('a file of plain rows', () => {
  it('comes to the same whether its rows are read from bytes or from text', () => {
    fc.assert(
      fc.property(
        made,
        hints,
        fc.constantFrom('Etc/GMT+2', 'Europe/Berlin', 'Australia/Lord_Howe'),
        fc.array(fc.nat(), { minLength: 3, maxLength: 12 }),
        (file, said, zone, cuts) => {
          const text = textOf(file);
          const bytes = Buffer.from((file.hasBom ? '\ufeff' : '') + text);
          const wide = Buffer.from(`\ufeff${text}`, 'utf16le');
          // Pieces of one size in both, so that each has its turns of plain rows and others.
          const pieces = [...cuts, ...Array.from({ length: 20 }, (_, i) => 4096 * (i + 6))];
          expect(outcomeOf(bytes, pieces, said, zone)).toBe(outcomeOf(wide, [], said, zone));
        },
      ),
      RUNS,
    );
  });
});
