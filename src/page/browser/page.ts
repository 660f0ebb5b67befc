import { isRefused } from '../api.js';
import { keepAndShare } from '../keep-and-share.js';
import { WAITING } from '../page.js';
import { problemNote } from '../problem-note.js';
import { linkTo, type Question, questionFrom, type ViewName } from '../question.js';
import { loadShelf, type Shelf } from '../shelf.js';
import type { Answered, Asked } from '../view.js';
import { viewOf } from '../views.js';
import type { Reader } from '../words.js';
import { watchActs } from './acts.js';
import { chosenFile, watchFile } from './chosen-file.js';
import { all, one } from './elements.js';
import { keepAs } from './keep-as.js';
import { keepTyping } from './kept-typing.js';
import { send } from './send.js';

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
      void keep(ask, button.value);
      return;
    }
    if (button && button.name !== '') settle(ask, button);
    void follow(ask).then(bringIntoView);
  });
  let resting: ReturnType<typeof setTimeout> | undefined;
  ask.addEventListener('input', () => {
    supposeZone(ask);
    clearTimeout(resting);
    resting = setTimeout(() => void follow(ask), REST_MS);
  });
  document.addEventListener('click', (event) => {
    const { id, dataset } = event.target as HTMLElement;
    if (id === 'print') print();
    if (id === 'copy') void copyLink('#link');
    if (dataset.copies !== undefined) void copyLink(`#${dataset.copies}`);
  });
  watchActs({
    side: one('#answer')!,
    async act(said) {
      const known = await shelf;
      if (isRefused(known)) return known;
      const asked = await askedNow(ask, known.value);
      return viewOf(asked.question.view).act!(said, asked);
    },
    answerAgain: (said) => answer(ask, said),
    reader: () => readerOf(ask),
  });
  void begin(ask);
}

/** On a phone the answer stands below the question. */
function bringIntoView(): void {
  const side = one('#answer')!;
  if (side.getBoundingClientRect().top > innerHeight / 2) side.scrollIntoView();
}

/** A file that was chosen before the page was loaded is answered at once; else what came with the page stands. */
async function begin(ask: HTMLFormElement): Promise<void> {
  if ((await chosenFile()) || one('#answer')!.dataset.answered === undefined) await answer(ask);
}

/** The link goes with what is typed; an answer that stands there follows. */
async function follow(ask: HTMLFormElement): Promise<void> {
  const known = await shelf;
  if (isRefused(known)) return;
  const question = questionOf(ask, known.value);
  history.replaceState(null, '', linkTo(question));
  for (const leaf of all<HTMLAnchorElement>('[data-leaf]')) {
    leaf.href = linkTo({ ...question, view: leaf.dataset.leaf as ViewName });
  }
  await answer(ask);
}

function questionOf(ask: HTMLFormElement, known: Shelf): Question {
  const said = new URLSearchParams();
  for (const [name, value] of new FormData(ask)) if (typeof value === 'string') said.append(name, value);
  return questionFrom(said, known);
}

/** The answer that came with the page is asked once more, to be kept as a file. */
async function keep(ask: HTMLFormElement, form: string): Promise<void> {
  if (!answered) await answer(ask);
  if (answered) await keepAs(form, answered);
}

/** A bed that is described is likely where the reader is. */
function supposeZone(ask: HTMLFormElement): void {
  const [bed, zone] = ['bed', 'timeZone'].map((name) => ask.elements.namedItem(name)) as HTMLInputElement[];
  if (bed?.value === '' && zone?.value === '') zone.value = Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** A choice becomes a field of the form, so that it holds for what is asked later. */
function settle(ask: HTMLFormElement, { name, value }: HTMLButtonElement): void {
  const field = ask.elements.namedItem(name);
  if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) field.value = value;
  else ask.append(Object.assign(document.createElement('input'), { type: 'hidden', name, value }));
}

/** @param said What to say of it, in place of the answer's own words. */
async function answer(ask: HTMLFormElement, said?: string): Promise<void> {
  const mine = ++turn;
  const known = await shelf;
  if (isRefused(known)) return show({ shown: problemNote(known.problem) });
  const side = one('#answer')!;
  const patience = setTimeout(() => say('Working it out …'), PATIENCE_MS);
  side.setAttribute('aria-busy', 'true');
  const asked = await askedNow(ask, known.value);
  const came = await viewOf(asked.question.view).answer(asked);
  clearTimeout(patience);
  if (mine !== turn) return;
  side.removeAttribute('aria-busy');
  show(came, said);
}

async function askedNow(ask: HTMLFormElement, known: Shelf): Promise<Asked> {
  return {
    question: questionOf(ask, known),
    file: await chosenFile(),
    shelf: known,
    reader: readerOf(ask),
    send,
    widths: [Math.max(300, Math.min(1000, one('#answer')!.clientWidth))],
  };
}

function readerOf(ask: HTMLFormElement): Reader {
  return { locale: navigator.language, degrees: new FormData(ask).get('degrees') === 'F' ? 'F' : 'C' };
}

function show(came: Answered | null, said?: string): void {
  answered = came;
  const side = one('#answer')!;
  const putBack = keepTyping(side);
  side.innerHTML = came ? came.shown.markup : `<p class="waiting">${WAITING}</p>`;
  putBack();
  const keep = one('#keep')!;
  keep.hidden = came?.picture === undefined;
  keep.innerHTML = keepAndShare(came?.link ?? null, came?.table !== undefined).markup;
  say(said ?? side.querySelector('.neighbour, .problem')?.textContent ?? '');
}

const say = (text: string): void => {
  one('#said')!.textContent = text;
};

async function copyLink(selector: string): Promise<void> {
  await navigator.clipboard.writeText(one<HTMLAnchorElement>(selector)!.href);
  say('The link is copied.');
}
