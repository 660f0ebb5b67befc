import { describe, expect, it } from 'vitest';
import {
  type DateOrder,
  decideDateOrder,
  type OrderDecision,
  possibleOrders,
  wallOf,
} from '../../../src/readings/time/date-order.js';
import { stampReader } from '../../../src/readings/time/read-stamp.js';
import { stampFormOf } from '../../../src/readings/time/stamp-form.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const two = (n: number): string => String(n).padStart(2, '0');

const writers: Record<string, (day: string, month: string, year: number) => string> = {
  dmy: (day, month, year) => `${day}/${month}/${year}`,
  mdy: (day, month, year) => `${month}/${day}/${year}`,
  'yy.mm.dd': (day, month, year) => `${two(year % 100)}.${month}.${day}`,
  'dd.mm.yy': (day, month, year) => `${day}.${month}.${two(year % 100)}`,
  ymd: (day, month, year) => `${year}-${month}-${day}`,
  ydm: (day, month, year) => `${year}-${day}-${month}`,
};
/** Rows from an instant on, written in an order. */
const rows = (order: string, from: number, step: number, count: number): string[] =>
  Array.from({ length: count }, (_, i) => {
    const at = new Date(from + i * step);
    const date = writers[order]!(two(at.getUTCDate()), two(at.getUTCMonth() + 1), at.getUTCFullYear());
    return `${date} ${at.toISOString().slice(11, 16)}`;
  });

function decide(cells: readonly string[]): OrderDecision {
  const form = stampFormOf(cells)!;
  const reader = stampReader(form);
  const packed = Float64Array.from(cells, (cell) => reader.read(cell));
  const deciding = decideDateOrder(packed, form, packed.length);
  for (;;) {
    const step = deciding.next();
    if (step.done) return step.value;
  }
}
const orderOf = (cells: readonly string[]): DateOrder | 'asked' => {
  const decision = decide(cells);
  return 'order' in decision ? decision.order : 'asked';
};

describe('the wall clock of a packed stamp', () => {
  it('is none where there is no such date', () => {
    const reader = stampReader(stampFormOf(['28.02.2027 10:00'])!);
    expect(wallOf(reader.read('28.02.2027 10:00'), 'dmy')).toBe(Date.UTC(2027, 1, 28, 10));
    expect(wallOf(reader.read('28.02.2027 10:00'), 'mdy')).toBeNaN();
    expect(wallOf(reader.read('31.02.2027 10:00'), 'dmy')).toBeNaN();
    expect(wallOf(reader.read('29.02.2027 10:00'), 'dmy')).toBeNaN();
    expect(wallOf(reader.read('29.02.2028 10:00'), 'dmy')).toBe(Date.UTC(2028, 1, 29, 10));
    expect(wallOf(NaN, 'dmy')).toBeNaN();
  });

  it('has only the orders that a form leaves open', () => {
    expect(possibleOrders(stampFormOf(['2027-05-01'])!)).toEqual(['ymd', 'ydm']);
    expect(possibleOrders(stampFormOf(['01.05.2027'])!)).toEqual(['dmy', 'mdy']);
    expect(possibleOrders(stampFormOf(['01.05.27'])!)).toEqual(['dmy', 'mdy', 'ymd']);
    expect(possibleOrders(stampFormOf(['1 May 27'])!)).toEqual(['ymd']);
    expect(possibleOrders(stampFormOf(['20270501'])!)).toEqual(['ymd']);
  });
});

