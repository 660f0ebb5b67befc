import { request } from 'undici';
import { afterEach, expect, it } from 'vitest';
import { type EmptyDatabase, emptySqlite } from '../storage/databases.js';
import { addressOf, killAll, run } from './run-service.js';

let database: EmptyDatabase | undefined;
afterEach(async () => {
  killAll();
  await database?.remove();
});

/** So many requests a minute: so few that hardly one comes back while the test lasts. */
const LIMIT = 10;

it('two instances on one database let an owner send no more than the limit, whichever of them is asked', async () => {
  database = await emptySqlite();
  const settings = { DATABASE_URL: database.url, RATE_LIMIT: String(LIMIT), API_KEYS: 'ann:key-of-ann,ben:key-of-ben' };
  const first = await addressOf(run([], settings));
  const second = await addressOf(run([], settings));
  const started = performance.now();
  const ask = async (address: string, key: string) => {
    const { statusCode, headers, body } = await request(`${address}/v1/crops/lettuce`, {
      headers: { authorization: `Bearer ${key}` },
    });
    await body.dump();
    return { statusCode, headers };
  };
  const answers = await Promise.all(
    Array.from({ length: 40 }, (_, i) => ask(i % 2 === 0 ? first : second, 'key-of-ann')),
  );
  const cameBack = Math.ceil((LIMIT * (performance.now() - started)) / 60_000);
  const allowed = answers.filter(({ statusCode }) => statusCode === 200);
  expect(allowed.length).toBeGreaterThanOrEqual(LIMIT);
  expect(allowed.length).toBeLessThanOrEqual(LIMIT + cameBack);
  for (const { statusCode, headers } of answers) {
    if (statusCode === 200) continue;
    expect(statusCode).toBe(429);
    expect(headers['retry-after']).toBe(headers['ratelimit-reset']);
  }
  expect((await ask(second, 'key-of-ben')).statusCode).toBe(200);
});
