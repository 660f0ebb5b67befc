import { execFile } from 'node:child_process';
import { request as httpRequest } from 'node:http';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dial, memoryOf, peakOf } from './raw-http.js';
import { addressOf, killAll, type Run, run } from './run-service.js';

const runFile = promisify(execFile);
const MB = 1024 * 1024;
const KEY = 'plain-key-of-the-society';
const piece = Buffer.alloc(64 * 1024, 'It rained on the beds all night.\n');

interface Upload {
  readonly method: 'POST' | 'PUT';
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly bytes: number;
}

/** Clients as people have them. Each sends bytes of prose, and tells the status that it is answered by. */
type Client = (address: string, upload: Upload) => Promise<number>;

/** Sends all before it listens; its connection ends with the answer. */
const python: Client = async (address, { method, path, headers, bytes }) => {
  const script = `
import http.client, json, sys
address, method, path, headers, size, piece = sys.argv[1], sys.argv[2], sys.argv[3], json.loads(sys.argv[4]), int(sys.argv[5]), 65536
def body():
    left = size
    while left > 0:
        yield (b'It rained on the beds all night.\\n' * 2000)[:min(piece, left)]
        left -= min(piece, left)
connection = http.client.HTTPConnection(address, timeout=50)
connection.request(method, path, body=body(), headers={**headers, 'Content-Length': str(size)})
print(connection.getresponse().status)
`;
  const { host } = new URL(address);
  const { stdout } = await runFile('python3', [
    '-c',
    script,
    host,
    method,
    path,
    JSON.stringify(headers),
    String(bytes),
  ]);
  return Number(stdout);
};

/** Closes its side after the request, as urllib and most tools of one request do. */
const urllib: Client = async (address, { method, path, headers, bytes }) => {
  const script = `
import json, sys, urllib.error, urllib.request
address, method, path, headers, size = sys.argv[1], sys.argv[2], sys.argv[3], json.loads(sys.argv[4]), int(sys.argv[5])
body = (b'It rained on the beds all night.\\n' * (size // 33 + 1))[:size]
try:
    print(urllib.request.urlopen(urllib.request.Request(address + path, data=body, headers=headers, method=method), timeout=50).status)
except urllib.error.HTTPError as error:
    assert json.loads(error.read())['status'] == error.code
    print(error.code)
`;
  const { stdout } = await runFile('python3', [
    '-c',
    script,
    address,
    method,
    path,
    JSON.stringify(headers),
    String(bytes),
  ]);
  return Number(stdout);
};

const curl: Client = async (address, { method, path, headers, bytes }) => {
  const said = Object.entries(headers).flatMap(([name, value]) => ['-H', `${name}: ${value}`]);
  const command = `head -c ${bytes} /dev/zero | curl -sS -X ${method} -o /dev/null -w '%{http_code}' --data-binary @- "$@"`;
  const { stdout } = await runFile('sh', ['-c', command, 'sh', ...said, `${address}${path}`]);
  return Number(stdout);
};

const fetched: Client = async (address, { method, path, headers, bytes }) => {
  const response = await fetch(`${address}${path}`, { method, headers, body: Buffer.alloc(bytes, 'a') });
  const { status } = (await response.json()) as { status: number };
  expect(status).toBe(response.status);
  return status;
};

/** Gives all it has at once. */
const whole: Client = (address, { method, path, headers, bytes }) =>
  new Promise((done, fail) => {
    const sent = httpRequest(`${address}${path}`, { method, headers, agent: false });
    const answered = new Promise<number>((has) =>
      sent.on('response', (response) => has(response.resume().statusCode!)),
    );
    // Listens only once all is sent.
    sent.on('error', fail).on('finish', () => done(answered));
    sent.end(Buffer.alloc(bytes, 'It rained on the beds all night.\n'));
  });

