import { afterAll, describe, expect, test } from 'vitest';
import { type BadRequest, expectProblem, refused } from './bad-request.js';
import { askerOf, keepQuillmere, startApp } from './helper.js';

const app = await startApp();
afterAll(() => app.close());
await keepQuillmere(app);
const ask = askerOf(app);

/** A lot under an id that no other test uses. */
let lastId = 0;
async function newLot(fields: object): Promise<string> {
  const url = `/v1/lots/lot-${++lastId}`;
  const { statusCode, body } = await ask('PUT', url, fields);
  if (statusCode !== 201) throw new Error(`The lot was refused: ${body}`);
  return url;
}
const codesOf = (notes: readonly { readonly code: string }[]): string[] => notes.map(({ code }) => code);

const counted = { crop: 'lettuce', test: { sown: 100, germinated: 88 }, testedOn: '2027-06-01' };

describe('a seed lot', () => {
  test('is told back as it was put, with what it is worth today', async () => {
    const url = await newLot(counted);
    const answer = (await ask('GET', url)).json();
    expect(answer).toMatchObject({ ...counted, germinationPercent: null, packedYear: null, hotLimitShiftC: 0 });
    expect(answer.now).toEqual({
      on: '2027-08-03',
      percent: 88,
      range: { from: 83, to: 92 },
      aged: [],
      testBeforeUse: false,
    });
    expect(codesOf(answer.assumptions)).toEqual(['lot-test']);
    const { id: _, now: __, assumptions: ___, warnings: ____, model: _____, issuedAt: ______, ...fields } = answer;
    expect((await ask('PUT', url, fields)).json()).toMatchObject(fields);
  });

  // The worked example: onion of 95 % at 8 % of moisture and 20 °C is down to 87.5 % after a year (Ellis, Roberts 1981).
  test('is aged where its moisture and store are told, by every set of constants that is published', async () => {
    const url = await newLot({
      crop: 'onion',
      germinationPercent: 95,
      testedOn: '2026-08-03',
      moisturePercent: 8,
      storeC: 20,
    });
    const { now, assumptions } = (await ask('GET', url)).json();
    expect(now.aged).toHaveLength(2);
    expect(now.aged[0]).toMatchObject({ percent: 88, source: 'Ellis, Roberts 1981' });
    const percents = now.aged.map(({ percent }: { percent: number }) => percent);
    expect(now.range).toEqual({ from: Math.min(...percents), to: Math.max(...percents) });
    expect(codesOf(assumptions)).toEqual(expect.arrayContaining(['lot-aged', 'lot-constants-differ']));
  });

  test('is to be tested before use once it is older than its storage years, and keeps its percent', async () => {
    const url = await newLot({ crop: 'onion', germinationPercent: 90, packedYear: 2025 });
    const { now, warnings } = (await ask('GET', url)).json();
    expect(now).toMatchObject({ percent: 90, range: null, testBeforeUse: true });
    expect(codesOf(warnings)).toEqual(['test-before-use']);
  });

  test('may be of a crop of the grower’s own', async () => {
    const rows = [
      { temperatureC: 10, days: 9, percent: 80 },
      { temperatureC: 20, days: 4, percent: 90 },
    ];
    const url = await newLot({ crop: { name: 'Quillmere lettuce', rows }, germinationPercent: 90 });
    expect((await ask('GET', url)).json()).toMatchObject({ crop: { name: 'Quillmere lettuce', rows } });
  });

  test('heeds If-Match, is listed by pages, and is forgotten', async () => {
    const url = await newLot(counted);
    const { headers } = await ask('GET', url);
    expect((await ask('PUT', url, { ...counted, packedYear: 2026 }, { 'if-match': '"other"' })).statusCode).toBe(412);
    const changed = await ask('PUT', url, { ...counted, packedYear: 2026 }, { 'if-match': String(headers.etag) });
    expect([changed.statusCode, changed.json().packedYear]).toEqual([200, 2026]);
    expect((await ask('GET', url, undefined, { 'if-none-match': String(changed.headers.etag) })).statusCode).toBe(304);
    const first = (await ask('GET', '/v1/lots?limit=1')).json();
    expect(first.lots).toHaveLength(1);
    const rest = (await ask('GET', `/v1/lots?after=${first.next}`)).json();
    expect(rest.lots).toContainEqual(expect.objectContaining({ id: url.split('/').at(-1), packedYear: 2026 }));
    expect(rest.next).toBeNull();
    expect((await ask('DELETE', url)).statusCode).toBe(204);
    expect((await ask('GET', url)).statusCode).toBe(404);
  });
});

