import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { request } from 'undici';
import { afterEach, describe, expect, it } from 'vitest';
import { openStore } from '../../src/storage/open-store.js';
import { emptySqlite } from '../storage/databases.js';
import { serve } from '../unit/egress/servers.js';
import { addressOf, killAll, run } from './run-service.js';

// Debian's, and of its own Python.
const PYTHON = '/usr/bin/python3';
const READER = new URL('read-metrics.py', import.meta.url).pathname;
const hasReader = spawnSync(PYTHON, ['-c', 'import prometheus_client']).status === 0;
const hasPromtool = spawnSync('promtool', ['--version']).status === 0;

interface Family {
  readonly name: string;
  readonly type: string;
  readonly help: string;
  readonly samples: readonly (readonly [name: string, labels: Readonly<Record<string, string>>, value: number])[];
}

function understood(metrics: string): Family[] {
  const { status, stdout } = spawnSync(PYTHON, [READER], { input: metrics, encoding: 'utf8' });
  if (status !== 0) throw new Error('The metrics were not understood');
  return JSON.parse(stdout) as Family[];
}

/** The metrics of a service that was asked this and that, some of it wrongly. */
async function metricsOf(address: string): Promise<string> {
  for (const path of ['/v1/crops', '/v1/crops/none', '/v1/places/%22%7D', '/nothing', '/v1/places?limit=x"']) {
    await (await request(address + encodeURI(path))).body.dump();
  }
  return (await request(`${address}/metrics`)).body.text();
}

describe('the metrics of a service that runs', () => {
  let remove: (() => Promise<void>) | undefined;
  afterEach(async () => {
    killAll();
    await remove?.();
    remove = undefined;
  });

  describe.skipIf(!hasReader && !process.env.CI)('read by Prometheus’s own client library', () => {
    it('are families with help and a type, no sample twice, and what the disk says of the database', async () => {
      const database = await emptySqlite();
      remove = database.remove;
      const address = await addressOf(run([], { DATABASE_URL: database.url }));
      const families = understood(await metricsOf(address));
      const samples = families.flatMap((family) => family.samples);
      expect(new Set(samples.map(([name, labels]) => JSON.stringify([name, labels]))).size).toBe(samples.length);
      expect(families.filter(({ type, help }) => help === '' || type === 'unknown')).toEqual([]);
      const sampleOf = (wanted: string, label?: string): number | undefined =>
        samples.find(([name, labels]) => name === wanted && (!label || Object.values(labels).includes(label)))?.[2];
      expect(sampleOf('http_refusals_total', 'not-found')).toBeGreaterThanOrEqual(2);
      expect(sampleOf('http_open_connections')).toBeGreaterThanOrEqual(1);
      // The file grows as its log is carried into it, between the metrics and the look at it too.
      const path = database.url.replace('sqlite:', '');
      const told = async () => /^forecaster_database_file_bytes (\d+)$/m.exec(await metricsOf(address))?.[1];
      await expect
        .poll(async () => [statSync(path).size, Number(await told()), statSync(path).size], { timeout: 20_000 })
        .toSatisfy((sizes: number[]) => sizes[0]! > 4096 && new Set(sizes).size === 1);
      expect(sampleOf('forecaster_database_file_bytes')).toBeGreaterThanOrEqual(4096);
      expect(sampleOf('forecaster_disk_free_bytes')).toBeGreaterThan(1e6);
      expect(sampleOf('forecaster_messages_waiting')).toBe(0);
      expect(sampleOf('forecaster_sources_asked_total')).toBe(0);
    });
  });

  it('count a message once it is delivered', async () => {
    const taken: string[] = [];
    const shed = await serve((asked, response) => {
      taken.push(asked.url ?? '');
      response.end();
    });
    const database = await emptySqlite();
    remove = async () => {
      await shed.close();
      await database.remove();
    };
    const store = await openStore(database.url);
    const fields = { url: shed.url, events: ['frost'] as const, beds: null, crops: null };
    await store.putSubscription('gardener', 'shed', fields, Date.now());
    const tellings = ['first', 'second'].map((body) => ({ subject: body, before: null, mark: 'told', body }));
    await store.addNotifications('gardener', 'shed', tellings, 'seen');
    expect(await store.messagesWaiting(10)).toBe(2);
    expect(await store.messagesWaiting(1)).toBe(1);
    await store.close();
    const address = await addressOf(run([], { DATABASE_URL: database.url, ALLOW_PRIVATE_WEBHOOKS: '1' }));
    await expect
      .poll(async () => (await request(`${address}/metrics`)).body.text(), { timeout: 20_000 })
      .toMatch(/^forecaster_deliveries_total\{outcome="delivered"\} 2$/m);
    expect(await (await request(`${address}/metrics`)).body.text()).toMatch(/^forecaster_messages_waiting 0$/m);
    expect(taken).toHaveLength(2);
  });

  it.skipIf(!hasPromtool)('are found clean by promtool', async () => {
    const address = await addressOf(run([], {}));
    const { status, stdout, stderr } = spawnSync('promtool', ['check', 'metrics'], {
      input: await metricsOf(address),
      encoding: 'utf8',
    });
    expect([status, stdout, stderr]).toEqual([0, '', '']);
  });
});
