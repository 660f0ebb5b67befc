/** One property of a calendar: its name, its parameters and its value as text. */
export interface Property {
  readonly name: string;
  readonly parameters: readonly string[];
  readonly value: string;
}

/** Reads a calendar as RFC 5545 says, knowing nothing of how ours is written: unfolds (3.1), parts, unescapes (3.3.11). */
export function propertiesOf(text: string): Property[] {
  if (!text.endsWith('\r\n')) throw new Error('the last line does not end');
  return text
    .replaceAll('\r\n ', '')
    .replaceAll('\r\n\t', '')
    .slice(0, -2)
    .split('\r\n')
    .map((line) => {
      const colon = line.indexOf(':');
      if (colon < 0) throw new Error(`a line without a value: ${line}`);
      const [name, ...parameters] = line.slice(0, colon).split(';');
      return { name: name!, parameters, value: unescaped(line.slice(colon + 1)) };
    });
}

const unescaped = (value: string): string =>
  value.replaceAll(/\\(.)/g, (_, one: string) => (one === 'n' || one === 'N' ? '\n' : one));

/** The events of a calendar, each as its values by property. */
export function eventsIn(text: string): Record<string, string>[] {
  const events: Record<string, string>[] = [];
  let open = false;
  for (const { name, value } of propertiesOf(text)) {
    if (name === 'BEGIN' && value === 'VEVENT') events.push({});
    if (name === 'BEGIN' || name === 'END') open = name === 'BEGIN' && value === 'VEVENT';
    else if (open) events.at(-1)![name] = value;
  }
  return events;
}
