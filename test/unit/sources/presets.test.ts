import { readFileSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { describe, expect, test } from 'vitest';
import { addDays, DAY_MS, HOUR_MS, type PlainDate } from '../../../src/basics/calendar.js';
import { type PresetName, presetNames, sourcePresets } from '../../../src/garden/store/source-presets.js';
import type { SourceState, Store } from '../../../src/garden/store/store.js';
import { sourceFetcher } from '../../../src/sources/fetch-source.js';
import { presetRequest } from '../../../src/sources/preset-requests.js';
import { publisherPace } from '../../../src/sources/publisher-pace.js';
import { refreshDue } from '../../../src/sources/refresh.js';
import { openStore } from '../../../src/storage/open-store.js';
import { quillmere } from '../../storage/make.js';
import { closedAfterEach, type LocalServer, serve } from '../egress/servers.js';
import { sayStored } from '../words/say-plainly.js';

const OWNER = 'quillmere';
const PLACE = 'plot';
const CONTACT = 'garden@example.org';
/** Six in the evening of 31 May at the place. */
const NOW = Date.parse('2027-05-31T20:00Z');

const { open } = closedAfterEach();

const fixture = (name: string): Buffer => readFileSync(new URL(`../../../fixtures/sources/${name}`, import.meta.url));

/** The publishers, as one server of this machine: the host that was meant comes first in the path. */
async function publishers(
  answer: (asked: { host: string; url: URL; request: IncomingMessage }, response: ServerResponse) => void,
): Promise<LocalServer & { urls(): URL[] }> {
  const meant = ({ url = '' }: IncomingMessage): URL => new URL(`https:/${url}`);
  const server = await serve((request, response) => {
    const url = meant(request);
    answer({ host: url.host, url, request }, response);
  });
  return { ...server, urls: () => server.asked.map(meant) };
}

/** All of them as their documents say, each with its invented days. */
const asDocumented = ({ host, url }: { host: string; url: URL }, response: ServerResponse): void => {
  const name = {
    'power.larc.nasa.gov': 'nasa-power.json',
    'archive-api.open-meteo.com': 'open-meteo-archive.json',
    'api.open-meteo.com': 'open-meteo-forecast.json',
    'api.met.no': 'met-norway.json',
    'api.weather.gov': url.pathname.startsWith('/points/') ? 'us-nws-point.json' : 'us-nws-grid.json',
  }[host];
  if (name === undefined) response.writeHead(404).end();
  else response.setHeader('content-type', 'application/json').end(fixture(name));
};

interface Garden {
  readonly store: Store;
  readonly server: Awaited<ReturnType<typeof publishers>>;
  refreshAfter(hours: number): Promise<number>;
  state(n?: number): Promise<SourceState>;
  reason(): Promise<string>;
}

/** A place with these presets as its sources. */
async function garden(
  presets: readonly PresetName[],
  answer: Parameters<typeof publishers>[0] = asDocumented,
  { contact = CONTACT, place = {} }: { contact?: string; place?: object } = {},
): Promise<Garden> {
  const server = await publishers(answer);
  const store = await openStore('sqlite::memory:');
  const fetcher = sourceFetcher({
    userAgent: `germination-forecaster/0.0.0-test${contact === '' ? '' : ` (${contact})`}`,
    isAllowed: (address) => address === '127.0.0.1',
    random: () => 0.5,
    limits: { attempts: 3, wholeMs: 20_000, firstPauseMs: 1 },
  });
  open.push(server, store, fetcher);
  const sources = presets.map((preset) => ({
    preset,
    format: null,
    url: null,
    everyHours: sourcePresets[preset].everyHours,
  }));
  const spot = { latitude: 44.98765432, longitude: -30.12345678 };
  await store.putPlace(OWNER, PLACE, { ...quillmere, ...spot, ...place, sources });
  let hours = 0;
  const silent = (): void => {};
  const clock = () => new Date(NOW + hours * HOUR_MS);
  return {
    store,
    server,
    refreshAfter(after) {
      hours = after;
      return refreshDue({
        store,
        fetcher,
        pace: publisherPace(clock),
        hasContact: contact !== '',
        mirror: (url) => new URL(`${server.url}/${url.host}${url.pathname}${url.search}`),
        clock,
        random: () => 1,
        log: { info: silent, warn: silent, error: silent },
      });
    },
    state: async (n = 0) => (await store.sourceStates(OWNER, PLACE))[n]!,
    reason: async () => sayStored((await store.sourceStates(OWNER, PLACE))[0]!.lastError!),
  };
}

const days = async ({ store }: Garden) => ({
  air: (await store.air(OWNER, PLACE)).map(({ date, min, max }) => [date, min, max]),
  coming: ((await store.comingDays(OWNER, PLACE))?.days ?? []).map(({ date, min, max }) => [date, min, max]),
});

describe('a publisher by name', () => {
  test('nasa-power is asked for thirty years of days, and its fill values are no temperatures', async () => {
    const one = await garden(['nasa-power']);
    await one.refreshAfter(0);
    const [url] = one.server.urls();
    expect(url!.host + url!.pathname).toBe('power.larc.nasa.gov/api/temporal/daily/point');
    expect(Object.fromEntries(url!.searchParams)).toEqual({
      parameters: 'T2M,T2M_MAX,T2M_MIN',
      community: 'AG',
      latitude: '44.9876',
      longitude: '-30.1234',
      start: '19970508',
      end: '20270530',
      'time-standard': 'LST',
      format: 'JSON',
    });
    expect(await days(one)).toEqual({
      air: [
        ['2027-05-26', 8.4, 18.2],
        ['2027-05-27', 8.9, 16.9],
        ['2027-05-28', 9.3, 17.5],
      ],
      coming: [],
    });
    expect(await one.state()).toMatchObject({
      days: { from: '2027-05-26', to: '2027-05-28', count: 3 },
      nextAtMs: NOW + DAY_MS,
      failures: 0,
    });
    await one.refreshAfter(24);
    // Archives correct their last weeks.
    expect(one.server.urls()[1]!.searchParams.get('start')).toBe('20270401');
  });

  test('open-meteo-archive is asked for thirty years in pieces of ten, each soon after the one before', async () => {
    const one = await garden(['open-meteo-archive'], ({ url }, response) => {
      const [from, to] = ['start_date', 'end_date'].map((name) => url.searchParams.get(name) as PlainDate);
      const time = [from!];
      while (time.at(-1)! < to!) time.push(addDays(time.at(-1)!, 1));
      const all = (value: number) => time.map(() => value);
      const daily = { time, temperature_2m_max: all(64.4), temperature_2m_min: all(46.4) };
      const units = { temperature_2m_max: '°F', temperature_2m_min: '°F' };
      response.end(JSON.stringify({ daily, daily_units: units }));
    });
    for (const hours of [0, 0.04, 0.08]) await one.refreshAfter(hours);
    expect(await one.refreshAfter(0.12)).toBe(0);
    expect(
      one.server.urls().map(({ searchParams }) => [searchParams.get('start_date'), searchParams.get('end_date')]),
    ).toEqual([
      ['2017-05-23', '2027-05-30'],
      ['2007-05-16', '2017-05-22'],
      ['1997-05-08', '2007-05-15'],
    ]);
    const [first] = one.server.urls();
    expect(first!.host + first!.pathname).toBe('archive-api.open-meteo.com/v1/archive');
    expect(first!.searchParams.get('timezone')).toBe('Etc/GMT+2');
    expect(first!.searchParams.get('daily')).toBe('temperature_2m_max,temperature_2m_min,temperature_2m_mean');
    expect(await one.state()).toMatchObject({ days: { from: '1997-05-08', to: '2027-05-30', count: 10_980 } });
    const [day] = await one.store.air(OWNER, PLACE);
    expect([day!.min, day!.max].map((value) => Math.round(value! * 10) / 10)).toEqual([8, 18]);
    await one.refreshAfter(25);
    expect(one.server.urls()[3]!.searchParams.get('start_date')).toBe('2027-04-01');
  });

  test('open-meteo-archive leaves out the days it does not know yet', async () => {
    const one = await garden(['open-meteo-archive']);
    await one.refreshAfter(0);
    expect((await days(one)).air).toEqual([
      ['2027-05-26', 8.5, 18.3],
      ['2027-05-27', 9, 17],
      ['2027-05-28', 9.2, 17.4],
      ['2027-05-29', 7.7, 16.8],
    ]);
  });

  test('open-meteo-forecast gives the coming week and today, and nothing to the past', async () => {
    const one = await garden(['open-meteo-forecast']);
    await one.refreshAfter(0);
    expect(one.server.urls()[0]!.searchParams.get('forecast_days')).toBe('7');
    const { air, coming } = await days(one);
    expect(air).toEqual([]);
    expect(coming).toHaveLength(7);
    expect(coming[1]).toEqual(['2027-06-01', 9.1, 19.2]);
    expect(await one.state()).toMatchObject({ days: { from: '2027-05-31', to: '2027-06-06', count: 7 } });
  });

  test('met-norway is told whom to write to, with four decimals, and gives the days that it covers whole', async () => {
    const one = await garden(['met-norway']);
    await one.refreshAfter(0);
    const [url] = one.server.urls();
    expect(url!.href).toBe(
      'https://api.met.no/weatherapi/locationforecast/2.0/complete?lat=44.9876&lon=-30.1234&altitude=12',
    );
    expect(one.server.asked[0]!.headers['user-agent']).toBe(`germination-forecaster/0.0.0-test (${CONTACT})`);
    // Six hours apart, the hottest and coldest hours lie between the instants; hourly ones have them.
    expect((await days(one)).coming).toEqual([
      ['2027-06-01', 7.5, 19.3],
      ['2027-06-02', 8.8, 18.4],
      ['2027-06-03', 6.1, 17.7],
    ]);
  });

  test('met-norway is not asked again before Expires, and then whether anything has changed', async () => {
    const modified = 'Mon, 31 May 2027 19:32:10 GMT';
    const one = await garden(['met-norway'], ({ request }, response) => {
      const at = Date.parse('2027-05-31T20:00Z');
      response.setHeader('date', new Date(at).toUTCString());
      response.setHeader('expires', new Date(at + 7.5 * HOUR_MS).toUTCString());
      response.setHeader('last-modified', modified);
      const isKnown = request.headers['if-modified-since'] === modified;
      response.writeHead(isKnown ? 304 : 200).end(isKnown ? '' : fixture('met-norway.json'));
    });
    await one.refreshAfter(0);
    const before = await days(one);
    expect(await one.state()).toMatchObject({ nextAtMs: NOW + 7.5 * HOUR_MS, notBeforeMs: NOW + 7.5 * HOUR_MS });
    await one.store.hurrySources(OWNER, PLACE, NOW + 7 * HOUR_MS, NOW + 6 * HOUR_MS);
    expect(await one.refreshAfter(7.4)).toBe(0);
    expect(await one.refreshAfter(7.5)).toBe(1);
    expect(one.server.asked.map(({ headers }) => headers['if-modified-since'])).toEqual([undefined, modified]);
    expect(await days(one)).toEqual(before);
    expect(await one.state()).toMatchObject({ failures: 0, notBeforeMs: NOW + 15 * HOUR_MS, days: { count: 3 } });
  });

  test('us-nws names its grid first, and the grid gives the days', async () => {
    const one = await garden(['us-nws']);
    await one.refreshAfter(0);
    expect(one.server.urls().map(({ href }) => href)).toEqual([
      'https://api.weather.gov/points/44.9876,-30.1234',
      'https://api.weather.gov/gridpoints/QMR/31,70',
    ]);
    expect(one.server.asked.map(({ headers }) => headers['user-agent'])).toEqual(
      Array(2).fill(`germination-forecaster/0.0.0-test (${CONTACT})`),
    );
    expect((await days(one)).coming).toEqual([
      ['2027-06-01', 6.667, 20],
      ['2027-06-02', 8.889, 21.111],
    ]);
  });

  test('us-nws is asked again five seconds after it had too many', async () => {
    const at: number[] = [];
    const one = await garden(['us-nws'], (asked, response) => {
      at.push(Date.now());
      if (at.length === 1) response.writeHead(429).end();
      else asDocumented(asked, response);
    });
    await one.refreshAfter(0);
    expect(await one.state()).toMatchObject({ failures: 0, lastError: null });
    expect(at[1]! - at[0]!).toBeGreaterThanOrEqual(4990);
  });

  test('us-nws beyond its country says so, and a grid at another host is not asked', async () => {
    const elsewhere = await garden(['us-nws'], (_, response) => response.writeHead(404).end());
    await elsewhere.refreshAfter(0);
    expect(await elsewhere.reason()).toContain('no forecast for this place');
    const astray = await garden(['us-nws'], (_, response) => {
      const properties = { forecastGridData: 'https://other.example/grid' };
      response.end(JSON.stringify({ properties }));
    });
    await astray.refreshAfter(0);
    expect(await astray.reason()).toContain('another host');
    expect(astray.server.asked).toHaveLength(1);
  });

  test.each(['nasa-power', 'open-meteo-archive', 'met-norway'] as const)(
    '%s that has too many is left alone',
    async (preset) => {
      const one = await garden([preset], (_, response) => response.writeHead(429, { 'retry-after': '3600' }).end());
      await one.refreshAfter(0);
      expect(one.server.asked).toHaveLength(1);
      expect(await one.state()).toMatchObject({ failures: 1, notBeforeMs: NOW + HOUR_MS });
      expect(await one.refreshAfter(0.9)).toBe(0);
    },
  );

  test.each(presetNames.filter((name) => sourcePresets[name].isContactNeeded))(
    '%s is not asked while nobody is named to write to',
    async (preset) => {
      const one = await garden([preset], asDocumented, { contact: '' });
      await one.refreshAfter(0);
      expect(one.server.asked).toHaveLength(0);
      expect(await one.reason()).toContain('SOURCES_CONTACT');
    },
  );

  test('is asked at the host that the list of presets names', async () => {
    for (const preset of presetNames) {
      const one = await garden([preset]);
      await one.refreshAfter(0);
      expect(one.server.urls().map(({ host }) => host)).toContain(sourcePresets[preset].host);
      expect(await one.state()).toMatchObject({ failures: 0, lastError: null });
    }
  });

  test('beside another fills past and future, each with a state of its own', async () => {
    const one = await garden(['nasa-power', 'met-norway']);
    expect(await one.refreshAfter(0)).toBe(2);
    const { air, coming } = await days(one);
    expect([air.length, coming.length]).toEqual([3, 3]);
    expect((await one.state(0)).days).toMatchObject({ to: '2027-05-28' });
    expect((await one.state(1)).days).toMatchObject({ from: '2027-06-01' });
  });

  test('is asked anew for a place that has moved', async () => {
    const one = await garden(['nasa-power']);
    await one.refreshAfter(0);
    const { sources, ...place } = (await one.store.place(OWNER, PLACE))!;
    await one.store.putPlace(OWNER, PLACE, { ...quillmere, longitude: place.longitude, latitude: 45.5, sources });
    expect(await one.refreshAfter(0.2)).toBe(1);
    expect(one.server.urls()[1]!.searchParams.get('start')).toBe('19970508');
  });
});

test('two weeks of days count as one call of Open-Meteo, and never less than one', () => {
  const place = { latitude: 44, longitude: -30, elevationM: null, timeZone: 'UTC' };
  const today = '2027-05-31' as PlainDate;
  const first = presetRequest('open-meteo-archive', { place, today, fetchedOn: null, days: null });
  expect(first.calls).toBeCloseTo(3660 / 14, 9);
  const days = { from: '1997-05-08' as PlainDate, to: '2027-05-29' as PlainDate, count: 10_979 };
  const later = presetRequest('open-meteo-archive', { place, today, fetchedOn: '2027-05-30' as PlainDate, days });
  // From 31 March to 30 May.
  expect(later.calls).toBeCloseTo(61 / 14, 9);
  expect(presetRequest('open-meteo-forecast', { place, today, fetchedOn: null, days: null }).calls).toBe(1);
});

describe('the pace at which a publisher is asked', () => {
  const HOUR = HOUR_MS;
  /** A pace whose clock stands until it is moved. */
  function paced() {
    let nowMs = NOW;
    const pace = publisherPace(() => new Date(nowMs));
    let asked = 0;
    const ask = (calls: number) =>
      pace.inTurn('open-meteo.com', calls, async () => {
        asked++;
      });
    return { pace, ask, asked: () => asked, wait: (ms: number) => (nowMs += ms), nowMs: () => nowMs };
  }

  test('keeps below the calls of a minute, an hour and a day, and says until when to wait', async () => {
    const one = paced();
    await one.ask(300);
    await one.ask(240);
    await expect(one.ask(1)).rejects.toMatchObject({ name: 'PutOff', untilMs: NOW + 60_000 });
    for (let n = 2; n <= 8; n++) {
      one.wait(60_000);
      await one.ask(540);
    }
    one.wait(60_000);
    // 4,320 of 4,500 are used.
    await expect(one.ask(261)).rejects.toMatchObject({ untilMs: NOW + HOUR });
    expect(one.asked()).toBe(9);
    one.wait(HOUR);
    for (let n = 1; n <= 8; n++) {
      await one.ask(540);
      one.wait(60_000);
    }
    one.wait(HOUR);
    await one.ask(360);
    one.wait(60_000);
    await expect(one.ask(1)).rejects.toMatchObject({ untilMs: NOW + DAY_MS });
  });

  test('is one request at a time for each publisher, and another publisher does not wait', async () => {
    const { pace } = paced();
    let [underWay, most] = [0, 0];
    const slow = async () => {
      most = Math.max(most, ++underWay);
      await new Promise((done) => setTimeout(done, 10));
      underWay--;
    };
    await Promise.all(Array.from({ length: 4 }, () => pace.inTurn('nasa.gov', 1, slow)));
    expect(most).toBe(1);
    const order: string[] = [];
    await Promise.all([
      pace.inTurn('nasa.gov', 1, async () => {
        await new Promise((done) => setTimeout(done, 30));
        order.push('slow');
      }),
      pace.inTurn('weather.gov', 1, async () => void order.push('quick')),
    ]);
    expect(order).toEqual(['quick', 'slow']);
  });

  test('goes on after a request that failed', async () => {
    const { pace } = paced();
    await expect(pace.inTurn('nasa.gov', 1, () => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(await pace.inTurn('nasa.gov', 1, async () => 'yes')).toBe('yes');
  });

  test('is ten requests a second at most of MET Norway', async () => {
    const pace = publisherPace(() => new Date());
    const at: number[] = [];
    await Promise.all(Array.from({ length: 12 }, () => pace.inTurn('met.no', 1, async () => void at.push(Date.now()))));
    expect(at[10]! - at[0]!).toBeGreaterThanOrEqual(990);
  });

  test('puts a source off without counting a failure', async () => {
    const server = await publishers(asDocumented);
    const store = await openStore('sqlite::memory:');
    const fetcher = sourceFetcher({ userAgent: 'x', isAllowed: () => true, random: () => 0.5 });
    open.push(server, store, fetcher);
    const clock = () => new Date(NOW);
    const pace = publisherPace(clock);
    await pace.inTurn('open-meteo.com', 540, async () => {});
    await store.putPlace(OWNER, PLACE, {
      ...quillmere,
      sources: [{ preset: 'open-meteo-forecast', format: null, url: null, everyHours: 6 }],
    });
    const silent = (): void => {};
    const log = { info: silent, warn: silent, error: silent };
    await refreshDue({ store, fetcher, pace, hasContact: true, clock, random: () => 1, log });
    expect(server.asked).toHaveLength(0);
    expect((await store.sourceStates(OWNER, PLACE))[0]).toMatchObject({ failures: 0, nextAtMs: NOW + 60_000 });
  });
});
