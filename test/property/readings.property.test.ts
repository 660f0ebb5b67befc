/*
 * Writes series in every dialect and holds the reader to what was written. PROPERTY_RUNS=2000 looks longer,
 * PROPERTY_SEED=1 elsewhere; a failure prints the seed that repeats it.
 */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { findZone, type Zone } from '../../src/basics/calendar.js';
import { RequestError } from '../../src/basics/errors.js';
import type { CheckAnswer } from '../../src/contract/readings.js';
import { fileReader } from '../../src/readings/read-file.js';
import { reportOf } from '../../src/readings/report.js';
import { type FileHints, noHints } from '../../src/readings/text/rows-read.js';
import { startApp } from '../api/helper.js';
import {
  anyDialect,
  anySeries,
  type Dialect,
  digitsOf,
  encoded,
  type Measured,
  type Piece,
  piecesOf,
  saidC,
  stampStyles,
  textOf,
} from './logger-files.js';

// A fixed seed, so that what passes here passes everywhere; PROPERTY_SEED looks elsewhere.
fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 20_270_503) });
const RUNS = Number(process.env.PROPERTY_RUNS ?? 15);
const HOUR_MS = 3_600_000;
const HAIR = 1e-9;
const quillmere = findZone('Etc/GMT+2')!;
const berlin = findZone('Europe/Berlin')!;

/** What a file was understood to say. */
interface Understood {
  readonly values: ReadonlyMap<number, number>;
  readonly report: ReturnType<typeof reportOf>;
  readonly warnings: readonly string[];
}

/** Reads a file in pieces. Any error but a refusal in words fails the test. */
function read(bytes: Uint8Array, hints: Partial<FileHints>, zone: Zone, cuts: readonly number[] = []) {
  try {
    const reader = fileReader({ ...noHints, ...hints }, zone);
    const ends = [...cuts.map((cut) => cut % (bytes.length + 1)), bytes.length].sort((a, b) => a - b);
    ends.forEach((end, i) => {
      reader.push(bytes.subarray(ends[i - 1] ?? 0, end));
    });
    const rest = reader.finish();
    for (;;) {
      const { done, value } = rest.next();
      if (!done) continue;
      const { series, rows, file } = value;
      const { atMs, valueC } = series.readings ?? { atMs: [], valueC: [] };
      const values = new Map(Array.from(atMs, (at, i) => [at, valueC[i]!]));
      const warnings = series.warnings.map(({ code }) => code);
      return { values, report: reportOf(series, rows, file), warnings } satisfies Understood;
    }
  } catch (error) {
    if (error instanceof RequestError) return error;
    throw error;
  }
}

const understood = (result: Understood | RequestError): Understood => {
  if (result instanceof RequestError) throw new Error(`refused: ${result.code}: ${result.message}`);
  return result;
};

const choicesOf = ({ faults }: RequestError) =>
  faults.flatMap(({ parameter, choices }) => (choices ?? []).map((choice) => ({ parameter: parameter!, ...choice })));

/** Reads a file; the one question it may ask is of the order of its dates, and is answered with the truth. */
function readAnswering(
  bytes: Uint8Array,
  hints: Partial<FileHints>,
  zone: Zone,
  truth: Partial<FileHints>,
  cuts?: readonly number[],
): Understood {
  const first = read(bytes, hints, zone, cuts);
  if (!(first instanceof RequestError) || first.code !== 'choose-date-order' || hints.dateOrder) {
    return understood(first);
  }
  const offered = choicesOf(first).map(({ value }) => value);
  // Where two orders give the same dates, as 05/05/29 does, one of them stands for both.
  const right = offered.find((value) => value === truth.dateOrder) ?? offered[0];
  return understood(read(bytes, { ...hints, dateOrder: right as FileHints['dateOrder'] }, zone, cuts));
}

const soilAtFive = { medium: 'soil', probeDepthCm: 5 } as const;
const hintsFor = ({ unit, unitIn }: Dialect): Partial<FileHints> => ({
  ...soilAtFive,
  unit: unitIn === 'nowhere' ? unit : null,
});
const truthFor = ({ stamp }: Dialect): Partial<FileHints> => ({ dateOrder: stampStyles[stamp]!.order ?? null });