/** Piece by piece; without a length, in chunks. */
const pieces =
  (hasLength: boolean): Client =>
  (address, { method, path, headers, bytes }) =>
    new Promise((done, fail) => {
      const length = hasLength ? { 'content-length': bytes } : {};
      const sent = httpRequest(`${address}${path}`, { method, headers: { ...headers, ...length } });
      sent.on('error', fail).on('response', (response) => done(response.resume().statusCode!));
      let left = bytes;
      const go = (): void => {
        while (left > 0) {
          const next = piece.subarray(0, Math.min(piece.length, left));
          left -= next.length;
          if (!sent.write(next)) return void sent.once('drain', go);
        }
        sent.end();
      };
      go();
    });

const clients: readonly (readonly [string, Client])[] = [
  ['Python’s http.client', python],
  ['Python’s urllib', urllib],
  ['curl', curl],
  ['fetch', fetched],
  ['Node’s http, all at once', whole],
  ['Node’s http, piece by piece', pieces(true)],
  ['Node’s http, without a length', pieces(false)],
];

const csv = { 'content-type': 'text/csv' };
const json = { 'content-type': 'application/json' };
const key = { authorization: `Bearer ${KEY}` };
const uploads: readonly (readonly [number, string, Omit<Upload, 'bytes'>])[] = [
  [401, 'a file without a key', { method: 'POST', path: '/v1/readings/check', headers: csv }],
  [
    401,
    'JSON with a wrong key',
    { method: 'PUT', path: '/v1/places/quillmere', headers: { ...json, authorization: 'Bearer guess' } },
  ],
  [404, 'a file to nowhere', { method: 'POST', path: '/v1/nowhere', headers: { ...csv, ...key } }],
  [413, 'JSON that is too large', { method: 'POST', path: '/v1/forecasts', headers: { ...json, ...key } }],
  [
    415,
    'a body of another kind',
    { method: 'POST', path: '/v1/forecasts', headers: { 'content-type': 'application/x-tar', ...key } },
  ],
  [
    415,
    'a packed body',
    { method: 'POST', path: '/v1/readings/check', headers: { ...csv, 'content-encoding': 'gzip', ...key } },
  ],
  [
    422,
    'a file with a parameter that is none',
    { method: 'POST', path: '/v1/readings/check?colour=red', headers: { ...csv, ...key } },
  ],
];

let service: Run;
let address: string;
beforeAll(async () => {
  service = run([], { API_KEYS: `society:${KEY}`, RATE_LIMIT: '0' });
  address = await addressOf(service);
});
afterAll(killAll);

describe.each(clients)('a refusal reaches %s', (_, send) => {
  it.each(uploads)('%i to %s', async (status, _what, upload) => {
    for (const bytes of [5 * MB, 20 * MB])
      expect([bytes, await send(address, { ...upload, bytes })]).toEqual([bytes, status]);
  });
});

describe('300 MB that are refused', () => {
  it.each([
    ['Python’s http.client', python],
    ['Node’s http, without a length', pieces(false)],
  ] as const)('are taken to their end and dropped, for %s', async (_, send) => {
    const upload = {
      method: 'POST',
      path: '/v1/readings/check?medium=soil',
      headers: { ...csv, ...key },
      bytes: 300 * MB,
    } as const;
    const before = memoryOf(service.child.pid!);
    expect([400, 413]).toContain(await send(address, upload));
    expect(await send(address, { ...upload, headers: csv })).toBe(401);
    expect(memoryOf(service.child.pid!) - before).toBeLessThan(100);
    expect(peakOf(service.child.pid!)).toBeLessThan(350);
  });

  it('are not waited for without end: what never ends is cut off', async () => {
    const socket = await dial(address);
    socket
      .resume()
      .write(
        'POST /v1/readings/check HTTP/1.1\r\nHost: localhost\r\nContent-Type: text/csv\r\nTransfer-Encoding: chunked\r\n\r\n',
      );
    const chunk = Buffer.concat([Buffer.from('100000\r\n'), Buffer.alloc(MB), Buffer.from('\r\n')]);
    let sent = 0;
    while (!socket.destroyed && sent < 700) {
      await new Promise((written) => socket.write(chunk, written));
      sent++;
    }
    expect(sent).toBeLessThan(600);
  });
});
