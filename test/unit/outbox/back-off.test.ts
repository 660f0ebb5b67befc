import { describe, expect, test } from 'vitest';
import { backOffMs } from '../../../src/outbox/back-off.js';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

describe('a message that failed waits', () => {
  test('as long as the example schedule of Standard Webhooks 1.0.0 says, ten tries over three days, and no more', () => {
    // spec/standard-webhooks.md, "Deliverability and reliability": time since start of each attempt.
    const sinceStartS = [
      '00:00:05',
      '00:05:05',
      '00:35:05',
      '02:35:05',
      '07:35:05',
      '17:35:05',
      '31:35:05',
      '51:35:05',
      '75:35:05',
    ].map((text) => text.split(':').reduce((sum, part) => 60 * sum + Number(part), 0));
    let sumMs = 0;
    for (const [i, seconds] of sinceStartS.entries()) {
      sumMs += backOffMs(i + 1, 0)!;
      expect(sumMs / 1000).toBe(seconds);
    }
    expect(backOffMs(sinceStartS.length + 1, 0)).toBeNull();
    expect(backOffMs(1000, 0.5)).toBeNull();
  });

  test('up to a fifth longer by chance, never shorter', () => {
    expect(backOffMs(2, 0)).toBe(5 * MINUTE_MS);
    expect(backOffMs(2, 0.5)).toBe(5.5 * MINUTE_MS);
    expect(backOffMs(2, 0.999)).toBeLessThan(6 * MINUTE_MS);
  });

  test('as long as the receiver asks for, where that is longer, up to a day', () => {
    expect(backOffMs(1, 0, HOUR_MS)).toBe(HOUR_MS);
    expect(backOffMs(3, 0, MINUTE_MS)).toBe(30 * MINUTE_MS);
    expect(backOffMs(1, 0, 1e12)).toBe(24 * HOUR_MS);
  });
});