const writtenC = (measured: Measured, { unit }: Pick<Dialect, 'unit'>): number[] =>
  measured.atMs.map((_, i) => saidC(digitsOf(measured, i, unit), unit));

/** Are these the instants and values that were written? */
function expectSeries({ values, report }: Understood, atMs: readonly number[], valuesC: readonly number[]): void {
  expect([...values.keys()]).toEqual([...atMs]);
  atMs.forEach((at, i) => {
    expect(Math.abs(values.get(at)! - valuesC[i]!), new Date(at).toISOString()).toBeLessThan(HAIR);
  });
  expect(report.used).toBe(atMs.length);
  expect(report.droppedCount).toBe(0);
  expect(Date.parse(report.from!)).toBe(atMs[0]);
  expect(Date.parse(report.to!)).toBe(atMs.at(-1));
  expect(report.min).toBeCloseTo(Math.min(...valuesC), 6);
  expect(report.max).toBeCloseTo(Math.max(...valuesC), 6);
}

const app = await startApp();
afterAll(() => app.close());

describe('a series written in any dialect', () => {
  it('is read back, every instant and every value, however the bytes are cut', () => {
    fc.assert(
      fc.property(
        anySeries,
        anyDialect,
        fc.array(fc.nat(), { maxLength: 6 }),
        fc.boolean(),
        (measured, dialect, cuts, saysOrder) => {
          const bytes = encoded(textOf(piecesOf(measured, dialect)), dialect.encoding);
          const truth = truthFor(dialect);
          const hints = { ...hintsFor(dialect), ...(saysOrder ? truth : {}) };
          const answer = readAnswering(bytes, hints, quillmere, truth, cuts);
          expectSeries(answer, measured.atMs, writtenC(measured, dialect));
          expect(answer.report.unit).toBe(dialect.unit);
        },
      ),
      { numRuns: 3 * RUNS },
    );
  });

  it('comes back over HTTP with its span, extremes and days', async () => {
    await fc.assert(
      fc.asyncProperty(anySeries, anyDialect, async (measured, dialect) => {
        const { dateOrder } = truthFor(dialect);
        const query = new URLSearchParams({
          medium: 'soil',
          probeDepthCm: '5',
          timeZone: 'Etc/GMT+2',
          precision: 'full',
        });
        if (dialect.unitIn === 'nowhere') query.set('unit', dialect.unit);
        if (dateOrder) query.set('dateOrder', dateOrder);
        const response = await app.inject({
          method: 'POST',
          url: `/v1/readings/check?${query}`,
          headers: { 'content-type': 'text/csv' },
          payload: Buffer.from(encoded(textOf(piecesOf(measured, dialect)), dialect.encoding)),
        });
        expect(response.statusCode, response.body.slice(0, 400)).toBe(200);
        const answer: CheckAnswer = response.json();
        const valuesC = writtenC(measured, dialect);
        expect([Date.parse(answer.from!), Date.parse(answer.to!)]).toEqual([measured.atMs[0], measured.atMs.at(-1)]);
        expect(answer).toMatchObject({ medium: 'soil', probeDepthCm: 5, used: valuesC.length, droppedCount: 0 });
        expect(answer.min).toBeCloseTo(Math.min(...valuesC), 6);
        expect(answer.max).toBeCloseTo(Math.max(...valuesC), 6);
        expect(answer.mean).toBeGreaterThanOrEqual(answer.min! - HAIR);
        expect(answer.mean).toBeLessThanOrEqual(answer.max! + HAIR);
        const dates = measured.atMs.map((at) => new Date(at - 2 * HOUR_MS).toISOString().slice(0, 10));
        for (const date of [dates[0]!, dates[dates.length >> 1]!, dates.at(-1)!]) {
          const ofDay = valuesC.filter((_, i) => dates[i] === date);
          const day = answer.series.daily.find((one) => one.date === date)!;
          expect(day.readings, date).toBe(ofDay.length);
          if (day.min !== undefined) expect(day.min).toBeCloseTo(Math.min(...ofDay), 6);
          if (day.max !== undefined) expect(day.max).toBeCloseTo(Math.max(...ofDay), 6);
        }
      }),
      { numRuns: Math.ceil(RUNS / 2) },
    );
  });
});

