import type { ReportWire } from '../http/schemas/readings.js';
import { type Html, html } from './html.js';
import { degreesOf, plural, type Reader, shortDay } from './words.js';

const UNITS = { C: '°C', F: '°F', K: 'kelvin' } as const;

/** What was understood of a file or a series, in a sentence, and what was left out of it, and why. */
export function understoodNote(report: ReportWire, reader: Reader): Html {
  const { rows, used, dropped, droppedCount, doubtful = [], doubtfulCount = 0, gaps, min, max } = report;
  const parts = [
    report.medium === 'air'
      ? 'Air'
      : `Soil${report.probeDepthCm === undefined ? ' at the seed' : `, ${report.probeDepthCm} cm deep`}`,
    report.column !== undefined && report.columns
      ? `column ${report.column}, “${report.columns[report.column - 1]?.name ?? ''}”`
      : '',
    UNITS[report.unit],
    stepInWords(report.stepMinutes),
    `${plural(used, 'reading')}${used === rows ? '' : ` of ${plural(rows, 'row')}`}`,
  ].filter((one) => one !== '');
  return html`<div class="understood"><p>${parts.join(', ')}${
    report.from !== null && report.to !== null
      ? html`; ${shortDay(report.from.slice(0, 10), reader)} to ${shortDay(report.to.slice(0, 10), reader)}, time zone ${report.timeZone}`
      : ''
  }${min !== null && max !== null && html`; between ${degreesOf(min, reader)} and ${degreesOf(max, reader)}`}.${
    gaps.length > 0 && ` ${plural(gaps.length, 'gap')}, the longest ${longest(gaps)} hours.`
  }</p>${leftOut(droppedCount, dropped, 'left out')}${leftOut(doubtfulCount, doubtful, 'hardly to be believed, but kept')}</div>`;
}

const longest = (gaps: ReportWire['gaps']): number => Math.round(Math.max(...gaps.map(({ hours }) => hours)));

function stepInWords(minutes: number | null): string {
  if (minutes === null) return '';
  if (minutes === 1440) return 'by the day';
  if (minutes === 60) return 'every hour';
  return minutes < 60 ? `every ${plural(minutes, 'minute')}` : `every ${plural(Math.round(minutes / 6) / 10, 'hour')}`;
}

const leftOut = (count: number, rows: ReportWire['dropped'], what: string): Html | false =>
  count > 0 &&
  html`<details><summary>${plural(count, 'reading')} ${what}: why</summary><ul>${rows.map(({ line, value, why }) => html`<li>Line ${line}, “${value}”: ${why}</li>`)}</ul>${
    count > rows.length && html`<p>These are the first ${rows.length}.</p>`
  }</details>`;
