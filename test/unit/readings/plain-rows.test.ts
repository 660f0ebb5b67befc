import { describe, expect, it } from 'vitest';
import { plainRows } from '../../../src/readings/text/plain-rows.js';
import { rowStore } from '../../../src/readings/text/row-store.js';
import { stampReader } from '../../../src/readings/time/read-stamp.js';
import { stampFormOf } from '../../../src/readings/time/stamp-form.js';
import { knownStamp } from '../../../src/readings/time/stamp-in-bytes.js';

const DAY = 100_000_000;
const NOON = 20_270_801 * DAY + 12 * 3_600_000;

/** What is read of rows from bytes, and the stamps that had to be read from their text. */
function read(text: string, sample = '2027-08-01 12:00') {
  const store = rowStore();
  const asText: string[] = [];
  const reader = stampReader(stampFormOf([sample])!);
  const rows = plainRows({ delimiter: ',', stampColumn: 0, valueColumns: [2], width: 3 }, [store], (stamp) => {
    asText.push(stamp);
    const packed = reader.read(stamp);
    return knownStamp(stamp, packed, reader.likeLast());
  });
  const bytes = Buffer.from(text);
  const left = bytes.subarray(rows.read(bytes, 0, bytes.length, 7)).toString();
  const { count } = store;
  return {
    left,
    asText,
    minutes: Array.from(store.stamps().subarray(0, count), (stamp) => (stamp - NOON) / 60_000),
    values: [...store.values().subarray(0, count)],
    lines: Array.from({ length: count }, (_, i) => store.lineOf(i)),
    lastCell: rows.lastCell(),
  };
}

/** Rows of every minute from noon of a day of August on. */
const minutesOf = (day: string, count: number): string =>
  Array.from({ length: count }, (_, i) => `2027-08-${day} 12:${String(i).padStart(2, '0')},a,21.5\n`).join('');

describe('plainRows', () => {
  it('reads rows of a day without making text of more than their first stamp', () => {
    expect(read('2027-08-01 12:01,a,21.5\r\n2027-08-01 13:00,,-0.25\n')).toEqual({
      left: '',
      asText: ['2027-08-01 12:01'],
      minutes: [1, 60],
      values: [21.5, -0.25],
      lines: [7, 8],
      lastCell: '-0.25',
    });
  });

  it('goes on into another day, whose first stamp is read from its text', () => {
    const { left, asText, minutes } = read(minutesOf('01', 30) + minutesOf('02', 20));
    expect(left).toBe('');
    expect(asText).toEqual(['2027-08-01 12:00', '2027-08-02 12:00']);
    expect(minutes).toHaveLength(50);
    expect(minutes[30]).toBe(DAY / 60_000);
  });

  it('leaves rows to those who read text where stamps are alike for a few rows only', () => {
    const rest = minutesOf('02', 3) + minutesOf('03', 40);
    expect(read(minutesOf('01', 5) + rest)).toMatchObject({ left: rest, asText: ['2027-08-01 12:00'] });
  });

  it.each([
    ['2027-08-01 12:00:30', '2027-08-01 13:04:59', 64 + 29 / 60],
    ['1.8.2027 9:30', '1.8.2027 8:05', -85],
    ['08/01/2027 01:15:00 PM', '08/01/2027 11:00:01 PM', 585 + 1 / 60],
    ['20270801T120000Z', '20270801T235959Z', 720 - 1 / 60],
  ])('knows by %s, from its text, what %s says', (known, like, laterMinutes) => {
    const { left, asText, minutes } = read(`${known},a,1\n${like},a,2\n`, known);
    expect(left).toBe('');
    expect(asText).toEqual([known]);
    expect(minutes[1]! - minutes[0]!).toBeCloseTo(laterMinutes, 6);
  });

  it.each([
    ['an hour there is not', '2027-08-01 24:00,a,21.5\n'],
    ['a minute there is not', '2027-08-01 12:60,a,21.5\n'],
    ['a letter for a digit', '2027-08-01 1o:00,a,21.5\n'],
    ['another mark', '2027-08-01 12.02,a,21.5\n'],
    ['a stamp that is cut off', '2027-08-01 12\n'],
    ['a quotation mark', '2027-08-01 12:02,"a",21.5\n'],
    ['a letter beyond ASCII', '2027-08-01 12:02,ä,21.5\n'],
    ['a mark for no value', '2027-08-01 12:02,a,-999\n'],
    ['a cell too many', '2027-08-01 12:02,a,21.5,4\n'],
    ['a line return in mid-line', '2027-08-01 12:02,a,21.5\r\r\n'],
  ])('leaves %s, and what follows, to those who read text', (_, row) => {
    const rest = `${row}2027-08-01 12:03,a,22\n`;
    expect(read(`2027-08-01 12:01,a,21.5\n${rest}`)).toMatchObject({ left: rest, values: [21.5] });
  });
});