/** A wall clock's file: rows in steps of an hour at most, on both sides of a change of the clocks. */
const anyChange = fc
  .record({
    year: fc.integer({ min: 2015, max: 2031 }),
    isSpring: fc.boolean(),
    step: fc.constantFrom(5, 10, 15, 20, 30, 60),
    lateMinutes: fc.nat({ max: 59 }),
    hoursBefore: fc.integer({ min: 5, max: 40 }),
    hoursAfter: fc.integer({ min: 5, max: 40 }),
    stamp: fc.constantFrom('ISO with a blank', 'day.month.year', 'month/day/year AM/PM', 'date, time', 'compact'),
    order: fc.constantFrom<Dialect['order']>('rising', 'newest first'),
  })
  .map(({ year, isSpring, step, lateMinutes, hoursBefore, hoursAfter, stamp, order }) => {
    const changeMs = isSpring ? lastSunday(year, 2) : lastSunday(year, 9);
    const start = changeMs - hoursBefore * HOUR_MS + (lateMinutes % step) * 60_000;
    const count = Math.floor(((hoursBefore + hoursAfter) * 60) / step);
    const atMs = Array.from({ length: count }, (_, i) => start + i * step * 60_000);
    const hundredths = atMs.map(
      (at, i) => Math.round(1200 + 400 * Math.sin((at / HOUR_MS / 24) * 2 * Math.PI)) + (i % 7),
    );
    return { measured: { atMs, hundredths, decimals: 2 } satisfies Measured, dialect: { ...plain, stamp, order } };
  });

/** Clocks in the European Union change at 01:00 UTC on the last Sunday of March and October (Directive 2000/84/EC). */
function lastSunday(year: number, month: number): number {
  const last = new Date(Date.UTC(year, month + 1, 0, 1));
  return last.getTime() - last.getUTCDay() * 24 * HOUR_MS;
}

const plain: Dialect = {
  stamp: 'ISO with a blank',
  offsetMinutes: 0,
  delimiter: ',',
  decimalMark: '.',
  encoding: 'utf-8',
  lineEnd: '\n',
  quoted: 'nothing',
  above: [],
  hasSepLine: false,
  hasRemarks: false,
  hasTrailingDelimiter: false,
  lures: [],
  unit: 'C',
  unitIn: 'name',
  order: 'rising',
  mix: 0,
};

describe('a wall clock', () => {
  it('that is changed in spring and autumn gives every instant back, by the order of its rows', () => {
    fc.assert(
      fc.property(anyChange, ({ measured, dialect }) => {
        const bytes = encoded(textOf(piecesOf(measured, dialect, (at) => at + berlin.offsetMs(at))), 'utf-8');
        const hints = { ...soilAtFive, dateOrder: stampStyles[dialect.stamp]!.order ?? null };
        expectSeries(understood(read(bytes, hints, berlin)), measured.atMs, writtenC(measured, dialect));
      }),
      { numRuns: RUNS },
    );
  });

  it('that is never changed is asked about, and the right choice gives every instant back', () => {
    fc.assert(
      fc.property(anyChange, fc.constantFrom('standard', 'utc'), ({ measured, dialect }, clock) => {
        const aheadMs = clock === 'utc' ? 0 : HOUR_MS;
        const bytes = encoded(textOf(piecesOf(measured, dialect, (at) => at + aheadMs)), 'utf-8');
        const hints = { ...soilAtFive, dateOrder: stampStyles[dialect.stamp]!.order ?? null };
        const asked = read(bytes, hints, berlin);
        expect(asked instanceof RequestError && asked.code).toBe('choose-clock');
        expect(choicesOf(asked as RequestError).map(({ value }) => value)).toContain(clock);
        expectSeries(understood(read(bytes, { ...hints, clock }, berlin)), measured.atMs, writtenC(measured, dialect));
      }),
      { numRuns: RUNS },
    );
  });
});

