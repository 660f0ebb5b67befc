import type { ReportWire } from '../../contract/readings.js';
import { type Got, isRefused } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { problemNote } from '../shell/problem-note.js';
import type { FileGiven } from '../shell/view.js';
import type { Reader } from '../shell/words.js';
import { sizeText } from './file-check.js';
import { understoodNote } from './understood-words.js';

/** A file that is chosen, and what the service makes of it; null: it is being read. */
export const fileState = (
  file: FileGiven & { readonly bytes: number; readonly isKept: boolean },
  got: Got<ReportWire> | null,
  reader: Reader,
): Html =>
  html`<p class="given"><bdi>${file.name}</bdi>, ${sizeText(file.bytes)} <button type="button" id="take-away" class="quiet">Take the file away</button></p>
    ${got === null ? html`<p class="waiting">Reading it …</p>` : isRefused(got) ? problemNote(got.problem, reader) : understoodNote(got.value, reader)}
    ${!file.isKept && html`<p class="aside">This browser cannot keep the file: after a reload it has to be chosen again.</p>`}`;

/** What a page without script says of a file that it cannot hold. */
export const chooseAgain = ({ name, text }: FileGiven): Html | false =>
  text === undefined &&
  html`<p class="given"><bdi>${name}</bdi> was read, but a page without JavaScript cannot hold it: it is long, or no plain text in UTF-8. Choose it again with the next question.</p>`;

/** What stands for the answer as long as the file cannot be read. */
export const UNSETTLED = html`<p class="waiting">The answer will stand here once the file can be read. What is missing stands beside the file.</p>`;
