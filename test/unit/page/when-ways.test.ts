import { describe, expect, test } from 'vitest';
import type { WindowAnswer } from '../../../src/contract/windows.js';
import { html } from '../../../src/page/shell/html.js';
import { OPEN_GROUND } from '../../../src/page/when/when-request.js';
import { waysOf, waysSaid } from '../../../src/page/when/when-ways.js';
import { english, readerIn } from './readers.js';
import { madeSeason, seen } from './when-made.js';

const reader = english;

describe('the same bed, altered', () => {
  test('open ground is set beside half shade, fleece and a room', () => {
    expect(waysOf({ ...OPEN_GROUND, moisture: 'wet' }, reader).map(({ name, make }) => [name, make])).toEqual([
      ['As it is', { ...OPEN_GROUND, moisture: 'wet' }],
      ['In half shade', { ...OPEN_GROUND, moisture: 'wet', shadePercent: 50 }],
      ['Under fleece', { ...OPEN_GROUND, moisture: 'wet', cover: 'fleece' }],
      ['Indoors at 18 °C', { ...OPEN_GROUND, kind: 'indoors', roomC: 18 }],
    ]);
  });

  test('what a bed has already is taken away instead', () => {
    const ways = waysOf({ ...OPEN_GROUND, shadePercent: 60, cover: 'fleece' }, readerIn('en', 'F'));
    expect(ways.map(({ name }) => name)).toEqual([
      'As it is',
      'Without its shade',
      'Without the fleece',
      'Indoors at 64 °F',
    ]);
    expect(ways[1]!.make).toMatchObject({ shadePercent: 0, cover: 'fleece' });
    expect(ways[2]!.make).toMatchObject({ shadePercent: 60, cover: 'bare' });
    expect(waysOf({ ...OPEN_GROUND, kind: 'indoors', roomC: 21 }, reader).map(({ name }) => name)).toEqual([
      'As it is',
      'In open ground',
    ]);
  });

  const season = (windows: readonly (readonly [string, string])[], closed: WindowAnswer['closed'] = []) =>
    madeSeason('2027-07-01', 92, { windows, closed }) as WindowAnswer;
  const hot = season([
    ['2027-07-01', '2027-07-09'],
    ['2027-08-20', '2027-09-30'],
  ]);
  const said = (other: WindowAnswer): string =>
    seen(
      html`${waysSaid(
        [
          { name: 'As it is', season: hot },
          { name: 'In half shade', season: other },
        ],
        reader,
        '2027-07-01',
      )}`,
    ).trim();

  test.each([
    [
      'a gap that shrinks',
      season([
        ['2027-07-01', '2027-07-19'],
        ['2027-08-10', '2027-09-30'],
      ]),
      // 10 July to 19 August are 41 days, 20 July to 9 August 21.
      'In half shade closed 20 July – 9 August (20 days shorter). The best date stays Thursday 1 July.',
    ],
    [
      'a gap that is broken up',
      season([
        ['2027-07-01', '2027-07-09'],
        ['2027-07-20', '2027-07-31'],
        ['2027-08-20', '2027-09-30'],
      ]),
      // Ten and nineteen days of 41 are left.
      'In half shade closed 10–19 July and 1–19 August (12 days shorter together). The best date stays Thursday 1 July.',
    ],
    [
      'a gap that falls away',
      season([['2027-07-01', '2027-09-30']]),
      'In half shade it can be sown at any time. The best date stays Thursday 1 July.',
    ],
    [
      'a gap that moves to where it was open',
      season([['2027-07-02', '2027-09-20']]),
      'In half shade closed 1 July (open as it is) and 21–30 September (open as it is); open 10 July – 19 August. The best date is Friday 2 July.',
    ],
    [
      'a season without a window',
      season([], [{ from: '2027-07-01', to: '2027-09-30', why: 'too-slow' }]),
      'In half shade no week is sure enough: it comes up too slowly.',
    ],
  ])('%s is told in a sentence', (_, other, expected) => {
    expect(said(other).replaceAll(' – ', '–')).toBe(expected.replaceAll(' – ', '–'));
  });
});
