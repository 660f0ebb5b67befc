import type { Forecast } from '../../../src/answers/forecast/forecast.js';
import type { Milestone } from '../../../src/answers/forecast/milestones.js';
import type { SpellAnswer } from '../../../src/answers/forecast/remedies/spell-answers.js';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import type {
  BedSeason,
  GrowingPlan,
  GrowingSowing,
  SowingToMake,
} from '../../../src/garden/calendar/calendar-season.js';
import type { Plan, Sowing } from '../../../src/garden/store/season-store.js';
import type { Bed } from '../../../src/garden/store/store.js';
import { cropCalled } from '../germination/make.js';

export const on = (date: string): PlainDate => date as PlainDate;

export const northBed: Bed = {
  id: 'north',
  revision: 1,
  fieldsRevision: 1,
  place: 'quillmere',
  name: 'North bed',
  kind: 'open-ground',
  cover: 'bare',
  moisture: 'rain',
  shadePercent: 0,
  roomC: null,
  calendarToken: null,
};

/** A season of the north bed in which nothing happens but what is named. */
export const seasonOf = (season: Partial<BedSeason> = {}): BedSeason => ({
  bed: northBed,
  sowings: [],
  plans: [],
  comingMinC: [],
  ...season,
});

export const sowingOf = (fields: Partial<Sowing> = {}): Sowing => ({
  id: 'lettuce-1',
  revision: 2,
  bed: 'north',
  crop: 'lettuce',
  date: on('2027-05-03'),
  time: '12:00',
  depthCm: null,
  seeds: 200,
  lot: null,
  method: 'direct',
  roomC: null,
  ...fields,
});

/** A sowing that nothing is known of but what is named. */
export function growing({ sowing = sowingOf(), ...known }: Partial<GrowingSowing> = {}): GrowingSowing {
  const crop = cropCalled(typeof sowing.crop === 'string' ? sowing.crop : 'lettuce');
  return {
    sowing,
    crop,
    forecast: null,
    indoors: null,
    harvest: null,
    isSparse: false,
    resowBy: null,
    sowAgain: null,
    ...known,
  };
}

const milestone = (date: PlainDate, sown: PlainDate): Milestone => ({
  date,
  days: daysBetween(sown, date),
  range: { from: addDays(date, -2), to: addDays(date, 2) },
  inBeds: { from: date, to: addDays(date, 3) },
});

/** A forecast of a sowing that comes up as many days after it. */
export function forecastOf(
  sown: PlainDate,
  days: { readonly first: number; readonly half: number; readonly most: number } = { first: 6, half: 8, most: 11 },
  known: Partial<Forecast> = {},
): Forecast {
  const after = (n: number): Milestone => milestone(addDays(sown, n), sown);
  return {
    crop: cropCalled('lettuce'),
    sowing: { date: sown, time: '12:00', depthCm: 1.3, seeds: 200 },
    countDays: 21,
    emergence: { first: after(days.first), half: after(days.half), most: after(days.most) },
    stand: {
      by: addDays(sown, 21),
      laboratory: 90,
      ifHeldAreLost: 88,
      field: { from: 17.6, to: 60.3 },
      seedlings: { from: 35, to: 121 },
    },
    chart: { meanC: 15, days: 4, percent: 98 },
    risks: [],
    hours: null,
    hotSpells: [],
    coldSpells: null,
    dateVerdict: null,
    harvest: null,
    keepMoist: { from: sown, to: addDays(sown, days.most + 3) },
    daily: [],
    understood: [],
    assumptions: [],
    warnings: [],
    ...known,
  };
}

export const spellOf = (from: string, to: string, fields: Partial<SpellAnswer> = {}): SpellAnswer => ({
  from: on(from),
  to: on(to),
  days: 2,
  hours: 14,
  peakC: 33.4,
  thresholdC: 27.2,
  severity: 'mild',
  delayDays: null,
  standAtRisk: 10,
  hoursInFirstDay: 6,
  freeDate: null,
  lookedTo: on(to),
  remedies: [
    {
      action: 'shade',
      text: { code: 'action.shade', params: { coolerK: 3, coolerFromK: 2, coolerToK: 5 } },
    },
  ],
  ...fields,
});

export const plannedOf = (date: string, fields: Partial<SowingToMake> = {}): SowingToMake => ({
  turn: 0,
  date: on(date),
  seeds: 60,
  method: 'direct',
  half: { date: addDays(on(date), 8), range: null },
  indoors: null,
  harvest: { from: addDays(on(date), 60), to: addDays(on(date), 75) },
  ...fields,
});

const plan: Plan = {
  id: 'salad',
  revision: 3,
  bed: 'north',
  crop: 'lettuce',
  harvest: { from: on('2027-07-01'), to: on('2027-08-31'), perWeek: 6 },
};

export const planOf = (...sowings: readonly SowingToMake[]): GrowingPlan => ({
  plan,
  crop: cropCalled('lettuce'),
  sowings: sowings.map((one, turn) => ({ ...one, turn })),
});
