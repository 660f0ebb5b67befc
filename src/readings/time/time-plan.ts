import { findZone, fixedZone, type Zone } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import { askColumn, columnCalled, columnNames } from '../columns/ask-column.js';
import type { Column } from '../columns/columns.js';
import { fileChoice, fileQuestion, readingsRefusal } from '../readings-facts.js';
import { readNumber } from '../text/number-cell.js';
import type { Table } from '../text/table.js';
import { type StampForm, stampFormOf } from './stamp-form.js';

/** Where a file says when: the columns that together hold the stamp, and what is said of their clock. */
export interface TimePlan {
  /** From 0, in the order in which they are joined. */
  readonly columns: readonly number[];
  /** The stamp of a row, as one text. */
  readonly textOf: (row: readonly string[]) => string;
  readonly form: StampForm;
  /** Rows have a date and no time of day. */
  readonly isDaily: boolean;
  readonly clock: ClockSaid;
}

/** What a file says of its clock, apart from its stamps. */
export interface ClockSaid {
  /** The zone or the offset that it names; null where it names none. */
  readonly zone: Zone | null;
  readonly isUtc: boolean;
  readonly isStandard: boolean;
}

/** Column names that say a part of a date or time, in the tongues of the archives. */
const parts = {
  year: /^(?:year|yr|yyyy|jahr|ann[ée]e|a[ñn]o|anno|jaar|[åa]r|vuosi|rok|év|ano)\b/i,
  month:
    /^(?:month|mo|mon|mm|monat|mois|m[eê]s|mese|maand|m[åa]nad|kuukausi|kk|miesi[ąa]c|m[ěe]s[íi]c|h[óo]nap)(?![a-z])/i,
  day: /^(?:day|dy|dd|dom|tag|jour|d[íi]a|giorno|dag|p[äa]iv[äa]|pv|dzie[ńn]|den|nap)(?![a-z])(?! ?of)/i,
  dayOfYear: /^(?:doy|jul(?:ian)?(?: ?day)?|jday|yday|day ?of ?(?:the ?)?year)(?![a-z])/i,
  hour: /^(?:hour|hr|hh|hhmm|h|time|stunde|std|uhrzeit|zeit|heure|hora|ora|uur|tijd|timme|tid|tunti|aika|klo|godzina|hodina|[óo]ra)(?![a-z])/i,
  minute: /^(?:minute|minutes|min|mi|mn)$/i,
};

/**
 * Finds the columns that say when.
 *
 * @throws {RequestError} `choose-column` where several could; `not-csv` where none does, with the reason.
 */
export function timePlanOf(table: Table, columns: readonly Column[], wanted: string | null): TimePlan {
  if (table.fixed) {
    const { timeColumns, isUtc } = table.fixed;
    return planOf(table, columns, timeColumns, { zone: isUtc ? fixedZone(0) : null, isUtc, isStandard: !isUtc })!;
  }
  if (wanted !== null) {
    const column = columnCalled(columns, wanted, 'timeColumn');
    const plan = plansFrom(table, columns).find(({ columns: [first] }) => first === column.index);
    if (plan) return plan;
    throw new RequestError('no-readings', readingsRefusal('no-readings.no-dates', { column: calledOf(column) }), [
      { parameter: 'timeColumn', detail: readingsRefusal('no-readings.no-dates.field') },
    ]);
  }
  const plans = plansFrom(table, columns);
  const surest = plans.filter((plan) => sureness(plan) === Math.max(...plans.map(sureness)));
  if (surest.length === 1 || (surest.length > 1 && allAlike(table, surest))) return surest[0]!;
  if (surest.length > 1) {
    throw askColumn(
      'timeColumn',
      fileQuestion('choose-column.several-times'),
      surest.map(({ columns: [first] }) => {
        const { name, cells } = columns[first!]!;
        const column = first! + 1;
        return fileChoice(String(column), 'choose-column.time', {
          name: name || null,
          column,
          firstCell: cells[0] ?? '',
        });
      }),
    );
  }
  throw noStamps(columns);
}

/** A stamp that says where it stands in the world is surer than a wall clock's; a time of day surer than a date. */
const sureness = ({ form, clock, isDaily }: TimePlan): number =>
  (isDaily ? 0 : 4) +
  (form.kind.startsWith('epoch') || form.offset !== 'none' || clock.isUtc ? 2 : 0) +
  (clock.zone ? 1 : 0);

const allAlike = (table: Table, plans: readonly TimePlan[]): boolean =>
  table.sample.every((row) => plans.every((plan) => plan.textOf(row) === plans[0]!.textOf(row)));

