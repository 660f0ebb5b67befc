import type { IncomingMessage, ServerResponse } from 'node:http';
import type { FastifyInstance } from 'fastify';
import { afterEach, describe, expect, test } from 'vitest';
import { addDays, HOUR_MS, type PlainDate } from '../../src/basics/calendar.js';
import { placeAnswerSchema, presetsAnswerSchema, sourcesAnswerSchema } from '../../src/contract/places.js';
import { OPEN_OWNER } from '../../src/http/auth/owner.js';
import { keepRefreshing, type Refreshing } from '../../src/sources/keep-refreshing.js';
import { openStore } from '../../src/storage/open-store.js';
import { type LocalServer, serve } from '../unit/egress/servers.js';
import { askerOf, NOW, quillmere, startApp } from './helper.js';

const place = { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
const address = { format: 'station-day-file', url: 'https://weather.example/{from}.csv', everyHours: 6 };
const url = '/v1/places/quillmere';

const open: { close(): Promise<void> }[] = [];
afterEach(async () => {
  for (const one of open.splice(0).reverse()) await one.close();
});

type Answer = (request: IncomingMessage, response: ServerResponse) => void;

interface Garden {
  readonly app: FastifyInstance;
  readonly ask: ReturnType<typeof askerOf>;
  readonly server: LocalServer;
  readonly store: Awaited<ReturnType<typeof openStore>>;
  readonly refreshing: Refreshing;
  /** Moves the clock on. */
  wait(minutes: number): void;
}

/** The service with its sources, whose publishers are a server of this machine. */
async function garden({
  allowed = 'any',
  contact = 'garden@example.org',
  answer = (_, response) => void response.writeHead(500).end(),
}: {
  allowed?: 'off' | 'presets' | 'any';
  contact?: string;
  answer?: Answer;
} = {}): Promise<Garden> {
  const server = await serve(answer);
  const store = await openStore('sqlite::memory:');
  let nowMs = Date.parse(NOW);
  const clock = () => new Date(nowMs);
  const silent = (): void => {};
  const refreshing = keepRefreshing({
    version: '0.0.0-test',
    store,
    clock,
    random: () => 0,
    log: { info: silent, warn: silent, error: silent },
    allowPrivate: true,
    allowed,
    contact,
    mirror: ({ pathname, search }) => new URL(server.url + pathname + search),
  });
  const app = await startApp({
    store,
    clock,
    sources: { allowed, hasContact: contact !== '', allowPrivate: false, refreshPlace: refreshing.refreshPlace },
  });
  open.push({ close: () => store.close() }, server, { close: () => refreshing.stop() }, { close: () => app.close() });
  return { app, ask: askerOf(app), server, store, refreshing, wait: (minutes) => (nowMs += minutes * 60_000) };
}

/** Days of an archive in the form of NASA POWER, as many as are asked for. */
const archive: Answer = (request, response) => {
  const query = new URL(request.url!, 'http://x').searchParams;
  const dateOf = (name: string) => query.get(name)!.replace(/(....)(..)(..)/, '$1-$2-$3') as PlainDate;
  const dates = [dateOf('start')];
  while (dates.at(-1)! < dateOf('end')) dates.push(addDays(dates.at(-1)!, 1));
  const column = (add: number) =>
    Object.fromEntries(
      dates.map((date, n) => {
        const season = -8 * Math.cos((2 * Math.PI * (Number(date.slice(5, 7)) - 1)) / 12);
        return [date.replaceAll('-', ''), 12 + season + 3 * Math.sin(n / 4.3) + add];
      }),
    );
  const units = { units: 'C' };
  response.end(
    JSON.stringify({
      properties: { parameter: { T2M_MAX: column(5), T2M_MIN: column(-5) } },
      header: { fill_value: -999 },
      parameters: { T2M_MAX: units, T2M_MIN: units },
    }),
  );
};

describe('a source by name', () => {
  test('is listed with what it gives, its terms, credit, host and licence, in the reader’s language', async () => {
    const { ask } = await garden();
    const listed = await ask('GET', '/v1/source-presets');
    expect(listed.statusCode, listed.body).toBe(200);
    expect(listed.headers['cache-control']).toBe('public, max-age=3600');
    const { presets, allowed } = presetsAnswerSchema.parse(listed.json());
    expect(allowed).toBe('any');
    expect(presets.map(({ preset, host, licence, contactNeeded }) => [preset, host, licence, contactNeeded])).toEqual([
      ['nasa-power', 'power.larc.nasa.gov', null, false],
      ['open-meteo-archive', 'archive-api.open-meteo.com', 'CC BY 4.0', false],
      ['open-meteo-forecast', 'api.open-meteo.com', 'CC BY 4.0', false],
      ['met-norway', 'api.met.no', 'CC BY 4.0', true],
      ['us-nws', 'api.weather.gov', null, true],
    ]);
    expect(presets[0]!.attribution.text).toContain('POWER Project of the NASA Langley Research Center');
    expect(presets[3]!.gives.text).toContain('9 coming days');
    expect(presets[1]!.terms.text).toContain('non-commercial');
    const german = presetsAnswerSchema.parse((await ask('GET', '/v1/source-presets?lang=de')).json());
    expect(german.presets[1]!.terms.text).toContain('nichtkommerzielle');
    const known = await ask('GET', '/v1/source-presets', undefined, { 'if-none-match': String(listed.headers.etag) });
    expect(known.statusCode).toBe(304);
  });

  test('is a whole source, and asks nobody by being put', async () => {
    const { ask, server } = await garden();
    const put = await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    expect(put.statusCode, put.body).toBe(201);
    const state = {
      status: 'not-asked',
      fetchedAt: null,
      triedAt: null,
      nextTryAt: null,
      failures: 0,
      why: null,
      days: null,
    };
    const source = { preset: 'nasa-power', everyHours: 24 };
    expect(placeAnswerSchema.parse(put.json())).toMatchObject({ source, sources: [{ ...source, state }] });
    expect((await ask('GET', `${url}?as=kept`)).json()).toMatchObject({ source });
    expect((await ask('GET', '/v1/places')).json()).toMatchObject({ places: [{ source }] });
    expect(server.asked).toHaveLength(0);
  });

  test('that nobody has is told, with those that there are', async () => {
    const { ask } = await garden();
    for (const [source, pointer] of [
      [{ preset: 'moon' }, '#/source/preset'],
      [[{ preset: 'nasa-power' }, { preset: 'moon' }], '#/source/1/preset'],
    ] as const) {
      const refused = await ask('PUT', url, { ...place, source });
      const { code, errors } = refused.json();
      expect([refused.statusCode, code, errors[0].pointer]).toEqual([422, 'unknown-preset', pointer]);
      const choices = errors[0].choices as { value: string; reads: string; consequence: string }[];
      expect(choices.map(({ value }) => value)).toEqual([
        'nasa-power',
        'open-meteo-archive',
        'open-meteo-forecast',
        'met-norway',
        'us-nws',
      ]);
      for (const { reads, consequence } of choices) expect(reads.length * consequence.length).toBeGreaterThan(100);
    }
  });

  test.each(['met-norway', 'us-nws'])('%s needs somebody to write to', async (preset) => {
    const without = await garden({ contact: '' });
    const refused = await without.ask('PUT', url, { ...place, source: { preset } });
    expect([refused.statusCode, refused.json().code]).toEqual([422, 'contact-needed']);
    expect(refused.json()).toMatchObject({ errors: [{ pointer: '#/source/preset' }] });
    expect(refused.json().detail).toContain('SOURCES_CONTACT');
    const withOne = await garden();
    expect((await withOne.ask('PUT', url, { ...place, source: { preset } })).statusCode).toBe(201);
  });
});

describe('several sources of a place', () => {
  const list = [{ preset: 'nasa-power' }, { preset: 'met-norway', everyHours: 12 }, address];

  test('come back in their order; the first stands for them as `source`', async () => {
    const { ask } = await garden();
    const put = await ask('PUT', url, { ...place, source: list });
    const shown = placeAnswerSchema.parse(put.json());
    expect(shown.source).toEqual({ preset: 'nasa-power', everyHours: 24 });
    expect(shown.sources.map(({ state: _, ...source }) => source)).toEqual([
      { preset: 'nasa-power', everyHours: 24 },
      { preset: 'met-norway', everyHours: 12 },
      address,
    ]);
    const kept = (await ask('GET', `${url}?as=kept`)).json();
    expect(kept.source).toHaveLength(3);
    expect('sources' in kept).toBe(false);
  });

  test('all stay when a place is read, edited and put, or patched', async () => {
    const { ask } = await garden();
    await ask('PUT', url, { ...place, source: list });
    const shown = (await ask('GET', url)).json();
    const edited = await ask('PUT', url, { ...shown, name: 'Quillmere, south' });
    expect(edited.statusCode, edited.body).toBe(200);
    expect(edited.json().sources).toHaveLength(3);
    const asKept = (await ask('GET', `${url}?as=kept`)).json();
    expect((await ask('PUT', url, asKept)).json().sources).toHaveLength(3);
    expect((await ask('PATCH', url, { annualRainMm: 700 })).json().sources).toHaveLength(3);
    // Another first source takes the place of the first; a whole list that of all.
    const replaced = await ask('PUT', url, { ...shown, source: { preset: 'open-meteo-archive' } });
    expect(replaced.json().sources.map((one: { preset?: string }) => one.preset)).toEqual([
      'open-meteo-archive',
      'met-norway',
      undefined,
    ]);
    expect((await ask('PATCH', url, { source: { preset: 'us-nws' } })).json().sources).toHaveLength(1);
    expect((await ask('PUT', url, { ...place, source: null })).json()).toMatchObject({ source: null, sources: [] });
  });

  test.each([
    ['five', [...list, { preset: 'us-nws' }, { preset: 'open-meteo-forecast' }], '#/source'],
    ['none in a list', [], '#/source'],
    ['the same twice', [{ preset: 'us-nws' }, { preset: 'us-nws', everyHours: 3 }], '#/source/1'],
    ['a name beside an address', { preset: 'nasa-power', ...address }, '#/source/preset'],
    ['hours below one', { preset: 'nasa-power', everyHours: 0.1 }, '#/source/everyHours'],
    ['a number', 7, '#/source'],
  ])('%s are refused', async (_, source, pointer) => {
    const { ask } = await garden();
    const refused = await ask('PUT', url, { ...place, source });
    expect([refused.statusCode, refused.json().code], refused.body).toEqual([422, 'not-understood']);
    expect(refused.json().errors[0].pointer).toBe(pointer);
  });
});

describe('a source at a private address', () => {
  const hosts = ['127.0.0.1', '[::1]', 'localhost', '10.1.2.3', '169.254.169.254', 'shed.localhost.', '2130706433'];

  test.each(hosts)('%s is refused when it is put', async (host) => {
    const { ask } = await garden();
    for (const [method, body] of [
      ['PUT', place],
      ['PATCH', {}],
    ] as const) {
      if (method === 'PATCH') await ask('PUT', url, place);
      const refused = await ask(method, url, { ...body, source: { ...address, url: `http://${host}/{from}` } });
      expect([refused.statusCode, refused.json().code], refused.body).toEqual([422, 'private-address']);
      expect(refused.json()).toMatchObject({ errors: [{ pointer: '#/source/url' }] });
    }
  });

  test('that was kept before goes on: the place can be changed, and the source is never asked', async () => {
    const { ask, store } = await garden();
    const old = { preset: null, format: 'station-day-file', url: 'http://10.1.2.3/a', everyHours: 6 };
    await store.putPlace(OPEN_OWNER, 'quillmere', {
      ...place,
      elevationM: null,
      annualRainMm: null,
      lastFrostAround: null,
      firstFrostAround: null,
      sources: [old],
    });
    const patched = await ask('PATCH', url, { name: 'Quillmere, south' });
    expect(patched.statusCode, patched.body).toBe(200);
    expect(patched.json()).toMatchObject({ name: 'Quillmere, south', source: { url: old.url } });
  });
});

describe('asking the sources of a place now', () => {
  const refresh = `${url}/air/refresh`;

  test('begins at once and answers 202; with Prefer it waits, and answers 200', async () => {
    const { ask, server } = await garden({ answer: archive });
    await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    const done = await ask('POST', refresh, undefined, { prefer: 'respond-async, wait=20' });
    expect(done.statusCode, done.body).toBe(200);
    expect(done.headers['preference-applied']).toBe('wait=20');
    const [shown] = sourcesAnswerSchema.parse(done.json()).sources;
    expect(shown!.state).toEqual({
      status: 'ok',
      fetchedAt: NOW,
      triedAt: NOW,
      nextTryAt: new Date(Date.parse(NOW) + 24 * HOUR_MS).toISOString(),
      failures: 0,
      why: null,
      days: { from: '1997-07-11', to: '2027-08-02', count: 10_980 },
    });
    expect(server.asked).toHaveLength(1);
    const other = await garden({ answer: archive });
    await other.ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    const begun = await other.ask('POST', refresh);
    expect([begun.statusCode, begun.headers['preference-applied']]).toEqual([202, undefined]);
    expect(begun.json().sources).toHaveLength(1);
    await expect.poll(async () => (await other.ask('GET', url)).json().sources[0].state.status).toBe('ok');
  });

  test('waits no longer than preferred', async () => {
    const { ask } = await garden({ answer: () => {} });
    await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    const begun = await ask('POST', refresh, undefined, { prefer: 'wait=1' });
    expect(begun.statusCode).toBe(202);
    expect(begun.json().sources[0].state).toMatchObject({ status: 'not-asked', triedAt: NOW });
  });

  test('tells what went wrong, as a code, parameters and a sentence in the reader’s language', async () => {
    const { ask } = await garden({ answer: (_, response) => void response.writeHead(404).end() });
    await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    const failed = await ask('POST', refresh, undefined, { prefer: 'wait=20' });
    const { state } = sourcesAnswerSchema.parse(failed.json()).sources[0]!;
    expect(state).toMatchObject({
      status: 'failing',
      failures: 1,
      fetchedAt: null,
      why: { code: 'source.status', params: { status: 404, reason: 'missing' } },
    });
    expect(state.why!.text).toContain('404');
    const german = (await ask('GET', `${url}?lang=de`)).json();
    expect(german.sources[0].state.why).toMatchObject({
      code: 'source.status',
      text: expect.stringContaining('Quelle'),
    });
  });

  test('is refused within five minutes of the last try, and says how long to wait', async () => {
    const { ask, server, wait } = await garden({ answer: archive });
    await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    await ask('POST', refresh, undefined, { prefer: 'wait=20' });
    wait(2);
    const soon = await ask('POST', refresh);
    expect([soon.statusCode, soon.json().code, soon.headers['retry-after']]).toEqual([429, 'too-soon', '180']);
    expect(soon.json().retryAfterS).toBe(180);
    wait(3);
    expect((await ask('POST', refresh, undefined, { prefer: 'wait=20' })).statusCode).toBe(200);
    expect(server.asked).toHaveLength(2);
  });

  test('never goes against what its publisher asks', async () => {
    const { ask, server, wait } = await garden({
      answer: (_, response) => void response.writeHead(429, { 'retry-after': '3600' }).end(),
    });
    await ask('PUT', url, { ...place, source: { preset: 'met-norway' } });
    await ask('POST', refresh, undefined, { prefer: 'wait=20' });
    wait(6);
    const soon = await ask('POST', refresh);
    expect([soon.statusCode, soon.headers['retry-after']]).toEqual([429, String(3600 - 360)]);
    expect(server.asked).toHaveLength(1);
  });

  test('is refused where nothing is there to ask', async () => {
    const { ask } = await garden();
    expect((await ask('POST', refresh)).statusCode).toBe(404);
    await ask('PUT', url, place);
    const none = await ask('POST', refresh);
    expect([none.statusCode, none.json().code]).toEqual([409, 'no-source']);
    expect(none.json().detail).toContain('nasa-power');
  });

  test('asks once, however many want it', async () => {
    const { ask, server } = await garden({ answer: archive });
    await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    await Promise.all(Array.from({ length: 6 }, () => ask('POST', refresh, undefined, { prefer: 'wait=20' })));
    expect(server.asked).toHaveLength(1);
  });
});

describe('a service that is set to ask', () => {
  test('nothing keeps sources as off, and asks none', async () => {
    const { ask, server, refreshing } = await garden({ allowed: 'off', answer: archive });
    const put = await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    expect(put.statusCode).toBe(201);
    expect(put.json().sources[0].state).toMatchObject({
      status: 'off',
      nextTryAt: null,
      why: { code: 'source.off', params: { allowed: 'off' } },
    });
    expect((await ask('POST', `${url}/air/refresh`)).json()).toMatchObject({ status: 409, code: 'no-source' });
    await refreshing.refreshPlace(OPEN_OWNER, 'quillmere');
    expect(server.asked).toHaveLength(0);
  });

  test('presets alone asks those', async () => {
    const { ask, server } = await garden({ allowed: 'presets', answer: archive });
    await ask('PUT', url, { ...place, source: [{ ...address, url: 'https://192.0.2.1/a' }] }).then((refused) =>
      expect(refused.statusCode).toBe(422),
    );
    const put = await ask('PUT', url, { ...place, source: [address, { preset: 'nasa-power' }] });
    expect(put.json().sources.map((one: { state: { status: string } }) => one.state.status)).toEqual([
      'off',
      'not-asked',
    ]);
    const done = await ask('POST', `${url}/air/refresh`, undefined, { prefer: 'wait=20' });
    expect(done.statusCode).toBe(200);
    expect(done.json().sources.map((one: { state: { status: string } }) => one.state.status)).toEqual(['off', 'ok']);
    expect(server.asked).toHaveLength(1);
  });
});

describe('an answer that rests on a source', () => {
  const credit = {
    code: 'attribution',
    params: { preset: 'nasa-power' },
    url: 'https://power.larc.nasa.gov/',
    licence: null,
  };

  test('credits it, and warns where a reanalysis stands for measurement', async () => {
    const { ask } = await garden({ answer: archive });
    await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    await ask('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed', kind: 'open-ground' });
    await ask('POST', `${url}/air/refresh`, undefined, { prefer: 'wait=20' });
    const asked = [
      ['GET', '/v1/beds/north/forecast?crop=carrot&sowing=2027-08-03'],
      ['GET', '/v1/beds/north/soil-temperatures?depthCm=5&from=2027-07-20&to=2027-08-02'],
      ['GET', `${url}/sowing-windows?crop=lettuce&to=2027-09-30`],
      ['GET', `${url}/frost-dates`],
      ['POST', '/v1/forecasts', { crop: 'carrot', where: { bed: 'north' }, sowing: { date: '2027-08-03' } }],
      ['PUT', '/v1/sowings/carrots', { bed: 'north', crop: 'carrot', date: '2027-07-20' }],
      [
        'PUT',
        '/v1/plans/salad',
        { bed: 'north', crop: 'lettuce', harvest: { from: '2027-09-20', to: '2027-10-10', perWeek: 6 } },
      ],
    ] as const;
    for (const [method, address, body] of asked) {
      const answer = await ask(method, address, body);
      expect(answer.statusCode, `${address} ${answer.body}`).toBeLessThan(300);
      const { attributions } = answer.json();
      expect(attributions, address).toMatchObject([credit]);
      expect(attributions[0].text).toContain('NASA Langley Research Center');
      const german = await ask('GET', `${url}/frost-dates?lang=de`);
      expect(german.json().attributions[0].text).toContain('rechnen');
    }
    const forecast = (await ask('GET', '/v1/beds/north/forecast?crop=carrot&sowing=2027-08-03')).json();
    expect(forecast.warnings).toContainEqual(
      expect.objectContaining({ code: 'reanalysis', params: { preset: 'nasa-power' } }),
    );
  });

  test('of the owner’s own address credits nobody, nor does one without sources', async () => {
    const { ask } = await garden();
    await ask('PUT', url, { ...place, source: address });
    await ask(
      'POST',
      `${url}/air`,
      'date,air min (C),air max (C)\n2027-07-30,9,19\n2027-07-31,9,19\n2027-08-01,9,19\n',
    );
    const soil = await ask('POST', '/v1/soil-temperatures', {
      where: { place: 'quillmere' },
      depthCm: 5,
      temperatures: [],
    });
    expect('attributions' in soil.json(), soil.body).toBe(false);
    expect('attributions' in (await ask('GET', url)).json()).toBe(false);
  });
});

