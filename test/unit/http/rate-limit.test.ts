import { describe, expect, it } from 'vitest';
import type { TakeAllowance } from '../../../src/garden/store/allowance.js';
import { memoryAllowances, sharedAllowances } from '../../../src/http/auth/allowances.js';
import { rateLimit } from '../../../src/http/auth/rate-limit.js';

const of = (perMinute: number, take: TakeAllowance = memoryAllowances(), chunk = 1) =>
  rateLimit({ policy: 'requests', perMinute, take, chunk });

/** An allowance that counts how often it is asked. */
function counted(take: TakeAllowance) {
  let times = 0;
  const counting: TakeAllowance = (...asked) => {
    times++;
    return take(...asked);
  };
  return { take: counting, times: () => times };
}

/** So many of so many requests at once that are allowed. */
async function allowed(limits: readonly ReturnType<typeof rateLimit>[], requests: number, nowMs: number) {
  const asked = Array.from({ length: requests }, (_, i) => limits[i % limits.length]!('ann', nowMs));
  return (await Promise.all(asked)).filter(({ isAllowed }) => isAllowed).length;
}

describe('a limit of requests', () => {
  it('never tells of more than there may be, though a part of a chunk is left while the bucket fills', async () => {
    const limit = of(600, memoryAllowances(), 30);
    for (let i = 0; i < 40; i++) expect((await limit('a', 400 * i)).remaining).toBeLessThanOrEqual(600);
  });

  it('does not mind a clock that is set back', async () => {
    const limit = of(1);
    const at = async (nowMs: number) => (await limit('a', nowMs)).isAllowed;
    expect([await at(60_000), await at(0), await at(60_000)]).toEqual([true, false, true]);
  });

  it('tells how many are left, and when one more comes, never sooner than it does', async () => {
    const limit = of(4);
    const told = [];
    for (let i = 0; i < 5; i++) told.push(await limit('a', 1000));
    expect(told).toEqual([
      { isAllowed: true, remaining: 3, nextInS: 15 },
      { isAllowed: true, remaining: 2, nextInS: 15 },
      { isAllowed: true, remaining: 1, nextInS: 15 },
      { isAllowed: true, remaining: 0, nextInS: 15 },
      { isAllowed: false, remaining: 0, nextInS: 15 },
    ]);
    expect(await limit('a', 15_999)).toMatchObject({ isAllowed: false, nextInS: 1 });
    expect(await limit('a', 16_000)).toMatchObject({ isAllowed: true, remaining: 0 });
  });

  it.each([1, 7, 30])(
    'of instances that take %i at a time lets all of them together have no more than the limit',
    async (chunk) => {
      const shared = counted(memoryAllowances());
      const instances = [of(100, shared.take, chunk), of(100, shared.take, chunk), of(100, shared.take, chunk)];
      expect(await allowed(instances, 300, 0)).toBe(100);
      expect(await allowed(instances, 300, 0)).toBe(0);
      // Half a minute later half of it is there again.
      expect(await allowed(instances, 300, 30_000)).toBe(50);
      expect(await allowed(instances, 300, 30_000 + 3 * 60_000)).toBe(100);
    },
  );

  it('asks the database once for many requests, and not for those it refuses', async () => {
    const shared = counted(memoryAllowances());
    const limit = of(600, shared.take, 30);
    for (let i = 0; i < 600; i++) expect((await limit('a', 0)).isAllowed).toBe(true);
    const before = shared.times();
    expect(before).toBeLessThanOrEqual(21);
    for (let i = 0; i < 500; i++) expect((await limit('a', 0)).isAllowed).toBe(false);
    expect(shared.times()).toBeLessThanOrEqual(before + 1);
  });

  it('holds on in memory while the database fails or does not answer', async () => {
    const failures: unknown[] = [];
    const away: TakeAllowance = () => Promise.reject(new Error('away'));
    const failing = of(
      5,
      sharedAllowances(away, (error) => failures.push(error)),
    );
    expect(await allowed([failing], 12, 0)).toBe(5);
    expect(failures).toHaveLength(1);
    const silent = of(
      5,
      sharedAllowances(
        () => new Promise<never>(() => {}),
        (error) => failures.push(error),
      ),
    );
    const started = performance.now();
    expect(await allowed([silent], 12, 0)).toBe(5);
    expect(performance.now() - started).toBeLessThan(5_000);
    expect(failures).toHaveLength(2);
  });
});

describe('allowances in memory', () => {
  it('keep a bucket through a flood of other callers, who share one once there is no room', async () => {
    const take = memoryAllowances(100);
    const one = (caller: string, nowMs: number, wanted = 1) => take(caller, 'requests', wanted, 60, 60 / 60_000, nowMs);
    expect(await one('ann', 0, 60)).toMatchObject({ granted: 60, remaining: 0 });
    let granted = 0;
    for (let i = 0; i < 5_000; i++) granted += (await one(`flood ${i}`, 10, 1)).granted;
    expect((await one('ann', 20)).granted).toBe(0);
    // 99 with a bucket each, and 60 of all others together.
    expect(granted).toBe(99 + 60);
    // Buckets that are full again make room.
    expect((await one('ben', 120_000)).remaining).toBe(59);
    expect((await one('cem', 120_000)).remaining).toBe(59);
  });
});
