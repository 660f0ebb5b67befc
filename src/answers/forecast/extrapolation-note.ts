import { dateAt, HOUR_MS } from '../../basics/calendar.js';
import { LEVEL_DAYS } from '../../seedbed/surface/seasonal-persistence.js';
import type { Extrapolation } from '../ahead/hours-ahead.js';
import type { Site } from '../soil/known-hours.js';
import type { ForecastAssumption } from './forecast-facts.js';
import type { SeedRecord } from './record/seed-temperature.js';

/** The assumption after the last value. `years`: whose years they are, where years are. */
export function extrapolationNote(
  beyond: Extrapolation,
  { soil, knownToH, ahead }: SeedRecord,
  { zone }: Site,
  years: 'past-years' | 'typical-years',
): ForecastAssumption {
  const lastDate = dateAt(soil.startMs + knownToH * HOUR_MS - 1, zone);
  if (ahead) {
    return ahead.isUsual
      ? { code: 'normals', params: { about: 'forecast', lastDate } }
      : { code: years, params: { about: 'forecast', lastDate, years: ahead.years } };
  }
  return beyond === 'repeat-last-week'
    ? { code: 'repeat-last-week', params: { lastDate } }
    : { code: 'seasonal-drift', params: { lastDate, levelDays: LEVEL_DAYS } };
}
