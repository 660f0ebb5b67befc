import { afterEach, describe, expect, it } from 'vitest';
import { exampleJobs } from '../../../src/worker/example-jobs.js';
import { type Threads, threads } from '../../../src/worker/threads.js';

const [example] = exampleJobs('test');
const job = (time: string) => ({ ...example!, question: { ...example!.question, time } }) as typeof example & object;

let started: Threads | undefined;
afterEach(() => started?.close());

describe('two threads', () => {
  it('keep the thread with most jobs done for single questions, and the other for a caller with many', async () => {
    const both = threads(2, new URL('./scripted-worker.mjs', import.meta.url));
    started = both;
    const threadOf = async (time: string, isOneOfMany: boolean): Promise<number> =>
      (await both.run(job(time), isOneOfMany)).threadId;
    const seen = new Set<number>();
    while (seen.size < 2) {
      for (const id of await Promise.all(['wait 300', 'wait 1'].map((time) => threadOf(time, false)))) seen.add(id);
    }
    // Whichever has done more by now goes on being asked.
    await threadOf('0', false);
    const most = await threadOf('1', false);
    const [least] = [...seen].filter((id) => id !== most);
    for (const time of ['2', '3']) expect(await threadOf(time, false)).toBe(most);
    expect(await threadOf('4', true)).toBe(least);
    // Where that one has work, it takes what is idle.
    const [busy, many] = [threadOf('wait 500', false), threadOf('5', true)];
    expect([await busy, await many]).toEqual([most, least]);
  });
});
