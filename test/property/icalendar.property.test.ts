import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type PlainDate } from '../../src/basics/calendar.js';
import { calendarEventKinds } from '../../src/garden/calendar/calendar-event.js';
import { type DatedEvent, icalendar } from '../../src/garden/calendar/icalendar.js';
import { calendarFaults } from '../unit/garden/calendar-faults.js';
import { eventsIn, propertiesOf } from '../unit/garden/read-calendar.js';

/** Any text of Unicode, with much of what calendars treat apart: \ ; , : " and ends of lines. */
const anyText = fc
  .array(
    fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('\\', ';', ',', ':', '"', '\n', '\\n', '\t', ' ', 'é', '🌱'),
    ),
  )
  .map((parts) => parts.join(''));

/** What of a text must come through: all but control characters, and ends of lines as \n. */
const asRead = (text: string): string =>
  [...text.replaceAll(/\r\n|\r/g, '\n')]
    .filter((one) => one === '\n' || one === '\t' || (one >= ' ' && one !== '\x7f'))
    .join('');

const anyEvent: fc.Arbitrary<DatedEvent> = fc
  .record({
    uid: fc.stringMatching(/^[a-z0-9.-]{1,150}$/).map((id) => `${id}@germination-forecaster`),
    kind: fc.constantFrom(...calendarEventKinds),
    startDay: fc.nat(80_000),
    days: fc.integer({ min: 1, max: 400 }),
    summary: anyText,
    description: anyText,
    sequence: fc.nat(),
    changedAtMs: fc.integer({ min: 0, max: Date.parse('2199-12-31T00:00Z') }),
  })
  .map(({ startDay, days, ...event }) => {
    const from = addDays('1950-01-01' as PlainDate, startDay);
    return { ...event, from, to: addDays(from, days - 1) };
  });

const dashed = (basic: string): string => `${basic.slice(0, 4)}-${basic.slice(4, 6)}-${basic.slice(6)}`;

describe('a calendar', () => {
  it('says what went into it, whatever text of Unicode that is', () => {
    fc.assert(
      fc.property(anyText, fc.array(anyEvent, { maxLength: 5 }), (name, events) => {
        const text = icalendar(name, events, 'de');
        expect(propertiesOf(text).find((property) => property.name === 'NAME')!.value).toBe(asRead(name));
        const read = eventsIn(text).map((event) => ({
          uid: event.UID,
          kind: event.CATEGORIES,
          from: dashed(event.DTSTART!),
          to: addDays(dashed(event.DTEND!) as PlainDate, -1),
          summary: event.SUMMARY,
          description: event.DESCRIPTION,
          sequence: Number(event.SEQUENCE),
        }));
        const wanted = events.map(({ changedAtMs: _, ...event }) => ({
          ...event,
          summary: asRead(event.summary),
          description: asRead(event.description),
        }));
        expect(read).toEqual(wanted);
      }),
    );
  });

  it('has no line over 75 octets, none that parts a character, and no end of line but CRLF', () => {
    fc.assert(
      fc.property(anyText, fc.array(anyEvent, { maxLength: 3 }), (name, events) => {
        const bytes = Buffer.from(icalendar(name, events, 'de'));
        const lines = bytes.toString('latin1').split('\r\n');
        expect(lines.pop()).toBe('');
        for (const line of lines) {
          expect(line.length).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/[\r\n]/);
          new TextDecoder('utf-8', { fatal: true }).decode(Buffer.from(line, 'latin1'));
        }
      }),
    );
  });

  it('breaks no rule of the standard', () => {
    fc.assert(
      fc.property(anyText, fc.uniqueArray(anyEvent, { maxLength: 4, selector: ({ uid }) => uid }), (name, events) => {
        expect(calendarFaults(icalendar(name, events, 'de'))).toEqual([]);
      }),
    );
  });

  it('is the same text for the same events', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 3 }), (events) => {
        expect(icalendar('x', structuredClone(events), 'de')).toBe(icalendar('x', events, 'de'));
      }),
    );
  });
});
