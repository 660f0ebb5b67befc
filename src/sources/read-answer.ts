import type { SourceFormat } from '../garden/store/source-formats.js';
import { readDailyArchiveJson } from './daily-archive-json.js';
import { readDailyColumnsJson } from './daily-columns-json.js';
import { readForecastGridJson } from './forecast-grid-json.js';
import { readObservationsApi } from './observations-api.js';
import type { AnswerContext, SourceDays } from './source-days.js';
import { readStationDayFile } from './station-day-file.js';
import { readTimeseriesGeojson } from './timeseries-geojson.js';

const readers: Record<SourceFormat, (bytes: Uint8Array, context: AnswerContext) => SourceDays | Promise<SourceDays>> = {
  'station-day-file': readStationDayFile,
  'daily-archive-json': readDailyArchiveJson,
  'forecast-grid-json': readForecastGridJson,
  'observations-api': readObservationsApi,
  'daily-columns-json': readDailyColumnsJson,
  'timeseries-geojson': readTimeseriesGeojson,
};

/** Reads the days of a source's answer. @throws {SourceError} when the answer is not in its format. */
export const readAnswer = async (
  format: SourceFormat,
  bytes: Uint8Array,
  context: AnswerContext,
): Promise<SourceDays> => readers[format](bytes, context);
