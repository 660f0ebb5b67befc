/** The forms in which a place's air temperatures can be fetched. */
export const sourceFormats = [
  'station-day-file',
  'daily-archive-json',
  'forecast-grid-json',
  'observations-api',
  'daily-columns-json',
  'timeseries-geojson',
] as const;

export type SourceFormat = (typeof sourceFormats)[number];
