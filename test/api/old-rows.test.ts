import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PlainDate } from '../../src/basics/calendar.js';
import type { SowingAnswer } from '../../src/contract/sowings.js';
import { inventedAir } from '../../src/demo/air.js';
import { chance } from '../../src/demo/chance.js';
import { askerOf, quillmere, startApp } from './helper.js';

// Seven invented years of air. A thermometer fails, and its days are missing.
const air = inventedAir('2020-05-20' as PlainDate, 2557, chance(11));

let app: FastifyInstance;
let ask: ReturnType<typeof askerOf>;

beforeAll(async () => {
  app = await startApp({ clock: () => new Date('2027-05-20T14:00:00Z') });
  ask = askerOf(app);
});
afterAll(() => app.close());

/** A place of its own, with a row of May 2026 that was counted, and one of May 2027 beside it; without the days of a gap. */
async function garden(id: string, gap?: readonly [from: string, to: string], counts = ['2026-05-19', '2026-05-24']) {
  await ask('PUT', `/v1/places/${id}`, { name: 'Quillmere Allotment Society', ...quillmere });
  await ask('POST', `/v1/places/${id}/air`, { medium: 'air', unit: 'C', daily: air });
  if (gap) await ask('DELETE', `/v1/places/${id}/air?from=${gap[0]}&to=${gap[1]}`);
  await ask('PUT', `/v1/beds/${id}`, { place: id, name: 'North bed' });
  for (const year of [2026, 2027]) {
    await ask('PUT', `/v1/sowings/${id}-${year}`, { bed: id, crop: 'radish', date: `${year}-05-03`, seeds: 200 });
  }
  for (const [i, date] of counts.entries()) {
    const counted = await ask('PUT', `/v1/sowings/${id}-2026/counts/${date}`, { seedlings: 60 + 5 * i });
    expect(counted.statusCode, counted.body).toBe(201);
  }
  const rowOf = async (year: number): Promise<SowingAnswer> => (await ask('GET', `/v1/sowings/${id}-${year}`)).json();
  return { old: await rowOf(2026), young: await rowOf(2027) };
}

describe('a gap in the air', () => {
  test.each([
    ['of the next winter', '2026-12-01', '2027-01-09'],
    ['from the autumn to the next spring', '2026-10-01', '2027-04-20'],
  ])('%s leaves an old row its forecast, its judgement and what it has taught', async (_, from, to) => {
    const whole = await garden(`whole-${from}`);
    const torn = await garden(`torn-${from}`, [from, to]);
    expect(whole.old.forecast!.emergence.half).toHaveProperty('date');
    expect(torn.old.forecast?.emergence).toEqual(whole.old.forecast!.emergence);
    expect(torn.old.forecast!.stand).toEqual(whole.old.forecast!.stand);
    expect(torn.old.judgement).toEqual(whole.old.judgement);
    expect(torn.old.learned).toEqual(whole.old.learned);
    expect(torn.old.warnings).toEqual([]);
    // Hours that were filled half a year later are no matter of this row.
    expect(torn.old.forecast!.warnings.map(({ code }) => code)).not.toContain('hours-filled');
    expect(torn.young.learned).toEqual(whole.young.learned);
  });

  test('that begins once the row should be up leaves it standing, and tells of the hours that were filled', async () => {
    const whole = await garden('whole-late');
    const { most } = whole.old.forecast!.emergence as { most: { date: string } };
    // Seedlings count until 24 May, as ground that is kept moist is cool. Filled hours of four of those days would bring one
    // seedling in a hundred more, and so put the date by which most are up a day later; those of the last two do not.
    expect([most.date < '2026-05-21', whole.old.forecast!.stand.by]).toEqual([true, '2026-05-24']);
    const torn = await garden('torn-late', ['2026-05-23', '2026-06-22'], ['2026-05-19', '2026-07-01']);
    expect(torn.old.forecast?.emergence.most).toMatchObject({ date: most.date });
    expect(torn.old.judgement!.verdict).toBe(whole.old.judgement!.verdict);
    expect(torn.old.learned).not.toBeNull();
    expect(torn.old.forecast!.warnings.map(({ code }) => code)).toContain('hours-filled');
    expect(torn.young.learned).not.toBeNull();
  });

  test('in which the seed should have come up is still told, and no count after it teaches', async () => {
    const torn = await garden('torn-early', ['2026-05-06', '2026-06-20'], ['2026-07-01']);
    expect(torn.old.forecast).toBeNull();
    expect(torn.old.warnings.map(({ code }) => code)).toContain('gap-too-long');
    expect(torn.young.learned).toBeNull();
  });
});
