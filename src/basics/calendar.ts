import { FixedOffsetZone, IANAZone, Settings } from 'luxon';

Settings.throwOnInvalid = true;
Settings.defaultZone = 'utc';

/** A calendar date at a place, `YYYY-MM-DD`. It is not an instant: converting between the two needs a named zone. */
export type PlainDate = string & { readonly kind: 'PlainDate' };

/** Offset of a place's clocks from UTC at any instant. Instants are milliseconds since 1970-01-01T00:00Z. */
export interface Zone {
  readonly name: string;
  offsetMs(instantMs: number): number;
}

export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;

/** Years the calendar serves; schemas refuse dates outside them. */
export const FIRST_YEAR = 1900;
export const LAST_YEAR = 2199;

const MAX_CACHED_ZONES = 100;
const zones = new Map<string, Zone>();

/** The zone of an IANA name such as `Etc/GMT+2`, or undefined for an unknown name. */
export function findZone(name: string): Zone | undefined {
  const cached = zones.get(name);
  if (cached) return cached;
  if (!IANAZone.isValidZone(name)) return undefined;
  if (zones.size >= MAX_CACHED_ZONES) zones.clear();
  const zone = cachedZone(IANAZone.create(name));
  zones.set(name, zone);
  return zone;
}

/** A zone with one offset all year, such as the offset that a stamp carries. */
export function fixedZone(offsetMinutes: number): Zone {
  const offsetMs = offsetMinutes * 60_000;
  const name = offsetMinutes === 0 ? 'UTC' : `UTC${FixedOffsetZone.instance(offsetMinutes).formatOffset(0, 'short')}`;
  return { name, offsetMs: () => offsetMs };
}

/** The zone of a `Zone.name`: an IANA name or a fixed offset. @throws when no zone has that name. */
export function zoneNamed(name: string): Zone {
  const [, sign, hours, minutes] = /^UTC(?:([+-])(\d{2}):(\d{2}))?$/.exec(name) ?? [];
  const zone =
    name === 'UTC'
      ? fixedZone(0)
      : sign
        ? fixedZone((sign === '-' ? -1 : 1) * (60 * Number(hours) + Number(minutes)))
        : findZone(name);
  if (!zone) throw new Error(`there is no zone ${name}`);
  return zone;
}

/** Caches a year's few offset changes, found by bisection, because luxon is slow to answer for every hour. */
function cachedZone(zone: IANAZone): Zone {
  const years = new Map<number, { fromMs: number; offsetMs: number }[]>();
  const offsetAt = (ms: number): number => zone.offset(ms) * 60_000;
  const changesOf = (year: number) => {
    const steps = 26;
    const start = Date.UTC(year, 0, 1);
    const width = (Date.UTC(year + 1, 0, 1) - start) / steps;
    const changes = [{ fromMs: start, offsetMs: offsetAt(start) }];
    for (let step = 1; step <= steps; step++) {
      let before = start + (step - 1) * width;
      let after = start + step * width;
      const offsetMs = offsetAt(after);
      if (offsetMs === changes.at(-1)!.offsetMs) continue;
      while (after - before > 1) {
        const middle = Math.floor((before + after) / 2);
        if (offsetAt(middle) === offsetMs) after = middle;
        else before = middle;
      }
      changes.push({ fromMs: after, offsetMs });
    }
    return changes;
  };
  // Consecutive queries usually fall between the same two changes, so the last interval is tried first.
  let stretch = { fromMs: Infinity, toMs: Infinity, offsetMs: 0 };
  return {
    name: zone.name,
    offsetMs(instantMs) {
      if (instantMs >= stretch.fromMs && instantMs < stretch.toMs) return stretch.offsetMs;
      const year = new Date(instantMs).getUTCFullYear();
      if (year < FIRST_YEAR - 1 || year > LAST_YEAR + 2) return offsetAt(instantMs);
      let changes = years.get(year);
      if (!changes) {
        changes = changesOf(year);
        years.set(year, changes);
      }
      let i = changes.length - 1;
      while (i > 0 && changes[i]!.fromMs > instantMs) i--;
      stretch = { ...changes[i]!, toMs: changes[i + 1]?.fromMs ?? Date.UTC(year + 1, 0, 1) };
      return stretch.offsetMs;
    },
  };
}

