/*
 * Files as thermometers write them: a series of readings and a dialect give bytes. The writer is plain on purpose, as it
 * is what the reader is held against.
 */
import fc from 'fast-check';

const MINUTE_MS = 60_000;
const DAY_MINUTES = 1440;

/** What the thermometer measured: instants, rising, and temperatures in hundredths of a degree Celsius. */
export interface Measured {
  readonly atMs: readonly number[];
  readonly hundredths: readonly number[];
  /** Digits behind the decimal mark. */
  readonly decimals: 0 | 1 | 2;
}

const stepMinutes = fc.oneof(
  fc.constantFrom(1, 2, 5, 10, 15, 20, 30, 60, 60, 60, 120, 180, 240, 360, 720, 1440).map((step) => [step]),
  fc.array(fc.integer({ min: 1, max: 170 }), { minLength: 3, maxLength: 8 }),
);

/**
 * Soil that warms and cools with the day and drifts, slowly enough for no reading to be doubted. Steps are of one length
 * from a minute to a day, or irregular ones up to three hours.
 */
export const anySeries: fc.Arbitrary<Measured> = fc
  .record({
    steps: stepMinutes,
    startMinute: fc.integer({ min: Date.UTC(2015, 0, 1) / MINUTE_MS, max: Date.UTC(2032, 0, 1) / MINUTE_MS }),
    isOnTheHour: fc.boolean(),
    count: fc.integer({ min: 24, max: 90 }),
    levelC: fc.integer({ min: 8, max: 22 }),
    swingC: fc.integer({ min: 3, max: 7 }),
    wobble: fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 11, maxLength: 23 }),
    decimals: fc.constantFrom(0, 1, 2, 1) as fc.Arbitrary<0 | 1 | 2>,
  })
  .map(({ steps, startMinute, isOnTheHour, count, levelC, swingC, wobble, decimals }) => {
    const atMinutes = [isOnTheHour ? startMinute - (startMinute % 60) : startMinute];
    for (let i = 1; i < count; i++) atMinutes.push(atMinutes[i - 1]! + steps[i % steps.length]!);
    return {
      atMs: atMinutes.map((minute) => minute * MINUTE_MS),
      hundredths: atMinutes.map((minute, i) => {
        const wave = 100 * swingC * Math.sin((2 * Math.PI * minute) / DAY_MINUTES);
        // Days differ, so that readings a day apart are no stuck probe's.
        const weather = 250 * Math.sin((2 * Math.PI * minute) / (5.3 * DAY_MINUTES));
        const valueC = (100 * levelC + wave + weather + wobble[i % wobble.length]!) / 100;
        return Math.round(Number(valueC.toFixed(decimals)) * 100);
      }),
      decimals,
    };
  });

const two = (n: number): string => String(n).padStart(2, '0');
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const LONG_MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** The numbers of a wall clock. */
function clockOf(wallMs: number) {
  const at = new Date(wallMs);
  const [year, month, day] = [at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate()];
  const [hour, minute] = [at.getUTCHours(), at.getUTCMinutes()];
  return {
    year,
    month,
    day,
    hour,
    minute,
    hhmm: `${two(hour)}:${two(minute)}`,
    twelve: `${hour % 12 === 0 ? 12 : hour % 12}:${two(minute)}${hour < 12 ? ' AM' : ' PM'}`,
    dayOfYear: 1 + Math.round((Date.UTC(year, month - 1, day) - Date.UTC(year, 0, 1)) / (DAY_MINUTES * MINUTE_MS)),
  };
}
type Clock = ReturnType<typeof clockOf>;

const offsetText = (minutes: number): string => {
  const [sign, ahead] = minutes < 0 ? ['-', -minutes] : ['+', minutes];
  return `${sign}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}`;
};

