import { createHash } from 'node:crypto';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { errorCodes } from '../../src/basics/errors.js';
import { histogram } from '../../src/basics/histogram.js';
import { configSchema, readConfig, settings } from '../../src/config.js';
import { keyring } from '../../src/http/auth/keys.js';
import { metrics } from '../../src/http/metrics/metrics.js';
import { requestMetrics } from '../../src/http/metrics/request-metrics.js';
import { watch } from '../../src/http/metrics/seen.js';
import { readyAnswer } from '../../src/http/negotiation/ready-answer.js';
import { problemStatuses } from '../../src/http/problems/problems.js';
import { DEFAULT_CONNECTION_LIMITS } from '../../src/http/server/bounded-server.js';
import { scaleFigures } from '../../src/page/running/scale-figures.js';
import { servePage } from '../../src/page/server/serve.js';
import { simulate } from '../bench/scale-simulation.js';
import { startApp } from './helper.js';
import { rowsOf } from './rows-of.js';

const folder = await mkdtemp(join(tmpdir(), 'running-'));
await writeFile(join(folder, 'page.js'), '');
await writeFile(join(folder, 'page.css'), '');
const app = await startApp({
  page: servePage(pathToFileURL(`${folder}/`), readyAnswer, settings),
  findOwner: keyring(new Map([['s3cret', 'north']])),
});
afterAll(async () => {
  await app.close();
  await rm(folder, { recursive: true });
});
const { body: page, headers, statusCode } = await app.inject('/docs/running');

