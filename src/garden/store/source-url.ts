import type { PlainDate } from '../../basics/calendar.js';

/** What the placeholders of a source's address stand for. */
export interface UrlValues {
  readonly latitude: number;
  readonly longitude: number;
  /** The first and the last date at the place that are asked for. */
  readonly from: PlainDate;
  readonly to: PlainDate;
}

const compact = (date: PlainDate): string => date.replaceAll('-', '');

const placeholders: Readonly<Record<string, (values: UrlValues) => string>> = {
  latitude: ({ latitude }) => String(latitude),
  longitude: ({ longitude }) => String(longitude),
  from: ({ from }) => from,
  to: ({ to }) => to,
  fromCompact: ({ from }) => compact(from),
  toCompact: ({ to }) => compact(to),
};

const PLACEHOLDER = /\{([^{}]*)\}/g;
const EXAMPLE: UrlValues = {
  latitude: 44,
  longitude: -30,
  from: '2027-01-01' as PlainDate,
  to: '2027-01-02' as PlainDate,
};

/** An address with its placeholders filled in; unknown ones stay as they are. */
export const fillUrl = (template: string, values: UrlValues): string =>
  template.replaceAll(PLACEHOLDER, (text, name: string) =>
    Object.hasOwn(placeholders, name) ? placeholders[name]!(values) : text,
  );

/** What is wrong with a source's address, to go on from the name of its field; null where nothing is. */
export function sourceUrlFault(template: string): string | null {
  const unknown = [...template.matchAll(PLACEHOLDER)].find(([, name]) => !Object.hasOwn(placeholders, name!));
  if (unknown) {
    const known = Object.keys(placeholders).map((name) => `{${name}}`);
    return `has the placeholder ${unknown[0]}; known are ${known.join(', ')}`;
  }
  const filled = fillUrl(template, EXAMPLE);
  const fault = addressFault(filled);
  if (fault !== null) return fault;
  const elsewhere = fillUrl(template, { latitude: -1, longitude: 1, from: EXAMPLE.to, to: EXAMPLE.from });
  if (!URL.canParse(elsewhere) || new URL(elsewhere).host !== new URL(filled).host) {
    return 'must not have a placeholder in the name of the host';
  }
  return null;
}

/** The same of an address that has no placeholders. */
export function addressFault(address: string): string | null {
  if (!URL.canParse(address)) return 'must be a whole address, such as https://weather.example/days.csv';
  const { protocol, username, password } = new URL(address);
  if (protocol !== 'https:' && protocol !== 'http:') return 'must begin with https:// or http://';
  if (username || password) return 'must not hold a user name or password';
  return null;
}
