import { type FactKinds, factsOf } from '../../basics/fact.js';
import { quotaNames } from '../../garden/store/quotas.js';

const KINDS = ['place', 'bed', 'lot', 'sowing', 'subscription', 'plan', 'session'] as const;

/** Refusals of a request for reasons other than its content. `….field`: the message about the field at fault. */
export const requestRefusalFacts = {
  'foreign-origin': {},
  'not-json.empty': {},
  'not-json.broken': { line: 'number', character: 'number' },
  'not-understood.many-fields': { maxFields: 'number' },
  'not-understood.many-values': { maxValues: 'number' },
  'not-understood.deep': { maxDepth: 'number' },
  'too-slow': {},
  'too-slow.still': { seconds: 'count' },
  'bad-request': { reason: 'text' },
  'bad-request.address': {},
  'bad-request.broken-off': {},
  'bad-request.headers': {},
  'bad-request.no-http': {},
  'bad-request.two-hosts': {},
  'bad-request.no-host': {},
  'not-found.address': { path: 'text' },
  'method-not-allowed': { path: 'text', methods: 'anyOf', method: 'text' },
  'unsupported-coding': { coding: 'text' },
  'unsupported-media-type': {},
  'unsupported-media-type.file': {},
  'not-acceptable': { mediaTypes: 'anyOf', accept: 'text' },
  'key-in-address': {},
  misdirected: { host: 'text' },
  unauthorized: {},
  'unauthorized.unknown-key': {},
  'unauthorized.session': {},
  'too-many-requests': { perMinute: 'number', policy: ['requests', 'work'], waitS: 'count' },
  'too-much-at-once': { atOnce: 'number' },
  'too-large': {},
  'too-large.file': {},
  stopping: {},
  'busy.asker-gone': {},
  internal: {},
  'storage-unavailable': {},
  'storage-full': {},
  'storage-damaged': {},
  'quota-full': { quota: quotaNames, limit: 'number', used: 'number' },
} as const satisfies FactKinds;

/** Refusals of a request about a resource. */
export const keptRefusalFacts = {
  'not-found.kept': { kind: KINDS, id: 'text' },
  'not-found.put-first': { kind: KINDS, id: 'text' },
  'not-found.count': { id: 'text' },
  'not-found.crop': { id: 'text' },
  'not-found.calendar': {},
  'not-found.problem': { name: 'text' },
  'not-found.readings': { bed: 'text' },
  'not-found.of-place': { what: 'text', place: 'text' },
  'unknown-place': { id: 'text' },
  'unknown-place.question': { id: 'text' },
  'unknown-place.field': {},
  'unknown-bed': { id: 'text' },
  'unknown-bed.question': { id: 'text' },
  'unknown-bed.field': {},
  'unknown-lot': { id: 'text' },
  'unknown-lot.question': { id: 'text' },
  'unknown-lot.field': {},
  'unknown-crop.listed': { id: 'text' },
  'not-understood.lot-of-other-crop': { lot: 'text', lotCrop: 'crop', crop: 'crop' },
  'not-understood.lot-of-other-crop.field': { lotCrop: 'crop' },
  'time-zone-needed.question': {},
  'time-zone-needed.question.field': {},
  'no-latitude.drift': {},
  'no-latitude.drift.field': {},
  'too-few-readings.air': {},
  'has-beds': { place: 'text' },
  'has-sowings': { bed: 'text' },
  'has-sowings.lot': { lot: 'text' },
  'too-many-seeds': { maxSeeds: 'number', plants: 'count', sureness: 'number' },
  'precondition-failed.unquoted': { tag: 'text' },
  'precondition-failed.changed': {},
  'precondition-failed.nothing-kept': {},
  'precondition-failed.something-kept': {},
  'kept-in-part': {},
  'unknown-preset': { preset: 'text' },
  'unknown-preset.field': {},
  'contact-needed': { publisher: 'text' },
  'contact-needed.field': {},
  'private-address': { host: 'text' },
  'private-address.field': { host: 'text' },
  'no-source': { place: 'text', why: ['none', 'off', 'presets'] },
  'too-soon': { minutes: 'number', waitS: 'count' },
} as const satisfies FactKinds;

/** Notes to the owner about stored data. */
export const keptNoteFacts = { 'incomplete-days': { days: 'count' } } as const satisfies FactKinds;

export const keptNote = factsOf(keptNoteFacts);
export const requestRefusal = factsOf(requestRefusalFacts);
export const keptRefusal = factsOf(keptRefusalFacts);
