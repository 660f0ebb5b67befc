import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { type AddressInfo, connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import { readyAnswer } from '../../src/http/negotiation/ready-answer.js';
import { model } from '../../src/http/openapi/model.js';
import { servePage } from '../../src/page/server/serve.js';
import { workerPool } from '../../src/worker/worker-pool.js';
import { askerOf, dateAfter, quillmere, startApp } from './helper.js';

const ending: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const end of ending.splice(0).reverse()) await end();
});

test('what is worked out for a page ends when its reader goes', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'page-gone-'));
  ending.push(() => rm(folder, { recursive: true }));
  for (const name of ['page.js', 'page.css']) await writeFile(join(folder, name), '');
  const work = workerPool({ modelVersion: model.version, threads: 1 });
  const app = await startApp({ page: servePage(pathToFileURL(`${folder}/`), readyAnswer), work });
  ending.push(() => app.close());
  const ask = askerOf(app);
  const daily = Array.from({ length: 4 * 365 }, (_, day) => ({ date: dateAfter('2023-08-01', day), min: 6, max: 16 }));
  await ask('PUT', '/v1/places/quillmere', { name: 'Quillmere Allotment Society', ...quillmere });
  await ask('POST', '/v1/places/quillmere/air', { medium: 'air', daily });
  await ask('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed', kind: 'raised-bed' });
  await app.listen({ port: 0, host: '127.0.0.1' });
  const socket = connect((app.server.address() as AddressInfo).port, '127.0.0.1');
  socket.write('GET /?bed=north&crop=lettuce&sowing=2027-08-03&whole=1 HTTP/1.1\r\nHost: localhost\r\n\r\n');
  // A thread takes a while to start: the question has been asked by then, and is not yet answered.
  await expect.poll(() => work.stats().working, { timeout: 10_000, interval: 1 }).toBe(1);
  socket.destroy();
  await expect.poll(() => work.stats().working, { timeout: 60_000 }).toBe(0);
  const { stopped, done } = work.stats();
  expect({ stopped, done }).toEqual({ stopped: 1, done: 0 });
});
