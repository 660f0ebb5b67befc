import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { beds, northReadings, pastAir, place, probeDepthCm, today } from '../../src/demo/season.js';
import { keyring } from '../../src/http/auth/keys.js';
import { readyAnswer } from '../../src/http/negotiation/ready-answer.js';
import { fields } from '../../src/page/form/question.js';
import { servePage } from '../../src/page/server/serve.js';
import { askerOf, startApp } from './helper.js';

const folder = await mkdtemp(join(tmpdir(), 'page-'));
const FILE = `time,soil (C)\n${northReadings()
  .map(({ at, value }) => `${at},${value}`)
  .join('\n')}\n`;
/** Long enough to be worth packing. */
const SCRIPT = `export {};${'\n'.repeat(2000)}`;
let app: FastifyInstance;

beforeAll(async () => {
  await writeFile(join(folder, 'page.js'), SCRIPT);
  await writeFile(join(folder, 'page.css'), 'p { margin: 0; }');
  app = await startApp({ page: servePage(pathToFileURL(`${folder}/`), readyAnswer) });
  const ask = askerOf(app);
  await ask('PUT', '/v1/places/quillmere', place);
  await ask('POST', '/v1/places/quillmere/air', { medium: 'air', daily: pastAir().slice(-5 * 365) });
  await ask('PUT', '/v1/beds/north', { place: 'quillmere', ...beds.north });
  await ask('POST', '/v1/beds/north/readings', { medium: 'soil', probeDepthCm, readings: northReadings() });
});
afterAll(async () => {
  await app.close();
  await rm(folder, { recursive: true });
});

const text = (body: string): string => body.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ');

/** A form as a browser without script posts it; a file last. */
function formOf(said: Readonly<Record<string, string>>, file?: { name: string; body: string }) {
  const boundary = 'a-boundary';
  const parts = Object.entries(said).map(
    ([name, value]) => `--${boundary}\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`,
  );
  if (file) {
    parts.push(
      `--${boundary}\r\nContent-Disposition: form-data; name="file"; filename="${file.name}"\r\nContent-Type: text/csv\r\n\r\n${file.body}\r\n`,
    );
  }
  return {
    headers: { 'content-type': `multipart/form-data; boundary=${boundary}` },
    payload: `${parts.join('')}--${boundary}--\r\n`,
  };
}

const post = (said: Readonly<Record<string, string>>, file?: { name: string; body: string }) =>
  app.inject({ method: 'POST', url: '/', ...formOf(said, file) });

