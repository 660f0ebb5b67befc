import { threadId } from 'node:worker_threads';

/* A worker that does as the question's `time` tells it: how long it takes, whether it looks at its flag, how it ends. */
const pause = (ms) => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);

export default function work({ question, stop }) {
  const done = { threadId, made: [] };
  const [what, ms = '0'] = question.time.split(' ');
  const flag = new Int32Array(stop);
  for (const untilMs = performance.now() + Number(ms); performance.now() < untilMs; pause(2)) {
    if (Atomics.load(flag, 0) !== 0) return { ...done, stopped: true };
  }
  if (what === 'exit') process.exit(7);
  if (what === 'throw') throw new Error('no such soil');
  if (what === 'refuse') {
    const faults = [{ path: ['from'], detail: 'must not be so late' }];
    return { ...done, refused: { code: 'no-past-years', sentences: ['Too few years.'], faults } };
  }
  return { ...done, answer: question.time };
}