describe('the seeds that are needed', () => {
  const seedsFor = async (body: object) => (await ask('POST', '/v1/seeds-needed', body)).json();

  // fixtures/golden/fewest-seeds-of-a-test.json: 12 plants of a test of 88 in 100, at 90 %, by scipy's betabinom.
  test('are those of the beta-binomial distribution, in a tray that loses none', async () => {
    const answer = await seedsFor({ crop: 'lettuce', plants: 12, lot: counted2, field: 1 });
    expect(answer).toMatchObject({ crop: 'lettuce', plants: 12, sureness: 0.9, seeds: 16, field: { from: 1, to: 1 } });
    expect(answer.range.from).toBeGreaterThanOrEqual(12);
    expect(answer.range.to).toBeLessThanOrEqual(16);
  });

  test('are more than a division by the means gives', async () => {
    const { seeds, field } = await seedsFor({ crop: 'lettuce', plants: 40, lot: counted2 });
    expect(field).toEqual({ from: 0.2, to: 0.67 });
    expect(seeds).toBeGreaterThan(1.3 * (40 / (0.88 * 0.435)));
  });

  test('of a kept lot are those of the same lot sent along, aged as it is', async () => {
    const lot = { germinationPercent: 95, testedOn: '2025-08-03', moisturePercent: 9, storeC: 20 };
    const url = await newLot({ crop: 'onion', ...lot });
    const kept = await seedsFor({ crop: 'onion', plants: 30, lot: url.split('/').at(-1) });
    const told = await seedsFor({ crop: 'onion', plants: 30, lot });
    expect([kept.seeds, kept.range]).toEqual([told.seeds, told.range]);
    const fresh = await seedsFor({ crop: 'onion', plants: 30, lot: { germinationPercent: 95 } });
    expect(kept.seeds).toBeGreaterThan(fresh.seeds);
  });

  test('are more of seed that was stored, be it of a packet that promised all', async () => {
    const asked = { crop: 'lettuce', plants: 100, field: 1 };
    const fresh = { germinationPercent: 100, testedOn: '2027-08-03', moisturePercent: 8, storeC: 20 };
    const { seeds } = await seedsFor({ ...asked, lot: fresh });
    expect((await seedsFor({ ...asked, lot: { ...fresh, testedOn: '2026-08-03' } })).seeds).toBeGreaterThan(
      1.1 * seeds,
    );
  });

  test('say what they rest on, and warn of old seed', async () => {
    const known = await seedsFor({ crop: 'carrot', plants: 30 });
    expect(codesOf(known.assumptions)).toEqual(['lot', 'field', 'one-lot-one-bed']);
    const old = await seedsFor({ crop: 'parsnip', plants: 30, lot: { germinationPercent: 70, packedYear: 2024 } });
    expect(codesOf(old.warnings)).toContain('test-before-use');
  });

  test('take a crop of the grower’s own, a single share of a bed, and whatever sureness', async () => {
    const rows = [
      { temperatureC: 10, days: 9, percent: 80 },
      { temperatureC: 20, days: 4, percent: 50 },
    ];
    const asked = { crop: { rows }, plants: 1, field: 0.5 };
    // One plant: 1 - 0.6^n, of 80 in a hundred times a half.
    expect((await seedsFor({ ...asked, sureness: 0.9 })).seeds).toBe(Math.ceil(Math.log(0.1) / Math.log(0.6)));
    expect((await seedsFor({ ...asked, sureness: 0.99 })).seeds).toBe(Math.ceil(Math.log(0.01) / Math.log(0.6)));
  });
});

const counted2 = { test: counted.test };

