import { StoppedError } from './errors.js';

/** Long work calls this now and then; true ends the work. It must be cheap: it may be called thousands of times. */
export type ShouldStop = () => boolean;

/** The default: the work runs to its end. */
export const neverStop: ShouldStop = () => false;

/** @throws StoppedError when the work should end. */
export function stopIf(shouldStop: ShouldStop): void {
  if (shouldStop()) throw new StoppedError();
}
