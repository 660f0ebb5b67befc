import { threadId } from 'node:worker_threads';
import type { FindPast } from '../answers/ahead/past-soil.js';
import { forecast } from '../answers/forecast/forecast.js';
import { soilTemperatures } from '../answers/soil/soil-temperatures.js';
import { cropSeason } from '../answers/week/crop-season.js';
import { sowingWindows } from '../answers/windows/sowing-windows.js';
import { RequestError, StoppedError } from '../basics/errors.js';
import { type ShouldStop, stopIf } from '../basics/stop.js';
import { growing } from '../garden/sowing/growing.js';
import { type Job, type JobDone, type PackedPast, received } from './jobs.js';
import { threadCache } from './thread-cache.js';

const cache = threadCache();

/** Runs in a thread of its own: answers one question after another. */
export default function work(job: Job): JobDone {
  const made: PackedPast[] = [];
  const stop = new Int32Array(job.stop);
  const shouldStop = (): boolean => Atomics.load(stop, 0) !== 0;
  const done = { threadId, made };
  try {
    stopIf(shouldStop);
    const findPast = cache.findPastFor(job.modelVersion, job.remembered, made);
    return { ...done, answer: answerTo(job, findPast, shouldStop) };
  } catch (error) {
    if (error instanceof StoppedError) return { ...done, stopped: true };
    if (!(error instanceof RequestError)) return { ...done, failed: String((error as Error)?.stack ?? error) };
    const { code, sentences, faults } = error;
    return { ...done, refused: { code, sentences, faults } };
  }
}

function answerTo({ kind, question }: Job, findPast: FindPast, shouldStop: ShouldStop): unknown {
  const { seriesFrom } = cache;
  switch (kind) {
    case 'windows':
      return sowingWindows(received(question, seriesFrom), findPast, shouldStop);
    case 'season':
      return cropSeason(sowingWindows(received(question, seriesFrom), findPast, shouldStop));
    case 'forecast':
      return forecast(received(question, seriesFrom), findPast, shouldStop);
    case 'growing':
      return growing(received(question, seriesFrom), findPast, shouldStop);
    case 'plan':
      return cache.plan(received(question, seriesFrom), findPast, shouldStop);
    case 'soil':
      return soilTemperatures(received(question, seriesFrom), findPast, shouldStop);
  }
}
