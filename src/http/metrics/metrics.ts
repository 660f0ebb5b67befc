import { setTimeout } from 'node:timers/promises';
import type { HistogramReading } from '../../basics/histogram.js';

export type Labels = Readonly<Record<string, string>>;

/** One number, or one for each set of labels; undefined: unknown now, and left out. */
export type Reading<Value = number> = Value | readonly { readonly labels: Labels; readonly value: Value }[] | undefined;

/** Reads a metric; one that fails or takes too long is left out of that answer. */
export type ReadMetric<Value = number> = () => Reading<Value> | Promise<Reading<Value>>;

export interface Metrics {
  /** A value that rises and falls. */
  gauge(name: string, help: string, read: ReadMetric): void;
  /** A value that only rises; its name ends in `_total`. */
  counter(name: string, help: string, read: ReadMetric): void;
  histogram(name: string, help: string, read: ReadMetric<HistogramReading>): void;
  /** All metrics in the text format of Prometheus, version 0.0.4. */
  text(): Promise<string>;
}

/** Time limit for reading a metric [ms]: a hanging database does not hold up the rest. */
const MAX_READ_MS = 1_000;

/** Metrics that are read on request, each from its existing counter. */
export function metrics(): Metrics {
  const sources: ((tooLate: Promise<undefined>) => Promise<string>)[] = [];

  function add<Value>(
    type: 'gauge' | 'counter' | 'histogram',
    name: string,
    help: string,
    read: ReadMetric<Value>,
    linesOf: (name: string, labels: Labels, value: Value) => string[],
  ): void {
    sources.push(async (tooLate) => {
      const reading = Promise.resolve()
        .then(read)
        .catch(() => undefined);
      const found = await Promise.race([reading, tooLate]);
      if (found === undefined) return '';
      const all = Array.isArray(found)
        ? (found as { labels: Labels; value: Value }[])
        : [{ labels: {}, value: found as Value }];
      if (all.length === 0) return '';
      const lines = all.flatMap(({ labels, value }) => linesOf(name, labels, value));
      return `# HELP ${name} ${escaped(help)}\n# TYPE ${name} ${type}\n${lines.join('\n')}\n`;
    });
  }

  return {
    gauge: (name, help, read) => add('gauge', name, help, read, plainLines),
    counter: (name, help, read) => add('counter', name, help, read, plainLines),
    histogram: (name, help, read) => add('histogram', name, help, read, histogramLines),
    async text() {
      const ending = new AbortController();
      const tooLate = setTimeout(MAX_READ_MS, undefined, { signal: ending.signal }).catch(() => undefined);
      const all = await Promise.all(sources.map((source) => source(tooLate)));
      ending.abort();
      return all.join('');
    },
  };
}

const plainLines = (name: string, labels: Labels, value: number): string[] => [`${name}${labelsText(labels)} ${value}`];

const histogramLines = (name: string, labels: Labels, { bounds, upTo, count, sum }: HistogramReading): string[] => [
  ...bounds.map((bound, i) => `${name}_bucket${labelsText({ ...labels, le: String(bound) })} ${upTo[i]}`),
  `${name}_bucket${labelsText({ ...labels, le: '+Inf' })} ${count}`,
  `${name}_sum${labelsText(labels)} ${sum}`,
  `${name}_count${labelsText(labels)} ${count}`,
];

function labelsText(labels: Labels): string {
  const pairs = Object.entries(labels).map(([name, value]) => `${name}="${escaped(value).replaceAll('"', '\\"')}"`);
  return pairs.length === 0 ? '' : `{${pairs.join(',')}}`;
}

const escaped = (text: string): string => text.replaceAll('\\', '\\\\').replaceAll('\n', '\\n');
