import { request } from 'undici';
import { afterEach, describe, expect, it } from 'vitest';
import { addressOf, killAll, run } from './run-service.js';

afterEach(killAll);

const DAY_MS = 86_400_000;
const YEARS = 12;
const dateAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);

/** Twelve invented years of air up to some weeks ago. */
const END = new Date(Date.now() - 20 * DAY_MS).toISOString().slice(0, 10);
const years = {
  medium: 'air',
  daily: Array.from({ length: YEARS * 365 }, (_, day) => {
    const mean = 11 - 8 * Math.cos((2 * Math.PI * (day - 25)) / 365) + 4 * Math.sin(day / 4.3) + 2 * Math.sin(day / 17);
    return {
      date: dateAfter(END, day - YEARS * 365),
      min: Math.round(10 * (mean - 5)) / 10,
      max: Math.round(10 * (mean + 5)) / 10,
    };
  }),
};
const place = { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };

const asOwner =
  (address: string, key: string) => async (method: 'GET' | 'PUT' | 'POST', path: string, body?: object) => {
    const started = performance.now();
    const answer = await request(address + path, {
      method,
      headers: { authorization: `Bearer ${key}`, ...(body && { 'content-type': 'application/json' }) },
      ...(body && { body: JSON.stringify(body) }),
    });
    const text = await answer.body.text();
    return { status: answer.statusCode, headers: answer.headers, text, tookMs: performance.now() - started };
  };

/** Windows at a depth that nothing has asked of yet: each is a question, and a soil, of its own. */
const bigQuestion = (n: number): string =>
  `/v1/places/quillmere/sowing-windows?crop=lettuce&depthCm=${(0.5 + (n % 9000) / 1000).toFixed(3)}`;

describe('one owner with 40 questions at once', () => {
  it('leaves another’s five small and five big ones answered, the big ones at most twice as slow as alone', async () => {
    const address = await addressOf(
      run([], { API_KEYS: 'ann:key-of-ann,ben:key-of-ben', WORKERS: '1', RATE_LIMIT: '0', WORK_LIMIT: '0' }),
    );
    const [ann, ben] = [asOwner(address, 'key-of-ann'), asOwner(address, 'key-of-ben')];
    for (const ask of [ann, ben]) {
      expect((await ask('PUT', '/v1/places/quillmere', place)).status).toBe(201);
      expect((await ask('POST', '/v1/places/quillmere/air', years)).status).toBe(200);
    }
    const bigOnes = async (first: number): Promise<number> => {
      const started = performance.now();
      for (let n = first; n < first + 5; n++) {
        const { status, text } = await ben('GET', bigQuestion(n));
        expect([status, text]).toEqual([200, expect.stringContaining('windows')]);
      }
      return performance.now() - started;
    };
    // Warm: code is compiled, and the thread has the series.
    await bigOnes(0);
    const before = await bigOnes(10);

    let isOver = false;
    let asked = 0;
    let answered = 0;
    const flood = async (): Promise<number[]> => {
      const statuses: number[] = [];
      while (!isOver) {
        const { status, headers } = await ann('GET', bigQuestion(asked++));
        statuses.push(status);
        if (status === 200) answered++;
        const untilMs = performance.now() + 1000 * Number(headers['retry-after'] ?? 0);
        while (!isOver && performance.now() < untilMs) await new Promise((done) => setTimeout(done, 20));
      }
      return statuses;
    };
    const floods = Array.from({ length: 40 }, flood);
    while (answered < 3) await new Promise((done) => setTimeout(done, 5));
    const answeredBefore = answered;
    const [small, besideMs] = await Promise.all([
      Promise.all(Array.from({ length: 5 }, () => ben('GET', '/v1/places/quillmere'))),
      bigOnes(30),
    ]);
    const answeredBeside = answered - answeredBefore;
    isOver = true;
    const statuses = (await Promise.all(floods)).flat();
    const aloneMs = Math.max(before, await bigOnes(40));
    const times = besideMs / aloneMs;
    console.log(
      `five big questions: alone ${aloneMs.toFixed(0)} ms, beside 40 others ${besideMs.toFixed(0)} ms, ${times.toFixed(2)} times; of the others ${answeredBeside} were answered meanwhile`,
    );
    expect(small.map(({ status }) => status)).toEqual([200, 200, 200, 200, 200]);
    // Of the forty, eight are under way at a time; the others are told to wait. None fails.
    expect(statuses.filter((status) => status !== 200 && status !== 429 && status !== 503)).toEqual([]);
    expect([statuses.includes(200), statuses.includes(429)]).toEqual([true, true]);
    // Each waits for the one that is at work when it comes, and one more where that ends before it has come through.
    expect(answeredBeside).toBeLessThanOrEqual(8);
    // That makes it twice as slow at most: 1.0 to 1.5 times was measured. The slack is for a machine whose other work changes
    // between the two times; the count above does not hang on it.
    expect(times).toBeLessThan(2.5);
  }, 240_000);
});
