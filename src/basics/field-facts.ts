import { type FactKinds, factsOf } from './fact.js';

const KINDS = ['text', 'number', 'wholeNumber', 'trueOrFalse', 'list', 'object', 'something'] as const;
export type ValueKind = (typeof KINDS)[number];

/** The value received: JSON of a single value, or the number of entries of a list; `missing` means no value. */
const sent = { was: 'text', wasKind: ['value', 'missing', 'list', 'emptyList', 'object', 'largeNumber'] } as const;

export type SentKind = (typeof sent)['wasKind'][number];

/** Faults of a field or a parameter. A text that begins in lower case continues the field's name. */
export const fieldFacts = {
  'field.unknown': {},
  'field.wrong-kind': { expected: KINDS, orExpected: [...KINDS, 'nothing'], ...sent },
  'field.at-least': { limit: 'count', of: ['number', 'entries', 'characters'], ...sent },
  'field.at-most': { limit: 'count', of: ['number', 'entries', 'characters'], ...sent },
  'field.one-of': { values: 'text', isSeveral: ['yes', 'no'], ...sent },
  'field.date': sent,
  'field.month-day': sent,
  'field.clock-time': sent,
  'field.instant': sent,
  'field.id': sent,
  'field.time-zone': sent,
  'field.plain-text': sent,
  'field.country': sent,
  'field.no-spaces': sent,
  'field.crop': sent,
  'field.air-temperature': sent,
  'field.min-above-max': { meanMaxC: 'celsius', ...sent },
  'field.once-each': {},
  'field.from-above-to': {},
  'field.before-from': { from: 'date', ...sent },
  'field.within-a-year': sent,
  'field.no-series': {},
  'field.daily-or-readings': {},
  'field.room-needed': {},
  'field.wetted-on-needed': {},
  'field.only-dry': {},
  'field.bed-beside-place': {},
  'field.place-needed': {},
  'field.place-or-bed-needed': {},
  'field.crops-needed': {},
  'field.more-than-sown': sent,
  'field.beside-test': {},
  'field.soil-not-rising': {},
  'field.rows-at-once': { atC: 'celsius' },
  'field.rows-without-days': {},
  'field.rows-without-percent': {},
  'field.unknown-parameter': { meant: 'text?' },
  'field.goes-into-body': {},
  'field.not-beside-json': {},
  'field.sent-twice': {},
  'field.bed-or-place': {},
  'field.missing-or-near': {},
  'field.contradicts': {},
  'field.path-id': {},
  'field.path-date': {},
  'field.date-needed': {},
  'field.from-needed': { firstDate: 'date', to: 'date' },
  'field.many-days': { maxDays: 'count', step: ['day', 'hour'] },
  'field.before-first': { firstDate: 'date', from: 'date' },
  'field.long-before-first': { from: 'date' },
  'field.below-container': { maxDepthCm: 'cm', kind: 'text', depthCm: 'cm' },
  'field.bed-indoors': { bed: 'text' },
  'field.before-sowing': { sowingDate: 'date' },
  'field.long-after-sowing': { maxDays: 'count', by: 'date' },
  'field.day-to-come': { todaysDate: 'date' },
  'field.to-come': sent,
  'field.of-seeds-needed': {},
  'field.many-seedlings': { seeds: 'count', counted: 'count' },
  'field.other-crops-lot': { lot: 'text', crop: 'crop' },
  'field.after-first-count': { countedOn: 'date' },
  'field.long-before-count': { maxDays: 'count', countedOn: 'date' },
  'field.fewer-than-counted': { seedlings: 'count' },
  'field.one-thermometer': { ways: 'anyOf' },
  'field.came-by-the-day': {},
  'field.bed-forecast': {},
  'field.air-forecast': {},
  'field.air-not-measured': {},
  'field.not-forecast': {},
  'field.not-air': {},
  'field.private-address': { host: 'text' },
  'field.address': { example: 'text' },
  'field.address-scheme': { schemes: 'anyOf' },
  'field.address-user': {},
  'field.address-fragment': {},
  'field.address-placeholder': { placeholder: 'text', placeholders: 'text' },
  'field.address-host': {},
} as const satisfies FactKinds;

export type FieldCode = keyof typeof fieldFacts;
export const fieldFact = factsOf(fieldFacts);

/** The parameters of a fault about a single value. */
export const wasValue = (value: string | number) => ({ was: JSON.stringify(value), wasKind: 'value' as const });
