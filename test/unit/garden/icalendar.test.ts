import { describe, expect, it } from 'vitest';
import type { PlainDate } from '../../../src/basics/calendar.js';
import { type DatedEvent, icalendar } from '../../../src/garden/calendar/icalendar.js';
import { calendarFaults } from './calendar-faults.js';
import { eventsIn, propertiesOf } from './read-calendar.js';

const eventOf = (fields: Partial<DatedEvent> = {}): DatedEvent => ({
  uid: 'sow.lettuce-1.sowing.north@germination-forecaster',
  kind: 'sow',
  from: '2027-05-03' as PlainDate,
  to: '2027-05-03' as PlainDate,
  summary: 'Sow lettuce',
  description: 'Sow 200 seeds in North bed, at 18:00.',
  sequence: 2,
  changedAtMs: Date.parse('2027-04-30T14:05:06.789Z'),
  ...fields,
});

describe('a calendar', () => {
  it('is written as the standard says', () => {
    expect(icalendar('North bed', [eventOf()], 'en')).toBe(
      [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//germination-forecaster//calendar//EN',
        'CALSCALE:GREGORIAN',
        'NAME:North bed',
        'X-WR-CALNAME:North bed',
        'REFRESH-INTERVAL;VALUE=DURATION:PT6H',
        'BEGIN:VEVENT',
        'UID:sow.lettuce-1.sowing.north@germination-forecaster',
        'DTSTAMP:20270430T140506Z',
        'LAST-MODIFIED:20270430T140506Z',
        'SEQUENCE:2',
        'DTSTART;VALUE=DATE:20270503',
        'DTEND;VALUE=DATE:20270504',
        'SUMMARY;LANGUAGE=en:Sow lettuce',
        'DESCRIPTION;LANGUAGE=en:Sow 200 seeds in North bed\\, at 18:00.',
        'CATEGORIES:sow',
        'TRANSP:TRANSPARENT',
        'END:VEVENT',
        'END:VCALENDAR',
        '',
      ].join('\r\n'),
    );
  });

  // RFC 5545, 3.3.11: the example of a text value.
  it('escapes text as the example of the standard does', () => {
    const description = 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.';
    const text = icalendar('x', [eventOf({ description })], 'en');
    expect(text.replaceAll('\r\n ', '')).toContain(
      'DESCRIPTION;LANGUAGE=en:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.\r\n',
    );
  });

  it('ends an event of several days on the day after, over the end of a month and of a year too', () => {
    const [event] = eventsIn(
      icalendar('x', [eventOf({ from: '2027-12-30' as PlainDate, to: '2027-12-31' as PlainDate })], 'en'),
    );
    expect([event!.DTSTART, event!.DTEND]).toEqual(['20271230', '20280101']);
  });

  it('leaves out control characters, which must not stand in a text, and tells every way to end a line alike', () => {
    const [event] = eventsIn(
      icalendar('x', [eventOf({ summary: 'a\u0000b\u001b\u007fc', description: '1\r\n2\r3\n4\t5' })], 'en'),
    );
    expect([event!.SUMMARY, event!.DESCRIPTION]).toEqual(['abc', '1\n2\n3\n4\t5']);
  });

  it('does not part a character where a line is folded', () => {
    for (const letter of ['ü', '種', '🌱']) {
      for (let shift = 0; shift < 5; shift++) {
        const summary = 'x'.repeat(shift) + letter.repeat(60);
        expect(eventsIn(icalendar('x', [eventOf({ summary })], 'en'))[0]!.SUMMARY).toBe(summary);
      }
    }
  });

  it('that is broken is found out, whichever rule it breaks', () => {
    const whole = icalendar('x', [eventOf()], 'en');
    expect(calendarFaults(whole)).toEqual([]);
    for (const [from, to] of [
      ['UID:', 'UIDS:'],
      ['\r\nEND:VEVENT', ''],
      [';VALUE=DATE:20270504', ';VALUE=DATE:20270503'],
      [';VALUE=DATE:20270503', ':20270503'],
      ['140506Z', '140506'],
      ['bed\\,', 'bed,'],
      ['SEQUENCE:2', 'SEQUENCE:two'],
      ['en:Sow lettuce', 'en:Sow\u0007'],
      ['TRANSP:TRANSPARENT', 'UID:another'],
      ['VERSION:2.0\r\n', ''],
    ] as const) {
      const broken = whole.replace(from, to);
      expect(broken).not.toBe(whole);
      expect(calendarFaults(broken), `${from} as ${to}`).not.toEqual([]);
    }
    expect(calendarFaults(whole.replace(/BEGIN:VEVENT.*END:VEVENT\r\n/s, ''))).toEqual([
      'a calendar without a component',
    ]);
  });

  it('holds something even where nothing is to be done: a calendar must', () => {
    expect(calendarFaults(icalendar('x', [], 'en'))).toEqual([]);
    const names = propertiesOf(icalendar('x', [], 'en')).map(({ name, value }) => `${name}:${value}`);
    expect(names).toContain('BEGIN:VTIMEZONE');
    expect(names).not.toContain('BEGIN:VEVENT');
    expect(icalendar('x', [eventOf()], 'en')).not.toContain('VTIMEZONE');
  });
});
