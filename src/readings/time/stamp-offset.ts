import { RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { fileChoice, fileQuestion, rowFact } from '../readings-facts.js';
import type { RowsSoFar } from '../text/rows-so-far.js';
import { wallOf } from './date-order.js';
import { type KnownStamp, knownStamp } from './stamp-in-bytes.js';

/** Why the stamp read last is no stamp of this file: it carries an offset where the others do not, or none; or null. */
export function offsetFault({ layout, stamps }: RowsSoFar): Fact | null {
  if (layout.isEpoch || layout.carriesOffset !== Number.isNaN(stamps.offsetMinutes)) return null;
  return rowFact(layout.carriesOffset ? 'row.no-offset' : 'row.unexpected-offset');
}

/**
 * The instant of the stamp read last [ms], from its offset. Until the order of day and month is known, and with it the
 * day of the shift, it stays packed, and one offset must serve all stamps.
 *
 * @param packed As the file's `StampReader` gave it.
 * @throws {RequestError} `choose-date-order` where offsets differ.
 */
export function takeOffset(soFar: RowsSoFar, packed: number, line: number): number {
  const { offsetMinutes } = soFar.stamps;
  const { knownOrder } = soFar.layout;
  soFar.stampOffset ??= offsetMinutes;
  if (knownOrder !== null) return wallOf(packed, knownOrder) - offsetMinutes * 60_000;
  if (offsetMinutes !== soFar.stampOffset) throw askOrderOfOffsets(line);
  return packed;
}

/** The form that a stamp gives the stamps of plain rows; null: its row must be read from text. */
export function plainStamp(soFar: RowsSoFar, stamp: string): KnownStamp | null {
  const { layout, stamps } = soFar;
  const packed = stamps.read(stamp);
  const offset = stamps.offsetMinutes;
  if (Number.isNaN(packed) || Number.isNaN(offset) === layout.carriesOffset) return null;
  const pattern = stamps.likeLast();
  if (!layout.carriesOffset) return knownStamp(stamp, packed, pattern);
  soFar.stampOffset ??= offset;
  if (layout.knownOrder !== null) {
    return knownStamp(stamp, wallOf(packed, layout.knownOrder) - offset * 60_000, pattern);
  }
  return offset === soFar.stampOffset ? knownStamp(stamp, packed, pattern) : null;
}

function askOrderOfOffsets(line: number): RequestError {
  const detail = fileQuestion('choose-date-order.several-offsets');
  const choices = (['dmy', 'mdy'] as const).map((dateOrder) =>
    fileChoice(dateOrder, 'choose-date-order.choice', { dateOrder, from: null, to: null }),
  );
  return new RequestError(
    'choose-date-order',
    [detail, fileQuestion('choose-date-order.send', { ways: 'dateOrder=dmy, dateOrder=mdy' })],
    [{ parameter: 'dateOrder', line, detail, choices }],
  );
}
