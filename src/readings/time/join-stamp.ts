import type { Column } from '../columns/columns.js';
import { readNumber } from '../text/number-cell.js';

/** Column names for the parts of a date or time, in the languages of the archives. */
export const parts = {
  year: /^(?:year|yr|yyyy|jahr|ann[ée]e|a[ñn]o|anno|jaar|[åa]r|vuosi|rok|év|ano)\b/i,
  month:
    /^(?:month|mo|mon|mm|monat|mois|m[eê]s|mese|maand|m[åa]nad|kuukausi|kk|miesi[ąa]c|m[ěe]s[íi]c|h[óo]nap)(?![a-z])/i,
  day: /^(?:day|dy|dd|dom|tag|jour|d[íi]a|giorno|dag|p[äa]iv[äa]|pv|dzie[ńn]|den|nap)(?![a-z])(?! ?of)/i,
  dayOfYear: /^(?:doy|jul(?:ian)?(?: ?day)?|jday|yday|day ?of ?(?:the ?)?year)(?![a-z])/i,
  hour: /^(?:hour|hr|hh|hhmm|h|time|stunde|std|uhrzeit|zeit|heure|hora|ora|uur|tijd|timme|tid|tunti|aika|klo|godzina|hodina|[óo]ra)(?![a-z])/i,
  minute: /^(?:minute|minutes|min|mi|mn)$/i,
};

/** Joins the cells of several columns into one stamp. */
export function joinOf(columns: readonly Column[], indices: readonly number[]): (row: readonly string[]) => string {
  const [a, b, c, d, e] = indices as [number, number?, number?, number?, number?];
  if (b === undefined) return (row) => row[a] ?? '';
  const isPart = (index: number | undefined, part: RegExp): boolean =>
    index !== undefined && part.test(columns[index]!.name);
  const clockText = (index: number): ((row: readonly string[]) => string) => {
    const { kind, cells } = columns[index]!;
    if (kind === 'clock' && cells.some((cell) => /\D/.test(cell.trim()))) return (row) => (row[index] ?? '').trim();
    if (cells.every((cell) => cell.trim() === '' || /^\s*\d{1,2}\.[0-5]\d\s*$/.test(cell))) {
      return (row) => (row[index] ?? '').trim().replace('.', ':');
    }
    const isHhmm = cells.some((cell) => readNumber(cell) > 24) || cells.every((cell) => cell.trim().length >= 3);
    return (row) => {
      const value = readNumber(row[index] ?? '');
      if (Number.isNaN(value)) return '?';
      return isHhmm ? `${two(Math.floor(value / 100))}:${two(value % 100)}` : `${two(value)}:00`;
    };
  };
  const isYear = isPart(a, parts.year) || isUnnamedDate(columns, indices);
  if (isYear && c !== undefined && (isPart(b, parts.month) || indices.length > 3)) {
    const clock = d === undefined ? undefined : clockText(d);
    return (row) => {
      const date = `${(row[a] ?? '').trim()}-${pad(row[b])}-${pad(row[c])}`;
      if (!clock) return date;
      return e === undefined ? `${date} ${clock(row)}` : `${date} ${pad(row[d!])}:${pad(row[e])}`;
    };
  }
  if (isYear && (isPart(b, parts.dayOfYear) || indices.length === 3)) {
    const clock = c === undefined ? undefined : clockText(c);
    return (row) =>
      `${(row[a] ?? '').trim()} ${(row[b] ?? '').trim().padStart(3, '0')}${clock ? ` ${clock(row).replace(':', '')}` : ''}`;
  }
  const last = indices.at(-1)!;
  if (columns[last]!.kind === 'text') {
    return (row) => indices.map((index) => (row[index] ?? '').trim()).join(' ');
  }
  if (c !== undefined) return (row) => `${(row[a] ?? '').trim()} ${pad(row[b])}:${pad(row[c])}`;
  const clock = clockText(b);
  return (row) => `${(row[a] ?? '').trim()} ${clock(row)}`;
}

const two = (n: number): string => (n < 10 ? `0${n}` : String(n));
const pad = (cell: string | undefined): string => (cell ?? '').trim().replace(/\.0$/, '').padStart(2, '0');

const isUnnamedDate = (columns: readonly Column[], indices: readonly number[]): boolean =>
  indices.length >= 3 && indices.every((index) => columns[index]!.name === '' && columns[index]!.kind === 'number');
