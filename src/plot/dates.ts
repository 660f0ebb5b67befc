import { scaleLinear } from 'd3-scale';
import { lettering, TYPE, widthOf } from './lettering.js';
import type { LinearScale } from './shapes.js';
import { element } from './svg.js';
import { paint } from './theme.js';

const DAY_MS = 86_400_000;

/** Days since 1970 of a date `YYYY-MM-DD`. */
export const dayOf = (date: string): number =>
  Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10))) / DAY_MS;

/** Dates in the reader's words. */
export interface DateWords {
  /** As `3 August 2027`. */
  long(date: string): string;
  /** As `3 Aug`. */
  short(date: string): string;
  /** A span of dates, as `7–9 Aug`. */
  span(from: string, to: string): string;
  /** A day since 1970, as `3 Aug`. */
  ofDay(day: number): string;
  monthOfDay(day: number): string;
  /** As `this, that and another`. */
  list(texts: readonly string[]): string;
}

/** The date of a day since 1970. */
export const dateOfDay = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** Maximum cached formats: readers choose the locale. */
const MAX_FORMATS = 50;

/** Caches formats by name, as making one takes longer than using it a hundred times. */
export function remembered<T>(make: (name: string) => T): (name: string) => T {
  const known = new Map<string, T>();
  return (name) => {
    const found = known.get(name) ?? make(name);
    if (known.size >= MAX_FORMATS) known.clear();
    known.set(name, found);
    return found;
  };
}

export const dateWords = remembered((locale: string): DateWords => {
  const format = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' });
  const long = format({ day: 'numeric', month: 'long', year: 'numeric' });
  const short = format({ day: 'numeric', month: 'short' });
  const month = format({ month: 'short' });
  const list = new Intl.ListFormat(locale, { type: 'conjunction' });
  const at = (day: number): Date => new Date(day * DAY_MS);
  return {
    long: (date) => long.format(at(dayOf(date))),
    short: (date) => short.format(at(dayOf(date))),
    span: (from, to) =>
      from === to ? short.format(at(dayOf(from))) : short.formatRange(at(dayOf(from)), at(dayOf(to))),
    ofDay: (day) => short.format(at(day)),
    monthOfDay: (day) => month.format(at(day)),
    list: (texts) => list.format(texts),
  };
});

/** A scale of days from left to right: a day begins at its number and ends at the next. */
export const dateScale = (fromDay: number, toDay: number, fromX: number, toX: number): LinearScale =>
  scaleLinear().domain([fromDay, toDay]).range([fromX, toX]);

export interface DateTick {
  readonly day: number;
  readonly text: string;
}

const STEPS_DAYS = [1, 2, 7, 14];
const STEPS_MONTHS = [1, 2, 3, 6, 12];
/** Gap between two date labels. */
const GAP_PX = 16;

/** The labelled days of an axis: each first of a month where months are many, else every nth day from the first. */
export function dateTicks(scale: LinearScale, words: DateWords): DateTick[] {
  const [fromDay, toDay] = scale.domain() as [number, number];
  const [fromX, toX] = scale.range() as [number, number];
  /** True if the widest label fits; a year's months, or a month's days, have it among the first. */
  const fits = (days: readonly number[], stepDays: number, text: (day: number) => string): boolean => {
    const widest = Math.max(...days.slice(0, 31).map((day) => widthOf(text(day), TYPE.small)));
    return widest + GAP_PX <= (stepDays * (toX - fromX)) / (toDay - fromDay);
  };
  for (const step of STEPS_DAYS) {
    const days = every(step, fromDay, toDay);
    if (days.length > 0 && fits(days, step, words.ofDay)) return days.map((day) => ({ day, text: words.ofDay(day) }));
  }
  for (const months of STEPS_MONTHS) {
    const days = firsts(months, fromDay, toDay);
    if (days.length === 0 || fits(days, 28 * months, words.monthOfDay))
      return days.map((day) => ({ day, text: words.monthOfDay(day) }));
  }
  return [];
}

const every = (step: number, fromDay: number, toDay: number): number[] =>
  Array.from({ length: Math.min(400, Math.max(0, Math.ceil((toDay - fromDay) / step))) }, (_, i) => fromDay + i * step);

function firsts(months: number, fromDay: number, toDay: number): number[] {
  const start = new Date(fromDay * DAY_MS);
  const days: number[] = [];
  for (let month = Math.ceil(start.getUTCMonth() / months) * months; ; month += months) {
    const day = Date.UTC(start.getUTCFullYear(), month, 1) / DAY_MS;
    if (day >= toDay || days.length > 400) return days;
    if (day >= fromDay) days.push(day);
  }
}

/** The axis of dates below a height: ticks where days begin, labels to their right. */
export function dateAxis(
  scale: LinearScale,
  words: DateWords,
  y: number,
): { readonly drawn: string; readonly toY: number } {
  const [fromX, toX] = scale.range() as [number, number];
  const ticks = dateTicks(scale, words).map(({ day, text }) => {
    const x = scale(day);
    const tick = element('path', { d: `M${x.toFixed(1)},${y} v6`, ...paint({ stroke: 'quiet' }) });
    const half = widthOf(text, TYPE.small) / 2;
    const middle = Math.max(fromX, Math.min(toX - half, x));
    return tick + lettering(middle, y + 20, text, { size: TYPE.small, colour: 'quiet', anchor: 'middle' });
  });
  return {
    drawn: element('path', { d: `M${fromX},${y} H${toX}`, ...paint({ stroke: 'quiet' }) }) + ticks.join(''),
    toY: y + 26,
  };
}