/** A way to write instants. */
export interface StampStyle {
  readonly names: readonly string[];
  readonly cells: (at: Clock, atMs: number, offsetMinutes: number) => string[];
  /** The order of its numbers, where they do not show it themselves. */
  readonly order?: 'dmy' | 'mdy' | 'ymd';
  /** Does each stamp say where it stands in the world? Others are the place's wall clock. */
  readonly isInstant?: true;
  /** Cells hold blanks, so blanks cannot part them. */
  readonly hasBlank?: true;
  readonly hasComma?: true;
}

const iso = ({ year, month, day }: Clock): string => `${year}-${two(month)}-${two(day)}`;
const dotted = ({ year, month, day }: Clock): string => `${two(day)}.${two(month)}.${year}`;

export const stampStyles: Readonly<Record<string, StampStyle>> = {
  'ISO with T': { names: ['timestamp'], cells: (at) => [`${iso(at)}T${at.hhmm}:00`] },
  'ISO with T, to the minute': { names: ['date_time'], cells: (at) => [`${iso(at)}T${at.hhmm}`] },
  'ISO with a blank': { names: ['Date Time'], cells: (at) => [`${iso(at)} ${at.hhmm}:00`], hasBlank: true },
  'ISO with slashes': {
    names: ['Date/Time'],
    cells: (at) => [`${at.year}/${two(at.month)}/${two(at.day)} ${at.hhmm}`],
    hasBlank: true,
  },
  'ISO in UTC': {
    names: ['time'],
    cells: (_, atMs) => [new Date(atMs).toISOString().replace('.000', '')],
    isInstant: true,
  },
  'ISO with milliseconds in UTC': {
    names: ['time'],
    cells: (_, atMs) => [new Date(atMs).toISOString()],
    isInstant: true,
  },
  'ISO with an offset': {
    names: ['time'],
    cells: (at, _, offset) => [`${iso(at)}T${at.hhmm}:00${offsetText(offset)}`],
    isInstant: true,
  },
  'day.month.year': {
    names: ['Datum'],
    cells: (at) => [`${dotted(at)} ${at.hhmm}`],
    order: 'dmy',
    hasBlank: true,
  },
  'month/day/year AM/PM': {
    names: ['Date'],
    cells: (at) => [`${at.month}/${at.day}/${at.year} ${at.twelve}`],
    order: 'mdy',
    hasBlank: true,
  },
  'month/day/two-digit year': {
    names: ['Date and time'],
    cells: (at) => [`${two(at.month)}/${two(at.day)}/${two(at.year % 100)} ${at.hhmm}:00`],
    order: 'mdy',
    hasBlank: true,
  },
  'day/month/year': {
    names: ['Date'],
    cells: (at) => [`${two(at.day)}/${two(at.month)}/${at.year} ${at.hhmm}:00`],
    order: 'dmy',
    hasBlank: true,
  },
  'two-digit year.month.day': {
    names: ['Date'],
    cells: (at) => [`${two(at.year % 100)}.${two(at.month)}.${two(at.day)} ${at.hhmm}`],
    order: 'ymd',
    hasBlank: true,
  },
  'day month-name year': {
    names: ['Date'],
    cells: (at) => [`${at.day} ${LONG_MONTHS[at.month - 1]} ${at.year} ${at.hhmm}`],
    hasBlank: true,
  },
  'day-month-name-year': {
    names: ['When'],
    cells: (at) => [`${two(at.day)}-${MONTHS[at.month - 1]}-${at.year} ${at.twelve}`],
    hasBlank: true,
  },
  'month-name day, year': {
    names: ['Date'],
    cells: (at) => [`${MONTHS[at.month - 1]} ${at.day}, ${at.year} ${at.twelve}`],
    hasBlank: true,
    hasComma: true,
  },
  compact: { names: ['stamp'], cells: (at) => [`${iso(at)}T${at.hhmm}00`.replace(/[-:]/g, '')] },
  'compact digits': { names: ['stamp'], cells: (at) => [`${iso(at)}${at.hhmm}`.replace(/[-:]/g, '')] },
  'seconds since 1970': { names: ['epoch'], cells: (_, atMs) => [String(atMs / 1000)], isInstant: true },
  'milliseconds since 1970': { names: ['unix_ms'], cells: (_, atMs) => [String(atMs)], isInstant: true },
  'date, time': { names: ['Date', 'Time'], cells: (at) => [iso(at), at.hhmm] },
  'dotted date, time': { names: ['Datum', 'Uhrzeit'], cells: (at) => [dotted(at), `${at.hhmm}:00`], order: 'dmy' },
  'American date, time': {
    names: ['Date', 'Time'],
    cells: (at) => [`${at.month}/${at.day}/${at.year}`, at.twelve],
    order: 'mdy',
    hasBlank: true,
  },
  'year, month, day, hour, minute': {
    names: ['year', 'month', 'day', 'hour', 'minute'],
    cells: ({ year, month, day, hour, minute }) => [year, month, day, hour, minute].map(String),
  },
  'year, day of year, hhmm': {
    names: ['year', 'doy', 'hhmm'],
    cells: (at) => [String(at.year), String(at.dayOfYear), at.hhmm.replace(':', '')],
  },
};

