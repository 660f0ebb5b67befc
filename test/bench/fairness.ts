import { Pool } from 'undici';
import { addDays } from '../../src/basics/calendar.js';
import { median } from './cost.js';
import type { Beside } from './run-beside.js';
import { headersOf, today } from './test-garden.js';

const AT_ONCE = 40;
const BIG = 5;
const ROUNDS_ALONE = 3;

/**
 * How many times longer one owner waits for five big questions in all while another has 40 under way, than alone; by the clock
 * on the wall. Alone is the middle one of three rounds; beside the others there is one, from its first question on.
 *
 * @throws Error where one of the owner's questions, five small ones among them, is not answered with 200.
 */
export async function fairness(service: Beside): Promise<number> {
  const pool = new Pool(service.address, { connections: 64, pipelining: 1, headersTimeout: 120_000 });
  let seeds = 20_000;
  const big = (bed: string): string =>
    `/v1/beds/${bed}/forecast?crop=lettuce&sowing=${addDays(today, -(seeds % 10))}&seeds=${seeds++}`;
  const ask = async (owner: 'ann' | 'ben', path: string): Promise<number> => {
    const answer = await pool.request({ method: 'GET', path, headers: headersOf(owner) });
    await answer.body.text();
    return answer.statusCode;
  };
  const waited = async (path: string): Promise<number> => {
    const before = performance.now();
    const status = await ask('ben', path);
    if (status !== 200) throw new Error(`the other owner got ${status} for ${path}`);
    return performance.now() - before;
  };
  const bigOnes = async (): Promise<number> => {
    let waits = 0;
    for (let i = 0; i < BIG; i++) {
      waits += await waited(big('fifteen-open'));
      await waited('/v1/beds/fifteen-open');
    }
    return waits;
  };
  try {
    await bigOnes();
    const alone: number[] = [];
    for (let round = 0; round < ROUNDS_ALONE; round++) alone.push(await bigOnes());
    let isOver = false;
    // As one is answered the next is asked, so that 40 stay under way; one that is refused is asked again a little later.
    const crowd = Array.from({ length: AT_ONCE }, async () => {
      while (!isOver) {
        const status = await ask('ann', big('thirty-open'));
        if (status !== 200) await new Promise((done) => setTimeout(done, 200));
      }
    });
    await new Promise((done) => setTimeout(done, 500));
    const beside = await bigOnes().finally(() => {
      isOver = true;
    });
    await Promise.all(crowd);
    return beside / median(alone);
  } finally {
    await pool.close();
  }
}