function plansFrom(table: Table, columns: readonly Column[]): TimePlan[] {
  const clockOf = (indices: readonly number[]): ClockSaid =>
    clockSaid(indices.map((i) => `${columns[i]!.name} ${table.units[i] ?? ''}`).join(' '), table.preamble);
  // All rows of one day have one date; then the clock beside it moves.
  const isDateBesideClock = ({ index, form }: Column): boolean =>
    form?.kind === 'calendar' && !form.hasTime && (clockBeside(columns, index)?.distinct ?? 0) > 1;
  const moving = columns.filter(
    (column) =>
      column.kind === 'stamp' && (column.distinct > 1 || table.sample.length < 3 || isDateBesideClock(column)),
  );
  const plans = moving.flatMap((column) => {
    const hasTime = column.form!.kind !== 'calendar' || column.form!.hasTime;
    if (hasTime) return planOf(table, columns, [column.index], clockOf([column.index])) ?? [];
    const clock = clockBeside(columns, column.index);
    if (!clock) return planOf(table, columns, [column.index], clockOf([column.index])) ?? [];
    const minute =
      clock.kind === 'number'
        ? columns.find(({ index, name }) => index === clock.index + 1 && parts.minute.test(name))
        : undefined;
    const half = halfBeside(columns, clock.index);
    const used = [column.index, clock.index, ...(minute ? [minute.index] : []), ...(half === undefined ? [] : [half])];
    return planOf(table, columns, used, clockOf(used)) ?? [];
  });
  if (plans.length > 0) return plans;
  const named = (part: keyof typeof parts): number | undefined =>
    columns.find(
      ({ name, kind }) => (kind === 'number' || kind === 'clock' || kind === 'stamp') && parts[part].test(name),
    )?.index;
  const [year, month, day, dayOfYear, hour] = [
    named('year'),
    named('month'),
    named('day'),
    named('dayOfYear'),
    named('hour'),
  ];
  const date =
    year === undefined
      ? undefined
      : month !== undefined && day !== undefined
        ? [year, month, day]
        : dayOfYear !== undefined
          ? [year, dayOfYear]
          : undefined;
  if (!date) return unnamedPlan(table, columns, clockOf) ?? [];
  const minute =
    hour === undefined ? undefined : columns.find(({ index, name }) => index > hour && parts.minute.test(name))?.index;
  const used = [...date, ...(hour === undefined ? [] : [hour]), ...(minute === undefined ? [] : [minute])];
  return [planOf(table, columns, used, clockOf(used)) ?? []].flat();
}

const HALF =
  /^(?:[ap]\.?\s?m?\.?|vorm\.?|nachm\.?|上午|下午|오전|오후|午前|午後|fm|em|de\.?|du\.?|πμ|μμ|π\.?μ\.?|μ\.?μ\.?)$/i;
/** The column with the half of the day, AM or PM, where it stands right behind the time of day. */
function halfBeside(columns: readonly Column[], clock: number): number | undefined {
  const next = columns[clock + 1];
  const isHalf = next?.kind === 'text' && next.distinct <= 2 && next.cells.every((cell) => HALF.test(cell.trim()));
  return isHalf ? next.index : undefined;
}

/** Whole numbers side by side, in a file without names, that run as year, month, day, hour or year, day of year, hour. */
const DATES_IN_NUMBERS = [
  [
    [1990, 2100],
    [1, 12],
    [1, 31],
    [0, 24],
  ],
  [
    [1990, 2100],
    [1, 366],
    [0, 2400],
  ],
] as const;

function unnamedPlan(
  table: Table,
  columns: readonly Column[],
  clockOf: (indices: readonly number[]) => ClockSaid,
): TimePlan[] | undefined {
  if (table.names.some((name) => name !== '')) return undefined;
  for (const limits of DATES_IN_NUMBERS) {
    for (let from = 0; from + limits.length <= columns.length; from++) {
      const isWithin = limits.every(([least, most], i) =>
        columns[from + i]!.cells.every((cell) => {
          const value = readNumber(cell);
          return Number.isInteger(value) && value >= least && value <= most;
        }),
      );
      const used = limits.map((_, i) => from + i);
      const plan = isWithin ? planOf(table, columns, used, clockOf(used)) : undefined;
      if (plan && isRisingText(table.sample.map(plan.textOf))) return [plan];
    }
  }
  return undefined;
}

const isRisingText = (texts: readonly string[]): boolean =>
  texts.length > 2 && texts.filter((text, i) => i === 0 || text > texts[i - 1]!).length >= 0.95 * texts.length;

const isUnnamedDate = (columns: readonly Column[], indices: readonly number[]): boolean =>
  indices.length >= 3 && indices.every((index) => columns[index]!.name === '' && columns[index]!.kind === 'number');

/** The column with the time of day that goes with a date: the nearest to its right, else to its left. */
function clockBeside(columns: readonly Column[], date: number): Column | undefined {
  const clocks = columns.filter(
    ({ kind, name, cells }) => kind === 'clock' || (kind === 'number' && parts.hour.test(name) && areHours(cells)),
  );
  const rank = ({ index }: Column): number => (index > date ? index - date : 100 + date - index);
  return clocks.sort((a, b) => rank(a) - rank(b))[0];
}

