import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { beds, comingDays, northReadings, pastAir, place, probeDepthCm } from '../../src/demo/season.js';
import { keyring } from '../../src/http/auth/keys.js';
import { readyAnswer } from '../../src/http/negotiation/ready-answer.js';
import { servePage } from '../../src/page/server/serve.js';
import { pageDe } from '../../src/words/page-de.js';
import { type PageCode, pageEn } from '../../src/words/page-en.js';
import { askerOf, startApp } from './helper.js';

const folder = await mkdtemp(join(tmpdir(), 'page-languages-'));
for (const file of ['page.js', 'page.css']) await writeFile(join(folder, file), '');
const page = servePage(pathToFileURL(`${folder}/`), readyAnswer);
let app: FastifyInstance;

beforeAll(async () => {
  app = await startApp({ page });
  const ask = askerOf(app);
  await ask('PUT', '/v1/places/quillmere', place);
  await ask('POST', '/v1/places/quillmere/air', { medium: 'air', daily: pastAir().slice(-5 * 365) });
  await ask('PUT', '/v1/places/quillmere/coming-days', { medium: 'air', origin: 'forecast', daily: comingDays });
  await ask('PUT', '/v1/beds/north', { place: 'quillmere', ...beds.north, name: '5 °C frame' });
  await ask('POST', '/v1/beds/north/readings', { medium: 'soil', probeDepthCm, readings: northReadings() });
  await ask('PUT', '/v1/sowings/row', { bed: 'north', crop: 'lettuce', date: '2027-07-30', seeds: 200 });
  await ask('PUT', '/v1/sowings/row/counts/2027-08-03', { seedlings: 14 });
  const harvest = { from: '2028-05-15', to: '2028-06-30', perWeek: 10 };
  await ask('PUT', '/v1/plans/spring', { bed: 'north', crop: 'lettuce', harvest });
});
afterAll(async () => {
  await app.close();
  await rm(folder, { recursive: true });
});

const GERMAN = { 'accept-language': 'de-AT,de;q=0.9,en;q=0.5' };
const got = async (url: string, headers: Record<string, string> = {}): Promise<string> =>
  (await app.inject({ url, headers })).body;

/** What is read or heard of a page: its text and the names of its parts, each entity as its character. */
const read = (body: string): string =>
  [
    body.replaceAll(/<[^>]*>/g, ' '),
    ...[...body.matchAll(/ (?:aria-label|aria-valuetext|placeholder)="([^"]*)"/g)].map(([, label]) => label),
  ]
    .join(' ')
    .replaceAll('&amp;', '&')
    .replaceAll('&quot;', '"')
    .replaceAll(/\s+/g, ' ');

/**
 * Stretches of words of the English catalogue, as a page would show them: those between the parameters of a message that
 * are three words or more, and that the German message does not have as well.
 */
