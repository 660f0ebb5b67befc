import { describe, expect, it } from 'vitest';
import { remembered } from '../../../src/http/remembered.js';

function counter() {
  let times = 0;
  return {
    workOut: async () => ++times,
    get times() {
      return times;
    },
  };
}

describe('what is remembered', () => {
  it('is worked out once under its key, also for who asks meanwhile', async () => {
    const one = counter();
    const ask = remembered<number>(2);
    expect(await Promise.all([ask('a', one.workOut), ask('a', one.workOut)])).toEqual([1, 1]);
    expect(await ask('a', one.workOut)).toBe(1);
    expect(one.times).toBe(1);
  });

  it('is forgotten where others have been asked for more lately', async () => {
    const one = counter();
    const ask = remembered<number>(2);
    await ask('a', one.workOut);
    await ask('b', one.workOut);
    await ask('a', one.workOut);
    await ask('c', one.workOut);
    expect(one.times).toBe(3);
    await ask('a', one.workOut);
    expect(one.times).toBe(3);
    await ask('b', one.workOut);
    expect(one.times).toBe(4);
  });

  it('is no failure: who asks again has it tried again', async () => {
    const ask = remembered<number>(2);
    const fails = () => Promise.reject(new Error('too busy'));
    await expect(ask('a', fails)).rejects.toThrow('too busy');
    expect(await ask('a', async () => 7)).toBe(7);
  });
});
