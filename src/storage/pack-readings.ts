import type { Readings } from '../readings/readings.js';

/** Bytes of a reading: instant and value as doubles, plus one byte of provenance unless all were measured. */
const PLAIN_BYTES = 16;

/**
 * Packs readings into bytes: all instants, all values, and all provenance codes unless each is 0, "measured".
 * Numbers are exact, in this machine's byte order: little-endian on all but very few.
 *
 * @example packReadings of n readings that were all measured // => 16 n bytes
 */
export function packReadings({ atMs, valueC, basis }: Readings): Uint8Array {
  const n = atMs.length;
  const measured = basis.every((code) => code === 0);
  const bytes = new ArrayBuffer(PLAIN_BYTES * n + (measured ? 0 : n));
  new Float64Array(bytes, 0, n).set(atMs);
  new Float64Array(bytes, 8 * n, n).set(valueC);
  if (!measured) new Uint8Array(bytes, PLAIN_BYTES * n).set(basis);
  return new Uint8Array(bytes);
}

/**
 * Unpacks the readings of many packs, one after the other.
 *
 * @param packs Bytes and the number of readings in them. Drivers return views at any alignment, so they are copied.
 * @throws Error when the bytes are not that many readings.
 */
export function unpackReadings(
  packs: readonly { readonly packed: Uint8Array | ArrayBuffer; readonly readings: number }[],
): Readings {
  const n = packs.reduce((sum, { readings }) => sum + readings, 0);
  const all = { atMs: new Float64Array(n), valueC: new Float64Array(n), basis: new Uint8Array(n) };
  const instants = new Uint8Array(all.atMs.buffer);
  const values = new Uint8Array(all.valueC.buffer);
  let from = 0;
  for (const { packed, readings } of packs) {
    const bytes = packed instanceof Uint8Array ? packed : new Uint8Array(packed);
    const plain = bytes.length === PLAIN_BYTES * readings;
    if (!plain && bytes.length !== (PLAIN_BYTES + 1) * readings) {
      throw new Error(`${bytes.length} bytes are not ${readings} readings`);
    }
    instants.set(bytes.subarray(0, 8 * readings), 8 * from);
    values.set(bytes.subarray(8 * readings, PLAIN_BYTES * readings), 8 * from);
    if (!plain) all.basis.set(bytes.subarray(PLAIN_BYTES * readings), from);
    from += readings;
  }
  return all;
}
