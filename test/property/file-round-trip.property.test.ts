import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findZone } from '../../src/basics/calendar.js';
import { RequestError } from '../../src/basics/errors.js';
import { fileReader } from '../../src/readings/read-file.js';
import type { FileHints, FileRead } from '../../src/readings/rows-read.js';

const RUNS = Number(process.env.PROPERTY_RUNS ?? 50);
const MINUTE = 60_000;
const HINTS: FileHints = {
  medium: 'soil',
  probeDepthCm: null,
  unit: null,
  column: null,
  timeColumn: null,
  dateOrder: null,
  clock: null,
  decimalMark: null,
};
const zone = findZone('Etc/GMT+2')!;

function readBytes(bytes: Uint8Array, cuts: readonly number[] = [], hints: Partial<FileHints> = {}): FileRead {
  const reader = fileReader({ ...HINTS, ...hints }, zone);
  let from = 0;
  for (const cut of [...cuts.map((one) => one % (bytes.length + 1)), bytes.length].sort((a, b) => a - b)) {
    reader.push(bytes.subarray(from, cut));
    from = cut;
  }
  const rest = reader.finish();
  for (;;) {
    const { done, value } = rest.next();
    if (done) return value;
  }
}

/** A soil's days: instants a step apart, and tenths of a degree that swing, drift and stumble a little. */
const seriesArbitrary = fc
  .record({
    stepMinutes: fc.constantFrom(5, 10, 15, 30, 60, 120),
    days: fc.integer({ min: 3, max: 9 }),
    meanTenths: fc.integer({ min: 60, max: 250 }),
    swingTenths: fc.integer({ min: 20, max: 80 }),
    stumbles: fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 20, maxLength: 40 }),
    startDay: fc.integer({ min: 0, max: 700 }),
  })
  .map(({ stepMinutes, days, meanTenths, swingTenths, stumbles, startDay }) => {
    const startMs = Date.UTC(2026, 0, 1) + startDay * 1440 * MINUTE;
    const count = Math.floor((days * 1440) / stepMinutes);
    return Array.from({ length: count }, (_, i) => {
      const wave = swingTenths * Math.sin((2 * Math.PI * (i * stepMinutes - 540)) / 1440);
      return {
        wallMs: startMs + i * stepMinutes * MINUTE,
        tenths: Math.round(meanTenths + wave) + stumbles[i % stumbles.length]!,
      };
    });
  });
type Series = readonly { readonly wallMs: number; readonly tenths: number }[];

const two = (n: number): string => String(n).padStart(2, '0');
const partsOf = (ms: number) => {
  const at = new Date(ms);
  const [y, mo, d] = [at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate()];
  return { y, mo, d, h: at.getUTCHours(), mi: at.getUTCMinutes() };
};
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const HOUR = 60 * MINUTE;

/** Ways to write a stamp, each in one or more cells; the wall clock is that of the place, two hours behind UTC. */
const stamps: Record<string, (wallMs: number) => string[]> = {
  iso: (ms) => [new Date(ms).toISOString().slice(0, 16)],
  'iso blank': (ms) => [new Date(ms).toISOString().slice(0, 19).replace('T', ' ')],
  'iso in UTC': (ms) => [new Date(ms + 2 * HOUR).toISOString()],
  'iso with offset': (ms) => [`${new Date(ms).toISOString().slice(0, 19)}-02:00`],
  dotted: (ms) => [(({ y, mo, d, h, mi }) => `${two(d)}.${two(mo)}.${y} ${two(h)}:${two(mi)}`)(partsOf(ms))],
  American: (ms) => [
    (({ y, mo, d, h, mi }) => `${mo}/${d}/${y} ${h % 12 || 12}:${two(mi)}:00 ${h < 12 ? 'AM' : 'PM'}`)(partsOf(ms)),
  ],
  'two-digit year': (ms) => [
    (({ y, mo, d, h, mi }) => `${two(d)}.${two(mo)}.${two(y % 100)} ${two(h)}:${two(mi)}`)(partsOf(ms)),
  ],
  'month name': (ms) => [
    (({ y, mo, d, h, mi }) => `${two(d)}-${MONTHS[mo - 1]}-${y} ${two(h)}:${two(mi)}`)(partsOf(ms)),
  ],
  compact: (ms) => [new Date(ms).toISOString().slice(0, 16).replace(/[-T:]/g, '')],
  seconds: (ms) => [String((ms + 2 * HOUR) / 1000)],
  milliseconds: (ms) => [String(ms + 2 * HOUR)],
  split: (ms) => [new Date(ms).toISOString().slice(0, 10), new Date(ms).toISOString().slice(11, 16)],
};

