import type { ReportWire } from '../../contract/readings.js';
import { isFailure, type Result } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { problemNote } from '../shell/problem-note.js';
import type { FileGiven } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';
import { sizeText } from './file-check.js';
import { understoodNote } from './understood-words.js';

/** A chosen file and the service's report on it; null: it is being read. */
export const fileState = (
  file: FileGiven & { readonly bytes: number; readonly isKept: boolean },
  got: Result<ReportWire> | null,
  reader: PageReader,
): Html =>
  html`<p class="given"><bdi>${file.name || reader.say('page.file.pasted')}</bdi>, ${sizeText(file.bytes, reader)} <button type="button" id="take-away" class="quiet">${reader.say('page.file.take-away')}</button></p>
    ${got === null ? html`<p class="waiting">${reader.say('page.file.reading')}</p>` : isFailure(got) ? problemNote(got.problem, reader) : understoodNote(got.value, reader)}
    ${!file.isKept && html`<p class="aside">${reader.say('page.file.not-kept')}</p>`}`;

/** Note of a page without script that it cannot hold the file. */
export const chooseAgain = ({ name, text }: FileGiven, { say, tell }: PageReader): Html | false =>
  text === undefined &&
  html`<p class="given">${tell('page.file.choose-again', { name: html`<bdi>${name || say('page.file.pasted-plain')}</bdi>` })}</p>`;

/** Shown in place of the answer while the file cannot be read. */
export const unsettled = ({ say }: PageReader): Html => html`<p class="waiting">${say('page.file.unsettled')}</p>`;