export type Unit = 'C' | 'F' | 'K';
const DEGREES: Readonly<Record<Unit, string>> = { C: '°C', F: '°F', K: 'K' };

/** How a file is written. */
export interface Dialect {
  readonly stamp: string;
  readonly offsetMinutes: number;
  readonly delimiter: ',' | ';' | '\t' | '|' | ' ';
  readonly decimalMark: '.' | ',';
  readonly encoding: 'utf-8' | 'utf-8 with BOM' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  readonly lineEnd: '\n' | '\r\n' | '\r' | '\r\r\n';
  readonly quoted: 'nothing' | 'header' | 'all';
  readonly above: readonly string[];
  readonly hasSepLine: boolean;
  readonly hasRemarks: boolean;
  readonly hasTrailingDelimiter: boolean;
  readonly lures: readonly Lure[];
  readonly unit: Unit;
  /** Where the file says the unit; `nowhere`: the caller says it. */
  readonly unitIn: 'name' | 'units row' | 'cells' | 'above' | 'nowhere';
  readonly order: 'rising' | 'newest first' | 'shuffled' | 'repeated';
  /** Mixes the rows where they are shuffled or repeated. */
  readonly mix: number;
}

type Lure = 'index' | 'humidity' | 'battery';

const above = fc.constantFrom<readonly string[]>(
  [],
  [],
  ['North bed readings'],
  ['Quillmere Allotment Society', 'Bed: north', ''],
  ['# north bed of the allotment society', '# read out on foot'],
  ['Logger: No. 7', 'Owner: Quillmere Allotment Society', 'Rows follow', ''],
);

