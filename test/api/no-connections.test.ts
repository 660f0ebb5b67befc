import { createHook } from 'node:async_hooks';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { addDays, type PlainDate } from '../../src/basics/calendar.js';
import { keepRefreshing } from '../../src/sources/keep-refreshing.js';
import { openStore } from '../../src/storage/open-store.js';
import { serve } from '../unit/egress/servers.js';
import { askerOf, NOW, startApp } from './helper.js';

/** What Node.js makes for each attempt to reach something: a connection, a name that is looked up, a datagram. */
const REACHING = [
  'TCPCONNECTWRAP',
  'PIPECONNECTWRAP',
  'GETADDRINFOREQWRAP',
  'GETNAMEINFOREQWRAP',
  'QUERYWRAP',
  'UDPWRAP',
  'UDPSENDWRAP',
];

let reached: string[] = [];
const hook = createHook({
  init(_, type) {
    if (REACHING.includes(type)) reached.push(type);
  },
}).enable();
afterAll(() => hook.disable());
beforeEach(() => {
  reached = [];
});

const silent = (): void => {};
const clock = () => new Date(NOW);

/** The service, and its sources asked as often as one likes. */
async function service() {
  const store = await openStore('sqlite::memory:');
  const refreshing = keepRefreshing({
    version: '0.0.0-test',
    store,
    clock,
    random: () => 0,
    log: { info: silent, warn: silent, error: silent },
    allowPrivate: true,
    allowed: 'any',
    contact: 'garden@example.org',
  });
  const { refreshPlace } = refreshing;
  const app = await startApp({
    store,
    clock,
    sources: { allowed: 'any', hasContact: true, allowPrivate: true, refreshPlace },
  });
  return {
    ask: askerOf(app),
    refreshing,
    async close() {
      await app.close();
      await refreshing.stop();
      await store.close();
    },
  };
}

const place = { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
const years = Array.from({ length: 4 * 366 }, (_, n) => {
  const date = addDays('2023-07-30' as PlainDate, n);
  const season = -8 * Math.cos((2 * Math.PI * (Number(date.slice(5, 7)) - 1)) / 12);
  return { date, min: 6 + season + 2 * Math.sin(n / 4), max: 16 + season + 2 * Math.sin(n / 4) };
}).filter(({ date }) => date < NOW.slice(0, 10));

describe('the service opens no connection', () => {
  test('in the whole life of a garden that has no source', async () => {
    const { ask, refreshing, close } = await service();
    const life = [
      ['GET', '/v1/source-presets'],
      ['PUT', '/v1/places/quillmere', place],
      ['POST', '/v1/places/quillmere/air', { medium: 'air', unit: 'C', daily: years }],
      [
        'PUT',
        '/v1/places/quillmere/coming-days',
        { medium: 'air', origin: 'forecast', unit: 'C', daily: [{ date: '2027-08-04', min: 11, max: 21 }] },
      ],
      ['PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed', kind: 'open-ground' }],
      [
        'POST',
        '/v1/beds/north/readings',
        {
          medium: 'soil',
          probeDepthCm: 5,
          unit: 'C',
          readings: [
            { at: '2027-08-03T08:00:00-02:00', value: 17 },
            { at: '2027-08-03T09:00:00-02:00', value: 18 },
          ],
        },
      ],
      ['PUT', '/v1/lots/packet', { crop: 'carrot', germinationPercent: 80, testedOn: '2027-02-01' }],
      ['PUT', '/v1/sowings/carrots', { bed: 'north', crop: 'carrot', date: '2027-07-20', lot: 'packet', seeds: 100 }],
      ['PUT', '/v1/sowings/carrots/counts/2027-08-02', { seedlings: 12 }],
      ['GET', '/v1/sowings/carrots'],
      ['GET', '/v1/sowings'],
      ['GET', '/v1/beds/north/forecast?crop=lettuce&sowing=2027-08-03'],
      ['GET', '/v1/beds/north/soil-temperatures?depthCm=5&from=2027-07-20&to=2027-08-02'],
      ['GET', '/v1/beds/north/sowing-windows?crop=lettuce&to=2027-10-01'],
      ['GET', '/v1/places/quillmere/frost-dates'],
      [
        'PUT',
        '/v1/plans/salad',
        { bed: 'north', crop: 'lettuce', harvest: { from: '2027-09-20', to: '2027-10-10', perWeek: 6 } },
      ],
      ['GET', '/openapi.json'],
    ] as const;
    for (const [method, url, body] of life) {
      const answer = await ask(method, url, body);
      expect(answer.statusCode, `${method} ${url} ${answer.body.slice(0, 300)}`).toBeLessThan(303);
    }
    expect((await ask('POST', '/v1/places/quillmere/air/refresh')).statusCode).toBe(409);
    await refreshing.refreshPlace('gardener', 'quillmere');
    expect((await ask('DELETE', '/v1/places/quillmere?with=beds')).statusCode).toBe(204);
    await close();
    expect(reached).toEqual([]);
  });

  test('and by a source that was set and is asked, one is seen', async () => {
    const server = await serve((_, response) => void response.writeHead(404).end());
    const { ask, close } = await service();
    const source = { format: 'station-day-file', url: `${server.url}/a`, everyHours: 6 };
    await ask('PUT', '/v1/places/quillmere', { ...place, source });
    expect(reached).toEqual([]);
    await ask('POST', '/v1/places/quillmere/air/refresh', undefined, { prefer: 'wait=20' });
    expect(server.asked).toHaveLength(1);
    expect(reached).toContain('TCPCONNECTWRAP');
    await close();
    await server.close();
  });
});
