import { fixedZone } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import { askColumn, columnCalled } from '../columns/ask-column.js';
import type { Column } from '../columns/columns.js';
import { fileChoice, fileQuestion, readingsRefusal } from '../readings-facts.js';
import { readNumber } from '../text/number-cell.js';
import type { Table } from '../text/table.js';
import { clockNamed, type NamedClock } from './clock-named.js';
import { joinOf, parts } from './join-stamp.js';
import { calledOf, noStamps } from './no-stamps.js';
import { type StampForm, stampFormOf } from './stamp-form.js';

/** Time of a row: the columns that together hold the stamp, and the clock that they name. */
export interface TimePlan {
  /** From 0, in the order in which they are joined. */
  readonly columns: readonly number[];
  /** The stamp of a row, as one text. */
  readonly textOf: (row: readonly string[]) => string;
  readonly form: StampForm;
  /** Rows have a date and no time of day. */
  readonly isDaily: boolean;
  readonly clock: NamedClock;
}

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
  const clockOf = (indices: readonly number[]): NamedClock =>
    clockNamed(indices.map((i) => `${columns[i]!.name} ${table.units[i] ?? ''}`).join(' '), table.preamble);
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
  clockOf: (indices: readonly number[]) => NamedClock,
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
  clock: NamedClock,
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
