import type { Zone } from '../basics/calendar.js';
import type { AirDay } from '../garden/store/store.js';

/** The days of a source's answer in order of dates: measured and forecast. */
export interface SourceDays {
  readonly measured: readonly AirDay[];
  readonly forecast: readonly AirDay[];
}

/** Context for reading an answer. */
export interface AnswerContext {
  /** The zone of the place, whose calendar defines the days. */
  readonly zone: Zone;
  /** Address of the answer. */
  readonly url: URL;
  /** Requests another address of the same host. */
  readonly ask: (url: URL) => Promise<Uint8Array>;
}
