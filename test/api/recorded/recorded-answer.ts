import type { LightMyRequestResponse } from 'fastify';

/** What is held of an answer: how it ended, of which kind it is, and what it says apart from words. */
export interface RecordedAnswer {
  readonly status: number;
  readonly type: string;
  readonly body?: unknown;
}

/** Sentences, and what says nothing of the answer: ids of requests, tokens and secrets, times, revisions, the model's name and sources. */
const LEFT_OUT = new Set([
  ...['text', 'detail', 'title', 'reads', 'consequence', 'description', 'summary'],
  ...['instance', 'issuedAt', 'calendarUrl', 'secret', 'revision', 'model'],
]);
/** Codes in some answers, and sentences in others. */
const MAY_BE_SENTENCES = new Set(['why', 'source']);

const isWords = (key: string, value: unknown): boolean =>
  LEFT_OUT.has(key) || (MAY_BE_SENTENCES.has(key) && typeof value === 'string' && !/^[a-z]+(-[a-z]+)*$/.test(value));

function withoutWords(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutWords);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, one]) => (isWords(key, one) ? [] : [[key, withoutWords(one)]])),
  );
}

/** The lines of a calendar (RFC 5545), unfolded, without those that are words; a UID without its random part. */
const calendarLines = (body: string): string[] =>
  body
    .replaceAll(/\r\n[ \t]/g, '')
    .trimEnd()
    .split('\r\n')
    .filter((line) => !/^(SUMMARY|DESCRIPTION|NAME|X-WR-CALNAME|X-WR-CALDESC|COMMENT)[;:]/.test(line));

/** What is held of a response. Of pictures, pages and plain text only the kind is. */
export function recordedOf({ statusCode, headers, body }: LightMyRequestResponse): RecordedAnswer {
  const type = String(headers['content-type'] ?? '').split(';', 1)[0]!;
  const known = { status: statusCode, type };
  if (type === 'application/json' || type === 'application/problem+json') {
    return { ...known, body: withoutWords(JSON.parse(body)) };
  }
  return type === 'text/calendar' ? { ...known, body: calendarLines(body) } : known;
}

/** How far numbers may lie apart, of the larger one. */
const TOLERANCE = 1e-9;

const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= TOLERANCE * Math.max(Math.abs(a), Math.abs(b));

/** Where an answer lacks what was recorded, or says something else, as JSON pointers; members that are new are no difference. */
export function differences(recorded: unknown, now: unknown, at = ''): string[] {
  if (typeof recorded === 'number' && typeof now === 'number' && isNear(recorded, now)) return [];
  if (Array.isArray(recorded) && Array.isArray(now)) {
    const lengths = recorded.length === now.length ? [] : [`${at}: ${recorded.length} entries are ${now.length} now`];
    return [...lengths, ...recorded.flatMap((one, i) => (i in now ? differences(one, now[i], `${at}/${i}`) : []))];
  }
  if (isRecord(recorded) && isRecord(now)) {
    return Object.entries(recorded).flatMap(([key, one]) =>
      Object.hasOwn(now, key) ? differences(one, now[key], `${at}/${key}`) : [`${at}/${key} is gone`],
    );
  }
  return Object.is(recorded, now) ? [] : [`${at}: ${short(recorded)} is ${short(now)} now`];
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const short = (value: unknown): string => (JSON.stringify(value) ?? 'nothing').slice(0, 80);
