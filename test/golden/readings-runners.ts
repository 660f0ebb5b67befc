import { findDate, fixedZone } from '../../src/basics/calendar.js';
import { RequestError } from '../../src/basics/errors.js';
import { celsiusFromFahrenheit } from '../../src/basics/units.js';
import { spikeTest } from '../../src/readings/checks/doubt-spike.js';
import { verdictBook } from '../../src/readings/checks/doubt-verdicts.js';
import { fileReader } from '../../src/readings/read-file.js';
import type { ReadSeries } from '../../src/readings/read-series.js';
import { type FileHints, noHints } from '../../src/readings/text/rows-read.js';
import type { Runners } from './out.js';

const HOUR_MS = 3_600_000;

export const readingsRunners: Runners = {
  'basics/units celsiusFromFahrenheit': ({ tempF }: { tempF: number }) => celsiusFromFahrenheit(tempF),

  'readings/doubt-spike: how far it stands out': ({ readingsC }: { readingsC: readonly number[] }) => {
    const isDropped = (grossSpikeK: number): boolean => {
      const book = verdictBook();
      const code = new Uint8Array(readingsC.length);
      const judged = {
        atMs: Float64Array.from(readingsC, (_, i) => i * HOUR_MS),
        valueC: Float64Array.from(readingsC),
        count: readingsC.length,
      };
      const limits = { coldestC: -30, hottestC: 60, stepK: Infinity, spikeK: 0, grossSpikeK };
      spikeTest(judged, limits, book, code)(0, readingsC.length);
      return code.some((one) => book.verdicts[one]!.drop);
    };
    // The limit at which the verdict turns, by bisection.
    let [dropped, kept] = [0, 100];
    while (kept - dropped > 1e-9) {
      const middle = (dropped + kept) / 2;
      if (isDropped(middle)) dropped = middle;
      else kept = middle;
    }
    return kept;
  },

  'readings/read-file: a day of the reference network': ({ line, column }: { line: string; column: string }) => {
    try {
      return { dayC: seriesOf([line], { column }).days[0]!.mean };
    } catch (error) {
      if (!(error instanceof RequestError)) throw error;
      const [fault] = error.faults;
      const [fact] = error.sentences;
      const isMark = typeof fault?.detail === 'object' && fault.detail.code === 'row.missing-mark';
      const value = isMark && typeof fact === 'object' && 'params' in fact ? fact.params.value : undefined;
      return { missing: value === undefined ? error.message : Number(value) };
    }
  },

  'readings/read-file: a month of the daily archive': ({ line, date }: { line: string; date: string }) => {
    // A day needs both its ends: the line of maxima is the same, under its own name.
    const { days } = seriesOf([line, line.replace('SN32', 'SX32')], {});
    return { minC: days.find((day) => day.date === findDate(date))?.min ?? null, characters: line.length };
  },
};

/** What the reader makes of a file of these lines. */
function seriesOf(lines: readonly string[], hints: Partial<FileHints>): ReadSeries {
  const reader = fileReader({ ...noHints, ...hints }, fixedZone(-480));
  reader.push(Buffer.from(lines.map((line) => `${line}\n`).join('')));
  const course = reader.finish();
  for (;;) {
    const next = course.next();
    if (next.done) return next.value.series;
  }
}
