import { StoppedError } from './errors.js';

/** Asked now and then by work that takes long; true ends the work. It must be cheap, and may be asked thousands of times. */
export type ShouldStop = () => boolean;

/** The default: nobody ends the work. */
export const neverStop: ShouldStop = () => false;

/** @throws StoppedError where the work is to end. */
export function stopIf(shouldStop: ShouldStop): void {
  if (shouldStop()) throw new StoppedError();
}
