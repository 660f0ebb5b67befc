import { describe, expect, it } from 'vitest';
import { sharedCache } from '../../../src/basics/shared-cache.js';

interface Piece {
  readonly bytes: number;
  readonly made: number;
}

function maker() {
  let times = 0;
  return {
    make:
      (bytes = 1000) =>
      async (): Promise<Piece> => ({ bytes, made: ++times }),
    get times() {
      return times;
    },
  };
}

const cacheOf = (maxBytes: number) => sharedCache<Piece>(maxBytes, ({ bytes }) => bytes);

describe('a shared cache', () => {
  it('has a result made once, also for callers who ask meanwhile, and hands on the same object', async () => {
    const one = maker();
    const cache = cacheOf(10_000);
    const [first, meanwhile] = await Promise.all([cache.get('a', one.make()), cache.get('a', one.make())]);
    expect(meanwhile).toBe(first);
    expect(await cache.get('a', one.make())).toBe(first);
    expect(one.times).toBe(1);
    expect(cache.stats()).toMatchObject({ hits: 2, misses: 1, entries: 1 });
  });

  it('holds no more bytes than it may, and drops what was used least recently', async () => {
    const one = maker();
    const cache = cacheOf(3000);
    await cache.get('a', one.make());
    await cache.get('b', one.make());
    await cache.get('a', one.make());
    await cache.get('c', one.make());
    expect(one.times).toBe(3);
    expect(cache.stats().bytes).toBeLessThanOrEqual(3000);
    await cache.get('a', one.make());
    expect(one.times).toBe(3);
    await cache.get('b', one.make());
    expect(one.times).toBe(4);
  });

  it('hands on a result that is larger than all it may hold, and drops nothing for it', async () => {
    const one = maker();
    const cache = cacheOf(3000);
    await cache.get('small', one.make());
    expect((await cache.get('large', one.make(5000))).bytes).toBe(5000);
    expect(cache.stats().entries).toBe(1);
    await cache.get('small', one.make());
    expect(one.times).toBe(2);
  });

  it('counts keys, which callers choose, as well', async () => {
    const cache = cacheOf(10_000);
    for (let i = 0; i < 100; i++) await cache.get(`${i}${'x'.repeat(1000)}`, maker().make(0));
    expect(cache.stats().entries).toBeLessThan(5);
  });

  it('holds no failure: the next caller has it tried again', async () => {
    const cache = cacheOf(10_000);
    await expect(cache.get('a', () => Promise.reject(new Error('too busy')))).rejects.toThrow('too busy');
    expect(await cache.get('a', maker().make())).toMatchObject({ made: 1 });
  });

  it('lets those who wait make it anew where the failure was its maker’s own', async () => {
    const cache = sharedCache<{ bytes: number }>(
      10_000,
      ({ bytes }) => bytes,
      (error) => (error as Error).message === 'gone',
    );
    let leave = (): void => {};
    const gone = cache.get('a', () => new Promise((_, reject) => (leave = () => reject(new Error('gone')))));
    const others = [1, 2, 3].map(() => cache.get('a', async () => ({ bytes: 10 })));
    leave();
    await expect(gone).rejects.toThrow('gone');
    expect(await Promise.all(others)).toEqual([{ bytes: 10 }, { bytes: 10 }, { bytes: 10 }]);
    expect(cache.stats()).toMatchObject({ misses: 2, hits: 2 });
  });
});
