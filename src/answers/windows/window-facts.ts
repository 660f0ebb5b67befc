import { type FactKinds, type FactOf, factsOf } from '../../basics/fact.js';
import { whyNots } from './why-nots.js';

/** What sowing windows rest on, and what should be heeded of them. */
export const windowFacts = {
  normals: { about: ['windows'] },
  'past-years': { about: ['windows'], years: 'count' },
  'typical-years': { about: ['windows'], years: 'count' },
  'good-date': {
    sharePercent: 'count',
    ifHeldPercent: 'count',
    maxDays: 'count',
    frost: ['tender', 'tender-planted-out', 'half-hardy', 'not-counted'],
    frostFreeDays: 'count',
    frostC: 'celsius',
  },
  'thin-years': { about: ['windows'], years: 'count' },
  'frost-unknown': { about: ['windows'] },
  'frost-hardy': {},
  'harvest-judged': {
    sharePercent: 'count',
    ifHeldPercent: 'count',
    standDays: 'count',
    halfDays: 'count',
    years: 'count',
  },
  'harvest-not-judged': { why: ['crop', 'air', 'indoors'] },
  'heat-ahead': { isAll: ['yes', 'no'], inYears: 'count', ofYears: 'count', thresholdC: 'celsius' },
} as const satisfies FactKinds;

/** Why a date is the best one. */
export const bestDateFacts = {
  'why.best-date': {
    isEarliest: ['yes', 'no'],
    sharePercent: 'count',
    maxDays: 'count',
    inYears: 'count',
    ofYears: 'count',
    halfDays: 'count?',
    halfFromDays: 'count?',
    halfToDays: 'count?',
  },
} as const satisfies FactKinds;

/** `dates`: the mean of the dates of a span. */
const often = { inYears: 'count', ofYears: 'count', of: ['date', 'dates'] } as const;

/** Why dates are not good. */
export const reasonFacts = {
  'reason.too-cold': { minimumC: 'celsius', meanC: 'celsius?' },
  'reason.too-hot': { thresholdC: 'celsius', ...often },
  'reason.too-slow': { maxDays: 'count', ...often },
  'reason.frost-to-come': { frostC: 'celsius', ...often },
  'reason.too-late': { endsBy: ['frost', 'cold'], on: 'date?', ...often },
  'reason.heat-at-harvest': { hotC: 'celsius', ...often },
  'reason.bolts': { dayLengthH: 'number' },
  'reason.over-winter': {},
  'reason.day-length': {},
  'reason.ground-wet': {},
} as const satisfies FactKinds;

/** What would make a date good. */
export const insteadFacts = {
  'instead.keep-wet': { from: 'date', to: 'date', grade: ['good', 'fair'], moisture: ['moist', 'wet'] },
  'instead.shade': { from: 'date', to: 'date', grade: ['good', 'fair'] },
  'instead.cover': { from: 'date', to: 'date', grade: ['good', 'fair'] },
  'instead.wait': { from: 'date', to: 'date' },
  'instead.start-indoors': {
    from: 'date',
    to: 'date',
    roomC: 'celsius',
    plantOutFromDate: 'date',
    plantOutToDate: 'date',
  },
} as const satisfies FactKinds;

/** Is it a good date? */
export const dateVerdictFacts = {
  'verdict-on-date.good': { harvestOn: 'date?' },
  'verdict-on-date.fair': { why: [...whyNots], betterOn: 'date?' },
  'verdict-on-date.poor': { why: [...whyNots], betterOn: 'date?' },
} as const satisfies FactKinds;

/** What frost dates rest on. */
export const frostFacts = {
  'frost-in-the-air': {},
  'frost-left-out': {},
} as const satisfies FactKinds;

/** Warnings about frost dates. */
export const frostWarningFacts = {
  'frost-hollow': { summer: ['north', 'south'] },
} as const satisfies FactKinds;
export const frostWarning = factsOf(frostWarningFacts);

export type WindowNote = FactOf<typeof windowFacts>;
export type ReasonFact = FactOf<typeof reasonFacts>;
export type InsteadFact = FactOf<typeof insteadFacts>;
export type DateVerdictFact = FactOf<typeof dateVerdictFacts>;
export type BestDateWhy = FactOf<typeof bestDateFacts>;
export type FrostNote = FactOf<typeof frostFacts>;
