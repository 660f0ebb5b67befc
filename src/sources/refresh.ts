import { addDays, DAY_MS, dateAt, daysBetween, HOUR_MS, type PlainDate, zoneNamed } from '../basics/calendar.js';
import { type Fact, followedBy } from '../basics/fact.js';
import { byOwner } from '../egress/by-owner.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { QuotaError } from '../garden/store/quotas.js';
import { type SourceFormat, sourceFormats } from '../garden/store/source-formats.js';
import { fillUrl, sourceUrlFault } from '../garden/store/source-url.js';
import type { AirDay, FetchEnd, SourceLease, SourceRef, Store } from '../garden/store/store.js';
import { factToStore } from '../garden/store/stored-fact.js';
import type { Fetcher } from './fetch-source.js';
import { readAnswer } from './read-answer.js';
import type { SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';

export interface RefreshSettings {
  readonly store: Store;
  readonly fetcher: Fetcher;
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

/**
 * Days before today to request: at the first fetch, and before the last fetch at later ones, because records are
 * corrected.
 */
const SPANS: Record<SourceFormat, { first: number; again: number }> = {
  'station-day-file': { first: 30 * 366, again: 60 },
  'daily-archive-json': { first: 30 * 366, again: 60 },
  'forecast-grid-json': { first: 0, again: 0 },
  'observations-api': { first: 60, again: 7 },
};

/**
 * Refreshes the sources that are due, a few owners' at a time, and stores their days. A lease keeps other instances
 * away.
 *
 * @returns Number of sources requested.
 */
export async function refreshDue(settings: RefreshSettings): Promise<number> {
  const nowMs = settings.clock().getTime();
  const due = await settings.store.dueSources(nowMs, MAX_A_ROUND);
  if (settings.tally) {
    settings.tally.due = due.length;
    settings.tally.longestOverdueS = Math.max(
      0,
      ...due.map(({ dueSinceMs }) => (nowMs - (dueSinceMs ?? nowMs)) / 1000),
    );
  }
  let asked = 0;
  await byOwner(due, { atOnce: AT_ONCE, perOwner: AT_ONCE - 1 }, async (one) => {
    if (!settings.signal?.aborted && (await refreshPlace(one, settings))) asked++;
  });
  return asked;
}

/** Refreshes one place's source, unless another instance holds its lease. */
async function refreshPlace({ owner, place: id }: SourceRef, settings: RefreshSettings): Promise<boolean> {
  const { store, clock, log, tally } = settings;
  const startMs = clock().getTime();
  const lease = await store.leaseSource(owner, id, startMs, startMs + LEASE_MS);
  if (!lease) return false;
  const end = await fetched(owner, lease, settings).catch((error: unknown) => failed(lease, error, settings));
  if (end.outcome === 'failed') log.warn({ owner, place: id, why: end.error }, 'a source has failed');
  else log.info({ owner, place: id }, 'a source was asked');
  if (tally && end.outcome !== 'given-up') tally.asked++;
  if (tally && end.outcome === 'failed') tally.failed++;
  await store.endLease(owner, id, lease.lease, end);
  return true;
}

async function fetched(owner: string, lease: SourceLease, settings: RefreshSettings): Promise<FetchEnd> {
  const { place } = lease;
  const { clock, fetcher } = settings;
  const format = sourceFormats.find((one) => one === place.source.format);
  if (!format) throw new SourceError(sourceFact('source.format', { format: place.source.format }));
  const fault = sourceUrlFault(place.source.url);
  if (fault !== null) throw new SourceError(followedBy(sourceFact('source.address'), fault));

  const zone = zoneNamed(place.timeZone);
  const to = dateAt(clock().getTime(), zone);
  const fetchedOn = lease.fetchedAtMs === null ? null : dateAt(lease.fetchedAtMs, zone);
  const from = firstAsked(fetchedOn, SPANS[format], to);
  const url = new URL(fillUrl(place.source.url, { ...place, from, to }));
  const signal = AbortSignal.any([AbortSignal.timeout(WHOLE_MS), ...(settings.signal ? [settings.signal] : [])]);
  const previous = lease.askedUrl === url.href ? lease : undefined;
  const { bytes, etag, lastModified } = await fetcher.ask(url, { previous, signal });
  const atMs = clock().getTime();
  if (bytes) {
    const ask = async (further: URL): Promise<Uint8Array> => {
      const answer = await fetcher.ask(further, { signal });
      return answer.bytes ?? new Uint8Array();
    };
    const days = await readAnswer(format, bytes, { zone, url, ask });
    await keep(owner, place.id, usable(days, dateAt(atMs, zone)), atMs, settings.store);
  }
  const nextAtMs = atMs + place.source.everyHours * HOUR_MS;
  return { outcome: 'fetched', atMs, nextAtMs, askedUrl: url.href, etag, lastModified };
}

/**
 * Start of the days to request, never before that of a first fetch: a source that failed for long would otherwise
 * be asked for too much.
 */
function firstAsked(
  fetchedOn: PlainDate | null,
  { first, again }: { first: number; again: number },
  to: PlainDate,
): PlainDate {
  return addDays(to, -(fetchedOn === null ? first : Math.min(first, daysBetween(fetchedOn, to) + again)));
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

/** Stores the days. Equal forecast days are not written again. */
async function keep(owner: string, place: string, days: SourceDays, atMs: number, store: Store): Promise<void> {
  if (days.measured.length > 0) await store.putAir(owner, place, days.measured).catch(refuseFull);
  if (days.forecast.length === 0) return;
  const before = await store.comingDays(owner, place);
  if (before && sameDays(before.days, days.forecast)) return;
  await store.putComingDays(owner, place, { atMs, days: days.forecast });
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
  const isOurs = !(error instanceof SourceError) && !isTimeOut(error);
  if (isOurs) log.error({ err: error }, 'a source could not be asked or kept');
  const retryAfterMs = error instanceof SourceError ? (error.retryAfterMs ?? 0) : 0;
  const intervalMs = lease.place.source.everyHours * HOUR_MS;
  const backOffMs = Math.min(intervalMs, MAX_BACK_OFF_MS, FIRST_BACK_OFF_MS * 2 ** Math.min(lease.failures, 20));
  const waitMs = Math.max(backOffMs * (0.5 + 0.5 * random()), Math.min(retryAfterMs, MAX_BACK_OFF_MS));
  return {
    outcome: 'failed',
    nextAtMs: clock().getTime() + waitMs,
    error: factToStore(isOurs ? sourceFact('source.not-kept') : reasonOf(error)),
  };
}

const isTimeOut = (error: unknown): boolean =>
  error instanceof Error && (error.name === 'TimeoutError' || error.name === 'AbortError');

const reasonOf = (error: unknown): Fact =>
  error instanceof SourceError ? error.fact : sourceFact('source.pages-slow');
