import { describe, expect, it } from 'vitest';
import { twoCallers } from '../../../src/worker/two-callers.js';

const FOR_MS = 1000;

describe('two callers', () => {
  it('are active when both have asked lately, in any order', () => {
    const callers = twoCallers(FOR_MS);
    const seen = (
      [
        ['ann', 0],
        ['ann', 100],
        ['ben', 200],
        ['ben', 900],
        ['ben', 1099],
        ['ben', 1100],
        ['ann', 1200],
      ] as const
    ).map(([caller, atMs]) => {
      callers.sawQuestion(caller, atMs);
      return callers.areActive(atMs);
    });
    expect(seen).toEqual([false, false, true, true, true, false, true]);
    expect([callers.areActive(2099), callers.areActive(2100)]).toEqual([true, false]);
  });
});
