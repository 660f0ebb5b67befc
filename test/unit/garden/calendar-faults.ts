import { eventsIn, propertiesOf } from './read-calendar.js';

/** A content line (RFC 5545, 3.1): a name, parameters, and a value. */
const CONTENT_LINE =
  /^[A-Za-z0-9-]+(;[A-Za-z0-9-]+=("[^"\p{Cc}]*"|[^";:,\p{Cc}]*)(,("[^"\p{Cc}]*"|[^";:,\p{Cc}]*))*)*:/u;
/** Control characters of ASCII, of which a value may hold tabs alone. */
const CONTROL = /[^\P{Cc}\t\u0080-\u009f]/u;
/** Where only text may stand: no bare comma or semicolon, and no backslash but before \ ; , n N (3.3.11). */
const TEXT = /^([^\\;,]|\\[\\;,nN])*$/u;
const ofText = ['NAME', 'X-WR-CALNAME', 'UID', 'SUMMARY', 'DESCRIPTION', 'CATEGORIES', 'PRODID'];

/** What each component must have (3.4, 3.6), and what it may have once at most. */
const required: Readonly<Record<string, readonly string[]>> = {
  VCALENDAR: ['PRODID', 'VERSION'],
  VEVENT: ['UID', 'DTSTAMP', 'DTSTART'],
  VTIMEZONE: ['TZID'],
  STANDARD: ['DTSTART', 'TZOFFSETFROM', 'TZOFFSETTO'],
};

/** What a calendar breaks of RFC 5545, as far as all-day events go; written from the standard, beside our writer. */
export function calendarFaults(text: string): string[] {
  const faults: string[] = [];
  const unfolded = text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);
  for (const line of unfolded) {
    if (!CONTENT_LINE.test(line) || CONTROL.test(line)) faults.push(`no content line: ${line}`);
    const name = line.split(/[;:]/, 1)[0]!;
    if (ofText.includes(name) && !TEXT.test(line.slice(line.indexOf(':') + 1))) faults.push(`bare text: ${line}`);
  }

  const open: { name: string; seen: string[]; parts: number }[] = [];
  for (const { name, value } of propertiesOf(text)) {
    if (name === 'BEGIN') {
      const above = open.at(-1);
      if (above) above.parts++;
      open.push({ name: value, seen: [], parts: 0 });
      continue;
    }
    const component = open.at(-1);
    if (!component) return [...faults, `${name} stands in no component`];
    if (name !== 'END') {
      if (component.seen.includes(name)) faults.push(`${name} stands twice in ${component.name}`);
      component.seen.push(name);
      continue;
    }
    open.pop();
    if (component.name !== value) faults.push(`${component.name} ends as ${value}`);
    for (const one of required[component.name] ?? []) {
      if (!component.seen.includes(one)) faults.push(`${component.name} has no ${one}`);
    }
    if (component.name === 'VCALENDAR' && component.parts === 0) faults.push('a calendar without a component');
  }
  if (open.length > 0) faults.push(`${open.at(-1)!.name} does not end`);

  const events = eventsIn(text);
  if (new Set(events.map(({ UID }) => UID)).size < events.length) faults.push('two events have one UID');
  for (const { UID, DTSTAMP, DTSTART, DTEND, SEQUENCE, TRANSP } of events) {
    if (!/^\d{8}T\d{6}Z$/.test(DTSTAMP ?? '')) faults.push(`${UID}: DTSTAMP must be in UTC`);
    if (!/^\d{8}$/.test(DTSTART ?? '') || !/^\d{8}$/.test(DTEND ?? '')) faults.push(`${UID}: no dates`);
    if (!(DTEND! > DTSTART!)) faults.push(`${UID} ends before it has begun`);
    if (!/^\d+$/.test(SEQUENCE ?? '')) faults.push(`${UID}: SEQUENCE is no number`);
    if (!['OPAQUE', 'TRANSPARENT'].includes(TRANSP ?? '')) faults.push(`${UID}: TRANSP is ${TRANSP}`);
  }
  const dates = unfolded.filter((line) => /^DT(START|END).*:\d{8}$/.test(line));
  for (const line of dates) if (!/^DT(START|END);VALUE=DATE:/.test(line)) faults.push(`not said to be a date: ${line}`);
  return faults;
}
