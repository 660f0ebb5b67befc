import { z } from 'zod';
import { addDays, DAY_MS, dateAt, daysBetween, type PlainDate, zoneNamed } from '../basics/calendar.js';
import { followedBy } from '../basics/fact.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { type SourceFormat, sourceFormats } from '../garden/store/source-formats.js';
import { type PresetName, presetNamed, sourcePresets } from '../garden/store/source-presets.js';
import { fillUrl, sourceUrlFault } from '../garden/store/source-url.js';
import type { SourceLease } from '../garden/store/store.js';
import type { Answer, AskOptions, Fetcher } from './fetch-source.js';
import { jsonAnswer } from './json-answer.js';
import { presetRequest } from './preset-requests.js';
import type { Pace } from './publisher-pace.js';
import { readAnswer } from './read-answer.js';
import type { SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';

/** How sources are reached. */
export interface Reach {
  readonly fetcher: Fetcher;
  readonly pace: Pace;
  /** An operator whom publishers can write to is named in each request. */
  readonly hasContact: boolean;
  /** Another address to reach a preset's at, such as a mirror's; left out: its own. */
  readonly mirror?: ((url: URL) => URL) | undefined;
}

/** What a source has said. */
export interface Asked {
  /** null: the same as before. */
  readonly days: SourceDays | null;
  readonly askedUrl: string;
  readonly etag: string | null;
  readonly lastModified: string | null;
  /** Its publisher asks not to be asked again for so long [ms]. */
  readonly expiresMs: number;
  /** More is to be asked for soon. */
  readonly isMoreToCome: boolean;
}

/**
 * Days before today to request: at the first fetch, and before the last fetch at later ones, because records are
 * corrected.
 */
const SPANS: Record<SourceFormat, { first: number; again: number }> = {
  'station-day-file': { first: 30 * 366, again: 60 },
  'daily-archive-json': { first: 30 * 366, again: 60 },
  'forecast-grid-json': { first: 0, again: 0 },
  'observations-api': { first: 60, again: 7 },
  'daily-columns-json': { first: 30 * 366, again: 60 },
  'timeseries-geojson': { first: 0, again: 0 },
};

/** A publisher that forbids it for longer has made a mistake [ms]. */
const MAX_EXPIRES_MS = DAY_MS;

/** Asks a source for what is missing. @throws {SourceError} with the reason. @throws {PutOff} */
export function askSource(lease: SourceLease, atMs: number, signal: AbortSignal, reach: Reach): Promise<Asked> {
  const { preset } = lease.source;
  if (preset === null) return askAddress(lease, atMs, signal, reach);
  const known = presetNamed(preset);
  if (!known) throw new SourceError(sourceFact('source.preset-unknown', { preset }));
  return askPreset(known, lease, atMs, signal, reach);
}

async function askAddress(lease: SourceLease, atMs: number, signal: AbortSignal, { fetcher }: Reach): Promise<Asked> {
  const { place, source } = lease;
  const format = sourceFormats.find((one) => one === source.format);
  if (!format) throw new SourceError(sourceFact('source.format', { format: source.format ?? '' }));
  const template = source.url ?? '';
  const fault = sourceUrlFault(template);
  if (fault !== null) throw new SourceError(followedBy(sourceFact('source.address'), fault));

  const { zone, today, fetchedOn } = datesOf(lease, atMs);
  const from = firstAsked(fetchedOn, SPANS[format], today);
  const url = new URL(fillUrl(template, { ...place, from, to: today }));
  const previous = lease.askedUrl === url.href ? lease : undefined;
  const answer = await fetcher.ask(url, { previous, signal });
  const ask = async (further: URL): Promise<Uint8Array> =>
    (await fetcher.ask(further, { signal })).bytes ?? new Uint8Array();
  const days = answer.bytes && (await readAnswer(format, answer.bytes, { zone, url, ask }));
  return { ...saidBy(answer, url), days, expiresMs: 0, isMoreToCome: false };
}

async function askPreset(
  preset: PresetName,
  lease: SourceLease,
  atMs: number,
  signal: AbortSignal,
  { fetcher, pace, hasContact, mirror = (url) => url }: Reach,
): Promise<Asked> {
  const { name: publisher, format, isContactNeeded } = sourcePresets[preset];
  if (isContactNeeded && !hasContact) throw new SourceError(sourceFact('source.contact', { publisher }));
  const { zone, today, fetchedOn } = datesOf(lease, atMs);
  const request = presetRequest(preset, { place: lease.place, today, fetchedOn, days: lease.days });
  const ask = (url: URL, options: AskOptions = {}): Promise<Answer> =>
    pace.inTurn(request.publisher, request.calls, () =>
      fetcher.ask(mirror(url), { ...options, signal, tooOftenPauseMs: request.tooOftenPauseMs }),
    );
  const url = request.isPointer ? await pointedTo(request.url, ask, publisher) : request.url;
  const previous = lease.askedUrl === url.href ? lease : undefined;
  const answer = await ask(url, { previous });
  const context = { zone, url, ask: async (further: URL) => (await ask(further)).bytes ?? new Uint8Array() };
  const days = answer.bytes && (await readAnswer(format, answer.bytes, context));
  return {
    ...saidBy(answer, url),
    days,
    expiresMs: Math.min(MAX_EXPIRES_MS, answer.expiresMs ?? 0),
    isMoreToCome: request.isMoreToCome,
  };
}

const point = z.object({ properties: z.object({ forecastGridData: z.string() }) });

/** The address of the grid that a point's answer names: it has to lie at the same host. */
async function pointedTo(from: URL, ask: (url: URL) => Promise<Answer>, publisher: string): Promise<URL> {
  const answer = await ask(from).catch((error: unknown) => {
    // A point that no office forecasts for is not found.
    const isElsewhere = error instanceof SourceError && error.fact.params.status === 404;
    throw isElsewhere ? new SourceError(sourceFact('source.not-covered', { publisher })) : error;
  });
  const { properties } = jsonAnswer(answer.bytes ?? new Uint8Array(), point, 'point');
  const to = URL.canParse(properties.forecastGridData) ? new URL(properties.forecastGridData) : null;
  if (to?.origin !== from.origin) throw new SourceError(sourceFact('source.other-host'));
  return to;
}

const saidBy = ({ etag, lastModified }: Answer, url: URL) => ({ askedUrl: url.href, etag, lastModified });

/** Dates at the place. */
function datesOf({ place, fetchedAtMs }: SourceLease, atMs: number) {
  const zone = zoneNamed(place.timeZone);
  return {
    zone,
    today: dateAt(atMs, zone),
    fetchedOn: fetchedAtMs === null ? null : dateAt(fetchedAtMs, zone),
  };
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
