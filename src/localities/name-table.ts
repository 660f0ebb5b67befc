import type { LocalityIndex } from './locality-index.js';

/**
 * The sorted table of names. An entry is a key (`keyOf`) and a place; entries are sorted by the bytes of their keys. In
 * blocks of ENTRIES_A_BLOCK an entry holds the number of bytes shared with the key before, the number of its own bytes,
 * these bytes, and the place in three bytes, whose highest bit marks the place's main name. The two numbers share a byte;
 * 15 says that the number follows in a byte of its own.
 */
export const ENTRIES_A_BLOCK = 16;
export const MAIN_NAME = 0x800000;
export const ESCAPED = 15;
/** Bytes of a key at most; no town's name is longer. */
export const MAX_KEY_BYTES = 200;

/** A match of a key with a place. */
export interface NameMatch {
  readonly place: number;
  /** True if it is the name that the place is listed by, false for another spelling, language or script. */
  readonly isMain: boolean;
}

/** The places that a key names exactly. */
export function placesNamed(index: LocalityIndex, key: string): NameMatch[] {
  const wanted = Buffer.from(key);
  if (wanted.length === 0 || wanted.length > MAX_KEY_BYTES) return [];
  const found: NameMatch[] = [];
  const read = new Uint8Array(MAX_KEY_BYTES);
  for (let block = firstBlock(index, wanted); block < index.blockStart.length; block++) {
    let isPast = false;
    readBlock(index, block, read, (length, entry) => {
      const order = compare(read, length, wanted);
      if (order === 0) found.push(matchOf(entry));
      isPast = order > 0;
      return !isPast;
    });
    if (isPast) break;
  }
  return found;
}

/** The blocks that may hold names that begin with a key, in order. */
export function blocksBeginning(index: LocalityIndex, key: string): number[] {
  const wanted = Buffer.from(key);
  if (wanted.length === 0 || wanted.length > MAX_KEY_BYTES) return [];
  const first = firstBlock(index, wanted);
  const blocks: number[] = [];
  for (let block = first; block < index.blockStart.length; block++) {
    if (block > first && compareStart(index, block, wanted) > 0) break;
    blocks.push(block);
  }
  return blocks;
}

/** The names in one block that begin with a key. */
export function matchesInBlock(index: LocalityIndex, block: number, key: string): NameMatch[] {
  const wanted = Buffer.from(key);
  const found: NameMatch[] = [];
  const read = new Uint8Array(MAX_KEY_BYTES);
  readBlock(index, block, read, (length, entry) => {
    if (length >= wanted.length && compare(read, wanted.length, wanted) === 0) found.push(matchOf(entry));
    return true;
  });
  return found;
}

const matchOf = (entry: number): NameMatch => ({ place: entry & ~MAIN_NAME, isMain: (entry & MAIN_NAME) !== 0 });

/** All entries, one after another, for tests and checks; it takes seconds to read them all. */
export function* allNames(index: LocalityIndex): Generator<{ readonly key: string } & NameMatch> {
  const key = new Uint8Array(MAX_KEY_BYTES);
  for (let block = 0; block < index.blockStart.length; block++) {
    const read: ({ readonly key: string } & NameMatch)[] = [];
    readBlock(index, block, key, (length, entry) => {
      const text = Buffer.from(key.subarray(0, length)).toString();
      read.push({ key: text, ...matchOf(entry) });
      return true;
    });
    yield* read;
  }
}

/** The block in which a key's first entry lies, or begins if none has it. */
function firstBlock(index: LocalityIndex, wanted: Uint8Array): number {
  let low = 0;
  let high = index.blockStart.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (compareFirstKey(index, middle, wanted) < 0) low = middle + 1;
    else high = middle;
  }
  return Math.max(0, low - 1);
}

/** Where the first key of a block lies in `entries`: it shares nothing. */
function firstKey({ entries, blockStart }: LocalityIndex, block: number): Uint8Array {
  const start = blockStart[block]!;
  const isEscaped = (entries[start]! & ESCAPED) === ESCAPED;
  const length = isEscaped ? entries[start + 1]! : entries[start]! & ESCAPED;
  const from = start + (isEscaped ? 2 : 1);
  return entries.subarray(from, from + length);
}

function compareFirstKey(index: LocalityIndex, block: number, wanted: Uint8Array): number {
  const key = firstKey(index, block);
  return compare(key, key.length, wanted);
}

/** Orders the start of a block's first key, no longer than the wanted one, against it. */
function compareStart(index: LocalityIndex, block: number, wanted: Uint8Array): number {
  const key = firstKey(index, block);
  return compare(key, Math.min(key.length, wanted.length), wanted);
}

function compare(key: Uint8Array, length: number, wanted: Uint8Array): number {
  const both = Math.min(length, wanted.length);
  for (let i = 0; i < both; i++) {
    const difference = key[i]! - wanted[i]!;
    if (difference !== 0) return difference;
  }
  return length - wanted.length;
}

/** Reads the entries of a block into `key`, one after another, until `each` returns false. */
function readBlock(
  { entries, blockStart }: LocalityIndex,
  block: number,
  key: Uint8Array,
  each: (length: number, entry: number) => boolean,
): void {
  const end = blockStart[block + 1] ?? entries.length;
  let at = blockStart[block]!;
  while (at < end) {
    const lengths = entries[at++]!;
    let shared = lengths >> 4;
    if (shared === ESCAPED) shared = entries[at++]!;
    let own = lengths & ESCAPED;
    if (own === ESCAPED) own = entries[at++]!;
    for (let i = 0; i < own; i++) key[shared + i] = entries[at++]!;
    const entry = entries[at]! | (entries[at + 1]! << 8) | (entries[at + 2]! << 16);
    at += 3;
    if (!each(shared + own, entry)) return;
  }
}