describe('the page without its script', () => {
  test('a link is answered with the sentence, the picture and the dates', async () => {
    const { body, statusCode } = await app.inject('/?bed=north&crop=lettuce&sowing=2027-08-03&seeds=200');
    expect(statusCode).toBe(200);
    expect(text(body)).toMatch(/Of 200 seeds expect \d+ to \d+/);
    expect(body).toContain('<svg');
    expect(text(body)).toMatch(/Nine tenths (Sun|Mon|Tue) \d+ Aug/);
  });

  test('the same numbers stand there as the service answers', async () => {
    const { stand } = (await app.inject('/v1/beds/north/forecast?crop=lettuce&sowing=2027-08-03&seeds=200')).json();
    const { body } = await app.inject('/?bed=north&crop=lettuce&sowing=2027-08-03&seeds=200');
    expect(text(body)).toContain(`Of 200 seeds expect ${stand.seedlings.from} to ${stand.seedlings.to}`);
  });

  test('without a question it shows the form, and links to the answer for today in the first bed', async () => {
    const { body } = await app.inject('/');
    expect(body).toContain(`name="sowing" value="${today}"`);
    expect(body).toMatch(/<option value="north" selected>/);
    expect(body).not.toContain('<svg');
    const [, link] = /<a class="main" href="([^"]*)">Show lettuce in North bed, sown today</.exec(body)!;
    expect(text((await app.inject(link!.replaceAll('&amp;', '&'))).body)).toMatch(/Of a hundred seeds expect/);
  });

  test('a form with a file is answered, and the file’s text is there again', async () => {
    const { body } = await post(
      { source: 'file', bed: 'north', crop: 'carrot', sowing: today },
      { name: 'north.csv', body: FILE },
    );
    expect(text(body)).toMatch(/Of a hundred seeds expect/);
    expect(text(body)).toMatch(/Soil at the seed, column 2, “soil \(C\)”, in °C, every hour/);
    expect(body).toContain(FILE.slice(0, 200));
  });

  test('what can be read in two ways is asked, each way with its consequence, and one press settles it', async () => {
    const pasted = await readFile(
      new URL('../../fixtures/logger-files/82-ambiguous-order.csv', import.meta.url),
      'utf8',
    );
    const twoWays = {
      source: 'file',
      bed: 'north',
      medium: 'soil',
      unit: 'C',
      crop: 'carrot',
      sowing: '2027-07-03',
      pasted,
    };
    const asked = await post(twoWays);
    const [, name, value] = /<button type="submit" form="ask" name="(\w+)" value="(dmy)"/.exec(asked.body) ?? [];
    expect(name).toBe('dateOrder');
    expect(text(asked.body)).toContain('One thing to settle');
    const settled = await post({ ...twoWays, [name!]: value! });
    expect(settled.body).not.toContain('One thing to settle');
  });

  test('a form that a link can hold leads to that link', async () => {
    const { statusCode, headers } = await post({
      source: 'bed',
      bed: 'north',
      crop: 'carrot',
      sowing: '2027-08-05',
      pasted: '',
    });
    expect(statusCode).toBe(303);
    expect(headers.location).toBe('/?bed=north&crop=carrot&sowing=2027-08-05&whole=1');
  });

  test('a file that is too large loses nothing else', async () => {
    const { body, statusCode } = await post(
      { source: 'file', bed: 'north', crop: 'onion', seeds: '321' },
      { name: 'long.csv', body: 'x'.repeat(9 * 1024 * 1024) },
    );
    expect(statusCode).toBe(413);
    expect(text(body)).toContain('larger than a plain form takes');
    expect(body).toContain('value="321"');
    expect(body).toContain('<option value="onion" selected>');
  });

  test('a text that is too long to be taken whole is not taken in part', async () => {
    // In two bytes each: as characters they are fewer than may come.
    const { body, statusCode } = await post({ source: 'file', bed: 'north', pasted: 'é'.repeat(1024 * 1024 + 1) });
    expect(statusCode).toBe(413);
    expect(text(body)).toContain('2 MB that are typed or pasted');
  });

  test('a form that breaks off is told so', async () => {
    const { payload, headers } = formOf({ crop: 'onion', bed: 'north' });
    const { statusCode, body } = await app.inject({
      method: 'POST',
      url: '/',
      headers,
      payload: payload.slice(0, -20),
    });
    expect(statusCode).toBe(400);
    expect(text(body)).toContain('did not arrive whole');
  });

  test('the picture and the numbers come as files', async () => {
    const picture = await app.inject('/?bed=north&crop=lettuce&sowing=2027-08-03&as=svg');
    expect(picture.headers['content-type']).toBe('image/svg+xml');
    expect(picture.body).toMatch(/^<svg/);
    const table = await app.inject('/?bed=north&crop=lettuce&sowing=2027-08-03&as=csv');
    expect(table.headers['content-disposition']).toContain('attachment');
    const check = await askerOf(app)('POST', '/v1/readings/check?column=3&timeZone=Etc/GMT%2B2', table.body);
    expect(check.json()).toMatchObject({ medium: 'soil', unit: 'C', from: expect.stringContaining('2027-08-03') });
  });

  test('°F are the same temperatures', async () => {
    const table = async (degrees: string) =>
      (await app.inject(`/?bed=north&crop=lettuce&sowing=2027-08-03&as=csv&degrees=${degrees}`)).body
        .split('\r\n')[1]!
        .split(',');
    const [inC, inF] = [await table('C'), await table('F')];
    // 9/5 and 32: the definition of the scale.
    expect(Number(inF[1])).toBeCloseTo(Number(inC[1]) * 1.8 + 32, 0);
  });

  test('days are named in the reader’s language', async () => {
    const { body } = await app.inject({
      url: '/?bed=north&crop=lettuce&sowing=2027-08-03',
      headers: { 'accept-language': 'de-AT,de;q=0.9' },
    });
    expect(body).toMatch(/<time datetime="2027-08-\d\d" lang="de-AT">\w+, \d+\. August<\/time>/);
  });
});

