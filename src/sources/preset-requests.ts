import { addDays, daysBetween, type PlainDate } from '../basics/calendar.js';
import type { PresetName } from '../garden/store/source-presets.js';
import { fillUrl } from '../garden/store/source-url.js';
import type { DaysGiven, Place } from '../garden/store/store.js';

/** How a publisher wants to be asked. */
export interface PresetRequest {
  /** Key of its allowances. */
  readonly publisher: string;
  readonly url: URL;
  /** Its answer names the address that is meant; see `gridAddress`. */
  readonly isPointer: boolean;
  /** How many calls of its allowances it counts as. */
  readonly calls: number;
  /** Pause before it is asked again within the same fetch after a 429 [ms]; null: it is not. */
  readonly tooOftenPauseMs: number | null;
  /** There is more to ask for after this: days before those that it gives. */
  readonly isMoreToCome: boolean;
}

/** What is asked for. */
export interface PresetAsked {
  readonly place: Pick<Place, 'latitude' | 'longitude' | 'elevationM' | 'timeZone'>;
  /** At the place. */
  readonly today: PlainDate;
  readonly fetchedOn: PlainDate | null;
  /** What it has given so far. */
  readonly days: DaysGiven | null;
}

/** Archives are asked for so many days back [d]. */
const YEARS_BACK = 30 * 366;
/** Days before the last fetch that are asked for anew, as archives correct them [d]. */
const AGAIN = 60;
/** A long first request of Open-Meteo counts as hundreds of calls, so it goes out in three pieces [d]. */
const OPEN_METEO_PIECE = YEARS_BACK / 3;
/** Days that count as one call of Open-Meteo [d] (open-meteo.com/en/pricing, read 2026-11-30). */
const OPEN_METEO_CALL = 14;
/** After this the weather service answers again (weather.gov/documentation/services-web-api, read 2026-11-30) [ms]. */
const NWS_PAUSE_MS = 5000;

/**
 * The request of a preset. Coordinates have four decimals at most, as MET Norway demands and as no cell is smaller.
 */
export function presetRequest(preset: PresetName, asked: PresetAsked): PresetRequest {
  const place = {
    ...asked.place,
    latitude: fourDecimals(asked.place.latitude),
    longitude: fourDecimals(asked.place.longitude),
  };
  const usual = { isPointer: false, calls: 1, tooOftenPauseMs: null, isMoreToCome: false };
  const address = (template: string, days: { from: PlainDate; to: PlainDate }): URL =>
    new URL(fillUrl(template, { ...place, ...days }));
  const now = { from: asked.today, to: asked.today };
  switch (preset) {
    case 'nasa-power': {
      const days = daysToAsk(asked, Number.POSITIVE_INFINITY);
      return { ...usual, publisher: 'nasa.gov', url: address(NASA_POWER, days) };
    }
    case 'open-meteo-archive': {
      const { isMoreToCome, ...days } = daysToAsk(asked, OPEN_METEO_PIECE);
      const calls = Math.max(1, (daysBetween(days.from, days.to) + 1) / OPEN_METEO_CALL);
      return { ...usual, publisher: 'open-meteo.com', url: address(OPEN_METEO_ARCHIVE, days), calls, isMoreToCome };
    }
    case 'open-meteo-forecast':
      return { ...usual, publisher: 'open-meteo.com', url: address(OPEN_METEO_FORECAST, now) };
    case 'met-norway': {
      const url = address(MET_NORWAY, now);
      // A whole number of metres; without one the publisher's own model of the ground is used.
      if (place.elevationM !== null) url.searchParams.set('altitude', String(Math.round(place.elevationM)));
      return { ...usual, publisher: 'met.no', url };
    }
    case 'us-nws':
      return {
        ...usual,
        publisher: 'weather.gov',
        url: address(US_NWS, now),
        isPointer: true,
        tooOftenPauseMs: NWS_PAUSE_MS,
      };
  }
}

/**
 * The addresses, as the publishers document them (read 2026-11-30 from stored copies; none was asked):
 * power.larc.nasa.gov/docs/services/api/temporal/ (days of local solar time),
 * open-meteo.com/en/docs/historical-weather-api and open-meteo.com/en/docs (daily days need a timezone),
 * docs.api.met.no/doc/ForecastJSON.html (only `complete` has the extremes of six hours),
 * weather.gov/documentation/services-web-api (a point names its grid).
 */
const NASA_POWER =
  'https://power.larc.nasa.gov/api/temporal/daily/point?parameters=T2M,T2M_MAX,T2M_MIN&community=AG&latitude={latitude}&longitude={longitude}&start={fromCompact}&end={toCompact}&time-standard=LST&format=JSON';
const OPEN_METEO_DAILY =
  'latitude={latitude}&longitude={longitude}&daily=temperature_2m_max,temperature_2m_min,temperature_2m_mean&timezone={timeZone}';
const OPEN_METEO_ARCHIVE = `https://archive-api.open-meteo.com/v1/archive?${OPEN_METEO_DAILY}&start_date={from}&end_date={to}`;
const OPEN_METEO_FORECAST = `https://api.open-meteo.com/v1/forecast?${OPEN_METEO_DAILY}&forecast_days=7`;
const MET_NORWAY = 'https://api.met.no/weatherapi/locationforecast/2.0/complete?lat={latitude}&lon={longitude}';
const US_NWS = 'https://api.weather.gov/points/{latitude},{longitude}';

/** Cut off, not rounded, so that the same place is always asked for in the same way. */
const fourDecimals = (degrees: number): number => Math.trunc(degrees * 1e4) / 1e4;

/**
 * Days of an archive to ask for: all of them at first, or the latest piece; then what may have been corrected; where
 * pieces are left, the next one backward first.
 */
function daysToAsk(
  { today, fetchedOn, days }: PresetAsked,
  pieceDays: number,
): { from: PlainDate; to: PlainDate; isMoreToCome: boolean } {
  const [first, last] = [addDays(today, -YEARS_BACK), addDays(today, -1)];
  const pieceTo = (to: PlainDate) => {
    const left = daysBetween(first, to) + 1;
    return { from: left > pieceDays ? addDays(to, 1 - pieceDays) : first, to, isMoreToCome: left > pieceDays };
  };
  if (fetchedOn === null || days === null) return pieceTo(last);
  // A day or two are missing where today has moved on since the first piece.
  if (pieceDays < YEARS_BACK && daysBetween(first, days.from) > AGAIN) return pieceTo(addDays(days.from, -1));
  const since = daysBetween(fetchedOn, today) + AGAIN;
  return { from: addDays(today, -Math.min(YEARS_BACK, since)), to: last, isMoreToCome: false };
}
