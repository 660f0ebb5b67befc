import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { text } from 'node:stream/consumers';
import { request } from 'undici';
import { afterAll, describe, expect, it } from 'vitest';
import type { CalendarEvent } from '../../src/garden/calendar/calendar-event.js';
import { calendarEvents } from '../../src/garden/calendar/calendar-events.js';
import { type DatedEvent, eventInWords, icalendar } from '../../src/garden/calendar/icalendar.js';
import { forecastOf, growing, on, plannedOf, planOf, seasonOf, sowingOf, spellOf } from '../unit/garden/seasons.js';
import { sayPlainly } from '../unit/words/say-plainly.js';
import { addressOf, killAll, run } from './run-service.js';

// The readers are Debian's, and of its own Python.
const PYTHON = '/usr/bin/python3';
const READER = new URL('read-calendar.py', import.meta.url).pathname;
const hasReaders = spawnSync(PYTHON, ['-c', 'import icalendar, vobject']).status === 0;

interface Understood {
  readonly name: string;
  readonly events: readonly (CalendarEvent & { readonly sequence: number })[];
}

/** What two parsers, and a validator, make of a calendar. */
async function readBy(calendar: string): Promise<{
  readonly icalendar: Understood & { readonly faults: readonly string[]; readonly same: boolean };
  readonly vobject: Understood;
}> {
  const reader = spawn(PYTHON, [READER], { stdio: ['pipe', 'pipe', 'inherit'] });
  reader.stdin.end(calendar);
  const [said, [status]] = await Promise.all([text(reader.stdout), once(reader, 'close')]);
  if (status !== 0) throw new Error('The calendar was not understood');
  return JSON.parse(said);
}

describe.skipIf(!hasReaders && !process.env.CI)("a bed's calendar, read by others", () => {
  afterAll(killAll);

  const hotSpells = [spellOf('2027-05-06', '2027-05-08'), spellOf('2027-05-11', '2027-05-11')];
  const season = seasonOf({
    sowings: [
      growing({
        forecast: forecastOf(on('2027-05-03'), undefined, { hotSpells }),
        harvest: { from: on('2027-06-30'), to: on('2027-07-20') },
        resowBy: on('2027-08-15'),
      }),
      growing({
        sowing: sowingOf({ id: 'tomato-1', crop: 'tomato', date: on('2027-03-20'), method: 'indoors' }),
        indoors: { hardenOff: { from: on('2027-05-12'), to: on('2027-05-19') }, plantOut: on('2027-05-20') },
      }),
    ],
    plans: [planOf(plannedOf('2027-12-30'))],
    comingMinC: [{ date: on('2027-05-31'), minC: -1 }],
  });
  const events = calendarEvents(season).map(
    (event, i): DatedEvent => ({
      ...eventInWords(event, sayPlainly),
      sequence: i,
      changedAtMs: Date.parse('2027-05-01T06:00Z') + 1000 * i,
    }),
  );
  const told = (all: readonly DatedEvent[]) => all.map(({ changedAtMs: _, ...event }) => event);

  it('says what it was made of, to both, passes the validator, and is the same written again by another', async () => {
    const name = 'Nörth; bed, 🌱 "of" \\ Quillmere';
    const { icalendar: one, vobject: other } = await readBy(icalendar(name, events, 'en'));
    expect(new Set(events.map(({ kind }) => kind)).size).toBe(12);
    expect(one).toEqual({ name, faults: [], events: told(events), same: true });
    expect(other).toEqual({ name, events: told(events) });
  });

  it('keeps its texts, whatever they are', async () => {
    const strange = (texts: readonly string[]) =>
      texts.map((description, i): DatedEvent => ({ ...events[i]!, summary: `${i}`, description }));
    const plain = strange([
      'a\nb',
      ';;,,',
      '"q": x',
      'ü'.repeat(200),
      '🌱'.repeat(90),
      ' spaces ',
      'BEGIN:VEVENT',
      'a\\b',
    ]);
    const { icalendar: one, vobject: other } = await readBy(icalendar('x', plain, 'en'));
    expect(one.events).toEqual(told(plain));
    expect(other.events).toEqual(told(plain));
    // The first of the two, as Debian 12 has it, takes a backslash before an n for the end of a line, however it is escaped.
    const slashed = strange(['a\\nb', '\\\\', '\\;\\,\\n']);
    expect((await readBy(icalendar('x', slashed, 'en'))).vobject.events).toEqual(told(slashed));
  });

  it('is understood as it is served, with and without events', async () => {
    const address = await addressOf(run([], {}));
    const ask = async (method: 'GET' | 'PUT', path: string, body?: object) => {
      const answer = await request(address + path, {
        method,
        ...(body && { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
      });
      if (answer.statusCode >= 300) throw new Error(`${path} was refused: ${await answer.body.text()}`);
      return answer.body;
    };
    const quillmere = { name: 'Quillmere Allotment Society', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
    await ask('PUT', '/v1/places/quillmere', quillmere);
    const bed = await (await ask('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed' })).json();
    const served = await (await ask('GET', (bed as { calendarUrl: string }).calendarUrl)).text();
    const { icalendar: one, vobject: other } = await readBy(served);
    expect(one).toEqual({ name: 'North bed', faults: [], events: [], same: true });
    expect(other).toEqual({ name: 'North bed', events: [] });
  });
});
