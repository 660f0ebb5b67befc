import { type FactKinds, factsOf } from '../../basics/fact.js';
import type { SourceFormat } from './source-formats.js';

export const presetNames = ['nasa-power', 'open-meteo-archive', 'open-meteo-forecast', 'met-norway', 'us-nws'] as const;
export type PresetName = (typeof presetNames)[number];

/** A public source of air temperatures that a place can name. */
export interface SourcePreset {
  /** As its publisher names it. */
  readonly name: string;
  /** Past days, or days to come. */
  readonly gives: 'archive' | 'forecast';
  readonly format: SourceFormat;
  readonly host: string;
  /** Name of the licence; null: its publisher names none. */
  readonly licence: string | null;
  /** The publisher's documentation. */
  readonly url: string;
  readonly termsUrl: string;
  /** Where the credit leads to. */
  readonly creditUrl: string;
  /** Its publisher wants to know whom to write to. */
  readonly isContactNeeded: boolean;
  /** Hours between two requests, unless its user says otherwise [h]. */
  readonly everyHours: number;
  /** A model's past rather than a thermometer's. */
  readonly isReanalysis: boolean;
}

/**
 * The publishers' terms, read on 2026-11-30 from stored copies of the pages at `termsUrl` and `url`:
 *
 * - NASA POWER asks for its reference in what is published (docs/referencing), and names no licence. Days of a
 *   reanalysis (MERRA-2) from 1981 on, some days behind, as the mean of a cell of 0.5 by 0.625 degrees.
 * - Open-Meteo (en/license, en/terms): CC BY 4.0, with a link beside the data and a word on changes. Without a key for
 *   non-commercial use: under 10,000 calls a day, 5,000 an hour and 600 a minute, where two weeks of days are a call,
 *   and one request at a time from an address.
 * - MET Norway (doc/TermsOfService): CC BY 4.0. A User-Agent with a way to reach the caller, coordinates of four decimals
 *   at most, no second request before `Expires`, and then with If-Modified-Since; under 20 requests a second in all.
 * - The U.S. National Weather Service (documentation/services-web-api): open data for any purpose, without a fee. A
 *   User-Agent with a contact; over a limit that is not told, try again after five seconds.
 */
export const sourcePresets: Readonly<Record<PresetName, SourcePreset>> = {
  'nasa-power': {
    name: 'NASA POWER',
    gives: 'archive',
    format: 'daily-archive-json',
    host: 'power.larc.nasa.gov',
    licence: null,
    url: 'https://power.larc.nasa.gov/docs/services/api/temporal/daily/',
    termsUrl: 'https://power.larc.nasa.gov/docs/referencing/',
    creditUrl: 'https://power.larc.nasa.gov/',
    isContactNeeded: false,
    everyHours: 24,
    isReanalysis: true,
  },
  'open-meteo-archive': {
    name: 'Open-Meteo',
    gives: 'archive',
    format: 'daily-columns-json',
    host: 'archive-api.open-meteo.com',
    licence: 'CC BY 4.0',
    url: 'https://open-meteo.com/en/docs/historical-weather-api',
    termsUrl: 'https://open-meteo.com/en/terms',
    creditUrl: 'https://open-meteo.com/',
    isContactNeeded: false,
    everyHours: 24,
    isReanalysis: true,
  },
  'open-meteo-forecast': {
    name: 'Open-Meteo',
    gives: 'forecast',
    format: 'daily-columns-json',
    host: 'api.open-meteo.com',
    licence: 'CC BY 4.0',
    url: 'https://open-meteo.com/en/docs',
    termsUrl: 'https://open-meteo.com/en/terms',
    creditUrl: 'https://open-meteo.com/',
    isContactNeeded: false,
    everyHours: 6,
    isReanalysis: false,
  },
  'met-norway': {
    name: 'MET Norway',
    gives: 'forecast',
    format: 'timeseries-geojson',
    host: 'api.met.no',
    licence: 'CC BY 4.0',
    url: 'https://docs.api.met.no/doc/ForecastJSON.html',
    termsUrl: 'https://api.met.no/doc/TermsOfService',
    creditUrl: 'https://www.met.no/',
    isContactNeeded: true,
    everyHours: 6,
    isReanalysis: false,
  },
  'us-nws': {
    name: 'NWS (weather.gov)',
    gives: 'forecast',
    format: 'forecast-grid-json',
    host: 'api.weather.gov',
    licence: null,
    url: 'https://www.weather.gov/documentation/services-web-api',
    termsUrl: 'https://www.weather.gov/documentation/services-web-api',
    creditUrl: 'https://www.weather.gov/',
    isContactNeeded: true,
    everyHours: 6,
    isReanalysis: false,
  },
};

/** The preset of a name; undefined where there is none. */
export const presetNamed = (name: string | null): PresetName | undefined => presetNames.find((one) => one === name);

/** What is said of presets. */
export const presetFacts = {
  'preset.reads': { preset: presetNames },
  'preset.consequence': { preset: presetNames },
  attribution: { preset: presetNames },
  reanalysis: { preset: presetNames },
} as const satisfies FactKinds;

export const presetFact = factsOf(presetFacts);

/** The credit for a preset's days, as answers that rest on them carry it. */
export const attributionOf = (preset: PresetName) => ({
  ...presetFact('attribution', { preset }),
  url: sourcePresets[preset].creditUrl,
  licence: sourcePresets[preset].licence,
});
export type Attribution = ReturnType<typeof attributionOf>;
