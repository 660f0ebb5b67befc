import { type PageQuestion, questionFrom } from '../form/question.js';
import type { Inventory } from '../shell/inventory.js';
import { all } from './elements.js';

/** The question that the form asks as it is now. */
export function questionOf(ask: HTMLFormElement, known: Pick<Inventory, 'beds'>): PageQuestion {
  const said = new URLSearchParams();
  for (const [name, value] of new FormData(ask)) if (typeof value === 'string') said.append(name, value);
  const question = questionFrom(said, known);
  // Show the assumed unit of typed days, so that it still holds when the reader switches degrees.
  const unit = ask.elements.namedItem('unit') as HTMLSelectElement | null;
  if (unit?.value === '') unit.value = question.unit;
  return question;
}

/** Assumes the reader's own time zone for a described bed. */
export function assumeZone(ask: HTMLFormElement): void {
  const [bed, zone] = ['bed', 'timeZone'].map((name) => ask.elements.namedItem(name)) as HTMLInputElement[];
  if (bed?.value === '' && zone?.value === '') zone.value = theirZone();
}

/** The same for the forms of beds in the answer. */
export function assumeZonesInAnswer(): void {
  for (const field of all<HTMLInputElement>('#answer [name="timeZone"]')) field.defaultValue ||= theirZone();
}

function theirZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** Fills in the fields that the question continues with. */
export function fillIn(ask: HTMLFormElement, changes: Partial<PageQuestion>): void {
  for (const [name, value] of Object.entries(changes)) {
    const field = ask.elements.namedItem(name) as HTMLInputElement | RadioNodeList | null;
    if (field) field.value = String(value);
  }
}

/** A choice becomes a field of the form, so that it holds for later questions. */
export function keepChoice(ask: HTMLFormElement, { name, value }: HTMLButtonElement): void {
  const field = ask.querySelector<HTMLInputElement | HTMLSelectElement>(
    `:is(input, select)[name="${CSS.escape(name)}"]`,
  );
  if (field) field.value = value;
  else ask.append(Object.assign(document.createElement('input'), { type: 'hidden', name, value }));
}
