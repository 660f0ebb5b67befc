import { once } from 'node:events';
import type { Socket } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import type { FastifyInstance } from 'fastify';
import { request } from 'undici';
import { afterEach, describe, expect, it } from 'vitest';
import { startApp } from '../api/helper.js';
import { answerTo, bodyOf, dial, headerOf, heard, peakOf, statusOf } from './raw-http.js';
import { addressOf, killAll, run } from './run-service.js';

const sockets: Socket[] = [];
const apps: FastifyInstance[] = [];
afterEach(async () => {
  for (const socket of sockets.splice(0)) socket.destroy();
  for (const app of apps.splice(0)) await app.close();
  killAll();
});

async function opened(address: string): Promise<Socket> {
  const socket = await dial(address);
  sockets.push(socket);
  return socket;
}

/** The service within this process, with limits that are reached soon. */
async function listening(options: Parameters<typeof startApp>[0]): Promise<string> {
  const app = await startApp(options);
  apps.push(app);
  return app.listen({ host: '127.0.0.1', port: 0 });
}

const ask = (path: string): string => `GET ${path} HTTP/1.1\r\nHost: localhost\r\n\r\n`;

describe('requests in a row on one connection', () => {
  it('that nobody reads the answers of take no memory, and others are served meanwhile', async () => {
    const service = run([], {});
    const address = await addressOf(service);
    expect((await request(`${address}/openapi.json`)).statusCode).toBe(200);
    for (let i = 0; i < 4; i++) {
      const socket = await opened(address);
      socket.pause();
      // 60 kB that ask for 600 MB.
      socket.write(ask('/openapi.json').repeat(1400));
    }
    for (let i = 0; i < 20; i++) {
      const answer = await request(`${address}/v1/crops/lettuce`);
      expect(answer.statusCode).toBe(200);
      await answer.body.dump();
      await wait(100);
    }
    expect(peakOf(service.child.pid!)).toBeLessThan(300);
  });

  it('few at a time, and slowly, take none either', async () => {
    const service = run([], { RATE_LIMIT: '0' });
    const address = await addressOf(service);
    const pipes = await Promise.all(Array.from({ length: 40 }, () => opened(address)));
    for (const pipe of pipes) pipe.pause();
    for (let round = 0; round < 20; round++) {
      for (const pipe of pipes) if (!pipe.destroyed) pipe.write(ask('/openapi.json').repeat(4));
      await wait(50);
    }
    expect((await request(`${address}/v1/crops/lettuce`)).statusCode).toBe(200);
    expect(peakOf(service.child.pid!)).toBeLessThan(350);
  });

  it('are answered one after another, in their order', async () => {
    const address = await listening({});
    const paths = Array.from({ length: 50 }, (_, i) => (i % 2 === 0 ? '/healthz' : '/v1/crops/lettuce'));
    const text = await answerTo(
      address,
      `${paths.map(ask).join('')}GET /healthz HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`,
    );
    const kinds = [...text.matchAll(/^content-type: ([a-z/]+)/gim)].map(([, type]) => type);
    expect(kinds).toEqual([
      ...paths.map((path) => (path === '/healthz' ? 'text/plain' : 'application/json')),
      'text/plain',
    ]);
  });

  it('change things in their order: what is asked behind a change sees it', async () => {
    const address = await listening({});
    const place = JSON.stringify({ name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' });
    const put = `PUT /v1/places/quillmere HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: ${place.length}\r\n\r\n${place}`;
    const text = await answerTo(
      address,
      `${put}${ask('/v1/places/quillmere')}DELETE /v1/places/quillmere HTTP/1.1\r\nHost: localhost\r\n\r\nGET /v1/places/quillmere HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`,
    );
    expect([...text.matchAll(/HTTP\/1\.1 (\d+)/g)].map(([, status]) => status)).toEqual(['201', '200', '204', '404']);
  });

  it('more than wait for their turn anywhere close the connection', async () => {
    const address = await listening({});
    const socket = await opened(address);
    socket.resume();
    socket.write(ask('/v1/crops').repeat(1400));
    await once(socket, 'close');
    expect((await request(`${address}/healthz`)).statusCode).toBe(200);
  });
});

describe('a connection that stands still', () => {
  const connections = { stillMs: 600, headersMs: 600, keepAliveMs: 600 };

  it('is closed when an answer is left unread', async () => {
    const address = await listening({ connections });
    const socket = await opened(address);
    socket.pause();
    socket.write(ask('/openapi.json').repeat(60));
    await wait(3000);
    const open = await new Promise<number>((resolve) => apps[0]!.server.getConnections((_, count) => resolve(count)));
    expect(open).toBe(0);
  });

  it('with half a body is answered by 408, in words', async () => {
    const address = await listening({ connections });
    for (const type of ['application/json', 'text/csv']) {
      const path = type === 'text/csv' ? '/v1/readings/check?medium=soil' : '/v1/forecasts';
      const head = `POST ${path} HTTP/1.1\r\nHost: localhost\r\nContent-Type: ${type}\r\nContent-Length: 1000\r\n\r\n`;
      const answer = await answerTo(address, `${head}{"crop":`, 4000);
      expect(statusOf(answer)).toBe(408);
      expect(bodyOf(answer)).toMatchObject({
        status: 408,
        code: 'too-slow',
        detail: expect.stringContaining('Send it again'),
      });
    }
  });

  it('with half its headers is answered by 408', async () => {
    const address = await listening({ connections: { ...connections, stillMs: 5000 } });
    const answer = await answerTo(address, 'GET /healthz HTTP/1.1\r\nHost: loc', 4000);
    expect(statusOf(answer)).toBe(408);
    const instance = `urn:uuid:${headerOf(answer, 'Request-Id')}`;
    expect(bodyOf(answer)).toMatchObject({ code: 'too-slow', instance });
    expect(headerOf(answer, 'Cache-Control')).toBe('no-store');
  });

  it('that trickles a body for longer than any takes is ended', async () => {
    const address = await listening({ connections: { ...connections, requestMs: 1500 } });
    const socket = await opened(address);
    socket.write(
      'POST /v1/forecasts HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n',
    );
    const trickle = setInterval(() => socket.write(' '), 100);
    const answer = await heard(socket, 6000);
    clearInterval(trickle);
    expect(statusOf(answer)).toBe(408);
  });

  it('is closed when nothing is asked of it', async () => {
    const address = await listening({ connections });
    const idle = await opened(address);
    const kept = await opened(address);
    kept.resume().write(ask('/healthz'));
    idle.resume();
    await Promise.all([once(idle, 'close'), once(kept, 'close')]);
  });
});

describe('connections', () => {
  it('of one address are so many and no more, and others take their place when they end', async () => {
    const address = await addressOf(run([], { MAX_CONNECTIONS_PER_ADDRESS: '20' }));
    const all = await Promise.all(Array.from({ length: 40 }, () => opened(address)));
    for (const socket of all) socket.resume();
    await wait(500);
    expect(all.filter(({ destroyed }) => !destroyed).length).toBe(20);
    for (const socket of all) socket.destroy();
    await wait(200);
    expect((await request(`${address}/healthz`)).statusCode).toBe(200);
  });

  it('of a proxy are not counted as one caller’s', async () => {
    const address = await addressOf(run([], { MAX_CONNECTIONS_PER_ADDRESS: '5', TRUST_PROXY: 'loopback' }));
    const all = await Promise.all(Array.from({ length: 20 }, () => opened(address)));
    for (const socket of all) socket.resume();
    await wait(500);
    expect(all.filter(({ destroyed }) => !destroyed).length).toBe(20);
  });

  it('of all are so many and no more', async () => {
    const address = await addressOf(run([], { MAX_CONNECTIONS: '10' }));
    const all = await Promise.all(Array.from({ length: 30 }, () => opened(address)));
    for (const socket of all) socket.resume();
    await wait(500);
    expect(all.filter(({ destroyed }) => !destroyed).length).toBe(10);
  });
});