const englishStretches: readonly (readonly [code: PageCode, words: string])[] = (Object.keys(pageEn) as PageCode[])
  .flatMap((code) =>
    pageEn[code]
      .replaceAll(/\w+, (?:plural|select),/g, '{')
      .split(/[{}#]|<[^>]*>|\b(?:one|other|yes|no) (?=\{)/)
      .map((words) => [code, words.trim()] as const),
  )
  .filter(([code, words]) => words.split(/\s+/).length >= 3 && !pageDe[code].includes(words));

const LEAVES = [
  '/',
  '/?bed=north&crop=lettuce&sowing=2027-08-03&seeds=200',
  '/?bed=north&source=file',
  '/?bed=&source=days',
  '/?view=when&bed=north&crop=lettuce&beside=spinach&whole=1',
  '/?view=when&bed=nowhere',
  '/?view=growing&ofBed=',
  '/?view=growing&ofBed=nowhere',
] as const;

describe('the page in German', () => {
  test('has stretches of English to look for', () => {
    expect(englishStretches.length).toBeGreaterThan(200);
  });

  test.each(LEAVES)('says nothing of the English catalogue at %s', async (url) => {
    const said = read(await got(url, GERMAN));
    expect(englishStretches.filter(([, words]) => said.includes(words))).toEqual([]);
    expect(said).toContain(pageDe['page.shell.how-sure']);
  });

  test('says the English of the English catalogue in English', async () => {
    const said = read(await got('/?view=growing&ofBed='));
    expect(englishStretches.filter(([, words]) => said.includes(words)).length).toBeGreaterThan(10);
  });

  test('is told to be German, and as which country writes it', async () => {
    expect(await got('/', GERMAN)).toContain('<html lang="de-AT">');
    expect(await got('/?lang=de')).toContain('<html lang="de-DE">');
    expect(await got('/?lang=en', GERMAN)).toContain('<html lang="en-GB">');
    expect(await got('/', { 'accept-language': 'fr' })).toContain('<html lang="en-GB">');
    expect(await got('/?lang=xx', GERMAN)).toContain('<html lang="de-AT">');
  });

  test('writes decimal commas, and dates as they are written there', async () => {
    const body = await got('/?view=when&bed=north&crop=lettuce', GERMAN);
    expect(read(body)).toMatch(/nach \d,\d Tagen/);
    expect(body).toMatch(/<time datetime="2027-08-03" lang="de-AT">Dienstag, 3\. August<\/time>/);
    const { halfDays } = (await app.inject('/v1/beds/north/sowing-windows?crop=lettuce')).json().dates[0];
    expect(read(body)).toContain(`nach ${String(halfDays.p50).replace('.', ',')} Tag`);
  });

  test('keeps the language that is chosen, in its links and its forms', async () => {
    const body = await got('/?lang=de&view=growing&ofBed=');
    const links = [...body.matchAll(/ data-tab="\w+"/g)];
    expect(links).toHaveLength(4);
    for (const [, link] of body.matchAll(/<a href="([^"]*)" data-tab/g)) expect(link).toContain('lang=de');
    expect(body).toContain('<input type="hidden" name="lang" value="de">');
    expect(body).toMatch(/name="asked" value="\/\?[^"]*lang=de/);
    expect(body).toMatch(/href="\/\?[^"]*lang=en[^"]*" lang="en" hreflang="en"[^>]*>English<\/a>/);
  });

  test('keeps it when the key is forgotten', async () => {
    const closed = await startApp({ page, findOwner: keyring(new Map([['s3cret', 'north']])) });
    const begun = await closed.inject({ method: 'POST', url: '/session', payload: { key: 's3cret' } });
    const cookie = String(begun.headers['set-cookie']).split(';', 1)[0]!;
    const { body } = await closed.inject({ url: '/?lang=de', headers: { cookie } });
    const forget = /<form method="post" action="\/session">.*?<\/form>/s.exec(body)![0];
    const fields = [...forget.matchAll(/name="(\w+)" value="([^"]*)"/g)].map(([, name, value]) => [name!, value!]);
    const headers = { cookie, 'content-type': 'application/x-www-form-urlencoded' };
    const payload = new URLSearchParams(Object.fromEntries(fields)).toString();
    const ended = await closed.inject({ method: 'POST', url: '/session', payload, headers });
    expect([ended.statusCode, ended.headers.location]).toEqual([303, '/?lang=de']);
    const { body: other } = await closed.inject({ url: '/', headers: { cookie } });
    expect(other).not.toContain('lang=undefined');
    await closed.close();
  });

  test('asks for a key in it too, and then for what was asked', async () => {
    const closed = await startApp({ page, findOwner: keyring(new Map([['s3cret', 'north']])) });
    const { body } = await closed.inject({ url: '/?lang=de&crop=carrot' });
    expect(body).toContain(pageDe['page.key.once']);
    expect(body).toContain('name="asked" value="/?lang=de&amp;crop=carrot"');
    await closed.close();
  });

  test('gives the script its messages, and those of no other language', async () => {
    const body = await got('/', GERMAN);
    const [, address] = /<link rel="modulepreload" id="messages" href="([^"]*)">/.exec(body)!;
    const file = await app.inject(address!);
    expect(file.headers['content-type']).toContain('javascript');
    expect(file.headers['cache-control']).toContain('immutable');
    expect(file.body).toContain(pageDe['page.shell.working']);
    expect(file.body).not.toContain(pageEn['page.shell.working']);
  });

  test('refuses in German, and names the field as its form does', async () => {
    const body = await got('/?bed=north&crop=lettuce&sowing=2027-08-03&depthCm=viel', GERMAN);
    expect(body).toContain(`<b>${pageDe['page.field.depth']}</b>`);
    expect(read(body)).toContain(pageDe['page.refused.not-yet']);
  });
});

describe('the page in °F', () => {
  test('says of a file with a jump of 12 kelvin that it jumps by 22 °F', async () => {
    const at = (hour: number): string => new Date(Date.UTC(2027, 6, 20, hour)).toISOString();
    // It stays up, as when a probe is pulled out: one reading alone would be left out.
    const tempC = (hour: number): number => (hour > 100 ? 28 : 16) + (hour % 4 < 2 ? 0 : 0.5);
    const rows = Array.from({ length: 240 }, (_, hour) => `${at(hour)},${tempC(hour)}`);
    const boundary = 'a-boundary';
    const said = { source: 'file', bed: 'north', crop: 'carrot', sowing: '2027-08-03', medium: 'soil', degrees: 'F' };
    const parts = Object.entries({ ...said, pasted: `time,soil (C)\n${rows.join('\n')}` }).map(
      ([name, value]) => `--${boundary}\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`,
    );
    const { body } = await app.inject({
      method: 'POST',
      url: '/',
      headers: { 'content-type': `multipart/form-data; boundary=${boundary}` },
      payload: `${parts.join('')}--${boundary}--\r\n`,
    });
    // 12 kelvin are 21.6 °F, and 12 °C on the scale would be 53.6 °F: the definition of the scale.
    expect(read(body)).toMatch(/jump of 22 °F/);
    expect(read(body)).not.toMatch(/\b54 °F|53\.6 °F/);
  });

  test.each([GERMAN, {}])('leaves a bed alone that its owner calls “5 °C frame”', async (headers) => {
    for (const url of ['/?view=growing&ofBed=&degrees=F', '/?view=when&bed=north&degrees=F', '/?bed=north&degrees=F']) {
      expect(read(await got(url, headers))).toContain('5 °C frame');
      expect(read(await got(url, headers))).not.toContain('41 °F frame');
    }
  });
});
