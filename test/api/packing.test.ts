import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readyAnswer } from '../../src/http/negotiation/ready-answer.js';
import { exampleBed, examplePastAir, exampleQuestion, exampleSubscription } from '../../src/http/question/examples.js';
import { servePage } from '../../src/page/server/serve.js';
import { askerOf, startApp } from './helper.js';

const PLACE = { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
const unpack = { br: brotliDecompressSync, gzip: gunzipSync } as const;

const folder = await mkdtemp(join(tmpdir(), 'packing-'));
for (const file of ['page.js', 'page.css']) await writeFile(join(folder, file), '');
const app = await startApp({ page: servePage(pathToFileURL(`${folder}/`), readyAnswer) });
const ask = askerOf(app);
afterAll(async () => {
  await app.close();
  await rm(folder, { recursive: true });
});

beforeAll(async () => {
  await ask('PUT', '/v1/places/quillmere', PLACE);
  const daily = Array.from({ length: 60 }, (_, i) => ({
    date: new Date(Date.UTC(2027, 4, 1 + i)).toISOString().slice(0, 10),
    min: 8 + (i % 5),
    max: 18 + (i % 7),
  }));
  await ask('POST', '/v1/places/quillmere/air', { ...examplePastAir, daily });
  for (let i = 0; i < 12; i++) await ask('PUT', `/v1/beds/bed-${i}`, { ...exampleBed, place: 'quillmere' });
});

const AIR = '/v1/places/quillmere/air';
const twenty = {
  medium: 'air',
  unit: 'C',
  daily: Array.from({ length: 20 }, () => ({ date: 'May Day', min: 1, max: 2 })),
};

describe('an answer of text from 1 kB on is packed as its caller accepts', () => {
  test.each([
    ['a list', 'GET', '/v1/beds', undefined, 200],
    ['a series as it is kept', 'GET', `${AIR}?as=kept`, undefined, 200],
    ['the answer to a question', 'POST', '/v1/forecasts', exampleQuestion, 200],
    ['a problem', 'POST', AIR, twenty, 422],
    ['the page', 'GET', '/?when=', undefined, 200],
    ['the documentation', 'GET', '/docs/static/swagger-ui.css', undefined, 200],
    ['metrics', 'GET', '/metrics', undefined, 200],
  ] as const)('%s', async (_, method, url, body, status) => {
    for (const coding of ['br', 'gzip'] as const) {
      const packed = await ask(method, url, body, { 'accept-encoding': coding });
      expect([packed.statusCode, packed.headers['content-encoding']]).toEqual([status, coding]);
      expect(packed.headers.vary).toMatch(/\bAccept-Encoding\b/);
      expect(Number(packed.headers['content-length'])).toBe(packed.rawPayload.length);
      const text = unpack[coding](packed.rawPayload).toString();
      expect(text.length).toBeGreaterThan(1024);
      expect(packed.rawPayload.length).toBeLessThan(text.length);
      const plain = await ask(method, url, body);
      expect([plain.statusCode, plain.headers['content-encoding']]).toEqual([status, undefined]);
      expect(plain.headers.vary).toMatch(/\bAccept-Encoding\b/);
      if (url !== '/metrics')
        expect(text.replace(/urn:uuid:[-\w]+/, '')).toBe(plain.body.replace(/urn:uuid:[-\w]+/, ''));
    }
  });

  test('a short one is not', async () => {
    for (const url of ['/v1/places/quillmere?as=kept', '/healthz', '/v1/beds/none']) {
      const { headers, body } = await ask('GET', url, undefined, { 'accept-encoding': 'br, gzip' });
      expect(body.length).toBeLessThan(1024);
      expect(headers['content-encoding']).toBeUndefined();
    }
  });

  test('nor is one that shows a secret', async () => {
    const url = `https://hub.example/${'long/'.repeat(300)}`;
    const to = '/v1/subscriptions/hub';
    const created = await ask('PUT', to, { ...exampleSubscription, beds: null, url }, { 'accept-encoding': 'gzip' });
    expect(created.json()).toMatchObject({ secret: expect.stringMatching(/^whsec_/) });
    expect(created.body.length).toBeGreaterThan(1024);
    expect(created.headers).toMatchObject({ 'cache-control': 'no-store' });
    expect(created.headers['content-encoding']).toBeUndefined();
    const later = await ask('GET', to, undefined, { 'accept-encoding': 'gzip' });
    expect(later.headers['content-encoding']).toBe('gzip');
  });

  test('HEAD tells the headers of GET', async () => {
    const told = async (method: 'HEAD' | 'GET') => {
      const { headers } = await app.inject({ method, url: '/v1/beds', headers: { 'accept-encoding': 'gzip' } });
      const { etag, vary, ...rest } = headers;
      return { etag, vary, coding: rest['content-encoding'], length: rest['content-length'] };
    };
    expect(await told('HEAD')).toEqual(await told('GET'));
  });
});

describe('a strong tag names the coding too', () => {
  const asKept = (headers: Record<string, string>) => ask('GET', `${AIR}?as=kept`, undefined, headers);

  test('and is good for If-None-Match and If-Match in every form', async () => {
    const plain = String((await asKept({})).headers.etag);
    expect(plain).toMatch(/^"\d+"$/);
    for (const coding of ['br', 'gzip'] as const) {
      const coded = String((await asKept({ 'accept-encoding': coding })).headers.etag);
      expect(coded).toBe(plain.replace(/"$/, `-${coding}"`));
      for (const known of [plain, coded]) {
        const again = await asKept({ 'accept-encoding': coding, 'if-none-match': known });
        expect([again.statusCode, again.headers.etag, again.body]).toEqual([304, coded, '']);
        expect(again.headers.vary).toMatch(/\bAccept-Encoding\b/);
      }
      expect((await asKept({ 'if-none-match': `"0-${coding}"` })).statusCode).toBe(200);
      const deleted = await ask('DELETE', `${AIR}?from=1990-01-01&to=1990-01-02`, undefined, { 'if-match': coded });
      expect(deleted.statusCode).toBe(200);
    }
  });

  test('while a weak tag is the same for all', async () => {
    const tags = ['br', 'gzip', 'identity'].map(
      async (coding) => (await ask('GET', '/v1/beds', undefined, { 'accept-encoding': coding })).headers.etag,
    );
    expect(new Set(await Promise.all(tags)).size).toBe(1);
  });
});
