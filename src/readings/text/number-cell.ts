const ZERO = 48;
const NINE = 57;
/** Powers of ten that doubles hold exactly, so that one division gives the nearest double. */
const POWERS = Array.from({ length: 16 }, (_, i) => 10 ** i);
const MAX_DIGITS = 15;
const DECORATED =
  /^\s*([+\-\u2212\u2013]?)\s*(\d{1,9})(?:[.,](\d{1,9}))?(?:[eE]([+-]?\d{1,2}))?\s*(?:(?:\u00c2?[\u00b0\u00ba\u02da\u00f8\u00a1\ufffd]|deg\.?)?\s*[CFKcfk]?|\u2103|\u2109|%|V|m?m)\s*$/;

/**
 * The number that a cell holds, or NaN where it holds none. Point and comma are both decimal marks: no temperature has
 * thousands to set apart. A unit behind the number is passed over.
 *
 * @example readNumber('12,8 °C') // => 12.8
 */
export function readNumber(cell: string): number {
  let i = 0;
  let end = cell.length;
  while (i < end && cell.charCodeAt(i) === 32) i++;
  while (end > i && cell.charCodeAt(end - 1) === 32) end--;
  const isNegative = cell.charCodeAt(i) === 45;
  if (isNegative) i++;
  const start = i;
  let digits = 0;
  let markAt = -1;
  for (; i < end; i++) {
    const code = cell.charCodeAt(i);
    if (code >= ZERO && code <= NINE) digits = 10 * digits + code - ZERO;
    else if ((code === 46 || code === 44) && markAt < 0 && i > start) markAt = i;
    else return readDecorated(cell);
  }
  const count = i - start - (markAt < 0 ? 0 : 1);
  if (count === 0) return NaN;
  if (count > MAX_DIGITS || markAt === i - 1) return readDecorated(cell);
  const value = markAt < 0 ? digits : digits / POWERS[i - markAt - 1]!;
  return isNegative ? -value : value;
}

function readDecorated(cell: string): number {
  if (cell.length > 40) return NaN;
  // Spreadsheets are kept from guessing by ="12.3".
  if (cell.startsWith('="') && cell.endsWith('"')) return readNumber(cell.slice(2, -1));
  const match = DECORATED.exec(cell.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' '));
  if (!match)
    return /^\s*[+-]?\d{1,9}[.,]\d{10,25}\s*$/.test(cell) ? Number(cell.replace(',', '.')) : bareFraction(cell);
  const value = Number(`${match[2]}.${match[3] ?? '0'}e${match[4] ?? '0'}`);
  return match[1] && match[1] !== '+' ? -value : value;
}

/** `.5` and `7.`, as some instruments write them. */
const bareFraction = (cell: string): number => (/^\s*[+-]?(\.\d{1,9}|\d{1,9}\.)\s*$/.test(cell) ? Number(cell) : NaN);
