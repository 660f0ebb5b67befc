import { describe, expect, it } from 'vitest';
import { plainRows } from '../../../src/readings/plain-rows.js';
import { rowStore } from '../../../src/readings/row-store.js';

const NOON = 20_270_801 * 100_000_000 + 12 * 3_600_000;

/** What is read of rows from bytes after a row of 1 August 2027 at noon. */
function read(text: string) {
  const store = rowStore();
  const rows = plainRows({ delimiter: ',', stampColumn: 0, valueColumns: [2], width: 3 }, [store]);
  rows.learn('2027-08-01 12:00', NOON, { prefix: '2027-08-01 ', tail: '', numbers: 2, hasColons: true, half: 'none' });
  const bytes = Buffer.from(text);
  const left = bytes.subarray(rows.read(bytes, 0, bytes.length, 7)).toString();
  const { count } = store;
  return {
    left,
    minutes: Array.from(store.stamps().subarray(0, count), (stamp) => (stamp - NOON) / 60_000),
    values: [...store.values().subarray(0, count)],
    lines: Array.from({ length: count }, (_, i) => store.lineOf(i)),
    lastCell: rows.lastCell(),
  };
}

describe('plainRows', () => {
  it('reads rows of the day it has learnt without making text of them', () => {
    expect(read('2027-08-01 12:01,a,21.5\r\n2027-08-01 13:00,,-0.25\n')).toEqual({
      left: '',
      minutes: [1, 60],
      values: [21.5, -0.25],
      lines: [7, 8],
      lastCell: '-0.25',
    });
  });

  it.each([
    ['another day', '2027-08-02 00:00,a,21.5\n'],
    ['an hour there is not', '2027-08-01 24:00,a,21.5\n'],
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
