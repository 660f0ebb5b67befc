import type { FactKinds, FactOf } from '../basics/fact.js';

const bed = { bed: 'text?' } as const;
/** Dates and temperatures are passed as text: a picture shortens them and uses the unit of its axes. */
const range = { range: ['day', 'span', 'open'], from: 'text?', to: 'text?' } as const;
const whyNone = ['not-by-count-day', 'not-at-this-temperature'] as const;
const event = ['first', 'half', 'most'] as const;

/** Texts of pictures: labels, and sentences for readers who cannot see them. */
export const pictureFacts = {
  'picture.sown': { crop: 'crop', on: 'text', ...bed },
  'picture.half-up': {
    tense: ['is', 'was'],
    on: 'text',
    ...range,
    fromSeedlings: 'count',
    toSeedlings: 'count',
    seeds: 'count?',
  },
  'picture.none-up': { reason: whyNone, by: 'text' },
  'picture.event': { event, on: 'text', ...range, slowTo: 'text?' },
  'picture.no-event': { event, reason: whyNone, by: 'text' },
  'picture.spell': { kind: ['hot', 'cold'], dates: 'text', peak: 'text' },
  'picture.part': { part: ['measured', 'modelled', 'expected'], dates: 'text?' },
  'picture.temperature': { from: 'text', to: 'text' },
  'picture.no-temperature': {},
  'picture.likes': { from: 'text', to: 'text' },
  'picture.at-seed': { depthCm: 'cm', from: 'text?', to: 'text?' },
  'picture.today': { on: 'text' },
  'picture.count': { on: 'text' },
  'picture.day': { day: ['sown', 'today', 'count', 'best'], on: 'text' },
  'picture.seedlings-up': { fromSeedlings: 'count', toSeedlings: 'count' },
  'picture.when-to-sow': { crop: 'crop', ...bed },
  'picture.season': { dates: 'text', bestDate: 'date?' },
  'picture.no-season': {},
  'picture.odds': { years: 'count', surenessPercent: 'count' },
  'picture.open': { dates: 'text?' },
  'picture.closed': { reason: ['too-cold', 'too-hot', 'too-slow', 'too-late', 'frost-to-come'], dates: 'text?' },
  'picture.closed-dates': { reason: ['too-cold', 'too-hot', 'too-slow', 'too-late', 'frost-to-come'], dates: 'text' },
  'picture.more': { more: 'count' },
  'picture.best': {},
  'picture.lane': { name: 'text', dates: 'text?', bestDate: 'date?' },
  'picture.crop': { crop: 'crop', latinName: 'text?' },
  'picture.curve': { from: 'text?', to: 'text?', fastest: 'text?', days: 'number?' },
  'picture.days-to-half': {},
  'picture.seedlings': {},
  'picture.value-at': { value: 'number', at: 'text' },
  'picture.days-at': { values: 'text' },
  'picture.seedlings-at': { values: 'text' },
  'picture.cell': { cell: ['timed', 'none-came', 'not-tested'], at: 'text?' },
  'picture.limit': { limit: ['minimum', 'maximum', 'heat'], at: 'text' },
} as const satisfies FactKinds;

export type PictureFact = FactOf<typeof pictureFacts>;

/** Words a fact in the reader's language. */
export type SayPicture = (fact: PictureFact) => string;
