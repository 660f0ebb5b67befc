import type { ReportWire } from '../../contract/readings.js';
import { FILE_LIMIT_BYTES } from '../../contract/request/file-limit.js';
import { get, isFailure, type Result, wordedFor } from '../shell/api.js';
import type { AskedQuestion, FileGiven } from '../shell/view.js';
import { checkRequest, sizeText, tooLarge } from '../sowing/file-check.js';
import { fileState } from '../sowing/file-state.js';
import { one } from './elements.js';
import { forgetFile, type KeptFile, keepFile, keptFile } from './kept-file.js';
import { sendUntil, stopSending, whileSending } from './send.js';
import { say, speaking } from './speaking.js';

/** A longer file gets a progress display [bytes], after a delay [ms]. */
const LONG_BYTES = 1024 * 1024;
const PATIENCE_MS = 300;
/** Typing must rest this long before the text is stored [ms]. */
const REST_MS = 200;
/** A longer text would make its box slow [characters]. */
const MAX_SHOWN = 512 * 1024;
/** Fields that say how to read one file; they do not apply to the next. */
const OF_ONE_FILE = ['column', 'timeColumn', 'dateOrder', 'clock', 'decimalMark'];

let chosen: KeptFile | null = null;
let isKept = true;
/** The service's report on the file, requested once for each way to read it. */
let check: { file: KeptFile; path: string; got: Promise<Result<ReportWire>>; end: () => void } | null = null;
/** Fields that a choice has set. */
const settled = new Set<string>();
let restored: Promise<void> = Promise.resolve();

const pastedField = () => one<HTMLTextAreaElement>('[name="pasted"]');
const fileField = () => one<HTMLInputElement>('[name="file"]');

/** Accepts a file chosen in the form, dropped or pasted anywhere on the page, or typed into the form. */
export function watchFile(form: HTMLFormElement, changed: () => void): void {
  document.addEventListener('submit', (event) => {
    const leaving = event.target as HTMLFormElement;
    if (leaving.getAttribute('action') !== '/session') return;
    // Forgetting the key also deletes the file. `submit()` fires no event of its own.
    event.preventDefault();
    void forgetFile()
      .catch(() => {})
      .then(() => leaving.submit());
  });
  if (!one('#file-state')) return;
  restored = restore();
  const take = (file: KeptFile): void => {
    choose(form, file);
    changed();
  };
  // Stop `input` here: the form's listener would upload the file a second time.
  fileField()!.addEventListener('input', (event) => event.stopPropagation());
  fileField()!.addEventListener('change', () => {
    const file = fileField()!.files?.[0];
    if (file) take(picked(file));
  });
  watchText(form);
  watchDrop(form, take);
  watchPaste(form, take);
  form.addEventListener('submit', ({ submitter }) => {
    if (submitter instanceof HTMLButtonElement && submitter.classList.contains('choice')) settled.add(submitter.name);
  });
  form.addEventListener('click', ({ target }) => {
    const { id } = target as HTMLElement;
    if (id === 'stop') stopSending();
    if (id === 'take-away') {
      choose(form, null);
      fileField()!.focus();
      changed();
    }
  });
  watchSending();
}

/** Shows the progress of a long upload. */
function watchSending(): void {
  let patience: ReturnType<typeof setTimeout> | undefined;
  whileSending((sending) => {
    if (!sending) {
      clearTimeout(patience);
      patience = undefined;
      one('#sending')!.hidden = true;
      return;
    }
    const { sentBytes, allBytes } = sending;
    patience ??= setTimeout(() => (one('#sending')!.hidden = allBytes < LONG_BYTES), PATIENCE_MS);
    const bar = one<HTMLProgressElement>('#sending progress')!;
    bar.max = allBytes;
    bar.value = sentBytes;
    one('#sent')!.textContent =
      sentBytes < allBytes
        ? say('page.file.sent', { sent: sizeText(sentBytes, speaking), all: sizeText(allBytes, speaking) })
        : say('page.file.all-sent', { all: sizeText(allBytes, speaking) });
  });
}

const picked = (file: File): KeptFile => ({
  name: file.name || say('page.file.nameless'),
  body: file,
  isPasted: false,
});
const pasted = (text: string): KeptFile => ({ name: say('page.file.pasted'), body: new Blob([text]), isPasted: true });

/** Restores the file from before a reload if the browser stored one; otherwise takes the text in the box. */
async function restore(): Promise<void> {
  const box = pastedField()!;
  const kept = box.value.trim() === '' ? await keptFile().catch(() => undefined) : pasted(box.value);
  if (!kept || chosen) return;
  chosen = kept;
  await showIn(kept);
}

/** Shows the chosen file in the form: its name in the file field, or a short text in the box. */
async function showIn(file: KeptFile | null): Promise<void> {
  const given = new DataTransfer();
  if (file && !file.isPasted) given.items.add(file.body instanceof File ? file.body : new File([file.body], file.name));
  if (fileField()!.files?.[0] !== given.files[0]) fileField()!.files = given.files;
  const text = file?.isPasted && file.body.size <= MAX_SHOWN ? await file.body.text() : '';
  if (chosen === file && pastedField()!.value !== text) pastedField()!.value = text;
}

