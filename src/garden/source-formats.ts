/** Forms that a place's source of air temperatures may answer in. */
export const sourceFormats = [
  'station-day-file',
  'daily-archive-json',
  'forecast-grid-json',
  'observations-api',
] as const;
export type SourceFormat = (typeof sourceFormats)[number];