/** Is anything said in an answer that is not said in the other? */
function tells(answer: Understood, whole: Understood): boolean {
  const { report, warnings } = answer;
  return (
    report.droppedCount > whole.report.droppedCount ||
    report.doubtfulCount! > whole.report.doubtfulCount! ||
    report.rows !== whole.report.rows ||
    report.used !== whole.report.used ||
    warnings.some((code) => !whole.warnings.includes(code)) ||
    JSON.stringify(report.gaps) !== JSON.stringify(whole.report.gaps)
  );
}

/** Instants that came out other than they were: gone, new, or with another value. */
function changedIn(answer: Understood, whole: Understood): number[] {
  const all = new Set([...answer.values.keys(), ...whole.values.keys()]);
  return [...all].filter((at) => !(Math.abs(answer.values.get(at)! - whole.values.get(at)!) < HAIR));
}

/** Dialects whose bytes are their characters, in time order: a flip has one meaning. */
const flippable = anyDialect.map((dialect): Dialect => ({ ...dialect, encoding: 'utf-8', order: 'rising' }));

/** Where a piece's bytes begin. */
function startOf(pieces: readonly Piece[], index: number): number {
  return Buffer.byteLength(textOf(pieces.slice(0, index)));
}

/** Any other byte, mostly one that such files have. */
const anyByte = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...'0123456789,;.:-"\n\t |/ACFKPT%#'.split('').map((c) => c.charCodeAt(0))) },
  { weight: 1, arbitrary: fc.nat({ max: 255 }) },
);

/** A file with one byte of a piece of some kind replaced. */
const flipIn = (kinds: readonly Piece['kind'][]) =>
  fc
    .tuple(anySeries, flippable, fc.nat(), fc.nat(), anyByte)
    .map(([measured, dialect, which, where, byte]) => {
      const pieces = piecesOf(measured, dialect);
      const fitting = pieces.flatMap(({ kind, text }, i) => (kinds.includes(kind) && text !== '' ? [i] : []));
      if (fitting.length === 0) return null;
      const index = fitting[which % fitting.length]!;
      const piece = pieces[index]!;
      const bytes = encoded(textOf(pieces), 'utf-8');
      const at = startOf(pieces, index) + (where % Buffer.byteLength(piece.text));
      const flipped = Uint8Array.from(bytes);
      flipped[at] = byte;
      return { measured, dialect, piece, bytes, flipped, at, byte, line: lineAround(flipped, at) };
    })
    .filter((one) => one !== null && one.bytes[one.at] !== one.byte)
    .map((one) => one!);

/** The damaged line, for the report of a failure. */
function lineAround(bytes: Uint8Array, at: number): string {
  const text = Buffer.from(bytes).toString('latin1');
  return text.slice(Math.max(0, at - 40), at + 40);
}

/** Both readings of a file before and after its damage; null where the damaged one is refused in words. */
function beforeAndAfter({ dialect, bytes, flipped }: { dialect: Dialect; bytes: Uint8Array; flipped: Uint8Array }) {
  const hints = { ...hintsFor(dialect), ...truthFor(dialect) };
  const whole = understood(read(bytes, hints, quillmere));
  const answer = read(flipped, hints, quillmere);
  return answer instanceof RequestError ? null : { whole, answer };
}

const FLIPS = { numRuns: 2 * RUNS };

