import { parentPort } from 'node:worker_threads';
import { sowingWindows, type WindowQuestion } from '../answers/sowing-windows.js';
import { zoneNamed } from '../basics/calendar.js';
import { RequestError } from '../basics/errors.js';
import type { Job, JobDone, Sendable } from './long-work.js';

/** Runs in a thread of its own: one question after another. */
parentPort!.on('message', ({ id, question }: Job) => {
  parentPort!.postMessage(answerTo(id, question));
});

function answerTo(id: number, question: Sendable): JobDone {
  try {
    return { id, found: sowingWindows(arrived(question)) };
  } catch (error) {
    if (!(error instanceof RequestError)) return { id, failed: String((error as Error)?.stack ?? error) };
    const { code, message, faults } = error;
    return { id, refused: { code, message, faults } };
  }
}

/** A question with its zones, which cannot be sent, looked up again by their names. */
function arrived({ site, series, ...question }: Sendable): WindowQuestion {
  return {
    ...question,
    site: { ...site, zone: zoneNamed(site.zone) },
    series: series.map((one) => ({ ...one, zone: zoneNamed(one.zone) })),
  };
}