/**
 * The instant at which a clock at the place shows this time: the first of a repeated hour; an hour later for a skipped
 * one.
 */
function instantOfWallClock(wallClockMs: number, zone: Zone): number {
  const offsetBefore = zone.offsetMs(wallClockMs - DAY_MS);
  const offsetAfter = zone.offsetMs(wallClockMs + DAY_MS);
  const first = wallClockMs - offsetBefore;
  if (offsetAfter === offsetBefore) return first;
  const second = wallClockMs - offsetAfter;
  if (zone.offsetMs(first) === offsetBefore || zone.offsetMs(second) !== offsetAfter) return first;
  return second;
}

/**
 * Days from 1 March of the year 0 of the Gregorian calendar to 1 January 1970 [d]; below, the length of its cycle [d].
 */
const EPOCH_DAYS = 719_468;
const DAYS_IN_400_YEARS = 146_097;

/**
 * Days from 1 March of the year 0 to 1 March of a year. It runs some hundred thousand times an answer; Date is too
 * slow.
 */
const daysBeforeYear = (year: number): number =>
  365 * year + Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);

const wallClockOf = (date: PlainDate): number => dayNumber(date) * DAY_MS;

/** Days from 1 January 1970 to a date; negative before it. Whole and small, so that thousands of them cost no memory. */
export function dayNumber(date: PlainDate): number {
  const month = digitsOf(date, 5, 7);
  // The year counts from March: the leap day comes last, so the months before it have the same length every year.
  const year = month > 2 ? digitsOf(date, 0, 4) : digitsOf(date, 0, 4) - 1;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + digitsOf(date, 8, 10) - 1;
  return daysBeforeYear(year) + dayOfYear - EPOCH_DAYS;
}

function digitsOf(date: PlainDate, from: number, to: number): number {
  let value = 0;
  for (let i = from; i < to; i++) value = 10 * value + date.charCodeAt(i) - 48;
  return value;
}

function dateOfWallClock(wallClockMs: number): PlainDate {
  const days = Math.floor(wallClockMs / DAY_MS) + EPOCH_DAYS;
  let year = Math.floor((400 * days + 591) / DAYS_IN_400_YEARS);
  if (daysBeforeYear(year) > days) year--;
  else if (daysBeforeYear(year + 1) <= days) year++;
  const dayOfYear = days - daysBeforeYear(year);
  const month = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * month + 2) / 5) + 1;
  return `${month < 10 ? year : year + 1}-${twoDigits(month < 10 ? month + 3 : month - 9)}-${twoDigits(day)}` as PlainDate;
}

const twoDigits = (n: number): string => (n < 10 ? `0${n}` : String(n));

