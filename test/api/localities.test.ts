import { afterAll, describe, expect, test } from 'vitest';
import { type LocalitiesWire, localitiesSchema } from '../../src/contract/localities.js';
import { keyring } from '../../src/http/auth/keys.js';
import { startApp } from './helper.js';

const app = await startApp();
afterAll(() => app.close());

const ask = (query: string, headers: Record<string, string> = {}) =>
  app.inject({ url: `/v1/localities${query}`, headers });
const answerOf = async (query: string): Promise<LocalitiesWire> => {
  const response = await ask(query);
  expect(response.statusCode, response.body).toBe(200);
  return localitiesSchema.parse(response.json());
};

describe('GET /v1/localities', () => {
  test('tells all of a town that a question needs, and whose data it is', async () => {
    const { localities, source } = await answerOf('?q=ithaca&country=us&limit=5');
    expect(localities[0]).toEqual({
      near: 'Ithaca, New York, US',
      name: 'Ithaca',
      region: 'New York',
      country: 'US',
      latitude: 42.44,
      longitude: -76.5,
      elevationM: 127,
      timeZone: 'America/New_York',
      population: 30_800,
      match: 'name',
    });
    expect(localities[1]!.near).toBe('Ithaca, Michigan, US');
    expect(source).toEqual({
      name: 'GeoNames',
      licence: 'CC BY 4.0',
      url: 'https://www.geonames.org/',
      asOf: '2023-03-05',
    });
  });

  test('finds the towns near a point, with their distance', async () => {
    const { localities } = await answerOf('?latitude=42.44&longitude=-76.5&limit=3');
    expect(localities.map(({ match }) => match)).toEqual(['nearest', 'nearest', 'nearest']);
    expect(localities[0]).toMatchObject({ near: 'Ithaca, New York, US', km: 0 });
    expect(localities[2]!.km).toBeGreaterThan(0);
  });

  test('offers what is spelt alike, and nothing where nothing is', async () => {
    expect((await answerOf('?q=Ithca')).localities[0]).toMatchObject({ near: 'Ithaca, New York, US', match: 'alike' });
    expect((await answerOf('?q=Quillmere')).localities).toEqual([]);
  });

  test('tells ten, unless another limit is sent', async () => {
    expect((await answerOf('?q=san')).localities.length).toBe(10);
    expect((await answerOf('?q=san&limit=50')).localities.length).toBe(50);
  });

  test.each([
    ['', 'q', 'Send `q` with a name'],
    ['?latitude=42', 'longitude', 'send `q` with a name, or `latitude` and `longitude`'],
    ['?longitude=42', 'latitude', 'send `q`'],
    ['?q=Ithaca&latitude=42', 'q', 'cannot stand beside'],
    ['?q=', 'q', ''],
    [`?q=${'a'.repeat(101)}`, 'q', 'at most 100 characters'],
    ['?q=a%00b', 'q', 'without control characters'],
    ['?q=Ithaca&country=USA', 'country', 'two letters of a country, such as US'],
    ['?q=Ithaca&limit=51', 'limit', 'at most 50'],
    ['?q=Ithaca&limit=0', 'limit', 'at least 1'],
    ['?latitude=91&longitude=0', 'latitude', 'at most 90'],
    ['?latitude=0&longitude=-181', 'longitude', 'at least -180'],
    ['?name=Ithaca', 'name', ''],
  ])('refuses %s', async (query, parameter, says) => {
    const response = await ask(query);
    expect([response.statusCode, response.json().code]).toEqual([422, 'not-understood']);
    const faults = response.json().errors as { parameter: string; detail: string }[];
    expect(faults.map((fault) => fault.parameter)).toContain(parameter);
    expect(response.body.toLowerCase()).toContain(says.toLowerCase());
  });

  test('may be cached by all, under a tag', async () => {
    const first = await ask('?q=Ithaca');
    expect(first.headers['cache-control']).toBe('public, max-age=3600');
    const again = await ask('?q=Ithaca', { 'if-none-match': String(first.headers.etag) });
    expect([again.statusCode, again.body]).toEqual([304, '']);
    expect((await ask('?q=Utica')).headers.etag).not.toBe(first.headers.etag);
  });

  test('needs a key where keys are set', async () => {
    const keyed = await startApp({ findOwner: keyring(new Map([['plain-key', 'quillmere']])) });
    try {
      expect((await keyed.inject('/v1/localities?q=Ithaca')).statusCode).toBe(401);
      const headers = { authorization: 'Bearer plain-key' };
      expect((await keyed.inject({ url: '/v1/localities?q=Ithaca', headers })).statusCode).toBe(200);
    } finally {
      await keyed.close();
    }
  });

  test('is credited in the model, as its licence asks', async () => {
    expect((await app.inject('/v1/model')).body).toContain('GeoNames, https://www.geonames.org/');
    expect((await app.inject('/openapi.json')).body).toContain('© GeoNames, CC BY 4.0');
  });
});