function choose(form: HTMLFormElement, file: KeptFile | null): void {
  chosen = file;
  for (const name of [...OF_ONE_FILE, ...settled]) {
    const field = form.querySelector<HTMLInputElement | HTMLSelectElement>(`:is(input, select)[name="${name}"]`);
    if (field) field.value = '';
  }
  settled.clear();
  const source = form.querySelector<HTMLInputElement>('[name="source"][value="file"]');
  if (file && source) source.checked = true;
  void showIn(file);
  keep();
}

/** Stores the chosen file in the browser. */
function keep(): void {
  const file = chosen;
  const isShort = !file || file.body.size <= FILE_LIMIT_BYTES;
  (file && isShort ? keepFile(file) : forgetFile()).then(
    () => (isKept = isShort),
    () => (isKept = file === null),
  );
}

/** Text typed or pasted into the box is a file as well. */
function watchText(form: HTMLFormElement): void {
  let resting: ReturnType<typeof setTimeout> | undefined;
  form.addEventListener('input', ({ target }) => {
    if (!(target instanceof HTMLTextAreaElement) || target.name !== 'pasted') return;
    chosen = target.value.trim() === '' ? null : pasted(target.value);
    fileField()!.value = '';
    clearTimeout(resting);
    resting = setTimeout(keep, REST_MS);
  });
}

/** Accepts a file dropped anywhere on the page; the page shows it while the file hovers. */
function watchDrop(form: HTMLFormElement, take: (file: KeptFile) => void): void {
  const mark = (isOver: boolean): boolean => document.documentElement.classList.toggle('dragging', isOver);
  const hasFile = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') ?? false;
  for (const name of ['dragenter', 'dragover'] as const) {
    document.addEventListener(name, (event) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      event.dataTransfer!.dropEffect = 'copy';
      mark(true);
    });
  }
  document.addEventListener('dragleave', ({ relatedTarget }) => {
    if (relatedTarget === null) mark(false);
  });
  document.addEventListener('drop', (event) => {
    mark(false);
    if (!hasFile(event)) return;
    event.preventDefault();
    const file = event.dataTransfer!.files[0];
    if (file) take(picked(file));
    form.querySelector('#file-state')?.scrollIntoView({ block: 'nearest' });
  });
}

/** Accepts a file pasted anywhere, or a text pasted outside the other fields; a long text is not put into the box. */
function watchPaste(form: HTMLFormElement, take: (file: KeptFile) => void): void {
  document.addEventListener('paste', (event) => {
    const file = event.clipboardData?.files[0];
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const field = (event.target as HTMLElement).closest('input, select, textarea, [contenteditable]');
    if (file && text === '') take(picked(file));
    else if (text.trim() !== '' && (!field || (field === pastedField() && text.length > MAX_SHOWN))) {
      take(pasted(text));
    } else return;
    event.preventDefault();
    form.querySelector('#file-state')?.scrollIntoView({ block: 'nearest' });
  });
}

/**
 * The file for a question once the service can read it. The service's report or questions are shown beside the file.
 *
 * @returns null if no file is chosen; undefined if it cannot be read, or not yet.
 */
export async function readableFile({
  question,
  shelf,
  reader,
}: Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>): Promise<FileGiven | null | undefined> {
  await restored;
  const file = chosen;
  const state = one('#file-state');
  if (!file) {
    check?.end();
    check = null;
    if (state && question.source === 'file') state.innerHTML = '';
    return null;
  }
  if (question.source !== 'file') return file;
  const show = (got: Result<ReportWire> | null): void =>
    render(state!, fileState({ ...file, bytes: file.body.size, isKept }, got, reader).markup);
  const request = checkRequest(question, shelf, file);
  // The report is worded for the degrees that the reader uses.
  const path = wordedFor(request.path, reader);
  if (check?.file !== file || check.path !== path) {
    check?.end();
    const ended = new AbortController();
    const got: Promise<Result<ReportWire>> =
      file.body.size > FILE_LIMIT_BYTES
        ? Promise.resolve({ problem: tooLarge(file.body.size, reader) })
        : get<ReportWire>(sendUntil(ended.signal), request);
    check = { file, path, got, end: () => ended.abort() };
    show(null);
  }
  const mine = check;
  const got = await mine.got;
  if (mine !== check) return undefined;
  show(got);
  if (!isFailure(got)) return file;
  // Ask again if a second try may succeed.
  const { status } = got.problem;
  if (status === 0 || status >= 500 || [400, 401, 429].includes(status)) check = null;
  return undefined;
}

/** Replaces the state if it differs, and keeps the focus in it. */
function render(state: HTMLElement, markup: string): void {
  if (shown === markup && state.innerHTML !== '') return;
  shown = markup;
  const hadFocus = state.contains(document.activeElement);
  state.innerHTML = markup;
  if (hadFocus) (state.querySelector<HTMLElement>('.problem button') ?? state).focus();
}

let shown = '';
