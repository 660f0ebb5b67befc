import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ownerQueue } from '../../../src/storage/owner-queue.js';

/** Work whose starts are noted, and which ends when it is told to. */
function scene(total: number, perOwner: number) {
  const run = ownerQueue(total, perOwner);
  const started: string[] = [];
  const ends: (() => void)[] = [];
  const ask = (owner: string, name = owner) =>
    run(owner, () => {
      started.push(name);
      return new Promise<string>((end) => ends.push(() => end(name)));
    });
  const settle = () => new Promise((done) => setImmediate(done));
  return { run, ask, started, ends, settle };
}

describe('a queue of owners', () => {
  test('lets owners take turns, and one owner’s work start in its order', async () => {
    const { ask, started, ends, settle } = scene(1, 1);
    for (const name of ['a1', 'a2', 'a3', 'a4', 'b1', 'b2', 'c1']) void ask(name[0]!, name);
    for (let i = 0; i < 7; i++) {
      await settle();
      ends.shift()!();
    }
    expect(started).toEqual(['a1', 'a2', 'b1', 'c1', 'a3', 'b2', 'a4']);
  });

  test('runs so many at once, and of one owner fewer', async () => {
    const { ask, started, ends, settle } = scene(3, 2);
    for (const name of ['a1', 'a2', 'a3', 'b1', 'b2']) void ask(name[0]!, name);
    await settle();
    expect(started).toEqual(['a1', 'a2', 'b1']);
    ends[2]!();
    await settle();
    expect(started).toEqual(['a1', 'a2', 'b1', 'b2']);
    ends[0]!();
    await settle();
    expect(started).toEqual(['a1', 'a2', 'b1', 'b2', 'a3']);
  });

  test('gives back what work gives, and goes on after work that fails', async () => {
    const run = ownerQueue(1, 1);
    const failing = run('a', () => Promise.reject(new Error('no')));
    const thrown = run('a', () => {
      throw new Error('at once');
    });
    const good = run('a', async () => 7);
    await expect(failing).rejects.toThrow('no');
    await expect(thrown).rejects.toThrow('at once');
    expect(await good).toBe(7);
  });

  test('never runs more than it may, and leaves nothing waiting', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.constantFrom('a', 'b', 'c'), fc.nat(3)), { maxLength: 40 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 3 }),
        async (asked, total, perOwner) => {
          const run = ownerQueue(total, perOwner);
          const running = new Map<string, number>();
          let busy = 0;
          const works = asked.map(([owner, ticks]) =>
            run(owner, async () => {
              busy++;
              running.set(owner, (running.get(owner) ?? 0) + 1);
              expect(busy).toBeLessThanOrEqual(total);
              expect(running.get(owner)).toBeLessThanOrEqual(perOwner);
              for (let tick = 0; tick < ticks; tick++) await Promise.resolve();
              busy--;
              running.set(owner, running.get(owner)! - 1);
            }),
          );
          await Promise.all(works);
        },
      ),
    );
  });
});