describe('what a browser is told', () => {
  test('nothing inline runs, and nothing comes from elsewhere', async () => {
    const { headers, body } = await app.inject('/?bed=north');
    expect(headers['content-security-policy']).toBe(
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    );
    expect(body).not.toMatch(/<style|\sstyle=|\son\w+=|javascript:/i);
    expect(body.match(/<script[^>]*>/g)).toEqual([expect.stringContaining('src="/page.js?')]);
    expect([...body.matchAll(/(?:href|src|action)="([^"]*)"/g)].map(([, address]) => address)).toEqual(
      expect.not.arrayContaining([expect.stringMatching(/^(https?:)?\/\//)]),
    );
  });

  test('its files may be kept for good, since their addresses change with them', async () => {
    const { body } = await app.inject('/');
    for (const [, address] of body.matchAll(/(?:href|src)="(\/page\.\w+\?[^"]+)"/g)) {
      const file = await app.inject(address!);
      expect(file.statusCode).toBe(200);
      expect(file.headers['cache-control']).toContain('immutable');
      const known = { 'if-none-match': String(file.headers.etag) };
      expect((await app.inject({ url: address!, headers: known })).statusCode).toBe(304);
    }
    // As an instance of another build would name it: what is not that file is not kept for it.
    expect((await app.inject('/page.js?anothers')).headers['cache-control']).toBe('no-cache');
  });
});

describe('what never changes', () => {
  test('is packed as the browser likes it, and each coding has a tag of its own', async () => {
    const unpack = { br: brotliDecompressSync, gzip: gunzipSync };
    for (const url of ['/page.js', '/docs/running']) {
      const plain = await app.inject(url);
      const tags = new Set([plain.headers.etag]);
      for (const [coding, unpacked] of Object.entries(unpack)) {
        const packed = await app.inject({ url, headers: { 'accept-encoding': coding } });
        expect(packed.headers['content-encoding']).toBe(coding);
        expect(packed.headers.vary).toBe('Accept-Encoding');
        expect(unpacked(packed.rawPayload)).toEqual(plain.rawPayload);
        tags.add(packed.headers.etag);
        const known = { 'accept-encoding': coding, 'if-none-match': String(packed.headers.etag) };
        expect((await app.inject({ url, headers: known })).statusCode).toBe(304);
      }
      expect(tags.size).toBe(3);
      expect(plain.headers['content-encoding']).toBeUndefined();
    }
  });
});

describe('whatever is sent', () => {
  test('what is to be forgotten may have any name', async () => {
    for (const of of ['日本', 'a\r\nx-more: 1', '../crops']) {
      const { statusCode, headers } = await post({
        asked: '/?view=growing',
        act: 'forget-count',
        of,
        date: '2027-08-01',
      });
      expect(statusCode).toBe(303);
      expect(headers.location).toBe(`/?view=growing&bed=north#${encodeURIComponent(`sowing-${of}`)}`);
    }
  });

  test('a link that a form leads to is no longer than what a bed may be called', async () => {
    const { headers } = await post({ bed: 'b'.repeat(100_000) });
    expect(headers.location!.length).toBeLessThan(1000);
  });

  test('a language that there cannot be is not written beside every date', async () => {
    const { body } = await app.inject({ url: '/', headers: { 'accept-language': `en-x-${'abcdefgh-'.repeat(50)}a` } });
    expect(body).not.toContain('abcdefgh');
  });

  test('who sends it otherwise is told how the page is asked', async () => {
    const { statusCode, headers, body } = await app.inject({ method: 'PUT', url: '/' });
    expect(statusCode).toBe(405);
    expect(headers.allow).toBe('GET, HEAD, POST');
    expect(JSON.parse(body).detail).toBe('/ takes GET or POST, not PUT.');
    expect((await app.inject({ method: 'POST', url: '/page.js' })).headers.allow).toBe('GET, HEAD');
    expect((await app.inject({ method: 'PUT', url: '/docs' })).headers.allow).toBe('GET, HEAD');
  });

  const hostile = fc.oneof(
    fc.string(),
    fc.string({ unit: 'binary' }),
    fc.constantFrom('<script>x</script>', '"><i id="x">', '../..', '１２', '9'.repeat(500)),
  );

  test('a page comes back, and nothing of it as markup', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.dictionary(fc.constantFrom(...fields, 'view', 'source', 'degrees', 'min', 'max', 'as', 'key'), hostile, {
          maxKeys: 8,
        }),
        async (said) => {
          const { statusCode, body } = await app.inject(`/?${new URLSearchParams(said)}`);
          expect(statusCode).toBeLessThan(500);
          expect(/<script>x|"><i id="x">/.test(body)).toBe(false);
        },
      ),
      { numRuns: 60 },
    );
  });
});

test('a page of another site changes nothing, where no key is asked for either', async () => {
  const { statusCode } = await app.inject({
    method: 'POST',
    url: '/v1/beds/north/calendar-token',
    headers: { origin: 'https://other.example' },
  });
  expect(statusCode).toBe(403);
});

test('who has no key yet goes on, with it, to what was asked', async () => {
  const closed = await startApp({
    page: servePage(pathToFileURL(`${folder}/`), readyAnswer),
    findOwner: keyring(new Map([['s3cret', 'north']])),
  });
  const { body, statusCode } = await closed.inject('/?bed=north&crop=carrot');
  expect(statusCode).toBe(200);
  expect(body).toContain('name="asked" value="/?bed=north&amp;crop=carrot"');
  await closed.close();
});
