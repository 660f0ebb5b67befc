import { fullYear, isLeapYear } from './date-code.js';
import { DATE_SLOT } from './read-stamp.js';
import type { StampForm } from './stamp-form.js';

export const dateOrders = ['ymd', 'dmy', 'mdy', 'ydm'] as const;
/** Which of year, month and day comes first, second, third. */
export type DateOrder = (typeof dateOrders)[number];

/** Proof of the order. */
export type OrderProof = 'form' | 'part-above-12' | 'monotone-time' | 'steady-step' | 'same-either-way';

export interface OrderChoice {
  readonly order: DateOrder;
  /** First and last wall clock that the order gives [ms, as if in UTC]. */
  readonly fromMs: number;
  readonly toMs: number;
}

export type OrderDecision =
  | { readonly order: DateOrder; readonly proof: OrderProof }
  | { readonly choices: readonly OrderChoice[] };

const DAY_MS = 86_400_000;
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const SLICE = 100_000;
/** An order is dead if this many more rows of a hundred are no dates in it than in the best. */
const DEAD_PERCENT = 1;
/** Up to this many rows may be spoilt ones; what hangs on so few is believed only where all else is in order. */
const FEW = 3;
/** Day and month taken for each other turn the next day into the next month, which is further than this [ms]. */
const MONTH_JUMP_MS = 20 * DAY_MS;

/** The orders in which dates of a form could be meant, the likeliest first. */
export function possibleOrders({ kind, year, month, isCompact }: StampForm): readonly DateOrder[] {
  if (kind !== 'calendar' || month === 'name' || isCompact) return ['ymd'];
  return { first: ['ymd', 'ydm'], last: ['dmy', 'mdy'], unknown: ['dmy', 'mdy', 'ymd'] }[year] as readonly DateOrder[];
}

/**
 * The wall clock of a packed stamp [ms, as if the clock stood in UTC]; NaN where there is no such date (31 February).
 *
 * @param packed - as a `StampReader` gives it for a form with a date
 * @param order - which part is the day
 * @example wallOf(2027050136000000, 'ymd') // => 1809165600000
 */
export function wallOf(packed: number, order: DateOrder): number {
  const code = Math.floor(packed / DATE_SLOT);
  return dayMsOf(code, order) + (packed - code * DATE_SLOT);
}

/**
 * The wall clocks of packed stamps, in place.
 *
 * @param shiftMs Is taken from each [ms].
 */
export function wallsOf(packed: Float64Array, order: DateOrder, shiftMs: number): void {
  // Stamps of one date follow one another: its midnight is found once.
  let [from, to, dayMs] = [NaN, NaN, NaN];
  for (let i = 0; i < packed.length; i++) {
    const stamp = packed[i]!;
    if (!(stamp >= from && stamp < to)) {
      from = DATE_SLOT * Math.floor(stamp / DATE_SLOT);
      to = from + DATE_SLOT;
      dayMs = wallOf(from, order);
    }
    packed[i] = dayMs + (stamp - from) - shiftMs;
  }
}

/** Midnight of a date [ms], from its three parts. */
function dayMsOf(code: number, order: DateOrder): number {
  if (!(code > 0)) return NaN;
  const p1 = Math.floor(code / 10_000);
  const p2 = Math.floor(code / 100) % 100;
  const p3 = code % 100;
  // A year of four digits has been put first; the other two stand as written.
  const isYearFirst = p1 >= 100 || order === 'ymd' || order === 'ydm';
  const year = fullYear(isYearFirst ? p1 : p3);
  const [first, second] = isYearFirst ? [p2, p3] : [p1, p2];
  const isMonthFirst = order === 'ymd' || order === 'mdy';
  const [month, day] = isMonthFirst ? [first, second] : [second, first];
  if (month < 1 || month > 12 || day < 1) return NaN;
  if (day > MONTH_DAYS[month - 1]! + (month === 2 && isLeapYear(year) ? 1 : 0)) return NaN;
  return Date.UTC(year, month - 1, day);
}

/** Score of a column in one order. */
interface Reading {
  readonly order: DateOrder;
  /** Rows that are no date. */
  bad: number;
  forward: number;
  backward: number;
  /** Steps of 20 days and more. */
  jumps: number;
  /** The largest step to another date [ms]. */
  longestDateStepMs: number;
  /** The step of most rows, if there is one [ms]. */
  usualMs: number;
  fromMs: number;
  toMs: number;
  sumMs: number;
}

/**
 * Which order the dates of a whole column are in, as far as it proves it: rows that are no date in an order; else time
 * that runs on; else a step that stays the same. Runs in slices of 100,000 rows.
 *
 * @param packed - stamps as read, NaN where there was none; left as they are
 * @param form - how they are written
 * @param count - rows to look at, from the first
 * @returns the order and what proves it; or, where several are equally good, those, to be asked about
 */
