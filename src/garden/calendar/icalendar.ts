import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Say } from '../../basics/fact.js';
import type { CalendarEvent } from './calendar-event.js';

/** An event in words, how often it has changed, and when it did last [ms]. */
export interface DatedEvent extends Omit<CalendarEvent, 'summary' | 'description'> {
  readonly summary: string;
  readonly description: string;
  readonly sequence: number;
  readonly changedAtMs: number;
}

/** An event in a reader's words. */
export const eventInWords = ({ summary, description, ...event }: CalendarEvent, say: Say) => ({
  ...event,
  summary: say(summary),
  description: description.map(say).join('\n'),
});

const LINE_OCTETS = 75;
const REFRESH = 'PT6H';

/**
 * Events as a calendar's text (RFC 5545, with NAME and REFRESH-INTERVAL of RFC 7986).
 *
 * Events last whole days, without a time zone: they are the place's dates, wherever the calendar is read. The day on which
 * one ends is written as the day after it, as the standard asks. The same events give the same text.
 *
 * @param name     What the calendar is called; any text.
 * @param events   Under uids that are each its own.
 * @param language Of their words, as a tag of BCP 47 (3.2.10): a program that reads aloud or translates needs it.
 */
export function icalendar(name: string, events: readonly DatedEvent[], language: string): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//germination-forecaster//calendar//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${escaped(name)}`,
    // Before RFC 7986 calendars had no name, and most that read them know this one.
    `X-WR-CALNAME:${escaped(name)}`,
    `REFRESH-INTERVAL;VALUE=DURATION:${REFRESH}`,
    ...(events.length === 0 ? noEvent : events.flatMap((event) => eventLines(event, language))),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

/** A calendar must hold something (3.6): where there is no event, the zone that nothing depends on. */
const noEvent: readonly string[] = [
  'BEGIN:VTIMEZONE',
  'TZID:UTC',
  'BEGIN:STANDARD',
  'DTSTART:19700101T000000',
  'TZOFFSETFROM:+0000',
  'TZOFFSETTO:+0000',
  'END:STANDARD',
  'END:VTIMEZONE',
];

const eventLines = (
  { uid, kind, from, to, summary, description, sequence, changedAtMs }: DatedEvent,
  language: string,
): string[] => [
  'BEGIN:VEVENT',
  `UID:${escaped(uid)}`,
  `DTSTAMP:${utcStamp(changedAtMs)}`,
  `LAST-MODIFIED:${utcStamp(changedAtMs)}`,
  `SEQUENCE:${sequence}`,
  `DTSTART;VALUE=DATE:${basicDate(from)}`,
  `DTEND;VALUE=DATE:${basicDate(addDays(to, 1))}`,
  `SUMMARY;LANGUAGE=${language}:${escaped(summary)}`,
  `DESCRIPTION;LANGUAGE=${language}:${escaped(description)}`,
  `CATEGORIES:${escaped(kind)}`,
  // It takes nobody's time.
  'TRANSP:TRANSPARENT',
  'END:VEVENT',
];

const basicDate = (date: PlainDate): string => date.replaceAll('-', '');

const utcStamp = (ms: number): string => `${new Date(ms).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;

/** Text as a value (3.3.11): line ends as \n, other control characters, which are not allowed, left out. */
const escaped = (text: string): string =>
  text
    .replaceAll(/[\\;,]/g, '\\$&')
    .replaceAll(/\r\n|\r|\n/g, '\\n')
    .replaceAll(/[^\P{Cc}\t\u0080-\u009f]/gu, '');

const encoder = new TextEncoder();

/** A line in pieces of at most 75 octets (3.1), none of which ends within a character. */
function folded(line: string): string {
  let text = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > LINE_OCTETS) {
      text += '\r\n ';
      octets = 1;
    }
    text += character;
    octets += size;
  }
  return text;
}