describe('the page for who runs the service', () => {
  test('is open without a key, whole without a script, and loads nothing but its own style sheet', () => {
    expect([statusCode, headers['content-type']]).toEqual([200, 'text/html; charset=utf-8']);
    expect(page).not.toMatch(/<script|<link|<img|\bsrc=|javascript:|@import|url\(/);
    const style = /<style>([\s\S]*?)<\/style>/.exec(page)![1]!;
    const digest = createHash('sha256').update(style).digest('base64');
    expect(headers['content-security-policy']).toContain(`default-src 'none'; style-src 'sha256-${digest}'`);
  });

  test('takes GET alone, and is linked from the documentation', async () => {
    const refused = await app.inject({ method: 'POST', url: '/docs/running' });
    expect([refused.statusCode, refused.headers.allow]).toEqual([405, 'GET, HEAD']);
    const { info } = (await app.inject('/openapi.json')).json<{ info: { description: string } }>();
    expect(info.description).toContain('(/docs/running)');
  });

  test('leads to places on it, or in the service, that are there', async () => {
    const links = [...page.matchAll(/href="([^"]+)"/g)].map(([, link]) => link!);
    expect(links.length).toBeGreaterThanOrEqual(8);
    for (const link of links) {
      if (link.startsWith('#')) expect(page).toContain(`id="${link.slice(1)}"`);
      else expect((await app.inject(link)).statusCode, link).toBe(200);
    }
  });

  test('has a table of every setting: names, defaults and meanings, in order', () => {
    const described = Object.entries(configSchema.shape).map(([name, { description }]) => [name, description]);
    expect(described.length).toBeGreaterThanOrEqual(15);
    const rows = rowsOf(page, 'settings');
    expect(rows.map(([name, , does]) => [name, does])).toEqual(described);
    // A default is what the setting is where nobody sets it.
    const unset = readConfig({});
    for (const [name, usual] of rows) expect(readConfig({ [name!]: usual }), name).toEqual(unset);
    expect(rows.filter(([, usual]) => usual !== '').length).toBeGreaterThanOrEqual(13);
  });

  test('names each setting as it is called, with its default where it tells one', async () => {
    const dockerfile = await readFile(new URL('../../Dockerfile', import.meta.url), 'utf8');
    const code = [...page.matchAll(/<(code|pre)>(.*?)<\/\1>/gs)].map(([, , text]) =>
      text!.replaceAll(/<i>.*?<\/i>/gs, ''),
    );
    const settings = code.flatMap((text) =>
      [...text.matchAll(/^[A-Z]{4,}(?:_[A-Z]+)*$|\b[A-Z]+(?:_[A-Z]+)*(?==)|\b[A-Z]+(?:_[A-Z]+)+\b/gm)].map(
        ([name]) => name,
      ),
    );
    expect(new Set(settings).size).toBeGreaterThanOrEqual(14);
    // One is of the C library and not ours; the image has it set.
    expect(settings.filter((name) => !Object.hasOwn(configSchema.shape, name))).toEqual(['MALLOC_ARENA_MAX']);
    expect(dockerfile).toContain('\nENV MALLOC_ARENA_MAX=2\n');
    expect(page).toContain('<code>MALLOC_ARENA_MAX=2</code>');
    const defaults = configSchema.parse({});
    const told = [...page.matchAll(/<code>([A-Z_]+)<\/code> \((\d+)\)/g)];
    expect(told.length).toBeGreaterThanOrEqual(4);
    for (const [, name, value] of told) expect(defaults[name as keyof typeof defaults], name).toBe(Number(value));
    expect(page).toContain(`keeps them for ${DEFAULT_CONNECTION_LIMITS.keepAliveMs / 1000} seconds`);
  });

  test('explains every 503 that there is, and no other code', () => {
    const section = page.slice(page.indexOf('id="refusals"'));
    const explained = [...section.matchAll(/<dt><code>([^<]+)<\/code>/g)].map(([, code]) => code!);
    const all = errorCodes.filter((code) => problemStatuses[code] === 503);
    expect(explained.sort()).toEqual([...all].sort());
  });

  test('names no metric that the service does not have', async () => {
    const all = metrics();
    requestMetrics(all).refused('busy');
    const reading = histogram([1]).read();
    const unwatch = watch(
      all,
      {
        caches: { answers: () => ({ hits: 0, misses: 0, bytes: 0, entries: 0 }) },
        work: () => ({
          waiting: { people: 0 },
          running: 0,
          threads: 0,
          ended: { done: 0 },
          waitedS: reading,
          workedS: reading,
        }),
        sources: { asked: 0, failed: 0, due: 0, longestOverdueS: 0 },
        deliveries: { delivered: 0, failed: 0, 'switched-off': 0, 'given-up': 0 },
        messagesWaiting: async () => 0,
        database: () => ({ fileBytes: 0, walBytes: 0, diskFreeBytes: 0 }),
        isWriteFailing: async () => false,
        openConnections: async () => 0,
      },
      '1.0.0',
    );
    const text = await all.text();
    unwatch();
    const known = new Set([...text.matchAll(/^# TYPE (\S+) /gm)].map(([, name]) => name!));
    const named = [...page.matchAll(/(?<![\w$])(?:forecaster|http|process|nodejs)_\w+/g)].map(([name]) =>
      name.replace(/_bucket$/, ''),
    );
    expect(new Set(named).size).toBeGreaterThanOrEqual(10);
    expect(named.filter((name) => !known.has(name))).toEqual([]);
  });
});

test('the figures of 100,000 gardens on it are what the simulation makes of the costs on it', () => {
  const { costs, assumptions, machines } = scaleFigures;
  expect(assumptions.gardens).toBe(100_000);
  // The least of them: all four would take the time of all.
  const [{ machine, scale }] = [...machines].sort((a, b) => a.machine.instances - b.machine.instances) as [
    (typeof machines)[number],
  ];
  expect(simulate(costs, assumptions, machine)).toEqual(scale);
  for (const one of machines) {
    expect(page).toContain(one.machine.name);
    expect(page).toContain(one.scale.walls[0]!.gardens.toLocaleString('en-GB'));
  }
  expect(page).toContain(scaleFigures.measuredOn);
}, 120_000);
