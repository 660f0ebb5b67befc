import { afterAll, describe, expect, it } from 'vitest';
import { exampleWindows } from '../../../src/answers/example-windows.js';
import { sowingWindows } from '../../../src/answers/windows/sowing-windows.js';
import { type WorkerPool, workerPool } from '../../../src/worker/worker-pool.js';

const pools: WorkerPool[] = [];
afterAll(async () => {
  for (const pool of pools) await pool.close();
});
const start = (entry?: URL): WorkerPool => {
  const pool = workerPool({ modelVersion: 'test', threads: 1, ...(entry ? { entry } : {}) });
  pools.push(pool);
  return pool;
};

describe('the examples', () => {
  const answers = exampleWindows().map(({ question, past }) => sowingWindows(question, () => past));

  it('are answered from their years, with dates that can be sown and such that cannot', () => {
    expect(answers.map(({ years }) => years.count >= 3)).toEqual(answers.map(() => true));
    for (const { windows, closed } of answers.slice(2))
      expect([windows.length > 0, closed.length > 0]).toEqual([true, true]);
  });

  it('hold what gardens hold: cold, heat, frost and a harvest too late keep dates closed', () => {
    expect(new Set(answers.flatMap(({ closed }) => closed.map(({ why }) => why)))).toEqual(
      new Set(['too-cold', 'too-hot', 'frost-to-come', 'too-late']),
    );
  });
});

describe('a pool that is warmed up', () => {
  it('has a thread, and keeps and counts nothing of the examples', async () => {
    const pool = start();
    await pool.warmUp();
    expect(pool.stats()).toMatchObject({ threads: 1, done: 0, working: 0, pastSoil: { entries: 0, misses: 0 } });
  });

  it('says so where its threads cannot start', async () => {
    await expect(start(new URL('./broken-worker.mjs', import.meta.url)).warmUp()).rejects.toThrow();
  });
});
