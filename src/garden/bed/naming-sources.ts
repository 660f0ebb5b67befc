import { type ErrorCode, RequestError } from '../../basics/errors.js';
import type { PlaceRecords } from './bed-records.js';

/** Refusals for want of air, beside `no-readings`, which names the sources by itself. */
const FOR_WANT_OF_AIR: readonly ErrorCode[] = [
  'no-past-years',
  'too-few-readings',
  'starts-after-sowing',
  'ends-too-early',
  'gap-too-long',
];

/** Answers a question; where air is missing, the refusal names the sources that should have given it. */
export async function namingSources<T>(
  kept: Pick<PlaceRecords, 'failedSources'> | null,
  answer: () => Promise<T>,
): Promise<T> {
  try {
    return await answer();
  } catch (error) {
    const failed = kept?.failedSources ?? [];
    if (!(error instanceof RequestError) || failed.length === 0 || !FOR_WANT_OF_AIR.includes(error.code)) throw error;
    const faults = [...error.faults, ...failed.map((detail) => ({ detail }))];
    throw new RequestError(error.code, [...error.sentences, ...failed], faults, error.later, error.members);
  }
}