const dialectArbitrary = fc.record({
  stamp: fc.constantFrom(...Object.keys(stamps)),
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  comma: fc.boolean(),
  unit: fc.constantFrom('C', 'F', 'K'),
  unitIn: fc.constantFrom('name', 'row', 'cell', 'title'),
  quoted: fc.boolean(),
  lures: fc.boolean(),
  trailing: fc.boolean(),
  above: fc.constantFrom('', 'Readings of the north bed\n', '# made by hand\n#\n', 'Bed: north\nProbe: 7\n\n'),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r', '\r\r\n'),
  encoding: fc.constantFrom('utf8', 'bom', 'utf16le', 'utf16be', 'latin1'),
  order: fc.constantFrom('oldest first', 'newest first', 'repeated'),
});
type Dialect = typeof dialectArbitrary extends fc.Arbitrary<infer One> ? One : never;

const degrees = (tenths: number, unit: string): string =>
  unit === 'C'
    ? (tenths / 10).toFixed(1)
    : unit === 'F'
      ? (tenths * 0.18 + 32).toFixed(2)
      : (tenths / 10 + 273.15).toFixed(2);
const SIGN: Record<string, string> = { C: '°C', F: '°F', K: 'K' };

/** The lines of a file, header and all. */
function linesOf(series: Series, dialect: Dialect): { above: string[]; header: string[]; rows: string[] } {
  const { stamp, delimiter, unit, unitIn, quoted, lures, trailing } = dialect;
  const comma = dialect.comma && delimiter !== ',';
  const join = (cells: readonly string[]): string =>
    cells.map((cell) => (quoted ? `"${cell}"` : cell)).join(delimiter) + (trailing ? delimiter : '');
  const stampNames = stamp === 'split' ? ['date', 'time'] : ['time'];
  const name = `soil 5 cm${unitIn === 'name' ? ` (${SIGN[unit]})` : ''}`;
  const header = [join([...(lures ? ['no.'] : []), ...stampNames, name, ...(lures ? ['humidity', 'battery'] : [])])];
  if (unitIn === 'row') {
    header.push(
      join([...(lures ? ['RN'] : []), ...stampNames.map(() => 'TS'), SIGN[unit]!, ...(lures ? ['%', 'V'] : [])]),
    );
  }
  const rows = series.map(({ wallMs, tenths }, i) => {
    const written = degrees(tenths, unit);
    const value = `${comma ? written.replace('.', ',') : written}${unitIn === 'cell' ? ` ${SIGN[unit]}` : ''}`;
    const humidity = String(60 + (i % 7));
    return join([
      ...(lures ? [String(i + 1)] : []),
      ...stamps[stamp]!(wallMs),
      value,
      ...(lures ? [humidity, comma ? '3,1' : '3.1'] : []),
    ]);
  });
  const above = dialect.above === '' ? [] : dialect.above.trimEnd().split('\n');
  return { above: unitIn === 'title' ? [...above, `All temperatures in ${SIGN[unit]}`] : above, header, rows };
}

function bytesOf(lines: readonly string[], { lineEnd, encoding }: Dialect): Uint8Array {
  const text = lines.map((line) => line + lineEnd).join('');
  if (encoding === 'latin1') return Buffer.from(text, 'latin1');
  if (encoding === 'utf16le') return Buffer.from(`\ufeff${text}`, 'utf16le');
  if (encoding === 'utf16be') return Buffer.from(`\ufeff${text}`, 'utf16le').swap16();
  return Buffer.from(encoding === 'bom' ? `\ufeff${text}` : text);
}

function fileOf(series: Series, dialect: Dialect): Uint8Array {
  const { above, header, rows } = linesOf(series, dialect);
  const ordered =
    dialect.order === 'newest first'
      ? rows.reverse()
      : dialect.order === 'repeated'
        ? rows.flatMap((row, i) => (i % 9 === 0 ? [row, row] : [row]))
        : rows;
  return bytesOf([...above, ...header, ...ordered], dialect);
}

/** Reads a file, answering what it asks as its writer would. */
function readAsWritten(bytes: Uint8Array, dialect: Dialect, cuts: readonly number[] = []): FileRead {
  const told: Partial<FileHints> = {};
  for (let asked = 0; ; asked++) {
    try {
      return readBytes(bytes, cuts, told);
    } catch (error) {
      if (!(error instanceof RequestError) || asked > 2) throw error;
      if (error.code !== 'choose-date-order') throw error;
      Object.assign(told, { dateOrder: dialect.stamp === 'American' ? 'mdy' : 'dmy' });
    }
  }
}

