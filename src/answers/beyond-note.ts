import { dateAt, HOUR_MS } from '../basics/calendar.js';
import type { Note } from '../basics/errors.js';
import { LEVEL_DAYS } from '../seedbed/seasonal-drift.js';
import type { Beyond } from './hours-ahead.js';
import type { Site } from './known-hours.js';
import type { SeedRecord } from './seed-temperature.js';

/** What is supposed after the last value, in words. */
export function beyondNote(beyond: Beyond, { soil, knownToH, ahead }: SeedRecord, { zone }: Site): Note {
  const last = dateAt(soil.startMs + knownToH * HOUR_MS - 1, zone);
  if (ahead) {
    return ahead.isUsual
      ? {
          code: 'normals',
          text: `After the last value, on ${last}, the soil is taken to go on as the place's normals make it in a usual year, from today's soil: no past years are known. The ranges are wide for it.`,
        }
      : {
          code: 'past-years',
          text: `After the last value, on ${last}, the soil is taken to go on as in each of ${ahead.years} past years, from today's soil. Dates are the middle of them; the days told are their mean, in which single hot and cold days are smoothed away.`,
        };
  }
  return beyond === 'repeat-last-week'
    ? {
        code: 'repeat-last-week',
        text: `After the last value, on ${last}, the last week is taken to come again and again.`,
      }
    : {
        code: 'seasonal-drift',
        text: `After the last value, on ${last}, the soil is taken to follow the season from the level of the last ${LEVEL_DAYS} days or fewer, with the last week's swing of day and night.`,
      };
}