describe('a byte flipped', () => {
  it('in the header, a unit or the lines above is told, asked or harmless', () => {
    fc.assert(
      fc.property(flipIn(['header', 'above']), (flip) => {
        const both = beforeAndAfter(flip);
        if (both && !tells(both.answer, both.whole)) {
          expect(changedIn(both.answer, both.whole), flip.line).toEqual([]);
        }
      }),
      FLIPS,
    );
  });

  it('in a delimiter is told, asked or harmless', () => {
    fc.assert(
      fc.property(flipIn(['delimiter']), (flip) => {
        const both = beforeAndAfter(flip);
        if (both && !tells(both.answer, both.whole)) expect(changedIn(both.answer, both.whole), flip.line).toEqual([]);
      }),
      FLIPS,
    );
  });

  // A digit there is one digit more of the last cell, if another byte still ends the line.
  it('in a line’s end is told, asked or harmless, or changes the one value before it', () => {
    fc.assert(
      fc.property(flipIn(['end']), (flip) => {
        const both = beforeAndAfter(flip);
        if (!both || tells(both.answer, both.whole)) return;
        const own = flip.measured.atMs[flip.piece.reading];
        expect(
          changedIn(both.answer, both.whole).filter((at) => at !== own),
          flip.line,
        ).toEqual([]);
      }),
      FLIPS,
    );
  });

  // Another digit may make another stamp as good as the first, which nothing in the file belies: then that row moves,
  // perhaps onto another, and no other does.
  it('in a stamp is told or asked, or moves its own row only', () => {
    fc.assert(
      fc.property(flipIn(['stamp']), (flip) => {
        const both = beforeAndAfter(flip);
        if (!both) return;
        const changed = changedIn(both.answer, both.whole);
        expect(changed.length, flip.line).toBeLessThanOrEqual(2);
        const own = flip.measured.atMs[flip.piece.reading]!;
        if (tells(both.answer, both.whole)) return;
        expect(changed.filter((at) => at !== own && both.whole.values.has(at))).toEqual([]);
      }),
      FLIPS,
    );
  });

  it('in a value changes at most that value', () => {
    fc.assert(
      fc.property(flipIn(['value']), (flip) => {
        const both = beforeAndAfter(flip);
        if (!both) return;
        const own = flip.measured.atMs[flip.piece.reading]!;
        expect(
          changedIn(both.answer, both.whole).filter((at) => at !== own),
          flip.line,
        ).toEqual([]);
      }),
      FLIPS,
    );
  });

  it('anywhere, in any encoding, breaks nothing', () => {
    fc.assert(
      fc.property(anySeries, anyDialect, fc.nat(), anyByte, (measured, dialect, where, byte) => {
        const bytes = Uint8Array.from(encoded(textOf(piecesOf(measured, dialect)), dialect.encoding));
        bytes[where % bytes.length] = byte;
        read(bytes, hintsFor(dialect), quillmere);
      }),
      { numRuns: RUNS },
    );
  });
});

describe('a file that lacks something', () => {
  it('rows cut out of it are a gap where they are missed, and change nothing else', () => {
    fc.assert(
      fc.property(anySeries, anyDialect, fc.nat(), fc.integer({ min: 1, max: 12 }), (measured, dialect, at, many) => {
        const from = 1 + (at % (measured.atMs.length - 14));
        const isLeft = (_: unknown, i: number): boolean => i < from || i >= from + many;
        const left: Measured = {
          ...measured,
          atMs: measured.atMs.filter(isLeft),
          hundredths: measured.hundredths.filter(isLeft),
        };
        const bytes = encoded(textOf(piecesOf(left, dialect)), dialect.encoding);
        const answer = readAnswering(bytes, hintsFor(dialect), quillmere, truthFor(dialect));
        expectSeries(answer, left.atMs, writtenC(left, dialect));
        const [before, after] = [measured.atMs[from - 1]!, measured.atMs[from + many]!];
        // Three hours, or half as long again as the usual step, are bridged: no gap to anyone who asks for days.
        const bridgedMs = Math.max(3 * HOUR_MS, 1.5 * (answer.report.stepMinutes ?? 0) * 60_000);
        const gaps = answer.report.gaps.map((gap) => [Date.parse(gap.from), Date.parse(gap.to)]);
        if (after - before > bridgedMs) expect(gaps).toContainEqual([before, after]);
      }),
      { numRuns: 2 * RUNS },
    );
  });

  it('cut off at any byte it says what is left, or is refused in words; a torn last row spoils no other', () => {
    fc.assert(
      fc.property(anySeries, flippable, fc.nat(), (measured, dialect, where) => {
        const pieces = piecesOf(measured, dialect);
        const bytes = encoded(textOf(pieces), 'utf-8');
        const cut = where % bytes.length;
        const hints = { ...hintsFor(dialect), ...truthFor(dialect) };
        const whole = understood(read(bytes, hints, quillmere));
        const answer = read(bytes.subarray(0, cut), hints, quillmere);
        if (answer instanceof RequestError) return;
        const torn = measured.atMs[answer.values.size - 1]!;
        for (const at of answer.values.keys()) {
          if (at !== torn) expect(answer.values.get(at)).toBeCloseTo(whole.values.get(at)!, 9);
        }
      }),
      { numRuns: 2 * RUNS },
    );
  });

  // What is left of a whole number is a whole number, and an honest file may lack the end of its last line.
  it('cut off within a number with decimals it does not take what is left for the number', () => {
    fc.assert(
      fc.property(anySeries, flippable, fc.nat(), fc.nat(), (measured, dialect, which, where) => {
        fc.pre(measured.decimals > 0);
        const pieces = piecesOf(measured, dialect);
        const values = pieces.flatMap(({ kind, reading }, i) => (kind === 'value' && reading > 12 ? [i] : []));
        const index = values[which % values.length]!;
        const cut = startOf(pieces, index) + 1 + (where % pieces[index]!.text.length);
        const bytes = encoded(textOf(pieces), 'utf-8');
        const hints = { ...hintsFor(dialect), ...truthFor(dialect) };
        const whole = understood(read(bytes, hints, quillmere));
        const answer = read(bytes.subarray(0, cut), hints, quillmere);
        if (answer instanceof RequestError || answer.report.droppedCount > 0 || answer.report.doubtfulCount! > 0)
          return;
        for (const [at, valueC] of answer.values) expect(valueC).toBeCloseTo(whole.values.get(at)!, 9);
      }),
      { numRuns: RUNS },
    );
  });
});