describe('the order of day and month', () => {
  it.each(['dmy', 'mdy'] as const)('%s is proved by parts above 12', (order) => {
    expect(decide(rows(order, Date.UTC(2027, 4, 1), HOUR, 31 * 24))).toEqual({ order, proof: 'part-above-12' });
  });

  it.each(['dmy', 'mdy'] as const)('%s is proved by a single row on a 13th, if it follows in step', (order) => {
    expect(decide(rows(order, Date.UTC(2027, 4, 1), MINUTE, 12 * 1440 + 1))).toEqual({ order, proof: 'part-above-12' });
    expect(decide(rows(order, Date.UTC(2027, 4, 1), DAY, 13))).toEqual({ order, proof: 'part-above-12' });
  });

  it.each(['dmy', 'mdy'] as const)('%s is proved by time that runs on over a midnight', (order) => {
    expect(decide(rows(order, Date.UTC(2027, 4, 6, 12), 10 * MINUTE, 100))).toEqual({ order, proof: 'steady-step' });
    expect(orderOf(rows(order, Date.UTC(2027, 4, 6, 12), 10 * MINUTE, 400).reverse())).toBe(order);
  });

  it('is proved by time that would run backwards', () => {
    const april = rows('dmy', Date.UTC(2027, 3, 10), HOUR, 72);
    const may = rows('dmy', Date.UTC(2027, 4, 1), HOUR, 72);
    expect(decide([...april, ...may])).toEqual({ order: 'dmy', proof: 'monotone-time' });
  });

  it('is asked for a single day, with what each would mean', () => {
    expect(decide(rows('dmy', Date.UTC(2027, 4, 6), HOUR, 24))).toEqual({
      choices: [
        { order: 'dmy', fromMs: Date.UTC(2027, 4, 6), toMs: Date.UTC(2027, 4, 6, 23) },
        { order: 'mdy', fromMs: Date.UTC(2027, 5, 5), toMs: Date.UTC(2027, 5, 5, 23) },
      ],
    });
  });

  it('does not matter on the fifth of May', () => {
    expect(decide(rows('dmy', Date.UTC(2027, 4, 5), HOUR, 24))).toEqual({ order: 'dmy', proof: 'same-either-way' });
  });

  it('is taken as the one whose step is steady: each day of a month, not the same day of each month', () => {
    expect(decide(rows('dmy', Date.UTC(2027, 4, 1), DAY, 12))).toEqual({ order: 'dmy', proof: 'steady-step' });
    expect(decide(rows('mdy', Date.UTC(2027, 0, 4), DAY, 5))).toEqual({ order: 'mdy', proof: 'steady-step' });
  });

  it('is not turned by a few spoilt rows', () => {
    const cells = rows('dmy', Date.UTC(2027, 4, 1), 10 * MINUTE, 10_000);
    cells[777] = '05/31/2027 10:00';
    cells[5000] = '99/99/2027 10:00';
    cells[9999] = '04/30/2027 10:00';
    expect(orderOf(cells)).toBe('dmy');
  });

  it('is not proved by one spoilt row where nothing else proves it', () => {
    const day = rows('dmy', Date.UTC(2027, 4, 6), 10 * MINUTE, 144);
    for (const at of [0, 70, 143]) {
      for (const spoilt of ['06/15/2027', '16/05/2027', '06/06/2027', '05/05/2027', '07/05/2027']) {
        const cells = day.with(at, day[at]!.replace('06/05/2027', spoilt));
        expect([at, spoilt, orderOf(cells)]).toEqual([at, spoilt, 'asked']);
      }
    }
  });

  it('with the year first is year, month, day unless that gives no dates', () => {
    expect(orderOf(rows('ymd', Date.UTC(2027, 4, 6), HOUR, 24))).toBe('ymd');
    expect(orderOf(rows('ydm', Date.UTC(2027, 4, 13), HOUR, 24))).toBe('ydm');
    expect(orderOf(rows('ymd', Date.UTC(2027, 4, 1), HOUR, 2000).with(9, '2027-31-05 09:00'))).toBe('ymd');
  });

  it.each([
    ['yy.mm.dd', 'ymd'],
    ['dd.mm.yy', 'dmy'],
  ] as const)('of two digits each, written %s, is proved over days', (writer, order) => {
    expect(orderOf(rows(writer, Date.UTC(2008, 4, 2), HOUR, 24 * 9))).toBe(order);
    expect(orderOf(rows(writer, Date.UTC(2027, 4, 2), HOUR, 24 * 40))).toBe(order);
  });

  it('gives the server room: it pauses at least every 100,000 rows', () => {
    const form = stampFormOf(['01.05.2027 10:00'])!;
    const packed = new Float64Array(450_000).fill(stampReader(form).read('01.05.2027 10:00'));
    let pauses = 0;
    for (const _ of decideDateOrder(packed, form, packed.length)) pauses++;
    expect(pauses).toBe(8);
  });
});
