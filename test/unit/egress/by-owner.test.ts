import { describe, expect, it } from 'vitest';
import { byOwner } from '../../../src/egress/by-owner.js';

const due = (...owners: string[]) => owners.map((owner, n) => ({ owner, n }));

describe('work for several owners', () => {
  it('does all of it, as many at a time as may be, and of each owner no more than may be', async () => {
    const underWay: string[] = [];
    const done: number[] = [];
    let [most, mostOfOne] = [0, 0];
    const all = due(...Array.from({ length: 10 }, () => 'ann'), 'ben', 'cem', 'ben', 'dot');
    await byOwner(all, { atOnce: 4, perOwner: 2 }, async ({ owner, n }) => {
      underWay.push(owner);
      most = Math.max(most, underWay.length);
      mostOfOne = Math.max(mostOfOne, underWay.filter((one) => one === owner).length);
      await new Promise((next) => setTimeout(next, 5));
      underWay.splice(underWay.indexOf(owner), 1);
      done.push(n);
    });
    expect(done.toSorted((a, b) => a - b)).toEqual(all.map(({ n }) => n));
    expect([most, mostOfOne]).toEqual([4, 2]);
  });

  it('lets nobody wait for one owner whose work does not end', async () => {
    let end = (): void => {};
    const ended = new Promise<void>((resolve) => {
      end = resolve;
    });
    const done: string[] = [];
    const working = byOwner(
      due('slow', 'slow', 'slow', 'ann', 'ben'),
      { atOnce: 4, perOwner: 3 },
      async ({ owner }) => {
        if (owner === 'slow') await ended;
        done.push(owner);
      },
    );
    while (done.length < 2) await new Promise((next) => setTimeout(next, 1));
    expect(done).toEqual(['ann', 'ben']);
    end();
    await working;
    expect(done).toHaveLength(5);
  });

  it('has nothing to do for nobody', async () => {
    await byOwner([], { atOnce: 4, perOwner: 1 }, () => Promise.reject(new Error('of nobody')));
  });
});
