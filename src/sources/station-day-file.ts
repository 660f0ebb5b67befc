import { setImmediate as othersTurn } from 'node:timers/promises';
import { RequestError } from '../basics/errors.js';
import { followedBy } from '../basics/fact.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { fileReader } from '../readings/read-file.js';
import { readInPieces } from '../readings/text/read-in-pieces.js';
import { type FileRead, noHints } from '../readings/text/rows-read.js';
import { fixedFormOf } from '../readings/time/fixed-forms.js';
import { airDayOf } from './air-day.js';
import type { AnswerContext, SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';

/**
 * A climate station's file: a national network's daily or hourly one without a header, GHCN-Daily by station or by
 * month (`readings/fixed-forms.ts`), or any table that itself declares its times and temperatures. Values flagged as
 * bad are not used; hourly readings give only days with full coverage.
 */
export async function readStationDayFile(bytes: Uint8Array, { zone }: AnswerContext): Promise<SourceDays> {
  const { series } = await inWords(() =>
    readInPieces(fileReader({ ...noHints, medium: 'air' }, zone), [airElements(bytes)], othersTurn),
  );
  if (series.medium !== 'air') throw new SourceError(sourceFact('source.no-air'));
  const measured = series.days.flatMap((day) => (day.complete ? (airDayOf(day.date, day) ?? []) : []));
  return { measured, forecast: [] };
}

/** Station, then year and month, or a whole date, then the measured element. */
const AIR_LINE = /^[A-Z0-9_-]{11}(?:\d{6}|,\d{8},)(TMAX|TMIN|TAVG)/;

/**
 * Keeps the lines for air in a file with lines for many elements. A record often begins with rain alone, and a file is
 * judged by its first lines, so one line of each element moves to the front; the order of the others does not matter.
 */
function airElements(bytes: Uint8Array): Uint8Array {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  if (!fixedFormOf(text.toString('latin1', 0, 1000))?.labels.length) return bytes;
  const first = new Map<string, string>();
  const others: string[] = [];
  for (const line of text.toString('latin1').split('\n')) {
    const element = AIR_LINE.exec(line)?.[1];
    if (!element) continue;
    if (first.has(element)) others.push(line);
    else first.set(element, line);
  }
  if (first.size === 0) throw new SourceError(sourceFact('source.no-air'));
  return Buffer.from(`${[...first.values(), ...others].join('\n')}\n`, 'latin1');
}

/** Rewords a file's error for a source, whose owner cannot send another file. */
async function inWords(reading: () => Promise<FileRead>): Promise<FileRead> {
  try {
    return await reading();
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    // Only the first sentence: the others advise the sender of a file.
    const [first] = error.sentences;
    const why = typeof first === 'object' && 'detail' in first ? first.detail : first;
    throw new SourceError(followedBy(sourceFact('source.file'), why), { cause: error });
  }
}
