import type { Milestone } from '../../../src/answers/forecast/milestones.js';
import type { SpellAnswer } from '../../../src/answers/forecast/remedies/spell-answers.js';
import { addDays } from '../../../src/basics/calendar.js';
import { type Basis, basisCode } from '../../../src/basics/series.js';
import type { SowingNow } from '../../../src/garden/sowing/known-now.js';
import { crops } from '../../../src/germination/crops.js';
import { date } from '../../storage/make.js';

/** When a share is up, give or take two days. */
export const milestone = (on: string): Milestone => ({
  date: date(on),
  days: 10,
  range: { from: addDays(date(on), -2), to: addDays(date(on), 2) },
  inBeds: { from: date(on), to: date(on) },
});

export const hotSpell = (from: string, to: string, severity: 'mild' | 'severe' = 'mild'): SpellAnswer => ({
  from: date(from),
  to: date(to),
  days: 2,
  hours: 9,
  peakC: 33.33,
  thresholdC: 29.5,
  severity,
  delayDays: null,
  standAtRisk: 12,
  hoursInFirstDay: 4,
  freeDate: null,
  lookedTo: date(to),
  remedies: [],
});

/** Five mild weeks by the hour from 3 May on; in each spell from nine to five it is as hot as its peak. By their days, hours are forecast unless said otherwise. */
export const hoursWith = (spells: readonly SpellAnswer[], basisOf: (day: number) => Basis = () => 'forecast') => {
  const hours = Array.from({ length: 35 * 24 }, (_, hour) => ({ day: Math.floor(hour / 24), ofDay: hour % 24 }));
  const peakOn = (day: number) =>
    spells.find(({ from, to }) => {
      const on = addDays(date('2027-05-03'), day);
      return from <= on && on <= to;
    })?.peakC ?? 18;
  return {
    startMs: 0,
    atDay: Float64Array.from(hours, ({ day, ofDay }) => day + (ofDay + 0.5) / 24),
    tempC: Float64Array.from(hours, ({ day, ofDay }) => (ofDay >= 9 && ofDay < 17 ? peakOn(day) : 18)),
    basis: Uint8Array.from(hours, ({ day }) => basisCode(basisOf(day))),
  };
};

/** Beans sown at Quillmere on 3 May, which come up around the 12th, as known on the day of sowing. */
export const sowingNow = (
  changes: Partial<Omit<SowingNow, 'forecast' | 'sowing'>> & {
    readonly forecast?: Partial<SowingNow['forecast']> | null;
    readonly sowing?: Partial<SowingNow['sowing']>;
  } = {},
): SowingNow => ({
  crop: crops.get('snap-bean')!,
  today: date('2027-05-03'),
  plantOut: null,
  comingMinC: [],
  triage: null,
  ...changes,
  sowing: { id: 'beans', bed: 'north', date: date('2027-05-03'), method: 'direct', ...changes.sowing },
  forecast:
    changes.forecast === null
      ? null
      : {
          emergence: { first: milestone('2027-05-12'), half: milestone('2027-05-14'), most: milestone('2027-05-17') },
          hotSpells: [],
          hours: hoursWith(changes.forecast?.hotSpells ?? []),
          ...changes.forecast,
        },
});
