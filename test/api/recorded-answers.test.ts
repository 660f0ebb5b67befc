// The same questions get the same numbers as when they were recorded, whatever is moved or worded anew in between.
//
// Record them anew, only where numbers are meant to change, and say in the commit why they do:
//   RECORD=1 npx vitest run --config test/vitest.config.ts --project quick test/api/recorded-answers.test.ts
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { FastifyInstance } from 'fastify';
import { afterAll, describe, expect, test } from 'vitest';
import { type ErrorCode, errorCodes } from '../../src/basics/errors.js';
import { DEFAULT_QUOTAS } from '../../src/garden/store/quotas.js';
import { keyring } from '../../src/http/auth/keys.js';
import { readyAnswer } from '../../src/http/negotiation/ready-answer.js';
import { servePage } from '../../src/page/server/serve.js';
import { openStore } from '../../src/storage/open-store.js';
import { startApp } from './helper.js';
import { type OpenApiDocument, operationsOf } from './openapi-arbitraries.js';
import { askedQuestions } from './recorded/asked-questions.js';
import { fileQuestions } from './recorded/file-questions.js';
import { forgettingQuestions, keepingQuestions, keptQuestions } from './recorded/garden-questions.js';
import { get, type Question, type ServiceName } from './recorded/question.js';
import { differences, type RecordedAnswer, recordedOf } from './recorded/recorded-answer.js';
import { refusedQuestions } from './recorded/refused-questions.js';
import { pageQuestions, serviceQuestions } from './recorded/service-questions.js';

const FIXTURE = new URL('../../fixtures/recorded-answers.json.gz', import.meta.url);

const folder = await mkdtemp(join(tmpdir(), 'recorded-'));
await writeFile(join(folder, 'page.js'), 'export {};');
await writeFile(join(folder, 'page.css'), 'p { margin: 0; }');
const quotas = { ...DEFAULT_QUOTAS, places: 1 };
const small = await openStore('sqlite::memory:', { quotas });
const closed = await openStore(`sqlite:${folder}/closed.db`);
await closed.close();
const services: Readonly<Record<ServiceName, FastifyInstance>> = {
  open: await startApp({ page: servePage(pathToFileURL(`${folder}/`), readyAnswer) }),
  keyed: await startApp({ findOwner: keyring(new Map([['s3cret', 'quillmere']])) }),
  hasty: await startApp({ rateLimit: 1 }),
  hosted: await startApp({ hosts: ['quillmere.example'] }),
  small: await startApp({ store: small, quotas }),
  away: await startApp({ store: closed }),
};
afterAll(async () => {
  for (const app of Object.values(services)) await app.close();
  await small.close();
  await rm(folder, { recursive: true });
});

const ask = ({ service, method, url, headers, payload }: Question) =>
  services[service].inject({ method, url, headers, ...(payload === undefined ? {} : { payload }) });

/** The addresses of calendars hold tokens that differ from run to run, so they are asked of the beds. */
async function calendarOf(bed: string): Promise<RecordedAnswer> {
  const { calendarUrl } = (await services.open.inject(`/v1/beds/${bed}`)).json<{ calendarUrl: string }>();
  return recordedOf(await services.open.inject(calendarUrl));
}
const CALENDARS = ['north', 'south', 'upper', 'harbour'];
const calendarName = (bed: string): string => get(`/v1/beds/${bed}/calendar.ics`).name;

const beforeForgetting = [
  ...keepingQuestions,
  ...askedQuestions,
  ...fileQuestions,
  ...refusedQuestions,
  ...serviceQuestions,
  ...keptQuestions,
  ...pageQuestions,
];
const questions = [...beforeForgetting, ...forgettingQuestions];
const names = [...questions.map(({ name }) => name), ...CALENDARS.map(calendarName)];

/** One after another: what one keeps, the next finds. */
async function answerAll(): Promise<Record<string, RecordedAnswer>> {
  const answers: Record<string, RecordedAnswer> = {};
  for (const question of beforeForgetting) answers[question.name] = recordedOf(await ask(question));
  for (const bed of CALENDARS) answers[calendarName(bed)] = await calendarOf(bed);
  for (const question of forgettingQuestions) answers[question.name] = recordedOf(await ask(question));
  return answers;
}

const { RECORD } = process.env;
const answers = await answerAll();
if (RECORD === '1') {
  await writeFile(FIXTURE, gzipSync(`{\n${Object.entries(answers).map(line).join(',\n')}\n}\n`, { level: 9 }));
}
const recorded = JSON.parse(gunzipSync(await readFile(FIXTURE)).toString()) as Record<string, RecordedAnswer>;

function line([name, answer]: [string, RecordedAnswer]): string {
  return `${JSON.stringify(name)}: ${JSON.stringify(answer)}`;
}

