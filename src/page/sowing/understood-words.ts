import type { ReportWire } from '../../contract/readings.js';
import { type Html, html } from '../shell/html.js';
import { saidText } from '../shell/said-text.js';
import { degreesOf, plural, type Reader, span } from '../shell/words.js';

const UNITS = { C: '°C', F: '°F', K: 'kelvin' } as const;
const ORDERS: Readonly<Record<string, string>> = { dmy: 'dates with the day first', mdy: 'dates with the month first' };
const CLOCKS: Readonly<Record<string, string>> = {
  standard: 'its clock on standard time all year',
  utc: 'its clock on UTC',
};

/** What was understood of a file or a series, in a sentence, and what was left out of it, and why. */
export function understoodNote(report: ReportWire, reader: Reader): Html {
  const { rows, used, dropped, droppedCount, doubtful = [], doubtfulCount = 0, gaps, from, to, min, max } = report;
  const parts = [
    report.medium === 'air'
      ? 'Air'
      : `Soil ${report.probeDepthCm === undefined ? 'at the seed' : `${report.probeDepthCm} cm deep`}`,
    columnOf(report),
    `in ${UNITS[report.unit]}`,
    stepInWords(report.stepMinutes),
    ORDERS[report.dateOrder ?? ''],
    CLOCKS[report.clock ?? ''],
  ].filter((one) => one);
  const readings = `${plural(used, 'reading')}${used === rows ? '' : ` of ${plural(rows, 'row')}`}`;
  return html`<div class="understood"><p>${parts.join(', ')}${
    from !== null &&
    to !== null &&
    html`; ${span(from.slice(0, 10), to.slice(0, 10), reader, 'shortAndYear')} in the time zone ${report.timeZone}`
  }; ${readings}${min !== null && max !== null && ` between ${degreesOf(min, reader)} and ${degreesOf(max, reader)}`}.${
    gaps.length > 0 && ` ${plural(gaps.length, 'gap')}, the longest of ${plural(longest(gaps), 'hour')}.`
  }</p>${leftOut(droppedCount, dropped, 'left out', reader)}${leftOut(doubtfulCount, doubtful, 'hardly to be believed, but kept', reader)}</div>`;
}

const columnOf = ({ column, columns }: ReportWire): string => {
  const name = columns?.find(({ index }) => index === column)?.name;
  return column === undefined ? '' : `column ${column}${name ? `, “${name}”` : ''}`;
};

const longest = (gaps: ReportWire['gaps']): number => Math.round(Math.max(...gaps.map(({ hours }) => hours)));

function stepInWords(minutes: number | null): string {
  if (minutes === null) return '';
  if (minutes === 1440) return 'by the day';
  if (minutes === 60) return 'every hour';
  if (minutes === 1) return 'every minute';
  return minutes < 60 ? `every ${plural(minutes, 'minute')}` : `every ${plural(Math.round(minutes / 6) / 10, 'hour')}`;
}

const leftOut = (count: number, rows: ReportWire['dropped'], what: string, reader: Reader): Html | false =>
  count > 0 &&
  html`<details><summary>${plural(count, 'reading')} ${what}: why</summary><ul>${rows.map(({ line, value, why }) => html`<li>Line ${line}, “${value}”: ${saidText(why, reader)}</li>`)}</ul>${
    count > rows.length && html`<p>These are the first ${rows.length}.</p>`
  }</details>`;
