import { setTimeout as wait } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { request } from 'undici';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cpuOf, dial, memoryOf, peakOf } from './raw-http.js';
import { addressOf, killAll, type Run, run } from './run-service.js';

const MB = 1024 * 1024;
const KEY = 'plain-key-of-the-society';

describe('JSON that is made to keep the service busy', () => {
  let service: Run;
  let address: string;
  beforeAll(async () => {
    service = run([], { RATE_LIMIT: '0' });
    address = await addressOf(service);
    // What is made at the first question is no part of what the next ones cost.
    await sent('{"medium":"soil","daily":[{"date":"2027-05-03","mean":9},{"date":"2027-05-04","mean":9}]}');
  });
  afterAll(killAll);

  const sent = (body: string) =>
    request(`${address}/v1/readings/check`, { method: 'POST', headers: { 'content-type': 'application/json' }, body });
  const upTo4Mb = (piece: string, start = '', end = '') =>
    `${start}${piece.repeat(Math.floor((4 * MB - start.length - end.length) / piece.length))}${end}`;

  const bodies: readonly (readonly [string, () => string])[] = [
    ['lists in lists', () => upTo4Mb('[')],
    ['objects in objects', () => upTo4Mb('{"a":')],
    ['lists and objects in turn', () => upTo4Mb('[{"a":')],
    ['two million noughts', () => upTo4Mb(',0', '[0', ']')],
    ['two million noughts where readings stand', () => upTo4Mb(',0', '{"medium":"soil","readings":[0', ']}')],
    ['a million empty lists', () => upTo4Mb(',[]', '{"medium":"soil","readings":[[]', ']}')],
    ['100,000 fields', () => `{${Array.from({ length: 100_000 }, (_, i) => `"field-${i}":0`).join(',')}}`],
    [
      '100,000 fields in a reading',
      () => `{"medium":"soil","readings":[{${Array.from({ length: 100_000 }, (_, i) => `"field-${i}":0`).join(',')}}]}`,
    ],
    ['a text that never ends', () => upTo4Mb('\\"', '{"medium":"')],
  ];

  it.each(bodies)('4 MB of %s are refused as the caller’s mistake, soon', async (_, make) => {
    const body = make();
    const times = 5;
    const before = cpuOf(service.child.pid!);
    for (let i = 0; i < times; i++) {
      const answer = await sent(body);
      expect([400, 422]).toContain(answer.statusCode);
      const { detail } = (await answer.body.json()) as { detail: string };
      expect(detail.length).toBeLessThan(400);
    }
    // To take in 4 MB and to look at each byte once: about 25 ms.
    expect((cpuOf(service.child.pid!) - before) / times).toBeLessThan(100);
  });

  it('takes no memory', () => {
    expect(peakOf(service.child.pid!)).toBeLessThan(400);
  });

  it('leaves what is large for a reason alone: 50,000 readings, and braces in texts', async () => {
    const readings = Array.from({ length: 50_000 }, (_, i) => ({
      at: new Date(Date.UTC(2027, 4, 3) + i * 60_000).toISOString(),
      value: 9,
    }));
    expect((await sent(JSON.stringify({ medium: 'soil', readings }))).statusCode).toBe(200);
    const braces = await sent(JSON.stringify({ medium: '[{"\\'.repeat(1000) }));
    expect(((await braces.body.json()) as { detail: string }).detail).toContain('medium');
  });
});

describe('packed bodies', () => {
  afterAll(killAll);

  it('are refused with what to do instead, before anything is unpacked', async () => {
    const address = await addressOf(run([], {}));
    for (const coding of ['gzip', 'br', 'deflate', 'zstd', 'gzip, gzip']) {
      const answer = await request(`${address}/v1/forecasts`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'content-encoding': coding },
        body: gzipSync('{"crop":"lettuce"}'),
      });
      expect([answer.statusCode, answer.headers['accept-encoding']]).toEqual([415, 'identity']);
      expect(await answer.body.json()).toMatchObject({ code: 'unsupported-coding' });
    }
    const plain = await request(`${address}/v1/readings/check`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'content-encoding': 'identity' },
      body: '{"medium":"soil","daily":[{"date":"2027-05-03","mean":9}]}',
    });
    expect(plain.statusCode).toBe(200);
  });
});

describe('a form with a file', () => {
  afterAll(killAll);

  const form = (file: string) =>
    [
      '--quillmere\r\nContent-Disposition: form-data; name="view"\r\n\r\nsowing\r\n',
      '--quillmere\r\nContent-Disposition: form-data; name="crop"\r\n\r\nlettuce\r\n',
      `--quillmere\r\nContent-Disposition: form-data; name="file"; filename="bed.csv"\r\nContent-Type: text/csv\r\n\r\n${file}`,
    ].join('');

  it('from a stranger is not kept in memory', async () => {
    const service = run([], { API_KEYS: `society:${KEY}` });
    const address = await addressOf(service);
    const head = `POST / HTTP/1.1\r\nHost: localhost\r\nContent-Type: multipart/form-data; boundary=quillmere\r\nContent-Length: ${8 * MB}\r\n\r\n`;
    const before = memoryOf(service.child.pid!);
    const sockets = await Promise.all(Array.from({ length: 40 }, () => dial(address)));
    // All but the end of each, so that none is answered yet.
    for (const socket of sockets) socket.write(`${head}${form('x'.repeat(7.5 * MB))}`);
    await wait(4000);
    const after = memoryOf(service.child.pid!);
    for (const socket of sockets) socket.destroy();
    expect(after - before).toBeLessThan(120);
  });

  it('leads a stranger to where the key is asked for, and whoever has one to an answer', async () => {
    const service = run([], { API_KEYS: `society:${KEY}` });
    const address = await addressOf(service);
    const body = `${form('date,min,max\n2027-05-01,9,17\n2027-05-02,9,17\n2027-05-03,9,17\n')}\r\n--quillmere--\r\n`;
    const headers = { 'content-type': 'multipart/form-data; boundary=quillmere' };
    const stranger = await request(address, { method: 'POST', headers, body });
    expect(stranger.statusCode).toBe(200);
    const asked = await stranger.body.text();
    expect(asked).toContain('name="key"');
    expect(asked).toContain('lettuce');
    const known = await request(address, {
      method: 'POST',
      headers: { ...headers, authorization: `Bearer ${KEY}` },
      body,
    });
    expect(await known.body.text()).toContain('2027-05-02,9,17');
  });
});
