/** A first-order region, such as a state, province, prefecture or canton, or the part of it in one time zone. */
export interface Region {
  readonly country: string;
  /** As the source has it: of the United States `NY`, of many countries a number. */
  readonly code: string;
  /** Null where the source has none. */
  readonly name: string | null;
  readonly timeZone: string;
  /** Keys by which it can be meant (`region-names.ts`). */
  readonly keys: readonly string[];
}

/** What precedes the columns of an index file, as JSON. */
export interface IndexHead {
  /** Date of the newest record in the source. */
  readonly asOf: string;
  readonly places: number;
  readonly names: number;
  readonly regions: readonly Region[];
  /** Start and length in bytes of each column, from the end of the head. */
  readonly columns: Readonly<Record<ColumnName, readonly [start: number, bytes: number]>>;
}

export const columnNames = [
  'latitude',
  'longitude',
  'elevation',
  'people',
  'region',
  'titleStart',
  'titleLength',
  'titles',
  'blockStart',
  'blockBest',
  'entries',
] as const;
export type ColumnName = (typeof columnNames)[number];

/**
 * The towns of the world, as typed columns over the bytes of the file. Places are numbered by people, most first, so the
 * lesser number is the larger place.
 */
export interface LocalityIndex {
  readonly asOf: string;
  readonly places: number;
  readonly regions: readonly Region[];
  /** Hundredths of a degree. */
  readonly latitude: Int16Array;
  readonly longitude: Int16Array;
  /** Metres; NO_ELEVATION where none is known. */
  readonly elevation: Int16Array;
  /** Packed by `packPeople`; 0 where unknown. */
  readonly people: Uint16Array;
  readonly region: Uint16Array;
  /** Where the names of each TITLES_A_BLOCK places begin in `titles`. */
  readonly titleStart: Uint32Array;
  readonly titleLength: Uint8Array;
  readonly titles: Uint8Array;
  /** Where the blocks of the sorted table of names begin in `entries`; `name-table.ts` reads them. */
  readonly blockStart: Uint32Array;
  /** The largest place in each block. */
  readonly blockBest: Uint32Array;
  readonly entries: Uint8Array;
}

export const MAGIC = 'localities 1\n';
export const NO_ELEVATION = -32768;
export const TITLES_A_BLOCK = 16;
/** Columns begin at multiples of it, so that typed arrays can lie over them. */
const ALIGNMENT = 4;

export const aligned = (bytes: number): number => Math.ceil(bytes / ALIGNMENT) * ALIGNMENT;

/** The head's length in bytes stands here as a 32-bit number, little end first; the head follows it. */
export const HEAD_LENGTH_AT = aligned(MAGIC.length);
export const HEAD_AT = HEAD_LENGTH_AT + 4;
export const columnsAfter = (headBytes: number): number => aligned(HEAD_AT + headBytes);

/**
 * Lays the columns over the bytes of an index file; nothing is copied or decoded but the head.
 *
 * @param bytes The whole file, from a multiple of 4 in its buffer.
 */
export function localityIndex(bytes: Uint8Array): LocalityIndex {
  const text = new TextDecoder();
  if (text.decode(bytes.subarray(0, MAGIC.length)) !== MAGIC) throw new Error('This is no index of localities.');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const headBytes = view.getUint32(HEAD_LENGTH_AT, true);
  const columnsAt = columnsAfter(headBytes);
  const head = JSON.parse(text.decode(bytes.subarray(HEAD_AT, HEAD_AT + headBytes))) as IndexHead;
  const column = (name: ColumnName, bytesEach: number): [ArrayBuffer, number, number] => {
    const [start, length] = head.columns[name];
    return [bytes.buffer as ArrayBuffer, bytes.byteOffset + columnsAt + start, length / bytesEach];
  };
  return {
    asOf: head.asOf,
    places: head.places,
    regions: head.regions,
    latitude: new Int16Array(...column('latitude', 2)),
    longitude: new Int16Array(...column('longitude', 2)),
    elevation: new Int16Array(...column('elevation', 2)),
    people: new Uint16Array(...column('people', 2)),
    region: new Uint16Array(...column('region', 2)),
    titleStart: new Uint32Array(...column('titleStart', 4)),
    titleLength: new Uint8Array(...column('titleLength', 1)),
    titles: new Uint8Array(...column('titles', 1)),
    blockStart: new Uint32Array(...column('blockStart', 4)),
    blockBest: new Uint32Array(...column('blockBest', 4)),
    entries: new Uint8Array(...column('entries', 1)),
  };
}

/** Three significant digits in 16 bits, a thousand times the exponent and the digits: 30,788 is kept as 30,800. */
export function packPeople(people: number): number {
  let exponent = 0;
  let digits = people;
  while (digits >= 999.5) {
    digits /= 10;
    exponent++;
  }
  return exponent * 1000 + Math.round(digits);
}

export const unpackPeople = (packed: number): number => (packed % 1000) * 10 ** Math.floor(packed / 1000);
