const LF = 10;
const FIRST_BEYOND_ASCII = 0x80;
/** Plain rows of fewer bytes are not worth having been looked for. */
const FEW_BYTES = 256;
const MAX_LINES = 100_000;

/**
 * Hands a file's bytes on, in order: rows from which all is had without making text of them to one who reads them so,
 * everything else to one who reads text. The longer nothing is found plain, the more lines in turn go the second way.
 *
 * A line beyond ASCII takes the rest of its piece along, because the encoding is told by all of it.
 *
 * @param readPlain Reads rows between two places in the bytes, the first a line's beginning and the second right behind
 *                  a line's end; returns where it stopped, a line's beginning.
 * @param readText  Reads bytes, from the middle of a line on too.
 */
export function plainFirst(
  readPlain: (bytes: Uint8Array, from: number, end: number) => number,
  readText: (bytes: Uint8Array) => void,
): (bytes: Uint8Array) => void {
  let isAtLine = false;
  let lines = 1;
  return (piece) => {
    // One kind of array, whatever came, keeps the loops over it quick.
    const bytes = new Uint8Array(piece.buffer, piece.byteOffset, piece.length);
    const end = bytes.lastIndexOf(LF) + 1;
    for (let at = 0; at < bytes.length; ) {
      const from = at;
      if (isAtLine && from < end) at = readPlain(bytes, from, end);
      lines = !isAtLine || at - from >= FEW_BYTES ? 1 : Math.min(MAX_LINES, 2 * lines);
      const lineEnd = afterLines(bytes, at, end, lines);
      const to = isBeyondAscii(bytes, at, lineEnd) ? bytes.length : lineEnd;
      if (to > at) readText(bytes.subarray(at, to));
      isAtLine = bytes[to - 1] === LF;
      at = to;
    }
  };
}

/** Offset after a number of lines, not beyond `end`; the end of the bytes if no line ends before it. */
function afterLines(bytes: Uint8Array, from: number, end: number, lines: number): number {
  if (from >= end) return bytes.length;
  let at = from;
  for (let i = 0; i < lines && at < end; i++) at = bytes.indexOf(LF, at) + 1;
  return at;
}

function isBeyondAscii(bytes: Uint8Array, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (bytes[i]! >= FIRST_BEYOND_ASCII) return true;
  return false;
}
