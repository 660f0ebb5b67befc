import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { request } from 'undici';
import { afterEach, expect, it } from 'vitest';
import { examplePlace } from '../../src/http/question/examples.js';
import { addressOf, killAll, run } from './run-service.js';

const folder = await mkdtemp(join(tmpdir(), 'metrics-'));
afterEach(async () => {
  killAll();
  await rm(folder, { recursive: true });
});

it('the service gives a figure for every metric that its page for operators names', async () => {
  const address = await addressOf(run([], { DATABASE_URL: `sqlite:${join(folder, 'garden.db')}` }));
  const put = await request(`${address}/v1/places/quillmere`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(examplePlace),
  });
  expect(put.statusCode).toBe(201);
  await (await request(`${address}/v1/crops/carrot`)).body.dump();
  await (await request(`${address}/v1/crops/carrot`)).body.dump();
  expect((await request(`${address}/v1/crops/nothing`)).statusCode).toBe(404);
  const page = await (await request(`${address}/docs/running`)).body.text();
  const text = await (await request(`${address}/metrics`)).body.text();
  const figures = new Map(
    [...text.matchAll(/^(\w+(?:\{[^}]*\})?) (\S+)$/gm)].map(([, name, value]) => [name!, Number(value)]),
  );
  const named = [...page.matchAll(/(?<![\w$])(?:forecaster|http|process|nodejs)_\w+/g)].map(([name]) => name);
  expect(named.length).toBeGreaterThanOrEqual(15);
  const known = new Set([...figures.keys()].map((name) => name.replace(/\{.*/, '')));
  expect(named.filter((name) => !known.has(name))).toEqual([]);
  expect(figures.get('forecaster_cache_hits_total{cache="answers"}')).toBe(1);
  expect(figures.get('forecaster_cache_misses_total{cache="answers"}')).toBe(1);
  expect(figures.get('forecaster_cache_bytes{cache="series"}')).toBe(0);
  expect(figures.get('forecaster_database_writes_failing')).toBe(0);
});