/** Files that cannot be understood without being told something. */
const askingFile = fc
  .record({
    measured: anySeries,
    dialect: anyDialect,
    hidesMedium: fc.boolean(),
    second: fc.constantFrom('', 'Soil temperature 20 cm', 'Soil temperature 5 cm south', 'Air temperature'),
    saysDepth: fc.boolean(),
  })
  .map(({ measured, dialect, hidesMedium, second, saysDepth }) => {
    const style = stampStyles[dialect.stamp]!;
    const isBare = dialect.delimiter === ' ' || dialect.quoted === 'all';
    const text = textOf(piecesOf(measured, dialect));
    const renamed = hidesMedium ? text.replace(/Soil temperature 5 cm/, 'Temperature') : text;
    const { delimiter, lineEnd } = dialect;
    const steady = { C: '12.5', F: '54.5', K: '285.5' }[dialect.unit];
    const lines = renamed.split(lineEnd);
    const header = lines.findIndex((line) => line.includes('emperature') && line.includes(style.names[0]!));
    const widened =
      second === '' || isBare || header < 0
        ? renamed
        : lines
            .map((line, i) => {
              if (i < header || line === '' || line.startsWith('#')) return line;
              const lead = dialect.hasTrailingDelimiter ? line.slice(0, -1) : line;
              return `${lead}${delimiter}${i === header ? second : steady.replace('.', dialect.decimalMark)}`;
            })
            .join(lineEnd);
    return {
      bytes: encoded(widened, dialect.encoding),
      hints: saysDepth ? { probeDepthCm: 5 } : {},
    };
  });

describe('a question', () => {
  it('is settled by each of its choices: it is not asked again, and what it promised of the values comes', () => {
    const asked = new Map<string, number>();
    fc.assert(
      fc.property(askingFile, ({ bytes, hints }) => {
        const settle = (said: Partial<FileHints>, askedBefore: readonly string[]): void => {
          const answer = read(bytes, said, quillmere);
          if (!(answer instanceof RequestError)) return;
          const choices = choicesOf(answer);
          asked.set(answer.code, (asked.get(answer.code) ?? 0) + 1);
          if (choices.length === 0)
            throw new Error(`a dead end after ${askedBefore}: ${answer.code}: ${answer.message}`);
          expect(askedBefore).not.toContain(choices[0]!.parameter);
          for (const { parameter, value, code, params } of choices) {
            const now = { ...said, [parameter]: value };
            const next = read(bytes, now, quillmere);
            if (code === 'choose-unit.choice') {
              const { min, mean, max } = understood(next).report;
              const [minC, meanC, maxC] = [min, mean, max].map((one) => Math.round(one! * 10) / 10);
              expect(params).toEqual({ unit: value, minC, meanC, maxC });
            }
            settle(now, [...askedBefore, parameter]);
          }
        };
        settle(hints, []);
      }),
      { numRuns: RUNS },
    );
    expect(asked.size).toBeGreaterThanOrEqual(2);
  });
});
