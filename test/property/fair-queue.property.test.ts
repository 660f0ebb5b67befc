import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fairQueue, type Waiting } from '../../src/worker/fair-queue.js';

fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 20_270_503) });
const numRuns = Number(process.env.PROPERTY_RUNS ?? 200);

const OWNERS = ['ann', 'ben', 'cem', 'dot'];
const MAX_COST = 100;

type Step =
  | { readonly act: 'add'; readonly owner: string; readonly cost: number; readonly isBackground: boolean }
  | { readonly act: 'next' }
  | { readonly act: 'remove'; readonly at: number };

const anyCost = fc.integer({ min: 1, max: MAX_COST });
const anyStep: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      act: fc.constant('add' as const),
      owner: fc.constantFrom(...OWNERS),
      cost: anyCost,
      isBackground: fc.boolean(),
    }),
  },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('next' as const) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('remove' as const), at: fc.nat(50) }) },
);

const waiting = (item: number, owner: string, cost: number, isBackground = false): Waiting<number> => ({
  item,
  owner,
  cost,
  bytes: 10 * cost,
  isBackground,
});

const sum = (costs: readonly number[]): number => costs.reduce((total, cost) => total + cost, 0);

describe('the fair queue', () => {
  it('gives each out once, an owner’s in the order they came, people’s before background work, and counts what it holds', () => {
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 120 }), (steps) => {
        const queue = fairQueue<number>();
        const held: Waiting<number>[] = [];
        let added = 0;
        const taken = (item: number) =>
          held.splice(
            held.findIndex((one) => one.item === item),
            1,
          )[0]!;
        for (const step of steps) {
          if (step.act === 'add') {
            const one = waiting(added++, step.owner, step.cost, step.isBackground);
            queue.add(one);
            held.push(one);
          } else if (step.act === 'remove') {
            const one = held[step.at];
            expect(queue.remove(one?.item ?? -1)).toBe(one !== undefined);
            if (one) taken(one.item);
          } else {
            const next = queue.next();
            expect(next === undefined).toBe(held.length === 0);
            if (!next) continue;
            const people = held.filter(({ isBackground }) => !isBackground);
            if (people.length > 0) expect(next.isBackground).toBe(false);
            const own = held.filter((one) => one.owner === next.owner && one.isBackground === next.isBackground);
            expect(next).toBe(own[0]);
            taken(next.item);
          }
          expect(queue.size(false) + queue.size(true)).toBe(held.length);
          expect(queue.bytes()).toBe(10 * sum(held.map(({ cost }) => cost)));
          expect(queue.cost()).toBe(sum(held.map(({ cost }) => cost)));
        }
        while (queue.next()) taken(held[0]!.item);
        expect(queue.owners()).toBe(0);
      }),
      { numRuns },
    );
  });

  it('gives two owners who always wait the same work, to within one question of each', () => {
    const anyCosts = fc.array(anyCost, { minLength: 20, maxLength: 20 });
    fc.assert(
      fc.property(anyCosts, anyCosts, fc.integer({ min: 1, max: 20 }), (ann, ben, served) => {
        const queue = fairQueue<number>();
        for (const [i, cost] of ann.entries()) queue.add(waiting(i, 'ann', cost));
        for (const [i, cost] of ben.entries()) queue.add(waiting(100 + i, 'ben', cost));
        const done = { ann: 0, ben: 0 };
        for (let i = 0; i < served; i++) {
          const { owner, cost } = queue.next()!;
          done[owner as 'ann' | 'ben'] += cost;
        }
        expect(Math.abs(done.ann - done.ben)).toBeLessThanOrEqual(2 * MAX_COST);
        const largest = Math.max(...ann) + Math.max(...ben);
        expect(Math.abs(done.ann - done.ben)).toBeLessThanOrEqual(largest);
      }),
      { numRuns },
    );
  });

  it('lets one who comes new wait for at most one question of each other owner, however many wait', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom('ann', 'ben', 'cem'), anyCost), { minLength: 1, maxLength: 100 }),
        fc.nat(40),
        anyCost,
        (others, servedBefore, cost) => {
          const queue = fairQueue<number>();
          for (const [i, [owner, theirs]] of others.entries()) queue.add(waiting(i, owner, theirs));
          for (let i = 0; i < servedBefore; i++) queue.next();
          queue.add(waiting(1000, 'dot', cost));
          const before: string[] = [];
          for (let next = queue.next()!; next.owner !== 'dot'; next = queue.next()!) before.push(next.owner);
          expect(new Set(before).size).toBe(before.length);
        },
      ),
      { numRuns },
    );
  });

  it('passes over owners who may not be served now, and comes back to them', () => {
    const queue = fairQueue<number>();
    for (let i = 0; i < 4; i++) queue.add(waiting(i, 'ann', 1));
    queue.add(waiting(10, 'ben', 50));
    queue.add(waiting(11, 'ben', 50));
    const mayServe = (owner: string): boolean => owner !== 'ann';
    expect([queue.next(mayServe)?.item, queue.next(mayServe)?.item, queue.next(mayServe)?.item]).toEqual([
      10,
      11,
      undefined,
    ]);
    expect([0, 1, 2, 3].map(() => queue.next()?.item)).toEqual([0, 1, 2, 3]);
  });
});
