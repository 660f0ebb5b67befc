import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SowingAnswer } from '../../../src/contract/sowings.js';
import { StorageError } from '../../../src/garden/store/storage-error.js';
import { readyAnswer } from '../../../src/http/negotiation/ready-answer.js';
import { servePage } from '../../../src/page/server/serve.js';
import { openStore } from '../../../src/storage/open-store.js';
import { keepQuillmere, startApp } from '../../api/helper.js';

let app: FastifyInstance;
let folder: string;
let isAway = false;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'page-'));
  await writeFile(join(folder, 'page.js'), '');
  await writeFile(join(folder, 'page.css'), '');
  const store = await openStore('sqlite::memory:');
  const beds: typeof store.beds = (...asked) => {
    if (isAway) throw new StorageError('away');
    return store.beds(...asked);
  };
  app = await startApp({ store: { ...store, beds }, page: servePage(pathToFileURL(`${folder}/`), readyAnswer) });
  app.addHook('onClose', () => store.close());
  await keepQuillmere(app);
});
afterAll(async () => {
  await app.close();
  await rm(folder, { recursive: true });
});

const LINK = '/?view=growing&ofBed=north&bed=north';
const COUNT = { asked: LINK, act: 'count', about: 'north-lettuce', date: '2027-08-03', seedlings: '17' };

/** Posts a form as a browser without a script does. */
const post = (fields: Readonly<Record<string, string>>, headers: Readonly<Record<string, string>> = {}) => {
  const parts = Object.entries(fields).map(
    ([name, value]) => `--edge\r\ncontent-disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`,
  );
  return app.inject({
    method: 'POST',
    url: '/',
    headers: { 'content-type': 'multipart/form-data; boundary=edge', ...headers },
    payload: `${parts.join('')}--edge--\r\n`,
  });
};

const counts = async () => (await app.inject('/v1/sowings/north-lettuce')).json<SowingAnswer>().counts;

describe('a form of the answer, posted without a script', () => {
  test('is done, and leads back to the question that it came from', async () => {
    const { statusCode, headers } = await post(COUNT);
    expect([statusCode, headers.location]).toEqual([303, `${LINK}#sowing-north-lettuce`]);
    expect((await counts())[0]).toMatchObject({ date: '2027-08-03', seedlings: 17 });
  });

  test('that is refused comes back with what was typed and why', async () => {
    const before = await counts();
    const { statusCode, body } = await post({ ...COUNT, seedlings: '9000', thinned: '3' });
    expect(statusCode).toBe(422);
    const form = body.slice(body.indexOf('id="count-north-lettuce"')).split('</form>')[0]!;
    expect(form).toContain('must not be more than');
    expect(form).toContain('name="seedlings" value="9000"');
    expect(form).toContain('name="thinned" value="3"');
    expect(await counts()).toEqual(before);
  });

  test('whose sowing is gone comes back all the same', async () => {
    const { statusCode, body } = await post({ ...COUNT, about: 'gone', seedlings: '"><em>' });
    expect(statusCode).toBe(422);
    expect(body).toContain('Send what I entered again');
    expect(body).toContain('name="seedlings" value="&quot;&gt;&lt;em&gt;"');
    expect(body).not.toContain('<em>');
  });

  test.each([
    ['another site', { origin: 'https://elsewhere.example', 'sec-fetch-site': 'cross-site' }],
    ['another site, in an older browser', { origin: 'https://elsewhere.example' }],
    ['nowhere', { origin: 'null' }],
  ])('from %s is refused, and changes nothing', async (_, headers) => {
    const before = await counts();
    const { statusCode, body } = await post({ ...COUNT, seedlings: '1' }, headers);
    expect(statusCode).toBe(403);
    expect(body).toContain('A page of another site sent this');
    expect(await counts()).toEqual(before);
  });

  test('from this site is taken', async () => {
    const { statusCode } = await post(COUNT, {
      host: 'garden.example',
      origin: 'https://garden.example',
      'sec-fetch-site': 'same-origin',
    });
    expect(statusCode).toBe(303);
  });

  test('leads nowhere else, whatever it says it came from', async () => {
    const { headers } = await post({ ...COUNT, asked: 'https://elsewhere.example/?view=growing&ofBed=north' });
    expect(headers.location).toBe(`${LINK}#sowing-north-lettuce`);
  });

  test('that leads to a leaf which knows no such change changes nothing, and says so', async () => {
    const before = await counts();
    expect((await post({ ...COUNT, asked: '/?view=sowing&bed=north', seedlings: '1' })).statusCode).toBe(422);
    expect(await counts()).toEqual(before);
  });

  test('where what is kept cannot be reached comes back, to be sent again', async () => {
    isAway = true;
    const { statusCode, body } = await post({ ...COUNT, seedlings: '23' });
    isAway = false;
    expect(statusCode).toBe(503);
    const fields = [...body.matchAll(/<input type="hidden" name="(\w+)" value="([^"]*)">/g)];
    const again = Object.fromEntries(fields.map(([, name, value]) => [name!, value!.replaceAll('&amp;', '&')]));
    expect(again).toMatchObject({ ...COUNT, seedlings: '23' });
    expect((await post(again)).statusCode).toBe(303);
    expect((await counts())[0]!.seedlings).toBe(23);
  });

  test('keeps its file with it where what is kept cannot be reached', async () => {
    const pasted = 'time,soil (C)\n2027-05-03T00:00-02:00,11\n2027-05-03T01:00-02:00,"10.5"\n';
    const file = { asked: '/?source=file&bed=north', act: 'keep-readings', about: 'file', bed: 'north', pasted };
    isAway = true;
    const away = await post(file);
    isAway = false;
    expect(away.statusCode).toBe(503);
    expect(away.body).toContain('name="pasted" value="time,soil (C)\n');
    expect((await post({ ...file, bed: 'gone' })).body).toMatch(
      /id="fold-keep-readings-file" open>[\s\S]*Choose the bed/,
    );
    const { headers } = await post(file);
    expect(headers.location).toMatch(/^\/\?bed=north.*#answer$/);
  });
});
