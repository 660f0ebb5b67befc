import type { Zone } from '../basics/calendar.js';
import type { AirDay } from '../garden/store/store.js';

/** The days that a source's answer holds, in the order of dates: those that were measured, and those foretold. */
export interface SourceDays {
  readonly measured: readonly AirDay[];
  readonly coming: readonly AirDay[];
}

/** What is known besides an answer when it is read. */
export interface AnswerContext {
  /** The zone of the place, by whose calendar the days are counted. */
  readonly zone: Zone;
  /** Where the answer is from. */
  readonly url: URL;
  /** Asks a further address, of the same host. */
  readonly ask: (url: URL) => Promise<Uint8Array>;
}
