import { daysBetween, type PlainDate } from '../../src/basics/calendar.js';
import { tableOf } from './records.js';
import { median } from './statistics.js';

// How windows are set beside published ones: a season counts as met by windows within 21 days of it; first is the opening of the first
// season of a pair, last the close of the last; where a list names months only, any day of that month is right.

const NEAR_DAYS = 21;

export interface PublishedSeason {
  readonly station: string;
  readonly crop: string;
  readonly season: string;
  /** Days of the year, 0 is 1 January; null: not told. */
  readonly first: number | null;
  readonly last: number | null;
  readonly byMonth: boolean;
}

const ofYear = (monthAndDay: string): number | null =>
  monthAndDay === '' ? null : daysBetween('2023-01-01' as PlainDate, `2023-${monthAndDay}` as PlainDate);

export const publishedSeasons = (): PublishedSeason[] =>
  tableOf('practice/published-windows.csv').map((row) => ({
    station: row.station!,
    crop: row.crop!,
    season: row.season!,
    first: ofYear(row.first!),
    last: ofYear(row.last!),
    byMonth: row.resolution === 'month',
  }));

/** Days of the year; the last included. */
export interface OurWindow {
  readonly from: number;
  readonly to: number;
}

export interface Compared {
  readonly season: PublishedSeason;
  readonly ours: readonly OurWindow[];
  /** Ours less published [d]; null: not told, missed, or not the outermost. */
  readonly firstError: number | null;
  readonly lastError: number | null;
  readonly isMissed: boolean;
}

/** How far a day lies outside the days that a list allows. */
function beyond(day: number, published: number, byMonth: boolean): number {
  if (!byMonth) return day - published;
  const at = new Date(Date.UTC(2023, 0, 1 + published));
  const from = daysBetween(
    '2023-01-01' as PlainDate,
    `2023-${String(at.getUTCMonth() + 1).padStart(2, '0')}-01` as PlainDate,
  );
  const to = new Date(Date.UTC(2023, at.getUTCMonth() + 1, 0)).getUTCDate() - 1 + from;
  return day < from ? day - from : day > to ? day - to : 0;
}

/** All published seasons beside the windows of a place and crop. */
export function compared(windowsOf: (station: string, crop: string) => readonly OurWindow[]): Compared[] {
  const pairs = new Map<string, PublishedSeason[]>();
  for (const season of publishedSeasons()) {
    const key = `${season.station} ${season.crop}`;
    pairs.set(key, [...(pairs.get(key) ?? []), season]);
  }
  return [...pairs.values()].flatMap((seasons) => {
    const inOrder = seasons.sort((a, b) => (a.first ?? a.last!) - (b.first ?? b.last!));
    const ours = windowsOf(inOrder[0]!.station, inOrder[0]!.crop);
    const metBy = (season: PublishedSeason): OurWindow[] => {
      const from = (season.first ?? season.last!) - NEAR_DAYS;
      const to = (season.last ?? season.first!) + NEAR_DAYS;
      return ours.filter((window) => window.to >= from && window.from <= to);
    };
    return inOrder.map((season, i): Compared => {
      const met = metBy(season);
      const [firstMet, lastMet] = [met[0], met.at(-1)];
      const isFirst = i === 0;
      const isLast = i === inOrder.length - 1;
      return {
        season,
        ours,
        isMissed: met.length === 0,
        firstError:
          isFirst && season.first !== null && firstMet ? beyond(firstMet.from, season.first, season.byMonth) : null,
        lastError: isLast && season.last !== null && lastMet ? beyond(lastMet.to, season.last, season.byMonth) : null,
      };
    });
  });
}

/** The middle of some errors, and their mean size. */
export function summed(errors: readonly (number | null)[]): { n: number; median: number; mae: number } {
  const known = errors.filter((one) => one !== null);
  return {
    n: known.length,
    median: median(known),
    mae: known.reduce((sum, one) => sum + Math.abs(one), 0) / known.length,
  };
}