/** The date of a text such as `2027-02-28`, or undefined when that day does not exist. */
export function findDate(text: string): PlainDate | undefined {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return undefined;
  const [year, month, day] = [Number(text.slice(0, 4)), Number(text.slice(5, 7)), Number(text.slice(8))];
  const exists = month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
  return exists && year >= FIRST_YEAR && year <= LAST_YEAR ? (text as PlainDate) : undefined;
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** The first instant of a date at the place. A day lasts 23, 24 or 25 hours: up to the start of the next. */
export const startOfDay = (date: PlainDate, zone: Zone): number => instantOfWallClock(wallClockOf(date), zone);

/** The instant of a date and a clock time `HH:MM` at the place. */
export const instantAt = (date: PlainDate, time: string, zone: Zone): number =>
  instantOfWallClock(wallClockOf(date) + timeOfDay(time), zone);

const timeOfDay = (time: string): number => Number(time.slice(0, 2)) * HOUR_MS + Number(time.slice(3, 5)) * 60_000;

/** The instants of a clock time on a date and the days after it, computed as by `instantAt`. Shape (nDays). */
export function instantsAt(date: PlainDate, nDays: number, time: string, zone: Zone): Float64Array {
  const wallClockMs = wallClockOf(date) + timeOfDay(time);
  const instants = new Float64Array(nDays);
  for (let day = 0; day < nDays; day++) instants[day] = instantOfWallClock(wallClockMs + day * DAY_MS, zone);
  return instants;
}

/** The date that an instant falls on at the place. */
export const dateAt = (instantMs: number, zone: Zone): PlainDate =>
  dateOfWallClock(instantMs + zone.offsetMs(instantMs));

/** The date n days after another; a negative n goes back. */
export const addDays = (date: PlainDate, days: number): PlainDate => dateOfWallClock(wallClockOf(date) + days * DAY_MS);

/** Days from one date to another; negative when the second is earlier. */
export const daysBetween = (from: PlainDate, to: PlainDate): number => dayNumber(to) - dayNumber(from);

/** The day of the year; 1 January is 1. */
export const dayOfYear = (date: PlainDate): number => daysBetween(`${date.slice(0, 4)}-01-01` as PlainDate, date) + 1;

/** An instant as RFC 3339 text with the place's offset. */
export function instantText(instantMs: number, zone: Zone): string {
  const offsetMinutes = Math.round(zone.offsetMs(instantMs) / 60_000);
  const wallClock = new Date(instantMs + offsetMinutes * 60_000).toISOString();
  const text = instantMs % 1000 === 0 ? wallClock.slice(0, 19) : wallClock.slice(0, 23);
  if (offsetMinutes === 0) return `${text}Z`;
  const [hours, minutes] = [Math.floor(Math.abs(offsetMinutes) / 60), Math.abs(offsetMinutes) % 60];
  return `${text}${offsetMinutes < 0 ? '-' : '+'}${twoDigits(hours)}:${twoDigits(minutes)}`;
}

const STAMP = /^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?(Z|[+-]\d{2}:?\d{2})?$/i;

/** An ISO 8601 stamp: its instant, and the offset it carries in minutes. */
export interface Stamp {
  readonly ms: number;
  readonly offsetMinutes: number;
}

/**
 * The instant of an ISO stamp such as `2027-08-03T12:00-02:00`, or undefined for any other text.
 * A stamp without an offset is local time and needs the place's zone.
 */
export function findStamp(text: string, zone?: Zone): Stamp | undefined {
  const match = STAMP.exec(text);
  if (!match) return undefined;
  const date = findDate(text.slice(0, 10));
  const time = text.slice(11, 16);
  if (!date || time > '23:59' || Number(time.slice(3)) > 59) return undefined;
  const seconds = Number(match[1]?.slice(1) ?? 0);
  if (seconds >= 60) return undefined;
  const offset = match[3];
  if (offset) {
    const offsetMinutes = minutesOf(offset);
    if (offsetMinutes === undefined) return undefined;
    const wallClock = wallClockOf(date) + Number(time.slice(0, 2)) * HOUR_MS + Number(time.slice(3)) * 60_000;
    return { ms: wallClock + seconds * 1000 - offsetMinutes * 60_000, offsetMinutes };
  }
  if (!zone) return undefined;
  const ms = instantAt(date, time, zone) + seconds * 1000;
  return { ms, offsetMinutes: zone.offsetMs(ms) / 60_000 };
}

function minutesOf(offset: string): number | undefined {
  if (offset.toUpperCase() === 'Z') return 0;
  const hours = Number(offset.slice(1, 3));
  const minutes = Number(offset.slice(-2));
  if (hours > 14 || minutes > 59) return undefined;
  return (offset[0] === '-' ? -1 : 1) * (hours * 60 + minutes);
}
