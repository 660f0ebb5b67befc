import Fastify, { type FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addDays, type PlainDate } from '../../src/basics/calendar.js';
import type { BedSeason } from '../../src/garden/calendar/calendar-season.js';
import type { Bed, Store } from '../../src/garden/store/store.js';
import { keyring } from '../../src/http/auth/keys.js';
import { answerCache } from '../../src/http/negotiation/answer-cache.js';
import { readerSoFar, takeReader } from '../../src/http/negotiation/reader.js';
import { calendarRoutes } from '../../src/http/routes/calendar/calendar.js';
import { serviceLog } from '../../src/http/server/service-log.js';
import { openStore } from '../../src/storage/open-store.js';
import { calendarFaults } from '../unit/garden/calendar-faults.js';
import { eventsIn, propertiesOf } from '../unit/garden/read-calendar.js';
import { forecastOf, growing, on, plannedOf, planOf, seasonOf, spellOf } from '../unit/garden/seasons.js';
import { expectProblem, refused } from './bad-request.js';
import { askerOf, keepQuillmere, localities, NOW, startApp } from './helper.js';

const key = { authorization: 'Bearer s3cret' };

describe("a bed's calendar", () => {
  let app: FastifyInstance;
  let url: string;
  const lines: string[] = [];
  beforeAll(async () => {
    app = await startApp({
      findOwner: keyring(new Map([['s3cret', 'gardener']])),
      log: serviceLog('info', { write: (line) => lines.push(line) }),
      rateLimit: 100,
    });
    const ask = askerOf(app);
    await ask(
      'PUT',
      '/v1/places/quillmere',
      { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' },
      key,
    );
    await ask('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed' }, key);
    url = (await ask('GET', '/v1/beds/north', undefined, key)).json().calendarUrl;
  });
  afterAll(() => app.close());

  test('opens by its address alone, without a key', async () => {
    const { statusCode, headers, body } = await app.inject({ url });
    expect([statusCode, headers['content-type']]).toEqual([200, 'text/calendar; charset=utf-8']);
    expect(calendarFaults(body)).toEqual([]);
    expect(propertiesOf(body).find(({ name }) => name === 'NAME')!.value).toBe('North bed');
  });

  test('is not sent again to whoever has it', async () => {
    const { headers } = await app.inject({ url });
    expect(headers.etag).toMatch(/^W\/"/);
    const again = await app.inject({ url, headers: { 'if-none-match': String(headers.etag) } });
    expect([again.statusCode, again.body]).toEqual([304, '']);
  });

  test('is not there for whoever has another token, or none, just as that of a bed that is not there', async () => {
    const details = new Set<string>();
    for (const wrong of [
      '/v1/beds/north/calendar.ics',
      '/v1/beds/north/calendar.ics?token=',
      '/v1/beds/north/calendar.ics?token=wrong',
      `${url}x`,
      `${url}&token=wrong`,
      url.replace('north', 'south'),
      '/v1/beds/South/calendar.ics?token=wrong',
      `/v1/beds/north/calendar.ics?token=${'x'.repeat(5000)}`,
      '/v1/beds/north/calendar.ics?token=%00',
    ]) {
      await expectProblem(app, refused(404, 'not-found', wrong, { url: wrong, headers: key }, 'no calendar'));
      details.add((await app.inject({ url: wrong })).json().detail);
    }
    expect(details.size).toBe(1);
  });

  test('asks the database for nothing that no token can be', async () => {
    const asked: string[] = [];
    const store = { bedOfCalendar: async (_: string, token: string) => void asked.push(token) } as unknown as Store;
    const bare = Fastify();
    for (const { method, url: at, handler } of calendarRoutes(
      { store, clock: () => new Date(NOW), answers: answerCache(), localities },
      async () => undefined,
    )) {
      bare.route({ method, url: at, handler });
    }
    // PostgreSQL takes no text with a zero byte.
    for (const token of ['a%00', '%00', 'a%20b', 'a%0Ab'])
      await bare.inject(`/v1/beds/north/calendar.ics?token=${token}`);
    expect(asked).toEqual([]);
    await bare.close();
  });

  test('has another address once its token is renewed', async () => {
    const old = url;
    url = (await app.inject({ method: 'POST', url: '/v1/beds/north/calendar-token', headers: key })).json().calendarUrl;
    expect((await app.inject({ url: old })).statusCode).toBe(404);
    expect((await app.inject({ url })).statusCode).toBe(200);
  });

  test('keeps its secret out of the log', () => {
    expect(lines.some((line) => line.includes('calendar.ics?token=[Redacted]'))).toBe(true);
    for (const line of lines) expect(line).not.toContain(new URL(url, 'http://x').searchParams.get('token')!);
  });

  test('counts against its caller, as whatever else asks for something', async () => {
    expect((await app.inject({ url })).headers['ratelimit-remaining']).toBeDefined();
    const answers = await Promise.all(Array.from({ length: 120 }, () => app.inject({ url: `${url}x` })));
    expect(answers.some(({ statusCode }) => statusCode === 429)).toBe(true);
    expect((await app.inject({ url: '/v1/beds/north', headers: key })).statusCode).toBe(200);
  });
});

describe('what grows in a kept bed', () => {
  let app: FastifyInstance;
  let now = Date.parse(NOW);
  beforeAll(async () => {
    app = await startApp({ clock: () => new Date(now) });
    await keepQuillmere(app);
  }, 60_000);
  afterAll(() => app.close());

  const SOWING = 'north-lettuce.sowing.north@germination-forecaster';
  const read = async () => {
    const { calendarUrl } = (await app.inject('/v1/beds/north')).json();
    const { statusCode, body } = await app.inject(calendarUrl);
    expect([statusCode, calendarFaults(body)]).toEqual([200, []]);
    return new Map(eventsIn(body).map((event) => [event.UID!, event]));
  };

  test('is in its calendar on the days that its forecast says', async () => {
    const sowing = (await app.inject('/v1/sowings/north-lettuce')).json();
    const basic = (date: string): string => date.replaceAll('-', '');
    const events = await read();
    expect(events.get(`sow.${SOWING}`)!.DTSTART).toBe('20270730');
    expect(events.get(`keep-moist.${SOWING}`)!.DTEND).toBe(basic(addDays(sowing.forecast.keepMoist.to, 1)));
    const { first, most } = sowing.forecast.emergence;
    const look = events.get(`look-for-seedlings.${SOWING}`)!;
    expect([look.DTSTART, look.DTEND]).toEqual([basic(first.range.from), basic(addDays(most.inBeds.to, 1))]);
    expect(events.get(`first-harvest.${SOWING}`)!.DTSTART).toBe(basic(sowing.harvest.from));
  });

  test('is in its calendar as its plans ask for it', async () => {
    const harvest = { from: '2028-06-15', to: '2028-07-26', perWeek: 6 };
    const put = { method: 'PUT', url: '/v1/plans/salad' } as const;
    const made = await app.inject({ ...put, payload: { bed: 'north', crop: 'lettuce', harvest } });
    expect(made.statusCode, made.body).toBe(201);
    const { sowings } = made.json();
    expect(sowings.length).toBeGreaterThan(1);
    const planned = [...(await read())].filter(([uid]) => /^sow\.\d+\.salad\.plan\.north@/.test(uid));
    expect(planned.map(([, { DTSTART }]) => DTSTART)).toEqual(
      sowings.map(({ date }: { date: string }) => date.replaceAll('-', '')),
    );
    expect((await app.inject({ method: 'DELETE', url: '/v1/plans/salad' })).statusCode).toBe(204);
    expect([...(await read()).keys()].filter((uid) => uid.includes('.salad.'))).toEqual([]);
  });

  test('moves within it, as the same events, when the weather was another', async () => {
    const before = await read();
    now += 3_600_000;
    const daily = Array.from({ length: 30 }, (_, i) => ({ date: addDays(on('2027-07-05'), i), min: 3, max: 11 }));
    const air = { method: 'POST', url: '/v1/places/quillmere/air', payload: { medium: 'air', daily } } as const;
    expect((await app.inject(air)).statusCode).toBe(200);
    const after = await read();
    const [was, is] = [before, after].map((events) => events.get(`keep-moist.${SOWING}`)!);
    expect(is!.DTEND! > was!.DTEND!).toBe(true);
    expect(Number(is!.SEQUENCE)).toBe(Number(was!.SEQUENCE) + 1);
    expect([was!['LAST-MODIFIED'], is!['LAST-MODIFIED']]).toEqual(['20270803T140000Z', '20270803T150000Z']);
    expect(after.get(`sow.${SOWING}`)).toEqual(before.get(`sow.${SOWING}`));
  });

  test('is not looked for any more where it is lost; only that it was sown is told, and until when it can be again', async () => {
    now = Date.parse('2027-10-20T14:00:00Z');
    for (const date of ['2027-09-10', '2027-10-01', '2027-10-20']) {
      const count = { method: 'PUT', url: `/v1/sowings/north-lettuce/counts/${date}` } as const;
      const { statusCode, body } = await app.inject({ ...count, payload: { seedlings: 0 } });
      expect(statusCode, body).toBeLessThan(300);
    }
    await app.inject({ method: 'DELETE', url: '/v1/sowings/north-lettuce/counts/2027-08-03' });
    expect((await app.inject('/v1/sowings/north-lettuce')).json().judgement.verdict).toBe('lost');
    const kinds = [...(await read()).values()].map(({ CATEGORIES }) => CATEGORIES);
    expect(kinds.filter((kind) => kind !== 'sow-again')).toEqual(['sow']);
  });
});

describe('a subscribed calendar', () => {
  let store: Store;
  let app: FastifyInstance;
  let bed: Bed;
  let now = Date.parse(NOW);
  let known: Partial<BedSeason> = {};
  let workedOut = 0;

  beforeAll(async () => {
    store = await openStore('sqlite::memory:');
    const whole = await startApp({ store });
    await keepQuillmere(whole);
    await whole.close();
    bed = (await store.bed('gardener', 'north'))!;
    app = Fastify();
    app.decorateRequest('reader');
    app.addHook('onRequest', async (request) => {
      request.reader = readerSoFar(request);
      takeReader(request);
    });
    app.decorateRequest('askedBy', (owner = 'gardener') => ({ owner, caller: owner }));
    const find = async () => ({
      inputs: known,
      season: async () => {
        workedOut++;
        return seasonOf({ bed, ...known });
      },
    });
    for (const { method, url, handler } of calendarRoutes(
      { store, clock: () => new Date(now), answers: answerCache(), localities },
      find,
    )) {
      app.route({ method, url, handler });
    }
  }, 60_000);
  afterAll(async () => {
    await app.close();
    await store.close();
  });

  const read = async (query = '', headers = {}) => {
    const url = `/v1/beds/north/calendar.ics?token=${bed.calendarToken}${query}`;
    const { statusCode, body } = await app.inject({ url, headers });
    expect([statusCode, calendarFaults(body)]).toEqual([200, []]);
    return new Map(eventsIn(body).map((event) => [event.UID!, event]));
  };
  const later = (): void => {
    now += 3_600_000;
  };
  const SOWN = on('2027-05-03');
  const seasonWith = (first: number, heat: string, planned: PlainDate): Partial<BedSeason> => ({
    sowings: [
      growing({
        forecast: forecastOf(
          SOWN,
          { first, half: first + 2, most: first + 5 },
          { hotSpells: [spellOf(heat, '2027-05-12')] },
        ),
      }),
    ],
    plans: [planOf(plannedOf(planned))],
  });

  test('shows the same event at another date, with a higher sequence, where the forecast has changed', async () => {
    known = seasonWith(6, '2027-05-10', on('2027-06-01'));
    const before = await read();
    later();
    const unchanged = await read();
    expect(unchanged).toEqual(before);

    known = seasonWith(8, '2027-05-11', addDays(on('2027-06-01'), 3));
    const after = await read();
    expect([...after.keys()].toSorted()).toEqual([...before.keys()].toSorted());
    const moved = [...after].filter(([uid, { DTSTART, DTEND }]) => {
      const was = before.get(uid)!;
      return DTSTART !== was.DTSTART || DTEND !== was.DTEND;
    });
    // All but the sowing itself: it was made.
    expect(moved.length).toBe(after.size - 1);
    for (const [uid, { SEQUENCE, 'LAST-MODIFIED': modified }] of moved) {
      expect(SEQUENCE, uid).toBe('1');
      expect(modified, uid).toBe('20270803T150000Z');
    }
    const still = after.get('sow.lettuce-1.sowing.north@germination-forecaster')!;
    expect([still.SEQUENCE, still.DTSTAMP]).toEqual(['0', '20270803T140000Z']);
  });

  test('goes on where it left off with an event that was away', async () => {
    const uid = 'heat.1.lettuce-1.sowing.north@germination-forecaster';
    const sequence = Number((await read()).get(uid)!.SEQUENCE);
    const hot = known;
    known = { sowings: [growing({ forecast: forecastOf(SOWN) })] };
    later();
    expect((await read()).has(uid)).toBe(false);
    known = seasonWith(8, '2027-05-09', on('2027-06-04'));
    expect(known).not.toEqual(hot);
    expect(Number((await read()).get(uid)!.SEQUENCE)).toBe(sequence + 1);
  });

  test('is in the words of whoever reads it, which change no event', async () => {
    known = { ...seasonWith(8, '2027-05-09', on('2027-06-04')), comingMinC: [{ date: on('2027-06-01'), minC: -3 }] };
    const english = await read();
    later();
    const german = await read('&lang=de&textUnit=F', { 'accept-language': 'en' });
    expect(await read('&textUnit=F', { 'accept-language': 'de-DE, en;q=0.5' })).toEqual(german);
    expect([...german.keys()]).toEqual([...english.keys()]);
    for (const [uid, event] of german) {
      const { SUMMARY, DESCRIPTION, ...rest } = event;
      const was = english.get(uid)!;
      expect(SUMMARY, uid).not.toBe(was.SUMMARY);
      expect(DESCRIPTION, uid).not.toBe(was.DESCRIPTION);
      expect({ ...was, SUMMARY, DESCRIPTION }).toEqual({ ...rest, SUMMARY, DESCRIPTION });
    }
    const frost = (events: Map<string, Record<string, string>>) =>
      [...events.values()].find(({ CATEGORIES }) => CATEGORIES === 'frost')!;
    expect(frost(english).DESCRIPTION).toContain('A night of about -3 °C in the air is forecast');
    expect(frost(german)).toMatchObject({
      SUMMARY: 'Frost kann schaden: Pflücksalat',
      DESCRIPTION: expect.stringContaining('eine Nacht mit etwa 27 °F'),
    });
    later();
    expect(await read()).toEqual(english);
  });

  test('keeps its events as they are where a crop is only called otherwise', async () => {
    const before = await read();
    known = {
      ...known,
      sowings: known.sowings!.map((one) => ({ ...one, crop: { ...one.crop, name: 'Leaf lettuce' } })),
    };
    later();
    expect(await read()).toEqual(before);
  });

  test('is worked out only for whoever has its token, and not for whoever has it already', async () => {
    const url = `/v1/beds/north/calendar.ics?token=${bed.calendarToken}`;
    const { headers } = await app.inject({ url });
    const before = workedOut;
    await app.inject({ url: `${url}x` });
    await app.inject({ url: '/v1/beds/north/calendar.ics' });
    expect((await app.inject({ url, headers: { 'if-none-match': String(headers.etag) } })).statusCode).toBe(304);
    expect(workedOut).toBe(before);
  });
});
