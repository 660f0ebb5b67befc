import { createServer, type Socket } from 'node:net';
import { text } from 'node:stream/consumers';
import { describe, expect, test } from 'vitest';
import { isPublicAddress } from '../../../src/egress/public-address.js';
import { type Sender, type SenderSettings, type Sent, webhookSender } from '../../../src/outbox/send-webhook.js';
import { answerWithoutEnd, closedAfterEach, serve } from '../egress/servers.js';
import { sayPlainly } from '../words/say-plainly.js';

const { open, server } = closedAfterEach();

/** A sender that may post to 127.0.0.1 alone, over http too, with short limits. */
function senderWith(settings: Partial<SenderSettings> = {}): Sender {
  const sender = webhookSender({
    userAgent: 'germination-forecaster/0.0.0-test',
    isAllowed: (address) => address === '127.0.0.1',
    allowHttp: true,
    ...settings,
    limits: { wholeMs: 5000, listenMs: 100, ...settings.limits },
  });
  open.push(sender);
  return sender;
}

const going = new AbortController().signal;
const headers = { 'webhook-id': 'msg_1' };
/** How it went, in plain words. */
async function send(url: string, settings: Partial<SenderSettings> = {}, body = '{"a":1}') {
  const sent: Sent = await senderWith(settings).send(url, headers, body, going);
  return 'error' in sent ? { ...sent, error: sayPlainly(sent.error) } : sent;
}
const never = (): void => {};

describe('a message is posted', () => {
  test('as JSON with its headers and the name of the project, and is delivered by any 2xx', async () => {
    const bodies: string[] = [];
    let status = 200;
    const { url, asked } = await server(async (request, response) => {
      bodies.push(await text(request));
      response.writeHead(status).end('thanks');
    });
    for (status of [200, 201, 202, 204, 299]) {
      expect(await send(`${url}/alerts?bed=north`, {}, '{"text":"Frost, 0 °C"}')).toEqual({ outcome: 'delivered' });
    }
    expect(new Set(bodies)).toEqual(new Set(['{"text":"Frost, 0 °C"}']));
    expect(asked[0]).toMatchObject({ method: 'POST', url: '/alerts?bed=north' });
    expect(asked[0]!.headers).toMatchObject({
      'content-type': 'application/json',
      'user-agent': 'germination-forecaster/0.0.0-test',
      'webhook-id': 'msg_1',
    });
  });

  test.each([400, 401, 404, 500, 503, 304, 303])('but not by %i', async (status) => {
    const { url, asked } = await server((_, response) => response.writeHead(status, { location: '/other' }).end());
    expect(await send(url)).toMatchObject({ outcome: 'failed', error: expect.stringContaining(`status ${status}`) });
    expect(asked).toHaveLength(1);
  });

  test('and 410 wants no more', async () => {
    const { url } = await server((_, response) => response.writeHead(410).end());
    expect(await send(url)).toMatchObject({ outcome: 'gone', error: expect.stringContaining('no more messages') });
  });

  test('and a receiver may ask to be left alone', async () => {
    let status = 429;
    const { url } = await server((_, response) => response.writeHead(status, { 'retry-after': '3600' }).end());
    for (status of [429, 503]) expect(await send(url)).toMatchObject({ outcome: 'failed', retryAfterMs: 3.6e6 });
  });
});

describe('a receiver cannot hold the service up', () => {
  const within = async <T>(ms: number, sending: Promise<T>): Promise<T> => {
    const before = performance.now();
    const sent = await sending;
    expect(performance.now() - before).toBeLessThan(ms);
    return sent;
  };

  test('with headers that do not come, or come drop by drop', async () => {
    const { url } = await server(never);
    expect(await within(4000, send(url, { limits: { headersMs: 60 } }))).toMatchObject({
      error: 'It did not begin to answer within 0.06 s.',
    });
    const dripping = createServer((socket) => {
      socket.on('error', never).write('HTTP/1.1 200 OK\r\n');
      const timer = setInterval(() => socket.write('X'), 10);
      socket.on('close', () => clearInterval(timer));
    });
    await new Promise<void>((done) => dripping.listen(0, '127.0.0.1', done));
    const { port } = dripping.address() as { port: number };
    const dripped = await within(4000, send(`http://127.0.0.1:${port}/`, { limits: { wholeMs: 300 } }));
    expect(dripped.outcome).toBe('failed');
    dripping.close();
  });

  test('with an answer that drips on, or stops: its status has said all', async () => {
    const { url } = await server((request, response) => {
      response.writeHead(200).write('.');
      if (request.url === '/stops') return;
      const timer = setInterval(() => response.write('.'), 5);
      response.on('close', () => clearInterval(timer));
    });
    for (const path of ['/drips', '/stops']) {
      expect(await within(4000, send(url + path))).toEqual({ outcome: 'delivered' });
    }
  });

  test('with an answer without end, of which no more than a few kB are taken', async () => {
    const endless = answerWithoutEnd();
    const { url } = await server(endless.answer);
    expect(await within(4000, send(url))).toEqual({ outcome: 'delivered' });
    expect(endless.sentBytes()).toBeLessThan(2e7);
  });

  test('with headers without end, hostile ones, or what is not HTTP', async () => {
    const answers: Record<string, (socket: Socket) => void> = {
      endless: (socket) => {
        socket.write('HTTP/1.1 200 OK\r\n');
        const more = () => socket.writable && socket.write(`X-Pad: ${'x'.repeat(8000)}\r\n`);
        const timer = setInterval(more, 1);
        socket.on('close', () => clearInterval(timer));
      },
      twice: (socket) => socket.end('HTTP/1.1 200 OK\r\ncontent-length: 1\r\ncontent-length: 9\r\n\r\nx'),
      nonsense: (socket) => socket.end('SSH-2.0-none\r\n'),
      control: (socket) => socket.end('HTTP/1.1 200 OK\r\nx: a\0b\r\n\r\n'),
      hints: (socket) => {
        const timer = setInterval(() => socket.write('HTTP/1.1 103 Early Hints\r\n\r\n'), 1);
        socket.on('close', () => clearInterval(timer));
      },
    };
    for (const [name, answer] of Object.entries(answers)) {
      const hostile = createServer((socket) => {
        socket.on('error', never);
        socket.once('data', () => answer(socket));
      });
      await new Promise<void>((done) => hostile.listen(0, '127.0.0.1', done));
      const { port } = hostile.address() as { port: number };
      expect(await within(4000, send(`http://127.0.0.1:${port}/`, { limits: { wholeMs: 1000 } })), name).toMatchObject({
        outcome: 'failed',
      });
      hostile.close();
    }
  });

  test('by resetting the connection, or not listening', async () => {
    const { url } = await server((request) => void request.socket.resetAndDestroy());
    expect(await send(url)).toMatchObject({ error: 'It broke off the connection.' });
    const gone = await serve(never);
    await gone.close();
    expect(await send(gone.url)).toMatchObject({ error: 'It refused the connection.' });
  });

  test('when the service stops', async () => {
    const { url } = await server(never);
    const stop = new AbortController();
    const sending = senderWith().send(url, headers, '{}', stop.signal);
    setTimeout(() => stop.abort(), 30);
    await expect(sending).rejects.toMatchObject({ name: 'AbortError' });
  });

  test('by what it says of itself: nothing of its answer is kept', async () => {
    const { url } = await server((_, response) => response.writeHead(400, 'inner secret').end('inner secret'));
    expect(await send(url)).toEqual({ outcome: 'failed', error: 'It answered with status 400.' });
  });
});

