import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { setTimeout } from 'node:timers/promises';
import { request } from 'undici';
import { expect, test } from 'vitest';
import { exampleBed, exampleBedReadings, examplePlace } from '../../src/http/question/examples.js';
import { ownPostgres } from '../storage/own-postgres.js';

const root = new URL('../../', import.meta.url);

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as { port: number };
  await new Promise((done) => server.close(done));
  return port;
}

async function addressOf(child: ChildProcess): Promise<string> {
  let output = '';
  for await (const chunk of child.stdout!) {
    output += chunk;
    const address = /http:\/\/[\d.:]+\d/.exec(output)?.[0];
    if (address) return address;
  }
  throw new Error(`it did not start: ${output}`);
}

test('a database that crashes is missed in words, and found again when it is back', async (context) => {
  const server = await ownPostgres(await freePort());
  if (!server) return context.skip('PostgreSQL is not installed');
  const child = spawn(process.execPath, ['dist/main.js'], {
    cwd: root,
    env: { PATH: process.env.PATH, PORT: '0', DATABASE_URL: server.url },
  });
  try {
    const address = await addressOf(child);
    child.stdout.resume();
    const ask = async (method: 'GET' | 'PUT' | 'POST', path: string, body?: object) => {
      const response = await request(address + path, {
        method,
        ...(body ? { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) } : {}),
      });
      return { status: response.statusCode, headers: response.headers, text: await response.body.text() };
    };
    expect((await ask('PUT', '/v1/places/quillmere', examplePlace)).status).toBe(201);
    expect((await ask('PUT', '/v1/beds/north', exampleBed)).status).toBe(201);
    expect((await ask('POST', '/v1/beds/north/readings', exampleBedReadings)).status).toBe(200);

    await server.crash();
    const missed = await ask('GET', '/v1/places/quillmere');
    expect([missed.status, missed.headers['retry-after'], JSON.parse(missed.text).code]).toEqual([
      503,
      '5',
      'storage-unavailable',
    ]);
    expect((await ask('POST', '/v1/beds/north/readings', exampleBedReadings)).status).toBe(503);
    expect((await ask('GET', '/readyz')).status).toBe(503);
    expect((await ask('GET', '/healthz')).status).toBe(200);
    expect((await ask('GET', '/v1/crops')).status).toBe(200);

    // Recovering after a crash it may refuse to start at first.
    for (let tries = 0; tries < 50; tries++) {
      if (
        await server.start().then(
          () => true,
          () => false,
        )
      )
        break;
      await setTimeout(100);
    }
    for (let tries = 0; tries < 100 && (await ask('GET', '/readyz')).status !== 200; tries++) await setTimeout(100);
    const again = await ask('POST', '/v1/beds/north/readings', exampleBedReadings);
    expect(JSON.parse(again.text)).toMatchObject({ added: 0, unchanged: 3, replaced: 0 });
    child.kill('SIGTERM');
    expect(await once(child, 'exit')).toEqual([0, null]);
  } finally {
    child.kill('SIGKILL');
    await server.remove();
  }
});
