import { describe, expect, it } from 'vitest';
import type { ForecastDay } from '../../../src/answers/forecast/forecast-days.js';
import { addDays } from '../../../src/basics/calendar.js';
import { type BareRow, checksFor } from '../../../src/garden/sowing/check-for.js';
import { cropCalled } from '../germination/make.js';
import { hotSpell } from './known.js';
import { on } from './seasons.js';

const sown = on('2027-05-03');
const dayOf = (n: number, mean: number, hotHours = 0): ForecastDay => ({
  date: addDays(sown, n),
  min: mean,
  mean,
  max: mean,
  basis: 'modelled',
  emergedPercent: 0,
  hotHours,
});

/** Carrots of which nothing came, in a bed that is kept moist, of good seed. */
const row = (changes: Partial<BareRow> = {}) =>
  checksFor({
    crop: cropCalled('carrot'),
    bed: { kind: 'open-ground', cover: 'mulch', moisture: 'wet' },
    sowing: { date: sown, time: '12:00', depthCm: 0.6, seeds: 200 },
    today: addDays(sown, 20),
    daily: Array.from({ length: 30 }, (_, n) => dayOf(n, 18)),
    hotSpells: [],
    coldSpells: null,
    hotThresholdC: 30,
    seed: { isOld: false, germinationPercent: 90 },
    eatenSince: null,
    dateOdds: 0.9,
    ...changes,
  }).map(({ code, likely }) => `${likely ? 'likely ' : ''}${code}`);

describe('why nothing came up', () => {
  it('is hardly known where all is well: something may have eaten it', () => {
    expect(row()).toEqual(['eaten']);
    expect(row({ bed: { kind: 'indoors', cover: 'bare', moisture: 'wet' } })).toEqual([]);
  });

  it('by water: likely dry under rain alone, not ruled out where somebody waters', () => {
    const of = (moisture: 'rain' | 'moist' | 'dry') => row({ bed: { kind: 'open-ground', cover: 'mulch', moisture } });
    expect(of('rain')).toContain('likely dry');
    expect(of('dry')).toContain('likely dry');
    expect(of('moist')).toContain('dry');
  });

  it('by a crust on bare ground, likely under seedlings that cannot lift it', () => {
    const bare = { kind: 'raised-bed', cover: 'bare', moisture: 'wet' } as const;
    expect(row({ bed: bare })).toContain('likely crust');
    expect(row({ bed: bare, crop: cropCalled('pea') })).toContain('crust');
    expect(row({ bed: { ...bare, kind: 'pot' } })).not.toContain('likely crust');
  });

  it('by depth, likely from more than twice the usual on', () => {
    const usual = cropCalled('carrot').sowingDepthCm!;
    const at = (depthCm: number) => row({ sowing: { date: sown, time: '12:00', depthCm, seeds: 200 } });
    expect(at(usual)).not.toContain('too-deep');
    expect(at(2 * usual)).toContain('too-deep');
    expect(at(2.1 * usual)).toContain('likely too-deep');
  });

  it('by seed that is old or poor, and to be asked where nobody knows', () => {
    expect(row({ seed: { isOld: true, germinationPercent: null } })).toContain('likely old-seed');
    expect(row({ seed: { isOld: false, germinationPercent: 29 } })).toContain('likely old-seed');
    expect(row({ seed: { isOld: false, germinationPercent: 30 } })).not.toContain('likely old-seed');
    expect(row({ seed: null })).toContain('old-seed');
  });

  it('by heat up to today, from six hours on, likely where it held the seed without relief', () => {
    const daily = (hours: number, n = 5) => Array.from({ length: 30 }, (_, i) => dayOf(i, 18, i === n ? hours : 0));
    expect(row({ daily: daily(5) })).not.toContain('heat');
    expect(row({ daily: daily(6) })).toContain('heat');
    expect(row({ daily: daily(12, 25) })).not.toContain('heat');
    const severe = hotSpell('2027-05-08', '2027-05-09', 'severe');
    expect(row({ daily: daily(12), hotSpells: [severe] })).toContain('likely heat');
    expect(row({ daily: daily(12), hotSpells: [hotSpell('2027-05-08', '2027-05-09')] })).toContain('heat');
  });

  it('by soil below what the crop comes up in', () => {
    const { minimumC } = cropCalled('carrot').soil!;
    const at = (meanC: number) => row({ daily: Array.from({ length: 30 }, (_, n) => dayOf(n, meanC)) });
    expect(at(minimumC - 0.1)).toContain('likely cold');
    expect(at(minimumC + 0.1)).not.toContain('likely cold');
    // A mild spell harms the seed as it drinks; later it is only to be looked for.
    const inFirstDay = hotSpell('2027-05-04', '2027-05-05');
    expect(row({ coldSpells: [inFirstDay] })).toContain('likely cold');
    const later = { ...inFirstDay, hoursInFirstDay: 0 };
    expect(row({ coldSpells: [later] })).toContain('cold');
    expect(row({ coldSpells: [{ ...later, severity: 'severe' }] })).toContain('likely cold');
    expect(row({ coldSpells: [{ ...later, from: on('2027-06-04') }] })).not.toContain('cold');
  });

  it('by a date that was good in fewer than half of the years', () => {
    expect(row({ dateOdds: 0.49 })).toContain('likely wrong-date');
    expect(row({ dateOdds: 0.5 })).not.toContain('likely wrong-date');
    expect(row({ dateOdds: null })).not.toContain('likely wrong-date');
  });

  it('by what took the seedlings that were counted before; what is likely comes first', () => {
    const eatenSince = { date: on('2027-05-14'), seedlings: 80 };
    expect(row({ eatenSince, seed: null })).toEqual(['likely eaten', 'old-seed']);
  });
});
