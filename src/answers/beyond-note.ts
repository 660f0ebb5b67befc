import { dateAt, HOUR_MS } from '../basics/calendar.js';
import type { Note } from '../basics/errors.js';
import { LEVEL_DAYS } from '../seedbed/seasonal-drift.js';
import type { Beyond } from './hours-ahead.js';
import type { Site } from './known-hours.js';
import type { SeedRecord } from './seed-temperature.js';

/** What is supposed after the last value, in words. */
export function beyondNote(beyond: Beyond, { soil, knownToH }: SeedRecord, { zone }: Site): Note {
  const last = dateAt(soil.startMs + knownToH * HOUR_MS - 1, zone);
  return beyond === 'seasonal-drift'
    ? {
        code: 'seasonal-drift',
        text: `After the last value, on ${last}, the soil is taken to follow the season from the level of the last ${LEVEL_DAYS} days or fewer, with the last week's swing of day and night.`,
      }
    : {
        code: 'repeat-last-week',
        text: `After the last value, on ${last}, the last week is taken to come again and again.`,
      };
}
