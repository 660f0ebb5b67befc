import { dateOfDay, dayOf } from '../../plot/dates.js';
import type { AnsweredView } from '../shell/view.js';
import { all, isAskedAnew, one } from './elements.js';

/** The date must rest this long before its forecast is requested [ms]. */
const REST_MS = 250;

let resting: ReturnType<typeof setTimeout> | undefined;
let rested: (date: string) => Promise<void> = async () => {};

/** Moves the date by slider and buttons; `atRest` receives the date where it came to rest. */
export function watchDates(answered: () => AnsweredView | null, atRest: typeof rested): void {
  rested = atRest;
  document.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLInputElement && target.id === 'date-moved')
      moveTo(answered(), dateOfDay(target.valueAsNumber));
  });
  document.addEventListener('click', (event) => {
    const step = (event.target as HTMLElement).closest<HTMLElement>('[data-step]')?.dataset.step;
    const slider = one<HTMLInputElement>('#date-moved');
    if (step === undefined || !slider) return;
    const isMoved = moveTo(answered(), dateOfDay(slider.valueAsNumber + Number(step)));
    if (isMoved || answered()?.atDate) event.preventDefault();
  });
}

/** Moves the answer to the slider's position of before the answer came. */
export function catchUp(answered: AnsweredView | null): void {
  const slider = one<HTMLInputElement>('#date-moved');
  if (slider && slider.value !== slider.defaultValue) moveTo(answered, dateOfDay(slider.valueAsNumber));
}

/** Moves the answer to another date; false for a date outside the season shown. */
export function moveTo(answered: AnsweredView | null, date: string): boolean {
  const slider = one<HTMLInputElement>('#date-moved');
  const day = dayOf(date);
  if (!answered?.atDate || !slider || !(Number(slider.min) <= day && day <= Number(slider.max))) return false;
  const { name, atOnce, whole } = answered.atDate(date);
  slider.value = String(day);
  slider.setAttribute('aria-valuetext', name);
  fill(atOnce);
  one('#of-date')!.setAttribute('aria-busy', 'true');
  clearTimeout(resting);
  const mine = setTimeout(async () => {
    await rested(date);
    const parts = await whole();
    // The date may have moved on meanwhile, or another question may be under way.
    if (resting !== mine || one('#date-moved') !== slider || isAskedAnew()) return;
    fill(parts);
    one('#of-date')!.removeAttribute('aria-busy');
  }, REST_MS);
  resting = mine;
  return true;
}

function fill(parts: Readonly<Record<string, { readonly markup: string }>>): void {
  for (const place of all('#answer [id], #later [id]')) {
    const part = parts[place.id];
    if (part) place.innerHTML = part.markup;
  }
}
