type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

interface Typed {
  readonly form: string;
  readonly name: string;
  readonly value: string;
  readonly state: string;
  /** Unchanged by the reader, beside fields that were typed into and depend on it. */
  readonly isUntouched: boolean;
}

/** Typing for forms that are not on the page now: the service may have been away. */
let waiting: readonly Typed[] = [];

/**
 * Saves the text typed into the forms of an answer, and what is unfolded, while the answer is rendered again.
 *
 * @returns Puts both back.
 */
export function keepTyping(side: HTMLElement): () => void {
  const open = [...side.querySelectorAll<HTMLDetailsElement>('details[id][open]')].map(({ id }) => id);
  const shut = [...side.querySelectorAll<HTMLDetailsElement>('details[id]:not([open])')].map(({ id }) => id);
  const typed = [...waiting, ...[...side.querySelectorAll('form')].flatMap(typedInto)];
  return () => {
    waiting = typed.filter(({ form }) => !document.getElementById(form));
    for (const id of open) unfold(id, true);
    for (const id of shut) unfold(id, false);
    for (const { form, name, value, state, isUntouched } of typed) {
      const found = document.getElementById(form);
      if (!(found instanceof HTMLFormElement)) continue;
      const control = controlsOf(found).find((one) => one.name === name && (!isTicked(one) || one.value === value));
      if (!control) continue;
      if (isTicked(control)) control.checked = state === 'true';
      else if (fits(control, state)) control.value = state;
      if (!isUntouched) control.closest('details')?.setAttribute('open', '');
    }
  };
}

/** False for a choice that is no longer offered. */
const fits = (control: Control, state: string): boolean =>
  !(control instanceof HTMLSelectElement) || [...control.options].some(({ value }) => value === state);

function typedInto(form: HTMLFormElement): Typed[] {
  const all = controlsOf(form).map((control) => ({
    form: form.id,
    name: control.name,
    value: control.value,
    state: stateOf(control),
    isUntouched: stateOf(control) === initialOf(control),
  }));
  if (all.every(({ isUntouched }) => isUntouched)) return [];
  return all.filter(
    ({ isUntouched, name }) => !isUntouched || form.querySelector(`[name="${name}"][data-goes-with-numbers]`),
  );
}

function unfold(id: string, isOpen: boolean): void {
  const details = document.getElementById(id);
  if (details instanceof HTMLDetailsElement) details.open = isOpen;
}

const controlsOf = (form: HTMLFormElement): Control[] =>
  [...form.elements].filter(
    (one): one is Control =>
      (one instanceof HTMLInputElement && one.type !== 'hidden') ||
      one instanceof HTMLSelectElement ||
      one instanceof HTMLTextAreaElement,
  );

const isTicked = (control: Control): control is HTMLInputElement =>
  control instanceof HTMLInputElement && (control.type === 'checkbox' || control.type === 'radio');

const stateOf = (control: Control): string => (isTicked(control) ? String(control.checked) : control.value);

function initialOf(control: Control): string {
  if (isTicked(control)) return String(control.defaultChecked);
  if (!(control instanceof HTMLSelectElement)) return control.defaultValue;
  return ([...control.options].find(({ defaultSelected }) => defaultSelected) ?? control.options[0])?.value ?? '';
}
