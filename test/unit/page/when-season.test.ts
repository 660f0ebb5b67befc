import { describe, expect, test } from 'vitest';
import { closedAt, gapsOf, joinedSpells } from '../../../src/page/when/when-season.js';
import { madeSeason } from './when-made.js';

const closed = (from: string, to: string, why: 'too-cold' | 'too-slow' | 'too-hot' | 'frost-to-come') => ({
  from,
  to,
  why,
});

describe('what is closed to sowing', () => {
  test('a winter in slices of a few days is told in as many spells as are worth it', () => {
    const winter = [
      closed('2027-10-10', '2027-12-01', 'frost-to-come'),
      closed('2027-12-02', '2027-12-06', 'too-slow'),
      closed('2027-12-07', '2027-12-11', 'too-cold'),
      closed('2027-12-12', '2027-12-12', 'too-slow'),
      closed('2027-12-13', '2028-01-29', 'too-cold'),
      closed('2028-01-30', '2028-04-15', 'frost-to-come'),
    ];
    // The 12th goes to the cold after it, which the five cold days before it join; these 54 days take the five slow ones,
    // as the frost before them has but 53.
    expect(joinedSpells(winter)).toEqual([
      { ...closed('2027-10-10', '2027-12-01', 'frost-to-come'), isMixed: false },
      { ...closed('2027-12-02', '2028-01-29', 'too-cold'), isMixed: true },
      { ...closed('2028-01-30', '2028-04-15', 'frost-to-come'), isMixed: false },
    ]);
  });

  test('a short spell that stands alone, and long ones side by side, are told as they are', () => {
    const spells = [
      closed('2027-07-01', '2027-07-02', 'too-hot'),
      closed('2027-11-01', '2027-11-20', 'too-slow'),
      closed('2027-11-21', '2027-12-20', 'too-cold'),
    ];
    expect(joinedSpells(spells)).toEqual(spells.map((spell) => ({ ...spell, isMixed: false })));
    expect(joinedSpells([])).toEqual([]);
  });

  test('gaps lie before, between and after the windows, each with what closes it', () => {
    const season = madeSeason('2027-08-01', 31, {
      windows: [
        ['2027-08-05', '2027-08-14'],
        ['2027-08-20', '2027-08-28'],
      ],
      closed: [closed('2027-08-01', '2027-08-04', 'too-hot'), closed('2027-08-29', '2027-08-31', 'too-slow')],
    });
    expect(gapsOf(season).map(({ from, to, spells }) => [from, to, spells.map(({ why }) => why)])).toEqual([
      ['2027-08-01', '2027-08-04', ['too-hot']],
      ['2027-08-15', '2027-08-19', []],
      ['2027-08-29', '2027-08-31', ['too-slow']],
    ]);
    expect(closedAt(season, '2027-08-10')).toBeNull();
    expect(closedAt(season, '2027-08-02')).toEqual({ why: 'too-hot' });
    expect(closedAt(season, '2027-08-16')).toEqual({ why: null });
  });

  test('a season that is open all through has no gap', () => {
    expect(gapsOf(madeSeason('2027-08-01', 10, { windows: [['2027-08-01', '2027-08-10']], closed: [] }))).toEqual([]);
  });
});
