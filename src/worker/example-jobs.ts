import { foldPast } from '../answers/ahead/packed-past.js';
import { exampleWindows } from '../answers/example-windows.js';
import { type Job, sendable } from './jobs.js';
import { neededPastSoil } from './past-soil-key.js';

/** Invented jobs that warm up a thread, with their past soil. */
export const exampleJobs = (modelVersion: string): Job[] =>
  exampleWindows().map(({ question, past }) => ({
    kind: 'windows',
    question: sendable(question),
    modelVersion,
    stop: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT),
    remembered: [{ key: neededPastSoil({ kind: 'windows', question }, modelVersion)!, bytes: foldPast(past) }],
  }));
