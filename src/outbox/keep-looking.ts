import { type LookSettings, lookAtDue } from './look.js';

const EVERY_MS = 60_000;

/** Looks at the gardens that are due, every minute, one round after the other, until it is stopped. */
export function keepLooking(settings: Omit<LookSettings, 'signal'>): { stop(): Promise<void> } {
  const stopping = new AbortController();
  let round: Promise<void> | null = null;
  const begin = (): void => {
    round ??= lookAtDue({ ...settings, signal: stopping.signal })
      .catch((err: unknown) => settings.log.error({ err }, 'the gardens cannot be looked at now'))
      .then(() => {
        round = null;
      });
  };
  const timer = setInterval(begin, EVERY_MS);
  timer.unref();
  return {
    async stop() {
      clearInterval(timer);
      stopping.abort();
      await round;
    },
  };
}
