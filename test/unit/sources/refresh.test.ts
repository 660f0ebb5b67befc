import { readFileSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { describe, expect, test } from 'vitest';
import { addDays, HOUR_MS, type PlainDate } from '../../../src/basics/calendar.js';
import { DEFAULT_QUOTAS, type Quotas } from '../../../src/garden/store/quotas.js';
import type { SourceState, Store } from '../../../src/garden/store/store.js';
import { sourceFetcher } from '../../../src/sources/fetch-source.js';
import { publisherPace } from '../../../src/sources/publisher-pace.js';
import { type RefreshSettings, refreshDue } from '../../../src/sources/refresh.js';
import { openStore } from '../../../src/storage/open-store.js';
import { quillmere } from '../../storage/make.js';
import { closedAfterEach, type LocalServer, serve } from '../egress/servers.js';
import { sayStored } from '../words/say-plainly.js';

const OWNER = 'quillmere';
const PLACE = 'plot';
/** Six in the evening of 31 May at the place. */
const NOW = Date.parse('2027-05-31T20:00Z');

const { open } = closedAfterEach();

interface Garden {
  readonly store: Store;
  readonly server: LocalServer;
  readonly settings: RefreshSettings;
  /** Asks what is due so long after the start. */
  refreshAfter(hours: number): Promise<number>;
  state(): Promise<SourceState | undefined>;
  /** Why it failed last. */
  reason(): Promise<string>;
  air(): ReturnType<Store['air']>;
}

/** A place whose source is a server of this machine that answers so. */
async function garden(
  format: string,
  path: string,
  answer: (request: IncomingMessage, response: ServerResponse) => void,
  quotas: Quotas = DEFAULT_QUOTAS,
): Promise<Garden> {
  const server = await serve(answer);
  const store = await openStore('sqlite::memory:', { quotas });
  const fetcher = sourceFetcher({
    userAgent: 'germination-forecaster/0.0.0-test',
    isAllowed: (address) => address === '127.0.0.1',
    random: () => 0.5,
    limits: { attempts: 1, wholeMs: 2000 },
  });
  open.push(server, store, fetcher);
  const source = { preset: null, format, url: server.url + path, everyHours: 6 };
  await store.putPlace(OWNER, PLACE, { ...quillmere, sources: [source] });
  let hours = 0;
  const silent = (): void => {};
  const clock = () => new Date(NOW + hours * HOUR_MS);
  const settings = {
    store,
    fetcher,
    pace: publisherPace(clock),
    hasContact: false,
    clock,
    random: () => 1,
    log: { info: silent, warn: silent, error: silent },
  };
  return {
    store,
    server,
    settings,
    refreshAfter(after) {
      hours = after;
      return refreshDue(settings);
    },
    state: async () => (await store.sourceStates(OWNER, PLACE))[0],
    reason: async () => sayStored((await store.sourceStates(OWNER, PLACE))[0]!.lastError!),
    air: () => store.air(OWNER, PLACE),
  };
}

const fixture = (name: string): Buffer =>
  readFileSync(new URL(`../../../fixtures/logger-files/${name}`, import.meta.url));

const json = (response: ServerResponse, value: unknown): void =>
  void response.setHeader('content-type', 'application/json').end(JSON.stringify(value));

const archiveOf = (dates: readonly string[], maxC = 18) => {
  const all = (value: number) => Object.fromEntries(dates.map((date) => [date.replaceAll('-', ''), value]));
  return {
    properties: { parameter: { T2M_MAX: all(maxC), T2M_MIN: all(8) } },
    header: { fill_value: -999 },
    parameters: { T2M_MAX: { units: 'C' }, T2M_MIN: { units: 'C' } },
  };
};

/** Hours of a forecast from an instant on, warmest in the afternoon. */
const forecastFrom = (start: string, hours: number, addC = 0) => ({
  properties: {
    temperature: {
      uom: 'wmoUnit:degC',
      values: Array.from({ length: hours }, (_, n) => {
        const at = new Date(Date.parse(start) + n * HOUR_MS);
        return {
          validTime: `${at.toISOString()}/PT1H`,
          value: 15 + addC - 5 * Math.cos((Math.PI * at.getUTCHours()) / 12),
        };
      }),
    },
  },
});

describe('the air of a place with a source', () => {
  test('is its station file, fetched once and then only when it has changed', async () => {
    const one = await garden('station-day-file', '/crn.txt', (request, response) => {
      const known = request.headers['if-none-match'] === '"1"';
      response.writeHead(known ? 304 : 200, { etag: '"1"' }).end(known ? '' : fixture('34-uscrn-daily01.txt'));
    });
    expect(await one.refreshAfter(0)).toBe(1);
    const air = await one.air();
    expect(air).toHaveLength(40);
    expect(air[0]).toMatchObject({ date: '2027-04-20', min: 3.8, max: 14.8 });
    expect(await one.refreshAfter(5.9)).toBe(0);
    const before = await one.store.place(OWNER, PLACE);
    expect(await one.refreshAfter(6)).toBe(1);
    expect(one.server.asked).toHaveLength(2);
    expect(await one.state()).toMatchObject({ fetchedAtMs: NOW + 6 * HOUR_MS, failures: 0, lastError: null });
    expect((await one.store.place(OWNER, PLACE))!.revision).toBe(before!.revision);
    expect(await one.air()).toEqual(air);
  });

  test('is not kept where the quota is full, and that is said', async () => {
    const one = await garden(
      'station-day-file',
      '/crn.txt',
      (_, response) => void response.end(fixture('34-uscrn-daily01.txt')),
      { ...DEFAULT_QUOTAS, megabytes: 0 },
    );
    await one.refreshAfter(0);
    expect(await one.air()).toEqual([]);
    expect(await one.reason()).toContain('no room for more than 0 megabytes');
  });

  test('is its daily archive, asked for thirty years first, and then for what may have been mended', async () => {
    const path = '/daily?latitude={latitude}&longitude={longitude}&start={fromCompact}&end={toCompact}';
    const one = await garden('daily-archive-json', path, (_, response) =>
      json(response, archiveOf(['2027-05-28', '2027-05-29', '2027-05-30', '2027-05-31'])),
    );
    await one.refreshAfter(0);
    // Today is not over.
    expect((await one.air()).map(({ date }) => date)).toEqual(['2027-05-28', '2027-05-29', '2027-05-30']);
    await one.refreshAfter(48);
    const [first, second] = one.server.asked.map(({ url }) => new URL(url!, 'http://x').searchParams);
    expect(Object.fromEntries(first!)).toEqual({
      latitude: '44',
      longitude: '-30',
      start: '19970508',
      end: '20270531',
    });
    expect(Object.fromEntries(second!)).toMatchObject({ start: '20270401', end: '20270602' });
    expect(await one.air()).toHaveLength(4);
  });

  test('to come is its forecast grid, replaced whole, and left alone where it says the same', async () => {
    let addC = 0;
    const one = await garden('forecast-grid-json', '/grid', (_, response) =>
      json(response, forecastFrom('2027-05-31T12:00:00Z', 80, addC)),
    );
    await one.refreshAfter(0);
    const coming = await one.store.comingDays(OWNER, PLACE);
    expect(coming!.atMs).toBe(NOW);
    expect(coming!.days.map(({ date, min, max }) => [date, min, max])).toEqual([
      ['2027-06-01', 10, 20],
      ['2027-06-02', 10, 20],
    ]);
    const { revision } = (await one.store.place(OWNER, PLACE))!;
    await one.refreshAfter(6);
    expect(await one.store.comingDays(OWNER, PLACE)).toEqual(coming);
    expect((await one.store.place(OWNER, PLACE))!.revision).toBe(revision);
    addC = 3;
    await one.refreshAfter(12);
    expect((await one.store.comingDays(OWNER, PLACE))!.days[0]).toMatchObject({ min: 13, max: 23 });
    expect(await one.air()).toEqual([]);
  });

  test('is its observations, page after page', async () => {
    const path = '/v1.1/Datastreams(7)/Observations';
    const one = await garden(
      'observations-api',
      `${path}?$filter=phenomenonTime ge {from}T00:00:00Z`,
      (request, response) => {
        const url = new URL(request.url!, one.server.url);
        if (url.pathname === '/v1.1/Datastreams(7)') {
          json(response, { unitOfMeasurement: { name: 'degree Celsius', symbol: 'degC', definition: '' } });
          return;
        }
        const skip = Number(url.searchParams.get('$skip') ?? 0);
        const start = Date.parse('2027-05-29T02:00:00Z');
        const value = Array.from({ length: 20 }, (_, i) => ({
          phenomenonTime: new Date(start + (skip + i) * HOUR_MS).toISOString(),
          result: 10 + ((skip + i) % 24),
        }));
        const next = { '@iot.nextLink': `${one.server.url}${path}?$skip=${skip + 20}` };
        json(response, { value, ...(skip < 40 && next) });
      },
    );
    await one.refreshAfter(0);
    expect(await one.state()).toMatchObject({ lastError: null });
    expect(await one.air()).toMatchObject([
      { date: '2027-05-29', min: 10, max: 33 },
      { date: '2027-05-30', min: 10, max: 33 },
    ]);
    expect(new URL(one.server.asked[0]!.url!, 'http://x').searchParams.get('$filter')).toBe(
      'phenomenonTime ge 2027-04-01T00:00:00Z',
    );
  });

  test('that comes twice changes nothing', async () => {
    const one = await garden('daily-archive-json', '/', (_, response) => json(response, archiveOf(['2027-05-28'])));
    await one.refreshAfter(0);
    const before = [await one.air(), (await one.store.place(OWNER, PLACE))!.revision];
    await one.refreshAfter(6);
    expect(one.server.asked).toHaveLength(2);
    expect([await one.air(), (await one.store.place(OWNER, PLACE))!.revision]).toEqual(before);
  });
});

describe('a source that fails', () => {
  const spoilt: Record<string, [(response: ServerResponse) => void, RegExp]> = {
    'web page': [(response) => void response.end('<!doctype html><p>Maintenance'), /web page/],
    'other JSON': [(response) => json(response, { message: 'quota' }), /not a daily archive’s JSON/],
    'empty answer': [(response) => void response.end(), /empty/],
    'answer without a day': [(response) => json(response, archiveOf([])), /no day that can be used/],
    'status 500': [(response) => void response.writeHead(500).end(), /status 500/],
    'broken connection': [(response) => void response.socket!.destroy(), /broke off/],
  };

  test.each(Object.keys(spoilt))('with a %s leaves what is kept, and says why', async (kind) => {
    const [spoil, why] = spoilt[kind]!;
    let isWell = true;
    const one = await garden('daily-archive-json', '/', (_, response) =>
      isWell ? json(response, archiveOf(['2027-05-28'])) : spoil(response),
    );
    await one.refreshAfter(0);
    const air = await one.air();
    isWell = false;
    await one.refreshAfter(6);
    expect(await one.state()).toMatchObject({ fetchedAtMs: NOW, failures: 1 });
    expect(await one.reason()).toMatch(why);
    expect(await one.air()).toEqual(air);
    isWell = true;
    await one.refreshAfter(7);
    expect(await one.state()).toMatchObject({ fetchedAtMs: NOW + 7 * HOUR_MS, failures: 0, lastError: null });
  });

  test('is asked again sooner than usual, and then ever later, up to its usual hours', async () => {
    const one = await garden('daily-archive-json', '/', (_, response) => response.writeHead(500).end());
    const waits: number[] = [];
    let hours = 0;
    for (let n = 0; n < 9; n++) {
      await one.refreshAfter(hours);
      waits.push((await one.state())!.nextAtMs - (NOW + hours * HOUR_MS));
      hours = ((await one.state())!.nextAtMs - NOW) / HOUR_MS;
    }
    expect(waits.map((ms) => Math.round(ms / 60_000))).toEqual([5, 10, 20, 40, 80, 160, 320, 360, 360]);
  });

  test('and asks to be left alone is, up to a day', async () => {
    let retryAfter = '36000';
    const one = await garden('daily-archive-json', '/', (_, response) =>
      response.writeHead(429, { 'retry-after': retryAfter }).end(),
    );
    await one.refreshAfter(0);
    expect((await one.state())!.nextAtMs).toBe(NOW + 10 * HOUR_MS);
    retryAfter = '999999999';
    await one.refreshAfter(10);
    expect((await one.state())!.nextAtMs).toBe(NOW + 34 * HOUR_MS);
  });

  test('that leads to a private address by a redirect is not followed', async () => {
    const one = await garden('daily-archive-json', '/', (_, response) =>
      response.writeHead(302, { location: 'http://192.168.0.1/' }).end(),
    );
    await one.refreshAfter(0);
    expect(await one.reason()).toMatch(/not a public address/);
  });

  test('does not keep others waiting, nor harm them', async () => {
    const one = await garden('daily-archive-json', '/', (_, response) => json(response, archiveOf(['2027-05-28'])));
    const bad = { preset: null, format: 'moon-phases', url: 'https://weather.example/', everyHours: 6 };
    await one.store.putPlace(OWNER, 'a-bad-one', { ...quillmere, sources: [bad] });
    await one.store.putPlace(OWNER, 'another', {
      ...quillmere,
      sources: [{ ...bad, format: 'daily-archive-json', url: '{x}' }],
    });
    expect(await one.refreshAfter(0)).toBe(3);
    expect(await one.air()).toHaveLength(1);
    expect(sayStored((await one.store.sourceStates(OWNER, 'a-bad-one'))[0]!.lastError!)).toContain(
      '"moon-phases" is not known',
    );
    expect(sayStored((await one.store.sourceStates(OWNER, 'another'))[0]!.lastError!)).toContain('{x}');
  });
});

describe('several instances', () => {
  test('ask a source once', async () => {
    const one = await garden('daily-archive-json', '/', (_, response) => {
      setTimeout(() => json(response, archiveOf(['2027-05-28'])), 30);
    });
    const asked = await Promise.all(Array.from({ length: 4 }, () => refreshDue(one.settings)));
    expect(asked.reduce((a, b) => a + b)).toBe(1);
    expect(one.server.asked).toHaveLength(1);
  });

  test('one that stops gives its source up, and the next may ask it at once', async () => {
    const one = await garden('daily-archive-json', '/', (_, response) => {
      if (one.server.asked.length > 1) json(response, archiveOf(['2027-05-28']));
      else stop.abort();
    });
    const stop = new AbortController();
    await refreshDue({ ...one.settings, signal: stop.signal });
    expect(await one.state()).toMatchObject({ failures: 0, lastError: null, fetchedAtMs: null });
    expect(await one.refreshAfter(0)).toBe(1);
    expect(await one.air()).toHaveLength(1);
  });
});

test('what is asked, what fails, and how late it was asked, is counted', async () => {
  const one = await garden('daily-archive-json', '/', (_, response) => {
    if (one.server.asked.length > 1) json(response, archiveOf(['2027-05-28']));
    else response.writeHead(500).end();
  });
  const tally = { asked: 0, failed: 0, due: 0, longestOverdueS: 0 };
  await refreshDue({ ...one.settings, tally });
  // It was never asked before, so it was not late.
  expect(tally).toEqual({ asked: 1, failed: 1, due: 1, longestOverdueS: 0 });
  await refreshDue({ ...one.settings, tally, clock: () => new Date(NOW + 2 * HOUR_MS) });
  // After a first failure it was due again in five minutes.
  expect(tally).toEqual({ asked: 2, failed: 1, due: 1, longestOverdueS: 115 * 60 });
  await refreshDue({ ...one.settings, tally, clock: () => new Date(NOW + 2 * HOUR_MS) });
  expect(tally).toEqual({ asked: 2, failed: 1, due: 0, longestOverdueS: 0 });
});

test('thirty years of an archive are kept in one round', async () => {
  const dates = Array.from({ length: 10_950 }, (_, n) => addDays('1997-05-30' as PlainDate, n));
  const one = await garden('daily-archive-json', '/', (_, response) => json(response, archiveOf(dates)));
  await one.refreshAfter(0);
  expect(await one.air()).toHaveLength(10_950);
});
