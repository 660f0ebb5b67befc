import { DAY_MS, dateAt, HOUR_MS, type PlainDate, zoneNamed } from '../basics/calendar.js';
import type { Fact } from '../basics/fact.js';
import { byOwner } from '../egress/by-owner.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { QuotaError } from '../garden/store/quotas.js';
import type { AirDay, DaysGiven, FetchEnd, SourceLease, SourceRef, Store } from '../garden/store/store.js';
import { factToStore } from '../garden/store/stored-fact.js';
import { askSource, type Reach } from './ask-source.js';
import { PutOff } from './publisher-pace.js';
import type { SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';

export interface RefreshSettings extends Reach {
  readonly store: Store;
  /** Asks sources by name only. */
  readonly presetsOnly?: boolean;
  readonly clock: () => Date;
  /** Returns a number from 0 to below 1. */
  readonly random: () => number;
  readonly log: RefreshLog;
  /** Counters that the caller reads. */
  readonly tally?: SourceTally;
  /** Aborted when the service stops. */
  readonly signal?: AbortSignal;
}

/** Counts since the start. */
export interface SourceTally {
  asked: number;
  failed: number;
  /** In the last round: number of due sources, and the longest delay among them [s]. */
  due: number;
  longestOverdueS: number;
}

export interface RefreshLog {
  info(details: object, message: string): void;
  warn(details: object, message: string): void;
  error(details: object, message: string): void;
}

const MAX_A_ROUND = 200;
const AT_ONCE = 4;
/** Time-out of one source with all its pages, retries and reading. */
const WHOLE_MS = 5 * 60_000;
/** A longer refresh belongs to an instance that has died. */
const LEASE_MS = 2 * WHOLE_MS;
const FIRST_BACK_OFF_MS = 5 * 60_000;
const MAX_BACK_OFF_MS = DAY_MS;
const MAX_YEARS = 40;

/** Pieces of a long archive follow one another so soon [ms]. */
const NEXT_PIECE_MS = 2 * 60_000;

/**
 * Refreshes the sources that are due, a few owners' at a time, and stores their days. A lease keeps other instances
 * away.
 *
 * @returns Number of sources requested.
 */
export async function refreshDue(settings: RefreshSettings): Promise<number> {
  const nowMs = settings.clock().getTime();
  const due = await settings.store.dueSources(nowMs, MAX_A_ROUND, { presetsOnly: settings.presetsOnly ?? false });
  if (settings.tally) {
    settings.tally.due = due.length;
    settings.tally.longestOverdueS = Math.max(
      0,
      ...due.map(({ dueSinceMs }) => (nowMs - (dueSinceMs ?? nowMs)) / 1000),
    );
  }
  let asked = 0;
  await byOwner(due, { atOnce: AT_ONCE, perOwner: AT_ONCE - 1 }, async (one) => {
    if (!settings.signal?.aborted && (await refreshSource(one, settings))) asked++;
  });
  return asked;
}

/** Refreshes one source, unless it is not due or another instance holds its lease. */
export async function refreshSource({ owner, place: id, n }: SourceRef, settings: RefreshSettings): Promise<boolean> {
  const { store, clock, log, tally } = settings;
  const startMs = clock().getTime();
  const lease = await store.leaseSource(owner, id, n, startMs, startMs + LEASE_MS);
  if (!lease) return false;
  const end = await fetched(owner, lease, settings).catch((error: unknown) => failed(lease, error, settings));
  if (end.outcome === 'failed') log.warn({ owner, place: id, why: end.error }, 'a source has failed');
  else log.info({ owner, place: id, outcome: end.outcome }, 'a source was asked');
  const isAsked = end.outcome === 'fetched' || end.outcome === 'failed';
  if (tally && isAsked) tally.asked++;
  if (tally && end.outcome === 'failed') tally.failed++;
  await store.endLease(owner, id, lease.lease, end);
  return true;
}

async function fetched(owner: string, lease: SourceLease, settings: RefreshSettings): Promise<FetchEnd> {
  const { place, source } = lease;
  const { clock, store } = settings;
  const signal = AbortSignal.any([AbortSignal.timeout(WHOLE_MS), ...(settings.signal ? [settings.signal] : [])]);
  const { days, isMoreToCome, expiresMs, ...asked } = await askSource(lease, clock().getTime(), signal, settings);
  const atMs = clock().getTime();
  const given = days && (await keep(owner, lease, usable(days, dateAt(atMs, zoneNamed(place.timeZone))), atMs, store));
  const intervalMs = isMoreToCome ? NEXT_PIECE_MS : source.everyHours * HOUR_MS;
  return {
    ...asked,
    outcome: 'fetched',
    atMs,
    nextAtMs: atMs + Math.max(intervalMs, expiresMs),
    notBeforeMs: expiresMs > 0 ? atMs + expiresMs : null,
    days: given ?? lease.days,
  };
}

/** Drops measured days that are not over and forecast days that are. */
function usable({ measured, forecast }: SourceDays, today: PlainDate): SourceDays {
  const days = {
    measured: measured.filter(({ date }) => date < today).slice(-366 * MAX_YEARS),
    forecast: forecast.filter(({ date }) => date >= today),
  };
  if (days.measured.length + days.forecast.length > 0) return days;
  throw new SourceError(sourceFact('source.no-day'));
}

/** Stores the days, and tells which ones the source has given by now. Equal forecast days are not written again. */
async function keep(
  owner: string,
  { place: { id }, days: before }: SourceLease,
  { measured, forecast }: SourceDays,
  atMs: number,
  store: Store,
): Promise<DaysGiven> {
  if (forecast.length > 0) {
    const known = await store.comingDays(owner, id);
    if (!known || !sameDays(known.days, forecast)) await store.putComingDays(owner, id, { atMs, days: forecast });
  }
  if (measured.length === 0) return { from: forecast[0]!.date, to: forecast.at(-1)!.date, count: forecast.length };
  await store.putAir(owner, id, measured).catch(refuseFull);
  const [first, last] = [measured[0]!.date, measured.at(-1)!.date];
  const from = before && before.from < first ? before.from : first;
  const to = before && before.to > last ? before.to : last;
  return { from, to, count: (await store.air(owner, id, { from, to })).length };
}

function refuseFull(error: unknown): never {
  if (!(error instanceof QuotaError)) throw error;
  throw new SourceError(sourceFact('source.no-room', { megabytes: error.limit }));
}

const sameDays = (a: readonly AirDay[], b: readonly AirDay[]): boolean =>
  a.length === b.length &&
  a.every(({ date, min, mean, max }, i) => {
    const other = b[i]!;
    return date === other.date && min === other.min && mean === other.mean && max === other.max;
  });

/** The stored reason of a failure, and the next attempt: sooner than the normal interval, with exponential back-off. */
function failed(lease: SourceLease, error: unknown, { clock, random, log, signal }: RefreshSettings): FetchEnd {
  if (signal?.aborted) return { outcome: 'given-up' };
  if (error instanceof PutOff) return { outcome: 'put-off', nextAtMs: error.untilMs };
  const isOurs = !(error instanceof SourceError) && !isTimeOut(error);
  if (isOurs) log.error({ err: error }, 'a source could not be asked or kept');
  const retryAfterMs = error instanceof SourceError ? (error.retryAfterMs ?? 0) : 0;
  const intervalMs = lease.source.everyHours * HOUR_MS;
  const backOffMs = Math.min(intervalMs, MAX_BACK_OFF_MS, FIRST_BACK_OFF_MS * 2 ** Math.min(lease.failures, 20));
  const waitMs = Math.max(backOffMs * (0.5 + 0.5 * random()), Math.min(retryAfterMs, MAX_BACK_OFF_MS));
  const nowMs = clock().getTime();
  return {
    outcome: 'failed',
    nextAtMs: nowMs + waitMs,
    notBeforeMs: retryAfterMs > 0 ? nowMs + Math.min(retryAfterMs, MAX_BACK_OFF_MS) : null,
    error: factToStore(isOurs ? sourceFact('source.not-kept') : reasonOf(error)),
  };
}

const isTimeOut = (error: unknown): boolean =>
  error instanceof Error && (error.name === 'TimeoutError' || error.name === 'AbortError');

const reasonOf = (error: unknown): Fact =>
  error instanceof SourceError ? error.fact : sourceFact('source.pages-slow');