describe('a receiver that sends on', () => {
  test('is followed three times, with the same message', async () => {
    const seen: string[] = [];
    const { url, asked } = await server(async (request, response) => {
      seen.push(`${request.method} ${request.headers['webhook-id']} ${await text(request)}`);
      const n = Number(request.url!.slice(1));
      if (n === 3) response.end();
      else response.writeHead([301, 302, 307][n]!, { location: `/${n + 1}` }).end('moved');
    });
    expect(await send(`${url}/0`)).toEqual({ outcome: 'delivered' });
    expect(asked).toHaveLength(4);
    expect(new Set(seen)).toEqual(new Set(['POST msg_1 {"a":1}']));
  });

  test('in a circle is not', async () => {
    const { url, asked } = await server((_, response) => response.writeHead(308, { location: '/' }).end());
    expect(await send(url)).toMatchObject({ error: 'It sends on to another address more than 3 times.' });
    expect(asked).toHaveLength(4);
  });

  test.each([
    ['https://shed.example/', 'another scheme, https://'],
    ['file:///etc/passwd', 'another scheme, file://'],
    ['http://a:b@127.0.0.1/', 'user name'],
    ['http://[', 'an address that is no address'],
  ])('to %s is not followed there', async (location, why) => {
    const { url, asked } = await server((_, response) => response.writeHead(307, { location }).end());
    expect(await send(url)).toMatchObject({ outcome: 'failed', error: expect.stringContaining(why) });
    expect(asked).toHaveLength(1);
  });

  test.each([
    'http://127.0.0.2:1/',
    'http://10.0.0.1/',
    'http://169.254.169.254/latest/meta-data/',
    'http://[::1]/',
    'http://[::ffff:127.0.0.1]/',
    'http://2130706434/',
    'http://inner.example/',
  ])('to %s, which is not public, is not followed there', async (location) => {
    const { url, asked } = await server((_, response) => response.writeHead(307, { location }).end());
    const resolve = async () => ['10.0.0.1'];
    expect(await send(url, { resolve })).toMatchObject({ error: expect.stringContaining('ALLOW_PRIVATE_WEBHOOKS') });
    expect(asked).toHaveLength(1);
  });
});

describe('an address that is not public', () => {
  test('is not posted to, be it written out or named', async () => {
    const sender = { isAllowed: isPublicAddress };
    for (const host of ['127.0.0.1', '127.1', '2130706433', 'localhost', '0.0.0.0', '[::1]', '[::ffff:7f00:1]']) {
      expect(await send(`https://${host}:1/`, sender), host).toMatchObject({
        outcome: 'failed',
        error: expect.stringContaining('ALLOW_PRIVATE_WEBHOOKS'),
      });
    }
    const resolve = async () => ['93.184.216.34', '10.0.0.1'];
    expect(await send('https://shed.example/', { ...sender, resolve })).toMatchObject({
      error: expect.stringContaining('not a public address'),
    });
  });

  test('nor is one without encryption, with a password or with a fragment', async () => {
    const sender = { allowHttp: false, resolve: () => Promise.reject(new Error('looked up')) };
    for (const url of ['http://shed.example/', 'https://a:b@shed.example/', 'https://shed.example/#x', 'ftp://a/']) {
      expect(await send(url, sender), url).toMatchObject({
        error: expect.stringMatching(/^The address cannot be used: must /i),
      });
    }
  });
});
