import { type Histogram, histogram } from '../../basics/histogram.js';
import type { Labels, Metrics } from './metrics.js';

/** One answered request. */
export interface AnsweredRequest {
  /** In the syntax of the OpenAPI document; never an address that a caller made up. */
  readonly route: string;
  readonly method: string;
  readonly status: number;
  readonly seconds: number;
}

export interface RequestCounts {
  answered(request: AnsweredRequest): void;
  /** Counts a problem by its code. */
  refused(code: string): void;
}

/** Counts requests by route, method and status, their duration, and refusals by code. */
export function requestMetrics({ counter, histogram: addHistogram }: Metrics): RequestCounts {
  const requests = byLabels(() => ({ count: 0 }));
  const latencies = byLabels<Histogram>(histogram);
  const refusals = byLabels(() => ({ count: 0 }));
  counter('http_requests_total', 'Requests answered.', () => requests.read(({ count }) => count));
  addHistogram('http_request_duration_seconds', 'Time from the head of the request to the end of the answer.', () =>
    latencies.read((one) => one.read()),
  );
  counter('http_refusals_total', 'Problems sent, by their code.', () => refusals.read(({ count }) => count));
  return {
    answered({ route, method, status, seconds }) {
      requests.of({ route, method, status: String(status) }).count++;
      latencies.of({ route, method }).observe(seconds);
    },
    refused(code) {
      refusals.of({ code }).count++;
    },
  };
}

/** One value for each set of labels, created on first use. */
function byLabels<T>(make: () => T) {
  const known = new Map<string, { readonly labels: Labels; readonly kept: T }>();
  return {
    of(labels: Labels): T {
      let key = '';
      for (const name in labels) key += `${labels[name]} `;
      const one = known.get(key);
      if (one) return one.kept;
      const kept = make();
      known.set(key, { labels, kept });
      return kept;
    },
    read: <Value>(shown: (kept: T) => Value) =>
      [...known.values()].map(({ labels, kept }) => ({ labels, value: shown(kept) })),
  };
}
