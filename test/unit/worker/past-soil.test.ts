import { afterAll, describe, expect, it } from 'vitest';
import { depthsWith } from '../../../src/answers/ahead/past-soil.js';
import { forecast } from '../../../src/answers/forecast/forecast.js';
import { defaultBed } from '../../../src/answers/question.js';
import { soilTemperatures } from '../../../src/answers/soil/soil-temperatures.js';
import { cropSeason } from '../../../src/answers/week/crop-season.js';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import { addDays, findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { gardenPlan } from '../../../src/garden/plan/plan.js';
import { growing } from '../../../src/garden/sowing/growing.js';
import { bytesOfQuestion, type JobKind, type LongQuestions } from '../../../src/worker/jobs.js';
import { type PastSoilStore, pastSoilCache } from '../../../src/worker/past-soil-cache.js';
import { neededPastSoil } from '../../../src/worker/past-soil-key.js';
import { type AskedBy, type WorkerPool, workerPool } from '../../../src/worker/worker-pool.js';
import { airOfYears } from '../answers/make-air.js';
import { cropCalled } from '../germination/make.js';

const zone = findZone('Etc/GMT+2')!;
const air = airOfYears('2021-01-01' as PlainDate, 4, zone);
const last = air.days.at(-1)!.date;
const site = { zone, latitude: 44, longitude: -30, annualRainMm: 800 };
const common = { site, bed: defaultBed, series: [air], understood: [], normals: null, depthCm: 1.3 };
const sown = {
  ...common,
  crop: cropCalled('lettuce'),
  lot: null,
  countDays: null,
  timeFactor: null,
  standFactor: null,
  learned: null,
  beyond: null,
  zoneFromStamps: false,
};
const windowsOf = (crop: string) => ({
  ...common,
  crop: cropCalled(crop),
  lot: null,
  time: '12:00',
  timeFactor: null,
  from: last,
  to: addDays(last, 120),
  prefer: 'surest' as const,
  judge: 'harvest' as const,
  criteria: { share: 0.8, shareIfHeld: 0.6, maxDays: 21, sureness: 0.8 },
});

/** A question of each kind, on another minute or depth than the rest, so that each needs a soil of its own. */
const questions: { readonly [K in JobKind]: LongQuestions[K]['question'] } = {
  windows: windowsOf('lettuce'),
  season: { ...windowsOf('lettuce'), depthCm: 1.9 },
  forecast: { ...sown, sowing: { date: addDays(last, -5), time: '12:20', depthCm: 2, seeds: 100 } },
  growing: {
    ...sown,
    sowing: { date: addDays(last, -5), time: '18:40', depthCm: 3, seeds: 100 },
    lotId: null,
    counts: [],
    others: [],
  },
  plan: {
    ...common,
    depthCm: 2.5,
    crop: cropCalled('lettuce'),
    harvest: { from: addDays(last, 60), to: addDays(last, 90), perWeek: 5 },
    sown: [],
    today: last,
  },
  soil: { ...common, depthCm: 4, from: addDays(last, -100), to: addDays(last, 30), step: 'day', beyond: null },
};
const direct: Record<JobKind, unknown> = {
  windows: sowingWindows(questions.windows),
  season: cropSeason(sowingWindows(questions.season)),
  forecast: forecast(questions.forecast),
  growing: growing(questions.growing),
  plan: gardenPlan(questions.plan),
  soil: soilTemperatures(questions.soil),
};

const by: AskedBy = { owner: 'ann', caller: 'ann' };
const pools: WorkerPool[] = [];
afterAll(async () => {
  for (const pool of pools) await pool.close();
});

/** A store of past soil that outlives a pool, and counts what it is given. */
function storeIn(memory: Map<string, Uint8Array>): PastSoilStore {
  return {
    find: async (owner, key) => memory.get(`${owner} ${key}`),
    keep: async (owner, key, bytes) => void memory.set(`${owner} ${key}`, bytes),
  };
}

function start(store: PastSoilStore, modelVersion = '1'): WorkerPool {
  const pool = workerPool({ modelVersion, threads: 1, pasts: pastSoilCache({ store }) });
  pools.push(pool);
  return pool;
}

describe('what a thread works out', () => {
  const memory = new Map<string, Uint8Array>();
  const pool = start(storeIn(memory));

  it.each(Object.keys(questions) as JobKind[])(
    'of %s is what is worked out here, and its past soil comes back under the key that was foretold',
    async (kind) => {
      expect(await pool.ask(kind, questions[kind], by)).toEqual(direct[kind]);
      const key = neededPastSoil({ kind, question: questions[kind] } as never, '1');
      expect([...memory.keys()]).toContain(`ann ${key}`);
    },
  );

  it('is found again by another crop after a restart, whatever the source of the air has to say then, and never by another model', async () => {
    const before = memory.size;
    const again = start(storeIn(memory));
    const warnings = [{ code: 'source-stale', text: 'The source of the air has not answered for two days.' }];
    const radish = { ...windowsOf('radish'), series: [{ ...air, warnings }] };
    expect(await again.ask('windows', radish, by)).toEqual(sowingWindows(radish));
    expect(again.stats().pastSoil).toMatchObject({ hits: 1, misses: 0 });
    expect(memory.size).toBe(before);
    const newer = start(storeIn(memory), '2');
    await newer.ask('windows', radish, by);
    expect(newer.stats().pastSoil).toMatchObject({ hits: 0, misses: 1 });
    expect(memory.size).toBe(before + depthsWith(radish.depthCm).length);
  });

  it('is computed again when the stored bytes are unreadable or the database fails', async () => {
    const garbled = start({ find: async () => new Uint8Array([1, 2, 3]), keep: async () => {} });
    expect(await garbled.ask('windows', questions.windows, by)).toEqual(direct.windows);
    const away = async (): Promise<never> => {
      throw new Error('the database is away');
    };
    const failing = start({ find: away, keep: away });
    expect(await failing.ask('windows', questions.windows, by)).toEqual(direct.windows);
  });
});

describe('the cache of past soil', () => {
  it('is bounded in bytes, owner by owner, and forgets what was least recently used', async () => {
    const cache = pastSoilCache({ maxBytes: 300 });
    for (const key of ['a', 'b', 'c']) cache.keep('ann', key, new Uint8Array(100));
    cache.peek('ann', 'a');
    cache.keep('ben', 'a', new Uint8Array(100));
    expect(['a', 'b', 'c'].map((key) => cache.peek('ann', key) !== undefined)).toEqual([true, false, true]);
    expect(cache.stats().bytes).toBe(300);
    expect(await cache.find('ben', 'c')).toBeUndefined();
  });
});

describe('a question whose past soil is being read', () => {
  it('counts with its temperatures among those that wait', async () => {
    let find = (): void => {};
    const found = new Promise<undefined>((resolve) => {
      find = () => resolve(undefined);
    });
    const pasts = pastSoilCache({ store: { find: () => found, keep: async () => {} } });
    const bytes = bytesOfQuestion(questions.windows);
    const pool = workerPool({ modelVersion: '1', threads: 1, pasts, maxWaitingBytes: 1.5 * bytes });
    pools.push(pool);
    const first = pool.ask('windows', windowsOf('lettuce'), by);
    await expect(pool.ask('windows', windowsOf('carrot'), by)).rejects.toMatchObject({ code: 'busy' });
    expect(pool.stats()).toMatchObject({ waitingBytes: bytes, refused: 1 });
    find();
    expect(await first).toEqual(direct.windows);
    expect(pool.stats().waitingBytes).toBe(0);
  });
});
