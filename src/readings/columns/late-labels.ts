import { fileQuestion } from '../readings-facts.js';
import type { FileHints } from '../text/rows-read.js';
import { askChannel } from './ask-channel.js';
import { channelPlanOf } from './channels.js';
import type { FileLayout } from './file-layout.js';

/** Some rows of each label that the head of a file does not have. */
export type LateLabels = Map<string, string[][]>;

const MAX_LATE_LABELS = 60;
const MAX_ROWS_OF_A_LABEL = 20;
const MAX_HEAD_ROWS = 500;

/** Keeps a row of a label that comes late. Rows beyond the first few of a label show nothing new. */
export function keepLateRow(late: LateLabels, label: string, row: readonly string[]): void {
  const rows = late.get(label);
  if (rows) {
    if (rows.length < MAX_ROWS_OF_A_LABEL) rows.push([...row]);
  } else if (late.size < MAX_LATE_LABELS) late.set(label, [[...row]]);
}

/**
 * Asks which sensor is meant where one that came late fits as well as the one chosen from the head.
 *
 * @throws {RequestError} `choose-column`
 */
export function askAboutLateLabels(late: LateLabels, layout: FileLayout, hints: FileHints): void {
  if (late.size === 0 || hints.column !== null) return;
  const { table, columns, time, plan } = layout;
  const sample = [...table.sample.slice(0, MAX_HEAD_ROWS), ...[...late.values()].flat()];
  const again = channelPlanOf({ ...table, sample }, columns, time, hints);
  if (again.channels.length !== plan.channels.length) {
    throw askChannel(fileQuestion('choose-column.late'), again.channels, hints.medium);
  }
}
