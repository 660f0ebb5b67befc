import { isPublicAddress } from '../egress/public-address.js';
import { type Scheduler, scheduler } from '../egress/scheduler.js';
import { sourceFetcher } from './fetch-source.js';
import { publisherPace } from './publisher-pace.js';
import { type RefreshSettings, refreshDue, refreshSource } from './refresh.js';

export interface SourcesSettings
  extends Omit<RefreshSettings, 'fetcher' | 'pace' | 'hasContact' | 'presetsOnly' | 'signal'> {
  readonly version: string;
  /** Allows sources on this machine and in its network. */
  readonly allowPrivate: boolean;
  /** Which sources are asked. */
  readonly allowed: 'off' | 'presets' | 'any';
  /** Whom publishers can write to; empty: nobody is named. */
  readonly contact: string;
}

export interface Refreshing extends Scheduler {
  /**
   * Asks a place's sources that are due.
   *
   * @returns True once they have answered or failed; false, at once, where many places are asked already: the next round
   *   asks them.
   */
  refreshPlace(owner: string, place: string): Promise<boolean>;
}

const EVERY_MS = 60_000;
/** Places asked at a time beside the rounds. */
const MAX_AT_ONCE = 8;

/** Refreshes the sources that are due, every minute until stopped; with none allowed, none. */
export function keepRefreshing({ version, allowPrivate, allowed, contact, ...settings }: SourcesSettings): Refreshing {
  const stopping = new AbortController();
  const whole: RefreshSettings = {
    ...settings,
    fetcher: sourceFetcher({
      userAgent: `germination-forecaster/${version}${contact === '' ? '' : ` (${contact})`}`,
      isAllowed: (address) => allowPrivate || isPublicAddress(address),
      random: settings.random,
    }),
    pace: publisherPace(settings.clock),
    hasContact: contact !== '',
    presetsOnly: allowed === 'presets',
  };
  const asking = scheduler(
    EVERY_MS,
    async (signal) => {
      if (allowed !== 'off') await refreshDue({ ...whole, signal });
    },
    (err) => settings.log.error({ err }, 'the sources cannot be refreshed now'),
  );
  const underWay = new Set<Promise<boolean>>();

  async function askPlace(owner: string, place: string): Promise<boolean> {
    const states = await settings.store.sourceStates(owner, place);
    for (const [n, { source }] of states.entries()) {
      if (allowed === 'off' || (allowed === 'presets' && source.preset === null)) continue;
      await refreshSource({ owner, place, n }, { ...whole, signal: stopping.signal });
    }
    return true;
  }

  return {
    async refreshPlace(owner, place) {
      if (underWay.size >= MAX_AT_ONCE || stopping.signal.aborted) return false;
      const one = askPlace(owner, place).finally(() => underWay.delete(one));
      underWay.add(one);
      return one;
    },
    async stop() {
      stopping.abort();
      await Promise.allSettled([asking.stop(), ...underWay]);
      await whole.fetcher.close();
    },
  };
}
