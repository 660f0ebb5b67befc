import type { Zone } from '../basics/calendar.js';
import { fileLayoutOf } from './columns/file-layout.js';
import { settle } from './settle/settle.js';
import { type BodyReader, bodyReader } from './text/body-reader.js';
import { type TextReader, textReader } from './text/encoding.js';
import { unifyLineEnds } from './text/line-ends.js';
import { plainFirst } from './text/plain-first.js';
import { refuseLongLine } from './text/records.js';
import type { FileHints, FileRead } from './text/rows-read.js';

/** Reads a logger's file in pieces, as they arrive. */
export interface FileReader {
  /** @throws {RequestError} as soon as the file proves unreadable, or asks something that its first rows show. */
  push(bytes: Uint8Array): void;
  /** The result, after pauses in which a server can answer others. */
  finish(): Generator<void, FileRead>;
}

/** Part of a file that is read before its layout is settled. */
const HEAD_CHARACTERS = 200_000;
const HEAD_LINES = 1200;
/** Number of first bytes that show the encoding; they may come one by one. */
const SNIFFED_BYTES = 4096;
/** Rows further down may be shorter than the first by as much. */
const SPARE_ROWS = 1.05;

/**
 * A reader of one file.
 *
 * @param hints What the caller says of it; wins over what the file says.
 * @param zone  The place's zone; without one the zone or offset that the file names serves.
 * @param expectedBytes How long the file is said to be; more and fewer may come.
 */
export function fileReader(hints: FileHints, zone: Zone | undefined, expectedBytes = 0): FileReader {
  const unify = unifyLineEnds();
  let text: TextReader | undefined;
  let first: Uint8Array = new Uint8Array(0);
  let head = '';
  let body: BodyReader | undefined;

  function take(piece: string, isLast: boolean): void {
    if (body) {
      body.read(piece, isLast);
      return;
    }
    head += piece;
    const isEnough = head.length >= HEAD_CHARACTERS || (head.length > 20_000 && linesIn(head) >= HEAD_LINES);
    if (!isLast && !isEnough) return;
    const cut = isLast ? head.length : head.lastIndexOf('\n') + 1;
    if (cut === 0 || !head.includes('\n')) refuseLongLine(head, 1);
    if (cut === 0 && !isLast) return;
    const known = head.slice(0, cut);
    const expectedRows = (SPARE_ROWS * expectedBytes * linesIn(known)) / known.length;
    body = bodyReader(fileLayoutOf(known, hints), hints, expectedRows);
    const all = head;
    head = '';
    body.read(all, isLast);
  }

  const readText = (bytes: Uint8Array): void => take(unify(text!.read(bytes, false), false), false);
  const readOn = plainFirst((bytes, from, end) => body!.readPlain(bytes, from, end), readText);

  return {
    push(bytes) {
      if (text) {
        if (body && text.hasAscii) readOn(bytes);
        else readText(bytes);
        return;
      }
      first = first.length === 0 ? bytes.slice() : Buffer.concat([first, bytes]);
      if (first.length < SNIFFED_BYTES) return;
      text = textReader(first);
      readText(first);
    },
    *finish() {
      const rest = text ? new Uint8Array(0) : first;
      text ??= textReader(first);
      take(unify(text.read(rest, true), true), true);
      yield;
      return yield* settle(body!.finish(text.encoding()), hints, zone);
    },
  };
}

function linesIn(text: string): number {
  let count = 0;
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) count++;
  return count;
}