/** Any dialect whose parts can go together. */
export const anyDialect: fc.Arbitrary<Dialect> = fc
  .record({
    stamp: fc.constantFrom(...Object.keys(stampStyles)),
    offsetMinutes: fc.constantFrom(-120, 0, 60, 330, -570),
    delimiter: fc.constantFrom<Dialect['delimiter']>(',', ',', ';', '\t', '|', ' '),
    wantsComma: fc.boolean(),
    encoding: fc.constantFrom<Dialect['encoding']>(
      'utf-8',
      'utf-8',
      'utf-8 with BOM',
      'utf-16le',
      'utf-16be',
      'windows-1252',
    ),
    lineEnd: fc.constantFrom<Dialect['lineEnd']>('\n', '\n', '\r\n', '\r', '\r\r\n'),
    quoted: fc.constantFrom<Dialect['quoted']>('nothing', 'nothing', 'header', 'all'),
    above,
    wantsSepLine: fc.integer({ min: 0, max: 5 }).map((n) => n === 0),
    hasRemarks: fc.integer({ min: 0, max: 4 }).map((n) => n === 0),
    wantsTrailingDelimiter: fc.integer({ min: 0, max: 3 }).map((n) => n === 0),
    lures: fc.subarray<Lure>(['index', 'humidity', 'battery']),
    unit: fc.constantFrom<Unit>('C', 'C', 'F', 'K'),
    unitIn: fc.constantFrom<Dialect['unitIn']>('name', 'name', 'units row', 'cells', 'above', 'nowhere'),
    order: fc.constantFrom<Dialect['order']>('rising', 'rising', 'newest first', 'shuffled', 'repeated'),
    mix: fc.nat(),
  })
  .map(({ wantsComma, wantsSepLine, wantsTrailingDelimiter, ...dialect }) => {
    const isBlank = dialect.delimiter === ' ';
    const isComma = dialect.delimiter === ',';
    const { hasBlank, hasComma } = stampStyles[dialect.stamp]!;
    const stamp = isBlank && hasBlank ? 'date, time' : isComma && hasComma ? 'day month-name year' : dialect.stamp;
    return {
      ...dialect,
      stamp,
      decimalMark: wantsComma && (dialect.delimiter === ';' || dialect.delimiter === '\t') ? ',' : '.',
      quoted: isBlank ? 'nothing' : dialect.quoted,
      hasSepLine: wantsSepLine && !isBlank && dialect.above.length === 0,
      hasTrailingDelimiter: wantsTrailingDelimiter && !isBlank,
      // Lines of words look like rows where blanks part the cells.
      above: isBlank ? dialect.above.filter((line) => line.startsWith('#')) : dialect.above,
      unitIn: isBlank && dialect.unitIn !== 'nowhere' ? 'name' : dialect.unitIn,
    };
  });

/** A piece of a file, and what it is. */
export interface Piece {
  readonly text: string;
  readonly kind: 'above' | 'header' | 'stamp' | 'value' | 'beside' | 'delimiter' | 'end';
  /** The reading, in time, that the piece belongs to; -1: none. */
  readonly reading: number;
}

/** The digits of a temperature, as a file in this unit has them. */
export function digitsOf(measured: Measured, reading: number, unit: Unit): string {
  const tempC = measured.hundredths[reading]! / 100;
  const shown = unit === 'C' ? tempC : unit === 'F' ? tempC * 1.8 + 32 : tempC + 273.15;
  return shown.toFixed(measured.decimals);
}

/** What digits in a unit say [°C]. */
export const saidC = (digits: string, unit: Unit): number =>
  unit === 'C' ? Number(digits) : unit === 'F' ? (Number(digits) - 32) / 1.8 : Number(digits) - 273.15;

/** The place's clock at an instant, for places whose clocks never change: two hours behind UTC. */
export const quillmereWall = (atMs: number): number => atMs - 120 * MINUTE_MS;

/** Rows in the order in which the file has them, by their place in time. */
function rowOrder(count: number, { order, mix }: Dialect): number[] {
  const rows = Array.from({ length: count }, (_, i) => i);
  if (order === 'newest first') return rows.reverse();
  const noise = (i: number): number => ((i + 1) * 7919 + (mix % 104_729)) % 1009;
  if (order === 'shuffled') return rows.sort((a, b) => noise(a) - noise(b) || a - b);
  if (order === 'repeated') return rows.flatMap((i) => (noise(i) % 5 === 0 ? [i, i] : [i]));
  return rows;
}

