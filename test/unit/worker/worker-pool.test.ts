import { afterEach, describe, expect, it } from 'vitest';
import { defaultBed } from '../../../src/answers/question.js';
import type { WindowQuestion } from '../../../src/answers/windows/judged-dates.js';
import { addDays, findZone, type PlainDate } from '../../../src/basics/calendar.js';
import { RequestError, StoppedError } from '../../../src/basics/errors.js';
import { DEADLINE_MS } from '../../../src/worker/pool-limits.js';
import { type AskedBy, type WorkerPool, type WorkerPoolOptions, workerPool } from '../../../src/worker/worker-pool.js';
import { cropCalled } from '../germination/make.js';

const zone = findZone('Etc/GMT+2')!;
const from = '2027-03-01' as PlainDate;
const pools: WorkerPool[] = [];
afterEach(async () => {
  for (const pool of pools.splice(0)) await pool.close();
});

function start(options: Partial<WorkerPoolOptions> = {}): WorkerPool {
  const entry = new URL('./scripted-worker.mjs', import.meta.url);
  const pool = workerPool({ modelVersion: 'test', threads: 1, entry, ...options });
  pools.push(pool);
  return pool;
}

/** What the worker is told to do, as a question. */
const told = (time: string): WindowQuestion => ({
  site: { zone, latitude: 44, longitude: -30, annualRainMm: null },
  bed: defaultBed,
  depthCm: 1.3,
  crop: cropCalled('lettuce'),
  time,
  lot: null,
  timeFactor: null,
  series: [],
  understood: [],
  from,
  to: addDays(from, 30),
  criteria: { share: 0.8, shareIfHeld: 0.6, maxDays: 21, sureness: 0.8 },
  prefer: 'earliest',
  judge: 'harvest',
  normals: null,
});

const ask = (pool: WorkerPool, time: string, by: Partial<AskedBy> = {}): Promise<unknown> =>
  pool.ask('windows', told(time), { owner: 'ann', caller: by.owner ?? 'ann', ...by });

/** The code that a refusal comes with; `gone` where the asker went before. */
const codeOf = (asked: Promise<unknown>): Promise<unknown> =>
  asked.then(
    () => 'answered',
    (error: unknown) =>
      error instanceof RequestError ? error.code : error instanceof StoppedError ? 'gone' : String(error),
  );

/** Waits until the pool stands as it should; fails the test where it does not within seconds. */
async function until(pool: WorkerPool, stands: (stats: ReturnType<WorkerPool['stats']>) => boolean): Promise<void> {
  for (const untilMs = performance.now() + 10_000; !stands(pool.stats()); ) {
    if (performance.now() > untilMs) throw new Error(`it stands at ${JSON.stringify(pool.stats())}`);
    await new Promise((done) => setTimeout(done, 2));
  }
}

/** Begins work that lasts until its asker goes, and gives what ends it. */
async function busy(pool: WorkerPool, owner = 'busy'): Promise<() => void> {
  const leaving = new AbortController();
  void ask(pool, 'wait 60000', { owner, signal: leaving.signal }).catch(() => {});
  await until(pool, ({ working }) => working === 1);
  return () => leaving.abort();
}

