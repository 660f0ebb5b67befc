import type { Language } from '../../words/reader.js';
import { linkTo, type PageQuestion, type ViewName } from '../form/question.js';
import { get, isFailure, type Result, type Send, unusable } from '../shell/api.js';
import { html } from '../shell/html.js';
import { type Inventory, loadInventory, todayAt } from '../shell/inventory.js';
import { waiting } from '../shell/page.js';
import { SHEET_PX } from '../shell/pictures.js';
import { problemNote } from '../shell/problem-note.js';
import type { AnsweredView, AskedQuestion } from '../shell/view.js';
import { viewOf } from '../shell/views.js';
import type { PageReader } from '../shell/words.js';
import { unsettled } from '../sowing/file-state.js';
import { keepAndShare } from '../sowing/keep-and-share.js';
import { watchActions } from './actions.js';
import { assumeZone, assumeZonesInAnswer, fillIn, keepChoice, questionOf } from './ask-form.js';
import { readableFile, watchFile } from './chosen-file.js';
import { all, isAskedAnew, one } from './elements.js';
import { bringIntoView, foldAway } from './fold.js';
import { keepAs } from './keep-as.js';
import { keepTyping } from './kept-typing.js';
import { send, sendUntil } from './send.js';
import { readerNow, say } from './speaking.js';
import { catchUp, moveTo, watchDates } from './when.js';

/** Typing must rest this long before the answer follows [ms]. */
const REST_MS = 250;
/** After this time the page says that the answer takes a while [ms]. */
const PATIENCE_MS = 400;

const form = one<HTMLFormElement>('#ask');
let shelf: Promise<Result<Inventory>> | undefined;
/** The date at the question's place, by the service's clock. */
let today: string | undefined;
let answered: AnsweredView | null = null;
/** Aborted by a later question: the older answer is dropped and its file is not uploaded further. */
let turn = new AbortController();

document.documentElement.classList.add('script');
if (form) start(form);
else void knock();

/**
 * A link from another site comes without the session cookie, although the browser has it; asking again opens the page.
 */
async function knock(): Promise<void> {
  const [visit] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
  if (visit?.type === 'reload') return;
  const got = await get(send, { method: 'GET', path: '/v1/crops?limit=1' });
  if (!isFailure(got)) location.reload();
}

function start(ask: HTMLFormElement): void {
  watchFile(ask, () => {
    one<HTMLDetailsElement>('#asking')!.open = true;
    void follow(ask);
  });
  ask.addEventListener('submit', (event) => {
    const button = event.submitter as HTMLButtonElement | null;
    event.preventDefault();
    if (button?.name === 'as') {
      void keep(ask, button.value);
      return;
    }
    if (button && button.name !== '') keepChoice(ask, button);
    void follow(ask).then(bringIntoView);
  });
  let resting: ReturnType<typeof setTimeout> | undefined;
  ask.addEventListener('input', ({ target }) => {
    // A reader who empties the time zone field means to type another.
    if ((target as HTMLInputElement).name !== 'timeZone') assumeZone(ask);
    clearTimeout(resting);
    // A date within the shown season only moves the slider there.
    if (target instanceof HTMLInputElement && target.name === 'sowing' && moveTo(answered, target.value)) return;
    resting = setTimeout(() => void follow(ask), REST_MS);
  });
  watchDates(
    () => answered,
    async (date) => {
      ask.querySelector<HTMLInputElement>('input[name="sowing"]')!.value = date;
      one<HTMLAnchorElement>('#link')!.href = linkTo(await holdInLink(ask));
      speak(
        all('#at-date :is(h3, .state)')
          .map(({ textContent }) => textContent)
          .join('. '),
      );
    },
  );
  document.addEventListener('click', (event) => {
    const { id, dataset } = event.target as HTMLElement;
    if (id === 'print') print();
    if (id === 'copy') void copyLink('#link');
    if (dataset.copies !== undefined) void copyLink(`#${dataset.copies}`);
  });
  watchActions({
    side: one('#answer')!,
    async runAction(said) {
      const got = await known();
      if (isFailure(got)) return got;
      const asked = askedNow(ask, got.value, send);
      const file = await readableFile(asked);
      return file === undefined
        ? unusable(say('page.refused.unsettled-file'))
        : viewOf(asked.question.view).runAction(said, { ...asked, file });
    },
    async answerAgain({ said, goesOn = {} }) {
      forgetShelf();
      await renewBeds(ask);
      fillIn(ask, goesOn);
      await holdInLink(ask);
      await answer(ask, said);
    },
    reader: readerOf,
  });
  document.addEventListener('visibilitychange', forgetShelf);
  assumeZone(ask);
  assumeZonesInAnswer();
  void begin(ask);
}

/**
 * Starts with the answer or the opening that came with the page; without one, a file may have outlived the reload. A
 * movable date is requested once more, unseen, so that it can move at once.
 */
async function begin(ask: HTMLFormElement): Promise<void> {
  const { opening, answered: asked } = one('#answer')!.dataset;
  const isThere = asked !== undefined;
  if (!isThere && opening === undefined) await answer(ask);
  // A reader who is already in the form stays there.
  if (!one('#asking')!.contains(document.activeElement)) foldAway();
  if (!isThere || !one('#date-moved')) return;
  answered = (await answerNow(ask)) ?? answered;
  catchUp(answered);
  if (one('#later noscript')) await showLater(answered);
}

/** Drops the inventory: it may change after an action, or by the time the reader returns another day. */
function forgetShelf(): void {
  shelf = undefined;
}

