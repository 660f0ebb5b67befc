import type { PlainDate } from '../../basics/calendar.js';
import type { Fact } from '../../basics/fact.js';
import { fieldFact } from '../../basics/field-facts.js';

/** Meaning of the placeholders in a source's address. */
export interface UrlValues {
  readonly latitude: number;
  readonly longitude: number;
  /** The first and the last date at the place that are asked for. */
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** An IANA name. */
  readonly timeZone: string;
}

const compact = (date: PlainDate): string => date.replaceAll('-', '');

const placeholders: Readonly<Record<string, (values: UrlValues) => string>> = {
  latitude: ({ latitude }) => String(latitude),
  longitude: ({ longitude }) => String(longitude),
  from: ({ from }) => from,
  to: ({ to }) => to,
  fromCompact: ({ from }) => compact(from),
  toCompact: ({ to }) => compact(to),
  timeZone: ({ timeZone }) => encodeURIComponent(timeZone),
};

const PLACEHOLDER = /\{([^{}]*)\}/g;
const EXAMPLE: UrlValues = {
  latitude: 44,
  longitude: -30,
  from: '2027-01-01' as PlainDate,
  to: '2027-01-02' as PlainDate,
  timeZone: 'Etc/GMT+2',
};

/** An address with its placeholders filled in; unknown ones stay as they are. */
export const fillUrl = (template: string, values: UrlValues): string =>
  template.replaceAll(PLACEHOLDER, (text, name: string) =>
    Object.hasOwn(placeholders, name) ? placeholders[name]!(values) : text,
  );

/** The fault of a source's address, worded to follow the name of its field; null if there is none. */
export function sourceUrlFault(template: string): Fact | null {
  const unknown = [...template.matchAll(PLACEHOLDER)].find(([, name]) => !Object.hasOwn(placeholders, name!));
  if (unknown) {
    const known = Object.keys(placeholders).map((name) => `{${name}}`);
    return fieldFact('field.address-placeholder', { placeholder: unknown[0], placeholders: known.join(', ') });
  }
  const filled = fillUrl(template, EXAMPLE);
  const fault = addressFault(filled);
  if (fault !== null) return fault;
  const elsewhere = fillUrl(template, {
    latitude: -1,
    longitude: 1,
    from: EXAMPLE.to,
    to: EXAMPLE.from,
    timeZone: 'UTC',
  });
  if (!URL.canParse(elsewhere) || new URL(elsewhere).host !== new URL(filled).host) {
    return fieldFact('field.address-host');
  }
  return null;
}

/** The same of an address that has no placeholders. */
export function addressFault(address: string): Fact | null {
  if (!URL.canParse(address)) return fieldFact('field.address', { example: 'https://weather.example/days.csv' });
  const { protocol, username, password } = new URL(address);
  if (protocol !== 'https:' && protocol !== 'http:')
    return fieldFact('field.address-scheme', { schemes: 'https://, http://' });
  if (username || password) return fieldFact('field.address-user');
  return null;
}