describe('a pool of workers', () => {
  it('answers, and hands on a refusal with its code, its words and its faults', async () => {
    const pool = start();
    expect(await ask(pool, 'answer')).toBe('answer');
    const refusal = await ask(pool, 'refuse').catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(RequestError);
    expect(refusal).toMatchObject({
      code: 'no-past-years',
      sentences: ['Too few years.'],
      faults: [{ path: ['from'], detail: 'must not be so late' }],
    });
    expect(pool.stats()).toMatchObject({ done: 2, working: 0, waitingPeople: 0, threads: 1 });
    const { waitedS, workedS } = pool.stats();
    expect([waitedS.count, workedS.count, workedS.upTo.at(-1)]).toEqual([2, 2, 2]);
    expect(workedS.sum).toBeGreaterThan(0);
  });

  it('serves owners in turn, people before background work, and counts who waits', async () => {
    const pool = start();
    const end = await busy(pool);
    const order: string[] = [];
    const asked = (owner: string, time: string, isBackground = false) =>
      ask(pool, time, { owner, isBackground }).then(() => order.push(`${owner} ${time}`));
    const all = [
      asked('look', 'a', true),
      ...['1', '2', '3', '4'].map((time) => asked('ann', time)),
      asked('ben', '1'),
      asked('ben', '2'),
    ];
    await until(pool, ({ waitingPeople, waitingBackground }) => waitingPeople === 6 && waitingBackground === 1);
    end();
    await Promise.all(all);
    expect(order).toEqual(['ben 1', 'ann 1', 'ben 2', 'ann 2', 'ann 3', 'ann 4', 'look a']);
    expect(pool.stats()).toMatchObject({ waitingPeople: 0, waitingBackground: 0, waitingBytes: 0, stopped: 1 });
  });

  it('makes one who asks five times beside one with forty questions wait for one of those at a time, which is twice the work', async () => {
    const pool = start();
    const ended: string[] = [];
    const asked = (owner: string, n: number) =>
      ask(pool, `wait ${5 + n / 1000}`, { owner }).then(() => ended.push(owner));
    const forty = Array.from({ length: 40 }, (_, n) => asked('ann', n));
    await until(pool, ({ done }) => done >= 3);
    const before = pool.stats().workedS.count;
    for (let n = 0; n < 5; n++) await asked('ben', n);
    expect(ended.slice(ended.indexOf('ben') - 1)).toEqual(Array(5).fill(['ann', 'ben']).flat());
    expect(pool.stats().workedS.count - before).toBe(10);
    await Promise.all(forty);
  });

  it('drops a waiting question as soon as its caller has gone, and ends one in work by its flag, without a new thread', async () => {
    const pool = start();
    const end = await busy(pool);
    const leaving = new AbortController();
    const waiting = ['1', '2', '3'].map((time) => codeOf(ask(pool, time, { signal: leaving.signal })));
    const stays = ask(pool, 'stays');
    await until(pool, ({ waitingPeople }) => waitingPeople === 4);
    leaving.abort();
    expect(pool.stats()).toMatchObject({ waitingPeople: 1, dropped: 3 });
    expect(await Promise.all(waiting)).toEqual(['gone', 'gone', 'gone']);
    end();
    expect(await stays).toBe('stays');
    expect(pool.stats()).toMatchObject({ stopped: 1, crashed: 0, threads: 1 });
    expect(await codeOf(ask(pool, 'late', { signal: leaving.signal }))).toBe('gone');
  });

  it('works once for all who ask the same, until the last of them has gone', async () => {
    const pool = start();
    const [first, second] = [new AbortController(), new AbortController()];
    const one = codeOf(ask(pool, 'wait 60000', { signal: first.signal }));
    const other = codeOf(ask(pool, 'wait 60000', { signal: second.signal }));
    await until(pool, ({ working, shared }) => working === 1 && shared === 1);
    first.abort();
    expect(await one).toBe('gone');
    await new Promise((done) => setTimeout(done, 50));
    expect(pool.stats()).toMatchObject({ working: 1, stopped: 0 });
    second.abort();
    expect(await other).toBe('gone');
    await until(pool, ({ working, stopped }) => working === 0 && stopped === 1);
    expect(await Promise.all([ask(pool, 'same'), ask(pool, 'same')])).toEqual(['same', 'same']);
    expect(pool.stats()).toMatchObject({ done: 1, shared: 2 });
  });

  it('asks again for one who comes when the work is already being ended', async () => {
    const pool = start();
    const leaving = new AbortController();
    const gone = codeOf(ask(pool, 'wait 300', { signal: leaving.signal }));
    await until(pool, ({ working }) => working === 1);
    leaving.abort();
    expect(await ask(pool, 'wait 300')).toBe('wait 300');
    expect(await gone).toBe('gone');
  });

  it('lets people take over what was begun in the background', async () => {
    const pool = start();
    const end = await busy(pool);
    const order: string[] = [];
    const all = [
      ask(pool, 'look', { owner: 'ann', isBackground: true }).then(() => order.push('the look')),
      ask(pool, '1', { owner: 'ben', isBackground: true }).then(() => order.push('another look')),
    ];
    await until(pool, ({ waitingBackground }) => waitingBackground === 2);
    all.push(ask(pool, '2', { owner: 'ben' }).then(() => order.push('a person')));
    all.push(ask(pool, '1', { owner: 'ben' }).then(() => order.push('who asks as a look does')));
    await until(pool, ({ waitingPeople, waitingBackground }) => waitingPeople === 2 && waitingBackground === 1);
    end();
    await Promise.all(all);
    expect(order).toEqual(['a person', 'another look', 'who asks as a look does', 'the look']);
  });

  it('asks callers past their deadline to come again, and when', async () => {
    const deadlineMs = { ...DEADLINE_MS, windows: 500 };
    const pool = start({ deadlineMs });
    const refusalOf = (asked: Promise<unknown>) => asked.catch((error: unknown) => error);
    const working = refusalOf(ask(pool, 'wait 60000'));
    await until(pool, (stats) => stats.working === 1);
    // It is late first, so that it never gets the thread that the other gives up.
    deadlineMs.windows = 80;
    const waiting = refusalOf(ask(pool, 'waits'));
    for (const refusal of await Promise.all([working, waiting])) {
      expect(refusal).toMatchObject({ code: 'busy', later: { retryAfterS: expect.any(Number) } });
      expect((refusal as RequestError).later.retryAfterS).toBeGreaterThanOrEqual(1);
    }
    await until(pool, ({ stopped }) => stopped === 1);
    expect(pool.stats()).toMatchObject({ late: 2, dropped: 1, working: 0 });
    // What was begun late is there for whoever asks again.
    const slowMs = { ...DEADLINE_MS };
    const slow = start({ deadlineMs: slowMs });
    expect(await ask(slow, '1')).toBe('1');
    slowMs.windows = 2000;
    expect(await codeOf(ask(slow, 'wait 3000'))).toBe('busy');
    expect(slow.stats()).toMatchObject({ late: 1, working: 1 });
    await until(slow, ({ done }) => done === 2);
    expect(DEADLINE_MS).toEqual({
      forecast: 10_000,
      growing: 10_000,
      windows: 10_000,
      season: 20_000,
      plan: 20_000,
      soil: 30_000,
    });
  });

  it('takes on no more questions than may wait', async () => {
    const pool = start({ maxWaiting: 3 });
    const end = await busy(pool);
    const waiting = ['1', '2', '3'].map((time) => ask(pool, time));
    const refusal = await ask(pool, '4').catch((error: unknown) => error);
    expect(refusal).toMatchObject({ code: 'busy', later: { retryAfterS: expect.any(Number) } });
    expect(pool.stats()).toMatchObject({ refused: 1, waitingPeople: 3 });
    end();
    expect(await Promise.all(waiting)).toEqual(['1', '2', '3']);
    expect(await ask(pool, '4')).toBe('4');
  });

  it('whose thread ends fails that job alone, once, and goes on', async () => {
    const pool = start();
    const crashing = codeOf(ask(pool, 'exit 30'));
    const others = ['1', '2'].map((time) => ask(pool, time, { owner: 'ben' }));
    expect(await crashing).toMatch(/exited with code: 7/);
    expect(await Promise.all(others)).toEqual(['1', '2']);
    expect(await codeOf(ask(pool, 'throw'))).toMatch(/no such soil/);
    expect(await ask(pool, 'again')).toBe('again');
    expect(pool.stats()).toMatchObject({ crashed: 2, done: 3, threads: 1 });
  });

  it('of two threads lets no owner have both', async () => {
    const pool = start({ threads: 2 });
    const leaving = new AbortController();
    const many = ['1', '2', '3'].map((n) => codeOf(ask(pool, `wait 6000${n}`, { signal: leaving.signal })));
    expect(await ask(pool, 'small', { owner: 'ben' })).toBe('small');
    expect(pool.stats()).toMatchObject({ working: 1, waitingPeople: 2 });
    leaving.abort();
    expect(await Promise.all(many)).toEqual(['gone', 'gone', 'gone']);
  });

  it('has another thread ready for two active callers, and none for one alone or for background work', async () => {
    const pool = start({ threads: 2 });
    for (const time of ['1', '2', '3']) await ask(pool, time);
    await ask(pool, 'look', { owner: 'ben', isBackground: true });
    expect(pool.stats().threads).toBe(1);
    await ask(pool, '4', { owner: 'ben' });
    await until(pool, ({ threads }) => threads === 2);
    await ask(pool, '5');
    expect(pool.stats()).toMatchObject({ threads: 2, done: 6, working: 0, crashed: 0 });
  });

  it('whose worker cannot be loaded fails each question, and does not hang', async () => {
    const pool = start({ entry: new URL('./broken-worker.mjs', import.meta.url) });
    for (const time of ['1', '2', '3']) expect(await codeOf(ask(pool, time))).not.toBe('answered');
  });

  it('when it closes rejects all who wait', async () => {
    const pool = start();
    await busy(pool);
    const waiting = codeOf(ask(pool, 'waits'));
    await until(pool, ({ waitingPeople }) => waitingPeople === 1);
    await pool.close();
    expect(await waiting).toBe('stopping');
    expect(await codeOf(ask(pool, 'later'))).toBe('stopping');
  });

  it('takes on nothing of one whose allowance was asked for meanwhile', async () => {
    const pool = start({ deadlineMs: { ...DEADLINE_MS, windows: 300_000 } });
    let admit = (): void => {};
    const admitted = new Promise<void>((resolve) => {
      admit = resolve;
    });
    const asked = codeOf(ask(pool, 'late', { admit: () => admitted }));
    await pool.close();
    admit();
    expect(await asked).toBe('stopping');
  });
});