describe('a question that fails for want of air', () => {
  test('names the source that failed, in its detail and its errors', async () => {
    const { ask, wait } = await garden({ answer: (_, response) => void response.writeHead(404).end() });
    await ask('PUT', url, { ...place, source: { preset: 'nasa-power' } });
    await ask('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed', kind: 'open-ground' });
    const fresh = (await ask('GET', '/v1/beds/north/forecast?crop=carrot&sowing=2027-08-03')).json();
    expect(fresh).toMatchObject({
      code: 'no-readings',
      errors: [{ code: 'source-stale', params: { source: 'NASA POWER' } }],
    });
    expect(fresh.detail).toContain('NASA POWER, has not been asked yet');
    await ask('POST', `${url}/air/refresh`, undefined, { prefer: 'wait=20' });
    wait(10);
    for (const address of [
      '/v1/beds/north/forecast?crop=carrot&sowing=2027-08-03',
      `${url}/sowing-windows?crop=lettuce`,
      `${url}/frost-dates`,
    ]) {
      const problem = (await ask('GET', address)).json();
      expect(problem.status, address).toBe(422);
      expect(problem.detail).toContain('NASA POWER, has never answered well');
      expect(problem.detail).toContain('404');
      expect(problem.errors.at(-1)).toMatchObject({
        code: 'source-failing',
        params: { source: 'NASA POWER', failures: 1 },
      });
    }
    // Some days are there, but no years.
    await ask(
      'POST',
      `${url}/air`,
      'date,air min (C),air max (C)\n2027-07-30,9,19\n2027-07-31,9,19\n2027-08-01,9,19\n',
    );
    const windows = (await ask('GET', `${url}/sowing-windows?crop=lettuce`)).json();
    expect(windows).toMatchObject({ status: 422, code: 'no-past-years' });
    expect(windows.detail).toContain('NASA POWER');
    expect(windows.errors.at(-1)).toMatchObject({ code: 'source-failing' });
    const sowing = (
      await ask('PUT', '/v1/sowings/carrots', { bed: 'north', crop: 'carrot', date: '2027-06-01' })
    ).json();
    expect(JSON.stringify(sowing.warnings)).toContain('NASA POWER');
  });
});

test('the place of the examples is the one that they are about', () => {
  expect([place.latitude, place.longitude]).toEqual([quillmere.latitude, quillmere.longitude]);
});
