import { existsSync, statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { RequestError } from '../../../src/basics/errors.js';
import { near } from '../../../src/localities/near.js';
import { nearest } from '../../../src/localities/nearest.js';
import { openLocalities } from '../../../src/localities/open-localities.js';
import { requireLocality } from '../../../src/localities/require-locality.js';
import { search } from '../../../src/localities/search.js';
import { localities } from '../../api/helper.js';

const { index, zoneAt } = await localities();
const one = (text: string, country?: string): string | undefined => {
  const found = near(index, text, country);
  return found.found === 'one' ? found.locality.near : undefined;
};
const refusalOf = (...asked: Parameters<typeof requireLocality>): RequestError => {
  try {
    requireLocality(...asked);
  } catch (error) {
    if (error instanceof RequestError) return error;
    throw error;
  }
  throw new Error(`${asked[1]} was not refused`);
};

describe('one town in many spellings', () => {
  test.each([
    [
      'Ithaca, New York, US',
      [
        'Ithaca, NY',
        'ITHACA, NY',
        'ithaca ny',
        'ithaca, new york, us',
        'Ithaca, New York, United States',
        'Ithaca NY USA',
      ],
    ],
    [
      'São Paulo, São Paulo, BR',
      ['São Paulo', 'sao paulo', 'SÃO PAULO', 'São Paulo, SP, Brasilien', 'Sa\u0303o Paulo'],
    ],
    ['Zürich, Zurich, CH', ['Zürich', 'zurich', 'Zuerich', 'ZÜRICH, ZH', 'Zürich, Schweiz']],
    ['Copenhagen, Capital Region, DK', ['Kobenhavn', 'København', 'Kopenhagen', 'Copenhague', 'Koebenhavn']],
    ['Munich, Bavaria, DE', ['München', 'Muenchen', 'Munich, Bayern', 'München, Deutschland', 'Monaco di Baviera']],
    ['St Albans, England, GB', ['Saint Albans, England', 'St. Albans, UK', 'st albans, great britain']],
    ['Stratford-upon-Avon, England, GB', ['Stratford upon Avon', 'stratford-upon-avon']],
    ['Washington, District of Columbia, US', ['Washington, DC', 'Washington, D.C.', 'washington dc']],
    ['Sydney, New South Wales, AU', ['Sydney, NSW', 'Sydney, Australia', 'Sydney']],
  ])('%s', (expected, spellings) => {
    for (const spelling of spellings) expect(one(spelling), spelling).toBe(expected);
  });

  test('in a country alone', () => {
    expect(one('Birmingham', 'US')).toBe('Birmingham, Alabama, US');
    expect(one('Ithaca', 'GB')).toBeUndefined();
  });
});

describe('several towns of one name', () => {
  test.each(['Portland', 'Springfield', 'York', 'San José', 'Christchurch'])('%s is asked about', (name) => {
    expect(near(index, name)).toMatchObject({ found: 'several' });
  });

  test.each([
    ['Paris', 'Paris, Île-de-France, FR'],
    ['Ithaca', 'Ithaca, New York, US'],
    ['Moscow', 'Moscow, Moscow, RU'],
    ['Roma', 'Rome, Lazio, IT'],
    // 246,000 people to 24,400, where Portland has 653,000 to 66,900.
    ['Norfolk', 'Norfolk, Virginia, US'],
    // By its former name, 108 times the people of a village of that name.
    ['Stanisławów', 'Ivano-Frankivsk, Ivano-Frankivsk, UA'],
  ])('%s is the one with ten times the people, and that is told', (name, expected) => {
    const { locality, assumption } = requireLocality(index, name, { parameter: 'near' });
    expect(locality.near).toBe(expected);
    expect(assumption).toMatchObject({ code: 'locality', params: { near: expected } });
  });

  test('each of which is found by the choice that is offered for it', () => {
    const refusal = refusalOf(index, 'Portland', { path: ['place', 'near'] }, ({ latitude }) =>
      latitude > 45 ? { frost: 'in-spring', lastFrostOn: '04-10' } : { frost: 'never', lastFrostOn: null },
    );
    expect(refusal.code).toBe('choose-locality');
    const [fault] = refusal.faults;
    expect(fault!.path).toEqual(['place', 'near']);
    expect(fault!.choices!.map(({ value }) => value).slice(0, 2)).toEqual([
      'Portland, Oregon, US',
      'Portland, Maine, US',
    ]);
    expect(fault!.choices![0]!.params).toMatchObject({ frost: 'in-spring', lastFrostOn: '04-10', people: 653_000 });
    for (const { value } of fault!.choices!) expect(one(value)).toBe(value);
  });
});

describe('no town', () => {
  test.each([
    ['Ithca', 'Ithaca, New York, US'],
    ['Pheonix', 'Phoenix, Arizona, US'],
    ['Bristoll', 'Bristol, England, GB'],
    ['Seatle, WA', 'Seattle, Washington, US'],
  ])('%s: %s is spelt alike', (misspelt, meant) => {
    const refusal = refusalOf(index, misspelt, { parameter: 'near' });
    expect(refusal.code).toBe('unknown-locality');
    expect(refusal.faults[0]!.choices![0]!.value).toBe(meant);
  });

  test.each(['Quillmere', 'qqqqqqqq', '   ', ',,,', '(', '🌱'])('%j is not guessed', (text) => {
    const refusal = refusalOf(index, text, { parameter: 'near' });
    expect([refusal.code, refusal.faults[0]!.choices]).toEqual(['unknown-locality', undefined]);
  });
});

describe('a search', () => {
  const found = (...asked: [text: string, country?: string]): string[] =>
    search(index, asked[0], 5, asked[1]).map((locality) => `${locality.near} ${locality.match}`);

  test('finds names as they are being written', () => {
    expect(found('fort wo')[0]).toBe('Fort Worth, Texas, US begins');
    expect(found('fort')).toContain('Fort Worth, Texas, US begins');
    expect(found('fortal')[0]).toBe('Fortaleza, Ceará, BR begins');
    expect(found('ithaca, new y')).toEqual(['Ithaca, New York, US begins']);
    expect(found('münch')[0]).toBe('Munich, Bavaria, DE begins');
    expect(found('москв')[0]).toBe('Moscow, Moscow, RU begins');
  });

  test('puts the name itself first, and looks in one country', () => {
    expect(found('York')[0]).toBe('York, England, GB name');
    expect(found('york', 'AU')[0]).toBe('York, Western Australia, AU name');
  });
});

describe('a point', () => {
  test.each([
    [42.44, -76.5, 'Ithaca', 'America/New_York'],
    [-18.14, 178.44, 'Suva', 'Pacific/Fiji'],
    [78.22, 15.64, 'Longyearbyen', 'Arctic/Longyearbyen'],
    // By the map alone it would lie in Chile.
    [-54.8, -68.3, 'Ushuaia', 'America/Argentina/Ushuaia'],
  ])('%d, %d lies at %s, in %s', (latitude, longitude, name, zone) => {
    const [first, second] = nearest(index, latitude, longitude, 2);
    expect(first!.name).toBe(name);
    expect(first!.km).toBeLessThanOrEqual(second!.km);
    expect(zoneAt(latitude, longitude)).toBe(zone);
  });

  test.each([
    [0, -30, 'Etc/GMT+2'],
    // South of the Beagle Channel, ten kilometres from Ushuaia on its other side.
    [-54.9, -68.36, 'America/Punta_Arenas'],
    [40.5, -116.9, 'America/Los_Angeles'],
    [71.5, -40, 'America/Nuuk'],
  ])('far from any town, %d, %d, has a zone by the map: %s', (latitude, longitude, zone) => {
    expect(nearest(index, latitude, longitude, 1)[0]!.km).toBeGreaterThan(10);
    expect(zoneAt(latitude, longitude)).toBe(zone);
  });

  test('beside the date line has neighbours on the other side of it', () => {
    const places = nearest(index, -16.8, -179.95, 10);
    expect(places.some(({ longitude }) => longitude > 179)).toBe(true);
    for (const { km } of places) expect(km).toBeLessThan(400);
  });

  test('at a pole is as far from a town as the degrees between them, of 111.2 km', () => {
    for (const { latitude, km } of nearest(index, 90, 123, 50)) expect(km).toBeCloseTo((90 - latitude) * 111.195, 0);
  });

  test('is looked at in one country', () => {
    for (const { country } of nearest(index, 47.5, 9.5, 20, 'LI')) expect(country).toBe('LI');
  });
});

describe('the index', () => {
  const file = new URL('../../../src/localities/localities.bin', import.meta.url);
  const zones = new URL('../../../node_modules/@photostructure/tz-lookup/tz.js', import.meta.url);

  test('takes at most 10 MB, with the zones', () => {
    expect(existsSync(file)).toBe(true);
    expect(statSync(file).size + statSync(zones).size).toBeLessThan(10_000_000);
  });

  test('is not read before the first question, and again after one that failed', async () => {
    const open = openLocalities(new URL('./none.bin', file));
    await expect(open()).rejects.toThrow('ENOENT');
    await expect(open()).rejects.toThrow('ENOENT');
    const read = openLocalities(file);
    expect(read()).toBe(read());
  });
});
