import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { sowingAnswerSchema } from '../../src/contract/sowings.js';
import { alertEvents } from '../../src/garden/store/alert-store.js';
import { sourceFormats } from '../../src/garden/store/source-formats.js';
import { keyring } from '../../src/http/auth/keys.js';
import { readyAnswer } from '../../src/http/negotiation/ready-answer.js';
import { servePage } from '../../src/page/server/serve.js';
import { sentByCurl } from '../house/sent-by-curl.js';
import { startApp } from './helper.js';
import { type OpenApiDocument, operationsOf } from './openapi-arbitraries.js';
import { rowsOf, sectionOf, textOf } from './rows-of.js';

const folder = await mkdtemp(join(tmpdir(), 'guide-'));
await writeFile(join(folder, 'page.js'), '');
await writeFile(join(folder, 'page.css'), '');
const pages = servePage(pathToFileURL(`${folder}/`), readyAnswer);
const open = await startApp({ page: pages });
const keyed = await startApp({ page: pages, findOwner: keyring(new Map([['s3cret', 'north']])) });
afterAll(async () => {
  await Promise.all([open.close(), keyed.close()]);
  await rm(folder, { recursive: true });
});
const { body: page, headers, statusCode } = await keyed.inject('/docs/guide');
const document: OpenApiDocument = (await open.inject('/openapi.json')).json();

describe('the guide for callers', () => {
  test('is open without a key, whole without a script, and loads nothing', () => {
    expect([statusCode, headers['content-type']]).toEqual([200, 'text/html; charset=utf-8']);
    expect(page).not.toMatch(/<script|<link|<img|\bsrc=|javascript:|@import|url\(/);
    expect(headers['content-security-policy']).toContain("default-src 'none'");
  });

  test('takes GET alone, and is linked from the documentation', async () => {
    const refused = await open.inject({ method: 'POST', url: '/docs/guide' });
    expect([refused.statusCode, refused.headers.allow]).toEqual([405, 'GET, HEAD']);
    expect(JSON.stringify(document)).toContain('(/docs/guide)');
  });

  test('is not made of a refusal: where the document cannot be had, that is said, and the next one gets the guide', async () => {
    const limited = await startApp({ page: pages, rateLimit: 2 });
    const answers = [];
    for (let i = 0; i < 2; i++) answers.push((await limited.inject('/docs/guide')).statusCode);
    await limited.close();
    expect(answers).toEqual([200, 429]);
  });

  test('leads to places on it, or in the service, that are there', async () => {
    const links = [...page.matchAll(/href="([^"]+)"/g)].map(([, link]) => link!);
    expect(links.length).toBeGreaterThanOrEqual(15);
    for (const link of links.filter((one) => !one.startsWith('https://'))) {
      const [path, anchor] = link.split('#') as [string, string?];
      const target = path === '' ? page : (await open.inject(path)).body;
      if (path !== '') expect((await open.inject(path)).statusCode, link).toBe(200);
      if (anchor !== undefined) expect(target, link).toContain(`id="${anchor}"`);
    }
  });

  test('has a line for every operation of the OpenAPI document, as it is summed up there', () => {
    const operations = operationsOf(document).map(({ method, path, summary }) => [
      `${method.toUpperCase()} ${path}`,
      summary,
    ]);
    expect(operations.length).toBeGreaterThanOrEqual(50);
    const rows = rowsOf(page, 'routes');
    expect(rows.slice(0, operations.length)).toEqual(operations);
  });

  test('has a line for every page beside them, each of which is there', async () => {
    const rows = rowsOf(page, 'routes').slice(operationsOf(document).length);
    expect(rows.length).toBeGreaterThanOrEqual(5);
    for (const [route] of rows) expect((await open.inject(route!.slice('GET '.length))).statusCode, route).toBe(200);
  });

  test('names each format of a source, each kind of message and each parameter of a file, and no other', () => {
    const codesIn = (text: string): string[] => text.split(', ');
    expect(rowsOf(page, 'sources').map(([format]) => format)).toEqual([...sourceFormats]);
    expect(rowsOf(page, 'messages').map(([type]) => type)).toEqual([...alertEvents]);
    const check = operationsOf(document).find(({ path }) => path === '/v1/readings/check');
    const parameters = check!.parameters.filter((one) => one.in === 'query').map(({ name }) => name);
    const ofEveryRoute = ['precision', 'latitude', 'longitude', 'lang', 'textUnit', 'model'];
    const told = rowsOf(page, 'files').flatMap(([names]) => codesIn(names!));
    expect(told.sort()).toEqual(parameters.filter((name) => !ofEveryRoute.includes(name)).sort());
    const fields = rowsOf(page, 'sowings').flatMap(([names]) => codesIn(names!));
    expect(fields.length).toBeGreaterThanOrEqual(9);
    expect(fields.filter((name) => !Object.hasOwn(sowingAnswerSchema.shape, name))).toEqual([]);
  });

  test('names no route that is not there', () => {
    const known = Object.keys(document.paths);
    const named = [...page.matchAll(/<code>(?:[A-Z]+ )?(\/(?:v1|session)[^<]*)<\/code>/g)].map(([, path]) =>
      textOf(path!),
    );
    expect(named.length).toBeGreaterThanOrEqual(60);
    expect(named.filter((path) => !known.includes(path))).toEqual([]);
  });
});

describe('what the guide shows works', () => {
  const shown = [...page.matchAll(/<pre>(.*?)<\/pre>/gs)].map(([, block]) => textOf(block!));

  test('every block is a command, and each section with something to send has one', () => {
    expect(shown.filter((command) => !command.startsWith('curl '))).toEqual([]);
    for (const anchor of ['ask', 'files', 'keep', 'sowings', 'sources', 'messages', 'http']) {
      expect(sectionOf(page, anchor), anchor).toContain('<pre>');
    }
    expect(shown.length).toBeGreaterThanOrEqual(18);
  });

  // In the order of the page: what is kept above is asked for below.
  test.each(shown.map((command) => [command.split('\n', 1)[0]!, command] as const))('%s', async (_, command) => {
    const response = await sentByCurl(open, command);
    expect([200, 201], response.body).toContain(response.statusCode);
  });
});