const areHours = (cells: readonly string[]): boolean =>
  cells.every((cell) => cell.trim() === '' || /^\s*(?:\d{1,2}|\d{3,4}|\d{1,2}\.0|\d{1,2}\.[0-5]\d)\s*$/.test(cell));

function planOf(
  table: Table,
  columns: readonly Column[],
  indices: readonly number[],
  clock: ClockSaid,
): TimePlan | undefined {
  const textOf = joinOf(columns, indices);
  const form = stampFormOf(table.sample.map(textOf));
  if (!form || form.kind === 'clock') return undefined;
  return {
    columns: indices,
    textOf,
    form,
    clock,
    isDaily: form.kind === 'calendar' ? !form.hasTime : form.kind === 'day-of-year' && indices.length < 3,
  };
}

/** How the cells of several columns become one stamp. */
function joinOf(columns: readonly Column[], indices: readonly number[]): (row: readonly string[]) => string {
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

const OFFSET =
  /\b(?:UTC|GMT)\s*([+\-\u2212])\s*(\d{1,2})(?::?(\d{2}))?(?!\d)|[([]\s*([+\-\u2212])(\d{2}):?(\d{2})\s*[)\]]/i;
const IANA =
  /\b(?:Africa|America|Antarctica|Asia|Atlantic|Australia|Europe|Indian|Pacific|Etc)\/[A-Za-z0-9_+\-/]*[A-Za-z0-9]/;
const STANDARD =
  /\b(?:[PMCELHAN]|AK|AE|AC|AW|NZ|J|K)ST\b|\b(?:CET|MEZ|EET|WET)\b|standard time|normalzeit|winterzeit|heure (?:d['’]hiver|normale)|hora est[áa]ndar|normaltid|ora solare|wintertijd/i;
const SPEAKS_OF_TIME =
  /time|date|hour|tijd|\buur|zeit|datum|heure|hora|\bora\b|fecha|stamp|zone|\btid|aika|czas|[čc]as|clock|tz\b/i;

/** What the names of the time columns say of the clock; where they say nothing, what the lines above the table say. */
function clockSaid(names: string, preamble: readonly string[]): ClockSaid {
  const said = clockIn(names);
  if (said) return said;
  for (const line of preamble) {
    const found = SPEAKS_OF_TIME.test(line) ? clockIn(line) : null;
    if (found) return found;
  }
  return { zone: null, isUtc: false, isStandard: false };
}

function clockIn(text: string): ClockSaid | null {
  const isStandard = STANDARD.test(text);
  const name = IANA.exec(text)?.[0];
  const zone = name === undefined ? undefined : findZone(name);
  if (zone) return { zone, isUtc: false, isStandard };
  const offset = OFFSET.exec(text);
  if (offset) {
    const [sign, hours, minutes] = offset[1] ? offset.slice(1, 4) : offset.slice(4, 7);
    const total = (sign === '+' ? 1 : -1) * (60 * Number(hours) + Number(minutes ?? 0));
    if (Math.abs(total) <= 14 * 60) return { zone: fixedZone(total), isUtc: total === 0, isStandard: false };
  }
  if (/(?:^|[^a-z])(?:UTC?|GMT|Zulu|Weltzeit)(?:$|[^a-z])/i.test(text))
    return { zone: fixedZone(0), isUtc: true, isStandard: false };
  return isStandard ? { zone: null, isUtc: false, isStandard } : null;
}

/** Why no stamps were found: a counter from the start of the logger, times without dates, or neither. */
function noStamps(columns: readonly Column[]): RequestError {
  const clock = columns.find(({ kind }) => kind === 'clock');
  if (clock) {
    return new RequestError('no-readings', readingsRefusal('no-readings.times-of-day', { column: calledOf(clock) }), [
      { parameter: 'timeColumn', detail: readingsRefusal('no-readings.times-of-day.field') },
    ]);
  }
  const counter = columns.find(
    ({ kind, cells, name }) =>
      kind === 'number' &&
      (/uptime|millis|elapsed|seconds|\bms\b|^t$|time/i.test(name) || (name === '' && isRising(cells))),
  );
  if (counter) {
    return new RequestError('no-readings', readingsRefusal('no-readings.counter', { column: calledOf(counter) }), [
      { parameter: 'timeColumn', detail: readingsRefusal('no-readings.counter.field') },
    ]);
  }
  return new RequestError('no-readings', readingsRefusal('no-readings.no-date-column'), [
    { parameter: 'timeColumn', detail: readingsRefusal('no-readings.columns', { columns: columnNames(columns) }) },
  ]);
}

const calledOf = ({ name, index }: Column): string => name || String(index + 1);

function isRising(cells: readonly string[]): boolean {
  const values = cells.map(readNumber).filter((value) => !Number.isNaN(value));
  return values.length > 2 && values.every((value, i) => i === 0 || value > values[i - 1]!);
}