export function* decideDateOrder(packed: Float64Array, form: StampForm, count: number): Generator<void, OrderDecision> {
  const orders = possibleOrders(form);
  if (orders.length === 1) return { order: orders[0]!, proof: 'form' };
  const readings: Reading[] = [];
  let rows = 0;
  for (let i = 0; i < count; i++) if (!Number.isNaN(packed[i]!)) rows++;
  for (const order of orders) readings.push(yield* readingIn(order, packed, count));

  const leastBad = Math.min(...readings.map(({ bad }) => bad));
  const tolerated = Math.max((rows * DEAD_PERCENT) / 100, Math.min(FEW, rows / 4));
  const alive = readings.filter(({ bad }) => bad - leastBad <= tolerated);
  if (form.year === 'first') {
    const order = alive[0]!.order;
    return { order, proof: order === 'ymd' ? 'form' : 'part-above-12' };
  }
  if (alive.length === 1) return { order: alive[0]!.order, proof: 'part-above-12' };
  alive.sort((a, b) => faultsOf(a) - faultsOf(b));
  const best = alive[0]!;
  const left = [best];
  for (const other of alive.slice(1)) {
    if (!isProved(best, other) && !left.some((one) => saysTheSame(one, other))) left.push(other);
  }
  if (left.length === 1) return { order: best.order, proof: proofOf(best, alive[1]!) };
  left.sort((a, b) => orders.indexOf(a.order) - orders.indexOf(b.order));
  return { choices: left.map(({ order, fromMs, toMs }) => ({ order, fromMs, toMs })) };
}

/** Steps against the run of the file; a file may have its newest row first. */
const against = ({ forward, backward }: Reading): number => Math.min(forward, backward);
const faultsOf = (reading: Reading): number => reading.bad + against(reading) + reading.jumps;

/** True if one order is so much better than another that spoilt rows cannot explain it. */
function isProved(best: Reading, other: Reading): boolean {
  const [good, ill] = [faultsOf(best), faultsOf(other)];
  if (ill - good > FEW) return ill >= 3 * good;
  return good === 0 && ill > 0 && (best.longestDateStepMs < DAY_MS || best.longestDateStepMs === best.usualMs);
}

const saysTheSame = (a: Reading, b: Reading): boolean =>
  a.bad === b.bad && a.fromMs === b.fromMs && a.toMs === b.toMs && a.sumMs === b.sumMs;

function proofOf(best: Reading, other: Reading): OrderProof {
  if (!isProved(best, other)) return 'same-either-way';
  if (other.bad > best.bad) return 'part-above-12';
  return against(other) > against(best) ? 'monotone-time' : 'steady-step';
}

function* readingIn(order: DateOrder, packed: Float64Array, count: number): Generator<void, Reading> {
  const reading: Reading = {
    order,
    bad: 0,
    forward: 0,
    backward: 0,
    jumps: 0,
    longestDateStepMs: 0,
    usualMs: NaN,
    fromMs: Infinity,
    toMs: -Infinity,
    sumMs: 0,
  };
  let before = NaN;
  let votes = 0;
  // Stamps of one date follow one another: its midnight is found once.
  let [from, to, dayMs, fromBefore] = [NaN, NaN, NaN, NaN];
  for (let i = 0; i < count; i++) {
    if (i % SLICE === SLICE - 1) yield;
    const stamp = packed[i]!;
    if (Number.isNaN(stamp)) continue;
    if (!(stamp >= from && stamp < to)) {
      from = DATE_SLOT * Math.floor(stamp / DATE_SLOT);
      to = from + DATE_SLOT;
      dayMs = wallOf(from, order);
    }
    const wall = dayMs + (stamp - from);
    if (Number.isNaN(wall)) {
      reading.bad++;
      continue;
    }
    reading.sumMs += wall;
    if (wall < reading.fromMs) reading.fromMs = wall;
    if (wall > reading.toMs) reading.toMs = wall;
    const step = wall - before;
    const stepMs = Math.abs(step);
    if (stepMs > 0) {
      if (step > 0) reading.forward++;
      else reading.backward++;
      if (stepMs >= MONTH_JUMP_MS) reading.jumps++;
      // The step that keeps the upper hand over all others together, if one does.
      if (stepMs === reading.usualMs) votes++;
      else if (votes === 0) {
        reading.usualMs = stepMs;
        votes = 1;
      } else votes--;
      if (from !== fromBefore && stepMs > reading.longestDateStepMs) reading.longestDateStepMs = stepMs;
    }
    before = wall;
    fromBefore = from;
  }
  return reading;
}