describe('the same question gets the same answer, words apart', () => {
  test.each(names)('%s', (name) => {
    expect(differences(recorded[name], answers[name])).toEqual([]);
  });
});

describe('what is recorded', () => {
  test('is each question once, at least 220 of them, and nothing else', () => {
    expect(new Set(names).size).toBe(names.length);
    expect(Object.keys(recorded).toSorted()).toEqual(names.toSorted());
    expect(names.length).toBeGreaterThanOrEqual(220);
  });

  test('has an answer that is no refusal for every operation of the OpenAPI document', async () => {
    const document: OpenApiDocument = (await services.open.inject('/openapi.json')).json();
    const elsewhere = new Map([
      ['deleteSession', 'a session has a random id: test/api/sessions.test.ts'],
      ['listLocalities', 'it rests on no garden: test/api/localities.test.ts'],
      ['sowingWindowsByLink', 'it rests on no garden: test/api/locale.test.ts'],
      ['forecastByLink', 'it rests on no garden: test/api/locale.test.ts'],
      ['soilTemperaturesByLink', 'it rests on no garden: test/api/locale.test.ts'],
      ['frostDatesByLink', 'it rests on no garden: test/api/locale.test.ts'],
      ['thisWeek', 'it rests on the windows: test/api/this-week.test.ts'],
      ['listMessages', 'it holds words alone: test/unit/words/catalogue.test.ts'],
      ['refreshAir', 'it asks a publisher: test/api/sources.test.ts'],
      ['listSourcePresets', 'it holds words alone: test/api/sources.test.ts'],
      ['getModel', 'it names sources alone: test/api/forecast.test.ts'],
    ]);
    const asked = [
      ...questions.map(({ name, method, url }) => ({ method, path: url.split('?', 1)[0]!, name })),
      ...CALENDARS.map((bed) => ({ method: 'GET', path: `/v1/beds/${bed}/calendar.ics`, name: calendarName(bed) })),
    ];
    const missing = operationsOf(document).filter(({ method, path, operationId }) => {
      const pattern = new RegExp(`^${path.replaceAll('.', '\\.').replaceAll(/\{\w+\}/g, '[^/]+')}$`);
      const isAnswered = asked.some(
        (one) => one.method === method && pattern.test(one.path) && recorded[one.name]!.status < 300,
      );
      return !isAnswered && !elsewhere.has(operationId);
    });
    expect(missing.map(({ method, path }) => `${method} ${path}`)).toEqual([]);
  });

  test('has every code of a problem that a request alone can bring about', () => {
    const elsewhere: Partial<Record<ErrorCode, string>> = {
      internal: 'has no known cause',
      'too-slow': 'takes a real connection',
      stopping: 'takes a service that is being stopped',
      'too-much-at-once': 'depends on what is under way',
      busy: 'depends on what is under way',
      'storage-full': 'takes a full disk',
      'storage-damaged': 'takes a broken file',
      'unknown-preset': 'of a source: test/api/sources.test.ts',
      'contact-needed': 'of a source: test/api/sources.test.ts',
      'private-address': 'of a source: test/api/sources.test.ts',
      'no-source': 'of a source: test/api/sources.test.ts',
      'too-soon': 'of a source: test/api/sources.test.ts',
      'no-climate-near': 'of a place without years: test/api/locale.test.ts',
      'choose-locality': 'of a town: test/api/locale.test.ts',
      'unknown-locality': 'of a town: test/api/locale.test.ts',
    };
    const codes = Object.values(recorded).map(({ body }) => (body as { code?: string } | undefined)?.code);
    const expected = errorCodes.filter((code) => !Object.hasOwn(elsewhere, code));
    expect(expected.filter((code) => !codes.includes(code))).toEqual([]);
  });
});

describe('the comparison', () => {
  const before = { a: [1.5, { b: 'code' }], c: null };

  test('lets new members be, and numbers a billionth apart', () => {
    expect(differences(before, { a: [1.5 + 1e-10, { b: 'code', params: { n: 1 } }], c: null, d: 1 })).toEqual([]);
  });

  test.each([
    ['another number', { a: [1.5 + 1e-8, { b: 'code' }], c: null }, '/a/0'],
    ['another code', { a: [1.5, { b: 'other' }], c: null }, '/a/1/b'],
    ['an entry more', { a: [1.5, { b: 'code' }, 1], c: null }, '/a:'],
    ['an entry less', { a: [1.5], c: null }, '/a:'],
    ['a member less', { a: [1.5, {}], c: null }, '/a/1/b is gone'],
    ['something for null', { a: [1.5, { b: 'code' }], c: 0 }, '/c:'],
  ])('tells %s', (_, now, says) => {
    const [first, ...others] = differences(before, now);
    expect([first!.startsWith(says), others]).toEqual([true, []]);
  });
});
