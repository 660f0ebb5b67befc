import { isPublicAddress } from '../egress/public-address.js';
import { type Scheduler, scheduler } from '../egress/scheduler.js';
import { sourceFetcher } from './fetch-source.js';
import { type RefreshSettings, refreshDue } from './refresh.js';

export interface SourcesSettings extends Omit<RefreshSettings, 'fetcher' | 'signal'> {
  readonly version: string;
  /** Allows sources on this machine and in its network. */
  readonly allowPrivate: boolean;
}

const EVERY_MS = 60_000;

/** Refreshes the sources that are due, every minute until stopped. */
export function keepRefreshing({ version, allowPrivate, ...settings }: SourcesSettings): Scheduler {
  const fetcher = sourceFetcher({
    userAgent: `germination-forecaster/${version}`,
    isAllowed: (address) => allowPrivate || isPublicAddress(address),
    random: settings.random,
  });
  const asking = scheduler(
    EVERY_MS,
    (signal) => refreshDue({ ...settings, fetcher, signal }),
    (err) => settings.log.error({ err }, 'the sources cannot be refreshed now'),
  );
  return {
    async stop() {
      await asking.stop();
      await fetcher.close();
    },
  };
}
