import { once } from 'node:events';
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, expect, test } from 'vitest';
import { patientFetch } from '../../../src/demo/patient-fetch.js';

const server = createServer();
afterEach(() => {
  server.closeAllConnections();
  server.close();
  server.removeAllListeners('request');
});

/** Serves on a free port, and gives its address. */
async function serve(answer: RequestListener): Promise<string> {
  server.on('request', answer).listen(0, '127.0.0.1');
  await once(server, 'listening');
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}

test('a busy service is asked again, not sooner than it says, and with the same body', async () => {
  const asked: { atMs: number; body: string }[] = [];
  const url = await serve(async (request, response) => {
    const body = (await request.toArray()).join('');
    asked.push({ atMs: performance.now(), body });
    if (asked.length === 1) response.writeHead(503, { 'retry-after': '1' }).end('{"code":"busy"}');
    else response.end('well');
  });
  expect(await (await patientFetch(url, { method: 'PUT', body: 'beans' })).text()).toBe('well');
  expect(asked.map(({ body }) => body)).toEqual(['beans', 'beans']);
  // Timers may be a millisecond early.
  expect(asked[1]!.atMs - asked[0]!.atMs).toBeGreaterThanOrEqual(999);
});

test('a service that stays busy is given up in the end, and one that names no time at once', async () => {
  let tries = 0;
  const url = await serve((request, response) => {
    tries++;
    response.writeHead(503, request.url === '/soon' ? { 'retry-after': '0' } : {}).end();
  });
  expect((await patientFetch(`${url}soon`, {})).status).toBe(503);
  expect(tries).toBe(10);
  expect((await patientFetch(`${url}never`, {})).status).toBe(503);
  expect(tries).toBe(11);
});
