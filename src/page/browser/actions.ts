import { refusedNote } from '../form/action.js';
import { isFailure, type Result } from '../shell/api.js';
import type { Done } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';

interface Acting {
  readonly side: HTMLElement;
  readonly runAction: (said: URLSearchParams) => Promise<Result<Done>>;
  /** Renders the answer again and reports what was done. */
  readonly answerAgain: (done: Done) => Promise<void>;
  readonly reader: () => PageReader;
}

/** Sends the action forms of an answer without leaving the page; typed text stays until the service accepts it. */
export function watchActions(acting: Acting): void {
  acting.side.addEventListener('submit', (event) => {
    const { target } = event;
    if (!(target instanceof HTMLFormElement) || target.elements.namedItem('act') === null) return;
    event.preventDefault();
    if (target.getAttribute('aria-busy') !== 'true') void send(target, acting);
  });
}

async function send(form: HTMLFormElement, { runAction, answerAgain, reader }: Acting): Promise<void> {
  const said = new URLSearchParams();
  for (const [name, value] of new FormData(form)) if (typeof value === 'string') said.append(name, value);
  const refused = form.querySelector('.refused');
  form.setAttribute('aria-busy', 'true');
  const got = await runAction(said);
  form.removeAttribute('aria-busy');
  if (isFailure(got)) {
    // A form that was posted without a script and came back has no place for the note.
    if (refused) refused.innerHTML = refusedNote(got.problem, reader()).markup;
    if (!form.contains(document.activeElement)) form.querySelector('button')?.focus({ preventScroll: true });
    refused?.scrollIntoView({ block: 'nearest' });
    return;
  }
  const { name = '', type } = document.activeElement as HTMLInputElement;
  const topBefore = form.getBoundingClientRect().top;
  form.reset();
  if (refused) refused.innerHTML = '';
  fold(form);
  await answerAgain(got.value);
  const same = document.getElementById(form.id) as HTMLFormElement | null;
  const isShown = same !== null && same.closest('details:not([open])') === null;
  const back = isShown
    ? (same.querySelector<HTMLElement>(
        name !== '' && type !== 'submit' ? `[name="${name}"]` : 'button[type="submit"]',
      ) ?? same)
    : document.getElementById(got.value.at);
  back?.focus({ preventScroll: true });
  if (isShown) scrollBy(0, same.getBoundingClientRect().top - topBefore);
  const note = Object.assign(document.createElement('p'), { className: 'done', textContent: got.value.said });
  if (isShown) same.before(note);
  else back?.prepend(note);
  note.scrollIntoView({ block: 'nearest' });
}

/** Folds the forms of a finished action. */
function fold(form: HTMLFormElement): void {
  form.closest('details')?.removeAttribute('open');
  for (const details of form.querySelectorAll('details')) details.open = false;
}