describe('what is wrong with a lot, or with what is asked of it,', () => {
  const put = (changes: object) =>
    ({ method: 'PUT', url: '/v1/lots/wrong', payload: { crop: 'onion', ...changes } }) as const;
  const seeds = (changes: object) =>
    ({ method: 'POST', url: '/v1/seeds-needed', payload: { crop: 'onion', plants: 20, ...changes } }) as const;
  const unusable = (name: string, one: BadRequest['ask'], says: string | RegExp, at?: string): BadRequest =>
    refused(422, 'not-understood', name, one, says, at);
  const test10 = { sown: 10, germinated: 9 };

  test.each([
    unusable('a percent beside a test', put({ germinationPercent: 90, test: test10 }), 'test', '#/germinationPercent'),
    unusable('more than all', put({ test: { sown: 10, germinated: 11 } }), 'more than sown', '#/test/germinated'),
    unusable('a test of none', put({ test: { sown: 0, germinated: 0 } }), 'at least 1', '#/test/sown'),
    unusable('half a seed', put({ test: { sown: 10, germinated: 9.5 } }), 'whole number', '#/test/germinated'),
    unusable('101 %', put({ germinationPercent: 101 }), 'at most 100', '#/germinationPercent'),
    unusable('no crop', put({ crop: undefined }), 'missing', '#/crop'),
    unusable('a test to come', put({ test: test10, testedOn: '2027-08-05' }), 'day to come', '#/testedOn'),
    unusable('a test on no day', put({ test: test10, testedOn: '2027-02-30' }), 'a date such as', '#/testedOn'),
    unusable('a packet to come', put({ packedYear: 2029 }), 'at most 2028', '#/packedYear'),
    unusable('seed of water', put({ moisturePercent: 99 }), 'at most 60', '#/moisturePercent'),
    unusable('an oven', put({ storeC: 180 }), 'at most 60', '#/storeC'),
    unusable('a field unknown', put({ colour: 'black' }), 'is not a field known', '#/colour'),
    refused(422, 'unknown-crop', 'an unknown crop', put({ crop: 'unions' }), 'no crop "unions"', '#/crop'),
    refused(404, 'not-found', 'no such lot', { url: '/v1/lots/nowhere' }, 'No lot is kept'),
    refused(404, 'not-found', 'no lot to forget', { method: 'DELETE', url: '/v1/lots/nowhere' }, 'No lot is kept'),
    unusable('an id that is none', { ...put({}), url: '/v1/lots/North' }, '1 to 64', 'id'),

    unusable('no plants', seeds({ plants: 0 }), 'at least 1', '#/plants'),
    unusable('too many plants', seeds({ plants: 100_001 }), 'at most 100000', '#/plants'),
    unusable('certainty', seeds({ sureness: 1 }), 'at most 0.999', '#/sureness'),
    unusable('a sureness in percent', seeds({ sureness: 90 }), 'at most 0.999', '#/sureness'),
    unusable('a bed that gives more than all', seeds({ field: 1.2 }), 'at most 1', '#/field'),
    unusable('a bed backwards', seeds({ field: { from: 0.9, to: 0.4 } }), 'from above to', '#/field'),
    unusable('a lot to come', seeds({ lot: { testedOn: '2028-01-01' } }), 'day to come', '#/lot/testedOn'),
    unusable(
      'a lot of two percents',
      seeds({ lot: { germinationPercent: 9, test: test10 } }),
      'test',
      '#/lot/germinationPercent',
    ),
    unusable('a lot of another crop', { ...seeds({ lot: 'onion-2026', crop: 'pea' }) }, 'is of onion', '#/lot'),
    refused(422, 'unknown-lot', 'a lot that is not kept', seeds({ lot: 'nowhere' }), 'No lot is kept', '#/lot'),
    refused(422, 'unknown-crop', 'seeds of an unknown crop', seeds({ crop: 'x' }), 'no crop "x"', '#/crop'),
    refused(422, 'too-many-seeds', 'dead seed', seeds({ lot: { germinationPercent: 0 } }), 'better seed'),
    refused(422, 'too-many-seeds', 'a bed that gives nothing', seeds({ field: 0 }), 'better seed'),
    refused(
      422,
      'too-many-seeds',
      'a hopeless test',
      seeds({ plants: 99_999, lot: { test: { sown: 50, germinated: 0 } } }),
      'better seed',
    ),
  ])('$name, is told', (one) => expectProblem(app, one));

  test('changes nothing', async () => {
    expect((await ask('GET', '/v1/lots/wrong')).statusCode).toBe(404);
  });

  test('is not the day of the test, somewhere on earth', async () => {
    expect((await ask('PUT', '/v1/lots/far-east', { ...counted, testedOn: '2027-08-04' })).statusCode).toBe(201);
  });
});