describe('a series written in any dialect', () => {
  it('is read back the same, however the bytes are cut', () => {
    fc.assert(
      fc.property(
        seriesArbitrary,
        dialectArbitrary,
        fc.array(fc.nat(1_000_000), { maxLength: 5 }),
        (series, dialect, cuts) => {
          const { series: read, file } = readAsWritten(fileOf(series, dialect), dialect, cuts);
          const readings = read.readings!;
          expect(file.droppedCount).toBe(0);
          expect([...readings.atMs]).toEqual(series.map(({ wallMs }) => wallMs + 2 * HOUR));
          const tolerance = dialect.unit === 'C' ? 1e-9 : 0.006;
          series.forEach(({ tenths }, i) => {
            expect(Math.abs(readings.valueC[i]! - tenths / 10)).toBeLessThan(tolerance);
          });
          expect(read).toMatchObject({ medium: 'soil', probeDepthCm: 5, unit: dialect.unit });
        },
      ),
      { numRuns: RUNS },
    );
  });

  it('and cut off at any byte is read up to there, or refused in words', () => {
    fc.assert(
      fc.property(seriesArbitrary, dialectArbitrary, fc.nat(1_000_000), (series, dialect, at) => {
        const whole = fileOf(series, { ...dialect, order: 'oldest first' });
        const bytes = whole.subarray(0, at % whole.length);
        const read = attempt(() => readAsWritten(bytes, dialect));
        if (!read) return;
        const { atMs, valueC } = read.series.readings ?? { atMs: [], valueC: [] };
        // The last row may have lost digits; all before it stand.
        for (let i = 0; i < atMs.length - 1; i++) {
          expect(atMs[i]).toBe(series[i]!.wallMs + 2 * HOUR);
          expect(Math.abs(valueC[i]! - series[i]!.tenths / 10)).toBeLessThan(0.06);
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('without some of its rows shows a gap', () => {
    fc.assert(
      fc.property(seriesArbitrary, dialectArbitrary, fc.integer({ min: 5, max: 60 }), (series, dialect, percent) => {
        const from = Math.floor((series.length * percent) / 100);
        const lost = Math.ceil((37 * HOUR) / (series[1]!.wallMs - series[0]!.wallMs));
        const kept = series.filter((_, i) => i < from || i >= from + lost);
        fc.pre(from > 2 && kept.length > from + 2);
        const { series: read } = readAsWritten(fileOf(kept, { ...dialect, order: 'oldest first' }), dialect);
        const gaps = [...read.readings!.atMs].filter((ms, i, all) => i > 0 && ms - all[i - 1]! > 36 * HOUR);
        expect(gaps).toHaveLength(1);
        expect(read.readings!.atMs.length).toBe(kept.length);
      }),
      { numRuns: Math.ceil(RUNS / 3) },
    );
  });
});

describe('a byte flipped', () => {
  const plain: Dialect = {
    stamp: 'iso',
    delimiter: ',',
    comma: false,
    unit: 'C',
    unitIn: 'name',
    quoted: false,
    lures: false,
    trailing: false,
    above: '',
    lineEnd: '\n',
    encoding: 'utf8',
    order: 'oldest first',
  };

  it('is told, asked or harmless; inside a value it changes at most that value', () => {
    fc.assert(
      fc.property(
        seriesArbitrary,
        fc.constantFrom(',', ';', '\t'),
        fc.constantFrom('iso', 'dotted', 'split', 'seconds'),
        fc.nat(1_000_000),
        fc.integer({ min: 1, max: 255 }),
        (series, delimiter, stamp, where, mask) => {
          const dialect = { ...plain, delimiter, stamp };
          const { header, rows } = linesOf(series, dialect);
          const bytes = Buffer.from(fileOf(series, dialect));
          const before = readAsWritten(bytes, dialect);
          const at = where % bytes.length;
          bytes[at]! ^= mask;
          const after = attempt(() => readAsWritten(bytes, dialect));
          if (!after) return;
          const changed = changesBetween(before, after);
          const told =
            after.file.droppedCount > 0 ||
            after.file.doubtfulCount > 0 ||
            after.series.warnings.length > 0 ||
            after.rows !== before.rows ||
            after.series.readings?.atMs.length !== before.series.readings!.atMs.length;
          // A digit for a digit is a value, or an instant, as good as any: one row may differ, no more.
          const isInHeader = at < Buffer.byteLength(`${header.join('\n')}\n`);
          if (!told)
            expect(changed, `${isInHeader ? 'header' : 'row'} byte ${at}: ${rows[0]}`).toBeLessThanOrEqual(
              isInHeader ? 0 : 1,
            );
        },
      ),
      { numRuns: 3 * RUNS },
    );
  });
});

/** What a reader makes of a file, or undefined where it refuses it in words; anything else it throws is a fault. */
function attempt(read: () => FileRead): FileRead | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof RequestError) return undefined;
    throw error;
  }
}

/** How many readings of one file have no equal in the other. */
function changesBetween(before: FileRead, after: FileRead): number {
  const keysOf = ({ series }: FileRead): Set<string> =>
    new Set([...(series.readings?.atMs ?? [])].map((ms, i) => `${ms} ${series.readings!.valueC[i]!.toFixed(6)}`));
  const [first, second] = [keysOf(before), keysOf(after)];
  return [...first].filter((key) => !second.has(key)).length;
}
