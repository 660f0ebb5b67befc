import { dateAfter } from '../helper.js';

// Invented weather, the same on every machine: sums of sines, rounded to tenths of a degree.

const tenths = (value: number): number => Math.round(10 * value) / 10;
const dayOfYear = (date: string): number =>
  (Date.parse(`${date}T00:00Z`) - Date.parse(`${date.slice(0, 4)}-01-01T00:00Z`)) / 86_400_000;

/** Days of air from a date on; `warmerC` moves all of them. */
export const airDays = (from: string, days: number, warmerC = 0): { date: string; min: number; max: number }[] =>
  Array.from({ length: days }, (_, day) => {
    const date = dateAfter(from, day);
    const season = 12 - 8 * Math.cos((2 * Math.PI * (dayOfYear(date) - 25)) / 365);
    const weather = 3 * Math.sin(day / 4.3) + 2 * Math.sin(day / 1.9) + 1.5 * Math.sin(day / 37);
    const swing = 4.5 + Math.sin(day / 3.1);
    return { date, min: tenths(season + weather + warmerC - swing), max: tenths(season + weather + warmerC + swing) };
  });

/** Hours of soil about a mean [°C], warmest at five in the afternoon; the first is at `start`, a wall clock. */
export const soilHours = (
  start: string,
  hours: number,
  { meanC = 20, swingC = 5, warmingC = 0 } = {},
): { at: string; value: number }[] =>
  Array.from({ length: hours }, (_, hour) => ({
    at: new Date(Date.parse(`${start}Z`) + hour * 3_600_000).toISOString().slice(0, 16),
    value: tenths(
      meanC +
        (warmingC * hour) / hours +
        swingC * Math.sin((2 * Math.PI * (hour - 11)) / 24) +
        1.5 * Math.sin(hour / 41),
    ),
  }));

export const withOffset = (rows: readonly { at: string; value: number }[], offset = '-02:00') =>
  rows.map(({ at, value }) => ({ at: at + offset, value }));

/** A logger's file: a header, and a row for each reading. */
export const csvOf = (
  header: string,
  rows: readonly { at: string; value: number }[],
  row = ({ at, value }: { at: string; value: number }): string => `${at},${value}`,
): string => `${[header, ...rows.map(row)].join('\n')}\n`;

export const fahrenheit = (celsius: number): number => tenths(celsius * 1.8 + 32);