/** A file, piece by piece. `wallOf` is the place's clock. */
export function piecesOf(measured: Measured, dialect: Dialect, wallOf = quillmereWall): Piece[] {
  const { delimiter, decimalMark, lineEnd, unit, unitIn, lures } = dialect;
  const style = stampStyles[dialect.stamp]!;
  const pieces: Piece[] = [];
  type Cell = readonly [text: string, kind: Piece['kind']];

  function line(cells: readonly Cell[], reading: number, isQuoted: boolean): void {
    cells.forEach(([text, kind], i) => {
      const quote: Piece = { text: isQuoted && text !== '' ? '"' : '', kind: 'delimiter', reading };
      if (i > 0) pieces.push({ text: delimiter, kind: 'delimiter', reading });
      pieces.push(quote, { text, kind, reading }, quote);
    });
    // Behind the last cell there is nothing to part: as the line's end, it may be missing in an honest file.
    if (dialect.hasTrailingDelimiter) pieces.push({ text: delimiter, kind: 'end', reading });
    pieces.push({ text: lineEnd, kind: 'end', reading });
  }
  function lineAbove(text: string): void {
    pieces.push({ text, kind: 'above', reading: -1 }, { text: lineEnd, kind: 'end', reading: -1 });
  }
  const withLures = <T>(index: T, stamp: readonly T[], value: T, humidity: T, battery: T): T[] => [
    ...(lures.includes('index') ? [index] : []),
    ...stamp,
    ...(lures.includes('humidity') ? [humidity] : []),
    value,
    ...(lures.includes('battery') ? [battery] : []),
  ];
  const marked = (digits: string): string => digits.replace('.', decimalMark);

  if (dialect.hasSepLine) lineAbove(`sep=${delimiter}`);
  for (const text of dialect.above) lineAbove(text);
  if (unitIn === 'above') lineAbove(`Temperatures in ${DEGREES[unit]}`);

  const isBlank = delimiter === ' ';
  const name = isBlank ? 'soil_temp_5cm' : 'Soil temperature 5 cm';
  const degrees = isBlank ? `_deg${unit}` : ` (${DEGREES[unit]})`;
  const names = withLures('No.', style.names, unitIn === 'name' ? name + degrees : name, 'Humidity', 'Battery');
  const asHeader = (cells: readonly string[]): Cell[] =>
    cells.map((text) => [isBlank ? text.replaceAll(' ', '_') : text, 'header']);
  line(asHeader(names), -1, dialect.quoted !== 'nothing');
  if (unitIn === 'units row') {
    const units = withLures(
      '',
      style.names.map(() => ''),
      DEGREES[unit],
      '%',
      'V',
    );
    line(asHeader(units), -1, dialect.quoted !== 'nothing');
  }

  const atOffsetMs = dialect.offsetMinutes * MINUTE_MS;
  rowOrder(measured.atMs.length, dialect).forEach((reading, i) => {
    const atMs = measured.atMs[reading]!;
    const clock = clockOf(style.isInstant ? atMs + atOffsetMs : wallOf(atMs));
    const value = marked(digitsOf(measured, reading, unit)) + (unitIn === 'cells' ? DEGREES[unit] : '');
    if (dialect.hasRemarks && i % 17 === 9) lineAbove('# the bed was watered');
    line(
      withLures<Cell>(
        [String(i + 1), 'beside'],
        style.cells(clock, atMs, dialect.offsetMinutes).map((text) => [text, 'stamp']),
        [value, 'value'],
        [String(60 + ((i * 7) % 31)), 'beside'],
        [marked((3.6 - ((i * 3) % 5) / 10).toFixed(1)), 'beside'],
      ),
      reading,
      dialect.quoted === 'all',
    );
  });
  return pieces;
}

/** Text as bytes. */
export function encoded(text: string, encoding: Dialect['encoding']): Uint8Array {
  switch (encoding) {
    case 'utf-8':
      return Buffer.from(text);
    case 'utf-8 with BOM':
      return Buffer.from(`\ufeff${text}`);
    case 'utf-16le':
      return Buffer.from(`\ufeff${text}`, 'utf16le');
    case 'utf-16be':
      return Buffer.from(`\ufeff${text}`, 'utf16le').swap16();
    case 'windows-1252':
      return Buffer.from(text, 'latin1');
  }
}

export const textOf = (pieces: readonly Piece[]): string => pieces.map(({ text }) => text).join('');
