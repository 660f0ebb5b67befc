import { expect, test } from 'vitest';
import { inTurns } from '../../../src/page/shell/in-turns.js';

test('no more are asked at a time than is said, and the answers stand in the order of the questions', async () => {
  let [asking, most] = [0, 0];
  const answers = await inTurns([50, 5, 30, 1, 20, 10], 3, async (ms) => {
    most = Math.max(most, ++asking);
    await new Promise((after) => setTimeout(after, ms));
    asking--;
    return ms * 2;
  });
  expect(answers).toEqual([100, 10, 60, 2, 40, 20]);
  expect(most).toBe(3);
});

test('of nothing there are no answers', async () => {
  expect(await inTurns([], 4, async () => 1)).toEqual([]);
});