/** The inventory, requested once, and again after a failure. */
async function known(): Promise<Result<Inventory>> {
  shelf ??= loadInventory(send);
  const got = await shelf;
  if (isFailure(got)) shelf = undefined;
  return got;
}

/** Updates the link as the reader types, whether the service is there or not; an answer already shown follows. */
async function follow(ask: HTMLFormElement): Promise<void> {
  await holdInLink(ask);
  await answer(ask);
}

async function holdInLink(ask: HTMLFormElement): Promise<PageQuestion> {
  const got = await known();
  const question = questionOf(ask, isFailure(got) ? { beds: [] } : got.value);
  history.replaceState(null, '', linkTo(question));
  if (!isFailure(got)) {
    const asked = { question, shelf: got.value, reader: readerOf() };
    one('#asked')!.innerHTML = viewOf(question.view).summary(asked).markup;
  }
  for (const link of all<HTMLAnchorElement>('[data-lang]')) {
    link.href = linkTo({ ...question, lang: link.dataset.lang as Language });
  }
  for (const tab of all<HTMLAnchorElement>('[data-tab]')) {
    tab.href = linkTo({ ...question, view: tab.dataset.tab as ViewName });
  }
  return question;
}

/** Requests the answer that came with the page once more, to save it as a file. */
async function keep(ask: HTMLFormElement, form: string): Promise<void> {
  if (!answered) await answer(ask);
  if (answered) await keepAs(form, answered, viewOf(one('main')!.dataset.view as ViewName).fileName);
}

/** Updates the choice of beds after an action. */
async function renewBeds(ask: HTMLFormElement): Promise<void> {
  const got = await known();
  if (isFailure(got)) return;
  const asked = askedNow(ask, got.value, send);
  const fresh = document.createElement('template');
  fresh.innerHTML = viewOf(asked.question.view).form({ ...asked, file: null }).markup;
  for (const name of ['bed', 'ofBed']) {
    const field = ask.querySelector(`select[name="${name}"]`);
    const renewed = fresh.content.querySelector(`select[name="${name}"]`);
    if (field && renewed) field.innerHTML = renewed.innerHTML;
  }
}

/** @param said A note to read out instead of the answer's own words. */
async function answer(ask: HTMLFormElement, said?: string): Promise<void> {
  const side = one('#answer')!;
  const patience = setTimeout(() => speak(say('page.shell.working')), PATIENCE_MS);
  side.setAttribute('aria-busy', 'true');
  const came = await answerNow(ask);
  clearTimeout(patience);
  if (came === undefined) return;
  side.removeAttribute('aria-busy');
  show(came, said);
}

/** The answer to the form as it is now; undefined if the form changed meanwhile. */
async function answerNow(ask: HTMLFormElement): Promise<AnsweredView | null | undefined> {
  turn.abort();
  turn = new AbortController();
  const { signal } = turn;
  const got = await known();
  if (signal.aborted) return undefined;
  if (isFailure(got)) return { shown: problemNote(got.problem, readerOf()) };
  const asked = askedNow(ask, got.value, sendUntil(signal));
  const file = await readableFile(asked);
  const came =
    file === undefined || signal.aborted
      ? { shown: unsettled(asked.reader) }
      : await viewOf(asked.question.view).answer({ ...asked, file });
  return signal.aborted ? undefined : came;
}

function askedNow(ask: HTMLFormElement, shelf: Inventory, send: Send): Omit<AskedQuestion, 'file'> {
  const question = questionOf(ask, shelf);
  today = todayAt(shelf, question.bed, question.timeZone);
  return { question, shelf, reader: readerOf(), send, widths: widthsHere() };
}

/** The width of the answer, and on a phone also the width of paper. */
function widthsHere(): number[] {
  const width = Math.max(300, Math.min(1000, one('#answer')!.clientWidth));
  return matchMedia('(width < 38rem)').matches ? [width, SHEET_PX] : [width];
}

function readerOf(): PageReader {
  return { ...readerNow(), ...(today !== undefined && { today }) };
}

function show(came: AnsweredView | null, said?: string): void {
  answered = came;
  const side = one('#answer')!;
  const putBack = keepTyping(side);
  side.innerHTML = came ? came.shown.markup : waiting(readerNow()).markup;
  assumeZonesInAnswer();
  putBack();
  void showLater(came);
  one('#keep')!.innerHTML = keepAndShare(came, readerNow())?.markup ?? '';
  // A refusal is an alert, so screen readers read it anyway.
  speak(said ?? spokenOf(side.querySelector('.neighbour')));
}

/** Replaces the later part once it has come; nothing of another question stays. */
async function showLater(came: AnsweredView | null): Promise<void> {
  const below = one('#later')!;
  const of = came?.link ? linkTo(came.link) : '';
  if (!came?.later || (below.dataset.of ?? of) !== of) below.innerHTML = '';
  below.dataset.of = of;
  if (!came?.later) return;
  if (below.innerHTML === '') below.innerHTML = html`<p class="waiting">${say('page.shell.rest-working')}</p>`.markup;
  const { markup } = await came.later();
  if (answered === came && !isAskedAnew()) below.innerHTML = markup;
}

/** The text to read out, without the explanations of its numbers. */
function spokenOf(said: Element | null): string {
  const copy = said?.cloneNode(true) as Element | undefined;
  for (const why of copy?.querySelectorAll('.why') ?? []) why.remove();
  return copy?.textContent ?? '';
}

const speak = (text: string): void => {
  one('#said')!.textContent = text;
};

async function copyLink(selector: string): Promise<void> {
  await navigator.clipboard.writeText(one<HTMLAnchorElement>(selector)!.href);
  speak(say('page.shell.link-copied'));
}
