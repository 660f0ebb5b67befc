import { isPublicAddress } from '../outside/public-address.js';
import { sourceFetcher } from './fetch-source.js';
import { type RefreshSettings, refreshDue } from './refresh.js';

export interface SourcesSettings extends Omit<RefreshSettings, 'fetcher' | 'signal'> {
  readonly version: string;
  /** Sources may lie on this machine or in its network. */
  readonly allowPrivate: boolean;
}

const EVERY_MS = 60_000;

/** Asks the sources that are due, every minute, one round after the other, until it is stopped. */
export function keepRefreshing({ version, allowPrivate, ...settings }: SourcesSettings): { stop(): Promise<void> } {
  const stopping = new AbortController();
  const fetcher = sourceFetcher({
    userAgent: `germination-forecaster/${version}`,
    isAllowed: (address) => allowPrivate || isPublicAddress(address),
    random: settings.random,
  });
  let round: Promise<void> | null = null;
  const begin = (): void => {
    round ??= refreshDue({ ...settings, fetcher, signal: stopping.signal })
      .catch((err: unknown) => settings.log.error({ err }, 'the sources cannot be refreshed now'))
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
      await fetcher.close();
    },
  };
}
