import { FILE_LIMIT_BYTES } from '../../contract/file-limit.js';
import type { ReportWire } from '../../contract/readings.js';
import { get, isFailure, type Result, wordedFor } from '../shell/api.js';
import type { AskedQuestion, FileGiven } from '../shell/view.js';
import { checkRequest, sizeText, tooLarge } from '../sowing/file-check.js';
import { fileState } from '../sowing/file-state.js';
import { one } from './elements.js';
import { forgetFile, type KeptFile, keepFile, keptFile } from './kept-file.js';
import { sendUntil, stopSending, whileSending } from './send.js';
import { say, speaking } from './speaking.js';

/** A longer file is shown to be on its way [bytes], after a while [ms]. */
const LONG_BYTES = 1024 * 1024;
const PATIENCE_MS = 300;
/** How long typing has to rest before it is kept [ms]. */
const REST_MS = 200;
/** A longer text would make its box slow [characters]. */
const MAX_SHOWN = 512 * 1024;
/** Fields that say how one file is to be read, and mean nothing to the next. */
const OF_ONE_FILE = ['column', 'timeColumn', 'dateOrder', 'clock', 'decimalMark'];

let chosen: KeptFile | null = null;
let isKept = true;
/** What the service makes of the file, asked once for each way to read it. */
let check: { file: KeptFile; path: string; got: Promise<Result<ReportWire>>; end: () => void } | null = null;
/** Fields that a choice has set. */
const settled = new Set<string>();
let restored: Promise<void> = Promise.resolve();

const pastedField = () => one<HTMLTextAreaElement>('[name="pasted"]');
const fileField = () => one<HTMLInputElement>('[name="file"]');

/** Takes the file that is chosen in the form, dropped or pasted anywhere on the page, or typed into the form. */
export function watchFile(form: HTMLFormElement, changed: () => void): void {
  document.addEventListener('submit', (event) => {
    const leaving = event.target as HTMLFormElement;
    if (leaving.getAttribute('action') !== '/session') return;
    // Whoever has the key forgotten leaves nothing behind; `submit()` asks for no event of its own.
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
  // Its change is enough: the form's own ear would have the file sent twice.
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

/** A file that is long on its way is shown to be on its way. */
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

/** The file of before a reload, where one was kept; else what stands in the box. */
async function restore(): Promise<void> {
  const box = pastedField()!;
  const kept = box.value.trim() === '' ? await keptFile().catch(() => undefined) : pasted(box.value);
  if (!kept || chosen) return;
  chosen = kept;
  await showIn(kept);
}

/** Shows in the form which file is chosen: its name in the field of files, or a short text in the box. */
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

/** Has the browser keep what is chosen. */
function keep(): void {
  const file = chosen;
  const isShort = !file || file.body.size <= FILE_LIMIT_BYTES;
  (file && isShort ? keepFile(file) : forgetFile()).then(
    () => (isKept = isShort),
    () => (isKept = file === null),
  );
}

/** What is typed or pasted into the box is a file as well. */
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

/** A file may be dropped anywhere on the page, which shows that while it hovers. */
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

/** A file is pasted anywhere, a text anywhere but into another field; a long one is not put into the box. */
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
 * The file for a question, once the service can read it: what it makes of it, or asks, is shown beside the file.
 *
 * @returns null where none is chosen; undefined where it cannot be read, or not yet.
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
  // What it says is worded for the degrees that are read.
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
  // What a second try may mend is asked again.
  const { status } = got.problem;
  if (status === 0 || status >= 500 || [400, 401, 429].includes(status)) check = null;
  return undefined;
}

/** Replaces what is shown, where it differs; who stood in it stands in what came instead. */
function render(state: HTMLElement, markup: string): void {
  if (shown === markup && state.innerHTML !== '') return;
  shown = markup;
  const hadFocus = state.contains(document.activeElement);
  state.innerHTML = markup;
  if (hadFocus) (state.querySelector<HTMLElement>('.problem button') ?? state).focus();
}

let shown = '';
