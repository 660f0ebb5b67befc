import type { ReportWire } from '../../contract/readings.js';
import { type Html, type HtmlPart, html } from '../shell/html.js';
import { degreesOf, numberText, type PageReader, span } from '../shell/words.js';

/** What was understood of a file or a series, in a sentence, and what was left out and why. */
export function understoodNote(report: ReportWire, reader: PageReader): Html {
  const { rows, used, dropped, droppedCount, doubtful = [], doubtfulCount = 0, gaps, from, to, min, max } = report;
  const { say, tell } = reader;
  const parts = [
    report.medium === 'air' ? say('page.read.air') : say('page.read.soil', { depth: depthOf(report, reader) }),
    columnOf(report, reader),
    say('page.read.in', { unit: report.unit === 'K' ? say('page.file.kelvin') : `°${report.unit}` }),
    stepInWords(report.stepMinutes, reader),
    report.dateOrder === 'dmy' || report.dateOrder === 'mdy' ? say(`page.read.${report.dateOrder}`) : '',
    report.clock === 'standard' || report.clock === 'utc' ? say(`page.read.${report.clock}`) : '',
  ].filter((one) => one !== '');
  const readings = say('page.read.used', {
    readings: say('page.of.readings', { count: used }),
    rows: used === rows ? -1 : rows,
  });
  const days: HtmlPart =
    from !== null &&
    to !== null &&
    html`; ${tell('page.read.days', { days: span(from.slice(0, 10), to.slice(0, 10), reader, 'shortAndYear'), zone: report.timeZone })}`;
  const between =
    min !== null &&
    max !== null &&
    ` ${say('page.read.between', { min: degreesOf(min, reader), max: degreesOf(max, reader) })}`;
  const gapped = gaps.length > 0 && ` ${say('page.read.gaps', { gaps: gaps.length, hours: longest(gaps) })}`;
  return html`<div class="understood"><p>${parts.join(', ')}${days}; ${readings}${between}.${gapped}</p>${leftOut(droppedCount, dropped, 'left-out', reader)}${leftOut(doubtfulCount, doubtful, 'doubtful', reader)}</div>`;
}

const depthOf = ({ probeDepthCm }: ReportWire, reader: PageReader): string =>
  probeDepthCm === undefined ? 'none' : numberText(probeDepthCm, reader);

function columnOf({ column, columns }: ReportWire, { say }: PageReader): string {
  if (column === undefined) return '';
  const { name = '' } = columns?.find(({ index }) => index === column) ?? {};
  return say('page.read.column', { column, name, hasName: name === '' ? 'no' : 'yes' });
}

const longest = (gaps: ReportWire['gaps']): number => Math.round(Math.max(...gaps.map(({ hours }) => hours)));

function stepInWords(minutes: number | null, { say }: PageReader): string {
  if (minutes === null) return '';
  if (minutes === 1440) return say('page.read.by-day');
  if (minutes === 60) return say('page.read.every-hour');
  if (minutes === 1) return say('page.read.every-minute');
  const step =
    minutes < 60
      ? say('page.of.minutes', { count: minutes })
      : say('page.of.hours', { count: Math.round(minutes / 6) / 10 });
  return say('page.read.every', { step });
}

const leftOut = (
  count: number,
  rows: ReportWire['dropped'],
  what: 'left-out' | 'doubtful',
  { say, tell }: PageReader,
): Html | false =>
  count > 0 &&
  html`<details><summary>${say(`page.read.${what}`, { count })}</summary><ul>${rows.map(({ line, value, why }) => html`<li>${tell('page.read.line', { line, value, why })}</li>`)}</ul>${
    count > rows.length && html`<p>${say('page.read.first', { count: rows.length })}</p>`
  }</details>`;
