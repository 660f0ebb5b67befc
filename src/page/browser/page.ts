import { isRefused } from '../api.js';
import { keepAndShare } from '../keep-and-share.js';
import { WAITING } from '../page.js';
import { problemNote } from '../problem-note.js';
import { linkTo, type Question, questionFrom, type ViewName } from '../question.js';
import { loadShelf, type Shelf } from '../shelf.js';
import type { Answered, Asked } from '../view.js';
import { viewOf } from '../views.js';
import { chosenFile, watchFile } from './chosen-file.js';
import { all, one } from './elements.js';
import { keepAs } from './keep-as.js';
import { send } from './send.js';
import { moveTo, watchDates } from './when.js';

/** How long typing has to rest before the answer follows [ms]. */
const REST_MS = 250;
/** After so long the reader is told that it takes a while [ms]. */
const PATIENCE_MS = 400;

const form = one<HTMLFormElement>('#ask');
const shelf = loadShelf(send);
let answered: Answered | null = null;
/** Answers that come after a later question are let go. */
let turn = 0;

document.documentElement.classList.add('script');
if (form) start(form);

function start(ask: HTMLFormElement): void {
  watchFile(ask, () => void follow(ask));
  ask.addEventListener('submit', (event) => {
    const button = event.submitter as HTMLButtonElement | null;
    event.preventDefault();
    if (button?.name === 'as') {
      if (answered) void keepAs(button.value, answered);
      return;
    }
    if (button && button.name !== '') settle(ask, button);
    void answer(ask);
  });
  let resting: ReturnType<typeof setTimeout> | undefined;
  ask.addEventListener('input', ({ target }) => {
    clearTimeout(resting);
    // A date that is among those shown only moves there.
    if (target instanceof HTMLInputElement && target.name === 'sowing' && moveTo(answered, target.value)) return;
    resting = setTimeout(() => void follow(ask), REST_MS);
  });
  watchDates(
    () => answered,
    async (date) => {
      ask.querySelector<HTMLInputElement>('input[name="sowing"]')!.value = date;
      const question = await holdInLink(ask);
      if (question) one<HTMLAnchorElement>('#link')!.href = linkTo(question);
      say(
        all('#at-date :is(h3, .state)')
          .map(({ textContent }) => textContent)
          .join('. '),
      );
    },
  );
  document.addEventListener('click', (event) => {
    const { id } = event.target as HTMLElement;
    if (id === 'print') print();
    if (id === 'copy') void copyLink();
  });
  // The answer that came with the page is asked again, so that it can be kept as a file.
  void restore(ask);
}

async function restore(ask: HTMLFormElement): Promise<void> {
  await chosenFile();
  await answer(ask);
}

/** The link goes with what is typed; an answer that stands there follows. */
async function follow(ask: HTMLFormElement): Promise<void> {
  if (await holdInLink(ask)) await answer(ask);
}

async function holdInLink(ask: HTMLFormElement): Promise<Question | null> {
  const known = await shelf;
  if (isRefused(known)) return null;
  const question = questionOf(ask, known.value);
  history.replaceState(null, '', linkTo(question));
  for (const leaf of all<HTMLAnchorElement>('[data-leaf]')) {
    leaf.href = linkTo({ ...question, view: leaf.dataset.leaf as ViewName });
  }
  return question;
}

function questionOf(ask: HTMLFormElement, known: Shelf): Question {
  const said = new URLSearchParams();
  for (const [name, value] of new FormData(ask)) if (typeof value === 'string') said.append(name, value);
  return questionFrom(said, known);
}

/** A choice becomes a field of the form, so that it holds for what is asked later. */
function settle(ask: HTMLFormElement, { name, value }: HTMLButtonElement): void {
  const field = ask.elements.namedItem(name);
  if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) field.value = value;
  else ask.append(Object.assign(document.createElement('input'), { type: 'hidden', name, value }));
}

async function answer(ask: HTMLFormElement): Promise<void> {
  const mine = ++turn;
  const known = await shelf;
  if (isRefused(known)) return show({ shown: problemNote(known.problem) });
  const question = questionOf(ask, known.value);
  const side = one('#answer')!;
  const patience = setTimeout(() => say('Working it out …'), PATIENCE_MS);
  side.setAttribute('aria-busy', 'true');
  const asked: Asked = {
    question,
    file: await chosenFile(),
    shelf: known.value,
    reader: { locale: navigator.language, degrees: question.degrees },
    send,
    widths: [Math.max(300, Math.min(1000, side.clientWidth))],
  };
  const came = await viewOf(question.view).answer(asked);
  clearTimeout(patience);
  if (mine !== turn) return;
  side.removeAttribute('aria-busy');
  show(came);
}

function show(came: Answered | null): void {
  answered = came;
  const side = one('#answer')!;
  side.innerHTML = came ? came.shown.markup : `<p class="waiting">${WAITING}</p>`;
  void showLater(came);
  const keep = one('#keep')!;
  keep.hidden = came?.picture === undefined;
  keep.innerHTML = keepAndShare(came?.link ?? null, came?.table !== undefined).markup;
  say(spokenOf(side.querySelector('.neighbour, .problem')));
}

/** What takes longer replaces what stands there once it has come; of another question nothing is left standing. */
async function showLater(came: Answered | null): Promise<void> {
  const below = one('#later')!;
  const of = came?.link ? linkTo(came.link) : '';
  if (!came?.later || (below.dataset.of ?? of) !== of) below.innerHTML = '';
  below.dataset.of = of;
  if (!came?.later) return;
  if (below.innerHTML === '') below.innerHTML = '<p class="waiting">The rest is being worked out …</p>';
  const { markup } = await came.later();
  if (answered === came) below.innerHTML = markup;
}

/** What is to be read out: without what its figures say when they are asked. */
function spokenOf(said: Element | null): string {
  const copy = said?.cloneNode(true) as Element | undefined;
  for (const why of copy?.querySelectorAll('.why') ?? []) why.remove();
  return copy?.textContent ?? '';
}

const say = (text: string): void => {
  one('#said')!.textContent = text;
};

async function copyLink(): Promise<void> {
  await navigator.clipboard.writeText(one<HTMLAnchorElement>('#link')!.href);
  say('The link is copied.');
}
