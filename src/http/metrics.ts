/** One request that was answered. */
export interface Answered {
  /** As the OpenAPI document writes it; never an address that a caller made up. */
  readonly route: string;
  readonly method: string;
  readonly status: number;
  readonly seconds: number;
}

export interface Metrics {
  count(answered: Answered): void;
  /** Everything counted so far, in the text form of Prometheus, version 0.0.4. */
  text(memory: { readonly rss: number; readonly heapUsed: number }): string;
}

/** Upper bounds of the latency histogram [s]. */
const BOUNDS_S = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

/** Counts requests, and how long they took, by route. */
export function requestMetrics(): Metrics {
  const requests = new Map<string, number>();
  const latencies = new Map<string, { readonly upTo: number[]; count: number; seconds: number }>();
  return {
    count({ route, method, status, seconds }) {
      const labels = `route="${route}",method="${method}"`;
      const byStatus = `${labels},status="${status}"`;
      requests.set(byStatus, (requests.get(byStatus) ?? 0) + 1);
      const latency = latencies.get(labels) ?? { upTo: BOUNDS_S.map(() => 0), count: 0, seconds: 0 };
      BOUNDS_S.forEach((bound, i) => {
        if (seconds <= bound) latency.upTo[i]!++;
      });
      latency.count++;
      latency.seconds += seconds;
      latencies.set(labels, latency);
    },
    text: ({ rss, heapUsed }) =>
      [
        '# HELP http_requests_total Requests answered.',
        '# TYPE http_requests_total counter',
        ...[...requests].map(([labels, count]) => `http_requests_total{${labels}} ${count}`),
        '# HELP http_request_duration_seconds From the head of the request to the end of the answer.',
        '# TYPE http_request_duration_seconds histogram',
        ...[...latencies].flatMap(([labels, { upTo, count, seconds }]) => [
          ...BOUNDS_S.map((bound, i) => `http_request_duration_seconds_bucket{${labels},le="${bound}"} ${upTo[i]}`),
          `http_request_duration_seconds_bucket{${labels},le="+Inf"} ${count}`,
          `http_request_duration_seconds_sum{${labels}} ${seconds}`,
          `http_request_duration_seconds_count{${labels}} ${count}`,
        ]),
        '# HELP process_resident_memory_bytes Memory of the process.',
        '# TYPE process_resident_memory_bytes gauge',
        `process_resident_memory_bytes ${rss}`,
        '# HELP nodejs_heap_size_used_bytes Memory that its objects take.',
        '# TYPE nodejs_heap_size_used_bytes gauge',
        `nodejs_heap_size_used_bytes ${heapUsed}`,
        '',
      ].join('\n'),
  };
}
