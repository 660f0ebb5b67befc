import type { FactKinds } from '../../basics/fact.js';
import { factsOf } from '../../basics/fact.js';

/** What can go wrong on the way to a host and back. */
export const connectionFaults = [
  'unaccepted',
  'unanswered',
  'silent',
  'unnamed',
  'refused',
  'broken',
  'unreachable',
  'untrusted',
  'malformed',
  'slow',
  'other',
] as const;

const connection = { fault: connectionFaults, seconds: 'number?', errorCode: 'text?' } as const;
const status = { status: 'count', reason: ['missing', 'refusing', 'troubled', 'moved', 'unknown'] } as const;

/** Why a place's source could not be asked, or its answer not be used. */
export const sourceFacts = {
  'source.format': { format: 'text' },
  'source.address': {},
  'source.redirects': { maxRedirects: 'count' },
  'source.redirect-nowhere': {},
  'source.redirect-unencrypted': {},
  'source.private': { host: 'text' },
  'source.connection': connection,
  'source.pages-slow': {},
  'source.status': status,
  'source.too-often': {},
  'source.coding': {},
  'source.damaged': {},
  'source.too-large': { megabytes: 'count' },
  'source.empty': {},
  'source.not-json': { isPage: ['yes', 'no'] },
  'source.not-form': {
    form: ['archive', 'grid', 'observations', 'datastream', 'columns', 'timeseries', 'point'],
    at: 'text?',
  },
  'source.no-air': {},
  'source.file': {},
  'source.unit': { value: 'text?', unit: 'text?' },
  'source.unit-untold': {},
  'source.no-date': { text: 'text' },
  'source.no-time': { value: 'text', text: 'text' },
  'source.no-observations': {},
  'source.other-host': {},
  'source.circle': {},
  'source.pages': { maxPages: 'count' },
  'source.mixed': {},
  'source.no-day': {},
  'source.no-room': { megabytes: 'count' },
  'source.not-kept': {},
  'source.off': { allowed: ['off', 'presets'] },
  'source.preset-unknown': { preset: 'text' },
  'source.contact': { publisher: 'text' },
  'source.not-covered': { publisher: 'text' },
} as const satisfies FactKinds;

/** Why a message could not be delivered. */
export const deliveryFacts = {
  'delivery.address': { isRedirect: ['yes', 'no'] },
  'delivery.redirects': { maxRedirects: 'count' },
  'delivery.redirect-nowhere': {},
  'delivery.redirect-scheme': { scheme: 'text' },
  'delivery.private': { host: 'text' },
  'delivery.connection': connection,
  'delivery.status': status,
  'delivery.gone': {},
  'delivery.too-often': {},
  'delivery.not-sent': {},
  'delivery.key-lost': {},
} as const satisfies FactKinds;

export const sourceFact = factsOf(sourceFacts);
export const deliveryFact = factsOf(deliveryFacts);
