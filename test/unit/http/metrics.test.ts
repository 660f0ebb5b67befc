import { describe, expect, test } from 'vitest';
import { histogram } from '../../../src/basics/histogram.js';
import { metrics } from '../../../src/http/metrics/metrics.js';
import { type Seen, watch } from '../../../src/http/metrics/seen.js';

describe('the text form', () => {
  test('escapes labels and help as the form asks, so that no value can end a line or a label', async () => {
    const all = metrics();
    all.gauge('odd', 'A \\ and\na line.', () => [{ labels: { name: 'a"b\\c\nd' }, value: 1 }]);
    expect(await all.text()).toBe(
      ['# HELP odd A \\\\ and\\na line.', '# TYPE odd gauge', 'odd{name="a\\"b\\\\c\\nd"} 1', ''].join('\n'),
    );
  });

  test('leaves out what is not known now, and what fails, and gives all the rest', async () => {
    const all = metrics();
    all.gauge('unknown', 'Not known.', () => undefined);
    all.counter('failing_total', 'Fails.', () => Promise.reject(new Error('away')));
    all.counter('throwing_total', 'Fails at once.', () => {
      throw new Error('away');
    });
    all.gauge('none', 'No labels yet.', () => []);
    all.gauge('known', 'Is known.', async () => 7);
    expect(await all.text()).toBe('# HELP known Is known.\n# TYPE known gauge\nknown 7\n');
  });

  test('counts each value of a histogram under every bound that it does not exceed', async () => {
    const all = metrics();
    const waits = histogram([0.1, 1]);
    for (const seconds of [0.05, 0.1, 0.5, 3]) waits.observe(seconds);
    all.histogram('wait_seconds', 'Waits.', () => waits.read());
    expect((await all.text()).split('\n').slice(2)).toEqual([
      'wait_seconds_bucket{le="0.1"} 2',
      'wait_seconds_bucket{le="1"} 3',
      'wait_seconds_bucket{le="+Inf"} 4',
      'wait_seconds_sum 3.65',
      'wait_seconds_count 4',
      '',
    ]);
  });
});

describe('what is counted about the service', () => {
  const textOf = async (seen: Seen): Promise<string> => {
    const all = metrics();
    const unwatch = watch(all, seen, '1.2.3');
    const text = await all.text();
    unwatch();
    return text;
  };

  test('is read from those who count, each under its own label', async () => {
    const waits = histogram([1]);
    waits.observe(0.5);
    const text = await textOf({
      caches: { answers: () => ({ hits: 8, misses: 2, bytes: 4096, entries: 3 }) },
      work: () => ({
        waiting: { people: 4, background: 9 },
        running: 2,
        threads: 3,
        ended: { done: 5, deadline: 1 },
        waitedS: waits.read(),
        workedS: waits.read(),
      }),
      sources: { asked: 6, failed: 1, due: 2, longestOverdueS: 90 },
      deliveries: { delivered: 3, failed: 2, 'switched-off': 1, 'given-up': 0 },
      messagesWaiting: async () => 12,
      database: () => ({ fileBytes: 1000, walBytes: 10, diskFreeBytes: 5000 }),
      isWriteFailing: async () => true,
      openConnections: async () => 4,
    });
    for (const line of [
      'forecaster_cache_hits_total{cache="answers"} 8',
      'forecaster_cache_misses_total{cache="answers"} 2',
      'forecaster_cache_bytes{cache="answers"} 4096',
      'forecaster_work_waiting{priority="people"} 4',
      'forecaster_work_waiting{priority="background"} 9',
      'forecaster_work_running 2',
      'forecaster_work_ended_total{outcome="deadline"} 1',
      'forecaster_work_wait_seconds_bucket{le="1"} 1',
      'forecaster_sources_asked_total 6',
      'forecaster_source_overdue_seconds 90',
      'forecaster_deliveries_total{outcome="switched-off"} 1',
      'forecaster_messages_waiting 12',
      'forecaster_database_wal_bytes 10',
      'forecaster_disk_free_bytes 5000',
      'forecaster_database_writes_failing 1',
      'http_open_connections 4',
      `forecaster_build_info{version="1.2.3",node="${process.version}"} 1`,
    ]) {
      expect(text.split('\n')).toContain(line);
    }
  });

  test('leaves out what nobody counts, and still tells of the process', async () => {
    const text = await textOf({});
    expect(text).not.toMatch(/forecaster_(work|cache|sources|deliveries|database)/);
    const startS = Number(/^process_start_time_seconds (.+)$/m.exec(text)![1]);
    expect(Math.abs(startS - (Date.now() / 1000 - process.uptime()))).toBeLessThan(1);
  });

  test('sees a turn of the event loop that took too long, once, and an idle loop as in time', async () => {
    const all = metrics();
    const unwatch = watch(all, {}, '1.2.3');
    const turns = () => new Promise((done) => setTimeout(done, 100));
    const maxS = async (): Promise<number> =>
      Number(/^nodejs_eventloop_lag_max_seconds (.+)$/m.exec(await all.text())![1]);
    // What was on the way before is no part of this.
    await turns();
    await maxS();
    await turns();
    const until = performance.now() + 300;
    while (performance.now() < until);
    await turns();
    const seen = await maxS();
    expect(seen).toBeGreaterThan(0.25);
    expect(seen).toBeLessThan(3);
    await turns();
    expect(await maxS()).toBeLessThan(0.2);
    unwatch();
  });
});
